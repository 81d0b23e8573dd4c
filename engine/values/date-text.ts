// Dates as people type and read them: 3/15, 15 Mar, March 15 2027, 2027-03-15, 15.3., week 11, 2027-W11. Month names are
// English. Calls only the civil days.

import { civilDay, yearMonthDay } from './civil.ts';
import { quoted, refused } from './reading.ts';

export type DateRead = { readonly ok: true; readonly civil: number } | { readonly ok: false; readonly why: string };

/** From January. */
export const MONTHS: readonly string[] = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
/** From Monday. */
export const WEEKDAYS: readonly string[] = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
];

const YEAR = "(\\d{4}|'?\\d{2})";
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const WEEK_OF_YEAR = /^(\d{4})[- ]?w(?:eek)? ?(\d{1,2})(?:-?([1-7]))?$/;
const WEEK = /^(?:week|wk|w)\.? ?(\d{1,2})(?:[ /-]+(\d{4}))?$/;
const NUMBERS = new RegExp(`^(\\d{1,2}) ?([/.-]) ?(\\d{1,2})(?: ?[/.-] ?${YEAR}?)?$`);
const DAY_MONTH = new RegExp(`^(\\d{1,2})[ -]*\\.?[ -]*([a-z]{3,})\\.?(?:[ -]*${YEAR})?$`);
const MONTH_DAY = new RegExp(`^([a-z]{3,})\\.?[ -]*(\\d{1,2})(?:[ -]+${YEAR})?$`);

/** '15 Mar 2027'. */
export function showDate(civil: number): string {
  const { year, month, day } = yearMonthDay(civil);
  return `${day} ${MONTHS[month - 1]?.slice(0, 3) ?? ''} ${year}`;
}

/**
 * The civil day of a typed date. Without a year, `year` is taken; two figures mean the year nearest to it. A week is its
 * Monday (ISO 8601). `dayFirst` decides between 3/4 and 4/3 only where both are dates; 15.3. is always day and month. A
 * weekday in front must agree.
 */
export function readDate(text: string, options: { readonly year: number; readonly dayFirst?: boolean }): DateRead {
  const cleaned = text
    .toLowerCase()
    .replace(/(\d)(st|nd|rd|th)\b/g, '$1')
    .replace(/,/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const named = /^([a-z]+)\.? (.+)$/.exec(cleaned);
  const weekday = named === null ? undefined : nameAt(WEEKDAYS, named[1] ?? '');
  const read = readWithoutWeekday(weekday === undefined ? cleaned : (named?.[2] ?? ''), text, options);
  if (!read.ok || weekday === undefined || weekday === weekdayOf(read.civil)) return read;
  return refused(`${showDate(read.civil)} is a ${WEEKDAYS[weekdayOf(read.civil)]}, not a ${WEEKDAYS[weekday]}.`);
}

function readWithoutWeekday(
  cleaned: string,
  typed: string,
  { year, dayFirst = false }: { readonly year: number; readonly dayFirst?: boolean },
): DateRead {
  const yearFirst = YEAR_FIRST.exec(cleaned);
  if (yearFirst !== null) return dayOf(Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3]));

  const weekOfYear = WEEK_OF_YEAR.exec(cleaned);
  if (weekOfYear !== null) return dayOfWeek(Number(weekOfYear[1]), Number(weekOfYear[2]), Number(weekOfYear[3] ?? 1));
  const week = WEEK.exec(cleaned);
  if (week !== null) return dayOfWeek(Number(week[2] ?? year), Number(week[1]), 1);

  const numbers = NUMBERS.exec(cleaned);
  if (numbers !== null) {
    const [first, second] = [Number(numbers[1]), Number(numbers[3])];
    const dayLeads = numbers[2] === '.' || dayFirst;
    const [month, day] = dayLeads ? [second, first] : [first, second];
    const inYear = fullYear(numbers[4], year);
    return month > 12 && day <= 12 ? dayOf(inYear, day, month) : dayOf(inYear, month, day);
  }

  const dayMonth = DAY_MONTH.exec(cleaned);
  const dayThenMonth = nameAt(MONTHS, dayMonth?.[2] ?? '');
  if (dayMonth !== null && dayThenMonth !== undefined) {
    return dayOf(fullYear(dayMonth[3], year), dayThenMonth + 1, Number(dayMonth[1]));
  }
  const monthDay = MONTH_DAY.exec(cleaned);
  const monthThenDay = nameAt(MONTHS, monthDay?.[1] ?? '');
  if (monthDay !== null && monthThenDay !== undefined) {
    return dayOf(fullYear(monthDay[3], year), monthThenDay + 1, Number(monthDay[2]));
  }
  const month = nameAt(MONTHS, /^[a-z]+/.exec(cleaned)?.[0] ?? '');
  if (month !== undefined) return refused(`${quoted(typed)} doesn't say which day: write 15 ${MONTHS[month]}.`);
  return refused(`${quoted(typed)} isn't a date: write 15 Mar, ${dayFirst ? '15/3' : '3/15'}, 2027-03-15 or week 11.`);
}

/** Place of the one name that starts so, three letters or more. */
function nameAt(names: readonly string[], start: string): number | undefined {
  if (start.length < 3) return undefined;
  const lower = start === 'sept' ? 'sep' : start;
  const at = names.findIndex((name) => name.toLowerCase().startsWith(lower));
  return at < 0 ? undefined : at;
}

function fullYear(typed: string | undefined, near: number): number {
  if (typed === undefined) return near;
  const digits = typed.replace("'", '');
  if (digits.length === 4) return Number(digits);
  const sameCentury = Math.floor(near / 100) * 100 + Number(digits);
  if (sameCentury - near > 50) return sameCentury - 100;
  return near - sameCentury > 50 ? sameCentury + 100 : sameCentury;
}

function dayOf(year: number, month: number, day: number): DateRead {
  const name = MONTHS[month - 1];
  if (name === undefined) return refused(`There is no month ${month}: months run from 1 to 12.`);
  if (year < 1000) return refused('Write the year with four figures, such as 2027.');
  const civil = civilDay(year, month, day);
  if (day >= 1 && yearMonthDay(civil).month === month) return { ok: true, civil };
  const days = civilDay(year, month + 1, 1) - civilDay(year, month, 1);
  return refused(`${day} ${name.slice(0, 3)} ${year} does not exist: ${name} ${year} has ${days} days.`);
}

/** 0 on a Monday; 1970-01-01 was a Thursday. */
function weekdayOf(civil: number): number {
  return (((civil + 3) % 7) + 7) % 7;
}

function dayOfWeek(year: number, week: number, day: number): DateRead {
  const fourthOfJanuary = civilDay(year, 1, 4);
  const firstMonday = fourthOfJanuary - weekdayOf(fourthOfJanuary);
  const civil = firstMonday + (week - 1) * 7 + (day - 1);
  const nextFourth = civilDay(year + 1, 1, 4);
  const weeks = (nextFourth - weekdayOf(nextFourth) - firstMonday) / 7;
  if (week >= 1 && week <= weeks) return { ok: true, civil };
  return refused(`There is no week ${week} in ${year}: its weeks run from 1 to ${weeks}.`);
}
