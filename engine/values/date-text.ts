// Dates as people type and read them: 3/15, 15 Mar, March 15 2027, 2027-03-15, 15.3., week 11, 2027-W11. Names of months, days
// and weeks are English, and those of the writing that is handed in. Calls only the civil days.

import { civilDay, yearMonthDay } from './civil.ts';
import { quoted, refused } from './reading.ts';
import type { Writing } from './writing.ts';

export type DateRead = { readonly ok: true; readonly civil: number } | { readonly ok: false; readonly why: string };

/** From January. */
export const MONTHS: readonly string[] =
  'January February March April May June July August September October November December'.split(' ');
/** From Monday. */
export const WEEKDAYS: readonly string[] = 'Monday Tuesday Wednesday Thursday Friday Saturday Sunday'.split(' ');

const YEAR = "(\\d{4}|'?\\d{2})";
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const SHORT_YEAR_FIRST = /^(\d{2}) ?([-/.]) ?(\d{1,2}) ?\2 ?(\d{1,2})\.?$/;
const WEEK_OF_YEAR = /^(\d{4})[- ]?w(?:eek)? ?(\d{1,2})(?:-?([1-7]))?$/;
const WEEK = /^(\p{L}+)\.? ?(\d{1,2})(?:[ /-]+(\d{4}))?$/u;
/** Besides those of the writing; KW is the German calendar week, common practice. */
const WEEKS = ['week', 'wk', 'w', 'kw'];
const NUMBERS = new RegExp(`^(\\d{1,2}) ?([/.-]) ?(\\d{1,2})(?: ?[/.-] ?${YEAR}?)?$`);
const DAY_MONTH = new RegExp(`^(\\d{1,2})[ -]*\\.?[ -]*(\\p{L}{3,})\\.?(?:[ -]*${YEAR})?$`, 'u');
const MONTH_DAY = new RegExp(`^(\\p{L}{3,})\\.?[ -]*(\\d{1,2})(?:[ -]+${YEAR})?$`, 'u');
const EXAMPLE_YEAR = 2027;
/** Two figures in front are a year so near to the season where a place writes the year there, else a day or month. */
const NEAR_YEARS = 10;
/** What spreadsheets and exports write behind a day: ' 14:30', ' 2:30:00 PM', 'T00:00:00'. */
const TIME = /[t ]\d\d?(:[0-5]\d)+(\.\d+)?( ?[ap]m)?$/;

/** '15 Mar 2027', or as the writing has it: the month always by its name, so that no order can be mistaken. */
export function showDate(civil: number, writing?: Writing): string {
  return dateWords(yearMonthDay(civil), writing);
}

/** Of days that there are not, too. */
function dateWords({ year, month, day }: ReturnType<typeof yearMonthDay>, writing: Writing | undefined): string {
  if (writing === undefined) return `${day} ${MONTHS[month - 1]?.slice(0, 3) ?? ''} ${year}`;
  const parts: Readonly<Record<string, string>> = { d: String(day), y: String(year) };
  return writing.date.replace(/\{(\w)\}/g, (_, part: string) => parts[part] ?? writing.shortMonths[month - 1] ?? '');
}

interface DateOptions {
  /** The season's: of a date typed without its own, and near one that is typed with two figures. */
  readonly year: number;
  /** First day of the season, where that may be another than 1 January: a date without its year is in the twelve months from it. */
  readonly starts?: number | undefined;
  readonly dayFirst?: boolean;
  readonly writing?: Writing;
}

/** Small letters without their accents, in scripts where a letter stands for the same with and without. */
function folded(text: string): string {
  return text
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '');
}

/**
 * The civil day of a typed date. Without a year it is the one in the season; two figures mean the year nearest to `year`. A week is
 * its Monday (ISO 8601), and without a year the one of which most days are in the season. `dayFirst` decides between 3/4 and 4/3 only
 * where both are dates; 15.3. is always day and month. A weekday in front must agree. The time of day behind a date is left out.
 */
export function readDate(text: string, options: DateOptions): DateRead {
  const { writing } = options;
  const cleaned = folded(text)
    .replace(/(\d)(st|nd|rd|th)\b/g, '$1')
    .replace(/[\s,]+/g, ' ')
    .replace(TIME, '')
    .trim();
  const named = /^(\p{L}+)\.? (.+)$/u.exec(cleaned);
  const weekday = named === null ? undefined : weekdayNamed(named[1] ?? '', writing);
  const read = readWithoutWeekday(weekday === undefined ? cleaned : (named?.[2] ?? ''), text, options);
  if (!read.ok || weekday === undefined || weekday === weekdayOf(read.civil)) return read;
  return refused(
    `${showDate(read.civil, writing)} is a ${WEEKDAYS[weekdayOf(read.civil)]}, not a ${WEEKDAYS[weekday]}.`,
  );
}

