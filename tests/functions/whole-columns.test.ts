// Ranks and places in a column, and the row of an equal value, which are found in an order made once for all rows that ask: the
// same as by walking the column, as the functions' own words have it. Random columns with ties, dust, blanks, texts and yes or no.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FUNCTIONS } from '../../engine/functions/index.ts';
import type { Scalar } from '../../engine/index.ts';
import { compareNumbers, equalNumbers } from '../../engine/values/tolerance.ts';

/** 0.3 and 0.1 + 0.2 among them. */
const numbers = fc.oneof(
  fc.integer({ min: -4, max: 4 }),
  fc.constantFrom(0.1 + 0.2, 0.3, -0.3, -(0.1 + 0.2), 1e9, 1e9 + 1e-7, 1e-9),
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }),
);
const columns = fc.array(fc.oneof({ weight: 8, arbitrary: numbers }, fc.constant(null)), { maxLength: 40 });
const mixed = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: numbers },
    { weight: 3, arbitrary: fc.constantFrom('Kale', 'kale', 'Leek', '') },
    fc.boolean(),
    fc.constant(null),
  ),
  { maxLength: 40 },
);

function call(name: string, ...args: (Scalar | readonly Scalar[])[]): unknown {
  const body = FUNCTIONS.get(name)?.body;
  if (body?.lane !== 'columns') throw new Error(`${name} takes no columns`);
  return body.compute(args);
}

const filled = (column: readonly (number | null)[]): readonly number[] => column.filter((one) => one !== null);

test('the rank of a value is one and how many lie beyond it', () => {
  fc.assert(
    fc.property(columns, numbers, fc.boolean(), (column, one, smallestFirst) => {
      const list = filled(column);
      const wanted = list[Math.abs(Math.trunc(one)) % Math.max(1, list.length)] ?? one;
      const equal = list.filter((other) => equalNumbers(other, wanted)).length;
      const beyond = list.filter((other) => compareNumbers(other, wanted) === (smallestFirst ? -1 : 1)).length;
      const rank = call('RANK', wanted, column, smallestFirst ? 1 : 0);
      const mean = call('RANK.AVG', wanted, column, smallestFirst ? 1 : 0);
      if (equal === 0) expect([rank, mean]).toMatchObject([{ error: 'missing' }, { error: 'missing' }]);
      else expect([rank, mean]).toEqual([beyond + 1, beyond + (equal + 1) / 2]);
    }),
  );
});

test('a value that is there has the share of the values below it, another lies straight between its neighbours', () => {
  fc.assert(
    fc.property(columns, numbers, (column, wanted) => {
      const rising = [...filled(column)].sort((a, b) => a - b);
      const share = call('PERCENTRANK', column, wanted);
      const [least = Number.NaN, most = Number.NaN] = [rising[0], rising.at(-1)];
      if (rising.length < 2 || wanted < least || wanted > most) expect(share).toMatchObject({ error: 'missing' });
      else {
        const equal = rising.findIndex((one) => equalNumbers(one, wanted));
        const above = rising.findIndex((one) => one > wanted);
        const [low = Number.NaN, high = Number.NaN] = rising.slice(above - 1);
        const place = equal >= 0 ? equal : above - 1 + (wanted - low) / (high - low);
        expect(share).toBe(place / (rising.length - 1));
      }
    }),
  );
});

test('the k-th value is that of the column put in order', () => {
  fc.assert(
    fc.property(columns, fc.integer({ min: 1, max: 40 }), (column, place) => {
      const rising = [...filled(column)].sort((a, b) => a - b);
      const [small, large] = [call('SMALL', column, place), call('LARGE', column, place)];
      if (place > rising.length) expect([small, large]).toMatchObject([{ error: 'number' }, { error: 'number' }]);
      else expect([small, large].map(Number)).toEqual([rising[place - 1], rising.at(-place)].map(Number));
    }),
  );
});

test('the row of an equal value is the first, whatever its kind', () => {
  fc.assert(
    fc.property(mixed, fc.oneof(numbers, fc.constantFrom('KALE', 'leek', 'rye'), fc.boolean()), (column, wanted) => {
      const alike = (one: Scalar): boolean => {
        if (typeof one === 'number' && typeof wanted === 'number') return equalNumbers(one, wanted);
        if (typeof one === 'string' && typeof wanted === 'string') return one.toLowerCase() === wanted.toLowerCase();
        return one === wanted;
      };
      const row = column.findIndex(alike);
      const found = call('MATCH', wanted, column, 0);
      if (row < 0) expect(found).toMatchObject({ error: 'missing' });
      else expect(found).toBe(row + 1);
    }),
  );
});

test('a column asked again after it was made anew is read anew', () => {
  expect(call('RANK', 2, [1, 2, 3])).toBe(2);
  expect(call('RANK', 2, [5, 2, 3])).toBe(3);
  expect(call('MATCH', 2, [1, 2, 3], 0)).toBe(2);
  expect(call('MATCH', 2, [2, 2, 3], 0)).toBe(1);
});
