// Text: cutting, finding, replacing letters. A letter is one Unicode character, however it is stored. Read by standard/index.ts;
// pieces between separators stand in pieces.ts, TEXT and the joining of numbers in text-format.ts and joining.ts.

import { isError, type Scalar } from '../../values/error.ts';
import { LONGEST_TEXT, tooLongText } from '../../values/plain-text.ts';
import { tolerantFloor } from '../../values/tolerance.ts';
import { anything, failure, makers, needed, optional, plain, takes, text, yesno } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { smallLetters, wildcardPlace } from './wildcards.ts';

const make = makers('text');

const TOO_LONG = tooLongText('repeat or replace less');
const BELOW_ZERO = failure('value', 'A number of letters can not be below 0: check the count.');
const BEFORE_START = failure('value', 'Places in a text are counted from 1: check the start.');
const NOT_FOUND = failure('missing', 'The text looked for does not occur.');

const SURROGATE = /[\uD800-\uDFFF]/;

/** The letters of a text where some take two units of storage; undefined where each takes one, so that it can be cut as it is. */
function wideLetters(whole: string): readonly string[] | undefined {
  return SURROGATE.test(whole) ? Array.from(whole) : undefined;
}

function lettersIn(whole: string): number {
  return wideLetters(whole)?.length ?? whole.length;
}

/** Letters `from` (inclusive, from 0) to `to` (exclusive). */
function cut(whole: string, from: number, to: number): string {
  return wideLetters(whole)?.slice(from, to).join('') ?? whole.slice(from, to);
}

function textOf(arg: Scalar | undefined): string {
  return typeof arg === 'string' ? arg : '';
}

/** A whole number among the arguments, cut off towards below; `otherwise` where left out. */
function wholeOf(arg: Scalar | undefined, otherwise: number): number {
  return typeof arg === 'number' ? tolerantFloor(arg) : otherwise;
}

function left([whole, count]: readonly Scalar[]): Scalar {
  const size = wholeOf(count, 1);
  return size < 0 ? BELOW_ZERO : cut(textOf(whole), 0, size);
}

function right([whole, count]: readonly Scalar[]): Scalar {
  const size = wholeOf(count, 1);
  if (size < 0) return BELOW_ZERO;
  const letters = lettersIn(textOf(whole));
  return cut(textOf(whole), Math.max(0, letters - size), letters);
}

function mid([whole, start, count]: readonly Scalar[]): Scalar {
  const from = wholeOf(start, 1) - 1;
  const size = wholeOf(count, 0);
  if (from < 0) return BEFORE_START;
  return size < 0 ? BELOW_ZERO : cut(textOf(whole), from, from + size);
}

function notTooLong(made: string): Scalar {
  return made.length > LONGEST_TEXT ? TOO_LONG : made;
}

function replace([whole, start, count, insert]: readonly Scalar[]): Scalar {
  const from = wholeOf(start, 1) - 1;
  const size = wholeOf(count, 0);
  if (from < 0) return BEFORE_START;
  if (size < 0) return BELOW_ZERO;
  const base = textOf(whole);
  return notTooLong(cut(base, 0, from) + textOf(insert) + cut(base, from + size, lettersIn(base)));
}

function repeat([whole, times]: readonly Scalar[]): Scalar {
  const count = wholeOf(times, 0);
  if (count < 0) return BELOW_ZERO;
  const unit = textOf(whole);
  return unit.length * count > LONGEST_TEXT ? TOO_LONG : unit.repeat(count);
}

function substitute([whole, old, fresh, which]: readonly Scalar[]): Scalar {
  const base = textOf(whole);
  const from = textOf(old);
  if (from === '') return base;
  if (typeof which !== 'number') {
    const pieces = base.split(from);
    const length = base.length + (pieces.length - 1) * (textOf(fresh).length - from.length);
    return length > LONGEST_TEXT ? TOO_LONG : pieces.join(textOf(fresh));
  }
  const wanted = wholeOf(which, 1);
  if (wanted < 1) return failure('value', 'Occurrences are counted from 1: check the last argument.');
  let at = -1;
  for (let seen = 0; seen < wanted; seen += 1) {
    at = base.indexOf(from, at === -1 ? 0 : at + from.length);
    if (at === -1) return base;
  }
  return notTooLong(base.slice(0, at) + textOf(fresh) + base.slice(at + from.length));
}

/** The place (from 1) of the first match at or after the start; `seek` gives the place in storage, -1 for none. */
function place(args: readonly Scalar[], seek: (whole: string, wanted: string, from: number) => number): Scalar {
  const [wanted, within, start] = args;
  const whole = textOf(within);
  const first = wholeOf(start, 1);
  if (first < 1) return BEFORE_START;
  const from = cut(whole, 0, first - 1).length;
  const found = first - 1 > lettersIn(whole) ? -1 : seek(whole, textOf(wanted), from);
  return found === -1 ? NOT_FOUND : lettersIn(whole.slice(0, found)) + 1;
}

function seekExactly(whole: string, wanted: string, from: number): number {
  return whole.indexOf(wanted, from);
}

function seekLoosely(whole: string, wanted: string, from: number): number {
  const found = wildcardPlace(wanted, smallLetters(whole), lettersIn(whole.slice(0, from)));
  return found === -1 ? -1 : cut(whole, 0, found).length;
}

