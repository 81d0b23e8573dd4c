// A figure that a person asks about of any workbook or branch: a formula that stands in no row, a cell, or how much needs
// attention. Comparing, seeking, tables of one input against another and drawn seasons all ask for figures in this way.

import { formulaText } from '../schema/lay-over.ts';
import { isError, type Scalar } from '../values/error.ts';
import { showWithUnit } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import { type Book, columnOf } from './book.ts';
import { evaluate } from './evaluate.ts';
import type { FindingLevel } from './finding.ts';
import { Findings } from './findings.ts';
import { inWords, scalarAt } from './shown.ts';

export type Figure =
  /** By names or in kept form, '#sheet' and [#sheet/column]. */
  | { readonly figure: 'formula'; readonly formula: string }
  | { readonly figure: 'cell'; readonly sheet: string; readonly row: string; readonly column: string }
  | { readonly figure: 'findings'; readonly level: FindingLevel };

export interface FigureValue {
  /** Canonical; null for a blank. */
  readonly value: Scalar;
  /** undefined where the figure can't be had at all. */
  readonly type: ValueType | undefined;
  /** With its unit: '12.4 lb', 'blank'. */
  readonly shown: string;
}

/** A figure under the name by which people know it. */
export interface NamedFigure {
  readonly id: string;
  readonly name: string;
  readonly figure: Figure;
  /** The column that it folds, by ids, where it is one. */
  readonly of?: { readonly sheet: string; readonly column: string };
}

/** What a figure is in a book; or why it can't be had, in a sentence. */
export function figureIn(book: Book, figure: Figure): FigureValue {
  switch (figure.figure) {
    case 'formula': {
      const found = evaluate(book, formulaText(figure.formula, book.document.program.schema));
      if (!found.ok) return { value: { error: 'value', why: found.diagnostic.why }, type: undefined, shown: '' };
      const { value, type, shown } = found;
      return { value, type, shown: value === null ? 'blank' : isError(value) ? value.why : shown };
    }
    case 'cell': {
      const slot = book.document.slotOf(figure.sheet, figure.row);
      const column = columnOf(book, figure.sheet, figure.column);
      if (slot === undefined || column === undefined) return { value: null, type: undefined, shown: 'not there' };
      return { value: scalarAt(book, column, slot), type: column.type, shown: inWords(book, column, slot) };
    }
    case 'findings': {
      const count = new Findings(book).all().filter(({ level }) => level === figure.level).length;
      return { value: count, type: undefined, shown: String(count) };
    }
  }
}

/** The figure as a number that can be sought, drawn and compared; undefined for a blank, an error or a text. */
export function numberOf({ value, type }: FigureValue): number | undefined {
  if (typeof value === 'boolean') return value ? 1 : 0;
  return typeof value === 'number' && Number.isFinite(value) && type?.kind !== 'link' ? value : undefined;
}

/** A number of a figure's kind in words. */
export function sayNumber(book: Book, value: number, type: ValueType | undefined, decimals?: number): string {
  const { currency } = book.document.program;
  return type === undefined ? String(value) : showWithUnit(value, type, { currency, decimals });
}
