// What a workbook opens on: the season at a glance; the first questions where a farm's own rows are still to come; its first
// sheet where it is made of a person's own sheets alone. Pure; the page calls it before any of these is fetched.

import { type Book, rows } from '../../../engine/index.ts';
import { BEDS, FARM, PLANTING, PLANTINGS } from '../panels/columns.ts';
import { hasColumns } from '../pictures/kit/needs.ts';
import type { View } from '../store/view.ts';

const GLANCE_NEEDS = { [BEDS]: [], [FARM]: [], [PLANTINGS]: [PLANTING.bed, PLANTING.plantedOut, PLANTING.bedFree] };

/** Whether a workbook has what a glance shows. */
export function hasGlance(book: Book): boolean {
  return hasColumns(book, GLANCE_NEEDS);
}

/** Whether a farm's own rows are still to come: neither beds nor plantings. */
export function isUntouched(book: Book): boolean {
  return rows(book, BEDS).length === 0 && rows(book, PLANTINGS).length === 0;
}

/** What is shown where a view is asked for. */
export function shownView(book: Book, asked: View): View {
  if (asked.at === 'sheet' || asked.at === 'scratch') return asked;
  if (!hasGlance(book)) return { at: 'sheet' };
  return asked.at === 'glance' && isUntouched(book) ? { at: 'first visit' } : asked;
}
