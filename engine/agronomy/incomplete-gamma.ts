// The regularized incomplete gamma function, both tails to near full relative accuracy. Called by the gamma distribution; calls
// the special functions and the normal distribution. No recursion, no allocation; every sum ends.

import { standardNormalCdf } from './normal.ts';
import { deviance, logGamma, logGammaOnePlus, stirlingError } from './special-functions.ts';

const SQRT_2PI = 2.5066282746310007;

/** From this shape on the expansion of Temme 1979 takes over; below, sums end within some hundred thousand terms. */
const LARGE_SHAPE = 1e8;
const MOST_TERMS = 1_000_000;
const TINY = 1e-300;

/**
 * x^a e^-x / gamma(a + 1) for a and x above 0. Source: C. Loader 2000, "Fast and Accurate Computation of Binomial
 * Probabilities", for shapes that need no whole number.
 */
export function gammaTerm(a: number, x: number): number {
  if (a < 10 && x < 600) return (x ** a * Math.exp(-x)) / Math.exp(a <= 0.5 ? logGammaOnePlus(a) : logGamma(a + 1));
  return Math.exp(-stirlingError(a) - deviance(a, x)) / (SQRT_2PI * Math.sqrt(a));
}

/** The share below x of a gamma distribution of shape a and scale 1, by its series; for x below a + 1. */
function lowerBySeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    term *= x / (a + n);
    const next = sum + term;
    if (next === sum) break;
    sum = next;
  }
  return sum * gammaTerm(a, x);
}

/** The share above x by its continued fraction, worked out after Lentz; for x from a + 1 on. */
function upperByFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const numerator = n * (a - n);
    b += 2;
    d = numerator * d + b;
    if (Math.abs(d) < TINY) d = TINY;
    c = b + numerator / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    const factor = d * c;
    fraction *= factor;
    if (Math.abs(factor - 1) < 2e-16) break;
  }
  return fraction * a * gammaTerm(a, x);
}

/** The share above a small x of a shape below 1, which is small itself for a small shape. Source: Gautschi 1979, ACM TOMS 5: 466-481. */
function upperOfSmall(a: number, x: number): number {
  const exponent = a * Math.log(x) - (a <= 0.5 ? logGammaOnePlus(a) : logGamma(a + 1));
  let term = 1;
  let sum = 0;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    term *= -x / n;
    const next = sum + term / (a + n);
    if (next === sum) break;
    sum = next;
  }
  return -Math.expm1(exponent) - Math.exp(exponent) * a * sum;
}

/**
 * The share below x (`side` 1) or above it (-1) of a large shape, a small one with its figures. Source: N. M. Temme 1979, "The
 * asymptotic expansion of the incomplete gamma functions", SIAM J. Math. Anal. 10: 757-766; two terms.
 */
function shareOfLarge(a: number, x: number, side: 1 | -1): number {
  const exponent = deviance(a, x);
  const eta = (x < a ? -1 : 1) * Math.sqrt((2 * exponent) / a);
  const first = -1 / 3 + eta * (1 / 12 + eta * (-2 / 135 + eta * (1 / 864 + eta / 2835)));
  const second = -1 / 540 - eta / 288;
  // Good near the middle; further out the exponential makes nothing of it.
  const rest = (Math.exp(-exponent) / (SQRT_2PI * Math.sqrt(a))) * (first + second / a);
  return Math.min(1, Math.max(0, standardNormalCdf(side * eta * Math.sqrt(a)) - side * rest));
}

/** The share at or below x of a gamma distribution of shape a > 0 and scale 1; 0 at and below 0. */
export function gammaLower(a: number, x: number): number {
  if (!(a > 0) || Number.isNaN(x)) return Number.NaN;
  if (x <= 0) return 0;
  if (x === Number.POSITIVE_INFINITY) return 1;
  if (a >= LARGE_SHAPE) return shareOfLarge(a, x, 1);
  return x < a + 1 ? lowerBySeries(a, x) : 1 - upperByFraction(a, x);
}

/** The share above x of a gamma distribution of shape a > 0 and scale 1; 1 at and below 0. */
export function gammaUpper(a: number, x: number): number {
  if (!(a > 0) || Number.isNaN(x)) return Number.NaN;
  if (x <= 0) return 1;
  if (x === Number.POSITIVE_INFINITY) return 0;
  if (a >= LARGE_SHAPE) return shareOfLarge(a, x, -1);
  if (x >= a + 1) return upperByFraction(a, x);
  return a < 1 && x < 1.5 ? upperOfSmall(a, x) : 1 - lowerBySeries(a, x);
}
