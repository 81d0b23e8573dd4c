// The season's warmth as functions over the days of the Climate sheet: warmth between dates, the date a sum is reached or
// must begin, a day's value out of twelve monthly means, the bolting risk of a stand. The days stand for an average year: dates outside
// them are read at the same day of that year. Models stand in agronomy/; read by trade/index.ts.

import { calendarIndex } from '../../agronomy/climate.ts';
import { dailyFromMonthlyMeans } from '../../agronomy/monthly-means.ts';
import { dayOfWarmth, latestStartForWarmth, type WarmthOfYear, warmthBetween } from '../../agronomy/warmth-of-year.ts';
import { NONE } from '../../units/dimension.ts';
import type { FunctionDefinition, OverNumbers } from '../definition.ts';
import { columnOf, columnOfMeasures, DEGREE_DAY, date, degreeDays, inUnit, temperature } from './build.ts';
import {
  NO_DAYS,
  numberOf,
  numbersOf,
  overDays,
  overDaysInNumbers,
  warmthOf,
  YEAR_OF_DAYS,
  yearOf,
} from './over-days.ts';

/**
 * What follows from the warmth of the average year between a base and an upper limit, the third and fourth values, and from where in it
 * a date stands, the first; no answer where the sheet is empty or one of them is none.
 */
function overWarmth(
  work: (warmth: WarmthOfYear, offset: number, first: number, given: Float64Array) => number,
): OverNumbers {
  return ([days = NO_DAYS, means = NO_DAYS]) => {
    const year = yearOf(days);
    const warmth = warmthOf(means);
    return (given) => {
      const date = given[0] as number;
      const base = given[2] as number;
      if (year === undefined || !Number.isFinite(date) || Number.isNaN(base)) return Number.NaN;
      return work(warmth(base, given[3] as number), Math.floor(date) - year.first, year.first, given);
    };
  };
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
  overDaysInNumbers(
    'WARMTHBETWEEN',
    'Degree-days above `base` from one date up to another, each day counted to `upper` at most, in the average year given.',
    AVERAGE_YEAR,
    [date('from'), date('to'), temperature('base'), temperature('upper'), ...YEAR_OF_DAYS],
    inUnit(DEGREE_DAY),
    overWarmth((warmth, offset, first, given) => {
      const end = (given[1] as number) - first;
      return Number.isNaN(end) ? Number.NaN : warmthBetween(warmth, offset, Math.floor(end));
    }),
  ),
  overDaysInNumbers(
    'WARMTHDATE',
    'Date by which so many degree-days have come since `from`, in the average year given; blank if they never do.',
    AVERAGE_YEAR,
    [date('from'), degreeDays('wanted'), temperature('base'), temperature('upper'), ...YEAR_OF_DAYS],
    { is: 'date' },
    overWarmth((warmth, offset, first, given) => first + dayOfWarmth(warmth, offset, given[1] as number)),
  ),
  overDaysInNumbers(
    'WARMTHSTART',
    'Latest date to begin so that so many degree-days have come before `by`, in the average year given; blank where they never do.',
    AVERAGE_YEAR,
    [date('by'), degreeDays('wanted'), temperature('base'), temperature('upper'), ...YEAR_OF_DAYS],
    { is: 'date' },
    overWarmth((warmth, offset, first, given) => first + latestStartForWarmth(warmth, offset, given[1] as number)),
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
