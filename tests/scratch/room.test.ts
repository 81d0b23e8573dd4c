// Scratch papers worked out: formulas as other spreadsheets have them, the workbook's columns by name with the unit in it, both
// following every change, undo among them.

import { afterEach, expect, test } from 'vitest';
import { Desk, smallBook } from './paper.ts';

let desk = new Desk();
afterEach(() => {
  desk.room.destroy();
  desk = new Desk();
});

test('cells are worked out as they are typed, changed and undone', () => {
  desk.type({ A1: '2', B1: '=A1*3', C1: '=SUM(A1:B1)', A2: 'beds', B2: '=A2&" of "&A1', C2: '=A1>1' });
  expect(['A1', 'B1', 'C1', 'B2', 'C2'].map((cell) => desk.text(cell))).toEqual(['2', '6', '8', 'beds of 2', 'yes']);
  desk.type({ A1: '5' });
  expect(desk.text('C1')).toBe('20');
  desk.book.workbook.undo();
  expect(desk.text('C1')).toBe('8');
  desk.type({ B1: '' });
  expect([desk.shown('B1').is, desk.text('C1')]).toEqual(['blank', '2']);
});

test('columns are there by name in the unit that the name says, and follow live', () => {
  desk.type({
    A1: '=SUM(Plantings_In_row_spacing_in)',
    A2: '=SUM(Plantings_In_row_spacing_cm)',
    A3: '=INDEX(Plantings_Length_ft,2)',
    A4: '=SUM(Plantings_Plants)',
    A5: '=AVERAGE(Plantings_Loss_percent)',
    A6: '=INDEX(Plantings_Sown,1)+7',
    A7: '=INDEX(Plantings_Crop,2)',
    A8: '=SUMIFS(Plantings_Length_ft,Plantings_Crop,"Onion")',
    A9: '=Farm_Latitude+1',
    A10: '=MAX(Crops_Price_USD_per_lb)',
    A11: '=INDEX(Plantings_Coldest_degF,1)',
    A12: '=COUNTIF(Plantings_Covered,TRUE())',
  });
  const told = (): readonly string[] => Array.from({ length: 12 }, (_, i) => desk.text(`A${i + 1}`));
  const before = ['18', '45.72', '40', '190', '11.6666666667', '22 Mar 2027', 'Leek', '60', '45', '3', '30', '1'];
  expect(told()).toEqual(before);
  desk.set('Plantings', 'Middle', 'In-row spacing', '12 in');
  desk.set('Crops', 'Leek', 'Crop', 'Shallot');
  expect([desk.text('A1'), desk.text('A4'), desk.text('A7')]).toEqual(['22', '170', 'Shallot']);
  desk.book.workbook.undo();
  desk.book.workbook.undo();
  expect(told()).toEqual(before);
});

test('rows that come and go lengthen and shorten a column', () => {
  desk.type({ A1: '=ROWS(Plantings_Planting)', A2: '=INDEX(Plantings_Planting,4)', A3: '=SUM(Plantings_Length_ft)' });
  expect([desk.text('A1'), desk.text('A3')]).toEqual(['3', '100']);
  desk.book.edit([{ edit: 'insert row', table: 'Plantings', entries: { Planting: 'Autumn', Length: '7 ft' } }]);
  expect([desk.text('A1'), desk.text('A2'), desk.text('A3')]).toEqual(['4', 'Autumn', '107']);
  desk.book.edit([{ edit: 'remove row', table: 'Plantings', row: desk.book.rowOf('Plantings', 'Early') ?? -1 }]);
  expect([desk.text('A1'), desk.text('A3')]).toEqual(['3', '57']);
});

test('a name keeps its unit when the workbook shows others', () => {
  desk.type({ A1: '=SUM(Plantings_In_row_spacing_in)' });
  desk.book.edit([{ edit: 'units', units: 'si' }]);
  expect(desk.text('A1')).toBe('18');
  const names = desk.room.names.all().map(({ name }) => name);
  expect(names).toContain('Plantings_In_row_spacing_cm');
  expect(names).toContain('Plantings_Coldest_degC');
  expect(names).toContain('Crops_Price_USD_per_kg');
});

test('a name with a unit of another kind, or without one, is none', () => {
  desk.type({ A1: '=SUM(Plantings_Length)', A2: '=SUM(Plantings_Length_lb)', A3: '=SUM(Plantings_Width_ft)' });
  for (const cell of ['A1', 'A2', 'A3'])
    expect(desk.shown(cell)).toMatchObject({ is: 'fault', why: expect.stringContaining('unit in its name') });
});

test('papers read each other, and no paper is read by a sheet', () => {
  desk.do({ command: 'add paper', paper: 'q', name: 'More sums' });
  desk.type({ A1: '4' });
  desk.type({ A1: "='Sums'!A1*2", A2: '=Sums!A1+1' }, 'q');
  expect([desk.text('A1', 'q'), desk.text('A2', 'q')]).toEqual(['8', '5']);
  desk.book.edit([{ edit: 'formula', table: 'Plantings', column: 'Plants', formula: 'Sums[A1]' }]);
  expect(desk.book.column('Plantings', 'Plants')?.diagnostic?.why).toContain('Sums');
});

test('several figures stand side by side, and give way to nothing that is typed', () => {
  desk.type({ A1: '=BULBSALE(2,0.5)' });
  expect([desk.text('A1'), desk.text('B1')]).toEqual(['2', '0.5']);
  desk.type({ B1: 'mine' });
  expect([desk.shown('A1').is, desk.text('B1')]).toEqual(['fault', 'mine']);
  desk.type({ B1: '' });
  expect([desk.text('A1'), desk.text('B1')]).toEqual(['2', '0.5']);
});

test('faults say what is wrong', () => {
  desk.type({ A1: '=1/0', A2: '=A2+1', A3: '=NOSUCH(1)', A4: '=(1', A5: '=CUREDMASS(2)', A6: '=CUREDMASS(2,3)' });
  expect(desk.shown('A1').why).toContain('divides by zero');
  expect(desk.shown('A2').why).toContain('follows from itself');
  expect(desk.shown('A3').why).toContain('a function');
  expect(desk.shown('A4').why).toContain('brackets');
  expect(desk.shown('A5').why).toBe('CUREDMASS wants fresh, loss: one of them is missing.');
  expect(desk.shown('A6').why).toContain('CUREDMASS: loss is outside the range');
});

test('entries read as other spreadsheets read them', () => {
  desk.type({ A1: '50%', A2: '2027-03-15', A3: "'007", A4: '=A1*8', A5: '=A2+1', A6: '1e3' });
  expect(['A1', 'A2', 'A3', 'A4', 'A5', 'A6'].map((cell) => desk.text(cell))).toEqual([
    '50%',
    '15 Mar 2027',
    '007',
    '4',
    '16 Mar 2027',
    '1000',
  ]);
});

test('metric workbooks have metric names', () => {
  const metric = new Desk(smallBook('si'));
  metric.type({ A1: '=INDEX(Plantings_In_row_spacing_cm,1)' });
  expect(metric.text('A1')).toBe('15.24');
  metric.room.destroy();
});
