// Numbers, dates and times of day that stand in texts, read where the formula asks for it (VALUE, DATEVALUE, TIMEVALUE).
// A date of three numbers with slashes is refused: 1/2/2027 is one day here and another there. Called by information.ts.

import { civilDay, civilDayOfIso, yearMonthDay } from '../../values/civil.ts';
import { ENGLISH_MONTHS } from './names.ts';

const PLAIN = /^([+-]?)(\d{1,3}(?:,\d{3})+|\d*)(\.\d*)?(e[+-]?\d+)?\s*(%?)$/i;
const FRACTION = /^([+-]?)(\d+)\s+(\d+)\/(\d+)$/;

/** The number a text spells; undefined where it is none. */
export function readNumber(given: string): number | undefined {
  const text = given.trim();
  const mixed = FRACTION.exec(text);
  if (mixed !== null) {
    const [, sign, whole, above, below] = mixed;
    if (Number(below) === 0) return undefined;
    return (sign === '-' ? -1 : 1) * (Number(whole) + Number(above) / Number(below));
  }
  const parts = PLAIN.exec(text);
  if (parts === null) return undefined;
  const [, sign = '', whole = '', decimals = '', exponent = '', percent = ''] = parts;
  if (whole === '' && !/\d/.test(decimals)) return undefined;
  const value = Number(`${sign}${whole.replaceAll(',', '') || '0'}${decimals}${exponent}`);
  if (!Number.isFinite(value)) return undefined;
  return percent === '%' ? value / 100 : value;
}

function monthOf(word: string): number | undefined {
  const wanted = word.toLowerCase();
  const index = ENGLISH_MONTHS.findIndex(
    (name) => name.toLowerCase() === wanted || name.slice(0, 3).toLowerCase() === wanted,
  );
  return index < 0 ? undefined : index + 1;
}

function existing(year: number, month: number | undefined, day: number): number | undefined {
  if (month === undefined) return undefined;
  const civil = civilDay(year, month, day);
  const made = yearMonthDay(civil);
  return made.month === month && made.day === day ? civil : undefined;
}

/** The civil day a text spells: ISO 8601, or with the month as a word; undefined where it is none. */
export function readDate(given: string): number | undefined {
  const text = given.trim();
  const iso = civilDayOfIso(text);
  if (iso !== undefined) return iso;
  const dayFirst = /^(\d{1,2})\.?[\s-]+([a-z]+)\.?,?[\s-]+(\d{4})$/i.exec(text);
  if (dayFirst !== null) return existing(Number(dayFirst[3]), monthOf(dayFirst[2] ?? ''), Number(dayFirst[1]));
  const monthFirst = /^([a-z]+)\.?\s+(\d{1,2}),?\s+(\d{4})$/i.exec(text);
  if (monthFirst !== null) return existing(Number(monthFirst[3]), monthOf(monthFirst[1] ?? ''), Number(monthFirst[2]));
  return undefined;
}

/** The time since midnight in days that a text spells, 6:30 or 18:05:20.5; undefined where it is none. */
export function readTime(given: string): number | undefined {
  const parts = /^(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?$/.exec(given.trim());
  if (parts === null) return undefined;
  const [, hours, minutes, seconds = '0'] = parts;
  if (Number(minutes) > 59 || Number(seconds) >= 60 || Number(hours) > 24) return undefined;
  return (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) / 86400;
}
