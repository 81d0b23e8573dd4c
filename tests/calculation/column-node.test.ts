// The node of one computed column: which rows it works out, what it writes and which rows it says became another value.
import { describe, expect, test } from 'vitest';
import { ColumnNode } from '../../engine/calculation/graph/column-node.ts';
import { dirtyRows, Graph } from '../../engine/calculation/graph/graph.ts';
import { AT_ONCE } from '../../engine/calculation/graph/parts.ts';
import { BATCH, constantKernel, type Kernel, room, scratch } from '../../engine/calculation/kernels/vector.ts';
import { Layout } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { isError } from '../../engine/values/error.ts';
import { emptyFrame, told } from './frames.ts';

/** A node over `rows` rows whose kernel gives what `of` says of each row; `asked` keeps the batches it was asked for. */
function nodeOver(rows: number, of: (row: number) => number, over: readonly number[] = []) {
  const layout = new Layout();
  const table = layout.addTable('plantings');
  const def = layout.addColumn(table, 'stations', false);
  const node = new ColumnNode(def);
  const frame = emptyFrame(layout, new Graph([node]).order.length);
  frame.addRows(table, rows);
  for (const row of over) frame.ownTyped(def).over.add(row);
  const asked: string[] = [];
  const out = room(scratch(), BATCH);
  const kernel: Kernel = (batch) => {
    const listed = batch.rows?.subarray(0, batch.count);
    asked.push(listed === undefined ? `${batch.from}+${batch.count}` : [...listed].join(' '));
    for (let i = 0; i < batch.count; i++) out.values[i] = of(listed?.[i] ?? batch.from + i);
    return out;
  };
  node.kernel = kernel;
  const run = (...dirty: number[]): string => {
    const waiting = dirtyRows(frame, node);
    if (dirty.length === 0) waiting.addAll();
    for (const row of dirty) waiting.add(row);
    const changed = new RowSet();
    node.run(frame, changed);
    waiting.clear();
    return told(changed);
  };
  const values = (): number[] => [...frame.column(def).values.subarray(0, rows)];
  const states = (): number[] => [...frame.column(def).states.subarray(0, rows)];
  return { frame, table, def, node, asked, run, values, states };
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

  test('many are worked out in parts where the time is short; what is left waits, with what changes meanwhile', () => {
    let grown = 0;
    const length = 2 * AT_ONCE + 5;
    const { frame, node, run, values } = nodeOver(length, (row) => row + grown);
    run();
    grown = 1;
    const waiting = dirtyRows(frame, node);
    const part = (goOn: boolean): { readonly left: boolean; readonly changed: number } => {
      const changed = new RowSet();
      const left = node.runSome(frame, changed, () => goOn);
      if (!left) waiting.clear();
      return { left, changed: changed.count };
    };
    waiting.addAll();
    expect(part(false)).toEqual({ left: true, changed: AT_ONCE });
    expect(values()[AT_ONCE - 1]).toBe(AT_ONCE);
    expect(values()[AT_ONCE]).toBe(AT_ONCE);
    grown = 2;
    waiting.add(3);
    expect(part(false)).toEqual({ left: true, changed: AT_ONCE });
    expect(values().slice(2, 5)).toEqual([3, 5, 5]);
    expect(part(false)).toEqual({ left: false, changed: 6 });
    expect(values().at(-1)).toBe(length + 1);
    waiting.addAll();
    grown = 3;
    expect(part(true)).toEqual({ left: false, changed: length });
    expect(values()).toEqual(Array.from({ length }, (_, row) => row + 3));
  });

  test('a few changed rows are told one by one, up to a quarter of the sheet and sixteen at least', () => {
    const raised = new Set<number>();
    const { run } = nodeOver(400, (row) => (raised.has(row) ? -1 : row));
    run();
    raised.add(3).add(399);
    expect(run()).toBe('3 399');
    for (let row = 100; row < 200; row++) raised.add(row);
    expect(run()).toBe(Array.from({ length: 100 }, (_, i) => 100 + i).join(' '));
    for (let row = 200; row < 301; row++) raised.add(row);
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
    const { frame, table, def, run, values } = nodeOver(4, (row) => row + 10, [2]);
    frame.write(def, 2, 99, FILLED);
    frame.setLive(table, 1, false);
    expect(run()).toBe('0 3');
    expect(values()).toEqual([10, 0, 99, 13]);
    expect(run(1, 2)).toBe('');
    expect(values()).toEqual([10, 0, 99, 13]);
    const dead = nodeOver(3, (row) => row + 1);
    dead.frame.setLive(dead.table, 0, false);
    expect(dead.run()).toBe('1 2');
    expect(dead.values()).toEqual([0, 2, 3]);
  });
});

