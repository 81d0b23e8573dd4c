// Equality forgives dust at the size of what is added and subtracted; what is no dust still counts.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answers } from '../functions/formulas.ts';

function truths(formulas: readonly string[]): readonly unknown[] {
  return answers(formulas).map((answer) => (answer.is === 'value' ? answer.value : answer));
}

test('differences that are nought but for dust are nought', () => {
  const holding = [
    '1 - 0.9 - 0.1 = 0',
    '0 = 1 - 0.9 - 0.1',
    '0.3 - 0.2 - 0.1 >= 0',
    '0.3 - 0.2 - 0.1 <= 0',
    '-(0.1 + 0.2) + 0.3 = 0',
    '1 - 0.9 = 0.3 - 0.2',
    '2 ft - 6 in = 18 in',
    '20.1 degC - 15.1 degC = 5 Cdeg',
    'DATE(2027; 3; 1) - DATE(2027; 2; 1) = 28 days',
    '0.1 + 0.2 = 0.3',
    '1E-300 - 1E-300 = 0',
  ];
  expect(truths(holding)).toEqual(holding.map(() => true));
  const failing = ['1 - 0.9 - 0.1 < 0', '1 - 0.9 - 0.1 > 0', '1 - 0.9 - 0.1 <> 0', '1E-300 = 0', '3 - 1 = 1', '-3 = 3'];
  expect(truths(failing)).toEqual(failing.map(() => false));
});

test('a difference compares with nought as its parts compare with each other', () => {
  const figures = fc.tuple(
    fc.integer({ min: 1, max: 9999 }),
    fc.integer({ min: 1, max: 9999 }),
    fc.integer({ min: -3, max: 3 }),
  );
  const cases = fc.sample(figures, { numRuns: 60, seed: 1 });
  const formulas = cases.flatMap(([a, b, units]) => {
    // Two figures with two decimals, their sum, and the sum off by so many hundredths.
    const [one, other, sum] = [a / 100, b / 100, (a + b + units) / 100];
    return ['=', '<', '>', '>='].map((sign) => `${sum} - ${one} - ${other} ${sign} 0`);
  });
  expect(truths(formulas)).toEqual(cases.flatMap(([, , units]) => [units === 0, units < 0, units > 0, units >= 0]));
});
