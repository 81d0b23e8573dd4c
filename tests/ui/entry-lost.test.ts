// What is said of an entry whose place went while it was open.

import { describe, expect, test } from 'vitest';
import { rowId, rows } from '../../engine/index.ts';
import { lostWords } from '../../ui/browser/entry/entry-lost.ts';
import { onionBook } from '../browser/workbook-page.ts';

describe('an entry that was open when its place went', () => {
  const book = onionBook().workbook;
  const [slot = 0] = rows(book, 'beds');
  const entry = { sheet: 'beds', row: rowId(book, 'beds', slot), column: 'field', label: 'Field, Bed 1', text: 'Yard' };

  test('says whose row went', () => {
    expect(lostWords(book, { ...entry, row: 'no such row' })).toBe(
      'Field, Bed 1: “Yard” was not taken. The row was removed meanwhile.',
    );
  });

  test('says that the column went, whatever became of the row', () => {
    const gone = { ...entry, row: 'no such row', column: 'no-such-column' };
    expect(lostWords(book, gone)).toBe('Field, Bed 1: “Yard” was not taken. The column was removed meanwhile.');
  });

  test('says that the sheet went, where its columns and rows went with it', () => {
    const gone = { ...entry, sheet: 'no-such-sheet' };
    expect(lostWords(book, gone)).toBe('Field, Bed 1: “Yard” was not taken. The sheet was removed meanwhile.');
  });

  test('says that the cell is there, but out of sight', () => {
    expect(lostWords(book, entry)).toBe('Field, Bed 1: “Yard” was not taken. The cell is no longer shown here.');
  });

  test('does not repeat a long text in full', () => {
    expect(lostWords(book, { ...entry, text: 'long '.repeat(900) }).length).toBeLessThan(200);
  });
});
