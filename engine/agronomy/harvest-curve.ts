// How the harvest of one planting spreads over its window: fruit picked again and again along a curve, leaves cut two or three
// times. Called by the functions and the weekly harvest; calls nothing. Times count from the first picking, in one unit.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const HARVEST_CURVE_LIMITS = {
  middle: { min: 0, max: 1, why: 'the middle of the curve lies within the harvest window, 0 to 100 % of it' },
  spread: { min: 0.01, max: 10, why: 'the spread of a harvest curve is some 10 to 40 % of its window' },
  cut: { min: 0, max: 5, why: 'a later cut gives some share of the first' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Harvest curve',
    gives: 'the share of a planting picked by a day of its harvest, and so by week',
    equation:
      'logistic of (t - m) / s cut off at the first and last picking and stretched to 100 %; m and s as shares of the window',
    range:
      'fruit, pods and leaves picked again and again; where frost ends the window early the rest of the curve is lost',
    source:
      'form: logistic growth of the cumulative yield over pickings, as fitted to cherry tomato, Ciencia Rural 46(2):233, 2016; m and s: fits to weighed pickings of two seasons of one garden (Lendway 2020 and 2021, gardenR data), root mean square error 0.01 to 0.08; the rest memory',
    standing: 'published',
  },
  {
    model: 'Cuts of leaf crops',
    gives: 'the share of a planting cut by a day of its harvest',
    equation: 'the first cut at once, the second and third after so many days each, as shares of the first',
    range: 'crops cut up to three times',
    source: 'common practice; shares by crop in the library',
    standing: 'common practice',
  },
];

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}

/**
 * Share (0 to 1) of a planting picked by `time` after the first picking, of a window of `window`; `middle` and `spread` are
 * shares of the window. 0 before the first picking, 1 after the window. No answer for a window or spread of nought.
 */
export function harvestedShare(time: number, window: number, middle: number, spread: number): number {
  if (!(window > 0) || !(spread > 0) || Number.isNaN(time + middle)) return Number.NaN;
  const at = (share: number): number => logistic((share - middle) / spread);
  const share = Math.min(1, Math.max(0, time / window));
  return (at(share) - at(0)) / (at(1) - at(0));
}

/**
 * Share (0 to 1) of a planting cut by `time` after the first cut, which counts at time 0; `second` and `third` are later
 * cuts over the first, 0 where there are none; `between` is the time between cuts.
 */
export function cutShare(time: number, between: number, second: number, third: number): number {
  if (!(between > 0) || Number.isNaN(time)) return Number.NaN;
  const [secondCut, thirdCut] = [Math.max(0, second), Math.max(0, third)];
  if (time < 0) return 0;
  const cut = 1 + (time >= between ? secondCut : 0) + (time >= between * 2 ? thirdCut : 0);
  return cut / (1 + (secondCut + thirdCut));
}
