// Pieces of a text between separators: what stands before or after one, and the n-th piece. A formula gives one value, so
// TEXTSPLIT names which piece it wants. Read by standard/index.ts.

import type { Scalar } from '../../values/error.ts';
import { tolerantFloor } from '../../values/tolerance.ts';
import { failure, makers, needed, optional, plain, takes, text } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';

const make = makers('text');

const COMMON = 'common spreadsheet practice';
const NO_SEPARATOR = failure('value', 'Name the separator: an empty text stands between all letters.');
const NO_INSTANCE = failure('value', 'Separators are counted from 1, or from the end with -1: 0 is none.');
const NO_PIECE = failure('value', 'Pieces are counted from 1, or from the end with -1: 0 is none.');
const NOT_THERE = failure('missing', 'The text has no such separator: check it, or say at the end what to give then.');
const TOO_FEW = failure('missing', 'The text has fewer pieces.');

function textOf(arg: Scalar | undefined): string {
  return typeof arg === 'string' ? arg : '';
}

function wholeOf(arg: Scalar | undefined, otherwise: number): number {
  return typeof arg === 'number' ? tolerantFloor(arg) : otherwise;
}

/** Capitals made small where they count alike, and only where that moves no letter. */
function comparable(whole: string, alike: boolean): string {
  const small = alike ? whole.toLowerCase() : whole;
  return small.length === whole.length ? small : whole;
}

/** Where the separators begin, from the start of the text. */
function separatorsIn(whole: string, separator: string): number[] {
  const places: number[] = [];
  for (let at = whole.indexOf(separator); at >= 0; at = whole.indexOf(separator, at + separator.length))
    places.push(at);
  return places;
}

type Side = (whole: string, at: number, separator: string) => string;

/** TEXTBEFORE and TEXTAFTER, which differ in the side they give. */
function beside(side: Side): (args: readonly Scalar[]) => Scalar {
  return ([given, wanted, instance, mode, atEnd, otherwise]) => {
    const whole = textOf(given);
    const which = wholeOf(instance, 1);
    const separator = textOf(wanted);
    if (separator === '') return NO_SEPARATOR;
    if (which === 0) return NO_INSTANCE;
    const alike = wholeOf(mode, 0) !== 0;
    const places = separatorsIn(comparable(whole, alike), comparable(separator, alike));
    if (wholeOf(atEnd, 0) !== 0) {
      // Before the end stands the whole text, after it nothing; counted from the end it is the start that stands in.
      if (which > 0) places.push(whole.length);
      else places.unshift(-separator.length);
    }
    const at = places.at(which > 0 ? which - 1 : which);
    const found = which > 0 ? places.length >= which : places.length >= -which;
    if (!found || at === undefined) return typeof otherwise === 'string' ? otherwise : NOT_THERE;
    return side(whole, at, separator);
  };
}

function piece([given, wanted, which]: readonly Scalar[]): Scalar {
  const separator = textOf(wanted);
  const place = wholeOf(which, 1);
  if (separator === '') return NO_SEPARATOR;
  if (place === 0) return NO_PIECE;
  return (
    textOf(given)
      .split(separator)
      .at(place > 0 ? place - 1 : place) ?? TOO_FEW
  );
}

const BESIDE = takes(
  needed('text', text),
  needed('separator', text),
  optional('which', plain),
  optional('capitals_alike', plain),
  optional('end_counts', plain),
  optional('otherwise', text),
);

export const PIECES: readonly FunctionDefinition[] = [
  make.scalar(
    'TEXTBEFORE',
    'What stands before a separator: the first, the second ... or with -1 the last; 1 as the fourth takes capitals alike, as the fifth the end of the text for one more separator; the last is given where there is none.',
    COMMON,
    BESIDE,
    text,
    beside((whole, at) => whole.slice(0, Math.max(0, at))),
  ),
  make.scalar(
    'TEXTAFTER',
    'What stands after a separator, counted as in TEXTBEFORE: TEXTAFTER([Lot]; "-").',
    COMMON,
    BESIDE,
    text,
    beside((whole, at, separator) => whole.slice(at + separator.length)),
  ),
  make.scalar(
    'TEXTSPLIT',
    'One piece of a text between separators, from 1, or from the end with -1: TEXTSPLIT("3-B-12"; "-"; 2) is B. A formula gives one value, so the piece is named.',
    COMMON,
    takes(needed('text', text), needed('separator', text), needed('piece', plain)),
    text,
    piece,
  ),
];
