// The four ways in which a sheet's rows follow from other data. Rows keep their slots where the source allows it: a row made
// from a row has that row's slot, the n-th day has slot n; pairs and events are laid out anew when what they rest on changes.

import { civilDay, yearMonthDay } from '../values/civil.ts';
import { type Column, FILLED } from '../values/column.ts';
import type { Maker } from './maker-node.ts';
import type { Model, TableData } from './model.ts';
import type { RowSet } from './row-set.ts';

/** One row per row of `source`; `link` holds the source row's slot. */
export function eachMaker(table: TableData, link: Column, source: TableData): Maker {
  return {
    table,
    columns: [link],
    readsRows: [source],
    readsColumns: [],
    make(dirty, changed) {
      const look = (row: number): void => {
        const exists = source.exists(row);
        if (!exists && table.live[row] !== 1) return;
        if ((table.live[row] === 1) === exists) return;
        table.setLive(row, exists);
        if (exists) link.write(row, row, FILLED);
        changed.add(row);
      };
      if (dirty.all) for (let row = 0; row < Math.max(source.length, table.length); row++) look(row);
      else for (let i = 0; i < dirty.count; i++) look(dirty.at(i));
    },
  };
}

/** A date some steps after another; months keep the day of the month, or its last day where there is none. */
function stepped(first: number, step: 'day' | 'week' | 'month', n: number): number {
  if (step === 'day') return first + n;
  if (step === 'week') return first + 7 * n;
  const { year, month, day } = yearMonthDay(first);
  const lastOfMonth = civilDay(year, month + n + 1, 1) - 1;
  return Math.min(civilDay(year, month + n, 1) + day - 1, lastOfMonth);
}

/** Past this many days, weeks or months a span is taken for a slip of the pen and made no longer. */
const LONGEST_SPAN = 4000;

/** One row per day, week or month from the date in `first` to the one in `last` (each a column's slot 0). */
export function spanMaker(
  table: TableData,
  date: Column,
  first: Column,
  last: Column,
  step: 'day' | 'week' | 'month',
): Maker {
  return {
    table,
    columns: [date],
    readsRows: [],
    readsColumns: [first, last],
    make(_dirty, changed) {
      const known = first.states[0] === FILLED && last.states[0] === FILLED;
      const [from, to] = [first.values[0] ?? 0, last.values[0] ?? 0];
      let count = 0;
      while (known && count < LONGEST_SPAN && stepped(from, step, count) <= to) count++;
      for (let row = 0; row < Math.max(count, table.length); row++) {
        const alive = row < count;
        const lived = table.live[row] === 1;
        if (alive !== lived) table.setLive(row, alive);
        const wrote = alive && date.write(row, stepped(from, step, row), FILLED);
        if (alive !== lived || wrote) changed.add(row);
      }
    },
  };
}

/** Lets exactly the first `count` slots live. */
function layOut(table: TableData, count: number): void {
  for (let row = 0; row < Math.max(count, table.length); row++) {
    if ((table.live[row] === 1) !== row < count) table.setLive(row, row < count);
  }
}

/** One row per pair of rows of two tables, in the order of the first, then the second. */
export function pairsMaker(
  table: TableData,
  links: readonly [Column, Column],
  sources: readonly [TableData, TableData],
): Maker {
  return {
    table,
    columns: links,
    readsRows: sources,
    readsColumns: [],
    make(_dirty, changed) {
      const [left, right] = [sources[0].rows().slice(), sources[1].rows().slice()];
      layOut(table, left.length * right.length);
      let slot = 0;
      for (const a of left) {
        for (const b of right) {
          links[0].write(slot, a, FILLED);
          links[1].write(slot, b, FILLED);
          slot++;
        }
      }
      changed.addAll();
    },
  };
}

export interface DatedColumn {
  readonly table: TableData;
  readonly column: Column;
  readonly event: string;
  /** The link column, on the sheet of events, that names the row. */
  readonly about: Column;
}

/** One row per filled date, in date order; equal dates in the order of declaration, then of rows. */
export function eventsMaker(
  model: Model,
  table: TableData,
  date: Column,
  event: Column,
  dated: readonly DatedColumn[],
): Maker {
  return {
    table,
    columns: [date, event, ...new Set(dated.map((one) => one.about))],
    readsRows: [...new Set(dated.map((one) => one.table))],
    readsColumns: dated.map((one) => one.column),
    make(_dirty: RowSet, changed: RowSet) {
      const found: { readonly day: number; readonly of: DatedColumn; readonly row: number }[] = [];
      for (const of of dated) {
        for (const row of of.table.rows()) {
          if (of.column.states[row] === FILLED) found.push({ day: of.column.values[row] ?? 0, of, row });
        }
      }
      found.sort((a, b) => a.day - b.day);
      layOut(table, 0);
      layOut(table, found.length);
      found.forEach(({ day, of, row }, slot) => {
        date.write(slot, day, FILLED);
        event.write(slot, model.texts.code(of.event), FILLED);
        of.about.write(slot, row, FILLED);
      });
      changed.addAll();
    },
  };
}
