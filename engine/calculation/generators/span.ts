// One row per day, week or month between two dates.

import { civilDay, yearMonthDay } from '../../values/civil.ts';
import { FILLED } from '../../values/column.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import type { RowGenerator } from './generator.ts';

export type SpanStep = 'day' | 'week' | 'month';

/** A date some steps after another; months keep the day of the month, or its last day where there is none. */
export function stepped(first: number, step: SpanStep, n: number): number {
  if (step === 'day') return first + n;
  if (step === 'week') return first + 7 * n;
  const { year, month, day } = yearMonthDay(first);
  const lastOfMonth = civilDay(year, month + n + 1, 1) - 1;
  return Math.min(civilDay(year, month + n, 1) + day - 1, lastOfMonth);
}

/** Past this many days, weeks or months a span is taken for a slip of the pen and made no longer. */
export const LONGEST_SPAN = 4000;

/**
 * One row per step from the date in `first` to the one in `last` (each a column's slot 0). The n-th row has slot n, so
 * when the first date moves every row is known by another date.
 */
export function spanRows(
  table: TableDef,
  date: ColumnDef,
  first: ColumnDef,
  last: ColumnDef,
  step: SpanStep,
): RowGenerator {
  return {
    table,
    columns: [date],
    inputs: [{ column: first }, { column: last }],
    generate(frame, _dirty, rows) {
      const [from, to] = [frame.column(first), frame.column(last)];
      const known = from.states[0] === FILLED && to.states[0] === FILLED;
      const [start, end] = [from.values[0] ?? 0, to.values[0] ?? 0];
      let count = 0;
      while (known && count < LONGEST_SPAN && stepped(start, step, count) <= end) count++;
      for (let row = frame.table(table).length - 1; row >= count; row--) {
        if (frame.table(table).live[row] === 1) rows.remove(row);
      }
      for (let row = 0; row < count; row++) {
        const day = stepped(start, step, row);
        const lives = frame.table(table).live[row] === 1;
        if (!lives) rows.add(row);
        if (frame.write(date, row, day, FILLED) && lives) rows.rename(row);
      }
    },
  };
}
