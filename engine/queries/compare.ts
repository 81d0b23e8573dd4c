// What differs between two states of a workbook, cell by cell: what was typed, what follows from it, which rows, columns and
// sheets came or went. Everything is found by ids, so a renamed column and a moved row are not taken for others. Changes
// neither.

import { sameContent } from '../document/content.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isComputed, isMadeSheet } from '../schema/schema.ts';
import type { Book } from './book.ts';
import { type ColumnPlace, keptForm, lasting, matchRows, placeOf } from './matching.ts';
import { rowId, rows } from './rows.ts';
import { settings } from './settings.ts';
import { printed } from './sheets.ts';
import { inWords, rowName } from './shown.ts';

/** A cell that reads otherwise, with units: '180 lb', 'blank'. */
export interface CellDifference {
  /** Id and name of its row. */
  readonly row: string;
  readonly rowName: string;
  readonly before: string;
  readonly after: string;
}

export interface ColumnDifference extends ColumnPlace {
  /** Typed in the later state or the earlier one; else it follows from what was. */
  readonly typed: boolean;
  readonly count: number;
  /** The first of them, in the order of the rows. */
  readonly cells: readonly CellDifference[];
}

export interface FormulaDifference extends ColumnPlace {
  /** As printed; '' for none. */
  readonly before: string;
  readonly after: string;
}

export interface RowDifference {
  readonly sheet: string;
  readonly sheetName: string;
  readonly row: string;
  readonly rowName: string;
}

export interface NameDifference extends ColumnPlace {
  readonly before: string;
  readonly after: string;
}

export interface Comparison {
  /** Title, units, version of the sheets: in words. */
  readonly settings: readonly { readonly what: string; readonly before: string; readonly after: string }[];
  readonly added: readonly ColumnPlace[];
  readonly gone: readonly ColumnPlace[];
  readonly renamed: readonly NameDifference[];
  readonly formulas: readonly FormulaDifference[];
  /** Of sheets whose rows are entered. */
  readonly rowsAdded: readonly RowDifference[];
  readonly rowsGone: readonly RowDifference[];
  readonly cells: readonly ColumnDifference[];
}

type Making = { -readonly [K in keyof Comparison]: Comparison[K] extends readonly (infer T)[] ? T[] : never };

/** What changed from one state to the other; of each column at most so many cells are told one by one, all are counted. */
export function compareBooks(before: Book, after: Book, most = 200): Comparison {
  const found: Making = {
    settings: settingsDiffer(before, after),
    added: [],
    gone: [],
    renamed: [],
    formulas: [],
    rowsAdded: [],
    rowsGone: [],
    cells: [],
  };
  const [was, is] = [before.document.program, after.document.program];
  for (const sheet of is.sheets) {
    const old = was.sheet(sheet.id);
    if (old === undefined) found.added.push(placeOf(sheet, undefined));
    else compareSheets({ before, after, old, sheet, most }, found);
  }
  for (const old of was.sheets) if (is.sheet(old.id) === undefined) found.gone.push(placeOf(old, undefined));
  return found;
}

function settingsDiffer(before: Book, after: Book): Making['settings'] {
  const units = { us: 'US customary', si: 'metric' };
  const told = (book: Book): readonly (readonly [string, string])[] => {
    const now = settings(book);
    return [
      ['Title', now.title],
      ['Units', units[now.units]],
      ['Version of the sheets', String(now.template.version)],
    ];
  };
  const later = told(after);
  return told(before).flatMap(([what, was], i) => {
    const is = later[i]?.[1] ?? '';
    return was === is ? [] : [{ what, before: was, after: is }];
  });
}

interface Sheets {
  readonly before: Book;
  readonly after: Book;
  readonly old: ProgramSheet;
  readonly sheet: ProgramSheet;
  readonly most: number;
}

function compareSheets(sheets: Sheets, found: Making): void {
  const { before, after, old, sheet } = sheets;
  if (old.name !== sheet.name) {
    found.renamed.push({ ...placeOf(sheet, undefined), before: old.name, after: sheet.name });
  }
  if (!isMadeSheet(sheet.schema)) {
    found.rowsAdded.push(...rowsOnlyIn(after, before, sheet));
    found.rowsGone.push(...rowsOnlyIn(before, after, old));
  }
  const matched = matchRows(before, after, sheet.id);
  for (const column of sheet.columns) {
    const oldColumn = old.column(column.id);
    if (oldColumn === undefined) found.added.push(placeOf(sheet, column));
    else compareColumns(sheets, oldColumn, column, matched, found);
  }
  for (const column of old.columns) if (sheet.column(column.id) === undefined) found.gone.push(placeOf(old, column));
}

function rowsOnlyIn(book: Book, other: Book, sheet: ProgramSheet): readonly RowDifference[] {
  const there = new Set(Array.from(rows(other, sheet.id), (slot) => rowId(other, sheet.id, slot)));
  return Array.from(rows(book, sheet.id)).flatMap((slot) => {
    const row = rowId(book, sheet.id, slot);
    if (there.has(row)) return [];
    return [{ sheet: sheet.id, sheetName: sheet.name, row, rowName: rowName(book, sheet.id, slot) }];
  });
}

function compareColumns(
  { before, after, sheet, most }: Sheets,
  oldColumn: ProgramColumn,
  column: ProgramColumn,
  matched: readonly (readonly [before: number, after: number])[],
  found: Making,
): void {
  const place = placeOf(sheet, column);
  if (oldColumn.name !== column.name) {
    found.renamed.push({ ...place, before: oldColumn.name, after: column.name });
  }
  if (column.role === 'made') return;
  const [formulaWas, formulaIs] = [formulaOf(before, oldColumn), formulaOf(after, column)];
  // A formula in which only a name changed is the same.
  const asKept = keptForm(before, sheet.id, formulaWas) === keptForm(after, sheet.id, formulaIs);
  if (formulaWas !== formulaIs && !asKept) found.formulas.push({ ...place, before: formulaWas, after: formulaIs });
  // What is typed and what follows are told apart, in one column too: over some of its cells something may be typed.
  const typed: CellDifference[] = [];
  const follows: CellDifference[] = [];
  let [typedCount, followsCount] = [0, 0];
  for (const [was, is] of matched) {
    const contents = [before.document.typedAt(oldColumn, was), after.document.typedAt(column, is)] as const;
    const isTyped = contents[0] !== null || contents[1] !== null;
    const same = isTyped
      ? sameContent(...contents) && lasting(before, oldColumn, was) === lasting(after, column, is)
      : lasting(before, oldColumn, was) === lasting(after, column, is);
    if (same) continue;
    const list = isTyped ? typed : follows;
    if (isTyped) typedCount += 1;
    else followsCount += 1;
    if (list.length >= most) continue;
    list.push({
      row: rowId(after, sheet.id, is),
      rowName: rowName(after, sheet.id, is),
      before: inWords(before, oldColumn, was),
      after: inWords(after, column, is),
    });
  }
  if (typedCount > 0) found.cells.push({ ...place, typed: true, count: typedCount, cells: typed });
  if (followsCount > 0) found.cells.push({ ...place, typed: false, count: followsCount, cells: follows });
}

function formulaOf({ document }: Book, column: ProgramColumn): string {
  return isComputed(column) && column.formula !== '' ? printed(column.formula, document.program.vocabulary) : '';
}
