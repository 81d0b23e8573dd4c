// Change sets that join: rows that either names, in rising order, against the language's own sets.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isChanged, joinChanges, NO_CHANGE } from '../../engine/index.ts';

const rows = fc.uniqueArray(fc.nat({ max: 60 }), { maxLength: 40 }).map((list) => Int32Array.from(list).sort());

test('joined change sets name the rows of both, rising, and know which they name', () => {
  fc.assert(
    fc.property(rows, rows, (one, other) => {
      const of = (changed: Int32Array) => ({
        ...NO_CHANGE,
        cells: [{ sheet: 'beds', column: 'length', rows: changed }],
      });
      const [joined] = joinChanges(of(one), of(other)).cells;
      const wanted = [...new Set([...one, ...other])].sort((a, b) => a - b);
      expect(joined?.rows).toEqual(Int32Array.from(wanted));
      const named = new Set(wanted);
      for (let row = 0; row <= 61; row++) expect(isChanged(joined?.rows ?? 'all', row)).toBe(named.has(row));
    }),
  );
});

test('where all rows of a column may have changed, all are named', () => {
  const some = { ...NO_CHANGE, cells: [{ sheet: 'beds', column: 'length', rows: Int32Array.of(1, 4) }] };
  const all = { ...NO_CHANGE, cells: [{ sheet: 'beds', column: 'length', rows: 'all' as const }] };
  expect(joinChanges(some, all).cells).toEqual(all.cells);
  expect(isChanged('all', 7)).toBe(true);
});
