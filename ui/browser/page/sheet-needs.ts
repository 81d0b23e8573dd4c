// What is missing on a sheet, for the list of sheets at the desk and on the phone: how many rows it has, or that a person has
// entered none yet; how many things in it need attention, and which columns wait for an entry. Pure.

import { type Book, cellValue, type Finding, type FindingLevel, rows, type SheetView } from '../../../engine/index.ts';
import { columnOf, isTyped } from '../store/sheets.ts';

export interface Needs {
  readonly level: FindingLevel;
  readonly count: number;
  /** '3 things to look at, to be filled in: Length, Width'. */
  readonly words: string;
}

/** '' for a sheet of one row; 'none yet' where a person enters the rows and has entered none. */
export function rowsInWords(book: Book, { id, oneRow, entered }: SheetView): string {
  if (oneRow) return '';
  const count = rows(book, id).length;
  return count === 0 && entered ? 'none yet' : String(count);
}

/** Errors and warnings among what was found on a sheet; undefined without any. Notes ask for nothing. */
export function needsOf(book: Book, sheet: SheetView, onSheet: readonly Finding[]): Needs | undefined {
  const found = onSheet.filter(({ level }) => level !== 'note');
  const [first] = found;
  if (first === undefined) return undefined;
  const empty = new Set<string>();
  for (const finding of found) {
    if (!empty.has(finding.columnName) && isEmpty(book, sheet, finding)) empty.add(finding.columnName);
  }
  const count = found.length;
  const things = `${count} ${count === 1 ? 'thing' : 'things'} to look at`;
  const words = empty.size === 0 ? things : `${things}, to be filled in: ${[...empty].join(', ')}`;
  return { level: first.level, count, words };
}

/** Whether it was found in a cell in which a person types and in which nothing stands. */
function isEmpty(book: Book, sheet: SheetView, { row, column: id }: Finding): boolean {
  const column = columnOf(sheet, id);
  return row !== undefined && column !== undefined && isTyped(column) && cellValue(book, sheet.id, row, id) === null;
}
