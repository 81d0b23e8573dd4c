// Conditions on a column, read once where they are written: blanks round the value don't matter, only what is joined with &
// is cut after its comparison, and each sentence where a value can't be read. Columns of the invented plan's Plantings.

import { describe, expect, test } from 'vitest';
import { splitCondition } from '../../engine/language/conditions.ts';
import type { Typed } from '../../engine/language/typed.ts';
import { TEXT, YESNO } from '../../engine/values/type.ts';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { checked, inUnit } from './plan.ts';

function condition(column: string, text: string): Typed | undefined {
  const typed = checked(`COUNTIF(Plantings[${column}]; ${text})`);
  return typed.node === 'call' ? typed.args[1] : undefined;
}

test.each<readonly [string, string | undefined, string]>([
  ['>=8 in', '>=', '8 in'],
  ['<=8 in', '<=', '8 in'],
  ['<>late', '<>', 'late'],
  ['>8', '>', '8'],
  ['<8', '<', '8'],
  ['=8', '=', '8'],
  ['  > 8', '>', ' 8'],
  ['== 8', '=', '= 8'],
  ['late', undefined, 'late'],
  [' late >', undefined, ' late >'],
  ['', undefined, ''],
])('%s is cut after its comparison', (text, comparison, rest) => {
  expect(splitCondition(text)).toEqual({ comparison, rest });
});

describe('what a condition becomes', () => {
  test.each<readonly [string, string, string, Record<string, unknown>]>([
    ['Length', '">= 8 in "', '>=', { node: 'constant', value: expect.closeTo(0.2032, 12), type: inUnit('in') }],
    ['Length', '"0"', '=', { node: 'constant', value: 0, type: inUnit('ft') }],
    ['Length', '" "', '=', { node: 'blank', type: inUnit('ft') }],
    ['Length', '"<> "', '<>', { node: 'blank', type: inUnit('ft') }],
    ['Sown', '"= 1970-01-03 "', '=', { node: 'constant', value: 2, type: { kind: 'date' } }],
    ['Treated', '"<> no "', '<>', { node: 'constant', value: false, type: YESNO }],
    ['Treated', '"0"', '=', { node: 'constant', value: false }],
    ['Treated', '"=" = [Note]', '=', { node: 'binary', operator: '=', left: { value: '=' } }],
    ['Start', '"<>sets"', '<>', { node: 'constant', value: 'sets', type: TEXT }],
    ['Start', '"blocks"', '=', { node: 'constant', value: 'blocks', type: TEXT }],
    ['Note', '[Note] & ">"', '=', { node: 'binary', left: { node: 'cell' }, right: { value: '>' } }],
    ['Note', '">=" & [Note] & [Cover]', '>=', { left: { column: 'note' }, right: { column: 'cover' } }],
    ['Variety', '"=" & [Variety]', '=', { node: 'cell', column: 'variety' }],
    ['Variety', '[Bed] & ""', '=', { node: 'binary', left: { node: 'key' } }],
    ['Rows', '-3', '=', { node: 'constant', value: -3 }],
    ['Rows', '[Rows] + 1', '=', { node: 'binary', operator: '+' }],
  ])('%s: %s', (column, text, comparison, value) => {
    expect(condition(column, text)).toMatchObject({ node: 'condition', comparison, value, type: YESNO });
  });

  test('its value stands where the whole condition stands', () => {
    expect(condition('Length', '">0 in"')).toMatchObject({ from: 27, to: 34, value: { from: 27, to: 34 } });
    expect(condition('Note', '">xy"')).toMatchObject({ from: 25, to: 30, value: { from: 25, to: 30 } });
    expect(condition('Seeds', '"<>"')).toMatchObject({ from: 26, to: 30, value: { from: 26, to: 30 } });
    expect(condition('Sown', '">1970-01-03"')).toMatchObject({ value: { from: 25, to: 38 } });
    expect(condition('Treated', '"yes"')).toMatchObject({ value: { from: 28, to: 33 } });
  });
});

describe('sentences', () => {
  test.each<Case>([
    [
      'COUNTIF(Plantings[Length]; "tall ")',
      '"tall "',
      'Plantings[Length] is a length (ft): after the quote a number is wanted, not tall. To compare with a value, write "=" & and the value.',
    ],
    [
      'COUNTIF(Plantings[Length]; "> 5 bananas ")',
      '"> 5 bananas "',
      'Plantings[Length] is a length (ft): bananas is not a unit that Dibble knows.',
    ],
    [
      'COUNTIF(Plantings[Length]; ">= 8 inchs")',
      '">= 8 inchs"',
      'Plantings[Length] is a length (ft): inchs is not a unit that Dibble knows; the nearest is in.',
    ],
    [
      'COUNTIF(Plantings[Length]; "> 5 + 3")',
      '"> 5 + 3"',
      'Plantings[Length] is a length (ft): after > a number is wanted, not 5 + 3. To compare with a value, write ">" & and the value.',
    ],
    [
      'COUNTIF(Plantings[Length]; " 8 ")',
      '" 8 "',
      'Plantings[Length] is a length (ft), 8 is a plain number: write "8 ft".',
      'COUNTIF(Plantings[Length]; "8 ft")',
    ],
    [
      'COUNTIF(Plantings[Length]; "<> -8 lb ")',
      '"<> -8 lb "',
      'Plantings[Length] is a length (ft), -8 lb is a mass (lb).',
    ],
    [
      'COUNTIF(Plantings[Sown]; "May")',
      '"May"',
      'Plantings[Sown] is a date: write it as year-month-day, "2027-03-15", or as "=" & DATE(2027; 3; 15).',
    ],
    ['COUNTIF(Plantings[Note]; "< ")', '"< "', 'Something is missing after < in this condition.'],
    [
      "COUNTIF('Seed lots'[Quantity]; [Sown])",
      '[Sown]',
      "'Seed lots'[Quantity] is a plain number (seeds), [Sown] is a date: they can't be compared.",
    ],
    [
      'COUNTIF(Plantings[Treated]; [Rows] > 1 > 2)',
      '[Rows] > 1 > 2',
      'Compare two things at a time: AND([Rows] > 1; 1 > 2).',
      'COUNTIF(Plantings[Treated]; AND([Rows] > 1; 1 > 2))',
    ],
  ])('%s', (...one) => expectDiagnostic(one));
});
