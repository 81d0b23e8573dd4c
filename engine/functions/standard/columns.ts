// Reading whole columns as functions get them: numbers with blanks left out, pairs from two columns, comparison of values. Called by
// the files of this folder whose functions take columns.

import { type CellError, isError, type Scalar } from '../../values/error.ts';
import { firstPlace } from '../../values/first-place.ts';
import { compareNumbers, equalNumbers } from '../../values/tolerance.ts';
import { isList } from '../build.ts';
import { keptFor } from '../kept-for.ts';

/** What a function over columns is given. */
export type Given = readonly (Scalar | readonly Scalar[])[];

/** The argument as a list: a column as it is, a single value as a list of one, one left out as none. */
export function listOf(arg: Scalar | readonly Scalar[] | undefined): readonly Scalar[] {
  if (arg === undefined || arg === null) return [];
  return isList(arg) ? arg : [arg];
}

/** The argument as a number; undefined where it is left out or no number. */
export function numberOf(arg: Scalar | readonly Scalar[] | undefined): number | undefined {
  return typeof arg === 'number' ? arg : undefined;
}

/** The numbers of a column, blanks left out; the first error among them. The same array for the same column: nobody may change it. */
export function numbersOf(arg: Scalar | readonly Scalar[] | undefined): Float64Array | CellError {
  return numbersIn(listOf(arg));
}

const numbersIn = keptFor((list: readonly Scalar[]): Float64Array | CellError => {
  const numbers = new Float64Array(list.length);
  let count = 0;
  for (const entry of list) {
    if (isError(entry)) return entry;
    if (typeof entry === 'number') numbers[count++] = entry;
  }
  return numbers.subarray(0, count);
});

/** Whether reading a column met an error. */
export function isFault(read: Float64Array | Pairs | CellError): read is CellError {
  return 'error' in read;
}

export interface Pairs {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

/** The rows of two columns in which both hold a number; the first error among them. The same for the same columns. */
export function pairsOf(
  xColumn: Scalar | readonly Scalar[] | undefined,
  yColumn: Scalar | readonly Scalar[] | undefined,
): Pairs | CellError {
  return pairsWith(listOf(xColumn))(listOf(yColumn));
}

const pairsWith = keptFor((x: readonly Scalar[]) => keptFor((y: readonly Scalar[]) => pairsIn(x, y)));

function pairsIn(x: readonly Scalar[], y: readonly Scalar[]): Pairs | CellError {
  const xs = new Float64Array(x.length);
  const ys = new Float64Array(x.length);
  let count = 0;
  for (let row = 0; row < x.length; row += 1) {
    const one = x[row] ?? null;
    const other = y[row] ?? null;
    if (isError(one)) return one;
    if (isError(other)) return other;
    if (typeof one !== 'number' || typeof other !== 'number') continue;
    xs[count] = one;
    ys[count++] = other;
  }
  return { xs: xs.subarray(0, count), ys: ys.subarray(0, count) };
}

/**
 * Negative, 0 or positive as a is below, equal to or above b: numbers with dust forgiven, texts ignoring case, no before yes;
 * undefined for values of unlike types, blanks and errors.
 */
export function compareValues(a: Scalar, b: Scalar): number | undefined {
  if (typeof a === 'number' && typeof b === 'number') return compareNumbers(a, b);
  if (typeof a === 'boolean' && typeof b === 'boolean') return Number(a) - Number(b);
  if (typeof a !== 'string' || typeof b !== 'string') return undefined;
  const one = a.toLowerCase();
  const other = b.toLowerCase();
  return one === other ? 0 : one < other ? -1 : 1;
}

/** Where the first value of a list in order stands for which a test holds that holds for all after it too; the length where for none. */
export function firstWhere<T>(rising: ArrayLike<T>, holds: (one: T) => boolean): number {
  return firstPlace(0, rising.length, (place) => !holds(rising[place] as T));
}

/** Where the numbers begin that are not below one, and where those that are above it: what lies between is equal to it, dust forgiven. */
export function equalPlaces(rising: Float64Array, wanted: number): readonly [number, number] {
  return [
    firstWhere(rising, (one) => one >= wanted || equalNumbers(one, wanted)),
    firstWhere(rising, (one) => one > wanted && !equalNumbers(one, wanted)),
  ];
}
