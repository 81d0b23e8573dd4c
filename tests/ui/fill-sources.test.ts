// What cells give to go on from: days, figures as they were typed and in the unit of their column, ranges with their ends.

import { expect, test } from 'vitest';
import { message, rowId, rows, sheetView } from '../../engine/index.ts';
import { seriesOf, waysFor } from '../../ui/browser/grid/fill/series.ts';
import { sourceOf } from '../../ui/browser/grid/fill/sources.ts';
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
