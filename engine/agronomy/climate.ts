// A station's daily lows and highs made into an average year of 365 days: gaps named, filled only where short. Called by
// the climate sheet; calls the civil calendar. Either temperature unit: what goes in comes out.

import { dayOfYear, isLeapYear, yearMonthDay } from '../values/civil.ts';
import type { ModelSource } from './source.ts';

export const DAYS_OF_YEAR = 365;

/** Gaps up to this many days are filled; longer ones stay blank. */
export const LONGEST_FILLED_GAP = 5;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Average year from a station',
    gives: 'mean low and high of each day of the year',
    equation:
      'gaps of 1 to 5 days are filled by a straight line between their neighbours, longer ones stay blank and are named; each calendar day is then the mean of the years that have it; 29 February is left out',
    range: 'daily lows and highs of one station, any number of years',
    source:
      'averages as in the WMO Guidelines on the Calculation of Climate Normals 2017 (WMO-No. 1203); the 5 days: common practice',
    standing: 'common practice',
  },
];

/** Daily readings of a station, one row a day in any order; a missing temperature is not a number. */
export interface DailyReadings {
  readonly days: ArrayLike<number>;
  readonly lows: ArrayLike<number>;
  readonly highs: ArrayLike<number>;
}

/** A run of days without a low, a high or either; both ends are civil days inside the run. */
export interface Gap {
  readonly from: number;
  readonly to: number;
  readonly filled: boolean;
}

export interface AverageYear {
  /** By calendar day, 0 = 1 January, 364 = 31 December; not a number where no year has the day. */
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  /** Civil years that gave any reading, ascending. */
  readonly years: readonly number[];
  readonly gaps: readonly Gap[];
  /** Calendar days that stay blank. */
  readonly blankDays: number;
}

/** Calendar day 0 to 364 of a civil day; 29 February counts as the 28th. */
export function calendarIndex(civil: number): number {
  const day = dayOfYear(civil);
  return isLeapYear(yearMonthDay(civil).year) && day > 59 ? day - 2 : day - 1;
}

function isLeapDay(civil: number): boolean {
  const { month, day } = yearMonthDay(civil);
  return month === 2 && day === 29;
}

// Fills runs of missing values up to the longest filled gap that have a neighbour on both sides.
function fillShortRuns(values: Float64Array): void {
  let lastKnown = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number;
    if (Number.isNaN(value)) continue;
    const missing = i - lastKnown - 1;
    if (missing <= LONGEST_FILLED_GAP) {
      const before = values[lastKnown] as number;
      for (let k = 1; k <= missing; k += 1) values[lastKnown + k] = before + ((value - before) * k) / (missing + 1);
    }
    lastKnown = i;
  }
}

function nameGaps(first: number, lows: Float64Array, highs: Float64Array): Gap[] {
  const gaps: Gap[] = [];
  let start = -1;
  for (let i = 0; i <= lows.length; i += 1) {
    const missing = i < lows.length && Number.isNaN((lows[i] ?? Number.NaN) + (highs[i] ?? Number.NaN));
    if (missing && start < 0) start = i;
    if (!missing && start >= 0) {
      const inside = start > 0 && i < lows.length;
      gaps.push({ from: first + start, to: first + i - 1, filled: inside && i - start <= LONGEST_FILLED_GAP });
      start = -1;
    }
  }
  return gaps;
}

function averageByCalendarDay(first: number, values: Float64Array): Float64Array {
  const sums = new Float64Array(DAYS_OF_YEAR);
  const counts = new Float64Array(DAYS_OF_YEAR);
  values.forEach((value, i) => {
    if (Number.isNaN(value) || isLeapDay(first + i)) return;
    const index = calendarIndex(first + i);
    sums[index] = (sums[index] ?? 0) + value;
    counts[index] = (counts[index] ?? 0) + 1;
  });
  return sums.map((sum, i) => sum / (counts[i] ?? 0));
}

/** The average year of a station's readings; undefined where there is no reading at all. Source and rule: see SOURCES. */
export function averageYear(readings: DailyReadings): AverageYear | undefined {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < readings.days.length; i += 1) {
    const day = readings.days[i] ?? Number.NaN;
    if (day < first) first = day;
    if (day > last) last = day;
  }
  if (!(last >= first)) return undefined;
  const lows = new Float64Array(last - first + 1).fill(Number.NaN);
  const highs = lows.slice();
  const years = new Set<number>();
  for (let i = 0; i < readings.days.length; i += 1) {
    const day = readings.days[i] ?? Number.NaN;
    lows[day - first] = readings.lows[i] ?? Number.NaN;
    highs[day - first] = readings.highs[i] ?? Number.NaN;
    years.add(yearMonthDay(day).year);
  }
  const gaps = nameGaps(first, lows, highs);
  fillShortRuns(lows);
  fillShortRuns(highs);
  const averageLows = averageByCalendarDay(first, lows);
  const averageHighs = averageByCalendarDay(first, highs);
  const blankDays = averageLows.filter((low, i) => Number.isNaN(low + (averageHighs[i] ?? Number.NaN))).length;
  return { lows: averageLows, highs: averageHighs, years: [...years].sort((a, b) => a - b), gaps, blankDays };
}

/** Temperatures of a nursery or propagation house that take the weather's place until the plants go out. */
export interface Nursery {
  /** First civil day in the field. */
  readonly plantedOut: number;
  /** Mean temperature of the nursery. */
  readonly mean: number;
}

/**
 * Daily means for `count` days from civil day `firstDay`, read off an average year of 365 lows and highs; a nursery's
 * mean holds on days before planting out.
 */
export function meansFrom(
  lows: ArrayLike<number>,
  highs: ArrayLike<number>,
  firstDay: number,
  count: number,
  nursery?: Nursery,
): Float64Array {
  const means = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const day = firstDay + i;
    const index = calendarIndex(day);
    means[i] =
      nursery !== undefined && day < nursery.plantedOut
        ? nursery.mean
        : ((lows[index] ?? Number.NaN) + (highs[index] ?? Number.NaN)) / 2;
  }
  return means;
}
