// How values read on screen and on paper, and the text an editor opens with. Rounds for showing only: the editor's text
// gives back the very same value when read. Used by the workbook and its files.

import { currencyOf } from '../units/currency.ts';
import { type Atom, isMixed, type MixedUnit, pluralOf } from '../units/table.ts';
import { fromCanonical, shownNumber, toCanonical, type Unit } from '../units/unit.ts';
import { showDate } from './date-text.ts';
import { type ErrorKind, isError, type Scalar } from './error.ts';
import { inSmaller } from './quantity-text.ts';
import { tolerantRound } from './tolerance.ts';
import type { ValueType } from './type.ts';
import type { Writing } from './writing.ts';

export { showDate } from './date-text.ts';

export interface ShowOptions {
  /** The unit the cell was typed in, where it is another than the column's. */
  readonly unit?: Unit | undefined;
  /** Digits after the decimal mark in the column's unit; as many as make sense where absent. */
  readonly decimals?: number | undefined;
  /** ISO 4217 code of the workbook's money. */
  readonly currency: string;
  /** How people write figures and days here; as formulas have them where absent. */
  readonly writing?: Writing | undefined;
}

const SHORT: Readonly<Record<ErrorKind, string>> = {
  formula: 'see formula',
  circle: 'circle',
  divide: '÷ 0',
  number: 'no such number',
  range: 'out of range',
  missing: 'not found',
  value: 'wrong sort',
  reference: 'no such row',
};

/**
 * A value as a table shows it: numbers in the column's unit without naming it, or in `unit` with its name ('20 cm',
 * '2 ft 6 in'); dates '15 Mar 2027'; yes and no; blank ''; an error by a short word. Thousands are grouped from 10,000 on.
 * Without `decimals`: up to three, more only where they are the first figures; money at least its own.
 */
export function showValue(value: Scalar, type: ValueType, options: ShowOptions): string {
  if (value === null) return '';
  if (isError(value)) return SHORT[value.error];
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  const { writing } = options;
  if (type.kind === 'date') return showDate(value, writing);
  if (type.kind !== 'number' && type.kind !== 'temperature') return String(value);
  const own = type.unit;
  const typedIn = options.unit;
  if (typedIn === undefined || typedIn.symbol === own.symbol) {
    if (isMixed(own)) return mixedText(value, own, (n) => decimalText(n, 0, 3, writing));
    return numberText(value, own, type, options);
  }
  if (isMixed(typedIn)) return mixedText(value, typedIn, (n) => decimalText(n, 0, 3, writing));
  return followedBy(
    numberText(value, typedIn, type, { currency: options.currency, writing }),
    typedIn,
    options.currency,
  );
}

/** A value as a table shows it, its unit apart: '20' and 'cm'; '' where the unit is the column's own, or there is none. */
export function showParts(
  value: Scalar,
  type: ValueType,
  options: ShowOptions,
): { readonly figure: string; readonly unit: string } {
  const { unit } = options;
  const other = unit !== undefined && typeof value === 'number' && isQuantity(type) && unit.symbol !== type.unit.symbol;
  if (!other || isMixed(unit)) return { figure: showValue(value, type, options), unit: '' };
  const figure = numberText(value, unit, type, { currency: options.currency, writing: options.writing });
  return { figure, unit: figure === '1' ? singularLabel(unit, options.currency) : unitLabel(unit, options.currency) };
}

/**
 * The unit that follows a figure of showParts wherever no header says it: 'in', 'days', '%'; '' for what has none and where the
 * figure names it itself ('2 ft 6 in').
 */
export function unitAfter(
  figure: string,
  type: ValueType,
  { unit, currency }: { readonly unit?: Unit | undefined; readonly currency: string },
): string {
  if (figure === '' || !isQuantity(type)) return '';
  const written = unit ?? type.unit;
  if (isMixed(written)) return '';
  return figure === '1' ? singularLabel(written, currency) : unitLabel(written, currency);
}

function isQuantity(type: ValueType): type is Extract<ValueType, { readonly kind: 'number' | 'temperature' }> {
  return type.kind === 'number' || type.kind === 'temperature';
}

/** As showValue, always with its unit: '12.4 lb', '85%', '3.50 EUR'. */
export function showWithUnit(value: Scalar, type: ValueType, options: ShowOptions): string {
  const text = showValue(value, type, options);
  if (typeof value !== 'number' || (type.kind !== 'number' && type.kind !== 'temperature')) return text;
  const named = options.unit !== undefined && options.unit.symbol !== type.unit.symbol;
  return named || isMixed(type.unit) ? text : followedBy(text, type.unit, options.currency);
}

/**
 * A unit as a header shows it: 'in', 'days', '%', 'lb/ft²', '°F', 'EUR/lb'; '' for none. The vocabulary reads it back; °F also stands
 * for the difference of two temperatures, and is read as one where one is wanted.
 */
export function unitLabel(unit: Unit, currency: string): string {
  return pluralOf(unit)
    .replace(/\bmoney\b/, currency)
    .replace(/(?<=[a-z])2\b/gi, '²')
    .replace(/(?<=[a-z])3\b/gi, '³')
    .replace(/^deg([CF])$|^([CF])deg$/, '°$1$2')
    .replace(/^deg([CF])day$/, '°$1·day');
}

