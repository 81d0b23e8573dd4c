// What stands for a column under a group of rows, in words. Pure; the grid's heads of groups and pages for paper call it.

import { type Book, totalText, usualTotal, type View } from '../../../engine/index.ts';

/** '120', 'mean 0.85': what the view asks for, else what suits the column; '' where nothing adds up. */
export function subtotalWords(
  book: Book,
  sheet: string,
  { totals }: View,
  column: string,
  rows: readonly number[],
): string {
  const total = totals?.[column] ?? usualTotal(book, sheet, column);
  const text = totalText(book, sheet, column, rows, total);
  return text === '' ? '' : `${total === 'sum' ? '' : `${total} `}${text}`;
}
