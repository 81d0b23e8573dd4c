// How people of a locale write figures and days, from the browser's own knowledge of locales, as the data that the engine
// reads and shows by. Nothing is asked of the network; a locale that the browser doesn't know counts as English.

import { MONTHS, type Writing } from '../../../engine/index.ts';

/** Any day in each month of a year, in UTC so that no time zone moves it. */
const MONTH_DAYS = Array.from({ length: 12 }, (_, month) => new Date(Date.UTC(2027, month, 15)));

/** The week of Monday 4 January 2027. */
const WEEK_DAYS = Array.from({ length: 7 }, (_, day) => new Date(Date.UTC(2027, 0, 4 + day)));

const ENGLISH_MONTHS = MONTHS.map((month) => month.slice(0, 3));

/**
 * Short names by language that spreadsheets write besides those that browsers know, from January, '' for none: the abbreviated
 * months of LibreOffice's locale data (i18npool/source/localedata/data/cs_CZ.xml, de_DE.xml, lt_LT.xml), as far as they are neither
 * known nor the beginning of a name. Each is one month's alone.
 */
const SPREADSHEET_MONTHS: Readonly<Record<string, string>> = {
  cs: 'I II III IV V VI VII VIII IX X XI XII',
  de: '  Mrz',
  lt: '       Rgp Rgs Spl  Grd',
};

const known = new Map<string, Writing>();

/** The writing of a locale, 'de-CH'; of the browser's own where none is named. */
export function writingOf(locale: string | undefined): Writing {
  const tag = knownLocale(locale ?? browserLocale());
  const writing = known.get(tag) ?? makeWriting(tag);
  known.set(tag, writing);
  return writing;
}

/** The browser's language: the first of those that a person put in order. */
export function browserLocale(): string {
  return typeof navigator === 'undefined' ? 'en' : (navigator.languages[0] ?? navigator.language);
}

function knownLocale(tag: string): string {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag)[0] ?? 'en';
  } catch {
    return 'en';
  }
}

function makeWriting(locale: string): Writing {
  const plain = `${locale}-u-nu-latn-ca-gregory`;
  const marks = new Intl.NumberFormat(plain).formatToParts(1234567.8);
  const mark = (kind: string): string => marks.find(({ type }) => type === kind)?.value ?? '';
  const english = locale.toLowerCase().startsWith('en');
  const spreadsheetMonths = SPREADSHEET_MONTHS[locale.split('-')[0] ?? '']?.split(' ') ?? [];
  return {
    locale,
    decimal: mark('decimal') === ',' ? ',' : '.',
    group: mark('group'),
    dayFirst: isDayFirst(plain),
    yearFirst: markOfYearFirst(plain),
    months: MONTH_DAYS.map((day, month) => monthForms(plain, day, spreadsheetMonths[month] ?? '')),
    shortMonths: english ? ENGLISH_MONTHS : MONTH_DAYS.map((day) => monthPart(plain, day, shownForm(plain))),
    monthsAlone: english ? ENGLISH_MONTHS : MONTH_DAYS.map((day) => monthAlone(plain, day)),
    // The sentences around English dates have the day in front whatever the country; the month's name tells it from others.
    date: english ? '{d} {m} {y}' : datePattern(plain),
    weekdays: WEEK_DAYS.map((day) => new Intl.DateTimeFormat(plain, { weekday: 'long', timeZone: 'UTC' }).format(day)),
    weeks: weekWords(locale),
  };
}

/** As the browser calls a week, in full and short, in small letters; nothing where it knows no such words. */
function weekWords(locale: string): readonly string[] {
  try {
    return (['long', 'short'] as const).map((style) =>
      (new Intl.DisplayNames(locale, { type: 'dateTimeField', style }).of('weekOfYear') ?? '')
        .toLowerCase()
        .replace('.', ''),
    );
  } catch {
    return [];
  }
}

/** As people write a day without its year: in some places 3/4 is the third of April though 2027-04-03 begins with the year. */
function isDayFirst(locale: string): boolean {
  const parts = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'numeric', timeZone: 'UTC' }).formatToParts(
    MONTH_DAYS[0],
  );
  const kinds = parts.map(({ type }) => type);
  return kinds.indexOf('day') < kinds.indexOf('month');
}

/** With the word or mark that the language puts to a month's figure; in full where it would be a bare figure. */
function monthAlone(locale: string, day: Date): string {
  const named = (short: boolean): string => withoutMarks(dateFormat(locale, { day: false, short }).format(day));
  const short = named(true);
  return /^[\d.]*$/.test(short) ? named(false) : short;
}

function markOfYearFirst(locale: string): string {
  const form = { day: 'numeric', month: 'numeric', year: 'numeric', timeZone: 'UTC' } as const;
  const [year, mark] = new Intl.DateTimeFormat(locale, form).formatToParts(MONTH_DAYS[0]);
  return year?.type === 'year' ? withoutMarks(mark?.value ?? '').trim() : '';
}

interface MonthForm {
  /** Beside a day, where some languages bend it. */
  readonly day: boolean;
  readonly short: boolean;
}

function monthPart(locale: string, day: Date, form: MonthForm): string {
  const parts = dateFormat(locale, form).formatToParts(day);
  return withoutMarks(parts.find(({ type }) => type === 'month')?.value ?? '');
}

function dateFormat(locale: string, form: MonthForm): Intl.DateTimeFormat {
  const month = form.short ? 'short' : 'long';
  return new Intl.DateTimeFormat(locale, {
    month,
    timeZone: 'UTC',
    ...(form.day ? { day: 'numeric', year: 'numeric' } : {}),
  });
}

/** As dates show a month: short, but where that is a figure only, which could be taken for the day, in full. */
function shownForm(locale: string): MonthForm {
  const short = { day: true, short: true };
  const [first = new Date(0)] = MONTH_DAYS;
  return /^[\d.]*$/.test(monthPart(locale, first, short)) ? { day: true, short: false } : short;
}

/** `more`: another short name; '' for none. */
function monthForms(locale: string, day: Date, more: string): readonly string[] {
  const forms = [true, false].flatMap((beside) =>
    [false, true].map((short) => monthPart(locale, day, { day: beside, short })),
  );
  // Some languages write a word such as 'of' together with the month.
  const joined = /([\p{L}]*)\{m\}/u.exec(datePattern(locale))?.[1] ?? '';
  return [
    ...new Set(joined === '' ? [...forms, more] : [...forms, more, ...forms.map((form) => joined + form)]),
  ].filter((form) => form !== '');
}

function datePattern(locale: string): string {
  const [first] = MONTH_DAYS;
  const names: Readonly<Record<string, string>> = { day: '{d}', month: '{m}', year: '{y}' };
  const parts = dateFormat(locale, shownForm(locale)).formatToParts(first);
  return withoutMarks(parts.map(({ type, value }) => names[type] ?? value).join('')).trim();
}

/** Without the marks that say which way a text runs: the page says that itself. */
function withoutMarks(text: string): string {
  return text.replace(/[\u200e\u200f\u061c]/g, '');
}
