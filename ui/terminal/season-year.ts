// Which season a grower plans on a given day: from September on, next year's.

import { yearMonthDay } from '../../engine/index.ts';

const FIRST_MONTH_OF_NEXT_SEASON = 9;

export function seasonFor(today: number): number {
  const { year, month } = yearMonthDay(today);
  return month >= FIRST_MONTH_OF_NEXT_SEASON ? year + 1 : year;
}
