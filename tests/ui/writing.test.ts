// How people of many places write figures and days: what is shown reads back as the very same, names of months are taken in
// the language of the place, and marks and orders are read as that place has them.

import { describe, expect, test } from 'vitest';
import {
  civilDay,
  createVocabulary,
  MONTHS,
  readEntry,
  showDate,
  showValue,
  type Unit,
  type ValueType,
  Workbook,
} from '../../engine/index.ts';
import { monthsBetween } from '../../ui/browser/drawing/scale.ts';
import { wholeNumber } from '../../ui/browser/store/whole-number.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { BEGINNING, world } from '../document/farm.ts';
import { LOCALES } from '../locales.ts';

const DATE: ValueType = { kind: 'date' };
const vocabulary = createVocabulary({ currency: 'EUR' });
const METRE: Unit = {
  symbol: 'm',
  dimension: { length: 1, mass: 0, time: 0, temperature: 0, money: 0 },
  numerator: 1,
  denominator: 1,
  offset: 0,
};
const LENGTH: ValueType = { kind: 'number', dimension: METRE.dimension, unit: METRE };

function context(locale: string) {
  const writing = writingOf(locale);
  return { vocabulary, year: 2027, dayFirst: writing.dayFirst, decimalComma: writing.decimal === ',', writing };
}

function date(text: string, locale: string): string {
  const read = readEntry(text, DATE, context(locale));
  if (!read.ok) return read.why;
  return typeof read.value === 'number' ? showDate(read.value) : '';
}

function metres(text: string, locale: string): number | string {
  const read = readEntry(text, LENGTH, context(locale));
  return read.ok && typeof read.value === 'number' ? read.value : 'refused';
}

describe('every day of two years reads back as it is shown', () => {
  test.each(LOCALES)('%s', (locale) => {
    const { writing } = context(locale);
    const missed: string[] = [];
    for (let day = civilDay(2027, 1, 1); day < civilDay(2029, 1, 1); day += 1) {
      const shown = showDate(day, writing);
      const read = readEntry(shown, DATE, context(locale));
      if (!read.ok || read.value !== day) missed.push(shown);
    }
    expect(missed.slice(0, 3)).toEqual([]);
  });
});

describe('figures read back as they are shown', () => {
  test.each(LOCALES)('%s', (locale) => {
    const { writing } = context(locale);
    for (const n of [0, 0.5, 7, 12.25, 999, 1234, 12345, 123456.5, -3.75, 1.125, 48.125]) {
      const shown = showValue(n, LENGTH, { currency: 'EUR', writing, decimals: undefined });
      expect(metres(shown, locale), `${n} as ${shown}`).toBe(n);
    }
  });
});

test('names of months are taken in the language of the place, whole, short and without accents, and in English too', () => {
  expect(date('15. März', 'de-DE')).toBe('15 Mar 2027');
  expect(date('15 marz 2028', 'de-DE')).toBe('15 Mar 2028');
  expect(date('3 août', 'fr-FR')).toBe('3 Aug 2027');
  expect(date('3 aout', 'fr-FR')).toBe('3 Aug 2027');
  expect(date('1er mars 2027', 'fr-FR')).toBe('1 Mar 2027');
  expect(date('15 de marzo de 2027', 'es-ES')).toBe('15 Mar 2027');
  expect(date('15 de março', 'pt-BR')).toBe('15 Mar 2027');
  expect(date('1 мая', 'ru-RU')).toBe('1 May 2027');
  expect(date('3月15日', 'ja-JP')).toBe('15 Mar 2027');
  expect(date('2027年3月15日', 'zh-CN')).toBe('15 Mar 2027');
  expect(date('15 Mar', 'de-DE')).toBe('15 Mar 2027');
  expect(date('15 May', 'de-DE')).toBe('15 May 2027');
  expect(date('Montag 15. März', 'de-DE')).toBe('15 Mar 2027');
  expect(date('Dienstag 15. März', 'de-DE')).toMatch(/is a Monday/);
});

