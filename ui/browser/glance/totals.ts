// The totals of a season that matter, each with its range and the column it is the sum of. Pure; the season at a glance calls it.

import { type Book, settings, sheetView } from '../../../engine/index.ts';
import { PLANTING, PLANTINGS } from '../panels/columns.ts';
import { type AskedRow, askRows, bareFigure, hasColumns, sumOf } from '../pictures/kit/ask.ts';
import { type Interval, intervalWords } from '../pictures/kit/interval-words.ts';
import { columnOf } from '../store/sheets.ts';

export interface Total {
  readonly name: string;
  /** '150 to 230 lb, likely 187'. */
  readonly words: string;
  /** The likely figure with its unit, large; and the ends, small beside it; '' where it has none. */
  readonly likely: string;
  readonly ends: string;
  readonly note: string;
  /** '7 of 8 plantings without a date': plantings that it counts and the calendar does not show; '' where there are none. */
  readonly dateless: string;
  /** The door: the sheet and column it adds up. */
  readonly sheet: string;
  readonly column: string;
}

interface Sum {
  readonly name: string;
  readonly note: string;
  readonly sheet: string;
  readonly column: string;
  /** What the ends are of, where the column is the season's part of it. */
  readonly whole?: string;
  readonly low?: string;
  readonly high?: string;
}

const HARVEST: Sum = {
  name: 'Harvest that can be sold',
  note: 'by weight, picked this season',
  sheet: PLANTINGS,
  column: 'yield-this-season',
  whole: 'marketable-yield',
  low: 'marketable-yield-low',
  high: 'marketable-yield-high',
};

const SEED: Sum = { name: 'Seed to buy', note: 'what the packs cost', sheet: 'seed-order', column: 'cost' };

/** While nothing is said of who takes the harvest: what it is worth, and what the plantings alone cost. */
const IF_ALL_SELLS: readonly Sum[] = [
  HARVEST,
  {
    name: 'Takings if all of it sells',
    note: 'at the prices of Plantings',
    sheet: PLANTINGS,
    column: 'revenue-this-season',
    whole: 'revenue',
    low: 'revenue-low',
    high: 'revenue-high',
  },
  {
    name: 'Hours on the plantings',
    note: 'from seed to packed',
    sheet: PLANTINGS,
    column: 'hours-this-season',
    whole: 'hours',
    low: 'hours-low',
    high: 'hours-high',
  },
  {
    name: 'Left over if all of it sells',
    note: 'less seed, mix and hours',
    sheet: PLANTINGS,
    column: 'margin-this-season',
  },
  SEED,
];

const BUDGET = 'budget';
const SALES = 'sales';

/** Once outlets take something: what they pay, and all that the season costs. */
const BY_THE_BUDGET: readonly Sum[] = [
  HARVEST,
  { name: 'Sales', note: 'what outlets take', sheet: BUDGET, column: SALES, low: 'sales-low', high: 'sales-high' },
  { name: 'Hours of work', note: 'all jobs of the season', sheet: BUDGET, column: 'hours' },
  {
    name: 'Left over',
    note: 'sales less all costs, hours paid',
    sheet: BUDGET,
    column: 'margin',
    low: 'margin-low',
    high: 'margin-high',
  },
  SEED,
];

/** Those that the workbook has figures for. The ends are what comes if every planting turns out low, or high. */
export function seasonTotals(book: Book): readonly Total[] {
  return (isSold(book) ? BY_THE_BUDGET : IF_ALL_SELLS).flatMap((sum) => totalOf(book, sum) ?? []);
}

function isSold(book: Book): boolean {
  return hasColumns(book, { [BUDGET]: [SALES, 'hours', 'margin'] }) && (sumOf(askRows(book, BUDGET), SALES) ?? 0) > 0;
}

function totalOf(book: Book, { name, note, sheet, column, whole = column, low, high }: Sum): Total | undefined {
  if (!hasColumns(book, { [sheet]: [column] })) return undefined;
  const rows = askRows(book, sheet);
  const likely = sumOf(rows, column);
  if (likely === undefined) return undefined;
  const view = columnOf(sheetView(book, sheet), column);
  const end = (of: string | undefined): number =>
    of === undefined || !hasColumns(book, { [sheet]: [whole, of] })
      ? likely
      : rows.reduce((sum, row) => sum + ofSeason(row, whole, of), 0);
  const interval: Interval = {
    low: bareFigure(view, end(low)),
    likely: bareFigure(view, likely),
    high: bareFigure(view, end(high)),
  };
  const unit = view?.unit ?? '';
  const words = intervalWords(interval, unit, settings(book).writing);
  const parts = words.split(', likely ');
  return {
    name,
    words,
    likely: parts[1] === undefined ? words : `${parts[1]} ${unit}`,
    ends: parts[1] === undefined ? '' : (parts[0] ?? ''),
    note,
    dateless: datelessWords(rows.filter((row) => (row.figure(column) ?? 0) !== 0)),
    sheet,
    column,
  };

  /** An end by the part of the whole that is of this season; the likely figure where a planting has none. */
  function ofSeason(row: AskedRow, entire: string, of: string): number {
    const [part = 0, all, end] = [column, entire, of].map((id) => row.figure(id));
    return all === undefined || all === 0 || end === undefined ? part : (end * part) / all;
  }

  function datelessWords(counted: readonly AskedRow[]): string {
    if (sheet !== PLANTINGS || !hasColumns(book, { [sheet]: [PLANTING.plantedOut] })) return '';
    const without = counted.filter((row) => row.figure(PLANTING.plantedOut) === undefined).length;
    return without === 0 ? '' : `${without} of ${counted.length} plantings without a date`;
  }
}
