// Degree-days: one day's share and sums over days. Called by the functions, the bulbing, bolting and emergence models;
// calls nothing. Days count from an index into arrays of daily temperatures.

import type { ModelSource } from './source.ts';

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Degree-days',
    gives: 'warmth of a day above a base temperature, and its sum over days',
    equation: 'mean = (high + low) / 2, cut to the upper limit; degree-days = mean - base, at least 0',
    range: 'daily highs and lows; the upper limit is cut level, not turned back',
    source:
      'NOAA degree-day definition; level upper cut-off as method 1 of McMaster & Wilhelm 1997, Agricultural and Forest Meteorology 87:291-300',
    standing: 'published',
  },
];

/**
 * A day's degree-days from its low and high (C) above `base`; the mean counts as no more than `upper`, which may be
 * left out or not a number. No answer where a temperature is missing.
 */
export function degreeDays(low: number, high: number, base: number, upper: number = Number.NaN): number {
  return degreeDaysOfMean((low + high) / 2, base, upper);
}

/** A day's degree-days from its mean temperature (C), as degreeDays. */
export function degreeDaysOfMean(mean: number, base: number, upper: number = Number.NaN): number {
  let counted = mean;
  if (mean > upper) counted = upper;
  return counted < base ? 0 : counted - base;
}

/** Degree-days over days from index `from` up to but not including `to`; no answer where a day between is missing. */
export function sumDegreeDays(
  means: ArrayLike<number>,
  from: number,
  to: number,
  base: number,
  upper: number = Number.NaN,
): number {
  let sum = 0;
  for (let i = from; i < to; i += 1) sum += degreeDaysOfMean(means[i] ?? Number.NaN, base, upper);
  return sum;
}

/** Index of the first day, counting from `from`, at whose end the sum reaches `wanted`; no answer where it never does. */
export function dayReachingSum(
  means: ArrayLike<number>,
  from: number,
  wanted: number,
  base: number,
  upper: number = Number.NaN,
): number {
  let sum = 0;
  for (let i = from; i < means.length; i += 1) {
    sum += degreeDaysOfMean(means[i] ?? Number.NaN, base, upper);
    if (sum >= wanted) return i;
    if (Number.isNaN(sum)) return Number.NaN;
  }
  return Number.NaN;
}
