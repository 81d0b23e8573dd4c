// Rows that follow from other data: one for each row, for each day, week or month, for each pair, for each date.
import { describe, expect, test } from 'vitest';
import { eachMaker, eventsMaker, pairsMaker, spanMaker } from '../../engine/calculation/makers.ts';
import { Model, TableData } from '../../engine/calculation/model.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { civilDay, isoDate } from '../../engine/values/civil.ts';
import { BLANK, type Column, FAULT, FILLED } from '../../engine/values/column.ts';

function tableOf(name: string, rows: number): TableData {
  const table = new TableData(name);
  table.addRows(rows);
  return table;
}

function rowsOf(...rows: number[]): RowSet {
  const set = new RowSet();
  for (const row of rows) set.add(row);
  return set;
}

function all(): RowSet {
  const set = new RowSet();
  set.addAll();
  return set;
}

const told = (set: RowSet): string => (set.all ? 'all' : [...set.sorted()].join(' '));
const listed = (table: TableData, column: Column): string =>
  [...table.rows()].map((row) => `${row}:${column.values[row]}`).join(' ');

describe('one row for each row', () => {
  function setting() {
    const source = tableOf('Varieties', 3);
    const table = new TableData('Order');
    const link = table.addColumn('Variety', true);
    return { source, table, link, maker: eachMaker(table, link, source) };
  }

  test('has the source row’s slot, and comes and goes with it', () => {
    const { source, table, link, maker } = setting();
    let changed = new RowSet();
    maker.make(all(), changed);
    expect(listed(table, link)).toBe('0:0 1:1 2:2');
    expect(told(changed)).toBe('0 1 2');
    changed = new RowSet();
    source.setLive(1, false);
    source.addRows(1);
    maker.make(rowsOf(1, 2, 3), changed);
    expect(listed(table, link)).toBe('0:0 2:2 3:3');
    expect(told(changed)).toBe('1 3');
    changed = new RowSet();
    maker.make(all(), changed);
    expect(changed.empty).toBe(true);
    source.setLive(0, false);
    source.setLive(1, true);
    maker.make(rowsOf(1), changed);
    expect(listed(table, link)).toBe('0:0 1:1 2:2 3:3');
    maker.make(all(), changed);
    expect(listed(table, link)).toBe('1:1 2:2 3:3');
  });

  test('rows that died before they were made are not made', () => {
    const { source, table, maker } = setting();
    source.setLive(2, false);
    const changed = new RowSet();
    maker.make(rowsOf(2), changed);
    expect(changed.empty).toBe(true);
    expect(table.length).toBe(0);
  });
});

describe('one row for each day, week or month', () => {
  function dates(step: 'day' | 'week' | 'month', from: string, to: string): string[] {
    const farm = tableOf('Farm', 1);
    const [first, last] = [farm.addColumn('First', false), farm.addColumn('Last', false)];
    const day = (text: string): number => Math.round(Date.parse(text) / 86_400_000);
    first.write(0, day(from), FILLED);
    last.write(0, day(to), FILLED);
    const table = new TableData('Days');
    const date = table.addColumn('Date', false);
    spanMaker(table, date, first, last, step).make(all(), new RowSet());
    return [...table.rows()].map((row) => isoDate(date.values[row] ?? 0));
  }

  test.each([
    ['day', '2027-02-27', '2027-03-02', ['2027-02-27', '2027-02-28', '2027-03-01', '2027-03-02']],
    ['day', '2028-02-28', '2028-03-01', ['2028-02-28', '2028-02-29', '2028-03-01']],
    ['week', '2027-01-04', '2027-01-24', ['2027-01-04', '2027-01-11', '2027-01-18']],
    ['week', '2027-01-04', '2027-01-25', ['2027-01-04', '2027-01-11', '2027-01-18', '2027-01-25']],
    ['month', '2027-01-31', '2027-04-30', ['2027-01-31', '2027-02-28', '2027-03-31', '2027-04-30']],
    ['month', '2027-11-15', '2028-02-14', ['2027-11-15', '2027-12-15', '2028-01-15']],
    ['day', '2027-03-02', '2027-03-02', ['2027-03-02']],
    ['day', '2027-03-02', '2027-03-01', []],
  ] as const)('%s from %s to %s', (step, from, to, wanted) => {
    expect(dates(step, from, to)).toEqual(wanted);
  });

  test('a span of centuries is cut off at 4,000 rows', () => {
    expect(dates('day', '1900-01-01', '2027-01-01')).toHaveLength(4000);
  });

  test('moves with its ends, tells the rows that moved, and is empty while an end is blank or faulty', () => {
    const farm = tableOf('Farm', 1);
    const [first, last] = [farm.addColumn('First', false), farm.addColumn('Last', false)];
    const table = new TableData('Days');
    const date = table.addColumn('Date', false);
    const maker = spanMaker(table, date, first, last, 'day');
    const made = (from: number, to: number, state = FILLED, fromState = FILLED): string => {
      first.write(0, from, fromState);
      last.write(0, to, state);
      const changed = new RowSet();
      maker.make(all(), changed);
      return `${listed(table, date)} changed ${told(changed)}`;
    };
    expect(made(10, 12)).toBe('0:10 1:11 2:12 changed 0 1 2');
    expect(made(10, 11)).toBe('0:10 1:11 changed 2');
    expect(made(10, 13)).toBe('0:10 1:11 2:12 3:13 changed 2 3');
    expect(made(11, 13)).toBe('0:11 1:12 2:13 changed 0 1 2 3');
    expect(made(11, 13, BLANK)).toBe(' changed 0 1 2');
    expect(made(11, 13, FILLED, FAULT)).toBe(' changed ');
  });
});

