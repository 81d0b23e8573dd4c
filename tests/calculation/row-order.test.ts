// Slots put in order by keys, whatever way the keys lie: as a stable sort of the language's own would.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rowsByKeys } from '../../engine/calculation/row-order.ts';

/** Whole and near one another, spread about, crowded about one value with others far off, and of any size. */
const keys = fc.oneof(
  fc.array(fc.integer({ min: -50, max: 50 }), { maxLength: 300 }),
  fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 300 }),
  fc.array(fc.oneof(fc.double({ min: 0, max: 1e-3, noNaN: true }), fc.constantFrom(0.5, 1e9)), { maxLength: 300 }),
  fc.array(fc.double({ noNaN: true }), { maxLength: 100 }),
);

test('slots stand by rising key, those of equal keys as they stood', () => {
  fc.assert(
    fc.property(keys, (given) => {
      const slots = Int32Array.from(given, (_, at) => 1000 - at);
      const stable = Array.from(given, (key, at) => ({ key, slot: 1000 - at })).sort((a, b) =>
        a.key < b.key ? -1 : a.key > b.key ? 1 : 0,
      );
      expect(Array.from(rowsByKeys(slots, Float64Array.from(given)))).toEqual(stable.map(({ slot }) => slot));
    }),
    { numRuns: 500 },
  );
});
