// Dates and times of day. A date is a whole civil day; a time of day or a length of time is a time span (TIME(6; 30; 0) is six
// and a half hours). Read by standard/index.ts; working days stand in workdays.ts.

import { TIME } from '../../units/dimension.ts';
import { civilDay, isLeapYear, yearMonthDay } from '../../values/civil.ts';
import { date, failure, makers, needed, optional, or, plain, rule, takes, text } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { DAYS, HOURS } from './types.ts';

const make = makers('dates');

const NO_YEAR = failure('number', 'Years run from 1 to 9999: check the year, month and day.');
const NO_KIND = failure('number', 'There is no such way of counting: look at the kinds in the help of this function.');
const NOT_IN_ORDER = failure('number', 'The first date must not be after the second.');
const NO_INTERVAL = failure('value', 'Say what to count in: "y", "m", "d", "md", "ym" or "yd".');

const DATE_ALONE = takes(needed('date', date));
const TIME_ALONE = takes(needed('time', { is: 'quantity', dimension: TIME }));

function dateOf(year: number, month: number, day: number): number {
  const civil = civilDay(Math.trunc(year), Math.trunc(month), Math.trunc(day));
  const made = yearMonthDay(civil).year;
  return made >= 1 && made <= 9999 ? civil : Number.NaN;
}

function daysInMonth(year: number, month: number): number {
  return civilDay(year, month + 1, 1) - civilDay(year, month, 1);
}

/** The same day so many months on, the month's last day where it is shorter. */
function monthsOn(civil: number, months: number): number {
  const { year, month, day } = yearMonthDay(civil);
  const first = yearMonthDay(civilDay(year, month + Math.trunc(months), 1));
  return dateOf(first.year, first.month, Math.min(day, daysInMonth(first.year, first.month)));
}

function monthEnd(civil: number, months: number): number {
  const { year, month } = yearMonthDay(civil);
  return civilDay(year, month + Math.trunc(months) + 1, 1) - 1;
}

/** Days since the last Monday, 0 to 6. 1970-01-01 was a Thursday. */
function sinceMonday(civil: number): number {
  return (((Math.floor(civil) + 3) % 7) + 7) % 7;
}

/** WEEKDAY's kinds: 1 Sunday is 1, 2 Monday is 1, 3 Monday is 0, 11 to 17 Monday to Sunday is 1. */
function weekday(civil: number, kind: number): number {
  const monday = sinceMonday(civil);
  const chosen = Math.trunc(kind);
  if (chosen === 1) return ((monday + 1) % 7) + 1;
  if (chosen === 2) return monday + 1;
  if (chosen === 3) return monday;
  if (chosen >= 11 && chosen <= 17) return ((monday - (chosen - 11) + 7) % 7) + 1;
  return Number.NaN;
}

/** Week of ISO 8601: weeks begin on Monday, the first holds the year's first Thursday. */
function isoWeek(civil: number): number {
  const thursday = Math.floor(civil) - sinceMonday(civil) + 3;
  const newYear = civilDay(yearMonthDay(thursday).year, 1, 1);
  return Math.floor((thursday - newYear) / 7) + 1;
}

/** WEEKNUM's kinds: 1 weeks from Sunday, 2 from Monday, 11 to 17 from Monday to Sunday, 21 and 150 ISO 8601; week 1 holds 1 January. */
function weekNumber(civil: number, kind: number): number {
  const chosen = Math.trunc(kind);
  if (chosen === 21 || chosen === 150) return isoWeek(civil);
  const first = chosen === 1 ? 6 : chosen === 2 ? 0 : chosen >= 11 && chosen <= 17 ? chosen - 11 : Number.NaN;
  const newYear = civilDay(yearMonthDay(civil).year, 1, 1);
  const lead = (sinceMonday(newYear) - first + 7) % 7;
  return Math.floor((Math.floor(civil) - newYear + lead) / 7) + 1;
}

/** Whole seconds in a time span, dust forgiven. */
function seconds(days: number): number {
  return Math.round(days * 86400);
}

function within(size: number, whole: number): number {
  return ((size % whole) + whole) % whole;
}

/** Days between in a year of twelve months of 30 days; the US way where `european` is 0. */
function days360(from: number, to: number, european: number): number {
  const a = yearMonthDay(from);
  const b = yearMonthDay(to);
  let dayA = a.day;
  let dayB = b.day;
  if (european !== 0) {
    dayA = Math.min(dayA, 30);
    dayB = Math.min(dayB, 30);
  } else {
    const endOfFebruaryA = a.month === 2 && dayA === daysInMonth(a.year, 2);
    const endOfFebruaryB = b.month === 2 && dayB === daysInMonth(b.year, 2);
    if (endOfFebruaryA && endOfFebruaryB) dayB = 30;
    if (dayA === 31 || endOfFebruaryA) dayA = 30;
    if (dayB === 31 && dayA >= 30) dayB = 30;
  }
  return (b.year - a.year) * 360 + (b.month - a.month) * 30 + (dayB - dayA);
}

