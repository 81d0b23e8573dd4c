// Sums of a scratch paper as columns: the formula in the workbook's language gives, in the row for which the sum was tried, what
// the paper gives; what can't be said so is refused with the reason.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { message } from '../../engine/index.ts';
import { treeOf, Unreadable } from '../../ui/scratch/a1-tree.ts';
import { sumAsColumn } from '../../ui/scratch/sum-as-column.ts';
import { sheetsNamed } from '../../ui/scratch/translate.ts';
import { Desk } from './paper.ts';

let desk: Desk;
beforeAll(() => {
  desk = new Desk();
  desk.type({ A1: '3', A2: '=A1*2', A3: 'Onion', A4: '2027-04-10', A5: '50%', B1: '1', B2: '2', B3: '=B1+B2' });
});
afterAll(() => desk.room.destroy());

const place = () => ({
  paper: 'p',
  cell: 'D5',
  entryAt: (cell: string): string | null => desk.book.workbook.document.papers.entry('p', cell),
});

function turned(formula: string, sheet = 'plantings') {
  desk.type({ D5: formula });
  return sumAsColumn(desk.book.workbook, desk.room, place(), sheet);
}

describe('as a column of Plantings', () => {
  test.each([
    ['=INDEX(Plantings_In_row_spacing_in,2)*2', '([In-row spacing] / (1 in)) * 2'],
    [
      '=INDEX(Plantings_Length_ft,1)*12/INDEX(Plantings_In_row_spacing_in,1)',
      '(([Length] / (1 ft)) * 12) / ([In-row spacing] / (1 in))',
    ],
    ['=INDEX(Plantings_Length_m,3)^2-1', '(([Length] / (1 m)) ^ 2) - 1'],
    ['=A2+INDEX(Plantings_Plants,1)', '(3 * 2) + [Plants]'],
    ['=INDEX(Plantings_Plants,ROW()-3)', '[Plants]'],
    ['=INDEX(Plantings_Plants,B3)/SUM(Plantings_Plants)', '[Plants] / SUM(Plantings[Plants])'],
    [
      '=INDEX(Plantings_Length_ft,1)/AVERAGE(Plantings_Length_ft)',
      '([Length] / (1 ft)) / (AVERAGE(Plantings[Length]) / (1 ft))',
    ],
    ['=INDEX(Plantings_Loss_percent,2)/100', '([Loss] * 100) / 100'],
    ['=IF(INDEX(Plantings_Crop,1)=A3,"yes","no")', 'IF([Crop] = "Onion"; "yes"; "no")'],
    ['=INDEX(Plantings_Sown,2)+7*B2', '[Sown] + (7 * 2) * 1 day'],
    ['=INDEX(Plantings_Sown,2)-A4', '([Sown] - DATE(2027; 4; 10)) / (1 day)'],
    ['=INDEX(Plantings_Coldest_degF,3)+A5', '(([Coldest] - 0 degF) / (1 Fdeg)) + 0.5'],
    ['=SUM(B1:B3)*INDEX(Plantings_Plants,2)', 'SUM(1; 2; 1 + 2) * [Plants]'],
    [
      '=SUMIFS(Plantings_Length_ft,Plantings_Crop,"Onion",Plantings_In_row_spacing_in,">4")',
      'SUMIFS(Plantings[Length]; Plantings[Crop]; "Onion"; Plantings[In-row spacing]; ">4 in") / (1 ft)',
    ],
    [
      '=COUNTIF(Plantings_Length_ft,">="&INDEX(Plantings_Length_ft,2))',
      'COUNTIFS(Plantings[Length]; ">=" & (([Length] / (1 ft)) * (1 ft)))',
    ],
    ['=CUREDMASS(INDEX(Plantings_Plants,1),0.2)', 'CUREDMASS([Plants] * (1 lb); 0.2) / (1 lb)'],
    ['=DAYLENGTH(Farm_Latitude,INDEX(Plantings_Sown,1))', 'DAYLENGTH(Farm[Latitude]; [Sown]) / (1 h)'],
    ['=ROUND(INDEX(Plantings_Plants,3)*1.1,0)', 'ROUND([Plants] * 1.1; 0)'],
    [
      '=XLOOKUP("Middle",Plantings_Planting,Plantings_In_row_spacing_cm)*2',
      '(XLOOKUP("Middle"; Plantings[Planting]; Plantings[In-row spacing]) / (1 cm)) * 2',
    ],
    [
      '=XLOOKUP(8,Plantings_In_row_spacing_in,Plantings_Length_ft,7)+1',
      '(XLOOKUP(8 * (1 in); Plantings[In-row spacing]; Plantings[Length]; 7 * (1 ft)) / (1 ft)) + 1',
    ],
    ['=XLOOKUP("Middle",Plantings_Planting,Plantings_Crop)', 'XLOOKUP("Middle"; Plantings[Planting]; Plantings[Crop])'],
    [
      '=XLOOKUP("Middle",Plantings_Planting,Plantings_Sown)-A4',
      '(XLOOKUP("Middle"; Plantings[Planting]; Plantings[Sown]) - DATE(2027; 4; 10)) / (1 day)',
    ],
    ['=MATCH(8,Plantings_In_row_spacing_in,0)', 'MATCH(8 * (1 in); Plantings[In-row spacing]; 0)'],
    ['=VAR(Plantings_Length_ft)', 'VAR(Plantings[Length]) / ((1 ft) ^ 2)'],
    [
      '=SLOPE(Plantings_Length_ft,Plantings_In_row_spacing_in)',
      'SLOPE(Plantings[Length]; Plantings[In-row spacing]) / ((1 ft) * (1 in) ^ (-1))',
    ],
    ['=SUMSQ(Plantings_Length_ft)', 'SUMSQ(Plantings[Length]) / ((1 ft) ^ 2)'],
    ['=MAX(Plantings_Length_ft,60)', 'MAX(Plantings[Length]; 60 * (1 ft)) / (1 ft)'],
    ['=MAX(A4,DATE(2027,5,1))-A4', '(MAX(DATE(2027; 4; 10); DATE(2027; 5; 1)) - DATE(2027; 4; 10)) / (1 day)'],
    ['=-INDEX(Plantings_Plants,1)%', '-([Plants] / 100)'],
    ['=INDEX(Plantings_Planting,1)&" "&INDEX(Plantings_Plants,1)', '([Planting] & " ") & [Plants]'],
    ['=IF(INDEX(Plantings_Covered,1),1,2)', 'IF([Covered]; 1; 2)'],
  ])('%s', (formula, wanted) => {
    const answer = turned(formula);
    expect(answer).toMatchObject({ ok: true, formula: wanted });
    expect(answer.ok && answer.said).toContain('as on the paper');
  });
});

