// Why two parts don't go together, and what to write instead: rewriting what is written out as the type that is wanted, the
// way from one quantity to another, and comparisons. Formulas stand in the sheet Plantings of the invented plan.

import { describe, expect, test } from 'vitest';
import { parseFormula } from '../../engine/language/parser.ts';
import type { Tree } from '../../engine/language/tree.ts';
import { asOther, rewritten } from '../../engine/language/unlike.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { checked, choice, diagnosticOf, inUnit, isUnitHere, link } from './plan.ts';

function treeOf(formula: string): Tree {
  const parsed = parseFormula(formula, isUnitHere);
  if (!parsed.ok) throw new Error(parsed.diagnostic.why);
  return parsed.tree;
}

const VARIETY = link('Varieties');

describe('what is written out, as another type', () => {
  test.each<readonly [string, ValueType, string | undefined]>([
    ['5', inUnit('ft'), '5 ft'],
    ['-5', inUnit('ft'), '-5 ft'],
    ['5', inUnit('1/ft'), '5 / 1 ft'],
    ['5', inUnit(''), undefined],
    ['5', inUnit('lb*ft'), undefined],
    ['"5"', inUnit('ft'), undefined],
    ['[Rows]', inUnit('ft'), undefined],
    ['20', inUnit('degC'), '20 degC'],
    ['"20"', inUnit('degC'), undefined],
    ['"2027-03-15"', DATE, 'DATE(2027; 3; 15)'],
    ['"15 March"', DATE, undefined],
    ['20270315', DATE, undefined],
    ['"Yes"', YESNO, 'TRUE'],
    ['"true"', YESNO, 'TRUE'],
    ['1', YESNO, 'TRUE'],
    ['"No"', YESNO, 'FALSE'],
    ['"FALSE"', YESNO, 'FALSE'],
    ['0', YESNO, 'FALSE'],
    ['2', YESNO, undefined],
    ['"maybe"', YESNO, undefined],
    ['5', TEXT, '"5"'],
    ['5', choice('5', '6'), '"5"'],
    ['-5', VARIETY, '"-5"'],
    ['[Rows]', TEXT, undefined],
  ])('%s', (formula, wanted, other) => {
    expect(asOther(treeOf(formula), wanted)).toBe(other);
  });
});

describe('any part, as another type', () => {
  test.each<readonly [string, ValueType, string | undefined]>([
    ['5', inUnit('ft'), '5 ft'],
    ['[Rows]', TEXT, '[Rows] & ""'],
    ['[Rows] + 1', TEXT, '([Rows] + 1) & ""'],
    ['[Sown]', TEXT, '[Sown] & ""'],
    ['[Rows]', YESNO, '[Rows] <> 0'],
    ['[Rows] - 1', YESNO, '([Rows] - 1) <> 0'],
    ['[Note]', YESNO, undefined],
    ['[Sown]', YESNO, undefined],
    ['[Sown]', inUnit('degC'), undefined],
    ['[Rows]', DATE, undefined],
    ['[Treated]', inUnit(''), 'IF([Treated]; 1; 0)'],
    ['[Treated]', inUnit('ft'), undefined],
    ['[Note]', inUnit(''), undefined],
    ['[Sown]', inUnit('ft'), undefined],
    ['[Variety]', inUnit(''), undefined],
    ['[Rows]', inUnit('ft'), '[Rows] * 1 ft'],
    ['[Length]', inUnit(''), '[Length] / 1 ft'],
    ['[Length] + 1 ft', inUnit(''), '([Length] + 1 ft) / 1 ft'],
    ['[Length]', inUnit('lb'), undefined],
    ['[Rows]', inUnit('1/ft'), undefined],
    ['[Rows]', inUnit('lb/ft'), undefined],
    ['[Rows]', inUnit('lb*ft'), undefined],
    ['[Mass] * [Length]', inUnit(''), undefined],
  ])('%s', (formula, wanted, other) => {
    expect(rewritten(treeOf(formula), checked(formula).type, wanted)).toBe(other);
  });
});

