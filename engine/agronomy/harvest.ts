// When a crop comes off and when its bed is free again: harvest windows, pickings through one, and the signs by which bulb
// onions are pulled. Dates are civil days. Calls values/tolerance.ts alone.

import { tolerantFloor } from '../values/tolerance.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const HARVEST_LIMITS = {
  lodged: { min: 0, max: 1, why: 'a share of the plants' },
  windowDays: { min: 1, why: 'a harvest takes a day at least' },
} satisfies Limits;

/** First and last day of harvest, and the first day on which the bed is free. */
export interface HarvestWindow {
  readonly start: number;
  readonly end: number;
  readonly free: number;
}

/**
 * Harvest from days to maturity: `started` is the date it is counted from (planting out for transplants, sowing for crops
 * sown in place), `windowDays` how long the crop can be cut or stands ready. NaN dates where anything is not known or the
 * window is shorter than a day.
 */
export function harvestWindow(started: number, daysToMaturity: number, windowDays: number): HarvestWindow {
  const start = started + tolerantFloor(daysToMaturity);
  const sound = daysToMaturity >= 0 && windowDays >= 1;
  const end = sound ? start + tolerantFloor(windowDays) - 1 : Number.NaN;
  return { start: sound ? start : Number.NaN, end, free: end + 1 };
}

/** The dates of pickings every `interval` days from the first to the last day of a window. */
export function pickings(window: HarvestWindow, interval: number): readonly number[] {
  if (!(interval >= 1) || !(window.end >= window.start)) return [];
  const count = tolerantFloor((window.end - window.start) / interval) + 1;
  return Array.from({ length: count }, (_, index) => window.start + Math.round(index * interval));
}

/** How far a stand of bulb onions is, by the share of plants whose tops have fallen. */
export type Lodging = 'growing' | 'ready' | 'all down';

/** Share of fallen tops from which bulb onions may be pulled: half (Hoepting, Cornell Cooperative Extension). */
export const LODGED_TO_PULL = 0.5;

/** Growth still to come in bulbs after their tops fall: 25 to 33 % of size (Hoepting, Cornell Cooperative Extension). */
export const GROWTH_AFTER_LODGING = { low: 0.25, high: 0.33 } as const;

/** What a share of fallen tops means; undefined outside 0 to 1. */
export function lodging(share: number): Lodging | undefined {
  if (!(share >= 0 && share <= 1)) return undefined;
  if (share < LODGED_TO_PULL) return 'growing';
  return share < 1 ? 'ready' : 'all down';
}

/** The same as a grower reads it. */
export function lodgingSentence(stage: Lodging): string {
  switch (stage) {
    case 'growing':
      return 'Fewer than half the tops are down: leave the bulbs, they still grow by a quarter to a third after tops fall.';
    case 'ready':
      return 'Half the tops or more are down: pull in dry weather.';
    case 'all down':
      return 'All tops are down: pull before the necks take up water or skins split.';
  }
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Harvest window',
    gives: 'first and last day of harvest and the day the bed is free',
    equation: 'start + days to maturity; end = first day + window - 1',
    range: 'any crop with days to maturity',
    source: 'Common practice',
    standing: 'common practice',
  },
  {
    model: 'Lodging of bulb onions',
    gives: 'when onions may be pulled',
    equation: 'half the tops down',
    range: 'bulb onions',
    source:
      'Hoepting, Cornell Cooperative Extension, harvest and post-harvest of onions; University of Massachusetts Extension',
    standing: 'published',
  },
];
