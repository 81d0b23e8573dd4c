// Which months the figures of a pasted table are of: by names of months, in English and as the workbook's locale has them, by their
// initials or numbers, from whatever month the table begins. Pure; months.ts calls it.

import { MONTHS } from '../../../engine/index.ts';
import { withoutAccents } from './accents.ts';

const ENGLISH = MONTHS.map((name) => [name]);
const INITIALS = 'JFMAMJJASOND';

/** What each month is called, from January. */
export type MonthNames = readonly (readonly string[])[];

/** The month, from 0, that a word names in full or by three letters and more of it; undefined where it is none, or more than one. */
function monthCalled(word: string, names: MonthNames): number | undefined {
  const wanted = folded(word);
  const among = (all: MonthNames): readonly number[] =>
    all.flatMap((forms, month) =>
      forms.some((form) => folded(form) === wanted || (wanted.length >= 3 && folded(form).startsWith(wanted)))
        ? [month]
        : [],
    );
  for (const all of [names, ENGLISH]) {
    const [month, ...others] = among(all);
    if (month !== undefined && others.length === 0) return month;
  }
  return undefined;
}

/** Without case, accents and points. */
function folded(text: string): string {
  return withoutAccents(text).replace(/[^\p{L}\p{N}]/gu, '');
}

/** The month that the first word of a line names. */
export function monthOfLine(text: string, names: MonthNames): number | undefined {
  const [word] = /\p{L}[\p{L}\p{M}]*/u.exec(text) ?? [];
  return word === undefined ? undefined : monthCalled(word, names);
}

/** The months of a head that names all twelve, or has their initials, in its order; undefined of any other line. */
export function monthsOfHead(text: string, names: MonthNames): readonly number[] | undefined {
  const words = text.match(/\p{L}[\p{L}\p{M}]*/gu) ?? [];
  const named = words.flatMap((word) => monthCalled(word, names) ?? []);
  if (named.length === MONTHS.length) return new Set(named).size === MONTHS.length ? named : undefined;
  const initials = words
    .filter((word) => word.length === 1)
    .join('')
    .toUpperCase();
  const start = initials.length === MONTHS.length ? (INITIALS + INITIALS).indexOf(initials) : -1;
  return start < 0 ? undefined : monthsFrom(start);
}

/** The months of twelve figures that only number them: 1 to 12, or 7 to 12 and 1 to 6; undefined of any others. */
export function monthsNumbered(figures: readonly number[]): readonly number[] | undefined {
  const months = monthsFrom((figures[0] ?? 0) - 1);
  return months.every((month, at) => figures[at] === month + 1) ? months : undefined;
}

/** Twelve months from one on, from 0. */
export function monthsFrom(start: number): readonly number[] {
  return Array.from({ length: MONTHS.length }, (_, at) => (start + at) % MONTHS.length);
}
