// Trying edits out without doing them, and many edits as one step of undo: what a control that is dragged rests on.

import { expect, test } from 'vitest';
import { type Book, createWorkbook, type Edit } from '../book.ts';
import { SMALL } from './small.ts';

function open(): Book {
  const opened = createWorkbook(SMALL);
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  return opened.workbook;
}

function spacing(entry: string): Edit {
  return { edit: 'cell', table: 'Plantings', row: 0, column: 'Spacing', entry };
}

function everything(workbook: Book): string {
  return JSON.stringify(
    workbook
      .tables()
      .map((table) => [
        table.name,
        [...workbook.rows(table.name)].map((row) =>
          table.columns.map((column) => workbook.cell(table.name, row, column.name)),
        ),
      ]),
  );
}

const READ = [
  { table: 'Plantings', row: 0, column: 'Stations' },
  { table: 'Varieties', row: 0, column: 'Seeds' },
];

test('each trial answers as the edit itself would, in other sheets too', () => {
  const workbook = open();
  const entries = ['8 in', '6 in', '10 cm', '1 ft'];
  const answers = workbook.whatIf(
    entries.map((entry) => [spacing(entry)]),
    READ,
  );
  entries.forEach((entry, index) => {
    const other = open();
    other.edit([spacing(entry)], 'Spacing');
    expect(answers[index]).toEqual(READ.map((cell) => other.value(cell.table, cell.row, cell.column)));
  });
  // 30 ft at 6 in: 60 places.
  expect(answers[1]?.[0]).toBe(60);
});

test('trials leave the workbook, its journal and its listeners as they were', () => {
  const workbook = open();
  workbook.edit([spacing('7 in')], 'Spacing');
  const before = everything(workbook);
  const journal = workbook.undoState();
  let told = 0;
  workbook.subscribe(() => {
    told += 1;
  });
  const answers = workbook.whatIf(
    [[spacing('5 in')], [spacing('wide')], [{ edit: 'remove row', table: 'Plantings', row: 0 }], []],
    READ,
  );
  expect(answers[1]).toBeUndefined();
  expect(answers[3]?.[0]).toBe(workbook.value('Plantings', 0, 'Stations'));
  expect(everything(workbook)).toBe(before);
  expect(workbook.undoState()).toEqual(journal);
  expect(told).toBe(0);
});

test('a drag of many edits is one step back and one step on', () => {
  const workbook = open();
  const before = everything(workbook);
  workbook.edit([spacing('7 in')], 'Spacing of P1');
  for (const entry of ['6.5 in', '6 in', '5.5 in']) workbook.edit([spacing(entry)], 'Spacing of P1', 'joined');
  const after = everything(workbook);
  workbook.undo();
  expect(everything(workbook)).toBe(before);
  expect(workbook.undoState().undo).toBeUndefined();
  workbook.redo();
  expect(everything(workbook)).toBe(after);
});

test('edits join only the same label, and other cells keep their own way back', () => {
  const workbook = open();
  const before = everything(workbook);
  workbook.edit([spacing('7 in')], 'Spacing of P1');
  workbook.edit([{ edit: 'cell', table: 'Beds', row: 0, column: 'Length', entry: '40 ft' }], 'Length of B1', 'joined');
  workbook.edit([{ edit: 'cell', table: 'Beds', row: 1, column: 'Length', entry: '50 ft' }], 'Length of B1', 'joined');
  expect(workbook.undoState().undo).toBe('Length of B1');
  workbook.undo();
  expect(workbook.cell('Beds', 0, 'Length').text).toBe('50');
  expect(workbook.undoState().undo).toBe('Spacing of P1');
  workbook.undo();
  expect(everything(workbook)).toBe(before);
});

test('a sheet is described anew after its formulas, columns or units changed, by undo and trials too', () => {
  const workbook = open();
  const formula = (): string | undefined =>
    workbook.table('Plantings')?.columns.find(({ name }) => name === 'Stations')?.formula;
  const before = formula();
  const edit: Edit = { edit: 'formula', table: 'Plantings', column: 'Stations', formula: '[Length] / [Spacing]' };
  workbook.whatIf([[edit]], READ);
  expect(formula()).toBe(before);
  workbook.edit([edit], 'Stations');
  expect(formula()).toBe('[Length] / [Spacing]');
  workbook.undo();
  expect(formula()).toBe(before);
  workbook.edit([{ edit: 'units', units: 'si' }], 'Units');
  expect(workbook.table('Plantings')?.columns.find(({ name }) => name === 'Spacing')?.unit).toBe('cm');
});
