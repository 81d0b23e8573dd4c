// The Poisson distribution: probabilities and tail. Called by the stand models and the functions; calls the special
// functions. No recursion, no allocation.

import { deviance, stirlingError } from './special-functions.ts';

/** A mean up to which the sums are worked out, so that every one ends soon. */
const MOST_EXPECTED = 1e12;

const SQRT_2PI = 2.5066282746310007;

/**
 * Probability of exactly `count` (whole) events where `mean` are expected, mean >= 0; 0 below nought.
 * Source: C. Loader 2000, "Fast and Accurate Computation of Binomial Probabilities" (its Poisson case).
 */
export function poissonPmf(count: number, mean: number): number {
  if (!(mean >= 0) || !Number.isInteger(count)) return Number.NaN;
  if (count < 0) return 0;
  if (mean === 0) return count === 0 ? 1 : 0;
  if (count === 0) return Math.exp(-mean);
  return Math.exp(-stirlingError(count) - deviance(count, mean)) / (SQRT_2PI * Math.sqrt(count));
}

/** Probability of at most `count` (rounded down) events where `mean` are expected. */
export function poissonCdf(count: number, mean: number): number {
  if (!(mean >= 0 && mean <= MOST_EXPECTED) || Number.isNaN(count)) return Number.NaN;
  const k = Math.floor(count);
  if (k < 0) return 0;
  if (mean === 0 || k === Number.POSITIVE_INFINITY) return 1;
  const lower = k < mean;
  let term = poissonPmf(lower ? k : k + 1, mean);
  let sum = term;
  if (lower) {
    for (let i = k; i > 0; i -= 1) {
      term *= i / mean;
      const next = sum + term;
      if (next === sum) break;
      sum = next;
    }
    return sum;
  }
  for (let i = k + 2; ; i += 1) {
    term *= mean / i;
    const next = sum + term;
    if (next === sum) break;
    sum = next;
  }
  return 1 - sum;
}
