// The hypergeometric distribution: so many of one kind in a sample drawn without putting back. Called by the functions; calls the
// binomial distribution. No recursion, no allocation.

import { binomialPmf, MOST_TRIALS } from './binomial.ts';

function wellFormed(drawn: number, kind: number, all: number): boolean {
  const whole = Number.isInteger(drawn) && Number.isInteger(kind) && Number.isInteger(all);
  return whole && drawn >= 0 && kind >= 0 && drawn <= all && kind <= all && all <= MOST_TRIALS;
}

/**
 * Chance that a sample of `drawn` out of `all` holds exactly `found` of the `kind` that are of one kind; all whole. Source: C. Loader
 * 2000, "Fast and Accurate Computation of Binomial Probabilities" (three binomial probabilities).
 */
export function hypergeometricPmf(found: number, drawn: number, kind: number, all: number): number {
  if (!wellFormed(drawn, kind, all) || !Number.isInteger(found)) return Number.NaN;
  if (found < Math.max(0, drawn + kind - all) || found > Math.min(drawn, kind)) return 0;
  if (drawn === 0 || drawn === all) return 1;
  const share = drawn / all;
  return (
    (binomialPmf(found, kind, share) * binomialPmf(drawn - found, all - kind, share)) / binomialPmf(drawn, all, share)
  );
}

/** Chance of at most `found`; summed from the nearer end of the distribution until a term no longer changes it. */
export function hypergeometricCdf(found: number, drawn: number, kind: number, all: number): number {
  if (!wellFormed(drawn, kind, all) || Number.isNaN(found)) return Number.NaN;
  const k = Math.floor(found);
  const [least, most] = [Math.max(0, drawn + kind - all), Math.min(drawn, kind)];
  if (k < least) return 0;
  if (k >= most) return 1;
  const others = all - kind - drawn;
  if (k < (drawn * kind) / all) {
    let term = hypergeometricPmf(k, drawn, kind, all);
    let sum = term;
    for (let i = k; i > least; i -= 1) {
      term *= (i / (kind - i + 1)) * ((others + i) / (drawn - i + 1));
      const next = sum + term;
      if (next === sum) break;
      sum = next;
    }
    return sum;
  }
  let term = hypergeometricPmf(k + 1, drawn, kind, all);
  let sum = term;
  for (let i = k + 1; i < most; i += 1) {
    term *= ((kind - i) / (i + 1)) * ((drawn - i) / (others + i + 1));
    const next = sum + term;
    if (next === sum) break;
    sum = next;
  }
  return 1 - sum;
}
