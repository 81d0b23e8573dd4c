// The parts that recalculation stands on: columns, row sets, group indexes kept row by row against ones made from scratch,
// the order of nodes and the circles in it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Node, orderNodes, Source } from '../../engine/calculation/graph.ts';
import { GroupIndex } from '../../engine/calculation/group-index.ts';
import { TableData } from '../../engine/calculation/model.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { BLANK, Column, FAULT, FILLED } from '../../engine/values/column.ts';
import { Faults, Texts } from '../../engine/values/texts.ts';

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
    const at = { table: 'T', row: 1, column: 'A' };
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

describe('a group index kept row by row equals one made from scratch', () => {
  const change = fc.tuple(fc.nat({ max: 30 }), fc.integer({ min: -1, max: 5 }), fc.boolean());

  test('after any changes of keys and rows', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 80 }), (changes) => {
        const table = new TableData('T');
        const key = table.addColumn('Key', false);
        const texts = new Texts();
        const kept = new GroupIndex(table, [{ column: key, text: false }], texts, false);
        kept.fromScratch();
        const touched = new RowSet();
        for (const [row, value, alive] of changes) {
          table.setLive(row, alive);
          if (alive) key.write(row, Math.max(0, value), value < 0 ? BLANK : FILLED);
          kept.update(row, touched);
        }
        const fresh = new GroupIndex(table, [{ column: key, text: false }], texts, false);
        fresh.fromScratch();
        for (let value = 0; value <= 5; value++) {
          const rowsOf = (index: GroupIndex): number[] => {
            const { rows, count } = index.members(index.findOne(value));
            return [...rows.subarray(0, count)];
          };
          expect(rowsOf(kept)).toEqual(rowsOf(fresh));
        }
      }),
    );
  });

  test('the groups a row left and joined are both told', () => {
    const table = new TableData('T');
    const key = table.addColumn('Key', false);
    table.setLive(0, true);
    key.write(0, 1, FILLED);
    const index = new GroupIndex(table, [{ column: key, text: false }], new Texts(), false);
    index.fromScratch();
    const touched = new RowSet();
    index.update(0, touched);
    expect(touched.empty).toBe(true);
    key.write(0, 2, FILLED);
    index.update(0, touched);
    expect([...touched.sorted()]).toEqual([index.findOne(1), index.findOne(2)]);
    expect(index.keyValue(index.findOne(2), 0)).toBe(2);
  });

  test('texts are grouped ignoring case; several columns make one key', () => {
    const table = new TableData('T');
    const texts = new Texts();
    const name = table.addColumn('Name', true);
    const size = table.addColumn('Size', false);
    ['Red', 'RED', 'blue'].forEach((text, row) => {
      table.setLive(row, true);
      name.write(row, texts.code(text), FILLED);
      size.write(row, 1, FILLED);
    });
    const keys = [
      { column: name, text: true },
      { column: size, text: false },
    ];
    const index = new GroupIndex(table, keys, texts, false);
    index.fromScratch();
    expect(index.members(index.find([texts.foldOf('red'), 1])).count).toBe(2);
    expect(index.find([texts.foldOf('red'), 2])).toBe(-1);
  });
});

describe('the order of nodes', () => {
  function node(name: string): Node {
    const made: Node = {
      name,
      dirty: new RowSet(),
      feeds: [],
      source: new Source(undefined),
      rank: 0,
      run: () => undefined,
    };
    return made;
  }

  test('every node comes after those that feed it', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat({ max: 11 }), fc.nat({ max: 11 }))), (pairs) => {
        const nodes = Array.from({ length: 12 }, (_, i) => node(`${i}`));
        // Only from smaller to larger numbers, so that there is no circle.
        for (const [a, b] of pairs) if (a !== b) nodes[Math.max(a, b)]?.feeds.push(nodes[Math.min(a, b)] ?? node(''));
        const { order, circles } = orderNodes([...nodes].reverse());
        expect(circles).toEqual([]);
        expect(order).toHaveLength(12);
        for (const one of order)
          for (const feed of one.feeds) expect(order.indexOf(feed)).toBeLessThan(order.indexOf(one));
      }),
    );
  });

  test('a circle is named, and only its own nodes are left out', () => {
    const [a, b, c, d] = [node('a'), node('b'), node('c'), node('d')];
    a.feeds.push(b);
    b.feeds.push(c);
    c.feeds.push(a);
    d.feeds.push(a);
    const { order, circles } = orderNodes([a, b, c, d]);
    expect(circles.map((circle) => circle.map(({ name }) => name))).toEqual([['a', 'b', 'c']]);
    expect(order.map(({ name }) => name)).toEqual(['d']);
  });
});
