// What drawn seasons say of a figure: its 10, 50 and 90% values and the chance of reaching a goal. Pure numbers in, numbers out.

export interface Interval {
  /** Seasons in which the figure was a number. */
  readonly count: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly mean: number;
}

/** Undefined where no season gave a number. */
export function intervalOf(values: Float64Array): Interval | undefined {
  const sorted = values.filter(Number.isFinite).sort();
  if (sorted.length === 0) return undefined;
  const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
  const [p10, p50, p90] = [quantile(sorted, 0.1), quantile(sorted, 0.5), quantile(sorted, 0.9)];
  return { count: sorted.length, p10, p50, p90, mean };
}

/** Between the order statistics, as most programs do (Hyndman & Fan 1996, The American Statistician 50:361, definition 7). */
export function quantile(sorted: Float64Array, share: number): number {
  const at = (sorted.length - 1) * share;
  const [low, high] = [Math.floor(at), Math.ceil(at)];
  const [a, b] = [sorted[low] ?? Number.NaN, sorted[high] ?? Number.NaN];
  return a + (at - low) * (b - a);
}

export interface Chance {
  readonly chance: number;
  /** Standard error of the chance, from the number of seasons drawn. */
  readonly error: number;
}

/** The share of seasons in which a figure is at least, or at most, a goal. */
export function chanceOf(values: Float64Array, goal: number, side: 'at least' | 'at most'): Chance | undefined {
  const known = values.filter(Number.isFinite);
  if (known.length === 0) return undefined;
  // Sums that come to nothing leave dust of the size of what was summed.
  const dust = 1e-12 * known.reduce((most, value) => Math.max(most, Math.abs(value)), Math.abs(goal));
  const reached = known.filter((value) => (side === 'at least' ? value >= goal - dust : value <= goal + dust)).length;
  const chance = reached / known.length;
  return { chance, error: Math.sqrt((chance * (1 - chance)) / known.length) };
}

/** The same of a figure of one week: a season that has no such week runs out or over in none, so that it reaches the goal. */
export function chanceInWeek(values: Float64Array, goal: number, side: 'at least' | 'at most'): Chance | undefined {
  const found = chanceOf(values, goal, side);
  if (found === undefined) return undefined;
  const known = values.filter(Number.isFinite).length;
  const chance = 1 - ((1 - found.chance) * known) / values.length;
  return { chance, error: Math.sqrt((chance * (1 - chance)) / values.length) };
}
