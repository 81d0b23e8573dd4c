// What the dialogs of one's own sheets make: weeks that are the workbook's, columns of temperatures.

import { expect, test } from 'vitest';
import { cellView, columnNamed, message, rowId, rows, sheetNamed, sheetView } from '../../engine/index.ts';
import { seasonSpan } from '../../ui/browser/own/own-state.ts';
import { seasonOf } from '../sheets/season.ts';

test('a row for each week of the season begins on the Mondays that Weeks has', () => {
  const { book } = seasonOf({});
  const { workbook } = book;
  const as = { id: 'week', name: 'Week' };
  const done = workbook.do(
    [{ command: 'add sheet', name: 'Diary', about: '', rows: { from: 'span', ...seasonSpan(), step: 'week', as } }],
    message('add sheet', { sheet: 'Diary' }),
  );
  expect(done.refused).toBe(false);
  const days = (sheet: string, column: string): readonly string[] => {
    const view = sheetNamed(workbook, sheet);
    const id = view === undefined ? undefined : columnNamed(view, column)?.id;
    return Array.from(
      rows(workbook, view?.id ?? ''),
      (slot) => cellView(workbook, view?.id ?? '', slot, id ?? '').text,
    );
  };
  const own = days('Diary', 'Week');
  // 28 December 2026 is the Monday before 1 January 2027, a Friday.
  expect(own.slice(0, 2)).toEqual(['28 Dec 2026', '4 Jan 2027']);
  expect(own.at(-1)).toBe('27 Dec 2027');
  expect(days('Weeks', 'Week').slice(0, own.length)).toEqual(own);
});

// 0 °C is 273.15 K, and 50 °F are 10 °C, by definition.
test.each([
  ['degC', '12', '12', 285.15],
  ['°F', '50', '50', 283.15],
  ['degC', '50 F', '50 °F', 283.15],
])('a number column of one’s own in %s takes the temperature %s', (unit, entry, text, kelvin) => {
  const { book } = seasonOf({ Beds: [{ Bed: 'A' }] });
  const { workbook } = book;
  const type = { type: 'number', unit: { us: unit, si: unit } } as const;
  workbook.do([{ command: 'add column', sheet: 'beds', name: 'Warmth', type }], message('trial'));
  const view = sheetView(workbook, 'beds');
  const column = (view === undefined ? undefined : columnNamed(view, 'Warmth')?.id) ?? '';
  const [slot = -1] = rows(workbook, 'beds');
  const row = rowId(workbook, 'beds', slot) ?? '';
  const done = workbook.do([{ command: 'set cell', sheet: 'beds', row, column, entry }], message('trial'));
  expect(done).toMatchObject({ refused: false });
  const cell = cellView(workbook, 'beds', slot, column);
  expect(cell.text).toBe(text);
  expect(cell.value).toBeCloseTo(kelvin, 9);
});
