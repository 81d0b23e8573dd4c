// What sheets and columns of one's own, and rows, may be called: names stand in formulas and lists, on one line, and those of sheets
// and columns are told apart by what they look like.

import { expect, test } from 'vitest';
import { cellView, rowId, rowNamed, rows, sheetNamed, tryEntry } from '../../engine/index.ts';
import { openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
/** é as one letter, and as e with its accent. */
const [COMPOSED, DECOMPOSED] = ['\u00e9t\u00e9', 'e\u0301te\u0301'];

test('two that look alike are one name', () => {
  const workbook = openFarm();
  const sheet = (name: string) => ({ command: 'add sheet', name, about: '', rows: { from: 'entry' } }) as const;
  expect(workbook.do([sheet(COMPOSED)], MESSAGE).refused).toBe(false);
  expect(workbook.do([sheet(DECOMPOSED)], MESSAGE).refused).toBe(true);
  const id = sheetNamed(workbook, COMPOSED)?.id ?? '';
  const column = (name: string) => ({ command: 'add column', sheet: id, name, type: { type: 'text' } }) as const;
  expect(workbook.do([column(DECOMPOSED)], MESSAGE).refused).toBe(false);
  expect(workbook.do([column(COMPOSED)], MESSAGE).refused).toBe(true);
  expect(workbook.do([column('ete')], MESSAGE).refused).toBe(false);
});

test('a name has one line', () => {
  const workbook = openFarm();
  const rows = { from: 'entry' } as const;
  expect(workbook.do([{ command: 'add sheet', name: 'Two\nlines', about: '', rows }], MESSAGE).refused).toBe(true);
  const done = workbook.do(
    [{ command: 'add column', sheet: 'beds', name: 'Two\nlines', type: { type: 'text' } }],
    MESSAGE,
  );
  expect(done).toMatchObject({ refused: true, why: expect.stringContaining('one line') });
});

test('a row’s name has one line however it is typed, and a link finds it so; other texts keep their lines', () => {
  const workbook = openFarm();
  const bed = rows(workbook, 'beds')[0] ?? -1;
  const row = rowId(workbook, 'beds', bed);
  const done = workbook.do(
    [
      { command: 'set cell', sheet: 'beds', row, column: 'bed', entry: 'Barn 2\r\nupper end' },
      { command: 'insert row', sheet: 'beds', entries: { bed: 'Barn\n3' } },
    ],
    MESSAGE,
  );
  expect(done.refused).toBe(false);
  expect(cellView(workbook, 'beds', bed, 'bed').entry).toBe('Barn 2 upper end');
  expect(rowNamed(workbook, 'beds', 'Barn 3')).toBeDefined();
  expect(tryEntry(workbook, 'plantings', 'bed', 'Barn 2 upper end').ok).toBe(true);
  workbook.do([{ command: 'add column', sheet: 'beds', name: 'Remark', type: { type: 'text' } }], MESSAGE);
  const column = sheetNamed(workbook, 'Beds')?.columns.find(({ name }) => name === 'Remark')?.id ?? '';
  const typed = { command: 'set cell', sheet: 'beds', row, column, entry: 'One.\nTwo.' } as const;
  expect(workbook.do([typed], MESSAGE).refused).toBe(false);
  expect(cellView(workbook, 'beds', bed, column).entry).toBe('One.\nTwo.');
});