function readWithoutWeekday(cleaned: string, typed: string, options: DateOptions): DateRead {
  const { dayFirst = false, writing } = options;
  const yearFirst = YEAR_FIRST.exec(cleaned);
  if (yearFirst !== null) return dayOf(Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3]), writing);

  const weekOfYear = WEEK_OF_YEAR.exec(cleaned);
  if (weekOfYear !== null) return dayOfWeek(Number(weekOfYear[1]), Number(weekOfYear[2]), Number(weekOfYear[3] ?? 1));

  const yearLeads = withYearInFront(cleaned, options);
  if (yearLeads !== undefined) return yearLeads;

  const numbers = NUMBERS.exec(cleaned);
  if (numbers !== null) {
    const [first, second] = [Number(numbers[1]), Number(numbers[3])];
    const dayLeads = numbers[2] === '.' || dayFirst;
    const [month, day] = dayLeads ? [second, first] : [first, second];
    return month > 12 && day <= 12
      ? dayInSeason(numbers[4], day, month, options)
      : dayInSeason(numbers[4], month, day, options);
  }

  // March 15 is read as 15 March.
  const dayMonth = DAY_MONTH.exec(cleaned.replace(MONTH_DAY, '$2$1$3'));
  const named = monthNamed(dayMonth?.[2] ?? '', writing);
  if (dayMonth !== null && named !== undefined) {
    return dayInSeason(dayMonth[3], named + 1, Number(dayMonth[1]), options);
  }
  // After the months: one short word may stand for a month and for a week, as 'sett.' in Italian.
  const week = WEEK.exec(cleaned);
  if (week !== null && [...WEEKS, ...(writing?.weeks ?? [])].includes(week[1] ?? '')) {
    return week[3] === undefined
      ? weekInSeason(Number(week[2]), options)
      : dayOfWeek(Number(week[3]), Number(week[2]), 1);
  }
  const tokens = writing === undefined ? undefined : readTokens(cleaned, writing, options);
  if (tokens !== undefined) return tokens;
  const month = monthNamed(/^\p{L}+/u.exec(cleaned)?.[0] ?? '', writing);
  if (month !== undefined) return refused(`${quoted(typed)} doesn't say which day: write ${example(month, writing)}.`);
  return refused(`${quoted(typed)} isn't a date: write ${examples(options)}, 2027-03-15 or week 11.`);
}

/** 27-04-03 where days are written so with their year in full, and the year is near the season's; undefined for any other. */
function withYearInFront(text: string, options: DateOptions): DateRead | undefined {
  const [, year = '', mark, month, day] = SHORT_YEAR_FIRST.exec(text) ?? [];
  if (mark === undefined || options.writing?.yearFirst !== mark) return undefined;
  const inYear = fullYear(year, options.year);
  if (Math.abs(inYear - options.year) > NEAR_YEARS) return undefined;
  const read = dayOf(inYear, Number(month), Number(day), options.writing);
  return read.ok ? read : undefined;
}

/** The 15th of a month as the place writes days; without a place its name in full. */
function example(month: number, writing: Writing | undefined): string {
  if (writing === undefined) return `15 ${MONTHS[month]}`;
  return dateWords({ year: EXAMPLE_YEAR, month: month + 1, day: 15 }, writing);
}

/** '15 Mar, 3/15', '15. März 2027, 15.3.': by name and in figures. */
function examples({ dayFirst = false, writing }: DateOptions): string {
  const figures = writing?.date.startsWith('{d}.') === true ? '15.3.' : dayFirst ? '15/3' : '3/15';
  return `${writing === undefined ? '15 Mar' : example(2, writing)}, ${figures}`;
}

/** Names of the place go before English ones. */
function monthNamed(start: string, writing: Writing | undefined): number | undefined {
  return nameAt(writing?.months ?? [], start) ?? nameAt(MONTHS, start === 'sept' ? 'sep' : start);
}

function weekdayNamed(start: string, writing: Writing | undefined): number | undefined {
  return nameAt(writing?.weekdays ?? [], start) ?? nameAt(WEEKDAYS, start);
}

/** Months or weekdays, each by its one name or the forms of it. */
type Names = readonly (string | readonly string[])[];

/** The forms of names in small letters, without accents and full stops: a column of dates asks for the same again and again. */
const plainForms = new WeakMap<Names, readonly (readonly string[])[]>();

function plainFormsOf(names: Names): readonly (readonly string[])[] {
  let known = plainForms.get(names);
  if (known === undefined) {
    const plain = (form: string): string => folded(form).replace(/\.$/, '');
    known = names.map((forms) => (typeof forms === 'string' ? [plain(forms)] : forms.map(plain)));
    plainForms.set(names, known);
  }
  return known;
}

/** Place of the one thing called so, or whose name alone starts so with three letters or more. */
function nameAt(names: Names, start: string): number | undefined {
  if (start.length < 3) return undefined;
  const plain = plainFormsOf(names);
  const places = (fits: (name: string) => boolean): number[] =>
    plain.flatMap((forms, at) => (forms.some(fits) ? [at] : []));
  const [called] = places((name) => name === start);
  const starting = called === undefined ? places((name) => name.startsWith(start)) : [];
  return called ?? (starting.length === 1 ? starting[0] : undefined);
}

/**
 * A date in another language's own order, its month by name or marked as one: '15 de marzo de 2027', '2027. marc. 15.',
 * '3月15日'. undefined where it is none.
 */
