// Sheets and columns that get another name or place: formulas of papers go on meaning what they meant, one step of undo.

import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Command, message } from '../../engine/index.ts';
import { withPapersFollowing } from '../../ui/scratch/names-followed.ts';
import { Desk } from './paper.ts';

let desk: Desk;
beforeEach(() => {
  desk = new Desk();
});
afterEach(() => desk.room.destroy());

/** As the dialogs of own sheets do it. */
function act(command: Command): void {
  const { workbook } = desk.book;
  const done = workbook.do(withPapersFollowing(workbook, [command]), message('trial'));
  if (done.refused) throw new Error(done.why);
}

function entries(...cells: readonly string[]): readonly (string | null)[] {
  return cells.map((cell) => desk.book.workbook.document.papers.entry('p', cell));
}

function texts(...cells: readonly string[]): readonly string[] {
  return cells.map((cell) => desk.text(cell));
}

test('renamed, they are read by their new names', () => {
  desk.type({
    A1: '=SUM(Plantings_Length_ft)',
    A2: '=COUNTA(plantings_planting)+COUNT(Plantings_Length_cm)',
    A3: '=IFERROR(SUM(Plantings_In_row_spacing_in),0)',
    A4: '="Plantings_Length_ft"&Farm_Latitude',
    A5: 'Plantings_Length_ft',
  });
  const before = texts('A1', 'A2', 'A3', 'A4', 'A5');
  expect(before).toEqual(['100', '6', '18', 'Plantings_Length_ft44', 'Plantings_Length_ft']);
  act({ command: 'rename sheet', sheet: 'plantings', name: 'Beds-book 1' });
  act({ command: 'rename column', sheet: 'plantings', column: 'length', name: 'Bed feet' });
  expect(texts('A1', 'A2', 'A3', 'A4', 'A5')).toEqual(before);
  expect(entries('A1', 'A2', 'A3', 'A4', 'A5')).toEqual([
    '=SUM(Beds_book_1_Bed_feet_ft)',
    '=COUNTA(Beds_book_1_Planting)+COUNT(Beds_book_1_Bed_feet_cm)',
    '=IFERROR(SUM(Beds_book_1_In_row_spacing_in),0)',
    '="Plantings_Length_ft"&Farm_Latitude',
    'Plantings_Length_ft',
  ]);
  desk.book.workbook.undo();
  desk.book.workbook.undo();
  expect(texts('A1', 'A2', 'A3', 'A4', 'A5')).toEqual(before);
  expect(entries('A1')).toEqual(['=SUM(Plantings_Length_ft)']);
});

test('of two columns that read alike each stays what it was, whichever comes first', () => {
  for (const name of ['Seed-rate', 'Seed rate'])
    desk.do({ command: 'add column', sheet: 'crops', name, type: { type: 'number', unit: { us: '', si: '' } } });
  desk.set('Crops', 'Onion', 'Seed-rate', '4');
  desk.set('Crops', 'Onion', 'Seed rate', '9');
  desk.type({ A1: '=SUM(Crops_Seed_rate)', A2: '=SUM(Crops_Seed_rate_2)' });
  expect(texts('A1', 'A2')).toEqual(['4', '9']);
  const second = desk.book.column('Crops', 'Seed rate')?.id ?? '';
  act({ command: 'move column', sheet: 'crops', column: second, after: 'crop' });
  expect(texts('A1', 'A2')).toEqual(['4', '9']);
  expect(entries('A1', 'A2')).toEqual(['=SUM(Crops_Seed_rate_2)', '=SUM(Crops_Seed_rate)']);
});

test('what is refused, and what no formula names, brings nothing along', () => {
  const { workbook } = desk.book;
  const rename = { command: 'rename column', sheet: 'plantings', column: 'length', name: 'Sown' } as const;
  expect(withPapersFollowing(workbook, [rename])).toEqual([rename]);
  desk.type({ A1: '=SUM(Plantings_Length_ft)' });
  expect(withPapersFollowing(workbook, [rename])).toEqual([rename]);
  const other = { command: 'rename column', sheet: 'plantings', column: 'sown', name: 'Seeded' } as const;
  expect(withPapersFollowing(workbook, [other])).toEqual([other]);
});
