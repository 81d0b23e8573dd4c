// What the list of sheets says of each: how many rows, none yet, how much to look at, and which columns wait for an entry.

import { expect, test } from 'vitest';
import { type Finding, type FindingLevel, rowId, rowName, rows, sheetViews } from '../../engine/index.ts';
import { onions } from '../../sheets-templates/onions.ts';
import { startOf } from '../../sheets-templates/season.ts';
import { needsOf, rowsInWords } from '../../ui/browser/page/sheet-needs.ts';
import { started } from '../book.ts';

/** Two beds: the field of the first stands, that of the second was not typed. */
function yard() {
  const beds = [
    { Bed: 'A', Field: 'Yard', Length: '50 ft' },
    { Bed: 'B', Length: '50 ft' },
  ];
  const start = startOf(onions().sheets, { title: 'Yard', season: 2027, today: 20_774, rows: { Beds: beds } });
  const begun = started(onions(), start);
  if (!begun.ok) throw new Error(begun.problems.join(' '));
  const book = begun.workbook.workbook;
  const sheet = (name: string) => {
    const view = sheetViews(book).find((one) => one.name === name);
    if (view === undefined) throw new Error(`There is no sheet ${name}.`);
    return view;
  };
  const inBed = (at: number, columnName: string, level: FindingLevel): Finding => {
    const { id, name, columns } = sheet('Beds');
    const row = rows(book, id)[at] ?? -1;
    const column = columns.find((one) => one.name === columnName)?.id ?? '';
    const says = 'Look here.';
    const [idOfRow, nameOfRow] = [rowId(book, id, row), rowName(book, id, row)];
    return {
      level,
      sheet: id,
      sheetName: name,
      row,
      rowId: idOfRow,
      rowName: nameOfRow,
      column,
      columnName,
      says,
      check: '',
    };
  };
  return { book, sheet, inBed };
}

test('a sheet that a person fills says none yet, one of one row nothing, others how many', () => {
  const { book, sheet } = yard();
  expect(rowsInWords(book, sheet('Plantings'))).toBe('none yet');
  expect(rowsInWords(book, sheet('Farm'))).toBe('');
  expect(rowsInWords(book, sheet('Beds'))).toBe('2');
});

test('things to look at are counted, and columns in which an entry is missing are named once', () => {
  const { book, sheet, inBed } = yard();
  const found = [inBed(1, 'Field', 'warning'), inBed(1, 'Field', 'warning'), inBed(0, 'Length', 'warning')];
  expect(needsOf(book, sheet('Beds'), found)).toEqual({
    level: 'warning',
    count: 3,
    words: '3 things to look at, to be filled in: Field',
  });
});

test('what is found in a cell that is filled waits for no entry', () => {
  const { book, sheet, inBed } = yard();
  expect(needsOf(book, sheet('Beds'), [inBed(0, 'Field', 'error')])?.words).toBe('1 thing to look at');
});

test('nothing is said of a sheet on which only notes were found', () => {
  const { book, sheet, inBed } = yard();
  expect(needsOf(book, sheet('Beds'), [inBed(1, 'Field', 'note')])).toBeUndefined();
  expect(needsOf(book, sheet('Beds'), [])).toBeUndefined();
});
