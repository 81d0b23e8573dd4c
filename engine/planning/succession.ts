// When the harvests of a succession are to begin: evenly from its first to its last date, and which of those are still to be
// laid beside plantings that stay. The sowings follow from these dates by warmth (agronomy/warmth-of-year.ts), wider apart in
// spring and closer in late summer. Called by the act that lays successions; calls nothing. Dates are civil days.

/** A grower who plants oftener than this in a season means something else. */
export const MOST_PLANTINGS = 120;

/**
 * The days on which harvests begin: the first on `from`, then every so many days up to and with `to`. Days between are taken
 * whole, at least one. None where the dates are not in order or not known; never more than `MOST_PLANTINGS`.
 */
export function harvestStarts(from: number, to: number, every: number): readonly number[] {
  const step = Math.max(1, Math.round(every));
  if (!(Number.isFinite(from) && Number.isFinite(to) && Number.isFinite(step)) || to < from) return [];
  const count = Math.min(MOST_PLANTINGS, Math.floor((to - from) / step) + 1);
  return Array.from({ length: count }, (_, k) => from + k * step);
}

/**
 * The starts still to be laid where some plantings stay as they are: each of those takes the nearest start that is free and
 * lies within half the days between two; what is left is given back in order.
 */
export function startsLeft(starts: readonly number[], kept: readonly number[], every: number): readonly number[] {
  const free = new Set(starts);
  for (const one of [...kept].sort((a, b) => a - b)) {
    const nearest = [...free].reduce<number | undefined>(
      (best, start) => (best === undefined || Math.abs(start - one) < Math.abs(best - one) ? start : best),
      undefined,
    );
    if (nearest !== undefined && Math.abs(nearest - one) <= every / 2) free.delete(nearest);
  }
  return starts.filter((start) => free.has(start));
}

/** What each planting of a succession is to give, of an amount a week, when one begins every so many days. */
export function eachPlanting(aWeek: number, every: number): number {
  return (aWeek * every) / 7;
}
