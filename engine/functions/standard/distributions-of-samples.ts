// Distributions of what samples give: Student's t, chi-squared, Snedecor's F; and what is done with them: confidence intervals and
// the t test. The names of OpenFormula stand beside the dotted ones, which say by their ending which side they give. Read by
// standard/index.ts.

import {
  fAbove,
  fCdf,
  fPdf,
  fQuantile,
  gammaAbove,
  gammaCdf,
  gammaPdf,
  gammaQuantile,
  standardNormalQuantile,
  tBeyond,
  tCdf,
  tPdf,
  tQuantile,
  tWithBeyond,
} from '../../agronomy/distributions.ts';
import type { Scalar } from '../../values/error.ts';
import { settled, tolerantFloor } from '../../values/tolerance.ts';
import {
  alias,
  column,
  failure,
  finite,
  makers,
  needed,
  numbers,
  optional,
  or,
  plain,
  takes,
  yesno,
} from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { type Given, isFault, numberOf, numbersOf, pairsOf } from './columns.ts';
import { mean, sampleVariance, TOO_FEW } from './statistics.ts';

const make = makers('statistics');

const COMMON = 'common spreadsheet practice';
const NO_DEGREES = failure('number', 'Degrees of freedom count from 1 to 10,000,000,000: check them and the value.');
const NO_CHANCE = failure('number', 'The chance must lie between 0 and 1, and degrees of freedom count from 1.');
const NO_INTERVAL = failure(
  'number',
  'The share left outside must lie between 0 and 1, the standard deviation above 0, the size at 1 or above (2 for t).',
);
const NO_TAILS = failure('number', 'Give 1 or 2 tails; kinds are 1 rows in pairs, 2 equal spread, 3 unequal spread.');
const ALIKE = failure('divide', 'All values are alike, so there is no spread to test against.');

/** Whole degrees of freedom, cut off; none below 1. */
function degreesOf(given: number): number {
  const whole = tolerantFloor(given);
  return whole >= 1 ? whole : Number.NaN;
}

function share(given: number): number {
  return given > 0 && given < 1 ? given : Number.NaN;
}

/** A share of which the value at its start is known too: 0 below, or all of it above. */
function shareBelow(given: number): number {
  return given === 0 ? 0 : share(given);
}

function shareAbove(given: number): number {
  return given === 1 ? 1 : share(given);
}

const X = needed('x', plain);
const DEGREES = needed('degrees', plain);
const ABOVE = needed('degrees_above', plain);
const BELOW = needed('degrees_below', plain);
const CHANCE = needed('chance', plain);
const CUMULATIVE = needed('cumulative', yesno);
const MAY_BE_CUMULATIVE = optional('cumulative', yesno);

function numeric(
  name: string,
  doc: string,
  section: string,
  shape: ReturnType<typeof takes>,
  compute: (...args: number[]) => number,
  undefinedMeans = NO_DEGREES,
): FunctionDefinition {
  return make.numeric(name, doc, section, shape, plain, (...args) => finite(compute(...args)), undefinedMeans);
}

function t(x: number, degrees: number, cumulative: number): number {
  return cumulative !== 0 ? tCdf(x, degreesOf(degrees)) : tPdf(x, degreesOf(degrees));
}

function bothTails(x: number, degrees: number): number {
  return x < 0 ? Number.NaN : 2 * tBeyond(x, degreesOf(degrees));
}

function chiSquared(x: number, degrees: number, cumulative?: number): number {
  const n = degreesOf(degrees);
  return or(cumulative, 1) !== 0 ? gammaCdf(x, n / 2, 2) : gammaPdf(x, n / 2, 2);
}

function f(x: number, above: number, below: number, cumulative?: number): number {
  const [n, m] = [degreesOf(above), degreesOf(below)];
  return or(cumulative, 1) !== 0 ? fCdf(x, n, m) : fPdf(x, n, m);
}