// Abbreviated months as the locale data of LibreOffice have them: i18npool/source/localedata/data, DefaultAbbrvName.
test.each([
  ['de-DE', 'Jan Feb Mrz Apr Mai Jun Jul Aug Sep Okt Nov Dez'],
  ['de-CH', 'Jan Feb Mrz Apr Mai Jun Jul Aug Sep Okt Nov Dez'],
  ['cs-CZ', 'I II III IV V VI VII VIII IX X XI XII'],
  ['lt-LT', 'Sau Vas Kov Bal Geg Bir Lie Rgp Rgs Spl Lap Grd'],
  ['hr-HR', 'sij velj ožu tra svi lip srp kol ruj lis stu pro'],
  // Of these the months from May on were looked up.
  ['ca-ES', '- - - - maig juny jul. ag. set. oct. nov. des.'],
  ['ru-RU', '- - - - май июн июл авг сен окт ноя дек'],
  ['lv-LV', '- - mar apr mai jūn jūl aug sep okt nov dec'],
])('short months that spreadsheets write in %s', (locale, written) => {
  const misread = written.split(' ').flatMap((name, month) => {
    const day = `15 ${MONTHS[month]?.slice(0, 3)} 2027`;
    const read = [`15. ${name}`, `15. ${name} 27`, `15. ${name}. 2027`, `15-${name}-27`].map((text) =>
      date(text, locale),
    );
    return name === '-' || read.every((one) => one === day) ? [] : [`${name}: ${read.join(', ')}`];
  });
  expect(misread).toEqual([]);
});

