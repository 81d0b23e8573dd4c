// What the spread of a figure in drawn seasons hangs on: the share that goes with each input, and which shares are no more than the
// noise of so few seasons. Pure numbers in, numbers out.

import { fQuantile } from '../agronomy/beta-distribution.ts';
import { allFinite } from '../calculation/kernels/states.ts';
import { rowsByKeys, slotsUpTo } from '../calculation/row-order.ts';
import type { DrawnInput } from './by-chance.ts';

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
  const classes = classesOf(length);
  const mean = sumOf(values, 0, length) / length;
  const total = squaresOf(values, mean);
  if (total === 0) return 0;
  let between = 0;
  for (let at = 0; at < classes; at++) {
    const from = Math.round((at * length) / classes);
    const until = Math.round(((at + 1) * length) / classes);
    const ofPart = sumOf(values, from, until) / (until - from);
    between += (until - from) * (ofPart - mean) ** 2;
  }
  return lessChance(between / total, classes, length);
}

function classesOf(seasons: number): number {
  return Math.max(2, Math.floor(seasons / PER_CLASS));
}

/** A share less what chance alone would give. */
function lessChance(share: number, classes: number, seasons: number): number {
  const byChance = ((classes - 1) / (seasons - 1)) * ((1 - share) / (1 - (classes - 1) / (seasons - 1)));
  return Math.max(0, share - byChance);
}

/** How seldom anything may be named that has no part in a figure. */
const SELDOM = 0.05;

/**
 * The least share that is more than noise, where shares of so many inputs are looked at: the one at which the variance between
 * classes is so far above that within them (F of the analysis of variance, Fisher 1925, Statistical Methods for Research Workers) as
 * of inputs without a part any is in one drawing of twenty at most (Bonferroni's inequality, Dunn 1961, Journal of the American
 * Statistical Association 56:52). 1 where too few seasons were drawn to tell.
 */
export function leastShare(seasons: number, inputs: number): number {
  if (seasons < FEWEST || inputs === 0) return 1;
  const classes = classesOf(seasons);
  const [above, below] = [classes - 1, seasons - classes];
  const f = fQuantile(1 - SELDOM / inputs, SELDOM / inputs, above, below);
  return lessChance((above * f) / (above * f + below), classes, seasons);
}

export interface HangsOn {
  /** The inputs with most of the spread, the most first. */
  readonly named: readonly { readonly name: string; readonly share: number }[];
  /** How many more have a share that is no noise. */
  readonly more: number;
  /** A smaller share can't be told from noise, and is left out. */
  readonly least: number;
}

/** What a figure hangs on, `most` of the inputs by name; undefined where it is the same in every season. */
export function hangsOn(inputs: readonly DrawnInput[], figure: Float64Array, most: number): HangsOn | undefined {
  const known = figure.filter(Number.isFinite);
  if (known.every((value) => value === known[0])) return undefined;
  const least = leastShare(known.length, inputs.length);
  const told = inputs
    .map((input) => ({ name: input.name, share: shareOfSpread(input.values, figure) }))
    .filter(({ share }) => share > least)
    .sort((a, b) => b.share - a.share);
  return { named: told.slice(0, most), more: Math.max(0, told.length - most), least };
}

function sumOf(values: Float64Array, from: number, until: number): number {
  let sum = 0;
  for (let at = from; at < until; at++) sum += values[at] as number;
  return sum;
}

function squaresOf(values: Float64Array, mean: number): number {
  let sum = 0;
  for (let at = 0; at < values.length; at++) sum += ((values[at] as number) - mean) ** 2;
  return sum;
}

/** The figures that are numbers, by rising input, those of one input as they stand. */
function byRisingInput(input: Float64Array, figure: Float64Array): Float64Array {
  const [seasons, inputs] =
    allFinite(figure, figure.length) && figure.length === input.length
      ? [slotsUpTo(input.length), input]
      : whereFinite(input, figure);
  const values = new Float64Array(seasons.length);
  const order = rowsByKeys(seasons, inputs);
  for (let at = 0; at < values.length; at++) values[at] = figure[order[at] as number] as number;
  return values;
}

/** The seasons in which the figure is a number, and the input in them. */
function whereFinite(input: Float64Array, figure: Float64Array): readonly [Int32Array, Float64Array] {
  const seasons = slotsUpTo(input.length).filter((at) => Number.isFinite(figure[at] ?? Number.NaN));
  return [seasons, Float64Array.from(seasons, (at) => input[at] as number)];
}
