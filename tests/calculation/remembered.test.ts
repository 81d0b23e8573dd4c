// Powers and dear functions that remember what they gave give, bit for bit, what working each one out gives: also where more differ than
// are remembered, where hardly any comes again, and at both noughts. Powers are the language's own.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arithmeticKernel } from '../../engine/calculation/kernels/point-kernels.ts';
import { remembered } from '../../engine/calculation/kernels/remembered.ts';
import { constantKernel, type Kernel, scratch } from '../../engine/calculation/kernels/vector.ts';
import { FILLED } from '../../engine/values/column.ts';
import { given, run } from './kernel-rows.ts';

/** Numbers as a kernel of their own gives them. */
function numbers(values: readonly number[]): Kernel {
  const vector = { ...scratch(), values: Float64Array.from(values), states: new Uint8Array(values.length) };
  return () => vector;
}

const few = fc.constantFrom(0, -0, 0.5, 0.97, 1, 2, 3.25, -2);
const many = fc.double({ min: 0, max: 40, noNaN: true });

test('powers of many rows are those of each by itself', () => {
  const pairs = fc.array(fc.tuple(fc.oneof(few, many), fc.oneof(few, many)), { minLength: 32, maxLength: 200 });
  fc.assert(
    fc.property(fc.array(pairs, { minLength: 1, maxLength: 40 }), (batches) => {
      let pair: readonly (readonly [number, number])[] = [];
      const side =
        (k: 0 | 1): Kernel =>
        (batch) =>
          numbers(pair.map((one) => one[k]))(batch);
      const kernel = arithmeticKernel('^', side(0), side(1), { divide: 1, overflow: 2 });
      for (pair of batches) {
        const expected = pair.map(([a, b]) => {
          const power = a === 0 && b < 0 ? Number.NaN : a ** b;
          return Number.isFinite(power) ? `${power}` : '!2';
        });
        expect(given(kernel, pair.length)).toBe(expected.join(' '));
      }
    }),
  );
});

test('powers keep the sign of nought apart', () => {
  const power = arithmeticKernel('^', numbers([0, ...new Array<number>(39).fill(-0)]), constantKernel(3, FILLED), {
    divide: 1,
    overflow: 2,
  });
  for (let round = 0; round < 3; round++) {
    const { values } = run(power, { rows: undefined, from: 0, count: 40 });
    expect([values[0], values[1], values[39]]).toEqual([0, -0, -0]);
  }
});

test.each([2, 3, 4, 5])('a function of %i numbers gives what it gives', (count) => {
  // Its answer tells every one of its numbers, in their order, and the sign of a nought.
  const told = (...given: number[]): number => given.reduce((sum, one) => sum * 1.37 + Math.atan2(one, -1), 0);
  const asked = fc.array(fc.oneof(few, many), { minLength: count, maxLength: count });
  fc.assert(
    fc.property(fc.array(asked, { minLength: 40, maxLength: 400 }), fc.integer({ min: 1, max: 12 }), (all, rounds) => {
      const known = remembered(told, count);
      for (let round = 0; round < rounds; round++) for (const one of all) expect(known(...one)).toBe(told(...one));
    }),
    { numRuns: 40 },
  );
});

test('what comes again and again is worked out a few times at most', () => {
  let workedOut = 0;
  const known = remembered((a = 0, b = 0, c = 0) => {
    workedOut++;
    return a + b + c;
  }, 3);
  for (let round = 0; round < 1000; round++) for (const a of [1, 2, 3]) known(a, 7, 9);
  expect(workedOut).toBeLessThan(50);
});
