// Working days: counting them and moving by them, with days off from a column and a week of one's own. Read by standard/index.ts.

import { civilDay, yearMonthDay } from '../../values/civil.ts';
import { WEEKDAYS } from '../../values/date-text.ts';
import type { Scalar } from '../../values/error.ts';
import { firstPlace } from '../../values/first-place.ts';
import { column, date, failure, makers, needed, optional, plain, takes, text } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { type Given, listOf, numberOf } from './columns.ts';

const make = makers('dates');

const NO_WEEK = failure('value', 'Name the days of the week that are off, as in "Sat Sun"; "" for none.');
const NO_WORKING_DAY = failure(
  'value',
  'A week without a working day never gets on: leave at least one day of the week out.',
);
const OUT_OF_CALENDAR = failure('number', 'That many working days lead outside the years 1 to 9999.');

const WEEKEND = 'Sat Sun';

/** The days on which no one works. */
interface DaysOff {
  /** From Monday; true where off. */
  readonly week: readonly boolean[];
  readonly workingDaysAWeek: number;
  /** Rising, each once, none on a day of the week that is off. */
  readonly holidays: readonly number[];
  readonly closed: ReadonlySet<number>;
}

function sinceMonday(civil: number): number {
  return (((civil + 3) % 7) + 7) % 7;
}

/** Which days of the week, from Monday, a text names ("Sat Sun", "Sunday"); undefined where a word is none. */
function weekOff(named: string): readonly boolean[] | undefined {
  const off = WEEKDAYS.map(() => false);
  for (const word of named.toLowerCase().split(/[\s,;]+/)) {
    if (word === '') continue;
    const day = word.length < 2 ? -1 : WEEKDAYS.findIndex((name) => name.toLowerCase().startsWith(word));
    if (day < 0) return undefined;
    off[day] = true;
  }
  return off;
}

/** The days off that a column of dates makes with each week that rows asked of it, put in order once for all of them. */
const byWeek = keptFor((_: readonly Scalar[]) => new Map<string, DaysOff>());

/** The days off that named days of the week and a column of dates make; undefined where a day of the week is misnamed. */
function daysOff(named: Scalar | undefined, holidays: readonly Scalar[]): DaysOff | undefined {
  const week = weekOff(typeof named === 'string' ? named : WEEKEND);
  if (week === undefined) return undefined;
  const kept = byWeek(holidays);
  const known = kept.get(`${week}`);
  if (known !== undefined) return known;
  const days = holidays.filter((day): day is number => typeof day === 'number').map(Math.floor);
  const closed = new Set(days.filter((day) => week[sinceMonday(day)] === false));
  const counted = [...closed].sort((a, b) => a - b);
  const made = { week, workingDaysAWeek: week.filter((off) => !off).length, holidays: counted, closed };
  kept.set(`${week}`, made);
  return made;
}

/** How many of the days off lie from one day to another, both counted. */
function holidaysBetween(from: number, to: number, { holidays }: DaysOff): number {
  const before = (day: number): number => firstPlace(0, holidays.length, (place) => (holidays[place] as number) < day);
  return before(to + 1) - before(from);
}

/** Working days of the week, holidays aside, from `from` to `to`, both inclusive and in order. */
function weekdaysBetween(from: number, to: number, off: DaysOff): number {
  const days = to - from + 1;
  const weeks = Math.floor(days / 7);
  let count = weeks * off.workingDaysAWeek;
  for (let day = from + weeks * 7; day <= to; day += 1) if (off.week[sinceMonday(day)] === false) count += 1;
  return count;
}

function workingDays([start, end, holidays, week]: Given): Scalar {
  const off = daysOff(listOf(week)[0], listOf(holidays));
  if (off === undefined) return NO_WEEK;
  const one = Math.floor(numberOf(start) ?? 0);
  const other = Math.floor(numberOf(end) ?? 0);
  const [from, to] = one <= other ? [one, other] : [other, one];
  const count = weekdaysBetween(from, to, off) - holidaysBetween(from, to, off);
  return (one <= other ? count : -count) + 0;
}

const FIRST_DAY = civilDay(1, 1, 1);

/** The day so many working days after (before) the start; the start itself does not count. */
function workday([start, days, holidays, week]: Given): Scalar {
  const off = daysOff(listOf(week)[0], listOf(holidays));
  if (off === undefined) return NO_WEEK;
  if (off.workingDaysAWeek === 0) return NO_WORKING_DAY;
  const wanted = Math.trunc(numberOf(days) ?? 0);
  if (Math.abs(wanted) > 3_000_000) return OUT_OF_CALENDAR;
  const step = wanted < 0 ? -1 : 1;
  const { closed } = off;
  let day = Math.floor(numberOf(start) ?? 0);
  let left = Math.abs(wanted);
  const wholeWeeks = Math.floor(left / off.workingDaysAWeek) - closed.size - 1;
  if (wholeWeeks > 0) {
    const jump = step * wholeWeeks * 7;
    const [from, to] = step > 0 ? [day + 1, day + jump] : [day + jump, day - 1];
    left -= wholeWeeks * off.workingDaysAWeek - holidaysBetween(from, to, off);
    day += jump;
  }
  while (left > 0) {
    day += step;
    if (off.week[sinceMonday(day)] === false && !closed.has(day)) left -= 1;
  }
  return day < FIRST_DAY || yearMonthDay(day).year > 9999 ? OUT_OF_CALENDAR : day;
}

export const WORKDAYS: readonly FunctionDefinition[] = [
  make.columns(
    'NETWORKDAYS',
    'How many working days there are from one date to another, both counted; without Saturdays and Sundays, or other days of the week named as in "Sun"; and without the dates of a column.',
    '6.10.15',
    takes(
      needed('start', date),
      needed('end', date),
      optional('days_off', column(date)),
      optional('week_days_off', text),
    ),
    plain,
    workingDays,
  ),
  make.columns(
    'WORKDAY',
    'The date so many working days after a date; before it where the number is negative.',
    '6.10.23',
    takes(
      needed('start', date),
      needed('days', plain),
      optional('days_off', column(date)),
      optional('week_days_off', text),
    ),
    date,
    workday,
  ),
];