describe('values', () => {
  test('one for all goes into every row, alike over blanks and over filled cells', () => {
    const { node, run, values, states } = nodeOver(3, () => 0);
    node.kernel = constantKernel(7, FILLED);
    expect(run()).toBe('0 1 2');
    expect(values()).toEqual([7, 7, 7]);
    node.kernel = constantKernel(8, FILLED);
    expect(run()).toBe('0 1 2');
    expect(values()).toEqual([8, 8, 8]);
    node.kernel = constantKernel(0, BLANK);
    expect(run(1)).toBe('1');
    expect(states()).toEqual([FILLED, BLANK, FILLED]);
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

  test('the column’s stamp is another after a change and stays without one', () => {
    let grown = 0;
    const { frame, def, run } = nodeOver(3, (row) => row + grown);
    run();
    const first = frame.column(def).stamp;
    run();
    expect(frame.column(def).stamp).toBe(first);
    grown = 1;
    run();
    expect(frame.column(def).stamp).toBeGreaterThan(first);
  });

  test('are written in the frame that runs alone, and nothing is copied where nothing changes', () => {
    let grown = 0;
    const { frame, def, node, run, values } = nodeOver(3, (row) => row + grown);
    run();
    const branch = frame.branch();
    const shared = branch.column(def);
    dirtyRows(branch, node).addAll();
    node.run(branch, new RowSet());
    expect(branch.column(def)).toBe(shared);
    grown = 5;
    node.run(branch, new RowSet());
    expect(values()).toEqual([0, 1, 2]);
    expect([...branch.column(def).values.subarray(0, 3)]).toEqual([5, 6, 7]);
  });

  test('an error gets the cell in which it began, and keeps a place it has', () => {
    const { frame, node, run, values } = nodeOver(2, () => 0);
    const { faults } = frame;
    const bare = faults.number({ error: 'divide', why: 'Nought.' });
    node.kernel = constantKernel(bare, FAULT);
    run();
    const kept = faults.error(values()[1] ?? -1);
    expect(kept).toEqual({ error: 'divide', why: 'Nought.', at: { sheet: 'plantings', row: 1, column: 'stations' } });
    const placed = faults.number({ error: 'divide', why: 'Nought.', at: { sheet: 'beds', row: 4, column: 'free' } });
    node.kernel = constantKernel(placed, FAULT);
    run();
    expect(values()[1]).toBe(placed);
    expect(node.name).toBe('plantings/stations');
  });
});

describe('a kernel that fails', () => {
  /** Over eight rows or more than a batch: fails on some rows, gives ten times the row on others. */
  function failing(rows: number, fails: (row: number) => boolean) {
    return nodeOver(rows, (row) => {
      if (fails(row)) throw new Error('a slip of the program');
      return 10 * row;
    });
  }

  test('leaves an error of that cell in the rows it fails on, and works out the others', () => {
    const { frame, run, values, states } = failing(8, (row) => row === 2 || row === 5);
    expect(run()).toBe('0 1 2 3 4 5 6 7');
    expect(states()).toEqual([FILLED, FILLED, FAULT, FILLED, FILLED, FAULT, FILLED, FILLED]);
    expect(values().filter((_, row) => row !== 2 && row !== 5)).toEqual([0, 10, 30, 40, 60, 70]);
    for (const row of [2, 5]) {
      const error = frame.faults.error(values()[row] ?? -1);
      expect(isError(error)).toBe(true);
      expect(error).toEqual({
        error: 'value',
        why: expect.stringMatching(/^This could not be worked out.+Change a value it rests on to go on\.$/),
        at: { sheet: 'plantings', row, column: 'stations' },
      });
    }
    expect(run()).toBe('');
  });

  test('among listed rows and in a single row alike, and a row that comes right is filled again', () => {
    const wrong = new Set([3, 6]);
    const { run, states } = failing(12, (row) => wrong.has(row));
    expect(run(1, 3, 6)).toBe('1 3 6');
    expect(
      states()
        .map((state, row) => (state === FAULT ? row : -1))
        .filter((row) => row >= 0),
    ).toEqual([3, 6]);
    wrong.delete(6);
    expect(run(6)).toBe('6');
    expect(states()[6]).toBe(FILLED);
    expect(run(3)).toBe('');
    expect(states()[3]).toBe(FAULT);
  });

  test('in one batch leaves the other batches as they are', () => {
    const { run, states, values } = failing(2 * BATCH + 3, (row) => row === BATCH + 1);
    run();
    const faulty = states().flatMap((state, row) => (state === FILLED ? [] : [row]));
    expect(faulty).toEqual([BATCH + 1]);
    expect([values()[0], values()[BATCH], values()[2 * BATCH + 2]]).toEqual([0, 10 * BATCH, 10 * (2 * BATCH + 2)]);
  });

  test('on no row but a batch of several gives the values one by one', () => {
    const { node, run, values, states } = nodeOver(5, (row) => row);
    const { kernel } = node;
    node.kernel = (batch) => {
      if (batch.count > 1) throw new Error('too many at once');
      return kernel(batch);
    };
    expect(run()).toBe('0 1 2 3 4');
    expect(values()).toEqual([0, 1, 2, 3, 4]);
    expect(states()).toEqual([FILLED, FILLED, FILLED, FILLED, FILLED]);
  });

  test('keeps blanks and faults of the rows that it does not fail on', () => {
    const { node, run, values, states } = nodeOver(4, (row) => row);
    const out = { ...room(scratch(), BATCH), clean: false };
    node.kernel = (batch) => {
      if (batch.count > 1 || batch.from === 3) throw new Error('a slip of the program');
      out.values[0] = 7;
      out.states[0] = [FILLED, BLANK, FILLED][batch.from] ?? FILLED;
      return out;
    };
    expect(run()).toBe('0 2 3');
    expect(states()).toEqual([FILLED, BLANK, FILLED, FAULT]);
    expect(values().slice(0, 3)).toEqual([7, 0, 7]);
  });

  test('over cells typed over and dead rows leaves them alone', () => {
    const { frame, table, def, run, states, values } = nodeOver(4, () => {
      throw new Error('always');
    }, [1]);
    frame.write(def, 1, 7, FILLED);
    frame.setLive(table, 2, false);
    expect(run()).toBe('0 3');
    expect(states()).toEqual([FAULT, FILLED, FILLED, FAULT]);
    expect([values()[1], values()[2]]).toEqual([7, 0]);
  });
});
