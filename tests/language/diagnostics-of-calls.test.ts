// What the checker says of calls that can't be: their arguments, whole columns and conditions. Each sentence once, the part
// it marks, and the fix where one is plain. Formulas stand in the sheet Plantings of the invented plan beside this file.

import { describe, expect, test } from 'vitest';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { contextOf, diagnosticOf } from './plan.ts';

describe('arguments', () => {
  test.each<Case>([
    ['IF()', 'IF()', 'IF still wants condition: IF(condition; then; [otherwise]).'],
    ['IF([Treated])', 'IF([Treated])', 'IF still wants then: IF(condition; then; [otherwise]).'],
    ['IF([Treated]; 1; 2; 3)', '3', 'IF takes at most 3 parts: IF(condition; then; [otherwise]).'],
    ['TODAY(1)', '1', 'TODAY takes nothing between its parentheses: TODAY().'],
    ['SQRT(1; 2)', '2', 'SQRT takes at most one part: SQRT(number).'],
    ['SQRT(1; )', 'SQRT(1; )', 'SQRT takes at most one part: SQRT(number).'],
    [
      'SUMIFS(Plantings[Seeds]; Plantings[Variety])',
      'SUMIFS(Plantings[Seeds]; Plantings[Variety])',
      'SUMIFS still wants condition: SUMIFS(total; range; condition; ...).',
    ],
    [
      'SUMIFS(Plantings[Seeds]; Plantings[Variety]; "x"; Plantings[Note])',
      'SUMIFS(Plantings[Seeds]; Plantings[Variety]; "x"; Plantings[Note])',
      'SUMIFS still wants condition: SUMIFS(total; range; condition; ...).',
    ],
    ['IFS([Treated]; 1; TRUE)', 'IFS([Treated]; 1; TRUE)', 'IFS still wants result: IFS(condition; result; ...).'],
    ['MAX(1; ; 2)', '', 'MAX still wants value here.'],
    ['COUNTIF(Plantings[Seeds]; )', '', 'COUNTIF still wants condition here.'],
    [
      'IF([Rows]; 1; 2)',
      '[Rows]',
      'IF wants yes or no for condition; [Rows] is a plain number: write [Rows] <> 0.',
      'IF([Rows] <> 0; 1; 2)',
    ],
    [
      'IF([Treated]; [Length]; 2)',
      '2',
      '[Length] is a length (ft), 2 is a plain number: write 2 ft.',
      'IF([Treated]; [Length]; 2 ft)',
    ],
    [
      'IF([Treated]; 3; [Length])',
      '3',
      '3 is a plain number, [Length] is a length (ft): write 3 ft.',
      'IF([Treated]; 3 ft; [Length])',
    ],
    [
      'IF([Treated]; [Rows]; "")',
      '""',
      '[Rows] is a plain number, "" is text: leave this part empty for a blank.',
      'IF([Treated]; [Rows]; )',
    ],
    [
      'MAX([Length]; [Rows])',
      '[Rows]',
      '[Length] is a length (ft), [Rows] is a plain number: MAX needs them alike, such as 2 ft.',
    ],
    ['MAX([Sown]; 0)', '0', '[Sown] is a date, 0 is a plain number: MAX needs them alike.'],
    [
      'XLOOKUP([Length]; Varieties[Variety]; Varieties[Germination])',
      'Varieties[Variety]',
      '[Length] is a length (ft), Varieties[Variety] is text: XLOOKUP needs them alike.',
    ],
    [
      'SUM([Treated])',
      '[Treated]',
      'SUM wants a number or a quantity for number; [Treated] is yes or no: IF([Treated]; 1; 0) counts it.',
      'SUM(IF([Treated]; 1; 0))',
    ],
    [
      'SUM(Plantings[Treated])',
      'Plantings[Treated]',
      'SUM wants a number or a quantity for number; Plantings[Treated] is yes or no.',
    ],
    [
      'SUM([Variety])',
      '[Variety]',
      'SUM wants a number or a quantity for number; [Variety] is a row of Varieties: follow it to one of its columns, as in [Variety].[Column].',
    ],
    ['MAX([Note])', '[Note]', 'MAX wants a number, a quantity, a temperature or a date for value; [Note] is text.'],
    [
      'YEAR("2027-03-15")',
      '"2027-03-15"',
      'YEAR wants a date; "2027-03-15" is text: write DATE(2027; 3; 15).',
      'YEAR(DATE(2027; 3; 15))',
    ],
    ['YEAR([Rows])', '[Rows]', 'YEAR wants a date; [Rows] is a plain number.'],
    ['LEFT([Rows])', '[Rows]', 'LEFT wants text; [Rows] is a plain number: write [Rows] & "".', 'LEFT([Rows] & "")'],
    ['TRAYAREA(8)', '8', 'TRAYAREA wants a length; 8 is a plain number: write 8 ft.', 'TRAYAREA(8 ft)'],
    [
      'TRAYAREA([Rows] + 1)',
      '[Rows] + 1',
      'TRAYAREA wants a length; [Rows] + 1 is a plain number: write ([Rows] + 1) * 1 ft.',
      'TRAYAREA(([Rows] + 1) * 1 ft)',
    ],
    ['TRAYAREA([Mass])', '[Mass]', 'TRAYAREA wants a length; [Mass] is a mass (lb).'],
    [
      'WEIGH([Length])',
      '[Length]',
      'WEIGH wants a plain number for share; [Length] is a length (ft): write [Length] / 1 ft.',
      'WEIGH([Length] / 1 ft)',
    ],
    [
      'WEIGH([Treated])',
      '[Treated]',
      'WEIGH wants a plain number for share; [Treated] is yes or no: write IF([Treated]; 1; 0).',
      'WEIGH(IF([Treated]; 1; 0))',
    ],
    ['COLD(20)', '20', 'COLD wants a temperature; 20 is a plain number: write 20 degC.', 'COLD(20 degC)'],
    ['ROWS([Bed])', '[Bed]', 'ROWS wants the name of a sheet for sheet, as in ROWS(Beds).'],
    ['ROWS(Bed)', 'Bed', 'There is no sheet Bed; the nearest name is Beds.', 'ROWS(Beds)'],
    ['POWER([Length]; 3)', 'POWER([Length]; 3)', 'POWER wants 2 here.'],
    ['POWER([Length]; )', 'POWER([Length]; )', 'POWER wants 2 here.'],
  ])('%s', (...one) => expectDiagnostic(one));
});

