// The regularized incomplete beta function, both tails to near full relative accuracy. Called by the beta, F and t distributions;
// calls the special functions. No recursion, no allocation; every sum ends.

import { deviance, stirlingError } from './special-functions.ts';

const TWO_PI = 6.283185307179586;
const MOST_TERMS = 1_000_000;

/**
 * x^a y^b / beta(a, b), y being 1 - x given apart so that it keeps its figures. Source: C. Loader 2000, "Fast and Accurate
 * Computation of Binomial Probabilities", for exponents that need no whole number.
 */
export function betaTerm(a: number, b: number, x: number, y: number): number {
  if (x <= 0 || y <= 0) return 0;
  const sum = a + b;
  const exponent =
    stirlingError(sum) - stirlingError(a) - stirlingError(b) - deviance(a, sum * x) - deviance(b, sum * y);
  return Math.exp(exponent) * Math.sqrt((a * b) / (TWO_PI * sum));
}

/**
 * What x^a y^b / beta(a, b) is multiplied by for the share below x, as a continued fraction; for x up to the mean a / (a + b).
 * Source: A. R. DiDonato & A. H. Morris 1992, ACM TOMS 18: 360-373, equation 9 (BFRAC).
 */
function fractionBelow(a: number, b: number, x: number, y: number): number {
  // How far x lies under the mean, times a + b, from the smaller of x and y.
  const under = 1 + (x < y ? a - (a + b) * x : (a + b) * y - b);
  const ratio = b / a;
  const first = 1 + 1 / a;
  let [p, s] = [1, a + 1];
  let [above, below, nextAbove, nextBelow] = [0, 1, 1, under / first];
  let fraction = first / under;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const t = n / a;
    const w = n * (b - n) * x;
    const e = a / s;
    const alpha = p * (p + ratio) * e * e * (w * x);
    const beta = n + w / s + ((1 + t) / (first + 2 * t)) * (under + n * (1 + y));
    p = 1 + t;
    s += 2;
    [above, nextAbove] = [nextAbove, alpha * above + beta * nextAbove];
    [below, nextBelow] = [nextBelow, alpha * below + beta * nextBelow];
    const before = fraction;
    fraction = nextAbove / nextBelow;
    if (Math.abs(fraction - before) <= 2e-16 * fraction) break;
    above /= nextBelow;
    below /= nextBelow;
    nextAbove = fraction;
    nextBelow = 1;
  }
  return fraction;
}

/**
 * The share at or below x of a beta distribution with exponents a and b > 0, y being 1 - x; 0 where x is 0, 1 where y is. The
 * share above is that of (b, a, y, x).
 */
export function betaShare(a: number, b: number, x: number, y: number): number {
  if (!(a > 0 && b > 0) || Number.isNaN(x + y)) return Number.NaN;
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  const term = betaTerm(a, b, x, y);
  if (x * b <= y * a) return term * fractionBelow(a, b, x, y);
  return 1 - term * fractionBelow(b, a, y, x);
}