const T_INV_2T = numeric(
  'T.INV.2T',
  'The t with such a share further out on both sides together: T.INV.2T(10%; 12) bounds a 90% interval.',
  '6.18.78',
  takes(CHANCE, DEGREES),
  (chance, degrees) => tWithBeyond(shareAbove(chance) / 2, degreesOf(degrees)),
  NO_CHANCE,
);
const CHISQ_DIST_RT = numeric(
  'CHISQ.DIST.RT',
  'Chi-squared distribution: the share above a value.',
  '6.18.11',
  takes(X, DEGREES),
  (x, degrees) => gammaAbove(x, degreesOf(degrees) / 2, 2),
);
const CHISQ_INV = numeric(
  'CHISQ.INV',
  'Chi-squared distribution: the value with such a share at or below it.',
  '6.18.13',
  takes(CHANCE, DEGREES),
  (below, degrees) => gammaQuantile(shareBelow(below), 1 - below, degreesOf(degrees) / 2, 2),
  NO_CHANCE,
);
const CHISQ_INV_RT = numeric(
  'CHISQ.INV.RT',
  'Chi-squared distribution: the value with such a share above it.',
  '6.18.14',
  takes(CHANCE, DEGREES),
  (above, degrees) => gammaQuantile(1 - above, shareAbove(above), degreesOf(degrees) / 2, 2),
  NO_CHANCE,
);
const F_DIST_RT = numeric(
  'F.DIST.RT',
  'F distribution: the share above a value.',
  '6.18.23',
  takes(X, ABOVE, BELOW),
  (x, above, below) => fAbove(x, degreesOf(above), degreesOf(below)),
);
const F_INV = numeric(
  'F.INV',
  'F distribution: the value with such a share at or below it.',
  '6.18.24',
  takes(CHANCE, ABOVE, BELOW),
  (chance, above, below) => fQuantile(shareBelow(chance), 1 - chance, degreesOf(above), degreesOf(below)),
  NO_CHANCE,
);
const F_INV_RT = numeric(
  'F.INV.RT',
  'F distribution: the value with such a share above it.',
  '6.18.25',
  takes(CHANCE, ABOVE, BELOW),
  (chance, above, below) => fQuantile(1 - chance, shareAbove(chance), degreesOf(above), degreesOf(below)),
  NO_CHANCE,
);

const INTERVAL = takes(needed('outside', plain), needed('deviation', numbers('A')), needed('size', plain));

/** Half the width of an interval that leaves a share outside; `deviates` says how many standard errors that is. */
function halfWidth(
  deviates: (outside: number, size: number) => number,
): (outside: number, deviation: number, size: number) => number {
  return (outside, deviation, size) => {
    const whole = tolerantFloor(size);
    if (!(outside > 0 && outside < 1 && deviation > 0 && whole >= 1)) return Number.NaN;
    return finite((deviates(outside, whole) * deviation) / Math.sqrt(whole));
  };
}

const CONFIDENCE = make.numeric(
  'CONFIDENCE',
  'How far a mean of so many values may lie off on either side where their standard deviation is known: CONFIDENCE(10%; 2 lb; 12) for 90%.',
  '6.18.16',
  INTERVAL,
  numbers('A'),
  halfWidth((outside) => -standardNormalQuantile(outside / 2)),
  NO_INTERVAL,
);

/** The t and the degrees of freedom of the difference of two samples; for pairs the one sample of their differences. */
function difference(
  one: Float64Array,
  other: Float64Array,
  kind: number,
): { readonly t: number; readonly degrees: number } {
  const [n, m] = [one.length, other.length];
  if (kind === 1) {
    const apart = one.map((x, row) => x - (other[row] ?? Number.NaN));
    return { t: mean(apart, n) / Math.sqrt(sampleVariance(apart, n) / n), degrees: n - 1 };
  }
  const [a, b] = [sampleVariance(one, n) / n, sampleVariance(other, m) / m];
  const gap = mean(one, n) - mean(other, m);
  if (kind === 3) {
    // Welch 1947, Biometrika 34: 28-35.
    return { t: gap / Math.sqrt(a + b), degrees: (a + b) ** 2 / (a ** 2 / (n - 1) + b ** 2 / (m - 1)) };
  }
  const pooled = (a * n * (n - 1) + b * m * (m - 1)) / (n + m - 2);
  return { t: gap / Math.sqrt(pooled * (1 / n + 1 / m)), degrees: n + m - 2 };
}

/** T.TEST: the chance of means so far apart where there is no difference. */
function tTest([one, other, tails, kind]: Given): Scalar {
  const sides = Math.trunc(settled(numberOf(tails) ?? 0));
  const how = Math.trunc(settled(numberOf(kind) ?? 0));
  if (sides < 1 || sides > 2 || how < 1 || how > 3) return NO_TAILS;
  let [first, second] = [numbersOf(one), numbersOf(other)];
  if (isFault(first)) return first;
  if (isFault(second)) return second;
  if (how === 1) {
    const pairs = pairsOf(one, other);
    if (isFault(pairs)) return pairs;
    [first, second] = [pairs.xs, pairs.ys];
  }
  if (first.length < 2 || second.length < 2) return TOO_FEW;
  const found = difference(first, second, how);
  if (Number.isNaN(found.t) || !Number.isFinite(found.degrees)) return ALIKE;
  return sides * tBeyond(Math.abs(found.t), found.degrees);
}

