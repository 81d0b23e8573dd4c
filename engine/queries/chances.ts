// What drawn seasons say of a figure: its 10, 50 and 90% values, the chance of reaching a goal, and what its spread hangs on.
// Pure numbers in, numbers out.

import { rowsByKeys } from '../calculation/row-order.ts';

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

/** Seasons a class in which shares of spread are estimated: enough for a mean, few enough for a curve. */
const PER_CLASS = 50;
/** Of fewer seasons nothing can be said. */
const FEWEST = 20;

/**
 * The share of a figure's variance that goes with one input: how far the mean of the figure moves as the input goes from its
 * lowest to its highest, by classes of equal count (the first-order index of Sobol' 1993, estimated from given draws as in
 * Plischke, Borgonovo & Smith 2013, European Journal of Operational Research 226:536), less what chance alone would give.
 */
export function shareOfSpread(input: Float64Array, figure: Float64Array): number {
  const values = byRisingInput(input, figure);
  const { length } = values;
  if (length < FEWEST) return 0;
  const classes = Math.max(2, Math.floor(length / PER_CLASS));
  const mean = sumOf(values, 0, length) / length;
  const total = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  if (total === 0) return 0;
  let between = 0;
  for (let at = 0; at < classes; at++) {
    const from = Math.round((at * length) / classes);
    const until = Math.round(((at + 1) * length) / classes);
    const ofPart = sumOf(values, from, until) / (until - from);
    between += (until - from) * (ofPart - mean) ** 2;
  }
  const share = between / total;
  const byChance = ((classes - 1) / (length - 1)) * ((1 - share) / (1 - (classes - 1) / (length - 1)));
  return Math.max(0, share - byChance);
}

function sumOf(values: Float64Array, from: number, until: number): number {
  let sum = 0;
  for (let at = from; at < until; at++) sum += values[at] as number;
  return sum;
}

/** The figures that are numbers, by rising input, those of one input as they stand. */
function byRisingInput(input: Float64Array, figure: Float64Array): Float64Array {
  const seasons = new Int32Array(input.length);
  const inputs = new Float64Array(input.length);
  let count = 0;
  for (let at = 0; at < input.length; at++) {
    if (!Number.isFinite(figure[at] ?? Number.NaN)) continue;
    seasons[count] = at;
    inputs[count++] = input[at] as number;
  }
  const values = new Float64Array(count);
  const order = rowsByKeys(seasons.subarray(0, count), inputs.subarray(0, count));
  for (let at = 0; at < count; at++) values[at] = figure[order[at] as number] as number;
  return values;
}
