import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Evaluated } from '../../engine/index.ts';
import { type Book, opened } from '../book.ts';
import { open, SMALL_FARM } from '../formats/small-farm.ts';

function shown(answer: Evaluated): string {
  return answer.ok ? answer.shown : answer.diagnostic.why;
}

function nothing(): Book {
  return opened({ title: '', units: 'us', currency: 'USD', today: 20_893, sheets: [], rows: {} });
}

describe('formulas without a sheet', () => {
  test.each([
    ['=1+2', '3'],
    ['3 * 8 in', '24 in'],
    ['3 * 8 in = 2 ft', 'yes'],
    ['6 lb / 4 ft', '1.5 lb/ft'],
    ['DATE(2027; 3; 15) + 1 week', '22 Mar 2027'],
    ['TODAY()', '16 Mar 2027'],
    ['"a" & "b"', 'ab'],
    ['20 degC', '20 °C'],
    ['IF(FALSE; 1)', ''],
    [
      'BULBSALE(1 money/kg)',
      /^This holds several figures \(Price, .*\): make a column of it, and name one of them there, as in \[Column\]\.\[Price\]\.$/,
    ],
  ])('%s', (formula, answer) => {
    if (typeof answer === 'string') expect(shown(nothing().evaluate(formula))).toBe(answer);
    else expect(shown(nothing().evaluate(formula))).toMatch(answer);
  });

  test('an error has its kind and sentence, and no place since it began in no cell', () => {
    expect(nothing().evaluate('1 / 0')).toMatchObject({
      ok: true,
      value: { error: 'divide', why: 'This divides by zero: give the divisor a value other than 0.' },
    });
    const answer = nothing().evaluate('1 / 0');
    expect(answer.ok && answer.value).not.toHaveProperty('at');
  });

  test('a diagnostic marks the part that is wrong', () => {
    const answer = nothing().evaluate('1 lb + 2 in');
    expect(answer).toMatchObject({ ok: false, diagnostic: { from: 7, to: 11 } });
  });
});

describe('formulas on the tables of a workbook', () => {
  test.each([
    ['ROWS(Beds)', '2'],
    ['SUM(Beds[Area])', '243.11 ft²'],
    ['SUMIFS(Sales[Income]; Sales[Bed]; "North 1")', '12.50 USD'],
    ['COUNTIFS(Beds[Cover]; "STRAW")', '1'],
    ['XLOOKUP("North 2"; Beds[Bed]; Beds[Length])', '39.37 ft'],
    ['Farm[First day]', '1 Apr 2027'],
    ['[Length]', '[Length] names a column of this row, and this formula stands in no sheet: write Table[Length].'],
  ])('%s', (formula, answer) => {
    expect(shown(open().evaluate(formula))).toBe(answer);
  });

  test('answers follow edits of cells', () => {
    const workbook = open();
    workbook.edit([{ edit: 'cell', table: 'Beds', row: 0, column: 'Length', entry: '100' }], '');
    expect(shown(workbook.evaluate('MAX(Beds[Length])'))).toBe('100 ft');
  });

  test('asking changes nothing, and gives what a computed column would', () => {
    const workbook = open();
    const before = workbook.file();
    const factor = fc.integer({ min: -50, max: 50 });
    const formula = fc
      .tuple(fc.constantFrom('SUM', 'MAX', 'AVERAGE'), fc.constantFrom('Length', 'Area', 'Width'), factor)
      .map(([name, column, by]) => `${name}(Beds[${column}]) * ${by}`);
    fc.assert(
      fc.property(formula, (text) => {
        const answer = workbook.evaluate(text);
        const columned = open();
        columned.edit([{ edit: 'formula', table: 'Farm', column: 'Asked', formula: text }], '');
        expect(answer.ok && answer.value).toBe(columned.value('Farm', 0, 'Asked'));
      }),
      { numRuns: 60 },
    );
    expect(workbook.file()).toBe(before);
    expect(workbook.tables().map((table) => table.name)).toEqual(SMALL_FARM.sheets.map((sheet) => sheet.name));
  });
});
