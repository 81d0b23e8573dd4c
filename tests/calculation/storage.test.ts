// The parts that the calculation stands on: columns, texts and errors, row sets, the order of nodes.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Node, orderNodes, Source } from '../../engine/calculation/graph/graph.ts';
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

  test.each([3, 40])('takes %i rows from another as if they were added one by one', (count) => {
    const other = new RowSet();
    for (let row = count; row > 0; row--) other.add(3 * row);
    for (const known of [[], [3, 500], [1000]]) {
      const [set, byOne] = [new RowSet(), new RowSet()];
      for (const one of [set, byOne]) {
        for (const row of known) one.add(row);
        if (known.length === 1) one.clear();
      }
      set.addFrom(other);
      for (let at = 0; at < other.count; at++) byOne.add(other.at(at));
      expect([...set.sorted()]).toEqual([...byOne.sorted()]);
      set.add(3);
      set.add(4);
      expect([set.count, set.has(3 * count), set.has(3 * count + 3)]).toEqual([byOne.count + 1, true, false]);
    }
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
