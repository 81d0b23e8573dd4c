// What the checker says where a formula can't be: each sentence once, the part it marks, and the fix where one is plain (of
// calls and their parts: diagnostics-of-calls.test.ts). Formulas stand in the sheet Plantings of the invented plan beside
// this file.

import { describe, expect, test } from 'vitest';
import { checkFormula } from '../../engine/language/checker.ts';
import { parseFormula } from '../../engine/language/parser.ts';
import { unknownUnit } from '../../engine/language/unknown-unit.ts';
import { DATE, TEXT, YESNO } from '../../engine/values/type.ts';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import {
  checked,
  choice,
  column,
  contextOf,
  diagnosticOf,
  inUnit,
  isUnitHere,
  link,
  sheet,
  vocabulary,
} from './plan.ts';

describe('unlike quantities', () => {
  test.each<Case>([
    [
      '[Row spacing] + Farm[Beds per field]',
      'Farm[Beds per field]',
      '[Row spacing] is a length (in), Farm[Beds per field] is a plain number: multiply, or write a measure such as 2 in.',
    ],
    [
      '[Rows] - [Row spacing]',
      '[Rows]',
      '[Rows] is a plain number, [Row spacing] is a length (in): write a measure such as 2 in.',
    ],
    [
      '[Row spacing] + 2',
      '2',
      '[Row spacing] is a length (in), 2 is a plain number: write 2 in.',
      '[Row spacing] + 2 in',
    ],
    ['-2 + [Length]', '-2', '-2 is a plain number, [Length] is a length (ft): write -2 ft.', '-2 ft + [Length]'],
    ['[Length] > 5', '5', '[Length] is a length (ft), 5 is a plain number: write 5 ft.', '[Length] > 5 ft'],
    [
      '[Length] ^ -1 + 3',
      '3',
      '[Length] ^ -1 is a number per length (1/ft), 3 is a plain number: write 3 / 1 ft.',
      '[Length] ^ -1 + 3 / 1 ft',
    ],
    [
      '[Mass] * [Length] + 3',
      '3',
      '[Mass] * [Length] is a quantity of length x mass (lb*ft), 3 is a plain number: multiply, or write a measure such as a quantity of length x mass.',
    ],
    ['[Mass] + [Length]', '[Length]', "[Mass] is a mass (lb), [Length] is a length (ft): they can't be added."],
    ['[Mass] - [Length]', '[Length]', "[Mass] is a mass (lb), [Length] is a length (ft): they can't be subtracted."],
    [
      '[Mass] + [Yield per length]',
      '[Yield per length]',
      "[Mass] is a mass (lb), [Yield per length] is a mass per length (lb/ft): they can't be added; multiply [Yield per length] by a length first.",
    ],
    [
      '[Length] = [Area]',
      '[Area]',
      "[Length] is a length (ft), [Area] is an area (ft2): they can't be compared; multiply [Length] by a length first.",
    ],
    ['2 ^ [Length]', '[Length]', '[Length] is a length (ft); a power must be a plain number.'],
    [
      '[Length] ^ [Rows]',
      '[Rows]',
      '[Length] is a length, so its power must be written out as a number, as in [Length] ^ 2.',
    ],
    [
      '[Length] ^ (1 / 0)',
      '1 / 0',
      '[Length] is a length, so its power must be written out as a number, as in [Length] ^ 2.',
    ],
    ['[Length]%', '[Length]%', '[Length] is a length (ft); only a plain number can be a percentage.'],
  ])('%s', (...one) => expectDiagnostic(one));
});

