// What the list of sheets says of each: how many rows, none yet, how much to look at, and which columns wait for an entry.

import { expect, test } from 'vitest';
import { Findings, sheetViews } from '../../engine/index.ts';
import { ONIONS } from '../../sheets-templates/onions.ts';
import { startOf } from '../../sheets-templates/season.ts';
import { needsOf, rowsInWords } from '../../ui/browser/page/sheet-needs.ts';
import { started } from '../book.ts';

type Rows = readonly Readonly<Record<string, string>>[];

function yard(beds: Rows) {
  const start = startOf(ONIONS.sheets, { title: 'Yard', season: 2027, today: 20_774, rows: { Beds: beds } });
  const begun = started(ONIONS.template, start);
  if (!begun.ok) throw new Error(begun.problems.join(' '));
  const book = begun.workbook.workbook;
  const found = new Findings(book).all();
  const sheet = (name: string) => {
    const view = sheetViews(book).find((one) => one.name === name);
    if (view === undefined) throw new Error(`There is no sheet ${name}.`);
    return view;
  };
  const on = (name: string) => {
    const view = sheet(name);
    return needsOf(
      book,
      view,
      found.filter((one) => one.sheet === view.id),
    );
  };
  return { rowsOf: (name: string) => rowsInWords(book, sheet(name)), needsOf: on };
}

test('a sheet that a person fills says none yet, one of one row nothing, others how many', () => {
  const { rowsOf } = yard([
    { Bed: 'A', Field: 'Yard', Length: '50 ft' },
    { Bed: 'B', Field: 'Yard', Length: '50 ft' },
  ]);
  expect(rowsOf('Plantings')).toBe('none yet');
  expect(rowsOf('Farm')).toBe('');
  expect(rowsOf('Beds')).toBe('2');
});

test('columns that wait for an entry are named once, however many rows wait', () => {
  const { needsOf: needs } = yard([{ Length: '50 ft' }, { Length: '40 ft' }, { Bed: 'C', Length: '50 ft' }]);
  expect(needs('Beds')).toEqual({ level: 'warning', count: 2, words: '2 things to look at, to be filled in: Bed' });
});

test('nothing is said of a sheet on which nothing was found', () => {
  expect(yard([{ Bed: 'A', Field: 'Yard', Length: '50 ft' }]).needsOf('Beds')).toBeUndefined();
});