/**
 * What an editor opens with: every digit, no grouping, the unit where it isn't the column's. Read again by readEntry with
 * the same writing it gives the same value and unit. Links must come as their text.
 */
export function entryText(
  value: Scalar,
  type: ValueType,
  options: Pick<ShowOptions, 'unit' | 'currency' | 'writing'> & { readonly decimalComma?: boolean },
): string {
  if (value === null || isError(value)) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (type.kind === 'date') return showDate(value, options.writing);
  if (type.kind !== 'number' && type.kind !== 'temperature') return String(value);
  const decimalComma = options.decimalComma ?? options.writing?.decimal === ',';
  const typed = (n: number): string => (decimalComma ? String(n).replace('.', ',') : String(n));
  const unit = options.unit ?? type.unit;
  if (isMixed(unit) && roundTrips(value, unit)) return mixedText(value, unit, typed);
  const n = shownNumber(unit, value);
  // A share that no per cent figure gives exactly is written as the share it is.
  if (options.unit === undefined && unit.symbol === '%' && toCanonical(unit, n) !== value && value > 0 && value < 1) {
    return typed(value);
  }
  const named = unit.symbol !== type.unit.symbol || (unit.symbol === '%' && n > 0 && n < 1);
  return named ? followedBy(typed(n), unit, options.currency) : typed(n);
}

function roundTrips(canonical: number, unit: MixedUnit): boolean {
  return toCanonical(unit.smaller, shownNumber(unit.smaller, canonical)) === canonical;
}

/** A number's text with its unit behind it: '1 day', '85%', '3.50 EUR'. */
export function followedBy(text: string, unit: Unit, currency: string): string {
  const label = text === '1' ? singularLabel(unit, currency) : unitLabel(unit, currency);
  if (label === '' || label === '%') return text + label;
  return `${text} ${label}`;
}

function singularLabel(unit: Atom, currency: string): string {
  if (unit.singular !== undefined) return unit.singular;
  return pluralOf(unit) === unit.symbol ? unitLabel(unit, currency) : unit.symbol;
}

function numberText(canonical: number, unit: Unit, type: ValueType, options: ShowOptions): string {
  const n = shownNumber(unit, canonical);
  const { writing } = options;
  if (options.decimals !== undefined) return decimalText(n, options.decimals, options.decimals, writing);
  if (type.kind === 'temperature') return decimalText(n, 0, 1, writing);
  if (unit.dimension.money === 1) {
    const least = currencyOf(options.currency).decimals;
    return decimalText(n, least, Math.abs(n) >= 1 ? least : Math.max(least, digitsToThreeFigures(n)), writing);
  }
  return decimalText(n, 0, Math.max(3, digitsToThreeFigures(n)), writing);
}

/** Decimals that three significant figures take: 0.00123 -> 5. */
function digitsToThreeFigures(n: number): number {
  return n === 0 ? 0 : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(n))));
}

/** Rounded to at most `most` decimals, at least `least` shown, grouped from 10,000 on; vast and tiny numbers as 1.2e-12. */
export function decimalText(n: number, least: number, most: number, writing?: Writing): string {
  const size = Math.abs(n);
  const { decimal = '.', group = ',' } = writing ?? {};
  if (size >= 1e15 || (size > 0 && most > 12)) return String(Number(n.toPrecision(3))).replace('.', decimal);
  const scale = 10 ** most;
  const rounded = size * scale < 2 ** 53 ? tolerantRound(n * scale) / scale : n;
  const [whole = '0', fraction = ''] = Math.abs(rounded).toFixed(most).split('.');
  const kept = fraction.slice(0, least) + fraction.slice(least).replace(/0+$/, '');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(?:\d{3})+$)/g, group) : whole;
  return `${rounded < 0 ? '-' : ''}${grouped}${kept === '' ? '' : `${decimal}${kept}`}`;
}

/** '2 ft 6 in': whole larger units and the rest in smaller ones, as `write` writes the rest. */
export function mixedText(canonical: number, unit: MixedUnit, write: (n: number) => string): string {
  const each = inSmaller(unit);
  const total = Math.abs(shownNumber(unit.smaller, canonical));
  const whole = Math.floor(total / each);
  const rest = restOf(unit.smaller, total, whole * each);
  const carried = write(rest) === write(each);
  const sign = fromCanonical(unit, canonical) < 0 ? '-' : '';
  const [larger, smaller] = carried ? [whole + 1, write(0)] : [whole, write(rest)];
  return `${sign}${larger} ${unit.larger.symbol} ${smaller} ${unit.smaller.symbol}`;
}

/** What `whole` lacks of `total`, in as few digits as add up to the same quantity again. */
function restOf(unit: Unit, total: number, whole: number): number {
  const rest = total - whole;
  const shorter = [6, 9, 12, 15].map((digits) => Number(rest.toPrecision(digits)));
  return shorter.find((n) => toCanonical(unit, whole + n) === toCanonical(unit, total)) ?? rest;
}