test('it is a column of the sheet from then on, and what the paper holds stays', () => {
  const answer = turned('=INDEX(Plantings_In_row_spacing_in,2)*2');
  const commands = [{ command: 'add formula', sheet: 'plantings', name: 'Twice', formula: answer.formula }] as const;
  desk.book.workbook.do(commands, message('sum to column', { cell: 'D5', paper: 'Sums', column: 'Twice' }));
  expect(desk.book.cell('Plantings', desk.book.rowOf('Plantings', 'Late') ?? -1, 'Twice').number).toBeCloseTo(8, 12);
  expect(desk.text('D5')).toBe('16');
  desk.book.workbook.undo();
  expect(desk.book.column('Plantings', 'Twice')).toBeUndefined();
});

test.each([
  ['=INDEX(Plantings_Plants,1)+INDEX(Plantings_Plants,2)', 'rows 1 and 2 of Plantings'],
  ['=INDEX(Crops_Price_USD_per_lb,1)*2', 'reads one row of Crops'],
  ['=SUM(A1:A2)+SUM(F1:F3)', 'F1:F3 are blank'],
  ['=F1+1', 'F1 is blank'],
  ['=INDEX(A1:A3,2)', 'which no sheet reads'],
  ['=BULBSALE(2,1)', 'gives several figures'],
  ['=SUM({1,2})', '“{” has no place'],
  ['=INDEX(Plantings_Sown,1)*2', 'of a date'],
  ['=1/0', 'gives no figure yet'],
  ['12', 'holds no formula'],
  ['=HYPERLINK("a")', 'no function called HYPERLINK'],
  ['=SUM(A:A)', 'whole rows or columns'],
])('%s is refused', (formula, why) => {
  const answer = turned(formula);
  expect(answer.ok).toBe(false);
  expect(!answer.ok && answer.why).toContain(why);
});

test('the sheets that a sum names come first, through the cells that it reads', () => {
  desk.type({ E1: '=INDEX(Plantings_Plants,1)', D5: '=E1+Farm_Latitude+SUM(Crops_Price_USD_per_lb)' });
  expect(sheetsNamed(desk.room, place())).toEqual(['plantings', 'crops']);
});

test('operators bind as in other spreadsheets', () => {
  const minus = { node: 'minus', operand: { node: 'number', value: '2' } };
  expect(treeOf('=-2^2')).toEqual({ node: 'operator', sign: '^', left: minus, right: { node: 'number', value: '2' } });
  expect(() => treeOf('=1+')).toThrow(Unreadable);
  expect(() => treeOf('=(1')).toThrow('not closed');
  expect(() => treeOf('=Other!A1')).toThrow('another scratch paper');
});