function proper(whole: string): string {
  return whole.toLowerCase().replace(/\p{L}+/gu, (word) => {
    const [first = ''] = word;
    return first.toUpperCase() + word.slice(first.length);
  });
}

/** The letter of a code; undefined where there is none. */
function letterOf(code: Scalar | undefined, most: number): string | undefined {
  const whole = wholeOf(code, 0);
  if (whole < 1 || whole > most || (whole >= 0xd800 && whole <= 0xdfff)) return undefined;
  return String.fromCodePoint(whole);
}

function codeOf(whole: Scalar | undefined): Scalar {
  return textOf(whole).codePointAt(0) ?? failure('value', 'An empty text has no first letter.');
}

const TEXT_ALONE = takes(needed('text', text));

function changed(name: string, doc: string, section: string, change: (whole: string) => string): FunctionDefinition {
  return make.scalar(name, doc, section, TEXT_ALONE, text, ([whole]) => change(textOf(whole)));
}

export const TEXTS: readonly FunctionDefinition[] = [
  make.scalar(
    'LEFT',
    'The first letters of a text; one where left out.',
    '6.20.12',
    takes(needed('text', text), optional('letters', plain)),
    text,
    left,
  ),
  make.scalar(
    'RIGHT',
    'The last letters of a text; one where left out.',
    '6.20.19',
    takes(needed('text', text), optional('letters', plain)),
    text,
    right,
  ),
  make.scalar(
    'MID',
    'So many letters of a text from a place on; the first place is 1.',
    '6.20.15',
    takes(needed('text', text), needed('start', plain), needed('letters', plain)),
    text,
    mid,
  ),
  make.scalar('LEN', 'How many letters a text has.', '6.20.13', TEXT_ALONE, plain, ([whole]) =>
    lettersIn(textOf(whole)),
  ),
  changed('TRIM', 'Without blanks at either end, and one blank between words.', '6.20.24', (whole) =>
    whole.replace(/ +/g, ' ').replace(/^ | $/g, ''),
  ),
  changed('CLEAN', 'Without letters that can not be printed.', '6.20.4', (whole) => whole.replace(/\p{Cc}/gu, '')),
  changed('UPPER', 'In capitals.', '6.20.27', (whole) => whole.toUpperCase()),
  changed('LOWER', 'In small letters.', '6.20.14', (whole) => whole.toLowerCase()),
  changed('PROPER', 'Each word with a capital first.', '6.20.16', proper),
  make.scalar(
    'REPLACE',
    'With so many letters from a place on replaced by others.',
    '6.20.17',
    takes(needed('text', text), needed('start', plain), needed('letters', plain), needed('new', text)),
    text,
    replace,
  ),
  make.scalar(
    'REPT',
    'A text so many times over.',
    '6.20.18',
    takes(needed('text', text), needed('times', plain)),
    text,
    repeat,
  ),
  make.scalar(
    'SUBSTITUTE',
    'With every occurrence of a text replaced by another; or only the first, second ... where a number is given.',
    '6.20.21',
    takes(needed('text', text), needed('old', text), needed('new', text), optional('which', plain)),
    text,
    substitute,
  ),
  make.scalar(
    'FIND',
    'The place of a text within another, from 1; capitals matter.',
    '6.20.9',
    takes(needed('wanted', text), needed('text', text), optional('start', plain)),
    plain,
    (args) => place(args, seekExactly),
  ),
  make.scalar(
    'SEARCH',
    'The place of a text within another, from 1; capitals do not matter, ? stands for a letter, * for any letters.',
    '6.20.20',
    takes(needed('wanted', text), needed('text', text), optional('start', plain)),
    plain,
    (args) => place(args, seekLoosely),
  ),
  make.scalar(
    'EXACT',
    'Whether two texts are the same to the letter, capitals too.',
    '6.20.8',
    takes(needed('one', text), needed('other', text)),
    yesno,
    ([one, other]) => one === other,
  ),
  make.scalar('CODE', 'The number of the first letter in the Unicode table.', '6.20.5', TEXT_ALONE, plain, ([whole]) =>
    codeOf(whole),
  ),
  make.scalar(
    'UNICODE',
    'The number of the first letter in the Unicode table.',
    '6.20.26',
    TEXT_ALONE,
    plain,
    ([whole]) => codeOf(whole),
  ),
  make.scalar(
    'CHAR',
    'The letter with a number from 1 to 255.',
    '6.20.3',
    takes(needed('code', plain)),
    text,
    ([code]) => letterOf(code, 255) ?? failure('value', 'CHAR knows letters 1 to 255; UNICHAR knows them all.'),
  ),
  make.scalar(
    'UNICHAR',
    'The letter with a number in the Unicode table.',
    '6.20.25',
    takes(needed('code', plain)),
    text,
    ([code]) => letterOf(code, 0x10ffff) ?? failure('value', 'No letter has this number.'),
  ),
  make.other(
    'T',
    'The text itself; an empty text for anything else.',
    '6.20.22',
    takes(needed('value', anything)),
    text,
    {
      lane: 'by type',
      choose: ([value]) => {
        const isText = value?.type?.kind === 'text' || value?.type?.kind === 'choice';
        return {
          lane: 'scalar',
          blanks: 'given',
          compute: ([given]) => (given !== undefined && isError(given) ? given : isText ? textOf(given) : ''),
        };
      },
    },
  ),
];
