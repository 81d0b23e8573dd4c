// Totals of groups after the groups were numbered anew: a group that comes later takes a number that another had before.

import { expect, test } from 'vitest';
import { cellValue, message, rowId, rows } from '../../engine/index.ts';
import { opened } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const COUNT = 40;

test('a group that comes after most groups went is counted', () => {
  const names = Array.from({ length: COUNT }, (_, at) => String(at + 1));
  const { workbook } = opened(
    besideFarm(
      [
        sheet('Items', {
          key: 'Item',
          columns: [
            entered('Item', { type: 'text' }),
            entered('Kind', plain),
            computed('Counts as', plain, 'IF(Farm[Season] > 2027; 1; [Kind])'),
          ],
        }),
        sheet('Kinds', {
          key: 'Name',
          columns: [
            entered('Name', { type: 'text' }),
            entered('Kind', plain),
            computed('Items', plain, 'COUNTIFS(Items[Counts as]; [Kind])'),
          ],
        }),
      ],
      {
        Items: names.map((name) => ({ Item: name, Kind: name })),
        Kinds: names.map((name) => ({ Name: name, Kind: name })),
      },
    ),
  );
  const type = (of: string, at: number, column: string, entry: string): void => {
    const row = rowId(workbook, of, rows(workbook, of)[at] ?? 0);
    const done = workbook.do([{ command: 'set cell', sheet: of, row, column, entry }], message('trial'));
    if (done.refused) throw new Error(done.why);
  };
  const counted = (): readonly unknown[] =>
    Array.from(rows(workbook, 'kinds'), (slot) => cellValue(workbook, 'kinds', slot, 'items'));
  expect(counted()).toEqual(names.map(() => 1));
  type('farm', 0, 'season', '2028');
  expect(counted()).toEqual(names.map((_, at) => (at === 0 ? COUNT : 0)));
  type('items', 4, 'counts-as', '7');
  expect(counted()).toEqual(names.map((_, at) => (at === 0 ? COUNT - 1 : at === 6 ? 1 : 0)));
});
