// Quantities and temperatures as people type them: 8 in, 8", 2 ft 6 in, 1 1/2 lb, 85%, $3.50/lb, 45 F, 43.6 N. A bare
// number takes the column's unit. Called by entry.ts; calls the number reader and the vocabulary.

import { differenceUnit } from '../units/arithmetic.ts';
import { currencyNamed } from '../units/currency.ts';
import { isPlain, MONEY, nameOfDimension, sameDimension, WARMTH } from '../units/dimension.ts';
import { type Atom, isMixed, MIXED_UNITS, pluralOf } from '../units/table.ts';
import { toCanonical, type Unit } from '../units/unit.ts';
import { readNumber } from './number-text.ts';
import { type EntryContext, type EntryRead, quoted, refused } from './reading.ts';
import { nameOfType, type ValueType } from './type.ts';

type NumberType = Extract<ValueType, { readonly kind: 'number' }>;
type TemperatureType = Extract<ValueType, { readonly kind: 'temperature' }>;

/**
 * A quantity for a column of `type`. In a per cent column a bare number is per cent (85 is 85 %), but one between 0 and 1 is
 * a share (0.85 is 85 %): write 0.5% for half a per cent. Mixed units (2 ft 6 in) come back as a unit of their own.
 */
export function readQuantity(text: string, type: NumberType, context: EntryContext): EntryRead {
  const angle = type.unit.symbol === 'deg' ? readAngle(text) : undefined;
  if (angle !== undefined) return { ok: true, value: angle, unit: undefined };
  const front = moneyInFront(text, context);
  const foreign = front === undefined ? undefined : foreignMoney(front.money, context);
  if (foreign !== undefined) return foreign;
  const number = readNumber(front === undefined ? text : front.amount, context.decimalComma ?? false);
  if (number === undefined) return refused(`${quoted(text)} isn't ${wanted(type)}: ${suchAs(type)}.`);
  if (!number.ok) return number;

  const isWarmth = sameDimension(type.dimension, WARMTH);
  const unitText = isWarmth ? scaleName(number.rest) : wholeUnitText(number.rest, front?.money, type);
  if (unitText === '') return { ok: true, value: bareNumber(number.value, type), unit: undefined };
  const unit = context.vocabulary.find(unitText);
  if (unit !== undefined) return quantityIn(unit, number.value, type, text);
  const mixed = readMixed(text, number.value, number.rest, context);
  if (mixed !== undefined) return quantityIn(mixed.unit, mixed.inLarger, type, text, mixed.canonical);
  return unknownUnit(unitText, type, context);
}

/** A temperature on its scale; C and F alone are meant so here, a bare number is on the column's scale. */
export function readTemperature(text: string, type: TemperatureType, context: EntryContext): EntryRead {
  const number = readNumber(text, context.decimalComma ?? false);
  if (number === undefined) return refused(`${quoted(text)} isn't ${wanted(type)}: ${suchAs(type)}.`);
  if (!number.ok) return number;
  const scale = /^(°|deg|degrees?)?$/i.test(number.rest) ? type.unit : context.vocabulary.find(scaleName(number.rest));
  if (scale === undefined) return unknownUnit(number.rest, type, context);
  if (!sameDimension(scale.dimension, WARMTH)) return wrongKind(text, nameOfDimension(scale.dimension), type);
  if (scale.offset === 0 && scale.symbol !== 'K') return wrongKind(text, 'a difference of temperatures', type);
  const value = toCanonical(scale, number.value);
  if (value < 0) return refused(`${quoted(text)} is colder than anything can be.`);
  return { ok: true, value, unit: number.rest === '' ? undefined : scale };
}

/** C and F alone, where only degrees can be meant. */
function scaleName(typed: string): string {
  return /^[cf]$/i.test(typed) ? `deg${typed.toUpperCase()}` : typed;
}

function bareNumber(n: number, type: NumberType): number {
  return type.unit.symbol === '%' && n > 0 && n < 1 ? n : toCanonical(type.unit, n);
}

/** `canonical` where it is known more exactly than from n of the unit. */
function quantityIn(found: Unit, n: number, type: NumberType, text: string, canonical?: number): EntryRead {
  const unit = sameDimension(type.dimension, WARMTH) ? differenceUnit(found) : found;
  if (!sameDimension(unit.dimension, type.dimension)) {
    const plain = isPlain(unit.dimension) ? nameOfPlain(unit) : nameOfDimension(unit.dimension);
    return wrongKind(text, unit.offset === 0 ? plain : 'a temperature', type);
  }
  if (!plainUnitFits(type.unit, unit)) return wrongKind(text, nameOfPlain(unit), type);
  const value = canonical ?? toCanonical(unit, n);
  return Number.isFinite(value) ? { ok: true, value, unit } : refused('The number is too large to count with.');
}

/** Shares, counts and degrees of arc are all plain numbers, but 5 plants is no share and 85% no count of seeds. */
function plainUnitFits(column: Unit, unit: Unit): boolean {
  if (!isPlain(column.dimension) || column.symbol === '') return true;
  if (column.symbol === 'deg' || unit.symbol === 'deg') return column.symbol === unit.symbol;
  return isShare(column) === isShare(unit);
}

function isShare(unit: Unit): boolean {
  return isPlain(unit.dimension) && unit.numerator < unit.denominator;
}

function nameOfPlain(unit: Unit): string {
  if (isShare(unit)) return 'a share';
  return unit.symbol === 'deg' ? 'an angle' : 'a count';
}

