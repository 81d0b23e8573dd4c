// What a selection of cells adds up to: how many are filled, and for numbers of one unit their sum, mean, least and most;
// for dates the first and the last. Pure; the bottom line shows it.

import { type CellView, type ColumnView, decimalText, type Writing } from '../../../engine/index.ts';
import { figureParts } from './figures.ts';

export interface Summary {
  readonly cells: number;
  readonly filled: number;
  /** Where every filled number stands in one unit. */
  readonly numbers:
    | {
        readonly count: number;
        readonly sum: number;
        readonly mean: number;
        readonly least: number;
        readonly most: number;
        readonly unit: string;
        readonly decimals: number;
      }
    | undefined;
  /** Civil days, where the selection holds dates and no numbers. */
  readonly dates: { readonly first: number; readonly last: number } | undefined;
}

export interface SummedCell {
  readonly column: ColumnView;
  readonly cell: CellView;
}

/** Sums what is selected. Numbers of unlike units aren't added: `numbers` is undefined then. */
export function summarize(cells: readonly SummedCell[], writing?: Writing): Summary {
  const filled = cells.filter(({ cell }) => cell.value !== null);
  const numbers = filled.filter(({ cell }) => cell.number !== undefined && Number.isFinite(cell.number));
  const units = new Set(numbers.map(({ column }) => column.unit));
  const dates = filled.flatMap(({ column, cell }) =>
    column.type?.kind === 'date' && typeof cell.value === 'number' ? [cell.value] : [],
  );
  return {
    cells: cells.length,
    filled: filled.length,
    numbers: units.size === 1 ? sumOf(numbers, writing?.decimal) : undefined,
    dates:
      dates.length > 0 && numbers.length === 0
        ? { first: dates.reduce((a, b) => Math.min(a, b)), last: dates.reduce((a, b) => Math.max(a, b)) }
        : undefined,
  };
}

function sumOf(cells: readonly SummedCell[], mark: Writing['decimal'] | undefined): Summary['numbers'] {
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  let decimals = 0;
  for (const { cell } of cells) {
    const n = cell.number ?? 0;
    sum += n;
    least = Math.min(least, n);
    most = Math.max(most, n);
    decimals = Math.max(decimals, (figureParts(cell.figure, mark)?.fraction.length ?? 1) - 1);
  }
  const unit = cells[0]?.column.unit ?? '';
  return { count: cells.length, sum, mean: sum / cells.length, least, most, unit, decimals };
}

/** A number of a summary as the column's cells are written, with as many decimals. */
export function summaryNumber(n: number, decimals: number, writing?: Writing): string {
  return decimalText(n, decimals, decimals, writing);
}
