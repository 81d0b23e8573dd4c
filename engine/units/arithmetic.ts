// Products, quotients and powers of units, and how they are written: lb / ft is 'lb/ft', in x ft is 'in2', lb/ft x ft is
// 'lb'. A compound unit carries its parts. The dimension and factor of a result are always exact; which of two units of
// one kind shows is a choice (the first). Used by the checker and the vocabulary.

import { type Dimension, dimension, isPlain, multiplyDimensions, NONE, powerOfDimension } from './dimension.ts';
import { doubles, multiplyRatios, powerRatio, WHOLE } from './ratio.ts';
import { type Atom, isMixed, listed, ONE, PERCENT } from './table.ts';
import type { Unit } from './unit.ts';

export { ONE, PERCENT };

/** One factor of a compound unit: ft in lb/ft2 with exponent -2. */
export interface Part {
  readonly unit: Atom;
  readonly exponent: number;
}

interface Compound extends Unit {
  readonly parts: readonly Part[];
}

function isCompound(unit: Unit): unit is Compound {
  return 'parts' in unit;
}

const METRE = listed('m');
const DAY = listed('day');
const CELSIUS_DIFFERENCE = listed('Cdeg');
const FAHRENHEIT_DIFFERENCE = listed('Fdeg');
const MONEY_UNIT: Atom = {
  symbol: 'money',
  dimension: dimension({ money: 1 }),
  numerator: 1,
  denominator: 1,
  offset: 0,
};

/** The unit of the difference of two temperatures: Cdeg for degC, Fdeg for degF; any other unit as it is. */
export function differenceUnit(unit: Unit): Unit {
  if (unit.offset === 0) return unit;
  return unit.symbol === 'degF' ? FAHRENHEIT_DIFFERENCE : CELSIUS_DIFFERENCE;
}

/** What a unit is made of; a temperature scale counts as its difference, '2 ft 6 in' as feet, ONE is made of nothing. */
export function partsOf(unit: Unit): readonly Part[] {
  if (isCompound(unit)) return unit.parts;
  if (unit.symbol === '') return [];
  if (isMixed(unit)) return [{ unit: unit.larger, exponent: 1 }];
  return [{ unit: differenceUnit(unit), exponent: 1 }];
}

/** The unit of these parts as they stand; equal parts are drawn together, nothing else is changed. */
export function unitOfParts(parts: readonly Part[]): Unit {
  const merged = drawTogether(parts, (unit) => unit.symbol);
  const [only] = merged;
  if (only === undefined) return ONE;
  if (merged.length === 1 && only.exponent === 1) return only.unit;
  if (merged.some(isBeyondUse)) return canonicalUnit(dimensionOf(merged));
  let size = WHOLE;
  for (const { unit, exponent } of merged) {
    const own = { numerator: BigInt(unit.numerator), denominator: BigInt(unit.denominator) };
    size = multiplyRatios(size, powerRatio(own, exponent));
  }
  const compound: Compound = {
    symbol: symbolOf(merged),
    dimension: dimensionOf(merged),
    ...doubles(size),
    offset: 0,
    parts: merged,
  };
  return compound;
}

function dimensionOf(parts: readonly Part[]): Dimension {
  return parts.reduce(
    (product, { unit, exponent }) => multiplyDimensions(product, powerOfDimension(unit.dimension, exponent)),
    NONE,
  );
}

/** Powers so high that exact factors would fill the memory; nobody writes them on purpose. */
function isBeyondUse({ unit, exponent }: Part): boolean {
  return unit.numerator !== unit.denominator && Math.abs(exponent) > 12;
}

function symbolOf(parts: readonly Part[]): string {
  const degreeDays = degreeDaySymbol(parts);
  if (degreeDays !== undefined) return degreeDays;
  const above = parts.filter((part) => part.exponent > 0).map(({ unit, exponent }) => unit.symbol + raised(exponent));
  const below = parts
    .filter((part) => part.exponent < 0)
    .map(({ unit, exponent }) => `/${unit.singular ?? unit.symbol}${raised(-exponent)}`);
  return (above.length === 0 ? '1' : above.join('*')) + below.join('');
}

function degreeDaySymbol(parts: readonly Part[]): string | undefined {
  if (parts.length !== 2 || parts.some((part) => part.exponent !== 1)) return undefined;
  if (!parts.some((part) => part.unit.symbol === 'day')) return undefined;
  if (parts.some((part) => part.unit.symbol === 'Cdeg')) return 'degCday';
  return parts.some((part) => part.unit.symbol === 'Fdeg') ? 'degFday' : undefined;
}

function raised(exponent: number): string {
  if (exponent === 1) return '';
  return exponent === 2 || exponent === 3 ? String(exponent) : `^${exponent}`;
}

/** Degree-days: a temperature difference held for a day. */
export const CELSIUS_DAY: Unit = unitOfParts([
  { unit: CELSIUS_DIFFERENCE, exponent: 1 },
  { unit: DAY, exponent: 1 },
]);
export const FAHRENHEIT_DAY: Unit = unitOfParts([
  { unit: FAHRENHEIT_DIFFERENCE, exponent: 1 },
  { unit: DAY, exponent: 1 },
]);

/** The display unit of a product. A share or a counting word gives way to the other unit; % x % stays %. */
export function multiplyUnits(a: Unit, b: Unit): Unit {
  const shareOfPlain = (isShare(a) && b.symbol === '') || (a.symbol === '' && isShare(b));
  return shareOfPlain ? ONE : unitOfParts(simplified([...partsOf(a), ...partsOf(b)]));
}

