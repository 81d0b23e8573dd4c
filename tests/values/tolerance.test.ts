// Dust is forgiven at the size of the numbers compared: not more for small numbers beside large ones, not less.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  compareNumbers,
  equalNumbers,
  settled,
  tolerantCeil,
  tolerantFloor,
  tolerantRound,
} from '../../engine/values/tolerance.ts';

const numbers = fc.double({ min: -1e12, max: 1e12, noNaN: true }).filter((x) => Math.abs(x) > 1e-200);

test('numbers a few last bits apart are equal, one part in a million millions is not', () => {
  fc.assert(
    fc.property(numbers, (x) => {
      expect(equalNumbers(x, x * (1 + 4e-15))).toBe(true);
      expect(equalNumbers(x, x * (1 + 1e-12))).toBe(false);
      expect(equalNumbers(x, 0)).toBe(false);
    }),
  );
  expect(equalNumbers(1e-300, 0)).toBe(false);
  expect(equalNumbers(0, -0)).toBe(true);
});

test('the verdict is the same either way round, and at every size', () => {
  fc.assert(
    fc.property(numbers, numbers, fc.integer({ min: -60, max: 60 }), (a, b, power) => {
      expect(equalNumbers(a, b)).toBe(equalNumbers(b, a));
      expect(equalNumbers(a * 2 ** power, b * 2 ** power)).toBe(equalNumbers(a, b));
      expect(Math.sign(compareNumbers(a, b)) + Math.sign(compareNumbers(b, a))).toBe(0);
    }),
  );
});

test('a whole number is that number whatever dust it carries', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), (whole) => {
      for (const dusty of [whole * (1 + 4e-16), whole * (1 - 4e-16)]) {
        expect(
          [settled(dusty), tolerantFloor(dusty), tolerantCeil(dusty), tolerantRound(dusty)].map((x) => x + 0),
        ).toEqual(Array(4).fill(whole + 0));
      }
    }),
  );
});
