// Days as a workbook writes them, wherever they stand in sentences, tables and pictures. Pure.

import { type Book, settings, showDate } from '../../../engine/index.ts';

const DAY = 86_400_000;

/** '5 Apr 2027', '5. Apr. 2027': a civil day as the cells of the workbook show it. */
export function dayWords(book: Book, day: number): string {
  return apart(showDate(day, settings(book).writing));
}

/** By locale: making one takes longer than all that is written with it. */
const months = new Map<string, Intl.DateTimeFormat>();

/** 'April 2027', 'kwiecień 2027': the month of a civil day, named as where it stands alone. */
export function monthWords(book: Book, day: number): string {
  const locale = settings(book).writing?.locale ?? 'en';
  const form = months.get(locale) ?? monthsOf(locale);
  months.set(locale, form);
  return apart(form.format(day * DAY));
}

function monthsOf(locale: string): Intl.DateTimeFormat {
  return new Intl.DateTimeFormat(`${locale}-u-ca-gregory-nu-latn`, { month: 'long', year: 'numeric', timeZone: 'UTC' });
}

/** A day in a script that runs from right to left keeps to itself: figures before and behind it stay where the sentence has them. */
function apart(words: string): string {
  return /[\u0590-\u08ff]/.test(words) ? `\u2068${words}\u2069` : words;
}
