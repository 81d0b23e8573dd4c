// Between the plain figures of a scratch paper and the engine's: numbers in a said unit, days counted as spreadsheets do.

import { fromCanonical, isError, type Scalar, toCanonical, type Unit } from '../../engine/index.ts';

/** From the day that spreadsheets count from, 30 December 1899, to 1 January 1970. */
const DAYS_BEFORE = 25_569;

/** A civil day as spreadsheets count days. */
export function serialOf(civil: number): number {
  return civil + DAYS_BEFORE;
}

/** The civil day of a spreadsheet's day; the time of day is left off. */
export function civilOf(serial: number): number {
  return Math.floor(serial) - DAYS_BEFORE;
}

/** What a value is, for turning it: a number in a unit, a day, or as it stands. */
export type Measure =
  | { readonly is: 'number'; readonly unit: Unit }
  | { readonly is: 'date' }
  | { readonly is: 'as is' };

export const AS_IS: Measure = { is: 'as is' };

/** A canonical value as a plain figure. Numbers lose the dust of turning units. */
export function plainFigure(value: Scalar, measure: Measure): Scalar {
  if (typeof value !== 'number' || isError(value)) return value;
  if (measure.is === 'date') return serialOf(value);
  if (measure.is === 'as is') return value;
  const { unit } = measure;
  const isCanonical = unit.numerator === unit.denominator && unit.offset === 0;
  return isCanonical ? value : Number(fromCanonical(unit, value).toPrecision(15));
}

export function canonicalFigure(value: Scalar, measure: Measure): Scalar {
  if (typeof value !== 'number') return value;
  if (measure.is === 'date') return civilOf(value);
  return measure.is === 'as is' ? value : toCanonical(measure.unit, value);
}

/** Whether a figure as a paper shows it reads as a number, in whatever locale, not as a day. */
export function readsAsNumber(text: string): boolean {
  return /^[-+\d.,%\s'\u2019e]+$/.test(text);
}
