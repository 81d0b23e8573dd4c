// The sum of one row's values: blanks skipped, the leftmost fault passed on, in the order of the arguments.

import { expect, test } from 'vitest';
import { sumKernel } from '../../engine/calculation/kernels/sum-kernel.ts';
import { BLANK, FAULT } from '../../engine/values/column.ts';
import { always, given, givenFor, rows } from './kernel-rows.ts';

const NOTHING = { value: 0, state: BLANK };

test('blanks are skipped, and a row of blanks alone comes to nothing', () => {
  expect(given(sumKernel([rows('1 - 3 -'), rows('10 20 - -')], NOTHING), 4)).toBe('11 20 3 0');
  expect(given(sumKernel([rows('1 2'), always('5'), rows('- 7')], NOTHING), 2)).toBe('6 14');
  expect(givenFor(sumKernel([rows('1 2 3'), rows('10 20 30')], NOTHING), [2, 0])).toBe('33 11');
  expect(given(sumKernel([always('1'), always('2')], NOTHING), 2)).toBe('3 3');
});

test('the leftmost fault passes on, whatever stands on its right', () => {
  expect(given(sumKernel([rows('1 !4 3'), rows('!5 !6 -'), rows('1 1 1')], NOTHING), 3)).toBe('!5 !4 4');
});

test('numbers are added in the order of the arguments', () => {
  expect(given(sumKernel([rows('0.1 0.3'), rows('0.2 0.2'), rows('0.3 0.1')], NOTHING), 2)).toBe(
    `${0.1 + 0.2 + 0.3} ${0.3 + 0.2 + 0.1}`,
  );
});

test('a sum too large for a number is what is given for it, beside blanks too', () => {
  const kernels = [rows('1e308 1'), rows('1e308 2')];
  expect(given(sumKernel(kernels, NOTHING), 2)).toBe('- 3');
  expect(given(sumKernel([...kernels, rows('- 4')], { value: 9, state: FAULT }), 2)).toBe('!9 7');
});