describe('dates and temperatures', () => {
  test.each<Case>([
    ['[Sown] + 7', '7', '7 is a plain number: say how long it is, 7 days.', '[Sown] + 7 days'],
    ['[Sown] - 1', '1', '1 is a plain number: say how long it is, 1 day.', '[Sown] - 1 day'],
    [
      '[Sown] + ([Rows] + 1)',
      '[Rows] + 1',
      '[Rows] + 1 is a plain number: say how long it is, ([Rows] + 1) * 1 day.',
      '[Sown] + (([Rows] + 1) * 1 day)',
    ],
    ['[Sown] + [Length]', '[Length]', '[Length] is a length (ft): only a time, such as 7 days, moves a date.'],
    [
      '[Planted out] + [Sown]',
      '[Planted out] + [Sown]',
      "Two dates can't be added: take one from the other for the time between them, or add a time such as 7 days.",
    ],
    [
      '7 days - [Sown]',
      '7 days - [Sown]',
      "A date can't be taken from a time: put the date first, as in [Sown] - 7 days.",
    ],
    [
      '-[Sown]',
      '[Sown]',
      '[Sown] is a date: a time can be added to it (7 days) or another date taken from it, nothing else.',
    ],
    [
      '[Sown] = "2027-03-15"',
      '"2027-03-15"',
      '[Sown] is a date, "2027-03-15" is text: write DATE(2027; 3; 15).',
      '[Sown] = DATE(2027; 3; 15)',
    ],
    [
      '[Low] + [High]',
      '[Low] + [High]',
      "Two temperatures can't be added: a difference is written 5 Fdeg; AVERAGE gives their mean.",
    ],
    [
      '[Low] + 5 degC',
      '5 degC',
      "Two temperatures can't be added: for a difference write 5 Fdeg; AVERAGE gives their mean.",
      '[Low] + 5 Fdeg',
    ],
    ['[Low] + 5', '5', '5 is a plain number: write the difference with its unit, 5 Fdeg.', '[Low] + 5 Fdeg'],
    [
      '[Rows] + 5 degC',
      '[Rows]',
      '[Rows] is a plain number: only a difference of temperatures, such as 5 Cdeg, can be added to one.',
    ],
    ['5 - [Low]', '5 - [Low]', "A temperature can't be taken from a plain number: put the temperature first."],
    [
      '[Low] * 2',
      '[Low]',
      "[Low] is a temperature on its scale, so it can't be reckoned with like this: take a difference first, as in [Low] - 40 degF.",
    ],
    [
      '-WARMTH(2)',
      'WARMTH(2)',
      "WARMTH(2) is a temperature on its scale, so it can't be reckoned with like this: take a difference first, as in WARMTH(2) - 5 degC.",
    ],
    ['[Low] > 5', '5', '[Low] is a temperature (degF), 5 is a plain number: write 5 degF.', '[Low] > 5 degF'],
  ])('%s', (...one) => expectDiagnostic(one));
});

describe('what is no number', () => {
  test.each<Case>([
    [
      '[Treated] * 2',
      '[Treated]',
      '[Treated] is yes or no, not a number: IF([Treated]; 1; 0) counts it.',
      'IF([Treated]; 1; 0) * 2',
    ],
    [
      '2 * [Variety]',
      '[Variety]',
      '[Variety] is a row of Varieties, not a number: follow it to one of its columns, as in [Variety].[Column].',
    ],
    [
      '[Note] * 2',
      '[Note]',
      '[Note] is text, not a number: VALUE([Note]) reads a number from text.',
      'VALUE([Note]) * 2',
    ],
    ['[Start] + "x"', '[Start]', '[Start] is text, not a number: texts are joined with &.', '[Start] & "x"'],
    ['1 + [Note]', '[Note]', '[Note] is text, not a number: texts are joined with &.', '1 & [Note]'],
  ])('%s', (...one) => expectDiagnostic(one));
});

describe('comparisons', () => {
  test.each<Case>([
    [
      '1 < [Rows] < 5',
      '1 < [Rows] < 5',
      'Compare two things at a time: AND(1 < [Rows]; [Rows] < 5).',
      'AND(1 < [Rows]; [Rows] < 5)',
    ],
    [
      '[Variety] = [Bed]',
      '[Variety] = [Bed]',
      "[Variety] is a row of Varieties, [Bed] is a row of Beds: they can't be compared.",
    ],
    ['[Treated] = "no"', '"no"', '[Treated] is yes or no, "no" is text: write FALSE.', '[Treated] = FALSE'],
    ['1 = [Treated]', '1', '[Treated] is yes or no, 1 is a plain number: write TRUE.', 'TRUE = [Treated]'],
    ['[Note] = 5', '5', '[Note] is text, 5 is a plain number: write "5".', '[Note] = "5"'],
    ['[Variety] <> 5', '5', '[Variety] is a row of Varieties, 5 is a plain number: write "5".', '[Variety] <> "5"'],
    ['[Treated] > TRUE', '[Treated] > TRUE', 'Yes and no have no order: compare them with = or <>.'],
    ['[Sown] < [Rows]', '[Sown] < [Rows]', "[Sown] is a date, [Rows] is a plain number: they can't be compared."],
    [
      '[Sown] > "15 Mar"',
      '[Sown] > "15 Mar"',
      '[Sown] is a date, "15 Mar" is text: they can\'t be compared; a date is written DATE(2027; 3; 15).',
    ],
  ])('%s', (...one) => expectDiagnostic(one));
});

