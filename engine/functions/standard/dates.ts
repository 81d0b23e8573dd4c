// Dates and times of day. A date is a whole civil day; a time of day or a length of time is a time span (TIME(6; 30; 0) is six
// and a half hours). Read by standard/index.ts; working days stand in workdays.ts.

import { TIME } from '../../units/dimension.ts';
import { yearMonthDay } from '../../values/civil.ts';
import { date, failure, makers, needed, optional, or, plain, rule, takes, text, withLoop } from '../build.ts';
import { type FunctionDefinition, type Loop, rowOf } from '../definition.ts';
import {
  dateDifference,
  dateOfWritten,
  days360,
  easter,
  isoWeek,
  monthEnd,
  monthsOn,
  weekday,
  weekNumber,
  wholeSeconds,
  within,
  yearFraction,
} from './calendar.ts';
import { DAYS, HOURS } from './types.ts';

const make = makers('dates');

const isoWeekLoop: Loop = (out, count, [date]) => {
  if (date === undefined) return;
  for (let i = 0; i < count; i++) out[i] = isoWeek(rowOf(date, i));
};

const NO_YEAR = failure('number', 'Years run from 1 to 9999: check the year, month and day.');
const NO_CENTURY = failure('number', 'Which century? Write the year in full, 2027 rather than 27; years run to 9999.');
const NO_KIND = failure('number', 'There is no such way of counting: look at the kinds in the help of this function.');
const NOT_IN_ORDER = failure('number', 'The first date must not be after the second.');
const NO_INTERVAL = failure('value', 'Say what to count in: "y", "m", "d", "md", "ym" or "yd".');

const DATE_ALONE = takes(needed('date', date));
const TIME_ALONE = takes(needed('time', { is: 'quantity', dimension: TIME }));

export const DATES: readonly FunctionDefinition[] = [
  make.numeric(
    'DATE',
    'The date of a year, month and day; month 13 is next January, day 0 the last of the month before.',
    '6.10.2',
    takes(needed('year', plain), needed('month', plain), needed('day', plain)),
    date,
    dateOfWritten,
    NO_CENTURY,
  ),
  make.form(
    'TODAY',
    'today',
    'The day the workbook stands at: an input of the workbook, not a clock.',
    '6.10.20',
    takes(),
    date,
  ),
  make.numeric('YEAR', 'The year of a date.', '6.10.24', DATE_ALONE, plain, (civil) => yearMonthDay(civil).year),
  make.numeric(
    'MONTH',
    'The month of a date, 1 to 12.',
    '6.10.14',
    DATE_ALONE,
    plain,
    (civil) => yearMonthDay(civil).month,
  ),
  make.numeric(
    'DAY',
    'The day of the month of a date, 1 to 31.',
    '6.10.5',
    DATE_ALONE,
    plain,
    (civil) => yearMonthDay(civil).day,
  ),
  make.numeric(
    'WEEKDAY',
    'The day of the week: Sunday is 1 (kind 1, where left out), Monday is 1 (kind 2), Monday is 0 (kind 3), or 11 to 17 for weeks from Monday to Sunday.',
    '6.10.21',
    takes(needed('date', date), optional('kind', plain)),
    plain,
    (civil, kind?: number) => weekday(civil, or(kind, 1)),
    NO_KIND,
  ),
  make.numeric(
    'WEEKNUM',
    'The week of the year, week 1 holding 1 January: weeks from Sunday (kind 1, where left out), from Monday (2), from Monday to Sunday (11 to 17), or ISO weeks (21).',
    '6.10.22',
    takes(needed('date', date), optional('kind', plain)),
    plain,
    (civil, kind?: number) => weekNumber(civil, or(kind, 1)),
    NO_KIND,
  ),
  withLoop(
    make.numeric(
      'ISOWEEKNUM',
      'The week of the year after ISO 8601: from Monday, week 1 holds the first Thursday.',
      '6.10.12',
      DATE_ALONE,
      plain,
      isoWeek,
    ),
    isoWeekLoop,
  ),
  make.numeric(
    'EDATE',
    'The same day so many months on or back; the last of the month where it is shorter.',
    '6.10.9',
    takes(needed('date', date), needed('months', plain)),
    date,
    monthsOn,
    NO_YEAR,
  ),
  make.numeric(
    'EOMONTH',
    'The last day of the month so many months on or back.',
    '6.10.10',
    takes(needed('date', date), needed('months', plain)),
    date,
    monthEnd,
    NO_YEAR,
  ),
  make.numeric(
    'DAYS',
    'The time from the second date to the first, as the dates subtracted.',
    '6.10.6',
    takes(needed('end', date), needed('start', date)),
    rule(() => DAYS),
    (end, start) => end - start,
  ),
  make.numeric(
    'DAYS360',
    'The time between two dates in a year of 360 days; the European way where the last is yes.',
    '6.10.7',
    takes(needed('start', date), needed('end', date), optional('european', { is: 'yesno' })),
    rule(() => DAYS),
    (start, end, european?: number) => days360(start, end, or(european, 0)),
  ),
  make.scalar(
    'DATEDIF',
    'Whole years ("y"), months ("m") or days ("d") from one date to a later one; "ym", "md", "yd" leave out the larger ones.',
    '6.10.3',
    takes(needed('start', date), needed('end', date), needed('interval', text)),
    plain,
    ([start, end, interval]) => {
      if (typeof start !== 'number' || typeof end !== 'number' || typeof interval !== 'string') return null;
      return start > end ? NOT_IN_ORDER : (dateDifference(start, end, interval) ?? NO_INTERVAL);
    },
  ),
  make.numeric(
    'YEARFRAC',
    'The years between two dates with their fraction; basis 0 US 30/360 (where left out), 1 actual, 2 actual/360, 3 actual/365, 4 European 30/360.',
    '6.10.25',
    takes(needed('start', date), needed('end', date), optional('basis', plain)),
    plain,
    (start, end, basis?: number) => yearFraction(start, end, or(basis, 0)),
    NO_KIND,
  ),
  make.numeric(
    'EASTERSUNDAY',
    'Easter Sunday of a year from 1583 on.',
    '6.10.8',
    takes(needed('year', plain)),
    date,
    easter,
    NO_YEAR,
  ),
  make.numeric(
    'TIME',
    'A time span of hours, minutes and seconds: TIME(6; 30; 0) is 6 h 30 min.',
    '6.10.18',
    takes(needed('hours', plain), needed('minutes', plain), needed('seconds', plain)),
    rule(() => HOURS),
    (hours, minutes, secs) => (hours * 3600 + minutes * 60 + secs) / 86400,
  ),
  make.numeric(
    'HOUR',
    'The whole hours of a time span, 0 to 23; whole days are left out.',
    '6.10.11',
    TIME_ALONE,
    plain,
    (span) => Math.floor(within(wholeSeconds(span), 86400) / 3600),
  ),
  make.numeric('MINUTE', 'The whole minutes of a time span, 0 to 59.', '6.10.13', TIME_ALONE, plain, (span) =>
    Math.floor(within(wholeSeconds(span), 3600) / 60),
  ),
  make.numeric('SECOND', 'The seconds of a time span, 0 to 59.', '6.10.17', TIME_ALONE, plain, (span) =>
    within(wholeSeconds(span), 60),
  ),
];
