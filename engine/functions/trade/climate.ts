// The season's warmth as functions over the days of the Climate sheet: warmth between dates, the date a sum is reached or
// must begin, a day's value out of twelve monthly means, the bolting risk of a stand. The days stand for an average year: dates outside
// them are read at the same day of that year. Models stand in agronomy/; read by trade/index.ts.

import { calendarIndex } from '../../agronomy/climate.ts';
import { dailyFromMonthlyMeans } from '../../agronomy/monthly-means.ts';
import { dayOfWarmth, latestStartForWarmth, type WarmthOfYear, warmthBetween } from '../../agronomy/warmth-of-year.ts';
import { NONE } from '../../units/dimension.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  type Argument,
  columnOf,
  columnOfMeasures,
  DEGREE_DAY,
  date,
  degreeDays,
  inUnit,
  temperature,
} from './build.ts';
import { numberOf, numbersOf, overDays, warmthOf, YEAR_OF_DAYS, yearOf } from './over-days.ts';

/** Warmth of the average year, and where a date stands in it; undefined where the sheet is empty or the date is none. */
function warmthFrom(
  date: number,
  base: number,
  upper: number,
  days: Argument,
  means: Argument,
): { readonly warmth: WarmthOfYear; readonly offset: number; readonly first: number } | undefined {
  const year = yearOf(numbersOf(days));
  if (year === undefined || !Number.isFinite(date) || Number.isNaN(base)) return undefined;
  const warmth = warmthOf(numbersOf(means), base, upper);
  return { warmth, offset: Math.floor(date) - year.first, first: year.first };
}

const AVERAGE_YEAR =
  'NOAA degree-day definition; upper cut-off: McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291-300';

interface Months {
  readonly months: Float64Array;
  readonly values: Float64Array;
}

let seen: Months | undefined;
let dailyValues: Float64Array = new Float64Array(0);

/** The daily values of twelve monthly ones, worked out once for as long as they stay the same. */
function dailyOf(months: Float64Array, values: Float64Array): Float64Array {
  if (seen?.months === months && seen.values === values) return dailyValues;
  const inOrder = Array.from({ length: 12 }, (_, month) => values[months.indexOf(month + 1)] ?? Number.NaN);
  dailyValues = dailyFromMonthlyMeans(inOrder);
  seen = { months, values };
  return dailyValues;
}

export const CLIMATE: readonly FunctionDefinition[] = [
  overDays(
    'WARMTHBETWEEN',
    'Degree-days above `base` from one date up to another, each day counted to `upper` at most, in the average year given.',
    AVERAGE_YEAR,
    [date('from'), date('to'), temperature('base'), temperature('upper'), ...YEAR_OF_DAYS],
    inUnit(DEGREE_DAY),
    ([from, to, base, upper, days, means]) => {
      const found = warmthFrom(numberOf(from), numberOf(base), numberOf(upper), days, means);
      const end = numberOf(to) - (found?.first ?? Number.NaN);
      return found === undefined || Number.isNaN(end)
        ? Number.NaN
        : warmthBetween(found.warmth, found.offset, Math.floor(end));
    },
  ),
  overDays(
    'WARMTHDATE',
    'Date by which so many degree-days have come since `from`, in the average year given; blank if they never do.',
    AVERAGE_YEAR,
    [date('from'), degreeDays('wanted'), temperature('base'), temperature('upper'), ...YEAR_OF_DAYS],
    { is: 'date' },
    ([from, wanted, base, upper, days, means]) => {
      const found = warmthFrom(numberOf(from), numberOf(base), numberOf(upper), days, means);
      if (found === undefined) return Number.NaN;
      return found.first + dayOfWarmth(found.warmth, found.offset, numberOf(wanted));
    },
  ),
  overDays(
    'WARMTHSTART',
    'Latest date to begin so that so many degree-days have come before `by`, in the average year given; blank where they never do.',
    AVERAGE_YEAR,
    [date('by'), degreeDays('wanted'), temperature('base'), temperature('upper'), ...YEAR_OF_DAYS],
    { is: 'date' },
    ([by, wanted, base, upper, days, means]) => {
      const found = warmthFrom(numberOf(by), numberOf(base), numberOf(upper), days, means);
      if (found === undefined) return Number.NaN;
      return found.first + latestStartForWarmth(found.warmth, found.offset, numberOf(wanted));
    },
  ),
  overDays(
    'DAILYOFMONTHS',
    "A day's value out of twelve monthly means, temperatures or amounts a day, smooth, each month keeping its mean.",
    'Epstein 1991, Journal of Climate 4:365-368',
    [date('date'), columnOf('months', NONE), columnOfMeasures('means', 'M')],
    { is: 'letter', letter: 'M', among: 'ordered' },
    ([day, months, means]) => {
      const civil = numberOf(day);
      if (Number.isNaN(civil)) return Number.NaN;
      return dailyOf(numbersOf(months), numbersOf(means))[calendarIndex(civil)] ?? Number.NaN;
    },
  ),
];
