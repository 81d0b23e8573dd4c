// What the formula line shows for a cell and what a text typed there means: a text that begins with '=' is the column's
// formula, for all of its rows; anything else is this cell's entry. Pure questions to the workbook.

import type { ColumnView, Complaint, WorkbookFace } from '../../../engine/index.ts';

export interface LinePlace {
  readonly table: string;
  readonly row: number | undefined;
  readonly column: ColumnView;
}

export type Answer =
  | { readonly tone: 'plain' | 'good'; readonly says: string }
  | { readonly tone: 'refusal'; readonly says: string; readonly complaint?: Complaint };

/** The text for the cell: its formula where that gives the value, its entry where one was typed. */
export function shownText(workbook: WorkbookFace, { table, row, column }: LinePlace): string {
  const formula = column.formula === '' ? '' : `=${column.formula}`;
  if (row === undefined) return formula;
  const cell = workbook.cell(table, row, column.name);
  if (column.role === 'made') return cell.text;
  if (column.role === 'entered') return cell.entry;
  const typed = cell.standing === 'override' || cell.standing === 'entered';
  return typed ? cell.entry : formula;
}

/** Whether a text typed in the line is the column's formula. */
export function isFormula(text: string, column: ColumnView): boolean {
  return /^\s*=/.test(text) && (column.role === 'computed' || column.role === 'default');
}

/** What the checker says of a text that is being typed. */
export function answerTo(workbook: WorkbookFace, { table, column }: LinePlace, text: string): Answer {
  if (isFormula(text, column)) {
    const tried = workbook.tryFormula(table, column.name, text);
    if (tried.ok) return { tone: 'good', says: `Gives ${tried.inferred}, in every row of ${table}.` };
    return { tone: 'refusal', says: tried.complaint.why, complaint: tried.complaint };
  }
  const tried = workbook.tryEntry(table, column.name, text);
  if (!tried.ok) return { tone: 'refusal', says: tried.why };
  if (text.trim() === '')
    return { tone: 'plain', says: column.role === 'entered' ? 'Leaves the cell blank.' : 'Goes back to the formula.' };
  const unit = column.unit !== '' && /\d$/.test(tried.text) ? ` ${column.unit}` : '';
  const over = column.role === 'computed' ? ' Stands over the formula in this row; it can be taken back.' : '';
  return { tone: 'good', says: `${tried.text}${unit}.${over}` };
}

/** What is said of a cell at rest: why it has no value, what it was typed over, or what its column holds. */
export function restingAnswer(workbook: WorkbookFace, { table, row, column }: LinePlace): Answer {
  if (column.complaint !== undefined) {
    return { tone: 'refusal', says: column.complaint.why, complaint: column.complaint };
  }
  if (row === undefined) return { tone: 'plain', says: column.note };
  const cell = workbook.cell(table, row, column.name);
  if (typeof cell.value === 'object' && cell.value !== null) return { tone: 'refusal', says: cell.value.why };
  const note = column.note === '' ? '' : ` ${column.note}`;
  const unit = column.unit !== '' && /\d$/.test(cell.text) ? ` ${column.unit}` : '';
  if (cell.standing === 'override') return { tone: 'plain', says: `Typed over the formula.${note}` };
  if (column.role === 'entered' || column.role === 'made') return { tone: 'plain', says: column.note };
  if (cell.standing === 'entered')
    return { tone: 'plain', says: `Typed here; the formula stands in where nothing is.${note}` };
  if (cell.text === '')
    return { tone: 'plain', says: `${workbook.explain(table, row, column.name).why || 'Blank.'}${note}` };
  return { tone: 'plain', says: `${cell.text}${unit}.${note}` };
}
