// One row per day, week or month between two dates.

import { civilDay, yearMonthDay } from '../../values/civil.ts';
import { FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
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
 * One row per step from the date in `first` to the one in `last` (each a column's slot 0). A row keeps its slot for as long as its
 * date is among them, so that what is typed on it, and what follows from it, stays with the date when the span moves.
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
      const wanted = datesBetween(frame, first, last, step);
      const slots = new Map<number, number>();
      const { live, length } = frame.table(table);
      const { values } = frame.column(date);
      for (let slot = 0; slot < length; slot++) if (live[slot] === 1) slots.set(values[slot] as number, slot);
      const gone = new Map(slots);
      for (const day of wanted) gone.delete(day);
      for (const slot of gone.values()) rows.remove(slot);
      for (const day of wanted) {
        if (slots.has(day)) continue;
        const slot = frame.ownTable(table).takeSlot();
        rows.add(slot);
        frame.write(date, slot, day, FILLED);
        slots.set(day, slot);
      }
      putInOrder(
        frame,
        table,
        wanted.map((day) => ({ day, slot: slots.get(day) ?? 0 })),
      );
    },
  };
}

/** By rising date; none while an end is not known. */
function datesBetween(frame: Frame, first: ColumnDef, last: ColumnDef, step: SpanStep): readonly number[] {
  const [from, to] = [frame.column(first), frame.column(last)];
  if (from.states[0] !== FILLED || to.states[0] !== FILLED) return [];
  const [start, end] = [from.values[0] ?? 0, to.values[0] ?? 0];
  const dates: number[] = [];
  for (let n = 0; n < LONGEST_SPAN; n++) {
    const day = stepped(start, step, n);
    if (day > end) break;
    dates.push(day);
  }
  return dates;
}

/** Rows stand by their dates; they need no labels while their slots stand so themselves. */
function putInOrder(
  frame: Frame,
  table: TableDef,
  rows: readonly { readonly day: number; readonly slot: number }[],
): void {
  const slotsRise = rows.every(({ slot }, at) => at === 0 || slot > (rows[at - 1]?.slot ?? 0));
  if (slotsRise && frame.table(table).labels === undefined) return;
  const own = frame.ownTable(table);
  for (const { day, slot } of rows) own.setLabel(slot, day);
  own.reordered();
}