test('a short name that two months begin with is not guessed', () => {
  expect(date('3 jui', 'fr-FR')).toMatch(/isn't a date/);
  expect(date('3 juil', 'fr-FR')).toBe('3 Jul 2027');
  expect(date('3 juin', 'fr-FR')).toBe('3 Jun 2027');
});

test('3/4 is a day of March or of April, as people of the place have it', () => {
  expect(date('3/4', 'en-US')).toBe('4 Mar 2027');
  expect(date('3/4', 'en-GB')).toBe('3 Apr 2027');
  expect(date('3/4', 'fr-FR')).toBe('3 Apr 2027');
  expect(date('3/4', 'sv-SE')).toBe('3 Apr 2027');
  expect(date('3/4', 'ja-JP')).toBe('4 Mar 2027');
  expect(date('15/3', 'en-US')).toBe('15 Mar 2027');
});

test('1,250 and 1.250 are what they are in the place', () => {
  expect(metres('1,250', 'en-US')).toBe(1250);
  expect(metres('1,250', 'de-DE')).toBe(1.25);
  expect(metres('1.250', 'de-DE')).toBe(1250);
  expect(metres('1,5', 'de-DE')).toBe(1.5);
  expect(metres('1,5', 'en-US')).toBe(1.5);
  expect(metres('1’250', 'de-CH')).toBe(1250);
  expect(metres("1'250.5", 'de-CH')).toBe(1250.5);
  expect(metres('1 250,5', 'fr-FR')).toBe(1250.5);
  expect(metres('١٢٫٥', 'ar-EG')).toBe(12.5);
  expect(metres('20 cm', 'de-DE')).toBe(0.2);
  expect(metres('2,5 cm', 'de-DE')).toBe(0.025);
});

test('figures are read in any script, whatever figures the browser writes for the locale', () => {
  expect(metres('१२.५', 'hi-IN')).toBe(12.5);
  expect(metres('１２．５', 'ja-JP')).toBe(12.5);
  expect(metres('２０ｃｍ', 'ja-JP')).toBe(0.2);
  expect(metres('١٢٫٥', 'ar')).toBe(12.5);
  expect(metres('۱۲٫۵', 'fa-IR')).toBe(12.5);
  expect(metres('১২', 'en-US')).toBe(12);
  expect(date('१५ मार्च', 'hi-IN')).toBe('15 Mar 2027');
  expect(date('３月１５日', 'ja-JP')).toBe('15 Mar 2027');
  expect(date('١٥ مارس ٢٠٢٧', 'ar')).toBe('15 Mar 2027');
});

test('thousands and hundreds of them are read as India writes them, and nothing else that looks like it', () => {
  expect(metres('1,23,456', 'hi-IN')).toBe(123_456);
  expect(metres('12,34,567.5', 'en-IN')).toBe(1_234_567.5);
  expect(metres('1,23,456', 'en-US')).toBe(123_456);
  for (const none of ['1,2,345', '123,45,678', '1,23,45', '1.23.456']) expect(metres(none, 'hi-IN')).toBe('refused');
});

// ISO 8601: week 11 of 2027 begins on 15 March. 'KW' is common practice in German; the others are how CLDR calls the week.
test.each([
  ['KW 11', 'de-DE'],
  ['KW11', 'de-CH'],
  ['Woche 11', 'de-DE'],
  ['v. 11', 'sv-SE'],
  ['v.11 2027', 'sv-SE'],
  ['vecka 11', 'sv-SE'],
  ['uge 11', 'da-DK'],
  ['semaine 11', 'fr-FR'],
  ['week 11', 'sv-SE'],
])('%s in %s is a week', (written, locale) => {
  expect(date(written, locale)).toBe('15 Mar 2027');
});

test('a word for the week that is a month too stays the month', () => {
  expect(date('sett 11', 'it-IT')).toBe('11 Sep 2027');
  expect(date('settimana 11', 'it-IT')).toBe('15 Mar 2027');
});

test('a locale that nobody knows counts as English', () => {
  expect(writingOf('xx-nowhere-at-all').date).toBe('{d} {m} {y}');
  expect(writingOf('not a locale').decimal).toBe('.');
});

// By the locale data of the platform for a month alone (CLDR), and never a bare figure.
test.each(LOCALES)('months that stand alone in %s are told from days and from each other', (locale) => {
  const { monthsAlone } = writingOf(locale);
  expect(monthsAlone.filter((name) => /^[\p{N}.]*$/u.test(name))).toEqual([]);
  expect(new Set(monthsAlone).size).toBe(12);
});

test('months of an axis are named as they stand alone', () => {
  const axis = (locale: string): readonly string[] =>
    monthsBetween(civilDay(2027, 3, 1), civilDay(2027, 11, 1), writingOf(locale)).map(({ name }) => name);
  expect(axis('ja-JP').slice(0, 3)).toEqual(['3月', '4月', '5月']);
  expect(axis('ko-KR')[0]).toBe('3월');
  // Not as beside a day: 'marraskuuta'.
  expect(axis('fi-FI').at(-1)).toBe('marras');
  expect(axis('en-US')[0]).toBe('Mar');
});

test('where the year goes in front it does so in two figures, with the mark of the place, where it is near the season', () => {
  expect(date('27-04-03', 'sv-SE')).toBe('3 Apr 2027');
  expect(date('26-12-24', 'sv-SE')).toBe('24 Dec 2026');
  expect(date('27/3/4', 'ja-JP')).toBe('4 Mar 2027');
  expect(date('27. 3. 4', 'ko-KR')).toBe('4 Mar 2027');
  // With another mark, far from the season, or with no such day it is as elsewhere.
  expect(date('27/3/26', 'sv-SE')).toBe('27 Mar 2026');
  expect(date('3/4/27', 'ja-JP')).toBe('4 Mar 2027');
  expect(date('27-31-03', 'sv-SE')).not.toMatch(/2027$/);
  expect(date('27-04-03', 'de-DE')).toBe('27 Apr 2003');
});

test('sentences name days as the place does', () => {
  expect(date('30.2.', 'de-DE')).toBe('30. Feb. 2027 does not exist: that month has 28 days.');
  expect(date('bald', 'de-DE')).toBe('"bald" isn\'t a date: write 15. März 2027, 15.3., 2027-03-15 or week 11.');
  expect(date('März', 'de-DE')).toBe('"März" doesn\'t say which day: write 15. März 2027.');
  expect(date('Dienstag 15. März', 'de-DE')).toBe('15. März 2027 is a Monday, not a Tuesday.');
  expect(date('bientôt', 'fr-FR')).toContain('write 15 mars 2027, 15/3,');
  expect(date('soon', 'en-US')).toContain('write 15 Mar 2027, 3/15,');
});

test('a whole number is read as a cell reads it', () => {
  const at = (locale: string): Workbook => {
    const workbook = Workbook.open(BEGINNING, { ...world(), writings: (named) => writingOf(named ?? locale) });
    if (workbook === undefined) throw new Error('its template is not known');
    return workbook;
  };
  expect(wholeNumber(at('ar-EG'), '١٠')).toBe(10);
  expect(wholeNumber(at('ja-JP'), '１０')).toBe(10);
  expect(wholeNumber(at('de-DE'), '1.000')).toBe(1000);
  expect(wholeNumber(at('en-US'), '1,000')).toBe(1000);
  for (const typed of ['', 'ten', '1.5', '10 ft']) expect(wholeNumber(at('en-US'), typed), typed).toBeUndefined();
});
