// One cell as faces show it, and its value alone.

import type { ProgramColumn } from '../schema/compile.ts';
import { fromCanonical } from '../units/unit.ts';
import type { Scalar } from '../values/error.ts';
import { entryText, unitAfter } from '../values/show.ts';
import { TEXT } from '../values/type.ts';
import { type Book, columnOf } from './book.ts';
import { rangeText } from './ranges.ts';
import { scalarAt, shownCell, shownUnit, typedUnit } from './shown.ts';
import { shownRange } from './shown-range.ts';

/** Where a cell's value comes from. */
export type Origin =
  /** Typed by a person. */
  | 'entered'
  /** From the formula. */
  | 'computed'
  /** Typed over a computed cell; can be taken back. */
  | 'override'
  /** The formula stands in where nothing was typed. */
  | 'default'
  /** From what the rows of the sheet are made of. */
  | 'made';

export interface CellView {
  /** Canonical: dates civil days, links slots, quantities in canonical units; null for a blank. */
  readonly value: Scalar;
  /** The number in the column's own unit for quantities; else undefined. */
  readonly number: number | undefined;
  /** As shown, without any unit. */
  readonly figure: string;
  /** The unit as shown where the cell was typed in another than the column's: 'cm'; else ''. */
  readonly unit: string;
  /** The unit that follows the figure where no header says it: 'in', 'cm', '%'; '' for none, or where the figure names it. */
  readonly fullUnit: string;
  /** Figure and unit together: '20 cm', or '8' in the column's own. */
  readonly text: string;
  /** The ends of a figure that is worked out and lies between two others, then rounded: '900 to 1,500'; else ''. */
  readonly ends: string;
  /** What an editor opens with; of a range, its ends. */
  readonly entry: string;
  /** How far it may be off, as typed: '80..90%'; '' where that is not said. */
  readonly range: string;
  readonly origin: Origin;
}

const NO_CELL: CellView = {
  value: null,
  number: undefined,
  figure: '',
  unit: '',
  fullUnit: '',
  text: '',
  ends: '',
  entry: '',
  range: '',
  origin: 'entered',
};

export function cellView(book: Book, sheet: string, row: number, column: string): CellView {
  const found = columnOf(book, sheet, column);
  return found === undefined ? NO_CELL : viewCell(book, found, row);
}

function viewCell(book: Book, column: ProgramColumn, row: number): CellView {
  const type = column.type ?? TEXT;
  const value = scalarAt(book, column, row);
  const isNumber = typeof value === 'number' && (type.kind === 'number' || type.kind === 'temperature');
  const range = isNumber || type.kind === 'date' ? shownRange(book, column, row) : undefined;
  const { figure, unit } = range === undefined ? shownCell(book, column, row) : { figure: range.figure, unit: '' };
  const text = unit === '' ? figure : unit === '%' ? `${figure}%` : `${figure} ${unit}`;
  const { writing } = book.document;
  const { currency } = book.document.program;
  return {
    value,
    number: isNumber ? fromCanonical(type.unit, value) : undefined,
    figure,
    unit,
    get fullUnit() {
      return isNumber ? unitAfter(figure, type, { unit: shownUnit(book, column, row), currency }) : '';
    },
    text,
    ends: range?.ends ?? '',
    get entry() {
      return type.kind === 'link'
        ? figure
        : this.range || entryText(value, type, { unit: typedUnit(book, column, row), currency, writing });
    },
    get range() {
      return rangeText(book, column, row);
    },
    origin: originOf(book, column, row),
  };
}

export function originOf({ document }: Book, column: ProgramColumn, row: number): Origin {
  if (column.role === 'entered' || column.role === 'made') return column.role;
  const typed = document.isTyped(column, row);
  if (column.role === 'default') return typed ? 'entered' : 'default';
  return typed ? 'override' : 'computed';
}

/** The canonical value alone; cheaper than cellView. */
export function cellValue(book: Book, sheet: string, row: number, column: string): Scalar {
  const found = columnOf(book, sheet, column);
  return found === undefined ? null : scalarAt(book, found, row);
}
