// What cells give to go on from: days, figures as they were typed and in the unit of their column, ranges with their ends.

import { expect, test } from 'vitest';
import { cellView, message, rowId, rows, sheetView } from '../../engine/index.ts';
import { filledEntry } from '../../ui/browser/grid/fill/filled-entry.ts';
import { seriesOf, waysFor } from '../../ui/browser/grid/fill/series.ts';
import { sourceOf } from '../../ui/browser/grid/fill/sources.ts';
import { inColumn } from '../../ui/browser/grid/typed-here.ts';
import { openFarm } from '../document/farm.ts';

const farm = openFarm();
const slot = rows(farm, 'plantings')[0] ?? -1;

function source(column: string, entry: string) {
  const view = sheetView(farm, 'plantings')?.columns.find(({ id }) => id === column);
  const row = rowId(farm, 'plantings', slot);
  const done = farm.do([{ command: 'set cell', sheet: 'plantings', row, column, entry }], message('paste cell'));
  if (done.refused || view === undefined) throw new Error(done.refused ? done.why : column);
  return sourceOf(farm, 'plantings', slot, view, '.');
}

test('a length in feet and inches is its value in feet, and is repeated as it was typed', () => {
  const first = source('length', '40 ft 6 in');
  expect(first).toMatchObject({ kind: 'number', entry: '40 ft 6 in', own: 40.5 });
  const second = source('length', '41 ft');
  expect(seriesOf([first, second], 'count', true)(0)).toEqual({ number: 41.5, unit: '' });
  expect(seriesOf([first], 'copy', true)(0)).toEqual({ text: '40 ft 6 in' });
});

test('a range is its ends, of days as of lengths, and one alone is copied', () => {
  const lengths = source('length', '40..50');
  expect(waysFor([lengths])).toEqual(['copy']);
  expect(seriesOf([lengths], 'copy', true)(1)).toEqual({ text: '40..50' });
  expect(seriesOf([lengths, source('length', '50..60')], 'count', true)(0)).toEqual({
    ends: [
      { number: 60, unit: '' },
      { number: 70, unit: '' },
    ],
  });
  const days = source('sown', '12 May..28 May');
  expect(waysFor([days])).toEqual(['copy']);
  expect(days).toMatchObject({ kind: 'range', ends: [{ kind: 'date' }, { kind: 'date' }] });
});

test('a blank gives nothing, a date its day, a name itself', () => {
  expect(source('length', '')).toEqual({ kind: 'blank' });
  expect(source('sown', '1 Jan 1970')).toEqual({ kind: 'date', day: 0 });
  expect(source('planting', 'Bed 3')).toEqual({ kind: 'text', text: 'Bed 3' });
});

/** What one cell further down reads, after these in a column of per cent. */
function shareAfter(...entries: readonly string[]): string {
  const slots = rows(farm, 'varieties');
  const column = sheetView(farm, 'varieties')?.columns.find(({ id }) => id === 'germination');
  const last = slots[entries.length] ?? -1;
  if (column === undefined || last < 0) throw new Error('there is no room');
  const type = (slot: number, entry: string): void => {
    const row = rowId(farm, 'varieties', slot);
    const cell = { command: 'set cell', sheet: 'varieties', row, column: column.id, entry } as const;
    const done = farm.do([cell], message('fill cell'));
    if (done.refused) throw new Error(done.why);
  };
  entries.forEach((entry, at) => {
    type(slots[at] ?? -1, entry);
  });
  const sources = entries.map((_, at) => sourceOf(farm, 'varieties', slots[at] ?? -1, column, '.'));
  const next = seriesOf(sources, 'count', true)(0);
  type(last, inColumn({ entry: filledEntry(next, column.unit, '.'), unit: column.unit }, column));
  return cellView(farm, 'varieties', last, column.id).figure;
}

test('per cent goes on in per cent, below 1 too', () => {
  const room = rows(farm, 'varieties').length;
  for (let more = room; more < 3; more += 1)
    farm.do(
      [{ command: 'insert row', sheet: 'varieties', entries: { variety: `Trial ${more}` } }],
      message('paste cell'),
    );
  expect(shareAfter('1.5', '1')).toBe('0.5');
  expect(shareAfter('2', '1.2')).toBe('0.4');
  expect(shareAfter('80', '85')).toBe('90');
  // A bare 0.875 is a share, 87.5 per cent; of a third the entry is the share too, for no per cent says it to the last bit.
  expect(shareAfter('0.875', '88')).toBe('88.5');
  expect(shareAfter(String(1 / 3), '35')).toBe('36.666667');
});
