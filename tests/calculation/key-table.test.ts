// Groups by their key values, against a map of texts: whatever is asked and put in, every group is found by its own values alone.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KeyTable } from '../../engine/calculation/indexes/key-table.ts';

const value = fc.oneof(
  fc.integer({ min: -3, max: 40 }),
  fc.constantFrom(0.5, 1 / 3, 2 ** 31, 2 ** 40 + 1, -0, 1e300, 65536, 131072),
);

test.each([0, 1, 2, 3])('keys of %i values', (width) => {
  fc.assert(
    fc.property(fc.array(fc.array(value, { minLength: width, maxLength: width }), { maxLength: 120 }), (keys) => {
      const table = new KeyTable(width);
      const known = new Map<string, number>();
      for (const [at, key] of keys.entries()) {
        const name = key.map((one) => one + 0).join(' ');
        expect(table.find(key)).toBe(known.get(name) ?? -1);
        if (width === 1) expect(table.findOne(key[0] ?? 0)).toBe(known.get(name) ?? -1);
        if (known.has(name)) continue;
        expect(table.add(key)).toBe(known.size);
        known.set(name, known.size);
        if (at === 20) expect(table.copy().find(key)).toBe(known.size - 1);
      }
      for (const [name, group] of known) {
        const values = name.split(' ').slice(0, width).map(Number);
        expect(table.find(values)).toBe(group);
        expect(values.map((_, k) => table.key(group, k))).toEqual(values);
      }
    }),
  );
});

test('a copy goes on by itself', () => {
  const table = new KeyTable(1);
  table.add([7]);
  const copy = table.copy();
  for (let key = 100; key < 200; key++) copy.add([key]);
  expect(copy.findOne(150)).toBe(51);
  expect(table.findOne(150)).toBe(-1);
  expect(table.add([8])).toBe(1);
  expect(copy.findOne(8)).toBe(-1);
});
