// Formulas as they are pasted from other spreadsheets, where every formula is an array formula today: what each gives is worked out by
// hand from the cells below, and is the same wherever the formula stands.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Desk } from './paper.ts';

const CELLS = {
  ...{ K1: '3', K2: '4', K3: '3', L1: '10', L2: '20', L3: '40' },
  // A number, a fault, nothing and a number.
  ...{ M1: '5', M2: '=1/0', M4: '7' },
};

let desk: Desk;
beforeAll(() => {
  desk = new Desk();
  desk.type(CELLS);
});
afterAll(() => desk.room.destroy());

/** What a formula in B2, beside the cells that it reads, or in B9, below them, gives: rows parted by bars, cells by spaces. */
function block(formula: string, row: number): string {
  desk.type({ [`B${row}`]: formula });
  const lines = Array.from({ length: 4 }, (_, i) =>
    ['B', 'C', 'D']
      .map((column) => desk.text(`${column}${row + i}`))
      .join(' ')
      .trim(),
  );
  desk.type({ [`B${row}`]: '' });
  return lines.filter((line) => line !== '').join(' | ');
}

function why(formula: string): string {
  desk.type({ B2: formula });
  const shown = desk.shown('B2');
  desk.type({ B2: '' });
  expect(shown.is).toBe('fault');
  return shown.why;
}

describe.each([2, 9])('in row %i', (row) => {
  test.each([
    ['=SUMPRODUCT((K1:K3=3)*L1:L3)', '50'],
    ['=SUMPRODUCT(--(K1:K3=3),L1:L3)', '50'],
    ['=SUMPRODUCT((Plantings_Crop="Onion")*Plantings_Length_ft)', '60'],
    ['=SUMPRODUCT(1/COUNTIF(K1:K3,K1:K3))', '2'],
    ['=SUM(IF(K1:K3=3,L1:L3,0))', '50'],
    ['=MAX(IF(K1:K3=3,L1:L3))', '40'],
    ['=MAX(ABS(L1:L3-20))', '20'],
    ['=SUM(LARGE(L1:L3,{1,2}))', '60'],
    ['=LOOKUP(2,1/(K1:K3=3),L1:L3)', '40'],
    ['=INDEX(L1:L3,MATCH(1,(K1:K3=3)*(L1:L3=40),0))', '40'],
    ['=SUM(INDEX(K1:L3,0,2))', '70'],
    ['=INDEX(K1:L1,2)', '10'],
    ['=SUM(ROW(K1:K3))', '6'],
    ['=SUM(ROW(1:5))', '15'],
    ['=SUM(ROUND(L1:L3/3,1))', '23.3'],
    ['=SUM(--(TEXT(K1:K3,"0")="3"))', '2'],
    ['=LET(x,K1:K3,SUM(x*2))', '20'],
    // Several figures stand below and beside.
    ['=K1:K3*2', '6 | 8 | 6'],
    ['=K1:K3', '3 | 4 | 3'],
    ['=INDEX(K1:L3,2,0)', '4 20'],
    ['=COLUMN(K1:L1)', '11 12'],
    ['=INT(L1:L3/3)', '3 | 6 | 13'],
    ['=FILTER(L1:L3,K1:K3=3)', '10 | 40'],
    ['=UNIQUE(Plantings_Crop)', 'Onion | Leek'],
    ['=SORT(Plantings_Length_ft)', '10 | 40 | 50'],
    ['=FILTER(Plantings_Planting,Plantings_Length_ft>20)', 'Early | Middle'],
    ['=Plantings_Sown', '15 Mar 2027 | 1 Apr 2027 | 1 May 2027'],
    ['=XLOOKUP({3,4},K1:K3,L1:L3)', '10 20'],
    ['=XLOOKUP(4,K1:K3,K1:L3)', '4 20'],
    // Of other spreadsheets.
    ['=AVERAGEIFS(L1:L3,K1:K3,3)', '25'],
    ['=AVERAGEIFS(Plantings_Length_ft,Plantings_Crop,"On*")', '30'],
    ['=AVERAGEIFS(M1:M4,L1:L4,">30")', '#DIV/0!'],
    ['=DATEDIF(DATE(2027,1,1),DATE(2027,3,6),"d")', '64'],
    ['=DATEDIF(DATE(2027,1,1),DATE(2027,3,6),"m")', '2'],
    ['=DATEDIF(DATE(2025,4,1),DATE(2027,3,6),"y")', '1'],
    ['=VLOOKUP(2,{1,"a";2,"b"},2,FALSE)', 'b'],
    ['=VLOOKUP(2.5,{1,"a";2,"b"},2)', 'b'],
    ['=HLOOKUP(2,{1,2;"a","b"},2,FALSE)', 'b'],
    ['=AGGREGATE(9,6,M1:M4)', '12'],
    ['=AGGREGATE(1,6,M1:M4)', '6'],
    ['=AGGREGATE(3,6,M1:M4)', '2'],
    ['=AGGREGATE(14,6,M1:M4,1)', '7'],
    ['=AGGREGATE(15,6,ROW(K1:K3)/(K1:K3=3),2)', '3'],
    ['=AGGREGATE(9,4,M1:M4)', '#DIV/0!'],
    ['=DOLLAR(1234.567)', '$1,234.57'],
    ['=DOLLAR(-1234.567,0)', '($1,235)'],
    ['=TREND({2;4;6},{1;2;3},{4;5})', '8 | 10'],
    ['=TREND({2;4;6})', '2 | 4 | 6'],
    ['=WORKDAY(DATE(2027,3,5),1)-DATE(2027,3,5)', '3'],
    ['="say ""hi"""', 'say "hi"'],
  ])('%s', (formula, given) => {
    expect(block(formula, row)).toBe(given);
  });
});

