// Small questions about values that the list of differences asks.

import type { Value } from './engines.ts';
import { SERIAL_OF_CIVIL_0 } from './expression.ts';

function isLeapDay(value: Value): boolean {
  if (typeof value !== 'number') return false;
  const day = new Date((value - SERIAL_OF_CIVIL_0) * 86_400_000);
  return day.getUTCMonth() === 1 && day.getUTCDate() === 29;
}

function isDateOrTime(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$|^\d{1,2}:\d{2}/.test(text);
}

/** The last day of a February. */
function isEndOfFebruary(serial: number): boolean {
  const day = new Date((serial - SERIAL_OF_CIVIL_0) * 86_400_000);
  const next = new Date((serial + 1 - SERIAL_OF_CIVIL_0) * 86_400_000);
  return day.getUTCMonth() === 1 && next.getUTCMonth() === 2;
}

export const asksOf = { isLeapDay, isDateOrTime, isEndOfFebruary };
