// The cold that sends a crop to seed: how much of a full day of it a temperature gives, and the days on which it freezes and
// thaws. Called by the functions over the Climate sheet; calls nothing.

import type { ModelSource } from './source.ts';

/** Days of freezing and thawing that raise the risk of bolting one step. */
export const FREEZE_THAW_DAYS = 10;

/** Days by which a day length that sends a crop to seed must come before its harvest for all of it to bolt. */
export const BOLTING_DAYS = 14;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Bolting risk',
    gives: 'low, raised or high, with the reason',
    equation:
      "a day of cold counts from 0 at the crop's base to 1 at its best and back to 0 at its limit; the sum from the size at which it feels cold is set against the days from which some and from which most bolt; ten days of freezing and thawing raise the risk one step; long days and heat are set against the dates of harvest",
    range: "a risk, never a percentage that no one has measured; each crop's figures with their sources stand in Crops",
    source:
      'form of the response: Atherton, Craigon & Basher 1990, Journal of Horticultural Science 65:423-429 (carrot); the ten days and the two weeks: common practice',
    standing: 'common practice',
  },
];

/** The temperatures (C) between which cold counts. */
export interface ColdRange {
  /** No effect below; none at it either, unless the best begins there. */
  readonly base: number;
  readonly bestFrom: number;
  readonly bestTo: number;
  /** No effect above; none at it either, unless the best ends there. */
  readonly maximum: number;
}

/** How much of a full day of cold a mean temperature (C) gives, 0 to 1; no answer without a temperature. */
export function coldEffect(range: ColdRange, mean: number): number {
  if (mean < range.base || mean > range.maximum) return 0;
  if (mean < range.bestFrom) return (mean - range.base) / (range.bestFrom - range.base);
  if (mean <= range.bestTo) return 1;
  return (range.maximum - mean) / (range.maximum - range.bestTo);
}

/** Whether a day freezes and thaws: a low below and a high above freezing (C), under a cover that warms by `gain`. */
export function freezesAndThaws(low: number, high: number, gain: number): boolean {
  return low + gain < 0 && high + gain > 0;
}
