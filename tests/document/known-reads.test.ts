// An entry that was read before is given again as it was read, and anew where anything that its reading rests on is another.

import { expect, test } from 'vitest';
import { KnownReads } from '../../engine/document/known-reads.ts';
import { type Book, opened } from '../book.ts';
import { besideFarm, entered, sheet } from '../workbook/small.ts';

const DATED = sheet('Sowings', { columns: [entered('Name', { type: 'text' }), entered('Sown', { type: 'date' })] });

function sown(book: Book, entry: string): unknown {
  book.edit([{ edit: 'cell', table: 'Sowings', row: 0, column: 'Sown', entry }]);
  return book.cell('Sowings', 0, 'Sown').text;
}

test('a day without a year is of the season that stands when it is typed', () => {
  const book = opened(besideFarm([DATED], { Sowings: [{ Name: 'first' }] }));
  const season = Number(book.value('Farm', 0, 'Season'));
  expect(sown(book, '3 Apr')).toBe(`3 Apr ${season}`);
  book.edit([{ edit: 'cell', table: 'Farm', row: 0, column: 'Season', entry: String(season + 2) }]);
  expect(sown(book, '3 Apr')).toBe(`3 Apr ${season + 2}`);
});

test('what was refused is read again, what was read is not, and another context begins anew', () => {
  const book = opened(besideFarm([DATED], { Sowings: [] }));
  const { document } = book.workbook;
  const column = document.program.sheets.flatMap(({ columns }) => columns).find(({ name }) => name === 'Sown');
  if (column === undefined) throw new Error('The sheet has no such column.');
  const reads = new KnownReads<{ readonly ok: boolean; readonly at: number }>();
  let count = 0;
  const read = (ok: boolean) => () => ({ ok, at: ++count });
  const context = document.plainEntry;
  expect(reads.once(column, '12 smoots', context, read(false))).toEqual({ ok: false, at: 1 });
  expect(reads.once(column, '12 smoots', context, read(true))).toEqual({ ok: true, at: 2 });
  expect(reads.once(column, '12 smoots', context, read(true))).toEqual({ ok: true, at: 2 });
  for (const other of [{ year: context.year + 1 }, { dayFirst: context.dayFirst !== true }, { decimalComma: true }]) {
    const before = count;
    expect(reads.once(column, '12 smoots', { ...context, ...other }, read(true)).at).toBe(before + 1);
  }
});
