// The least and the most of one row's values: blanks skipped, the leftmost fault passed on.

import { expect, test } from 'vitest';
import { pickKernel } from '../../engine/calculation/kernels/pick-kernel.ts';
import { constantKernel } from '../../engine/calculation/kernels/vector.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { always, given, givenFor, rows, run } from './kernel-rows.ts';

const NOTHING = { value: 0, state: BLANK };

test('the least and the most of what is there', () => {
  const kernels = [rows('4 1 3'), rows('2 5 3'), always('2')];
  expect(given(pickKernel(kernels, 'least', NOTHING), 3)).toBe('2 1 2');
  expect(given(pickKernel(kernels, 'most', NOTHING), 3)).toBe('4 5 3');
  expect(givenFor(pickKernel(kernels, 'most', NOTHING), [2, 0])).toBe('3 4');
  expect(given(pickKernel([always('7'), always('6')], 'least', NOTHING), 2)).toBe('6 6');
});

test('blanks are skipped, and a row of blanks alone has what is given for it', () => {
  const kernels = [rows('-4 - 3 -'), rows('2 5 - -')];
  expect(given(pickKernel(kernels, 'least', NOTHING), 4)).toBe('-4 5 3 -');
  expect(given(pickKernel(kernels, 'most', NOTHING), 4)).toBe('2 5 3 -');
  expect(given(pickKernel(kernels, 'most', { value: 8, state: FAULT }), 4)).toBe('2 5 3 !8');
});

test('the leftmost fault passes on, whatever stands on its right', () => {
  const kernels = [rows('1 !4 3'), rows('!5 !6 -'), rows('1 1 1')];
  expect(given(pickKernel(kernels, 'most', NOTHING), 3)).toBe('!5 !4 3');
});

test('minus zero is zero, beside blanks too', () => {
  for (const beside of [rows('0 0'), rows('- -')]) {
    const { values } = run(pickKernel([constantKernel(-0, FILLED), beside], 'least', NOTHING), {
      rows: undefined,
      from: 0,
      count: 2,
    });
    expect([values[0], values[1]].map((value) => Object.is(value, 0))).toEqual([true, true]);
  }
});
