// The season's days as pictures of a year need them, from the Farm sheet. Calls the workbook's face alone.

import { civilDay, type WorkbookFace, yearMonthDay } from '../../../engine/index.ts';
import type { Mark } from '../drawing/chart.tsx';
import { monthsBetween } from '../drawing/scale.ts';
import { figure } from './planting.ts';

export interface Year {
  readonly first: number;
  readonly last: number;
}

/** From the season's first day to its last; the calendar year of today where the farm gives none. */
export function seasonOf(workbook: WorkbookFace): Year {
  const { year } = yearMonthDay(workbook.today);
  const first = figure(workbook, 'Farm', 0, 'Season starts') ?? civilDay(year, 1, 1);
  const last = figure(workbook, 'Farm', 0, 'Season ends') ?? civilDay(year, 12, 31);
  return last > first ? { first, last } : { first, last: first + 364 };
}

/** Marks of the months on an axis of days, every second one where there is little room. */
export function monthMarks({ first, last }: Year): readonly Mark[] {
  return monthsBetween(first, last)
    .filter((_, index) => index % 2 === 0)
    .map(({ day, name }) => ({ figure: day, text: name }));
}