function wanted(type: ValueType): string {
  if (type.kind !== 'number' || !isPlain(type.dimension)) return nameOfType(type);
  if (isShare(type.unit)) return 'a share';
  return isCount(type.unit) ? `a number of ${type.unit.symbol}` : 'a number';
}

function isCount(unit: Atom): boolean {
  return unit.singular !== undefined;
}

function suchAs(type: NumberType | TemperatureType): string {
  return `this column wants ${wanted(type)}, such as ${example(type)}`;
}

function example({ kind, dimension, unit }: { kind: string; dimension?: NumberType['dimension']; unit: Unit }): string {
  if (kind === 'temperature') return `45 ${unit.symbol}`;
  if (isMixed(unit)) return `2 ${unit.larger.symbol} 3 ${unit.smaller.symbol}`;
  if (dimension !== undefined && sameDimension(dimension, MONEY)) return `3.50 ${unit.symbol}`;
  return unit.symbol === '%' ? '85%' : `8 ${pluralOf(unit)}`.trim();
}

function wrongKind(text: string, kind: string, type: NumberType | TemperatureType): EntryRead {
  return refused(`${text} is ${kind}; ${suchAs(type)}.`);
}

function unknownUnit(unitText: string, type: NumberType | TemperatureType, context: EntryContext): EntryRead {
  const refusal = context.vocabulary.refusal(unitText);
  if (refusal !== undefined) return refused(refusal);
  const foreign = foreignMoney(unitText.split('/')[0]?.trim() ?? '', context);
  if (foreign !== undefined) return foreign;
  const near = context.vocabulary.nearest(unitText);
  const instead = near === undefined ? suchAs(type) : `did you mean ${near}? If not, ${suchAs(type)}`;
  return refused(`${quoted(unitText)} isn't a unit known here: ${instead}.`);
}

/** $3.50, EUR 3.50, -$3: the money word and the amount without it. */
function moneyInFront(
  text: string,
  context: EntryContext,
): { readonly money: string; readonly amount: string } | undefined {
  const match = /^([+\-−]?)\s*([^\d\s+\-−.,½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]+\.?)\s*([+\-−]?[\d.,½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞].*)$/.exec(text);
  if (match === null) return undefined;
  const [, sign = '', money = '', amount = ''] = match;
  const own = context.vocabulary.find(money);
  const isMoney = own === undefined ? currencyNamed(money) !== undefined : sameDimension(own.dimension, MONEY);
  return isMoney ? { money, amount: sign + amount } : undefined;
}

function foreignMoney(word: string, context: EntryContext): EntryRead | undefined {
  const code = currencyNamed(word);
  const own = context.vocabulary.currency;
  if (code === undefined || context.vocabulary.find(word) !== undefined) return undefined;
  return refused(`This workbook counts in ${own}: write the amount in ${own} instead of ${word}.`);
}

/** A unit begun with a slash ('3.50/lb', '$3.50 per lb', '4/ft2') takes what stands above the column's own slash. */
function wholeUnitText(rest: string, money: string | undefined, type: NumberType): string {
  if (rest === '') return money ?? '';
  if (!/^(\/|per\s)/.test(rest)) return money === undefined ? rest : `${money} ${rest}`;
  return `${money ?? type.unit.symbol.split('/')[0]} ${rest}`;
}

/** 2 ft 6 in, 2' 6", 3 lb 4 oz. Counted in the smaller unit, so that 2 ft 6 in is the very same length as 30 in. */
function readMixed(
  text: string,
  first: number,
  rest: string,
  context: EntryContext,
): { readonly unit: Unit; readonly inLarger: number; readonly canonical: number } | undefined {
  const match = /^([^\d½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞,-]+?)\s*(?:,|-|\band\b)?\s*([\d.½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞].*)$/.exec(rest);
  if (match === null) return undefined;
  const larger = context.vocabulary.find(match[1] ?? '');
  const second = readNumber(match[2] ?? '', context.decimalComma ?? false);
  if (larger === undefined || second === undefined || !second.ok) return undefined;
  const inchesMeant = second.rest === '' && /^['′’‘]$/.test(match[1] ?? '');
  const smaller = context.vocabulary.find(inchesMeant ? 'in' : second.rest);
  const unit = MIXED_UNITS.find((mixed) => mixed.larger === larger && mixed.smaller === smaller);
  if (unit === undefined) return undefined;
  const each = inSmaller(unit);
  const sum = Math.abs(first) * each + second.value;
  const total = /^\s*[-−]/.test(text) ? -sum : sum;
  return { unit, inLarger: total / each, canonical: toCanonical(unit.smaller, total) };
}

/** How many of the smaller unit make the larger: 12 in, 16 oz, 60 min, 7 days. */
export function inSmaller(unit: (typeof MIXED_UNITS)[number]): number {
  return Math.round(toCanonical(unit.larger, 1) / toCanonical(unit.smaller, 1));
}

/** 43.6 N, 43° 39' N, 33.9 S: south and west are negative. undefined for what isn't written so. */
function readAngle(text: string): number | undefined {
  const match =
    /^(\d{1,3}(?:\.\d+)?)\s*(?:°|deg)?\s*(?:(\d{1,2}(?:\.\d+)?)\s*['′’]\s*)?(?:(\d{1,2}(?:\.\d+)?)\s*["″”]\s*)?([NSEW])$/i.exec(
      text,
    );
  if (match === null) return undefined;
  const [, degrees, minutes = '0', seconds = '0', side = ''] = match;
  const size = Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
  return /[sw]/i.test(side) ? -size : size;
}
