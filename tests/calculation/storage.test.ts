// The parts that the calculation stands on: columns, row sets, group indexes kept row by row against ones made from scratch,
// the order of nodes.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Frame } from '../../engine/calculation/frame.ts';
import { type Node, orderNodes, Source } from '../../engine/calculation/graph/graph.ts';
import { GroupIndex, type KeyColumn } from '../../engine/calculation/indexes/group-index.ts';
import { type ColumnDef, Layout, type TableDef } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { BLANK, Column, FAULT, FILLED } from '../../engine/values/column.ts';
import { Faults, Texts } from '../../engine/values/texts.ts';
import { emptyFrame, rowsOf, told } from './frames.ts';

describe('a column', () => {
  test('starts blank, counts what is not filled, and says whether a write changed anything', () => {
    const column = new Column(false);
    column.grow(3);
    expect(column.exceptions).toBe(3);
    expect(column.write(0, 2.5, FILLED)).toBe(true);
    expect(column.write(0, 2.5, FILLED)).toBe(false);
    expect(column.write(1, 7, FAULT)).toBe(true);
    expect(column.exceptions).toBe(2);
    expect(column.write(1, 0, BLANK)).toBe(true);
    expect(column.exceptions).toBe(2);
    expect(column.write(1, 4, FILLED)).toBe(true);
    expect(column.exceptions).toBe(1);
  });

  test('keeps no minus zero and no value under a blank', () => {
    const column = new Column(false);
    column.grow(1);
    column.write(0, -0, FILLED);
    expect(Object.is(column.values[0], 0)).toBe(true);
    column.write(0, 12, BLANK);
    expect(column.values[0]).toBe(0);
  });

  test('grows without losing what it holds', () => {
    const column = new Column(true);
    for (let row = 0; row < 100; row++) {
      column.grow(row + 1);
      column.write(row, row * 3, FILLED);
    }
    expect(column.length).toBe(100);
    expect(column.exceptions).toBe(0);
    expect(Array.from({ length: 100 }, (_, row) => column.values[row])).toEqual(
      Array.from({ length: 100 }, (_, row) => row * 3),
    );
    expect(column.bytes()).toBeGreaterThanOrEqual(500);
  });
});

describe('texts and errors', () => {
  test('equal texts share a number; texts alike but for case share a folded one', () => {
    const texts = new Texts();
    const [amber, loud] = [texts.code('Amber'), texts.code('AMBER')];
    expect(texts.code('Amber')).toBe(amber);
    expect(loud).not.toBe(amber);
    expect(texts.fold(loud)).toBe(texts.fold(amber));
    expect(texts.text(loud)).toBe('AMBER');
    expect(texts.foldOf('amber')).toBe(texts.fold(amber));
    expect(texts.foldOf('red')).toBe(-1);
  });

  test('errors are told apart by kind, sentence and place', () => {
    const faults = new Faults();
    const one = faults.number({ error: 'divide', why: 'x' });
    expect(faults.number({ error: 'divide', why: 'x' })).toBe(one);
    const at = { sheet: 't', row: 1, column: 'a' };
    const placed = faults.number({ error: 'divide', why: 'x', at });
    expect(placed).not.toBe(one);
    expect(faults.error(placed)).toEqual({ error: 'divide', why: 'x', at });
  });
});

describe('a row set', () => {
  test('holds each row once, sorts them, and forgets them all', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 500 })), (rows) => {
        const set = new RowSet();
        for (const row of rows) set.add(row);
        const wanted = [...new Set(rows)].sort((a, b) => a - b);
        expect([...set.sorted()]).toEqual(wanted);
        expect(wanted.every((row) => set.has(row))).toBe(true);
        set.clear();
        expect(set.empty).toBe(true);
        expect(wanted.some((row) => set.has(row))).toBe(false);
      }),
    );
  });

  test('all takes in everything', () => {
    const set = new RowSet();
    set.add(3);
    const other = new RowSet();
    other.addAll();
    set.addFrom(other);
    expect(set.all).toBe(true);
    expect(set.count).toBe(0);
    expect(set.has(12)).toBe(true);
    set.add(4);
    expect(set.count).toBe(0);
  });
});

/** A table with key columns, and an index of its rows by them. */
function grouped(keys: readonly Omit<KeyColumn, 'column'>[], leftOutToo = false) {
  const layout = new Layout();
  const table = layout.addTable('t');
  const columns = keys.map(({ text }, k) => layout.addColumn(table, `k${k}`, text));
  const grouping = { table, keys: columns.map((column, k) => ({ column, text: keys[k]?.text === true })), leftOutToo };
  const frame = emptyFrame(layout);
  const made = (): GroupIndex => {
    const index = new GroupIndex(grouping, frame.token);
    index.fromScratch(frame);
    return index;
  };
  return { table, columns, frame, made };
}

function grouping(index: GroupIndex, values: readonly number[]): readonly (readonly number[])[] {
  return values.map((value) => {
    const { rows, count } = index.members(index.findOne(value));
    return [...rows.subarray(0, count)];
  });
}

const VALUES = [0, 1, 2, 3, 4, 5];

