// Day length and warmth as functions: how long the day is, when it reaches a length, a day's degree-days. Bodies stand in
// agronomy/; read by trade/index.ts.

import { DAY_LENGTH_LIMITS, dayLength } from '../../agronomy/day-length.ts';
import { firstDateReaching, longestDay, shortDayFrom } from '../../agronomy/day-length-dates.ts';
import { degreeDays } from '../../agronomy/thermal-time.ts';
import { yearMonthDay } from '../../values/civil.ts';
import { dear } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { DEGREE_DAY, date, HOUR, hours, numeric, plain, temperature } from './build.ts';

const MEEUS = 'Meeus 1991, Astronomical Algorithms, in the form of the NOAA solar calculator';

const LATITUDE = plain('latitude', { limit: DAY_LENGTH_LIMITS.latitude });
const YEAR = plain('year', { limit: DAY_LENGTH_LIMITS.year });

/** The date itself where its day is long enough already, else the next date that reaches the length; at most a year on. */
function longDayFrom(latitude: number, wanted: number, from: number): number {
  if (dayLength(latitude, from) >= wanted) return from;
  const { year } = yearMonthDay(from);
  const thisYear = firstDateReaching(latitude, wanted, year);
  return thisYear >= from ? thisYear : firstDateReaching(latitude, wanted, year + 1);
}

export const LIGHT: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'DAYLENGTH',
      group: 'light and climate',
      parameters: [LATITUDE, date('date')],
      gives: HOUR,
      doc: 'Time from sunrise to sunset on a date at a latitude (degrees, north positive).',
      source: MEEUS,
    },
    dayLength,
  ),
  numeric(
    {
      name: 'DAYLENGTHDATE',
      group: 'light and climate',
      parameters: [LATITUDE, hours('hours'), YEAR],
      gives: { is: 'date' },
      doc: 'First date in the year whose day is at least so long while the day before was shorter; blank if there is none.',
      source: MEEUS,
    },
    firstDateReaching,
  ),
  dear(
    numeric(
      {
        name: 'LONGDAYFROM',
        group: 'light and climate',
        parameters: [LATITUDE, hours('hours'), date('from')],
        gives: { is: 'date' },
        doc: 'First date on or after `from` whose day is at least so long; blank if none comes by the end of the next year.',
        source: MEEUS,
      },
      longDayFrom,
    ),
  ),
  dear(
    numeric(
      {
        name: 'SHORTDAYFROM',
        group: 'light and climate',
        parameters: [LATITUDE, hours('hours'), date('from')],
        gives: { is: 'date' },
        doc: 'First date on or after `from` whose day is shorter than that; blank where none is.',
        source: MEEUS,
      },
      shortDayFrom,
    ),
  ),
  numeric(
    {
      name: 'LONGESTDAY',
      group: 'light and climate',
      parameters: [LATITUDE, YEAR],
      gives: HOUR,
      doc: 'Length of the longest day of the year at a latitude.',
      source: MEEUS,
    },
    longestDay,
  ),
  numeric(
    {
      name: 'THERMALTIME',
      group: 'light and climate',
      parameters: [
        temperature('low'),
        temperature('high'),
        temperature('base'),
        temperature('upper', { optional: true }),
      ],
      gives: DEGREE_DAY,
      doc: "A day's degree-days: the mean of low and high, counted to `upper` at most, less `base`, never below 0.",
      source: 'NOAA degree-day definition; upper cut-off: McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291-300',
    },
    degreeDays,
  ),
];
