// Faults that the comparison with another engine found, each kept here with the exact value that arithmetic gives.

import { describe, expect, it } from 'vitest';
import { answers } from '../functions/formulas.ts';

const FOUND: readonly (readonly [formula: string, gives: number])[] = [
  // A pattern with a hyphen stopped the whole recalculation.
  ['SEARCH("t-h"; "short-haired")', 5],
  ['SEARCH("a/b"; "1 a/b")', 3],
  // Remainders of large numbers are exact: 999,999,999,999,999 = 19 x 52,631,578,947,368 + 7; 15! = 19.77 x 66,146,048,154 + 13.650028...
  ['MOD(999999999999999; 19)', 7],
  ['MOD(-999999999999999; 19)', 12],
  ['MOD(FACT(15); 19.77)', 13.650028199044701],
  ['MOD(0.3; 0.1)', 0],
  ['MOD(-7; 3)', 2],
  ['MOD(7; -3)', -2],
  // 1 - 3 = -2 a period: an amount of 100 is worth 100 x 4 two periods on.
  ['FV(-3; 2; 0; -100)', 400],
  ['FV(-3; 2; 10)', 10],
  // 1.05 ^ n = 1 + 1 / 2E13, so n = 1 / (2E13 ln 1.05).
  ['NPER(5%; -1E12; 1) * 1E12', 1 / (20 * Math.log(1.05))],
  // The arc cotangent of a large number is its reciprocal.
  ['ACOT(1E8) * 1E8', 1],
  ['ACOT(-1)', (3 * Math.PI) / 4],
  ['ACOT(0)', Math.PI / 2],
  // Nought over a negative number is nought, without a sign.
  ['ATAN2(-1; 0 / -3)', Math.PI],
  // Rows on one line lie no way off it.
  ['STEYX(Stars[Rev]; Stars[Rev])', 0],
];

const REFUSED_VALUES = [
  'LCM(0; -6)',
  'LCM(-6; 0)',
  'EOMONTH(DATE(2027; 1; 31); 123456789)',
  // Counts so large that one more is no other number: looking for them never came to an end.
  'BINOM.INV(1E300; 0.5; 0.3)',
  'BINOM.DIST(5E299; 1E300; 0.5; TRUE)',
  'POISSON.DIST(1E300; 1E300; TRUE)',
];

const given = answers([...FOUND.map(([formula]) => formula), ...REFUSED_VALUES]);

describe('found by the comparison', () => {
  it.each(FOUND.map(([formula, gives], at) => [formula, gives, given[at]] as const))('%s is %d', (_, gives, answer) => {
    if (answer?.is !== 'value') throw new Error(JSON.stringify(answer));
    expect(Math.abs(Number(answer.value) - gives)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(gives)));
  });

  it.each(REFUSED_VALUES.map((formula, at) => [formula, given[FOUND.length + at]] as const))(
    '%s is an error',
    (_, answer) => {
      expect(answer).toMatchObject({ is: 'error' });
    },
  );
});
