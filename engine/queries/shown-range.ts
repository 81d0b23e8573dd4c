// A figure that lies between two others of its row, as faces show it: rounded, with its ends beside it. The columns that hold
// the ends are declared with the figure's; the value itself stays exact, for formulas, copies and files.

import type { ProgramColumn } from '../schema/compile.ts';
import { shownNumber } from '../units/unit.ts';
import { decimalText, showValue } from '../values/show.ts';
import { type Book, columnOf } from './book.ts';
import type { Uncertain } from './ranges.ts';
import { scalarAt } from './shown.ts';

export interface ShownRange {
  /** What is likely: '1,200'. */
  readonly figure: string;
  /** '900 to 1,500'. */
  readonly ends: string;
}

/** Of the width of an interval, what no figure of it is shown finer than. */
const FINEST = 1 / 100;

/** Each figure of an interval to two significant digits, and none finer than a hundredth of the interval's width. */
export function roundedInterval({ low, likely, high }: Uncertain): Uncertain {
  const least = powerOf(Math.abs(high - low) * FINEST);
  const round = (figure: number): number => {
    const step = Math.max(least, powerOf(figure) / 10);
    return step === 0 ? 0 : Number((Math.round(figure / step) * step).toPrecision(12));
  };
  return { low: round(low), likely: round(likely), high: round(high) };
}

/** The power of ten of a figure's first digit: 100 for 187; 0 for 0. */
function powerOf(figure: number): number {
  return figure === 0 ? 0 : 10 ** Math.floor(Math.log10(Math.abs(figure)));
}

/**
 * How a cell of such a column is shown; undefined where the column has no ends, the figure was typed, an end is blank or both
 * are the same: then the figure stands alone, as any other.
 */
export function shownRange(book: Book, column: ProgramColumn, row: number): ShownRange | undefined {
  const { declaration, type } = column;
  if (declaration.range === undefined || type === undefined || book.document.isTyped(column, row)) return undefined;
  const sheet = column.def.table.id;
  const at = (id: string): number | undefined => {
    const end = columnOf(book, sheet, id);
    const value = end?.type?.kind === type.kind ? scalarAt(book, end, row) : undefined;
    return typeof value === 'number' ? value : undefined;
  };
  const likely = scalarAt(book, column, row);
  const [low, high] = [at(declaration.range.low), at(declaration.range.high)];
  if (typeof likely !== 'number' || low === undefined || high === undefined || low >= high) return undefined;
  const { writing, program } = book.document;
  if (type.kind === 'date') {
    const say = (day: number): string => showValue(day, type, { currency: program.currency, writing });
    return { figure: say(likely), ends: spanWords(say(low), say(high)) };
  }
  if (type.kind !== 'number') return undefined;
  const inUnit = (value: number): number => shownNumber(type.unit, value);
  const rounded = roundedInterval({ low: inUnit(low), likely: inUnit(likely), high: inUnit(high) });
  if (rounded.low === rounded.high) return undefined;
  const say = (figure: number): string => decimalText(figure, 0, 12, writing);
  return { figure: say(rounded.likely), ends: `${say(rounded.low)} to ${say(rounded.high)}` };
}

/** '3 Jul to 14 Jul 2027': the year once where both end in the same. */
function spanWords(from: string, until: string): string {
  const [year] = / \d{4}$/.exec(until) ?? [];
  return `${year !== undefined && from.endsWith(year) ? from.slice(0, -year.length) : from} to ${until}`;
}
