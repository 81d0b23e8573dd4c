// What is typed for a cell of a block, and whether it could have meant something else: values behind texts, marks and orders of
// other places, formats of accounts. Pure; the plan of a paste calls it.

import { type Book, type ColumnView, civilDay, isoDate, settings, type TriedEntry } from '../../../../engine/index.ts';
import { inColumn } from '../typed-here.ts';
import type { BlockCell } from './block.ts';

/** How days and figures of a block are read where they could be read in two ways. */
export interface Reading {
  readonly dayFirst: boolean;
  readonly decimal: '.' | ',';
}

/** How a workbook reads what is typed in it, and the currency that it counts in. */
export interface Usual {
  readonly reading: Reading;
  readonly currency: string;
}

export function usualOf(book: Book): Usual {
  const { writing, units, currency } = settings(book);
  return { reading: { dayFirst: writing?.dayFirst ?? units === 'si', decimal: writing?.decimal ?? '.' }, currency };
}

export interface PasteEntry {
  readonly entry: string;
  /** It is known what is meant, whatever the marks: from the value behind the text, or from what was typed here. */
  readonly exact: boolean;
}

type Target = Pick<ColumnView, 'type' | 'unit'>;

/**
 * What is typed for a cell: what was typed where it was copied here, the value behind it where another program told it, else the
 * text by the marks it is read with.
 */
export function entryFor(
  { text, value, typed }: BlockCell,
  column: Target,
  reading: Reading,
  usual: Usual,
): PasteEntry {
  const { type } = column;
  const usually = usual.reading;
  if (typed !== undefined) return { entry: inColumn(typed, column), exact: true };
  if (type?.kind === 'date') {
    if (value !== undefined && /\d/.test(text)) return { entry: isoDate(dayOfSerial(value)), exact: true };
    return { entry: reading.dayFirst === usually.dayFirst ? text : swappedDate(text), exact: false };
  }
  if (type?.kind !== 'number' && type?.kind !== 'temperature') return { entry: text, exact: false };
  const known = value === undefined ? undefined : figureOf(text, value, column, usual);
  if (known !== undefined) return { entry: known, exact: true };
  return { entry: reading.decimal === usually.decimal ? text : swappedMarks(text), exact: false };
}

/** A figure with marks, blanks and dashes around it, as accounts have them: '(1,250.00)', '1.250,-', '-' for nothing. */
const FIGURE = /^[-+\u2212–—(\s]*[\d.,\s'’]*[-–—)\s]*$/;
/** '15.3.2027' is no figure, whatever number a spreadsheet counts that day by. */
const DOTTED_DATE = /^\s*\d{1,4}\.\d{1,2}\.\d{0,4}\s*$/;
const WORDS = /[\p{L}\p{Sc}]+/gu;

/**
 * The value behind a text as it is typed, with the currency or the unit that the text names; undefined where the text says more
 * than the number does: a per cent sign, a unit in which the value may not be.
 */
function figureOf(text: string, value: number, { unit }: Target, { reading, currency }: Usual): string | undefined {
  const [word, ...others] = text.match(WORDS) ?? [];
  const bare = word === undefined ? text : text.replace(word, '');
  if (others.length > 0 || text.trim() === '' || DOTTED_DATE.test(bare) || !FIGURE.test(bare)) return undefined;
  const figure = String(value).replace('.', reading.decimal);
  if (word === undefined) return figure;
  // '1.3 t' may be made of a million kilograms by its format; money is always what the value says.
  return unit === currency || hasFigures(bare, value) ? `${figure} ${word}` : undefined;
}

/** Whether a text has the very figures of a value, whatever its marks. */
function hasFigures(text: string, value: number): boolean {
  const whole = text.replace(/\D/g, '');
  const pointed = text
    .replace(/[.,](?=.*[.,])/g, '')
    .replace(',', '.')
    .replace(/[^\d.]/g, '');
  return [whole, pointed].some((figures) => figures !== '' && Number(figures) === Math.abs(value));
}

/** Day 1 of spreadsheets is 31 December 1899; they count a 29 February 1900 that never was. */
function dayOfSerial(serial: number): number {
  return civilDay(1899, 12, 30) + Math.floor(serial);
}

/** 3/4/2027 with its first two figures the other way round. */
function swappedDate(text: string): string {
  return text.replace(/^(\s*)(\d{1,2})(\s*[/-]\s*)(\d{1,2})(?!\d)/, '$1$4$3$2');
}

/** 1.250,5 as 1,250.5 and the other way round. */
function swappedMarks(text: string): string {
  return text.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.'));
}

/**
 * What else an entry of another program could have meant, in words that say how to write it; undefined where nothing is left
 * open. `reads`: what it is read as here; `tries` reads another entry in its place.
 */
export function otherwise(
  { entry, exact }: PasteEntry,
  { type, unit }: Target,
  reads: string,
  tries: (entry: string) => TriedEntry,
  dayFirst: boolean,
): string | undefined {
  // The value behind it doesn't say either in what a column of per cent counts elsewhere.
  if (unit === '%' && isBelowOne(entry)) return `${reads}; if ${entry.trim()}% is meant, write ${entry.trim()}%`;
  const month = exact || type?.kind !== 'date' ? undefined : monthIn(entry, dayFirst, tries);
  return month === undefined ? undefined : `${reads}; if the month is meant, write a day of it: ${month}`;
}

/** A bare figure between 0 and 1, which a column of per cent reads as a share. */
function isBelowOne(entry: string): boolean {
  const figure = Number(entry.replace(',', '.'));
  return figure > 0 && figure < 1;
}

/**
 * The first day of the month that 'Mar-27' also is where the year is one of those around; spreadsheets write months so. With a blank
 * only where days go before months: elsewhere 'Mar 27' is how people write the day.
 */
function monthIn(entry: string, dayFirst: boolean, tries: (entry: string) => TriedEntry): string | undefined {
  const [, month = '', blank, year = ''] = /^\s*(\p{L}{3,}\.?)(?:-|(\s))(\d{2})\s*$/u.exec(entry) ?? [];
  if (month === '' || (blank !== undefined && !dayFirst)) return undefined;
  const first = tries(`1 ${month} ${year}`);
  return first.ok && first.far === undefined ? first.text : undefined;
}
