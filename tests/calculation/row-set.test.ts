// Sets of rows against the language's own sets: whatever is added, shared, listed and taken out, they hold the same rows.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { runs } from '../runs.ts';

/** Rows, and the same rows as the language keeps them. */
interface Pair {
  readonly set: RowSet;
  held: Set<number>;
}

/** All rows there are, where a set says all. */
const LENGTH = 400;

type Act =
  | { readonly act: 'add'; readonly rows: readonly number[] }
  | { readonly act: 'add from' | 'all' | 'list' | 'clear' | 'sort' }
  | { readonly act: 'drop'; readonly share: number };

const row = fc.nat({ max: LENGTH - 1 });
const act: fc.Arbitrary<Act> = fc.oneof(
  fc.record({ act: fc.constant('add' as const), rows: fc.array(row, { maxLength: 12 }) }),
  fc.record({
    act: fc.constant('add' as const),
    // A stretch of rows without a gap, as most sheets are worked out.
    rows: fc.tuple(row, fc.nat({ max: 200 })).map(([from, count]) => {
      const most = Math.min(count, LENGTH - from);
      return Array.from({ length: most }, (_, i) => from + i);
    }),
  }),
  fc.record({ act: fc.constantFrom('add from', 'add from', 'all', 'list', 'clear', 'sort') }),
  fc.record({ act: fc.constant('drop' as const), share: fc.double({ min: 0, max: 1, noNaN: true }) }),
);

const rising = (rows: Iterable<number>): number[] => [...rows].sort((a, b) => a - b);

function perform(one: Pair, other: Pair, act: Act): void {
  const { set } = one;
  switch (act.act) {
    case 'add':
      for (const row of act.rows) set.add(row);
      if (!set.all) one.held = new Set([...one.held, ...act.rows]);
      return;
    case 'add from':
      set.addFrom(other.set);
      one.held = new Set([...one.held, ...other.held]);
      return;
    case 'all':
      set.addAll();
      one.held = new Set(Array.from({ length: LENGTH }, (_, row) => row));
      return;
    case 'list':
      if (set.all) set.listAll(LENGTH);
      return;
    case 'clear':
      set.clear();
      one.held = new Set();
      return;
    case 'sort':
      if (!set.all) expect([...set.sorted()]).toEqual(rising(one.held));
      return;
    case 'drop': {
      if (set.all) return;
      const count = Math.floor(set.count * act.share);
      set.dropFirst(count);
      one.held = new Set(rising(one.held).slice(count));
    }
  }
}

test('a set of rows holds what was put into it', () => {
  const step = fc.record({ of: fc.nat({ max: 2 }), by: fc.nat({ max: 2 }), act });
  fc.assert(
    fc.property(fc.array(step, { minLength: 10, maxLength: 60 }), (steps) => {
      const pairs = Array.from({ length: 3 }, (): Pair => ({ set: new RowSet(), held: new Set() }));
      for (const { of, by, act } of steps) {
        const [one, other] = [pairs[of], pairs[by]];
        if (one === undefined || other === undefined || (one === other && act.act === 'add from')) continue;
        perform(one, other, act);
        const { set, held } = one;
        expect(set.empty).toBe(held.size === 0);
        expect(set.all ? LENGTH : set.count).toBe(held.size);
        expect([0, 7, LENGTH - 1].map((row) => set.has(row))).toEqual([0, 7, LENGTH - 1].map((row) => held.has(row)));
      }
      for (const { set, held } of pairs) if (!set.all) expect([...set.copy().sorted()]).toEqual(rising(held));
    }),
    { numRuns: runs(100, 2000) },
  );
});

test('rows handed on from set to set, again and again, take no more room than they need', () => {
  const last = 1500;
  const sets = Array.from({ length: 6 }, () => new RowSet());
  for (let round = 0; round < 4; round++) {
    sets.forEach((set, k) => {
      // Downwards, so that each has room for its own and no more at first.
      for (let row = last - 100 * k; row >= 0; row -= 7) set.add(row);
    });
    // Each takes those of the one before, in a ring.
    sets.forEach((set, k) => {
      const before = sets.at(k - 1);
      if (before !== undefined) set.addFrom(before);
    });
    expect(Math.max(...sets.map(({ room }) => room))).toBeLessThanOrEqual(2 * (last + 1));
    for (const set of sets) set.clear();
  }
});
