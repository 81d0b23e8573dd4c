// Days as a workbook writes them, wherever they stand in sentences, tables and pictures. Pure.

import { type Book, settings, showDate } from '../../../engine/index.ts';

const DAY = 86_400_000;

/** '5 Apr 2027', '5. Apr. 2027': a civil day as the cells of the workbook show it. */
export function dayWords(book: Book, day: number): string {
  return apart(showDate(day, settings(book).writing));
}

/** 'April 2027', 'kwiecień 2027': the month of a civil day, named as where it stands alone. */
export function monthWords(book: Book, day: number): string {
  const locale = settings(book).writing?.locale ?? 'en';
  const form = new Intl.DateTimeFormat(`${locale}-u-ca-gregory-nu-latn`, {
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  return apart(form.format(day * DAY));
}

/** A day in a script that runs from right to left keeps to itself: figures before and behind it stay where the sentence has them. */
function apart(words: string): string {
  return /[\u0590-\u08ff]/.test(words) ? `\u2068${words}\u2069` : words;
}