test.each([
  ['=TEXT(0.256,"0%")', '26%'],
  ['=TEXT(0.256,"0.0%")', '25.6%'],
  ['=TEXT(1234.5,"#,##0.00")', '1,234.50'],
  ['=TEXT(-1234.5,"$#,##0.00_);($#,##0.00)")', '($1,234.50)'],
  // 5 March 2027 is a Friday.
  ['=TEXT(DATE(2027,3,5),"dddd")', 'Friday'],
  ['=TEXT(DATE(2027,3,5),"[$-409]d-mmm-yy")', '5-Mar-27'],
  ['=TEXT(DATE(2027,3,5)+0.75,"yyyy-mm-dd hh:mm")', '2027-03-05 18:00'],
  ['=TEXT(0.75,"h:mm AM/PM")', '6:00 PM'],
  ['=TEXT(1/48,"h:mm AM/PM")', '12:30 AM'],
  ['=TEXT(1.5,"[h]:mm")', '36:00'],
  ['=TEXT("beds","0")', 'beds'],
  ['=TEXT(B99,"0")', '0'],
  // What stands in cells is read as other spreadsheets read it.
  ['=INT(B99)', '0'],
  ['=ROUND("2.567",1)', '2.6'],
  ['=MID(12345,2,2)', '23'],
  ['=INT(TRUE)', '1'],
  ['=ISEVEN(3)', 'no'],
])('%s', (formula, given) => {
  expect(block(formula, 2)).toBe(given);
});

test('what can’t be had is a fault that says why', () => {
  expect(why('=INDIRECT("A1")')).toContain('only once it is worked out');
  expect(why('=SUM(OFFSET(K1,0,0,K1,1))')).toContain('written out');
  expect(why('=@K1:K3')).toContain('the row it stands in');
  expect(why('=XLOOKUP(4,(K1:K3),K1:L3)')).toContain('several figures');
  expect(why('=XLOOKUP({3,4},K1:K3,K1:L3)')).toContain('one figure for each');
  expect(why('=LAMBDA(x,x)')).toContain('LET');
  expect(why('=ROUND(M2,1)')).toContain('divides by zero');
});

test('a column that gets longer fills more cells', () => {
  const other = new Desk();
  other.type({ A1: '=Plantings_Length_ft*2', B1: '=ROWS(Plantings_Planting)', C1: '=SORT(Plantings_Length_ft)' });
  expect([other.text('A3'), other.text('A4'), other.text('B1'), other.text('C4')]).toEqual(['20', '', '3', '']);
  other.book.edit([{ edit: 'insert row', table: 'Plantings', entries: { Planting: 'Autumn', Length: '7 ft' } }]);
  expect([other.text('A4'), other.text('B1'), other.text('C1'), other.text('C4')]).toEqual(['14', '4', '7', '50']);
  other.book.workbook.undo();
  expect([other.text('A3'), other.text('A4'), other.text('B1')]).toEqual(['20', '', '3']);
  other.room.destroy();
});

test('a formula at which hyperformula gives up is a fault, and the rest of the paper goes on', () => {
  const other = new Desk();
  // Cells by cells of a figure that fills none: neither has the size that was foreseen.
  other.type({ K1: '3', K2: '4', N1: '=XLOOKUP(4,(K1:K2),K1:L2)', N3: '=K1:K2*N1', N9: '=K1*2' });
  expect(other.shown('N3').why).toContain('several figures');
  expect(other.text('N9')).toBe('6');
  other.type({ K1: '5' });
  expect([other.shown('N3').is, other.text('N9')]).toEqual(['fault', '10']);
  other.type({ N3: '=K1:K2*2' });
  expect([other.text('N3'), other.text('N4')]).toEqual(['10', '8']);
  other.room.destroy();
});
