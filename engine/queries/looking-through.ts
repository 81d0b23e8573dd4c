// Cells whose text holds what somebody looks for: a season of two thousand plantings has some four million, so a text is made only
// where it may hold it, and once for all cells of a column that read alike.

import type { ProgramColumn } from '../schema/compile.ts';
import { isMixed } from '../units/table.ts';
import { BLANK, FILLED } from '../values/column.ts';
import { TEXT } from '../values/type.ts';
import { type Book, sheetOf } from './book.ts';
import { cellView } from './cells.ts';

/** What is looked for in the texts of cells. */
export interface Wanted {
  /** Letter by letter as texts must have it once they are made alike; never blank. */
  readonly text: string;
  /** Whether a cell's text holds it. */
  holds(text: string): boolean;
}

/** So many texts of a column are remembered at most. */
const MOST_REMEMBERED = 50_000;

/**
 * What tells of a row of a sheet in which columns its cells hold what is wanted, in their order, as `cellView` has their text; with
 * `typed` of those cells alone that a person typed, and nothing is worked out for the others. To be asked for anew when something changed.
 */
export function lookThrough(
  book: Book,
  sheet: string,
  wanted: Wanted,
  { typed = false }: { readonly typed?: boolean } = {},
): (row: number) => readonly string[] {
  const { document } = book;
  const columns = (sheetOf(book, sheet)?.columns ?? []).filter((column) => !typed || document.mayHold(column));
  const lookers = columns.map((column) => ({ id: column.id, column, holds: looker(book, sheet, column, wanted) }));
  return (row) => {
    const found: string[] = [];
    for (const { id, column, holds } of lookers) {
      if ((!typed || document.isTyped(column, row)) && holds(row)) found.push(id);
    }
    return found;
  };
}

function looker(book: Book, sheet: string, column: ProgramColumn, wanted: Wanted): (row: number) => boolean {
  const { document } = book;
  const isRead = (row: number): boolean => wanted.holds(cellView(book, sheet, row, column.id).text);
  const never = isFigure(column) && !mayStandInFigure(book, wanted.text);
  const alike = readsAlike(column);
  // What is typed is shown with the decimals that it was typed with.
  const [ofTyped, ofOthers] = [new Map<number, boolean>(), new Map<number, boolean>()];
  return (row) => {
    const { values, states, length } = document.frame.column(column.def);
    const state = row < length ? states[row] : BLANK;
    if (state === BLANK) return false;
    const typedUnits = document.frame.typedIn(column.def);
    // A fault has its own words, and a figure that was typed in another unit names it.
    if (state !== FILLED || (typedUnits !== undefined && typedUnits.unitNumber(row) !== 0)) return isRead(row);
    if (never) return false;
    if (!alike) return isRead(row);
    const value = values[row] ?? 0;
    const remembered = document.isTyped(column, row) ? ofTyped : ofOthers;
    const known = remembered.get(value);
    if (known !== undefined) return known;
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    const answer = isRead(row);
    remembered.set(value, answer);
    return answer;
  };
}

/** Whether its cells are written with the signs of figures alone, in the column's own unit. */
function isFigure({ type }: ProgramColumn): boolean {
  return (type?.kind === 'number' || type?.kind === 'temperature') && !isMixed(type.unit);
}

/** Whether two of its cells with the same value read the same: not where ends beside a figure, or several figures, are read with it. */
function readsAlike({ type = TEXT, declaration }: ProgramColumn): boolean {
  return type.kind !== 'record' && (declaration.range === undefined || type.kind === 'date');
}

/** Vast and tiny figures are written with a power of ten: 1.2e-12. */
const SIGNS = '0123456789-+.e';

function mayStandInFigure({ document }: Book, text: string): boolean {
  const { decimal = '.', group = ',' } = document.writing ?? {};
  return [...text].every((sign) => SIGNS.includes(sign) || decimal.includes(sign) || group.includes(sign));
}
