// ISO 8601 weeks: Monday to Sunday, the first of a year being the one with its first Thursday. Civil days in and out.

import { civilDay, yearMonthDay } from './civil.ts';

/** Civil day 4, 5 January 1970, was a Monday. */
const A_MONDAY = 4;
const WEEK = 7;

/** The Monday of the week that a day lies in. */
export function mondayOf(day: number): number {
  return A_MONDAY + Math.floor((day - A_MONDAY) / WEEK) * WEEK;
}

/** '2027-W18' of the week that a day lies in. */
export function weekName(day: number): string {
  const monday = mondayOf(day);
  const { year } = yearMonthDay(monday + 3);
  const week = Math.round((monday - firstMonday(year)) / WEEK) + 1;
  return `${String(year).padStart(4, '0')}-W${String(week).padStart(2, '0')}`;
}

/** The Monday of a week called so; undefined where the text is none, or the year has no such week. */
export function mondayOfWeek(name: string): number | undefined {
  const match = /^(\d{4})-?W(\d{1,2})$/i.exec(name.trim());
  if (match === null) return undefined;
  const [year, week] = [Number(match[1]), Number(match[2])];
  const monday = firstMonday(year) + (week - 1) * WEEK;
  return week >= 1 && yearMonthDay(monday + 3).year === year ? monday : undefined;
}

/** 4 January always lies in the first week. */
function firstMonday(year: number): number {
  return mondayOf(civilDay(year, 1, 4));
}