describe('a group index kept row by row equals one made from scratch', () => {
  const change = fc.tuple(fc.nat({ max: 30 }), fc.integer({ min: -1, max: 5 }), fc.boolean());

  /** Gives one row its key and its life. */
  function put(frame: Frame, table: TableDef, key: ColumnDef, [row, value, alive]: [number, number, boolean]): void {
    frame.setLive(table, row, alive);
    if (alive) frame.write(key, row, Math.max(0, value), value < 0 ? BLANK : FILLED);
  }

  test('after any changes of keys and rows, told one by one', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 80 }), (changes) => {
        const { table, columns, frame, made } = grouped([{ text: false }]);
        const [key] = columns;
        if (key === undefined) throw new Error('no key');
        const kept = made();
        const touched = new RowSet();
        for (const one of changes) {
          put(frame, table, key, one);
          kept.update(frame, rowsOf(one[0]), touched);
        }
        expect(grouping(kept, VALUES)).toEqual(grouping(made(), VALUES));
      }),
    );
  });

  test('after any changes of keys, rows and their order, told many at a time', () => {
    const places = fc.array(fc.tuple(change, fc.option(fc.nat({ max: 9 }))), { maxLength: 12 });
    fc.assert(
      fc.property(fc.array(places, { maxLength: 12 }), (batches) => {
        const { table, columns, frame, made } = grouped([{ text: false }]);
        const [key] = columns;
        if (key === undefined) throw new Error('no key');
        const kept = made();
        const touched = new RowSet();
        for (const batch of batches) {
          for (const [one, label] of batch) {
            put(frame, table, key, one);
            if (label !== null) frame.ownTable(table).setLabel(one[0], label);
          }
          frame.ownTable(table).reordered();
          kept.update(frame, rowsOf(...batch.map(([[row]]) => row)), touched);
        }
        expect(grouping(kept, VALUES)).toEqual(grouping(made(), VALUES));
      }),
    );
  });

  test('the groups a row left and joined are both told', () => {
    const { table, columns, frame, made } = grouped([{ text: false }]);
    const [key] = columns;
    if (key === undefined) throw new Error('no key');
    put(frame, table, key, [0, 1, true]);
    const index = made();
    const touched = new RowSet();
    index.update(frame, rowsOf(0), touched);
    expect(touched.empty).toBe(true);
    frame.write(key, 0, 2, FILLED);
    index.update(frame, rowsOf(0), touched);
    expect([...touched.sorted()]).toEqual([index.findOne(1), index.findOne(2)]);
    expect(index.keyValue(index.findOne(2), 0)).toBe(2);
  });

  test('the group of a row that moved in the order of the table is told, as its rows stand otherwise now', () => {
    const { table, columns, frame, made } = grouped([{ text: false }]);
    const [key] = columns;
    if (key === undefined) throw new Error('no key');
    for (const row of [0, 1, 2]) put(frame, table, key, [row, 4, true]);
    frame.ownTable(table).setLabel(0, 0);
    const index = made();
    frame.ownTable(table).setLabel(0, 10);
    const touched = new RowSet();
    index.update(frame, rowsOf(0), touched);
    expect(told(touched)).toBe(String(index.findOne(4)));
    expect(grouping(index, [4])).toEqual([[1, 2, 0]]);
  });

  test('texts are grouped ignoring case; several columns make one key', () => {
    const { table, columns, frame, made } = grouped([{ text: true }, { text: false }]);
    const [name, size] = columns;
    if (name === undefined || size === undefined) throw new Error('no keys');
    ['Red', 'RED', 'blue'].forEach((text, row) => {
      frame.setLive(table, row, true);
      frame.write(name, row, frame.texts.code(text), FILLED);
      frame.write(size, row, 1, FILLED);
    });
    const index = made();
    expect(index.members(index.find([frame.texts.foldOf('red'), 1])).count).toBe(2);
    expect(index.find([frame.texts.foldOf('red'), 2])).toBe(-1);
  });

  test('rows that the condition on their sheet leaves out are in no group, unless the way back along links is looked for', () => {
    for (const leftOutToo of [false, true]) {
      const { table, columns, frame, made } = grouped([{ text: false }, { text: false }], leftOutToo);
      const [key, shown] = columns;
      table.shown = shown;
      if (key === undefined || shown === undefined) throw new Error('no keys');
      for (const row of [0, 1]) {
        put(frame, table, key, [row, 4, true]);
        frame.write(shown, row, row, FILLED);
      }
      expect(made().find([4, 0])).toBe(leftOutToo ? 0 : -1);
      expect(made().find([4, 1])).toBe(leftOutToo ? 1 : 0);
    }
  });
});

describe('the order of nodes', () => {
  function node(name: string): Node {
    const made: Node = {
      name,
      dependencies: [],
      source: new Source(undefined),
      lanes: 1,
      rank: 0,
      firstSet: 0,
      run: () => undefined,
    };
    return made;
  }

  test('every node comes after those that feed it', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat({ max: 11 }), fc.nat({ max: 11 }))), (pairs) => {
        const nodes = Array.from({ length: 12 }, (_, i) => node(`${i}`));
        // Only from smaller to larger numbers, so that there is no circle.
        for (const [a, b] of pairs)
          if (a !== b) nodes[Math.max(a, b)]?.dependencies.push(nodes[Math.min(a, b)] ?? node(''));
        const order = orderNodes([...nodes].reverse());
        expect(order).toHaveLength(12);
        for (const one of order)
          for (const feed of one.dependencies) expect(order.indexOf(feed)).toBeLessThan(order.indexOf(one));
      }),
    );
  });
});
