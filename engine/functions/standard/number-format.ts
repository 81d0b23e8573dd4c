// Formats of numbers, dates and time spans as TEXT has them, read once into a writer, or into the sentence that refuses them:
// nothing is written that the format does not say. Numbers: 0 # , . % E+00 and words in quotes, with an own part for negative
// numbers and for nought after semicolons. Dates: yyyy yy mmmm mmm mm m dddd ddd dd d. Time spans: [h] hh h [m] mm m [s] ss s.
// Called by text-format.ts; knows no types.

import { yearMonthDay } from '../../values/civil.ts';
import { MONTHS, WEEKDAYS } from '../../values/date-text.ts';
import { tolerantRound } from '../../values/tolerance.ts';

/** Gives a number's text. */
export type Writer = (value: number) => string;

/** A writer, or why there is none. */
export type Read = Writer | string;

export const NO_DIGITS = 'The format of a number needs a place for digits: "0", "0.00", "#,##0", "0%", "0.00E+00".';
const NO_DATE = 'The format of a date names year, month or day: "yyyy-mm-dd", "d mmm yyyy", "ddd d mmm".';
const NO_TIME = 'The format of a time names hours, minutes or seconds: "h:mm", "[h]:mm", "[m]", "h:mm:ss".';

/** Words in quotes and letters after a backslash, which stand as they are, and what lies between. */
interface Piece {
  readonly literal: boolean;
  readonly text: string;
}

function pieces(format: string): readonly Piece[] {
  const found = format.match(/"[^"]*"|\\.|[^"\\]+|["\\]/g) ?? [];
  return found.map((text) => {
    if (text.length > 1 && text.startsWith('"')) return { literal: true, text: text.slice(1, -1) };
    if (text.length > 1 && text.startsWith('\\')) return { literal: true, text: text.slice(1) };
    return { literal: false, text };
  });
}

/** Parts of a format between semicolons that stand outside quotes. */
function sections(format: string): readonly string[] {
  const parts: string[] = [''];
  for (const { literal, text } of pieces(format)) {
    if (literal) {
      parts[parts.length - 1] += `"${text}"`;
      continue;
    }
    const [first = '', ...rest] = text.split(';');
    parts[parts.length - 1] += first;
    parts.push(...rest);
  }
  return parts;
}

interface NumberShape {
  readonly before: string;
  readonly after: string;
  readonly leastWhole: number;
  readonly leastDecimals: number;
  readonly mostDecimals: number;
  readonly grouped: boolean;
  readonly percents: number;
  /** Digits of the exponent; 0 for none. */
  readonly exponentDigits: number;
  readonly plusSign: boolean;
}

