// From when on a bed is warm enough for a crop. Calendars count a crop's start in weeks from the average last frost; the
// mean air temperature at which they let it start is steadier from place to place than that. Called by the functions; calls
// nothing.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

/** A crop that calendars start so many weeks after the average last frost starts at this daily mean (C), or BED_LAG after it. */
export interface StartPoint {
  readonly weeks: number;
  readonly mean: number;
}

export const START_POINTS: readonly StartPoint[] = [
  { weeks: -6, mean: 5.5 },
  { weeks: -3, mean: 7 },
  { weeks: 0, mean: 15 },
  { weeks: 1, mean: 16.5 },
  { weeks: 2, mean: 18 },
];

/**
 * Days by which the bed follows the air in spring for crops that start so many weeks before the last frost or earlier; for
 * those between that and the last frost it falls to nothing. Where spring comes fast the air is warm long before the soil.
 */
export const BED_LAG = { days: 14, weeks: -3 } as const;

/** Cdeg: where summers are cool nobody waits longer than until the mean is so far below that of the warmest time. */
export const COOL_SUMMER_MARGIN = 5;

/** C: mean of the summers in which days to maturity are told; warm crops that like it hotter are not slower for it. */
export const TEMPERATE_SUMMER = 21;

export const PLANTING_SEASON_LIMITS = {
  weeks: { min: -20, max: 20, why: 'calendars start crops within twenty weeks of the last frost' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Bed warm enough',
    gives: 'the daily mean temperature from which a crop is sown or set out, and so the date',
    equation: `${START_POINTS.map(({ weeks, mean }) => `${weeks} weeks: ${mean} C`).join(', ')}, straight between; at most the smooth mean of the warmest day less ${COOL_SUMMER_MARGIN} C; ${BED_LAG.days} days after that mean for crops of ${BED_LAG.weeks} weeks and earlier, falling to none at the last frost`,
    range:
      'mean of day and night in the air, standing for the top soil; the weeks are those of the crop from the average last frost',
    source:
      'fitted to sowing and setting-out dates of extension services and growers in Wisconsin, New York, North Carolina, Georgia, Florida, California, Alaska, England and New Zealand: see the checks of calendars, where each place is told by the rule of the others',
    standing: 'common practice',
  },
  {
    model: 'Days to maturity by warmth',
    gives: 'the degree-days to first harvest of a crop for which only days are published',
    equation: `days x (growth mean - base); growth mean = middle of the best growing temperatures, at most ${TEMPERATE_SUMMER} C; days warmer than the crop likes best count as the best`,
    range: 'where no degree-days are published; the sheet marks such a date as days, scaled by warmth',
    source: `growing temperatures: Knott, Handbook for Vegetable Growers; base temperatures as the crop's row says; the ${TEMPERATE_SUMMER} C, 70 F: a judgement, the mean of June to August in the states that publish such days`,
    standing: 'common practice',
  },
];

/**
 * Daily mean temperature (C) from which a crop may go into the bed, by the weeks from the average last frost at which
 * calendars start it; beyond the points it stays at the last one. No answer without the weeks. Source: see SOURCES.
 */
export function startTemperature(weeks: number, points: readonly StartPoint[] = START_POINTS): number {
  let [below] = points;
  if (below === undefined || Number.isNaN(weeks)) return Number.NaN;
  for (const above of points) {
    if (weeks <= above.weeks) {
      const share = above === below ? 0 : (Math.max(weeks, below.weeks) - below.weeks) / (above.weeks - below.weeks);
      return below.mean + (above.mean - below.mean) * share;
    }
    below = above;
  }
  return below.mean;
}