/** The display unit of a quotient; like by like is a plain number. */
export function divideUnits(a: Unit, b: Unit): Unit {
  return unitOfParts(simplified([...partsOf(a), ...powered(partsOf(b), -1)]));
}

/** The display unit of a power, the exponent a finite number; the root of an acre shows in ft, of a hectare in m. */
export function powerUnit(a: Unit, exponent: number): Unit {
  if (exponent === 1) return a;
  return isPlain(a.dimension) || !Number.isFinite(exponent)
    ? ONE
    : unitOfParts(simplified(powered(partsOf(a), exponent)));
}

/** The unit in which values of a dimension are stored, factor 1: m, kg, day, Cdeg, money and their products. */
export function canonicalUnit(of: Dimension): Unit {
  const parts: readonly Part[] = [
    { unit: MONEY_UNIT, exponent: of.money },
    { unit: listed('kg'), exponent: of.mass },
    { unit: METRE, exponent: of.length },
    { unit: CELSIUS_DIFFERENCE, exponent: of.temperature },
    { unit: DAY, exponent: of.time },
  ];
  return unitOfParts(parts);
}

function powered(parts: readonly Part[], exponent: number): readonly Part[] {
  return parts.map((part) => {
    const raisedTo = part.exponent * exponent;
    if (Number.isInteger(raisedTo) || part.unit.root === undefined) return { unit: part.unit, exponent: raisedTo };
    return { unit: listed(part.unit.root), exponent: part.unit.dimension.length * raisedTo };
  });
}

function isShare(unit: Unit): boolean {
  return isPlain(unit.dimension) && unit.numerator !== unit.denominator;
}

/** Parts with the same name of kind become one, shown in the first one's unit; what cancels goes. */
function drawTogether(parts: readonly Part[], kindOf: (unit: Atom) => string): Part[] {
  const byKind = new Map<string, Part>();
  for (const part of parts) {
    const kind = kindOf(part.unit);
    const before = byKind.get(kind);
    byKind.set(kind, before === undefined ? part : { unit: before.unit, exponent: before.exponent + part.exponent });
  }
  return [...byKind.values()].filter((part) => Math.abs(part.exponent) > 1e-9);
}

function simplified(parts: readonly Part[]): readonly Part[] {
  const alike = drawTogether(parts, (unit) => (isPlain(unit.dimension) ? unit.symbol : JSON.stringify(unit.dimension)));
  const lengths = alike.filter((part) => isLengthPower(part.unit));
  const plain = alike.filter((part) => isPlain(part.unit.dimension));
  const settledLengths = settleLengths(lengths);
  const withDimension = alike.flatMap((part) => {
    if (isPlain(part.unit.dimension)) return [];
    if (!isLengthPower(part.unit)) return [part];
    const kept = settledLengths.find((settled) => settled.unit === part.unit);
    return kept === undefined ? [] : [kept];
  });
  return [...settlePlain(plain, withDimension), ...withDimension];
}

function isLengthPower(unit: Atom): boolean {
  const { length, mass, time, temperature, money } = unit.dimension;
  return length > 0 && mass === 0 && time === 0 && temperature === 0 && money === 0;
}

/**
 * Lengths beside named areas and volumes. What cancels goes (lb/acre x ft2 = lb); an area or volume meets a length in the
 * length's unit (acre x in = in3, acre / ft = ft); rates that are written so stay (gal/ft2, bu/acre, ft/acre).
 */
function settleLengths(parts: readonly Part[]): readonly Part[] {
  const line = parts.find((part) => part.unit.dimension.length === 1);
  const named = parts.filter((part) => part !== line);
  if (line === undefined) return totalLength(named) === 0 ? [] : named;
  let power = line.exponent;
  const cancelling = named.findIndex((part) => totalLength([part]) === -power);
  if (cancelling >= 0) return settleLengths(named.filter((_, at) => at !== cancelling));
  const kept: Part[] = [];
  for (const part of named) {
    const own = totalLength([part]);
    if (isRate(part, own, power)) kept.push(part);
    else power += own;
  }
  return power === 0 ? kept : [...kept, { unit: line.unit, exponent: power }];
}

function totalLength(parts: readonly Part[]): number {
  return parts.reduce((sum, part) => sum + part.unit.dimension.length * part.exponent, 0);
}

function isRate(part: Part, own: number, power: number): boolean {
  if (own > 0) return power < 0 && part.unit.dimension.length === 3 && -power < own;
  return power > 0 && power < -own;
}

/** A lone counting word or share shows; beside other units only a counting word does (plants/ft2, g/plant). */
function settlePlain(plain: readonly Part[], withDimension: readonly Part[]): readonly Part[] {
  const words = plain.filter((part) => part.unit.singular !== undefined);
  const above = words.filter((part) => part.exponent > 0);
  const below = words.filter((part) => part.exponent < 0);
  const shares = plain.filter((part) => isShare(part.unit) && part.exponent > 0);
  const oneWord = above.length === 1 && above[0]?.exponent === 1 ? above : [];
  if (withDimension.length === 0) {
    if (oneWord.length === 1) return below.length === 0 ? oneWord : [];
    return words.length === 0 ? shares.slice(0, 1).map(({ unit }) => ({ unit, exponent: 1 })) : [];
  }
  const hasNumerator = withDimension.some((part) => part.exponent > 0);
  if (hasNumerator) return below.slice(0, 1).map(({ unit }) => ({ unit, exponent: -1 }));
  if (oneWord.length === 1) return oneWord;
  return shares.slice(0, 1).map(({ unit }) => ({ unit, exponent: 1 }));
}
