// Degree-days of an average year, summed once: how much warmth lies between two days, when a sum is reached, and the latest
// day to begin for a sum by a date. Called by the functions over the Climate sheet; calls degree-days. Days are offsets from
// the year's first day and may lie in years before or after: the year repeats.

import { degreeDaysOfMean } from './thermal-time.ts';
import { runningTotals, totalBetween, totalTo } from './totals-of-year.ts';

/** What a sum may fall short by and still count as reached: the dust of adding 365 days. */
const DUST = 1e-9;

/** Years on that a sum is waited for, and that a sowing is looked for back. */
const MOST_YEARS = 2;

export interface WarmthOfYear {
  /** sums[i] is the warmth of the first i days; one entry more than there are days. */
  readonly sums: Float64Array;
  /** missing[i] of the first i days have no temperature; undefined where all have one. */
  readonly missing: Float64Array | undefined;
}

/** The sums of an average year of daily means (C) above `base`, each day counted to `upper` at most (not a number: no end). */
export function warmthOfYear(means: ArrayLike<number>, base: number, upper: number): WarmthOfYear {
  const warmth = (day: number): number => degreeDaysOfMean(means[day] as number, base, upper);
  const missing = runningTotals(means.length, (day) => (Number.isNaN(warmth(day)) ? 1 : 0));
  return {
    sums: runningTotals(means.length, warmth),
    missing: (missing[means.length] as number) > 0 ? missing : undefined,
  };
}

/** Degree-days from day `from` up to but not including day `to`; no answer where a day between has no temperature. */
export function warmthBetween(year: WarmthOfYear, from: number, to: number): number {
  if (!(to > from)) return 0;
  if (year.missing !== undefined && totalBetween(year.missing, from, to) > 0) return Number.NaN;
  return totalBetween(year.sums, from, to);
}

/** The first day from `from` on at whose end `wanted` degree-days have come; no answer where they never do in two years. */
export function dayOfWarmth(year: WarmthOfYear, from: number, wanted: number): number {
  if (Number.isNaN(wanted)) return Number.NaN;
  if (wanted <= 0) return from;
  const goal = totalTo(year.sums, from) + wanted - DUST;
  let before = from;
  let reached = from + MOST_YEARS * (year.sums.length - 1);
  if (totalTo(year.sums, reached) < goal) return Number.NaN;
  while (reached - before > 1) {
    const middle = Math.floor((before + reached) / 2);
    if (totalTo(year.sums, middle) >= goal) reached = middle;
    else before = middle;
  }
  return Number.isNaN(warmthBetween(year, from, reached)) ? Number.NaN : reached - 1;
}

/** The latest day from which `wanted` degree-days come before day `by`; no answer where two years before it are too few. */
export function latestStartForWarmth(year: WarmthOfYear, by: number, wanted: number): number {
  if (Number.isNaN(wanted)) return Number.NaN;
  if (wanted <= 0) return by;
  const goal = totalTo(year.sums, by) - wanted + DUST;
  let early = by - MOST_YEARS * (year.sums.length - 1);
  let late = by;
  if (totalTo(year.sums, early) > goal) return Number.NaN;
  while (late - early > 1) {
    const middle = Math.floor((early + late) / 2);
    if (totalTo(year.sums, middle) <= goal) early = middle;
    else late = middle;
  }
  return Number.isNaN(warmthBetween(year, early, by)) ? Number.NaN : early;
}
