// What the formula line shows for a cell and what a text typed there means: a text that begins with '=' is the column's
// formula, for all of its rows; anything else is this cell's entry. Pure questions to the workbook.

import {
  type Book,
  type ColumnView,
  cellView,
  type Diagnostic,
  rowName,
  type SheetView,
  sheetView,
  tryEntry,
  tryFormula,
  whyNone,
} from '../../../engine/index.ts';
import { questionOf } from '../entry/entry-questions.ts';
import { type Place, type RowAt, rowAt } from '../store/selection.ts';
import { columnOf, hasFormula } from '../store/sheets.ts';
import { inWords } from '../store/shown.ts';

/** A cell, or a whole column where no row is in hand. */
export interface LineCell {
  readonly sheet: SheetView;
  readonly row: RowAt | undefined;
  readonly column: ColumnView;
}

export type Answer =
  | { readonly tone: 'plain' | 'good'; readonly says: string }
  | { readonly tone: 'refusal'; readonly says: string; readonly diagnostic?: Diagnostic };

/** The cell at a place, as it is now; undefined where there is none. */
export function lineCell(book: Book, { sheet: sheetId, row, column: columnId }: Place): LineCell | undefined {
  const sheet = sheetView(book, sheetId);
  const column = columnOf(sheet, columnId);
  return sheet === undefined || column === undefined ? undefined : { sheet, row: rowAt(book, sheetId, row), column };
}

/** 'Plantings / Amber early / Stations'. */
export function addressOf(book: Book, { sheet, row, column }: LineCell): string {
  const named = row === undefined || sheet.oneRow ? '' : rowName(book, sheet.id, row.slot);
  return [sheet.name, named, column.name].filter((part) => part !== '').join(' / ');
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

/** What the checker says of a text that is being typed. */
export function answerTo(book: Book, { sheet, row, column }: LineCell, text: string): Answer {
  if (isFormula(text, column)) {
    const tried = tryFormula(book, sheet.id, column.id, text);
    if (tried.ok) return { tone: 'good', says: `Gives ${tried.inferred}, in every row of ${sheet.name}.` };
    return { tone: 'refusal', says: tried.diagnostic.why, diagnostic: tried.diagnostic };
  }
  const tried = tryEntry(book, sheet.id, column.id, text, row?.slot);
  if (!tried.ok) return { tone: 'refusal', says: tried.why };
  if (text.trim() === '') {
    return { tone: 'plain', says: column.role === 'entered' ? 'Leaves the cell blank.' : 'Goes back to the formula.' };
  }
  const over = column.role === 'computed' ? ' Stands over the formula in this row; it can be taken back.' : '';
  const question = questionOf(tried);
  return { tone: question === undefined ? 'good' : 'plain', says: (question ?? `${tried.text}.`) + over };
}

/** What is said of a cell at rest: why it has no value, what it was typed over, or what its column holds. */
export function restingAnswer(book: Book, { sheet, row, column }: LineCell): Answer {
  if (column.diagnostic !== undefined) {
    return { tone: 'refusal', says: column.diagnostic.why, diagnostic: column.diagnostic };
  }
  if (row === undefined) return { tone: 'plain', says: column.note };
  const cell = cellView(book, sheet.id, row.slot, column.id);
  if (typeof cell.value === 'object' && cell.value !== null) return { tone: 'refusal', says: cell.value.why };
  if (column.role === 'entered' || column.role === 'made') return { tone: 'plain', says: column.note };
  return {
    tone: 'plain',
    says: [restingWords(book, sheet, row, column), column.note].filter((part) => part !== '').join(' '),
  };
}

function restingWords(book: Book, sheet: SheetView, row: RowAt, column: ColumnView): string {
  const cell = cellView(book, sheet.id, row.slot, column.id);
  if (cell.origin === 'override') return 'Typed over the formula.';
  if (cell.origin === 'entered') return 'Typed here; the formula stands in where nothing is.';
  if (cell.text !== '') return `${inWords(cell)}.`;
  const why = whyNone(book, sheet.id, row.slot, column.id);
  return why === '' ? 'Blank.' : why;
}