function readTokens(text: string, writing: Writing, options: DateOptions): DateRead | undefined {
  const marked = /^(?:(\d{4})\s*[年년]\s*)?(\d{1,2})\s*[月월]\s*(\d{1,2})\s*[日일]?$/.exec(text);
  if (marked !== null) return dayInSeason(marked[1], Number(marked[2]), Number(marked[3]), options);
  const named = monthIn(text, writing);
  if (named === undefined) return undefined;
  const numbers = (text.replace(named.form, ' ').match(/\d+/g) ?? []).filter((word) => word.length !== 3);
  if (numbers.length < 1 || numbers.length > 2) return undefined;
  const inYear = numbers.find((word) => word.length === 4);
  const [day, shortYear] = numbers.filter((word) => word !== inYear);
  if (day === undefined) return undefined;
  return dayInSeason(inYear ?? shortYear, named.month + 1, Number(day), options);
}

interface NamedMonth {
  readonly month: number;
  /** As it stands in the text. */
  readonly form: string;
}

/** The month that a text names, in one of its forms or by the beginning of one. */
function monthIn(text: string, { months }: Writing): NamedMonth | undefined {
  const forms = months
    .flatMap((of, month) => of.map((form): NamedMonth => ({ month, form: folded(form) })))
    .sort((a, b) => b.form.length - a.form.length);
  const whole = forms.find(({ form }) => stands(text, form));
  if (whole !== undefined) return whole;
  const begun = (text.match(/\p{L}+/gu) ?? []).flatMap((form): NamedMonth[] => {
    const month = nameAt(months, form);
    return month === undefined ? [] : [{ month, form }];
  });
  return new Set(begun.map(({ month }) => month)).size === 1 ? begun[0] : undefined;
}

/** Whether a word stands in a text by itself. */
function stands(text: string, word: string): boolean {
  const at = text.indexOf(word);
  if (at < 0) return false;
  const isPart = (sign: string): boolean => /[\p{L}\d]/u.test(sign);
  return !isPart(text.charAt(at - 1)) && !isPart(text.charAt(at + word.length));
}

/** A day of the year that is typed; where none is, of the one in which it lies in the season. */
function dayInSeason(
  typedYear: string | undefined,
  month: number,
  day: number,
  { year, starts, writing }: DateOptions,
): DateRead {
  if (typedYear !== undefined) return dayOf(fullYear(typedYear, year), month, day, writing);
  if (starts === undefined) return dayOf(year, month, day, writing);
  const first = yearMonthDay(starts);
  const isBefore = month < first.month || (month === first.month && day < first.day);
  return dayOf(isBefore ? first.year + 1 : first.year, month, day, writing);
}

/** The week of that number of which most days are in the season; of two that share as many the earlier. */
function weekInSeason(week: number, { year, starts }: DateOptions): DateRead {
  if (starts === undefined) return dayOfWeek(year, week, 1);
  const first = yearMonthDay(starts);
  const ends = civilDay(first.year + 1, first.month, first.day);
  const shared = (read: DateRead): number =>
    read.ok ? Math.min(read.civil + 7, ends) - Math.max(read.civil, starts) : Number.NEGATIVE_INFINITY;
  const [one, next] = [dayOfWeek(first.year, week, 1), dayOfWeek(first.year + 1, week, 1)];
  return shared(next) > Math.max(0, shared(one)) ? next : one;
}

function fullYear(typed: string, near: number): number {
  const digits = typed.replace("'", '');
  if (digits.length === 4) return Number(digits);
  const sameCentury = Math.floor(near / 100) * 100 + Number(digits);
  if (sameCentury - near > 50) return sameCentury - 100;
  return near - sameCentury > 50 ? sameCentury + 100 : sameCentury;
}

function dayOf(year: number, month: number, day: number, writing: Writing | undefined): DateRead {
  if (MONTHS[month - 1] === undefined) return refused(`There is no month ${month}: months run from 1 to 12.`);
  if (year < 1000) return refused('Write the year with four figures, such as 2027.');
  const civil = civilDay(year, month, day);
  if (day >= 1 && yearMonthDay(civil).month === month) return { ok: true, civil };
  const days = civilDay(year, month + 1, 1) - civilDay(year, month, 1);
  return refused(`${dateWords({ year, month, day }, writing)} does not exist: that month has ${days} days.`);
}

/** 0 on a Monday; 1970-01-01 was a Thursday. */
function weekdayOf(civil: number): number {
  return (((civil + 3) % 7) + 7) % 7;
}

function dayOfWeek(year: number, week: number, day: number): DateRead {
  const fourthOfJanuary = civilDay(year, 1, 4);
  const firstMonday = fourthOfJanuary - weekdayOf(fourthOfJanuary);
  const civil = firstMonday + (week - 1) * 7 + (day - 1);
  const nextFourth = civilDay(year + 1, 1, 4);
  const weeks = (nextFourth - weekdayOf(nextFourth) - firstMonday) / 7;
  if (week >= 1 && week <= weeks) return { ok: true, civil };
  return refused(`There is no week ${week} in ${year}: its weeks run from 1 to ${weeks}.`);
}