describe('sentences', () => {
  test.each<Case>([
    ['[Length] > +5', '+5', '[Length] is a length (ft), +5 is a plain number: write a measure such as 2 ft.'],
    [
      '[Length] > -[Rows]',
      '-[Rows]',
      '[Length] is a length (ft), -[Rows] is a plain number: write a measure such as 2 ft.',
    ],
    [
      '[Rows] + [Length]',
      '[Rows]',
      '[Rows] is a plain number, [Length] is a length (ft): multiply, or write a measure such as 2 ft.',
    ],
    [
      '[Area] - [Length]',
      '[Length]',
      "[Area] is an area (ft2), [Length] is a length (ft): they can't be subtracted; multiply [Length] by a length first.",
    ],
    [
      'Farm[Wage] + [Price]',
      '[Price]',
      "Farm[Wage] is money per time (EUR/h), [Price] is money per mass (EUR/lb): they can't be added.",
    ],
    [
      '[Price] <> [Price] * [Mass]',
      '[Price] * [Mass]',
      "[Price] is money per mass (EUR/lb), [Price] * [Mass] is an amount of money (EUR): they can't be compared; multiply [Price] by a mass first.",
    ],
    [
      '[Length] * [Area] > [Area]',
      '[Area]',
      "[Length] * [Area] is a volume (ft3), [Area] is an area (ft2): they can't be compared; multiply [Area] by a length first.",
    ],
    [
      '[Rows] >= 1 <= 5',
      '[Rows] >= 1 <= 5',
      'Compare two things at a time: AND([Rows] >= 1; 1 <= 5).',
      'AND([Rows] >= 1; 1 <= 5)',
    ],
    [
      '[Rows] = 1 = [Note]',
      '[Rows] = 1 = [Note]',
      'Compare two things at a time: AND([Rows] = 1; 1 = [Note]).',
      'AND([Rows] = 1; 1 = [Note])',
    ],
    ['[Treated] = 0', '0', '[Treated] is yes or no, 0 is a plain number: write FALSE.', '[Treated] = FALSE'],
    ['"true" = [Treated]', '"true"', '[Treated] is yes or no, "true" is text: write TRUE.', 'TRUE = [Treated]'],
    ['[Treated] = [Note]', '[Treated] = [Note]', "[Treated] is yes or no, [Note] is text: they can't be compared."],
    ['[Start] = 5', '5', '[Start] is one of blocks, sets, 5 is a plain number: write "5".', '[Start] = "5"'],
    ['[Note] & "x" > 5', '5', '[Note] & "x" is text, 5 is a plain number: write "5".', '[Note] & "x" > "5"'],
    [
      '[Note] & "x" = [Rows]',
      '[Note] & "x" = [Rows]',
      '[Note] & "x" is text, [Rows] is a plain number: they can\'t be compared.',
    ],
    [
      '[Low] > [Rows]',
      '[Low] > [Rows]',
      "[Low] is a temperature (degF), [Rows] is a plain number: they can't be compared.",
    ],
    ['[Low] > "x"', '[Low] > "x"', '[Low] is a temperature (degF), "x" is text: they can\'t be compared.'],
    [
      '[Note] = [Sown]',
      '[Note] = [Sown]',
      "[Note] is text, [Sown] is a date: they can't be compared; a date is written DATE(2027; 3; 15).",
    ],
    ['[Sown] = [Low]', '[Sown] = [Low]', "[Sown] is a date, [Low] is a temperature (degF): they can't be compared."],
  ])('%s', (...one) => expectDiagnostic(one));

  test('the whole formula, where a column wants what no number can be written in', () => {
    const more = { column: 'Torque' };
    expect(diagnosticOf('[Rows]', { ...more, wanted: inUnit('lb*ft') }).why).toBe(
      'This gives a plain number; Torque wants a quantity of length x mass.',
    );
    expect(diagnosticOf('0', { ...more, wanted: TEXT }).why).toBe(
      'This gives a plain number; Torque wants text: write "0".',
    );
  });
});