describe('names', () => {
  test.each<Case>([
    ['[Lenght]', '[Lenght]', 'Plantings has no column Lenght; the nearest name is [Length].', '[Length]'],
    [
      '[Germination]',
      '[Germination]',
      'Plantings has no column Germination; Varieties has: write [Variety].[Germination].',
      '[Variety].[Germination]',
    ],
    [
      '[bed width]',
      '[bed width]',
      'Plantings has no column bed width; Farm has: write Farm[Bed width].',
      'Farm[Bed width]',
    ],
    [
      '[Quantity]',
      '[Quantity]',
      "Plantings has no column Quantity; Seed lots has: a link to it, or a function over 'Seed lots'[Quantity], brings it here.",
    ],
    ['[Zzz]', '[Zzz]', 'Plantings has no column Zzz. Pick one of its columns, or add this one first.'],
    ['[Note].[X]', '[Note].[X]', "[Note] is not a link to another sheet, so [X] can't follow it."],
    ['[Variety].[Cropp]', '[Cropp]', 'Varieties has no column Cropp; the nearest name is [Crop].', '[Variety].[Crop]'],
    ['[Unchecked] + 1', '[Unchecked]', 'The formula of [Unchecked] does not check yet; put that right first.'],
    ['[Variety].[Broken]', '[Broken]', 'The formula of Varieties[Broken] does not check yet; put that right first.'],
    [
      'SUM(Beds[Lenth])',
      'Beds[Lenth]',
      'Beds has no column Lenth; the nearest name is Beds[Length].',
      'SUM(Beds[Length])',
    ],
    [
      "SUM('Seed lot'[Quantity])",
      "'Seed lot'",
      'There is no sheet Seed lot; the nearest name is Seed lots.',
      "SUM('Seed lots'[Quantity])",
    ],
    ['SUM(Nowhere[X])', 'Nowhere', 'There is no sheet Nowhere in this workbook.'],
    [
      'Plantings[Length]',
      'Plantings[Length]',
      "Plantings[Length] is the whole column; this row's value is [Length].",
      '[Length]',
    ],
    [
      'Beds[Length]',
      'Beds[Length]',
      'Beds[Length] is the whole column; the value this row is linked to is [Bed].[Length].',
      '[Bed].[Length]',
    ],
    [
      "'Seed lots'[Quantity]",
      "'Seed lots'[Quantity]",
      "'Seed lots'[Quantity] is a whole column, and one value is wanted here: total it, as in SUM('Seed lots'[Quantity]), or look one up.",
    ],
    ['length * 2', 'length', 'Columns stand in brackets: write [Length].', '[Length] * 2'],
    ['A1 + 2', 'A1', 'Cells have no addresses such as A1 here: name the column in brackets, as in [Length].'],
    ['Beds', 'Beds', 'Beds is a sheet; name one of its columns, as in Beds[Column].'],
    ['Lenght * 2', 'Lenght', 'There is no Lenght here; the nearest name is [Length].', '[Length] * 2'],
    ['Qqqq * 2', 'Qqqq', 'There is no Qqqq here. Columns stand in brackets, text in double quotes.'],
    ['TODAY', 'TODAY', 'TODAY is a function: write TODAY(...) with its parts.', 'TODAY()'],
    ['SUM', 'SUM', 'SUM is a function: write SUM(...) with its parts.'],
    ['SUMM([Length])', 'SUMM', 'There is no function SUMM; the nearest name is SUM.', 'SUM([Length])'],
    ['QQQQQQ([Length])', 'QQQQQQ', 'There is no function QQQQQQ.'],
    ['beds(3)', 'beds', 'Beds is a sheet: name one of its columns in brackets, as in Beds[Column].'],
  ])('%s', (...one) => expectDiagnostic(one));

  test('a formula that stands in no sheet has no row', () => {
    expect(diagnosticOf('[Length]', { table: undefined }).why).toBe(
      '[Length] names a column of this row, and this formula stands in no sheet: write Table[Length].',
    );
    expect(diagnosticOf('Qqqq', { table: undefined }).why).toMatch(/^There is no Qqqq here/);
    expect(diagnosticOf('Beds[Length]', { table: undefined }).fix).toBe(undefined);
  });

  test('a function that is left out says why, and what to use', () => {
    const leftOut = (name: string): { why: string; use: string } | undefined =>
      name === 'OFFSET' ? { why: 'A sheet has no addresses', use: 'XLOOKUP' } : undefined;
    expect(diagnosticOf('offset([Length])', { leftOut }).why).toBe(
      'There is no OFFSET here. A sheet has no addresses. Use instead: XLOOKUP.',
    );
    expect(diagnosticOf('SUMM()', { leftOut }).why).toBe('There is no function SUMM; the nearest name is SUM.');
  });

  test('a link to a sheet that is gone says so', () => {
    const table = sheet('T', [column('L', link('Gone'))]);
    expect(diagnosticOf('[L].[X]', { catalog: { tables: [table] }, table: 't' }).why).toBe(
      "[L] leads to a sheet that isn't there.",
    );
  });
});

