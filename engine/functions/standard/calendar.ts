// Reckoning with civil days as the date functions need it: months on, weekdays, weeks, years of 360 days, Easter. Called by
// dates.ts; calls the civil days alone.

import { civilDay, daysInMonth, isLeapYear, yearMonthDay } from '../../values/civil.ts';

/** The civil day of a year, month and day, cut off to whole numbers; none outside the years 1 to 9999. */
export function dateOf(year: number, month: number, day: number): number {
  const civil = civilDay(Math.trunc(year), Math.trunc(month), Math.trunc(day));
  const made = yearMonthDay(civil).year;
  return made >= 1 && made <= 9999 ? civil : Number.NaN;
}

/** As dateOf, for a year as a person writes it: none for a year without its century. */
export function dateOfWritten(year: number, month: number, day: number): number {
  return year > -1 && year < 100 ? Number.NaN : dateOf(year, month, day);
}

/** The same day so many months on, the month's last day where it is shorter. */
export function monthsOn(civil: number, months: number): number {
  const { year, month, day } = yearMonthDay(civil);
  const first = yearMonthDay(civilDay(year, month + Math.trunc(months), 1));
  return dateOf(first.year, first.month, Math.min(day, daysInMonth(first.year, first.month)));
}

export function monthEnd(civil: number, months: number): number {
  const { year, month } = yearMonthDay(civil);
  return dateOf(year, month + Math.trunc(months) + 1, 0);
}

/** Days since the last Monday, 0 to 6. 1970-01-01 was a Thursday. */
function sinceMonday(civil: number): number {
  return (((Math.floor(civil) + 3) % 7) + 7) % 7;
}

/** WEEKDAY's kinds: 1 Sunday is 1, 2 Monday is 1, 3 Monday is 0, 11 to 17 Monday to Sunday is 1. */
export function weekday(civil: number, kind: number): number {
  const monday = sinceMonday(civil);
  const chosen = Math.trunc(kind);
  if (chosen === 1) return ((monday + 1) % 7) + 1;
  if (chosen === 2) return monday + 1;
  if (chosen === 3) return monday;
  if (chosen >= 11 && chosen <= 17) return ((monday - (chosen - 11) + 7) % 7) + 1;
  return Number.NaN;
}

/** Week of ISO 8601: weeks begin on Monday, the first holds the year's first Thursday. */
export function isoWeek(civil: number): number {
  const thursday = Math.floor(civil) - sinceMonday(civil) + 3;
  return Math.floor((thursday - newYearBefore(thursday)) / 7) + 1;
}

/** The year last asked for: the days of a season lie in one or two. */
let [newYear, nextYear] = [Number.NaN, Number.NaN];

/** The first of January of a day's year. */
function newYearBefore(civil: number): number {
  if (!(civil >= newYear && civil < nextYear)) {
    const { year } = yearMonthDay(civil);
    newYear = civilDay(year, 1, 1);
    nextYear = civilDay(year + 1, 1, 1);
  }
  return newYear;
}

/** WEEKNUM's kinds: 1 weeks from Sunday, 2 from Monday, 11 to 17 from Monday to Sunday, 21 and 150 ISO 8601; week 1 holds 1 January. */
export function weekNumber(civil: number, kind: number): number {
  const chosen = Math.trunc(kind);
  if (chosen === 21 || chosen === 150) return isoWeek(civil);
  const first = chosen === 1 ? 6 : chosen === 2 ? 0 : chosen >= 11 && chosen <= 17 ? chosen - 11 : Number.NaN;
  const january = newYearBefore(Math.floor(civil));
  const lead = (sinceMonday(january) - first + 7) % 7;
  return Math.floor((Math.floor(civil) - january + lead) / 7) + 1;
}

/** Whole seconds in a time span, dust forgiven. */
export function wholeSeconds(days: number): number {
  return Math.round(days * 86400);
}

export function within(size: number, whole: number): number {
  return ((size % whole) + whole) % whole;
}

/** Days between in a year of twelve months of 30 days; the US way where `european` is 0. */
export function days360(from: number, to: number, european: number): number {
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
export function easter(given: number): number {
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

export function dateDifference(from: number, to: number, interval: string): number | undefined {
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
export function yearFraction(one: number, other: number, basis: number): number {
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
