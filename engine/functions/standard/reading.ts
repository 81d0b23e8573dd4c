// Numbers, dates and times of day that stand in texts, read where the formula asks for it (VALUE, DATEVALUE, TIMEVALUE).
// A date must name its year, and its month as a word unless it is 2027-03-15: 1/2/2027 is one day here and another there.
// Called by information.ts.

import { readDate as readTypedDate } from '../../values/date-text.ts';

/** No number, date or time is written longer; anything longer is not looked at. */
const LONGEST = 60;

const PLAIN = /^([+-]?)(\d{1,3}(?:,\d{3})+|\d*)(\.\d*)?(e[+-]?\d+)?\s*(%?)$/i;
/** Only texts that name their year are read. */
const YEAR_NEVER_USED = 2000;

const FRACTION = /^([+-]?)(\d+)\s+(\d+)\/(\d+)$/;

/** The number a text spells; undefined where it is none. */
export function readNumber(given: string): number | undefined {
  const text = given.trim();
  if (text.length > LONGEST) return undefined;
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

/** The civil day a text spells with its year in four figures: 2027-03-15, or with the month as a word; undefined where it is none. */
export function readDate(given: string): number | undefined {
  const text = given.trim();
  if (text.length > LONGEST) return undefined;
  const plain = /^\d{4}-\d{2}-\d{2}$/.test(text) || (/[a-z]/i.test(text) && /\d{4}/.test(text));
  const read = plain ? readTypedDate(text, { year: YEAR_NEVER_USED }) : undefined;
  return read?.ok === true ? read.civil : undefined;
}

/** The time since midnight in days that a text spells, 6:30 or 18:05:20.5; undefined where it is none. */
export function readTime(given: string): number | undefined {
  if (given.length > LONGEST) return undefined;
  const parts = /^(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?$/.exec(given.trim());
  if (parts === null) return undefined;
  const [, hours, minutes, seconds = '0'] = parts;
  if (Number(minutes) > 59 || Number(seconds) >= 60 || Number(hours) > 24) return undefined;
  return (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) / 86400;
}