describe('the whole formula and the column it is for', () => {
  test.each([
    ['[Mass]', inUnit('in'), 'This gives a mass (lb); In-row spacing wants a length.', undefined],
    ['8', inUnit('in'), 'This gives a plain number; In-row spacing wants a length: write 8 in.', '8 in'],
    [
      '[Rows] + 1',
      inUnit('in'),
      'This gives a plain number; In-row spacing wants a length: write ([Rows] + 1) * 1 in.',
      '([Rows] + 1) * 1 in',
    ],
    [
      '[Planted out] - [Sown]',
      inUnit(''),
      'This gives a time (day); In-row spacing wants a plain number: write ([Planted out] - [Sown]) / 1 day.',
      '([Planted out] - [Sown]) / 1 day',
    ],
    ['[Price]', inUnit(''), 'This gives money per mass (EUR/lb); In-row spacing wants a plain number.', undefined],
    ['[Rows]', inUnit('lb/ft'), 'This gives a plain number; In-row spacing wants a mass per length.', undefined],
    ['[Rows]', TEXT, 'This gives a plain number; In-row spacing wants text: write [Rows] & "".', '[Rows] & ""'],
    [
      '[Treated]',
      inUnit(''),
      'This gives yes or no; In-row spacing wants a plain number: write IF([Treated]; 1; 0).',
      'IF([Treated]; 1; 0)',
    ],
    [
      '"2027-03-15"',
      DATE,
      'This gives text; In-row spacing wants a date: write DATE(2027; 3; 15).',
      'DATE(2027; 3; 15)',
    ],
    ['"yes"', YESNO, 'This gives text; In-row spacing wants yes or no: write TRUE.', 'TRUE'],
    ['[Sown]', choice('a', 'b'), 'This gives a date; In-row spacing wants one of a, b.', undefined],
    ['[Bed]', link('Varieties'), 'This gives a row of Beds; In-row spacing wants a row of Varieties.', undefined],
  ])('%s', (formula, wanted, why, fix) => {
    const diagnostic = diagnosticOf(formula, { wanted, column: 'In-row spacing' });
    expect(diagnostic.why).toBe(why);
    expect(diagnostic.fix?.text).toBe(fix);
  });

  test('without a name of the column the sentence does without', () => {
    expect(diagnosticOf('[Mass]', { wanted: inUnit('in') }).why).toBe(
      'This gives a mass (lb); a length is wanted here.',
    );
  });
});

describe('unit words', () => {
  test('an unknown one gives the nearest, in the parser as in the checker', () => {
    const help = (symbol: string): { why: string; fix?: string } => unknownUnit(symbol, vocabulary);
    const read = parseFormula('3 inchs', isUnitHere, help);
    expect(read).toMatchObject({
      ok: false,
      diagnostic: {
        from: 2,
        to: 7,
        why: 'inchs is not a unit that Dibble knows; the nearest is in.',
        fix: { text: 'in' },
      },
    });
    const later = parseFormula('[Length] + 3 inchs', () => true);
    const check = later.ok ? checkFormula(later.tree, contextOf()) : later;
    expect(check).toMatchObject({
      ok: false,
      diagnostic: { from: 13, to: 18, why: 'inchs is not a unit that Dibble knows; the nearest is in.' },
    });
  });

  test('a calendar month is refused with the way out', () => {
    expect(unknownUnit('month', vocabulary).why).toMatch(/EDATE/);
    expect(unknownUnit('qqqqqqqq', vocabulary)).toEqual({ why: 'qqqqqqqq is not a unit that Dibble knows.' });
  });
});

test('long parts are cut in sentences', () => {
  const long = `[Mass] + ${Array(12).fill('[Length]').join(' + ')}`;
  expect(diagnosticOf(`(${long.slice(9)}) + [Mass]`).why).toMatch(
    /^\[Length\] \+ \[Length\] \+ \[Length\] \+ \[Length\] \+ \.\.\. is a length \(ft\), \[Mass\]/,
  );
});

test.each([
  '[Row spacing] + 2',
  '[Sown] + 7',
  '[Low] + 5 degF',
  '1 < [Rows] < 5',
  'TRAYAREA([Rows])',
  '[Germination]',
  'length * 2',
  'COUNTIF(Plantings[Length]; ">=8")',
])('the fix of %s makes a formula that checks', (formula) => {
  const { fix } = diagnosticOf(formula);
  const fixed = fix === undefined ? formula : formula.slice(0, fix.span.from) + fix.text + formula.slice(fix.span.to);
  expect(checked(fixed)).toMatchObject({ from: 0, to: fixed.length });
});
