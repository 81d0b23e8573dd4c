// Days as a workbook writes them, wherever they stand in sentences, tables and pictures. Pure.

import { type Book, settings, showDate } from '../../../engine/index.ts';

const DAY = 86_400_000;

/** '5 Apr 2027', '5. Apr. 2027': a civil day as the cells of the workbook show it. */
export function dayWords(book: Book, day: number): string {
  return showDate(day, settings(book).writing);
}

/** 'April 2027', 'kwiecień 2027': the month of a civil day, named as where it stands alone. */
export function monthWords(book: Book, day: number): string {
  const locale = settings(book).writing?.locale ?? 'en';
  const form = new Intl.DateTimeFormat(`${locale}-u-ca-gregory-nu-latn`, {
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  return form.format(day * DAY);
}
