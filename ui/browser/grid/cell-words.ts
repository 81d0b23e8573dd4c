// What a cell is in words and classes, wherever it stands: entered, computed, overridden or stood in, what was found in it, its
// colour and its note. The grid's cells, the fields of the panel, the forms and the cards call it.

import type { CellView, ColourRule, ColumnView, Finding } from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';

/** What is told of a cell besides its text. */
export interface CellMarks {
  readonly found?: Finding | undefined;
  readonly colour?: ColourRule | undefined;
  readonly note?: string;
  /** It holds what is looked for. */
  readonly isMatch?: boolean;
  /** It was cut, and goes when that is pasted. */
  readonly isCut?: boolean;
}

/** Whether an error stands in place of a value. */
export function isErrorCell(cell: CellView): boolean {
  return typeof cell.value === 'object' && cell.value !== null;
}

/** Where the value comes from in words, for those who don't see the mark; '' where there is nothing to say. */
export function originWords({ origin, text }: CellView): string {
  if (origin === 'override') return 'typed over the formula';
  if (origin === 'computed') return 'computed';
  if (origin === 'default' && text !== '') return 'from the formula, nothing typed here';
  return '';
}

/** The classes of a cell: what it is, where its value comes from, what is told of it. */
export function cellClasses(cell: CellView | undefined, column: ColumnView, marks: CellMarks): string {
  const { found, colour, note = '', isMatch = false, isCut = false } = marks;
  let classes = `role-${column.role}`;
  if (isFigure(column)) classes += ' figure';
  if (cell !== undefined) {
    classes += ` origin-${cell.origin}`;
    if (isErrorCell(cell)) classes += ' is-error';
  }
  if (found !== undefined) classes += ` found found-${found.level}`;
  if (colour !== undefined) classes += ` has-colour tone-${colour.tone}`;
  if (note !== '') classes += ' has-note';
  if (isMatch) classes += ' is-match';
  if (isCut) classes += ' is-cut';
  return classes;
}
