// The floor's calendar: so many months on, as the season's formulas count them.

import { civilDay, yearMonthDay } from '../../../../engine/values/civil.ts';

/** The same day of another month, or the last of it. */
export function edate(day: number, months: number): number {
  if (Number.isNaN(day + months)) return Number.NaN;
  const { year, month, day: ofMonth } = yearMonthDay(day);
  const first = year * 12 + (month - 1) + months;
  const [inYear, inMonth] = [Math.floor(first / 12), (first % 12) + 1];
  const next = first + 1;
  const length = civilDay(Math.floor(next / 12), (next % 12) + 1, 1) - civilDay(inYear, inMonth, 1);
  return civilDay(inYear, inMonth, Math.min(ofMonth, length));
}
