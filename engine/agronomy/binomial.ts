// The binomial distribution: probabilities, tails and quantile, well conditioned from one trial to many millions. Called
// by the stand models and the functions; calls the special functions. No recursion, no allocation.

import { standardNormalQuantile } from './normal.ts';
import { deviance, stirlingError } from './special-functions.ts';

const LN_2PI = 1.8378770664093456;

/** A comparison of two computed probabilities forgives this much of their size. */
const DUST = 1e-13;

/** Trials up to which the sums are worked out, so that every one ends soon; a garden has fewer seeds. */
export const MOST_TRIALS = 1e12;

function wellFormed(trials: number, chance: number): boolean {
  return trials >= 0 && trials <= MOST_TRIALS && Number.isInteger(trials) && chance >= 0 && chance <= 1;
}

/**
 * Probability of exactly `successes` in `trials` (both whole), each with `chance` 0 to 1; 0 outside 0..trials; no answer
 * where trials or successes are not whole. Source: C. Loader 2000, "Fast and Accurate Computation of Binomial Probabilities".
 */
export function binomialPmf(successes: number, trials: number, chance: number): number {
  if (!wellFormed(trials, chance) || !Number.isInteger(successes)) return Number.NaN;
  if (successes < 0 || successes > trials) return 0;
  if (chance === 0) return successes === 0 ? 1 : 0;
  if (chance === 1) return successes === trials ? 1 : 0;
  if (successes === 0) return Math.exp(trials * Math.log1p(-chance));
  if (successes === trials) return Math.exp(trials * Math.log(chance));
  const failures = trials - successes;
  const exponent =
    stirlingError(trials) -
    stirlingError(successes) -
    stirlingError(failures) -
    deviance(successes, trials * chance) -
    deviance(failures, trials * (1 - chance));
  return Math.exp(exponent - 0.5 * (LN_2PI + Math.log(successes) + Math.log1p(-successes / trials)));
}

// Terms fall faster than a geometric series away from the mean, so a sum is ended when a term no longer changes it.
function sumDown(successes: number, trials: number, chance: number): number {
  let term = binomialPmf(successes, trials, chance);
  let sum = term;
  const odds = (1 - chance) / chance;
  for (let k = successes; k > 0; k -= 1) {
    term *= (k / (trials - k + 1)) * odds;
    const next = sum + term;
    if (next === sum) return sum;
    sum = next;
  }
  return sum;
}

function sumUp(successes: number, trials: number, chance: number): number {
  let term = binomialPmf(successes, trials, chance);
  let sum = term;
  const odds = chance / (1 - chance);
  for (let k = successes; k < trials; k += 1) {
    term *= ((trials - k) / (k + 1)) * odds;
    const next = sum + term;
    if (next === sum) return sum;
    sum = next;
  }
  return sum;
}

/** Probability of at most `successes` (rounded down) in `trials`. */
export function binomialCdf(successes: number, trials: number, chance: number): number {
  if (!wellFormed(trials, chance) || Number.isNaN(successes)) return Number.NaN;
  const k = Math.floor(successes);
  if (k < 0) return 0;
  if (k >= trials) return 1;
  return k < trials * chance ? sumDown(k, trials, chance) : 1 - sumUp(k + 1, trials, chance);
}

/** Probability of at least `successes` (rounded up) in `trials`, small ones to full relative accuracy. */
export function binomialAtLeast(successes: number, trials: number, chance: number): number {
  if (!wellFormed(trials, chance) || Number.isNaN(successes)) return Number.NaN;
  const k = Math.ceil(successes);
  if (k <= 0) return 1;
  if (k > trials) return 0;
  return k > trials * chance ? sumUp(k, trials, chance) : 1 - sumDown(k - 1, trials, chance);
}

/**
 * The smallest number of successes whose cumulative probability is at least `share` (0 to 1; a shortfall of 1e-13 of
 * the share counts as reached). Starts from the Cornish-Fisher expansion, then steps and halves.
 */
export function binomialQuantile(share: number, trials: number, chance: number): number {
  if (!wellFormed(trials, chance) || !(share >= 0 && share <= 1)) return Number.NaN;
  if (share === 0 || chance === 0) return 0;
  if (share === 1 || chance === 1) return trials;
  const z = standardNormalQuantile(share);
  const deviation = Math.sqrt(trials * chance * (1 - chance));
  const guess = Math.round(trials * chance + deviation * z + ((1 - 2 * chance) * (z * z - 1)) / 6);
  const target = share * (1 - DUST);
  const start = Math.min(trials, Math.max(0, guess));
  let below = start;
  let reached = start;
  let step = 1;
  if (binomialCdf(start, trials, chance) >= target) {
    do {
      reached = below;
      below -= step;
      step *= 2;
    } while (binomialCdf(below, trials, chance) >= target);
  } else {
    do {
      below = reached;
      reached += step;
      step *= 2;
    } while (binomialCdf(reached, trials, chance) < target);
  }
  while (reached - below > 1) {
    const middle = Math.floor((below + reached) / 2);
    if (binomialCdf(middle, trials, chance) >= target) reached = middle;
    else below = middle;
  }
  return reached;
}