/** What a format may hold beside its places and quoted words: signs that stand for nothing but themselves. */
const SIGNS = /^[\s\p{Sc}\p{Pd}+/():!^&'~{}<>=.,;%·×²³°]*$/u;

/** Why a format can't be done whose part without places and quoted words is `rest`; undefined where it can. */
function objection(rest: string): string | undefined {
  if (SIGNS.test(rest)) return undefined;
  const [sign = ''] = /[^\s\p{Sc}\p{Pd}+/():!^&'~{}<>=.,;%·×²³°]/u.exec(rest) ?? [];
  if (sign === '?') return 'TEXT writes no fractions and no places for blanks: use 0 and #, as in "0.00".';
  if (sign === '[')
    return 'TEXT knows neither colours nor conditions: of signs in brackets it writes [h], [m] and [s] of a time span.';
  if (/\p{L}/u.test(sign))
    return `In this format ${sign} has no meaning: put words in double quotes, as in "0 ""beds""".`;
  return `In this format ${sign} has no meaning: take it out, or put it in double quotes.`;
}

const PLACEHOLDERS = /[0#](?:[0#,]*[0#])?(?:\.[0#]*)?(?:E([+-])(0+))?|\.[0#]+(?:E([+-])(0+))?/i;

function withoutQuotes(text: string): string {
  return pieces(text)
    .map((piece) => piece.text)
    .join('');
}

/** Quoted words are hidden while the placeholders are sought, so that a 0 in them is a letter. */
function masked(section: string): string {
  return section.replace(/"[^"]*"|\\./g, (quoted) => '\u0000'.repeat(quoted.length));
}

/** What stands beside the one place for digits must stand for itself. */
function besideDigits(rest: string): string | undefined {
  if (rest.includes(',')) {
    return 'A comma behind the digits would divide by a thousand: TEXT does not; divide the number itself, TEXT([Price] / 1000; "0.0").';
  }
  if (/[0#]/.test(rest)) return 'TEXT writes a number in one piece: the format has a second place for digits.';
  return objection(rest);
}

function numberShape(section: string): NumberShape | string {
  const found = PLACEHOLDERS.exec(masked(section));
  if (found === null) return (/[?[]/.test(masked(section)) ? objection(masked(section)) : undefined) ?? NO_DIGITS;
  const beside = masked(section).replace(found[0], '').replaceAll('\u0000', '');
  const why = besideDigits(beside);
  if (why !== undefined) return why;
  const [core] = found;
  const sign = found[1] ?? found[3];
  const digits = found[2] ?? found[4] ?? '';
  const [mantissa = ''] = core.split(/e/i);
  const [whole = '', decimals = ''] = mantissa.split('.');
  const before = section.slice(0, found.index);
  const after = section.slice(found.index + core.length);
  return {
    before: withoutQuotes(before),
    after: withoutQuotes(after),
    leastWhole: whole.replace(/[^0]/g, '').length,
    leastDecimals: decimals.replace(/[^0]/g, '').length,
    mostDecimals: decimals.length,
    grouped: whole.includes(','),
    percents: masked(section).split('%').length - 1,
    exponentDigits: digits.length,
    plusSign: sign === '+',
  };
}

/** Nearest decimal text with so many places, halves away from nought and dust forgiven. */
function fixedText(size: number, places: number): string {
  const scaled = size * 10 ** places;
  if (scaled > Number.MAX_SAFE_INTEGER) return size.toFixed(places);
  const digits = String(tolerantRound(scaled)).padStart(places + 1, '0');
  return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
}

function decimalText(size: number, shape: NumberShape): string {
  const [whole = '', decimals = ''] = fixedText(size, shape.mostDecimals).split('.');
  const trimmed = decimals.slice(0, shape.leastDecimals) + decimals.slice(shape.leastDecimals).replace(/0+$/, '');
  const shown = whole === '0' && shape.leastWhole === 0 ? '' : whole.padStart(shape.leastWhole, '0');
  const grouped = shape.grouped ? shown.replace(/\B(?=(\d{3})+$)/g, ',') : shown;
  return trimmed === '' ? grouped : `${grouped}.${trimmed}`;
}

function scientificText(size: number, shape: NumberShape): string {
  let exponent = size === 0 ? 0 : Math.floor(Math.log10(size));
  let mantissa = size / 10 ** exponent;
  if (Number(fixedText(mantissa, shape.mostDecimals)) >= 10) {
    exponent += 1;
    mantissa /= 10;
  }
  const sign = exponent < 0 ? '-' : shape.plusSign ? '+' : '';
  return `${decimalText(mantissa, shape)}E${sign}${String(Math.abs(exponent)).padStart(shape.exponentDigits, '0')}`;
}

function sizeText(size: number, shape: NumberShape): string {
  const scaled = size * 100 ** shape.percents;
  return shape.exponentDigits > 0 ? scientificText(scaled, shape) : decimalText(scaled, shape);
}

function surrounded(shape: NumberShape, digits: string): string {
  return shape.before + digits + shape.after;
}

/** A part for negative numbers or for nought; without a place for digits it stands as it is: "0;(0);none". */
function laterPart(section: string): Read {
  if (!/[0#?]/.test(masked(section))) return () => withoutQuotes(section);
  const shape = numberShape(section);
  return typeof shape === 'string' ? shape : (size) => surrounded(shape, sizeText(size, shape));
}

/** A writer for numbers. */
export function numberWriter(format: string): Read {
  const [first = '', ...others] = sections(format);
  const shape = numberShape(first);
  if (typeof shape === 'string') return shape;
  if (others.length > 2)
    return 'The format of a number has at most three parts: of numbers above, below and at nought.';
  const parts = others.map(laterPart);
  const fault = parts.find((part) => typeof part === 'string');
  if (typeof fault === 'string') return fault;
  const [negative, nought] = parts.filter((part) => typeof part === 'function');
  return (value) => {
    if (value < 0 && negative !== undefined) return negative(-value);
    if (value === 0 && nought !== undefined) return nought(0);
    const digits = sizeText(Math.abs(value), shape);
    const minus = value < 0 && /[1-9]/.test(digits) ? '-' : '';
    return minus + surrounded(shape, digits);
  };
}

const DATE_TOKEN = /yyyy|yy|m{1,4}|d{1,4}/gi;

function datePiece(token: string, civil: number): string {
  const { year, month, day } = yearMonthDay(civil);
  const two = (n: number): string => String(n).padStart(2, '0');
  switch (token.toLowerCase()) {
    case 'yy':
      return two(year % 100);
    case 'mmmm':
      return MONTHS[month - 1] ?? '';
    case 'mmm':
      return MONTHS[month - 1]?.slice(0, 3) ?? '';
    case 'mm':
      return two(month);
    case 'm':
      return String(month);
    case 'dddd':
      return weekdayName(civil);
    case 'ddd':
      return weekdayName(civil).slice(0, 3);
    case 'dd':
      return two(day);
    case 'd':
      return String(day);
    default:
      return String(year).padStart(4, '0');
  }
}

/** 1970-01-01, civil day 0, was a Thursday. */
function weekdayName(civil: number): string {
  return WEEKDAYS[(((Math.floor(civil) + 3) % 7) + 7) % 7] ?? '';
}

/** Each piece outside quotes with its tokens written by `write`. */
function written(format: readonly Piece[], token: RegExp, write: (token: string) => string): string {
  return format.map(({ literal, text }) => (literal ? text : text.replace(token, write))).join('');
}

/** What of a format stands outside quotes. */
function outsideQuotes(parts: readonly Piece[]): string {
  return parts.map(({ literal, text }) => (literal ? '' : text)).join('');
}

/** A writer for dates. */
export function dateWriter(format: string): Read {
  const parts = pieces(format);
  const outside = outsideQuotes(parts);
  if (outside.search(DATE_TOKEN) < 0) return NO_DATE;
  if (/[hs]|\[m+\]|am\/pm/i.test(outside))
    return 'A date here is a whole day and has no time of day: leave hours, minutes and seconds out.';
  if (/y{5,}|m{5,}|d{5,}/i.test(outside))
    return 'Years have up to four letters in a format, months and days too: "yyyy", "mmmm", "dddd".';
  const why = objection(outside.replace(DATE_TOKEN, ''));
  return why ?? ((civil) => written(parts, DATE_TOKEN, (token) => datePiece(token, civil)));
}

const TIME_TOKEN = /\[(?:h+|m+|s+)\]|h{1,2}|m{1,2}|s{1,2}/gi;

function timePiece(token: string, totalSeconds: number): string {
  const padded = (n: number): string => String(n).padStart(token.length, '0');
  const hours = Math.floor(totalSeconds / 3600);
  const whole = (n: number): string => String(n).padStart(token.length - 2, '0');
  switch (token.toLowerCase().replace(/(.)\1+/, '$1')) {
    case '[h]':
      return whole(hours);
    case '[m]':
      return whole(Math.floor(totalSeconds / 60));
    case '[s]':
      return whole(totalSeconds);
    case 'h':
      return padded(hours % 24);
    case 'm':
      return padded(Math.floor(totalSeconds / 60) % 60);
    default:
      return padded(totalSeconds % 60);
  }
}

/** Whether a format is one of times: it names their parts and no digits, days or years. */
export function isTimeFormat(format: string): boolean {
  const outside = outsideQuotes(pieces(format));
  return /[hms]/i.test(outside) && !/[0#dy]/i.test(outside);
}

/** Why the parts named would drop a larger one, so that an hour and a half read 30; undefined where they don't. */
function droppedPart(tokens: readonly string[]): string | undefined {
  const all = tokens.map((token) => token.toLowerCase());
  const has = (letter: string): boolean => all.some((token) => token.includes(letter));
  const whole = (letter: string): boolean => all.some((token) => token.startsWith(`[${letter}`));
  if (has('m') && !whole('m') && !has('h'))
    return 'Minutes without hours leave whole hours out: write "[m]" for all minutes, or "h:mm".';
  if (has('s') && !whole('s') && !has('m'))
    return 'Seconds without minutes leave whole minutes out: write "[s]" for all seconds, or "[m]:ss".';
  return undefined;
}

/** A writer for time spans in days, to the nearest of the smallest part named. */
export function timeWriter(format: string): Read {
  const parts = pieces(format);
  const outside = outsideQuotes(parts);
  const tokens = outside.match(TIME_TOKEN) ?? [];
  if (tokens.length === 0) return NO_TIME;
  const why = droppedPart(tokens) ?? objection(outside.replace(TIME_TOKEN, ''));
  if (why !== undefined) return why;
  const step = /s/i.test(outside) ? 1 : /m/i.test(outside) ? 60 : 3600;
  return (days) => {
    const total = tolerantRound((Math.abs(days) * 86400) / step) * step;
    return (days < 0 && total > 0 ? '-' : '') + written(parts, TIME_TOKEN, (token) => timePiece(token, total));
  };
}
