// The course of the year as functions over the days of the Climate sheet: the middle of summer, the smooth temperature of a
// date, from when until when it is warm enough; and the temperature at which a crop may go into the bed. Models stand in
// agronomy/; read by trade/index.ts.

import { type CourseOfYear, SMOOTHING_REACH, type WarmSpan, warmSpan } from '../../agronomy/course-of-year.ts';
import { PLANTING_SEASON_LIMITS, startTemperature } from '../../agronomy/planting-season.ts';
import type { Parameter } from '../../language/signature.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { columnOfDates, columnOfTemperatures, date, numeric, temperature, weeks } from './build.ts';
import { courseOf, KELVIN, NO_DAYS, overDaysInNumbers, placeOf, type Year, yearOf } from './over-days.ts';

const SOURCE = `Moving mean of ${2 * SMOOTHING_REACH + 1} days, taken twice`;
const DAYS_AND_TEMPERATURES: readonly Parameter[] = [columnOfDates('days'), columnOfTemperatures('temperatures')];

interface Course {
  readonly year: Year;
  readonly course: CourseOfYear;
}

/** Undefined where the Climate sheet is empty or holds less than a year. */
function courseFrom(days = NO_DAYS, temperatures = NO_DAYS): Course | undefined {
  const year = yearOf(days);
  const { course } = courseOf(temperatures);
  return year === undefined || course === undefined ? undefined : { year, course };
}

/** The warmest day of the year that lies nearest to a date; the year repeats. */
function summerNear(day: number, { year, course }: Course): number {
  const warmest = year.first + course.warmest;
  return warmest + Math.round((Math.floor(day) - warmest) / year.length) * year.length;
}

const spansOf = keptFor((_: CourseOfYear) => new Map<number, WarmSpan | 'all' | 'none'>());

function spanOf(course: CourseOfYear): (level: number) => WarmSpan | 'all' | 'none' {
  const kept = spansOf(course);
  return (level) => {
    const known = kept.get(level);
    if (known !== undefined) return known;
    const found = warmSpan(course, level);
    kept.set(level, found);
    return found;
  };
}

function warmSide(name: string, doc: string, pick: (span: WarmSpan) => number): FunctionDefinition {
  return overDaysInNumbers(
    name,
    doc,
    SOURCE,
    [date('summer'), temperature('temperature'), ...DAYS_AND_TEMPERATURES],
    { is: 'date' },
    ([days, temperatures]) => {
      const found = courseFrom(days, temperatures);
      if (found === undefined) return () => Number.NaN;
      const spanAt = spanOf(found.course);
      return (given) => {
        const day = given[0] as number;
        const wanted = given[1] as number;
        if (Number.isNaN(day + wanted)) return Number.NaN;
        const span = spanAt(wanted);
        return typeof span === 'string' ? Number.NaN : summerNear(day, found) + pick(span);
      };
    },
  );
}

export const COURSE: readonly FunctionDefinition[] = [
  overDaysInNumbers(
    'HOTTESTDAY',
    'The middle of summer nearest to a date: the warmest day of the average year given, its means smoothed.',
    SOURCE,
    [date('near'), ...DAYS_AND_TEMPERATURES],
    { is: 'date' },
    ([days, temperatures]) => {
      const found = courseFrom(days, temperatures);
      return (given) => {
        const day = given[0] as number;
        return found === undefined || Number.isNaN(day) ? Number.NaN : summerNear(day, found);
      };
    },
  ),
  overDaysInNumbers(
    'TEMPERATUREAROUND',
    'The smooth temperature around a date in the average year given, of means, lows or highs.',
    SOURCE,
    [date('date'), ...DAYS_AND_TEMPERATURES],
    { is: 'temperature' },
    ([days, temperatures]) => {
      const found = courseFrom(days, temperatures);
      return (given) => {
        const day = given[0] as number;
        if (found === undefined || Number.isNaN(day)) return Number.NaN;
        return (found.course.values[placeOf(found.year, day)] as number) + KELVIN;
      };
    },
  ),
  warmSide(
    'WARMFROM',
    'First day of a summer from which the smooth temperature stays at or above the one given; blank where the whole year is as warm, or no day.',
    (span) => span.from,
  ),
  warmSide(
    'WARMUNTIL',
    'First day after a summer on which the smooth temperature is below the one given; blank where the whole year is as warm, or no day.',
    (span) => span.until,
  ),
  numeric(
    {
      name: 'STARTWARMTH',
      group: 'light and climate',
      parameters: [weeks('weeks_from_last_frost', { limit: PLANTING_SEASON_LIMITS.weeks })],
      gives: { is: 'temperature' },
      doc: 'Daily mean temperature from which a crop goes into the bed, by the weeks from the average last frost at which calendars start it.',
      source: 'Fitted to calendars of extension services; see the Sources sheet',
    },
    (weeksFromFrost) => startTemperature(weeksFromFrost) + KELVIN,
  ),
];
