// What the formula line says beside its box: where the cell stands, what a text that is being typed would do, and of a cell at rest
// what it holds. Pure questions to the workbook; fetched with the line.

import {
  type Book,
  type ColumnView,
  cellView,
  type Diagnostic,
  rowName,
  type SheetView,
  tryEntry,
  tryFormula,
  whyNone,
} from '../../../engine/index.ts';
import { questionOf } from '../entry/entry-questions.ts';
import type { RowAt } from '../store/selection.ts';
import { inWords } from '../store/shown.ts';
import { isFormula, type LineCell } from './shown-text.ts';

export type Answer =
  | { readonly tone: 'plain' | 'good'; readonly says: string }
  | { readonly tone: 'refusal'; readonly says: string; readonly diagnostic?: Diagnostic };

/** 'Plantings / Amber early / Stations'. */
export function addressOf(book: Book, { sheet, row, column }: LineCell): string {
  const named = row === undefined || sheet.oneRow ? '' : rowName(book, sheet.id, row.slot);
  return [sheet.name, named, column.name].filter((part) => part !== '').join(' / ');
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
