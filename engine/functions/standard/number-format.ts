// Formats of numbers, dates and time spans as TEXT has them, read once into a writer. Numbers: 0 # , . % E+00 and words in
// quotes, with an own part for negative numbers and for nought after semicolons. Dates: yyyy yy mmmm mmm mm m dddd ddd dd d. Time
// spans: [h] hh h mm m ss s. Called by text-format.ts; knows no types.

import { yearMonthDay } from '../../values/civil.ts';
import { MONTHS, WEEKDAYS } from '../../values/date-text.ts';
import { tolerantRound } from '../../values/tolerance.ts';

export type Writer = (value: number) => string;

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

function numberShape(section: string): NumberShape | undefined {
  const found = PLACEHOLDERS.exec(masked(section));
  if (found === null) return undefined;
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
function laterPart(section: string): Writer {
  const shape = numberShape(section);
  return shape === undefined ? () => withoutQuotes(section) : (size) => surrounded(shape, sizeText(size, shape));
}

/** A writer for numbers; undefined where the format has no place for digits. */
export function numberWriter(format: string): Writer | undefined {
  const [first = '', ...others] = sections(format);
  const shape = numberShape(first);
  if (shape === undefined) return undefined;
  const [negative, nought] = others.map(laterPart);
  return (value) => {
    if (value < 0 && negative !== undefined) return negative(-value);
    if (value === 0 && nought !== undefined) return nought(0);
    const digits = sizeText(Math.abs(value), shape);
    const minus = value < 0 && /[1-9]/.test(digits) ? '-' : '';
    return minus + surrounded(shape, digits);
  };
}

const DATE_TOKEN = /y{3,}|yy|m{1,4}|d{1,4}/gi;

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

/** A writer for dates; undefined where the format names neither year, month nor day. */
export function dateWriter(format: string): Writer | undefined {
  const parts = pieces(format);
  const names = parts.some(({ literal, text }) => !literal && text.search(DATE_TOKEN) >= 0);
  return names ? (civil) => written(parts, DATE_TOKEN, (token) => datePiece(token, civil)) : undefined;
}

const TIME_TOKEN = /\[h+\]|h{1,2}|m{1,2}|s{1,2}/gi;

function timePiece(token: string, totalSeconds: number): string {
  const padded = (n: number): string => String(n).padStart(token.length, '0');
  const hours = Math.floor(totalSeconds / 3600);
  switch (token.toLowerCase()[0]) {
    case '[':
      return String(hours).padStart(token.length - 2, '0');
    case 'h':
      return padded(hours % 24);
    case 'm':
      return padded(Math.floor(totalSeconds / 60) % 60);
    default:
      return padded(totalSeconds % 60);
  }
}

/** A writer for time spans in days, to the nearest of the smallest part named; undefined where the format names no hours or minutes. */
export function timeWriter(format: string): Writer | undefined {
  const parts = pieces(format);
  const outside = parts
    .filter((piece) => !piece.literal)
    .map((piece) => piece.text)
    .join('');
  if (!/h|m|s/i.test(outside) || /[0#dy]/i.test(outside)) return undefined;
  const step = /s/i.test(outside) ? 1 : /m/i.test(outside) ? 60 : 3600;
  return (days) => {
    const total = tolerantRound((Math.abs(days) * 86400) / step) * step;
    return (days < 0 && total > 0 ? '-' : '') + written(parts, TIME_TOKEN, (token) => timePiece(token, total));
  };
}
