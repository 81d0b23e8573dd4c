// When onion tops fall: a thermal time after the start of bulbing, adjustable for each variety and refitted from a
// grower's own dates. Called by the plantings and records sheets; calls degree-days.

import { BULBING_BASE, BULBING_UPPER } from './bulbing.ts';
import { meanAndDeviation } from './sample.ts';
import type { ModelSource } from './source.ts';
import { dayReachingSum, sumDegreeDays } from './thermal-time.ts';

/**
 * Degree-days above 5 C, warmth above 25 C not counted, from the start of bulbing until half the tops are down. A
 * starting value, chosen so that intermediate and 14-hour onions near 38 degrees north come in during July.
 */
export const TOPS_DOWN_THERMAL_TIME = 1050;

/**
 * Of that thermal time, what an onion needs that has stood over winter and bulbs as a large plant: chosen so that sowings of
 * late August at 52 N come in from late June and short-day onions of autumn at 32 N in late May.
 */
export const OVERWINTERED_SHARE = 0.7;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Tops down',
    gives: 'the date on which half the tops have fallen',
    equation:
      'sum of degree-days above 5 C (means cut at 25 C) from the start of bulbing reaches the sum of the variety',
    range: 'a starting value of 1,050 degree-days; refit from own bulbing and tops-down dates',
    source: 'common practice: harvest in July near 38 degrees north of onions planted in mid-March',
    standing: 'common practice',
  },
];

/** Civil day on which the tops are down; `means` are daily means (C) from civil day `firstDay`. No answer where never. */
export function topsDownDate(
  means: ArrayLike<number>,
  firstDay: number,
  bulbingStarts: number,
  thermalTime: number = TOPS_DOWN_THERMAL_TIME,
): number {
  if (Number.isNaN(bulbingStarts)) return Number.NaN;
  return firstDay + dayReachingSum(means, bulbingStarts - firstDay, thermalTime, BULBING_BASE, BULBING_UPPER);
}

export interface MaturityRecord {
  readonly firstDay: number;
  readonly means: ArrayLike<number>;
  readonly bulbingStarted: number;
  readonly topsDown: number;
}

export interface ThermalTimeFit {
  readonly mean: number;
  /** Standard deviation (n - 1); not a number for a single record. */
  readonly deviation: number;
  readonly records: number;
}

/** Mean and spread of the thermal time between past bulbing and tops-down dates; records with missing weather are left out. */
export function refitTopsDown(records: readonly MaturityRecord[]): ThermalTimeFit {
  const sums = records
    .map(({ firstDay, means, bulbingStarted, topsDown }) =>
      sumDegreeDays(means, bulbingStarted - firstDay, topsDown - firstDay + 1, BULBING_BASE, BULBING_UPPER),
    )
    .filter((sum) => !Number.isNaN(sum));
  return { ...meanAndDeviation(sums), records: sums.length };
}