test('one row for each pair, in the order of the first sheet, then the second', () => {
  const [beds, weeks] = [tableOf('Beds', 2), tableOf('Weeks', 3)];
  const table = new TableData('Bed weeks');
  const [bed, week] = [table.addColumn('Bed', true), table.addColumn('Week', true)];
  const maker = pairsMaker(table, [bed, week], [beds, weeks]);
  const pairs = (): string => {
    const changed = new RowSet();
    maker.make(all(), changed);
    expect(changed.all).toBe(true);
    return [...table.rows()].map((row) => `${bed.values[row]}${week.values[row]}`).join(' ');
  };
  expect(pairs()).toBe('00 01 02 10 11 12');
  weeks.setLive(1, false);
  expect(pairs()).toBe('00 02 10 12');
  beds.setLive(0, false);
  expect(pairs()).toBe('10 12');
  beds.addRows(1);
  expect(pairs()).toBe('10 12 20 22');
});

test('one row for each filled date, in date order; equal dates in the order of declaration, then of rows', () => {
  const model = new Model();
  const plantings = tableOf('Plantings', 3);
  const beds = tableOf('Beds', 1);
  const [sown, ready] = [plantings.addColumn('Sown', false), plantings.addColumn('Ready', false)];
  const cleared = beds.addColumn('Cleared', false);
  const table = new TableData('Jobs');
  const [date, job] = [table.addColumn('Date', false), table.addColumn('Job', true)];
  const [planting, bed] = [table.addColumn('Planting', true), table.addColumn('Bed', true)];
  const maker = eventsMaker(model, table, date, job, [
    { table: plantings, column: sown, event: 'Sow', about: planting },
    { table: plantings, column: ready, event: 'Harvest', about: planting },
    { table: beds, column: cleared, event: 'Clear', about: bed },
  ]);
  const day = civilDay(2027, 3, 1);
  const jobs = (): string[] => {
    const changed = new RowSet();
    maker.make(all(), changed);
    expect(changed.all).toBe(true);
    return [...table.rows()].map((row) => {
      const about = planting.states[row] === FILLED ? `planting ${planting.values[row]}` : `bed ${bed.values[row]}`;
      return `${isoDate(date.values[row] ?? 0)} ${model.texts.text(job.values[row] ?? -1)} ${about}`;
    });
  };
  expect(jobs()).toEqual([]);
  sown.write(0, day + 1, FILLED);
  sown.write(2, day, FILLED);
  ready.write(0, day + 1, FILLED);
  ready.write(1, 7, FAULT);
  cleared.write(0, day + 1, FILLED);
  expect(jobs()).toEqual([
    '2027-03-01 Sow planting 2',
    '2027-03-02 Sow planting 0',
    '2027-03-02 Harvest planting 0',
    '2027-03-02 Clear bed 0',
  ]);
  plantings.setLive(2, false);
  cleared.write(0, day - 1, FILLED);
  expect(jobs()).toEqual(['2027-02-28 Clear bed 0', '2027-03-02 Sow planting 0', '2027-03-02 Harvest planting 0']);
  expect(maker.readsRows).toEqual([plantings, beds]);
  expect(maker.columns).toEqual([date, job, planting, bed]);
});
