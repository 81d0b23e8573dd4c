// The node of one computed column: which rows it works out, what it writes and which rows it says became another value.
import { describe, expect, test } from 'vitest';
import { ColumnNode } from '../../engine/calculation/column-node.ts';
import { TableData } from '../../engine/calculation/model.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { BATCH, constantKernel, type Kernel, scratch } from '../../engine/calculation/vector.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { Faults } from '../../engine/values/texts.ts';

/** A node over `rows` rows whose kernel gives what `of` says of each row; `asked` keeps the batches it was asked for. */
function nodeOver(rows: number, of: (row: number) => number, overrides: ReadonlySet<number> = new Set()) {
  const table = new TableData('Plantings');
  table.addRows(rows);
  table.addColumn('Stations', false);
  const faults = new Faults();
  const node = new ColumnNode(table, 'Stations', overrides, faults);
  const asked: string[] = [];
  const out = scratch();
  const kernel: Kernel = (batch) => {
    const listed = batch.rows?.subarray(0, batch.count);
    asked.push(listed === undefined ? `${batch.from}+${batch.count}` : [...listed].join(' '));
    for (let i = 0; i < batch.count; i++) out.values[i] = of(listed?.[i] ?? batch.from + i);
    return out;
  };
  node.kernel = kernel;
  const run = (...dirty: number[]): string => {
    if (dirty.length === 0) node.dirty.addAll();
    for (const row of dirty) node.dirty.add(row);
    const changed = new RowSet();
    node.run(changed);
    node.dirty.clear();
    return changed.all ? 'all' : [...changed.sorted()].join(' ');
  };
  const values = (): number[] => [...node.column.values.subarray(0, rows)];
  return { table, node, faults, asked, run, values };
}

describe('rows', () => {
  test('all are worked out in batches; those that changed are told, and that all did where many did', () => {
    let grown = 0;
    const { asked, run, values } = nodeOver(2 * BATCH + 5, (row) => row + grown);
    expect(run()).toBe('all');
    expect(asked).toEqual([`0+${BATCH}`, `${BATCH}+${BATCH}`, `${2 * BATCH}+5`]);
    expect(values()).toEqual(Array.from({ length: 2 * BATCH + 5 }, (_, row) => row));
    expect(run()).toBe('');
    grown = 1;
    expect(run()).toBe('all');
    expect(values()[2 * BATCH + 4]).toBe(2 * BATCH + 5);
  });

  test('a few changed rows are told one by one, up to a sixteenth of the sheet and sixteen at least', () => {
    const raised = new Set<number>();
    const { run } = nodeOver(1600, (row) => (raised.has(row) ? -1 : row));
    run();
    raised.add(3).add(1500);
    expect(run()).toBe('3 1500');
    for (let row = 100; row < 200; row++) raised.add(row);
    expect(run()).toBe(Array.from({ length: 100 }, (_, i) => 100 + i).join(' '));
    for (let row = 300; row < 401; row++) raised.add(row);
    expect(run()).toBe('all');
    const small = new Set<number>();
    const few = nodeOver(40, (row) => (small.has(row) ? -1 : row));
    few.run();
    for (let row = 0; row < 16; row++) small.add(row);
    expect(few.run()).toBe(Array.from({ length: 16 }, (_, i) => i).join(' '));
    for (let row = 20; row < 37; row++) small.add(row);
    expect(few.run()).toBe('all');
  });

  test('a single dirty row is asked for as a run, several as a list in order, more than half as all', () => {
    const { asked, run } = nodeOver(8, (row) => row);
    run(5);
    run(6, 1, 3);
    run(1, 2, 3, 4);
    run(1, 2, 3, 4, 7);
    expect(asked).toEqual(['5+1', '1 3 6', '1 2 3 4', '0+8']);
  });

  test('more dirty rows than a batch holds are listed batch by batch', () => {
    const { asked, run, values } = nodeOver(3 * BATCH, (row) => 2 * row);
    const dirty = Array.from({ length: BATCH + 1 }, (_, i) => 2 * i);
    run();
    asked.length = 0;
    run(...dirty);
    expect(asked.map((batch) => batch.split(' ').length)).toEqual([BATCH, 1]);
    expect(asked[1]).toBe(`${2 * BATCH}+1`);
    expect(values()[2 * BATCH]).toBe(4 * BATCH);
  });

  test('dead rows and rows typed over keep what they hold', () => {
    const { table, node, run, values } = nodeOver(4, (row) => row + 10, new Set([2]));
    node.column.write(2, 99, FILLED);
    table.setLive(1, false);
    expect(run()).toBe('0 3');
    expect(values()).toEqual([10, 0, 99, 13]);
    expect(run(1, 2)).toBe('');
    expect(values()).toEqual([10, 0, 99, 13]);
    const dead = nodeOver(3, (row) => row + 1);
    dead.table.setLive(0, false);
    expect(dead.run()).toBe('1 2');
    expect(dead.values()).toEqual([0, 2, 3]);
  });
});

describe('values', () => {
  test('one for all goes into every row, alike over blanks and over filled cells', () => {
    const { node, run, values } = nodeOver(3, () => 0);
    node.kernel = constantKernel(7, FILLED);
    expect(run()).toBe('0 1 2');
    expect(values()).toEqual([7, 7, 7]);
    node.kernel = constantKernel(8, FILLED);
    expect(run()).toBe('0 1 2');
    expect(values()).toEqual([8, 8, 8]);
    node.kernel = constantKernel(0, BLANK);
    expect(run(1)).toBe('1');
    expect([...node.column.states.subarray(0, 3)]).toEqual([FILLED, BLANK, FILLED]);
  });

  test('minus nought is kept as nought', () => {
    let sign = 1;
    const { run, values } = nodeOver(2, (row) => sign * row);
    run();
    sign = -1;
    run();
    expect(Object.is(values()[0], 0)).toBe(true);
    expect(values()[1]).toBe(-1);
  });

  test('the column’s version rises with a change and stays without one', () => {
    let grown = 0;
    const { node, run } = nodeOver(3, (row) => row + grown);
    run();
    const first = node.column.version;
    run();
    expect(node.column.version).toBe(first);
    grown = 1;
    run();
    expect(node.column.version).toBeGreaterThan(first);
  });

  test('an error gets the cell in which it began, and keeps a place it has', () => {
    const { node, faults, run } = nodeOver(2, () => 0);
    const bare = faults.number({ error: 'divide', why: 'Nought.' });
    node.kernel = constantKernel(bare, FAULT);
    run();
    const kept = faults.error(node.column.values[1] ?? -1);
    expect(kept).toEqual({ error: 'divide', why: 'Nought.', at: { table: 'Plantings', row: 1, column: 'Stations' } });
    const placed = faults.number({ error: 'divide', why: 'Nought.', at: { table: 'Beds', row: 4, column: 'Free' } });
    node.kernel = constantKernel(placed, FAULT);
    run();
    expect(node.column.values[1]).toBe(placed);
    expect(node.name).toBe('Plantings / Stations');
  });
});