/** Easter Sunday of a year. Source: the anonymous Gregorian algorithm, in J. Meeus 1991, Astronomical Algorithms, ch. 8. */
function easter(given: number): number {
  const year = Math.trunc(given);
  if (year < 1583 || year > 9999) return Number.NaN;
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const d = Math.floor(b / 4);
  const e = b % 4;
  const f = Math.floor((b + 8) / 25);
  const g = Math.floor((b - f + 1) / 3);
  const h = (19 * a + b - d - g + 15) % 30;
  const i = Math.floor(c / 4);
  const k = c % 4;
  const l = (32 + 2 * e + 2 * i - h - k) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const sum = h + l - 7 * m + 114;
  return civilDay(year, Math.floor(sum / 31), (sum % 31) + 1);
}

/** Whole months from one date to a later one. */
function wholeMonths(from: number, to: number): number {
  const a = yearMonthDay(from);
  const b = yearMonthDay(to);
  return (b.year - a.year) * 12 + (b.month - a.month) - (b.day < a.day ? 1 : 0);
}

function dateDifference(from: number, to: number, interval: string): number | undefined {
  const months = wholeMonths(from, to);
  const end = yearMonthDay(to);
  switch (interval.toLowerCase()) {
    case 'y':
      return Math.floor(months / 12);
    case 'm':
      return months;
    case 'd':
      return to - from;
    case 'ym':
      return months % 12;
    case 'md':
      return (
        end.day - yearMonthDay(from).day + (end.day < yearMonthDay(from).day ? daysInMonth(end.year, end.month - 1) : 0)
      );
    case 'yd': {
      const { month, day } = yearMonthDay(from);
      const thisYear = civilDay(end.year, month, day);
      return to - (thisYear <= to ? thisYear : civilDay(end.year - 1, month, day));
    }
    default:
      return undefined;
  }
}

/** YEARFRAC's bases: 0 US 30/360, 1 actual, 2 actual/360, 3 actual/365, 4 European 30/360. */
function yearFraction(one: number, other: number, basis: number): number {
  const from = Math.min(one, other);
  const to = Math.max(one, other);
  switch (Math.trunc(basis)) {
    case 0:
      return days360(from, to, 0) / 360;
    case 1:
      return actualYears(from, to);
    case 2:
      return (to - from) / 360;
    case 3:
      return (to - from) / 365;
    case 4:
      return days360(from, to, 1) / 360;
    default:
      return Number.NaN;
  }
}

/** Days over the mean length of the years touched; of the one year where the span is within twelve months. */
function actualYears(from: number, to: number): number {
  const a = yearMonthDay(from);
  const b = yearMonthDay(to);
  const withinYear =
    a.year === b.year || (b.year === a.year + 1 && (b.month < a.month || (b.month === a.month && b.day <= a.day)));
  if (withinYear) {
    const leapDay = (year: number): boolean =>
      isLeapYear(year) && civilDay(year, 2, 29) >= from && civilDay(year, 2, 29) <= to;
    const long = a.year === b.year ? isLeapYear(a.year) : leapDay(a.year) || leapDay(b.year);
    return (to - from) / (long ? 366 : 365);
  }
  const years = b.year - a.year + 1;
  return (to - from) / ((civilDay(b.year + 1, 1, 1) - civilDay(a.year, 1, 1)) / years);
}

export const DATES: readonly FunctionDefinition[] = [
  make.numeric(
    'DATE',
    'The date of a year, month and day; month 13 is next January, day 0 the last of the month before.',
    '6.10.2',
    takes(needed('year', plain), needed('month', plain), needed('day', plain)),
    date,
    dateOf,
    NO_YEAR,
  ),
  make.form(
    'TODAY',
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
  make.numeric(
    'ISOWEEKNUM',
    'The week of the year after ISO 8601: from Monday, week 1 holds the first Thursday.',
    '6.10.12',
    DATE_ALONE,
    plain,
    isoWeek,
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
    (span) => Math.floor(within(seconds(span), 86400) / 3600),
  ),
  make.numeric('MINUTE', 'The whole minutes of a time span, 0 to 59.', '6.10.13', TIME_ALONE, plain, (span) =>
    Math.floor(within(seconds(span), 3600) / 60),
  ),
  make.numeric('SECOND', 'The seconds of a time span, 0 to 59.', '6.10.17', TIME_ALONE, plain, (span) =>
    within(seconds(span), 60),
  ),
];