const T_TEST = make.columns(
  'T.TEST',
  'Chance of means so far apart by accident: two columns, 1 or 2 tails, kind 1 rows in pairs, 2 equal spread, 3 unequal spread.',
  '6.18.81',
  takes(
    needed('one', column(numbers('A'))),
    needed('other', column(numbers('A'))),
    needed('tails', plain),
    needed('kind', plain),
  ),
  plain,
  tTest,
);

export const DISTRIBUTIONS_OF_SAMPLES: readonly FunctionDefinition[] = [
  numeric(
    'T.DIST',
    'Student’s t distribution: the share at or below a value where the last is TRUE, the density where FALSE.',
    COMMON,
    takes(X, DEGREES, CUMULATIVE),
    t,
  ),
  numeric('T.DIST.RT', 'Student’s t distribution: the share above a value.', COMMON, takes(X, DEGREES), (x, degrees) =>
    x < 0 ? 1 - tBeyond(x, degreesOf(degrees)) : tBeyond(x, degreesOf(degrees)),
  ),
  numeric(
    'T.DIST.2T',
    'Student’s t distribution: the share further out than a value from 0 up, on both sides together.',
    COMMON,
    takes(X, DEGREES),
    bothTails,
  ),
  numeric(
    'LEGACY.TDIST',
    'Student’s t distribution: the share further out than a value from 0 up, on one side or on two.',
    '6.18.77',
    takes(X, DEGREES, needed('tails', plain)),
    (x, degrees, tails) => {
      const sides = Math.trunc(settled(tails));
      return sides === 1 || sides === 2 ? (bothTails(x, degrees) * sides) / 2 : Number.NaN;
    },
  ),
  numeric(
    'T.INV',
    'Student’s t distribution: the value with such a share at or below it.',
    COMMON,
    takes(CHANCE, DEGREES),
    (below, degrees) => tQuantile(share(below), degreesOf(degrees)),
    NO_CHANCE,
  ),
  T_INV_2T,
  alias('TINV', T_INV_2T),
  numeric(
    'CHISQ.DIST',
    'Chi-squared distribution: the share at or below a value where the last is TRUE, the density where FALSE.',
    '6.18.12',
    takes(X, DEGREES, CUMULATIVE),
    chiSquared,
  ),
  numeric(
    'CHISQDIST',
    'Chi-squared distribution as CHISQ.DIST; the share at or below where the last is left out.',
    '6.18.12',
    takes(X, DEGREES, MAY_BE_CUMULATIVE),
    chiSquared,
  ),
  CHISQ_DIST_RT,
  alias('LEGACY.CHIDIST', CHISQ_DIST_RT),
  CHISQ_INV,
  alias('CHISQINV', CHISQ_INV),
  CHISQ_INV_RT,
  alias('LEGACY.CHIINV', CHISQ_INV_RT),
  numeric(
    'F.DIST',
    'F distribution: the share at or below a value where the last is TRUE, the density where FALSE.',
    '6.18.22',
    takes(X, ABOVE, BELOW, CUMULATIVE),
    f,
  ),
  numeric(
    'FDIST',
    'F distribution as F.DIST; the share at or below where the last is left out.',
    '6.18.22',
    takes(X, ABOVE, BELOW, MAY_BE_CUMULATIVE),
    f,
  ),
  F_DIST_RT,
  alias('LEGACY.FDIST', F_DIST_RT),
  F_INV,
  alias('FINV', F_INV),
  F_INV_RT,
  alias('LEGACY.FINV', F_INV_RT),
  CONFIDENCE,
  alias('CONFIDENCE.NORM', CONFIDENCE),
  make.numeric(
    'CONFIDENCE.T',
    'How far a mean of so many values may lie off on either side where their standard deviation comes from themselves.',
    COMMON,
    INTERVAL,
    numbers('A'),
    halfWidth((outside, size) => (size < 2 ? Number.NaN : tWithBeyond(outside / 2, size - 1))),
    NO_INTERVAL,
  ),
  T_TEST,
  alias('TTEST', T_TEST),
];
