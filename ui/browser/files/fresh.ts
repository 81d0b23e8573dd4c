// Which season a fresh workbook plans. The top line and the phone call it.

import { yearMonthDay } from '../../../engine/index.ts';
import { today } from './open.ts';

/** This year's season; from autumn on, next year's. */
export function seasonToPlan(): number {
  const { year, month } = yearMonthDay(today());
  return month >= 9 ? year + 1 : year;
}
