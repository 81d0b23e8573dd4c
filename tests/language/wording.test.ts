// The words that diagnostics are made of: parts quoted and cut, amounts of a unit that a formula can read again, parentheses
// only where they are needed, signatures with the places of their parameters; and how a diagnostic stops the work.

import { describe, expect, test } from 'vitest';
import { parseFormula } from '../../engine/language/parser.ts';
import { caught, Refused, refuse } from '../../engine/language/refuse.ts';
import type { Tree } from '../../engine/language/tree.ts';
import { unknownUnit } from '../../engine/language/unknown-unit.ts';
import {
  amountText,
  literalNumber,
  operandText,
  quote,
  signatureText,
  signatureWithPlaces,
  typeInWords,
} from '../../engine/language/wording.ts';
import { canonicalUnit } from '../../engine/units/arithmetic.ts';
import { AREA } from '../../engine/units/dimension.ts';
import { DATE } from '../../engine/values/type.ts';
import { checked, FUNCTIONS, inUnit, isUnitHere, vocabulary } from './plan.ts';

function treeOf(formula: string): Tree {
  const parsed = parseFormula(formula, isUnitHere);
  if (!parsed.ok) throw new Error(parsed.diagnostic.why);
  return parsed.tree;
}

test.each([
  ['"123456789 123456789 123456789 123456789 123456"', '"123456789 123456789 123456789 123456789 123456"'],
  ['"123456789 123456789 123456789 123456789 1234567"', '"123456789 123456789 123456789 123456789 123 ...'],
  ['"123456789 123456789 123456789 123456789    5678"', '"123456789 123456789 123456789 123456789 ...'],
])('%s is quoted up to 48 letters', (formula, quoted) => {
  expect(quote(treeOf(formula))).toBe(quoted);
});

test.each([
  ['5', '5'],
  ['-5', '-5'],
  ['+5', undefined],
  ['5%', undefined],
  ['-[Rows]', undefined],
  ['5 ft', undefined],
  ['"5"', undefined],
])('%s is a number written out: %s', (formula, text) => {
  expect(literalNumber(treeOf(formula))).toBe(text);
});

test.each([
  ['in', '2 in'],
  ['lb/ft', '2 lb/ft'],
  ['1/ft', '2 / 1 ft'],
  ['1/ft2', '2 / 1 ft2'],
  ['lb*ft', undefined],
  ['%', undefined],
  ['', undefined],
])('two of %s', (symbol, text) => {
  const type = inUnit(symbol);
  expect(type.kind === 'number' ? amountText('2', type.unit) : '').toBe(text);
});

test('two of units that only a quotient has', () => {
  const { type } = checked('1 / [Length] / [Mass]');
  expect(type).toMatchObject({ unit: { symbol: '1/ft/lb' } });
  expect(type.kind === 'number' ? amountText('2', type.unit) : '').toBe(undefined);
  expect(amountText('2', canonicalUnit(AREA))).toBe('2 m2');
});

test.each([
  ['[Rows] + 1', '([Rows] + 1)'],
  ['[Rows]', '[Rows]'],
  ['-[Rows]', '-[Rows]'],
  ['SUM(1; 2)', 'SUM(1; 2)'],
])('%s beside an operator', (formula, text) => {
  expect(operandText(treeOf(formula))).toBe(text);
});

test('types with their unit, where they have one', () => {
  expect([inUnit('in'), inUnit(''), inUnit('degF'), DATE].map(typeInWords)).toEqual([
    'a length (in)',
    'a plain number',
    'a temperature (degF)',
    'a date',
  ]);
});

test.each([
  ['IF', 'IF(condition; then; [otherwise])', ['condition', 'then', '[otherwise]']],
  ['SUMIFS', 'SUMIFS(total; range; condition; ...)', ['total', 'range', 'condition']],
  ['TODAY', 'TODAY()', []],
])('the signature of %s', (name, text, parameters) => {
  const signature = FUNCTIONS.get(name);
  if (signature === undefined) throw new Error(`${name} is missing`);
  const { places } = signatureWithPlaces(signature);
  expect(signatureText(signature)).toBe(text);
  expect(places.map(({ from, to }) => text.slice(from, to))).toEqual(parameters);
});

describe('a diagnostic', () => {
  const span = { from: 2, to: 5, more: 'unsaid' };

  test('has its place and its sentence, and a fix only where there is one', () => {
    expect(caught(() => refuse(span, 'No.'))).toStrictEqual({
      ok: false,
      diagnostic: { from: 2, to: 5, why: 'No.' },
    });
    expect(caught(() => refuse(span, 'No.', 'yes'))).toStrictEqual({
      ok: false,
      diagnostic: { from: 2, to: 5, why: 'No.', fix: { text: 'yes', span: { from: 2, to: 5 } } },
    });
    const elsewhere = { text: 'yes', span: { from: 7, to: 8 } };
    expect(caught(() => refuse(span, 'No.', elsewhere))).toStrictEqual({
      ok: false,
      diagnostic: { from: 2, to: 5, why: 'No.', fix: elsewhere },
    });
  });

  test('is told apart from a fault of the program, which goes on up', () => {
    expect(() => refuse(span, 'No.')).toThrow(Refused);
    expect(() => refuse(span, 'No.')).toThrow('No.');
    expect(() =>
      caught(() => {
        throw new RangeError('too deep');
      }),
    ).toThrow(RangeError);
    expect(caught(() => 7)).toStrictEqual({ ok: true, value: 7 });
  });
});

test('a word that is no unit: what it is near, why it is none, or only that it is unknown', () => {
  expect(unknownUnit('inchs', vocabulary)).toStrictEqual({
    why: 'inchs is not a unit that Dibble knows; the nearest is in.',
    fix: 'in',
  });
  expect(unknownUnit('qqqqqqqq', vocabulary)).toStrictEqual({ why: 'qqqqqqqq is not a unit that Dibble knows.' });
  expect(unknownUnit('month', vocabulary)).toStrictEqual({
    why: 'A month has no fixed length: write days or weeks (30 days, 4 weeks), or move a date by months with EDATE.',
  });
  expect(unknownUnit('F', vocabulary)).toMatchObject({ fix: 'degF' });
});