describe('whole columns and conditions', () => {
  test.each<Case>([
    [
      'SUMIFS([seeds]; Plantings[Variety]; "x")',
      '[seeds]',
      "SUMIFS wants a whole column for total; this is one row's value: write Plantings[Seeds].",
      'SUMIFS(Plantings[Seeds]; Plantings[Variety]; "x")',
    ],
    [
      'SUMIFS(Plantings[Seeds] * 2; Plantings[Variety]; "x")',
      'Plantings[Seeds] * 2',
      'SUMIFS wants a whole column for total: put Plantings[Seeds] * 2 in a column of its own and name that.',
    ],
    ['SUMIFS(3; Plantings[Variety]; "x")', '3', 'SUMIFS wants a whole column for total, as in Beds[Area].'],
    [
      'SUMIFS([Bed].[Length]; Plantings[Variety]; "x")',
      '[Bed].[Length]',
      'SUMIFS wants a whole column for total, as in Beds[Area].',
    ],
    [
      'SUMIFS(Plantings[Seeds]; Beds[Field]; "x")',
      'Beds[Field]',
      'SUMIFS goes through the rows of one sheet: Plantings[Seeds] and Beds[Field] stand in two.',
    ],
    [
      'COUNTIF(Plantings[Length]; ">=8")',
      '">=8"',
      'Plantings[Length] is a length (ft), 8 is a plain number: write ">=8 ft".',
      'COUNTIF(Plantings[Length]; ">=8 ft")',
    ],
    [
      'COUNTIF(Plantings[Length]; 8)',
      '8',
      'Plantings[Length] is a length (ft), 8 is a plain number: write 8 ft.',
      'COUNTIF(Plantings[Length]; 8 ft)',
    ],
    ['COUNTIF(Plantings[Length]; ">=8 lb")', '">=8 lb"', 'Plantings[Length] is a length (ft), 8 lb is a mass (lb).'],
    [
      'COUNTIF(Plantings[Length]; ">" & [Mass])',
      '[Mass]',
      "Plantings[Length] is a length (ft), [Mass] is a mass (lb): they can't be compared.",
    ],
    [
      'COUNTIF(Plantings[Length]; [Note])',
      '[Note]',
      'Plantings[Length] is a length (ft), [Note] is text: join the comparison to a value, as in ">=" & [Length].',
    ],
    [
      'COUNTIF(Plantings[Sown]; [Note])',
      '[Note]',
      'Plantings[Sown] is a date, [Note] is text: join the comparison to a value, as in ">=" & [Sown].',
    ],
    [
      'COUNTIF(Plantings[Length]; ">=tall")',
      '">=tall"',
      'Plantings[Length] is a length (ft): after >= a number is wanted, not tall. To compare with a value, write ">=" & and the value.',
    ],
    [
      'COUNTIF(Plantings[Length]; "1 ft + 2 ft")',
      '"1 ft + 2 ft"',
      'Plantings[Length] is a length (ft): after the quote a number is wanted, not 1 ft + 2 ft. To compare with a value, write "=" & and the value.',
    ],
    ['COUNTIF(Plantings[Length]; ">=")', '">="', 'Something is missing after >= in this condition.'],
    [
      'COUNTIF(Plantings[Low]; "<40")',
      '"<40"',
      'Plantings[Low] is a temperature (degF), 40 is a plain number: write "<40 degF".',
      'COUNTIF(Plantings[Low]; "<40 degF")',
    ],
    [
      'COUNTIF(Plantings[Length]; "40 degF%")',
      '"40 degF%"',
      "40 degF is a temperature on its scale, so it can't be reckoned with like this: take a difference first, as in 40 degF - 40 degF.",
    ],
    [
      'COUNTIF(Plantings[Sown]; ">=May")',
      '">=May"',
      'Plantings[Sown] is a date: write it as year-month-day, ">=2027-03-15", or as ">=" & DATE(2027; 3; 15).',
    ],
    ['COUNTIF(Plantings[Treated]; "maybe")', '"maybe"', 'Plantings[Treated] is yes or no: write TRUE or FALSE.'],
    [
      'COUNTIF(Plantings[Variety]; [Bed])',
      '[Bed]',
      "Plantings[Variety] is a row of Varieties, [Bed] is a row of Beds: they can't be compared.",
    ],
    [
      'COUNTIF(Plantings[Note]; 5)',
      '5',
      'Plantings[Note] is text, 5 is a plain number: write "5".',
      'COUNTIF(Plantings[Note]; "5")',
    ],
  ])('%s', (...one) => expectDiagnostic(one));

  test('a condition without a column before it is a slip of the signature', () => {
    const lone = contextOf().functions.get('COUNTIF');
    if (lone === undefined) throw new Error('COUNTIF is missing');
    const functions = new Map([
      ['LONE', { ...lone, name: 'LONE', parameters: lone.parameters.slice(1), repeating: 1 }],
    ]);
    expect(diagnosticOf('LONE(3)', { functions }).why).toBe('LONE wants a whole column before this condition.');
  });
});
