// How a station's own years differed: each month's mean against the average of all years, and the spread between years. Pure
// figures in degC; called by the reader of a station's daily file.

import { daysInMonth, yearMonthDay } from '../values/civil.ts';
import type { DailyReadings } from './climate.ts';
import { meanAndDeviation } from './sample.ts';

const MONTHS_OF_YEAR = 12;

export interface YearApart {
  readonly year: number;
  /** January first: degrees that the month's mean lay above the average of its years; NaN where too few days were read. */
  readonly months: Float64Array;
}

export interface YearsApart {
  /** In order; years without any whole enough month are left out. */
  readonly years: readonly YearApart[];
  /** January first: the sample standard deviation between years, in degrees; NaN for a month of fewer than three years. */
  readonly spread: Float64Array;
}

/** A month counts where no more days are missing: one in ten (a judgement). */
const MOST_MISSING = 0.1;
/** Two years tell next to nothing of a spread (a judgement). */
const FEWEST_YEARS = 3;

/** The mean of (low + high) / 2 over each month of each year, keyed by year; NaN where too many days are missing. */
function meansOfMonths({ days, lows, highs }: DailyReadings): ReadonlyMap<number, Float64Array> {
  const sums = new Map<number, { readonly sum: Float64Array; readonly count: Float64Array }>();
  for (let i = 0; i < days.length; i += 1) {
    const mean = ((lows[i] ?? Number.NaN) + (highs[i] ?? Number.NaN)) / 2;
    if (Number.isNaN(mean)) continue;
    const { year, month } = yearMonthDay(days[i] ?? Number.NaN);
    const of = sums.get(year) ?? { sum: new Float64Array(MONTHS_OF_YEAR), count: new Float64Array(MONTHS_OF_YEAR) };
    sums.set(year, of);
    of.sum[month - 1] = (of.sum[month - 1] ?? 0) + mean;
    of.count[month - 1] = (of.count[month - 1] ?? 0) + 1;
  }
  const means = new Map<number, Float64Array>();
  for (const [year, { sum, count }] of sums) {
    means.set(
      year,
      sum.map((total, month) => {
        const read = count[month] ?? 0;
        return read >= (1 - MOST_MISSING) * daysInMonth(year, month + 1) ? total / read : Number.NaN;
      }),
    );
  }
  return means;
}

/** How the years of a station's readings differed from their average, in the unit of the readings. */
export function yearsApart(readings: DailyReadings): YearsApart {
  const means = meansOfMonths(readings);
  const average = new Float64Array(MONTHS_OF_YEAR).fill(Number.NaN);
  const spread = average.slice();
  for (let month = 0; month < MONTHS_OF_YEAR; month += 1) {
    const known = [...means.values()]
      .map((months) => months[month] ?? Number.NaN)
      .filter((mean) => !Number.isNaN(mean));
    const { mean, deviation } = meanAndDeviation(known);
    average[month] = mean;
    if (known.length >= FEWEST_YEARS) spread[month] = deviation;
  }
  const years = [...means]
    .map(([year, months]) => ({ year, months: months.map((mean, month) => mean - (average[month] ?? Number.NaN)) }))
    .filter(({ months }) => months.some((departure) => !Number.isNaN(departure)))
    .sort((one, other) => one.year - other.year);
  return { years, spread };
}
