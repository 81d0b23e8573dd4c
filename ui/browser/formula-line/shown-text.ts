// What the formula line shows for a cell and what a text typed there means: a text that begins with '=' is the column's
// formula, for all of its rows; anything else is this cell's entry. Pure questions to the workbook.

import { type Book, type ColumnView, cellView, type SheetView, sheetView } from '../../../engine/index.ts';
import { type Place, type RowAt, rowAt } from '../store/selection.ts';
import { columnOf, hasFormula } from '../store/sheets.ts';

/** A cell, or a whole column where no row is in hand. */
export interface LineCell {
  readonly sheet: SheetView;
  readonly row: RowAt | undefined;
  readonly column: ColumnView;
}

/** The cell at a place, as it is now; undefined where there is none. */
export function lineCell(book: Book, { sheet: sheetId, row, column: columnId }: Place): LineCell | undefined {
  const sheet = sheetView(book, sheetId);
  const column = columnOf(sheet, columnId);
  return sheet === undefined || column === undefined ? undefined : { sheet, row: rowAt(book, sheetId, row), column };
}

/** The text for the cell: its formula where that gives the value, its entry where one was typed. */
export function shownText(book: Book, { sheet, row, column }: LineCell): string {
  const formula = column.formula === '' ? '' : `=${column.formula}`;
  if (row === undefined) return formula;
  const cell = cellView(book, sheet.id, row.slot, column.id);
  if (column.role === 'made') return cell.text;
  if (column.role === 'entered') return cell.entry;
  const typed = cell.origin === 'override' || cell.origin === 'entered';
  return typed ? cell.entry : formula;
}

/** Whether a text typed in the line is the column's formula. */
export function isFormula(text: string, column: ColumnView): boolean {
  return /^\s*=/.test(text) && hasFormula(column);
}
