// How far an edit reaches: which columns are worked out again, and for which rows; everything else is left alone.
import { beforeEach, describe, expect, test } from 'vitest';
import type { Frame } from '../../engine/calculation/frame.ts';
import { ColumnNode } from '../../engine/calculation/graph/column-node.ts';
import { dirtyRows } from '../../engine/calculation/graph/graph.ts';
import type { RowSet } from '../../engine/calculation/row-set.ts';
import { wordOf } from '../../sheets-templates/names.ts';
import { type Book, type Edit, opened } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';
import { told } from './frames.ts';

const TEXT = { type: 'text' } as const;

function farm(): Book {
  return opened(
    besideFarm(
      [
        sheet('Families', { key: 'Family', columns: [entered('Family', TEXT), entered('Weight', plain)] }),
        sheet('Crops', {
          key: 'Crop',
          columns: [
            entered('Crop', TEXT),
            entered('Family', { type: 'link', table: 'Families' }),
            entered('Outlet', TEXT),
            entered('Factor', plain),
            computed('Total', plain, 'SUMIFS(Sales[Boxes]; Sales[Crop]; [Crop])'),
            computed('At outlet', plain, 'SUMIFS(Sales[Boxes]; Sales[Outlet]; [Outlet])'),
            computed('Both', plain, 'SUMIFS(Sales[Boxes]; Sales[Crop]; [Crop]; Sales[Outlet]; [Outlet])'),
            computed('Above', plain, 'COUNTIFS(Sales[Crop]; [Crop]; Sales[Boxes]; ">" & [Factor])'),
            computed('Market', plain, 'SUMIFS(Sales[Boxes]; Sales[Crop]; [Crop]; Sales[Outlet]; "market")'),
            computed('Share', plain, '[Total] / SUM(Sales[Boxes])'),
            computed('Sales', plain, 'ROWS(Sales)'),
            computed('Age', { type: 'number', unit: { us: 'day', si: 'day' } }, 'TODAY() - DATE(2026; 1; 1)'),
            computed('First', plain, 'XLOOKUP([Outlet]; Sales[Outlet]; Sales[Boxes]; 0)'),
            computed('Found', plain, 'XLOOKUP(Farm[Season] - 2025; Sales[Boxes]; Sales[Value]; 0)'),
          ],
        }),
        sheet('Sales', {
          columns: [
            entered('Crop', { type: 'link', table: 'Crops' }),
            entered('Outlet', TEXT),
            entered('Boxes', plain),
            computed('Value', plain, '[Boxes] * [Crop].[Factor]'),
            computed('Weighed', plain, '[Boxes] * [Crop].[Family].[Weight]'),
          ],
        }),
      ],
      {
        Families: [
          { Family: 'Onions', Weight: 2 },
          { Family: 'Beets', Weight: 3 },
        ],
        Crops: [
          { Crop: 'Leek', Family: 'Onions', Outlet: 'Market', Factor: 2 },
          { Crop: 'Beet', Family: 'Beets', Outlet: 'Shop', Factor: 5 },
          { Crop: 'Chard', Family: 'Beets', Outlet: 'Market', Factor: 1 },
        ],
        Sales: [
          { Crop: 'Leek', Outlet: 'Market', Boxes: 3 },
          { Crop: 'Beet', Outlet: 'Shop', Boxes: 4 },
          { Crop: 'Leek', Outlet: 'Shop', Boxes: 6 },
          { Crop: 'Chard', Outlet: 'Market', Boxes: 1 },
        ],
      },
    ),
  );
}

describe('an edit', () => {
  let book: Book;
  beforeEach(() => {
    book = farm();
    // What nobody asked for sleeps through an edit.
    book.workbook.recalculateAll();
  });

  /** Does an edit, watching which rows of which columns are worked out. */
  function reached(edit: Edit): Record<string, string> {
    const runs: Record<string, string> = {};
    const { run } = ColumnNode.prototype;
    ColumnNode.prototype.run = function (this: ColumnNode, frame: Frame, changed: RowSet): void {
      runs[this.name] = told(dirtyRows(frame, this));
      run.call(this, frame, changed);
    };
    try {
      expect(book.edit([edit], 'Test').refused).toBe(false);
    } finally {
      ColumnNode.prototype.run = run;
    }
    return runs;
  }

  const cell = (table: string, at: number, column: string, entry: string): Edit => ({
    edit: 'cell',
    table,
    row: book.rows(table)[at] ?? -1,
    column,
    entry,
  });

  /** Columns of Crops and Sales with the rows that were worked out; a column with none isn't there. */
  const CASES: readonly (readonly [
    name: string,
    edit: () => Edit,
    crops: Record<string, string>,
    sales: Record<string, string>,
  ])[] = [
    [
      'of a value reaches its row, the totals of its groups, and every reader of the whole column',
      () => cell('Sales', 0, 'Boxes', '5'),
      { Total: '0', 'At outlet': '0 2', Both: '0', Above: '0', Market: '0', Share: 'all', First: 'all', Found: 'all' },
      { Value: '0', Weighed: '0' },
    ],
    [
      'of a link reaches the groups that the row leaves and joins; the total over all rows stays',
      () => cell('Sales', 0, 'Crop', 'Beet'),
      // Leek counts boxes above 2, so these 3 were in it; Beet counts those above 5 and sells in the shop, so they are not.
      { Total: '0 1', Both: '0', Above: '0', Market: '0 1', Share: '0 1', Found: 'all' },
      { Value: '0', Weighed: '0' },
    ],
    [
      'of a text that is grouped by',
      () => cell('Sales', 1, 'Outlet', 'Market'),
      { 'At outlet': '0 1 2', Both: '1', Market: '1', First: 'all' },
      {},
    ],
    ['of nothing but capitals reaches nothing', () => cell('Sales', 1, 'Outlet', 'SHOP'), {}, {}],
    [
      'of a linked value reaches the rows that link there',
      () => cell('Crops', 1, 'Factor', '3'),
      { Above: '1', Found: 'all' },
      { Value: '1' },
    ],
    [
      'of a wanted key reaches that row alone',
      () => cell('Crops', 1, 'Outlet', 'Market'),
      { 'At outlet': '1', Both: '1', First: '1' },
      {},
    ],
    ['two links away', () => cell('Families', 1, 'Weight', '4'), {}, { Weighed: '1 3' }],
    ['of the first of two links', () => cell('Crops', 0, 'Family', 'Beets'), {}, { Weighed: '0 2' }],
    ['of a one-row sheet', () => cell('Farm', 0, 'Season', '2028'), { Found: 'all' }, {}],
    ['of today', () => ({ edit: 'today', today: 20_900 }), { Age: 'all' }, {}],
    [
      'that adds a row; a total over conditions that it does not meet stops there',
      () => ({ edit: 'insert row', table: 'Sales', entries: { Crop: 'Chard', Outlet: 'Box', Boxes: '2' } }),
      { Total: '2', Above: '2', Share: 'all', Sales: 'all', First: 'all', Found: 'all' },
      { Value: '4', Weighed: '4' },
    ],
    [
      'that takes a row out; its one box was not above the 1 that Chard counts from',
      () => ({ edit: 'remove row', table: 'Sales', row: book.rows('Sales')[3] ?? -1 }),
      {
        Total: '2',
        'At outlet': '0 2',
        Both: '2',
        Market: '2',
        Share: 'all',
        Sales: 'all',
        First: 'all',
        Found: 'all',
      },
      { Value: '3', Weighed: '3' },
    ],
    ['of a name that links show reaches no figure', () => cell('Crops', 0, 'Crop', 'Leeks'), {}, {}],
  ];

  test.each(CASES)('%s', (_, edit, crops, sales) => {
    const named = (table: string, columns: Record<string, string>): [string, string][] =>
      Object.entries(columns).map(([column, rows]) => [`${wordOf(table)}/${wordOf(column)}`, rows]);
    const wanted = Object.fromEntries([...named('Crops', crops), ...named('Sales', sales)]);
    const met = Object.entries(reached(edit())).filter(([, rows]) => rows !== '');
    expect(Object.fromEntries(met)).toEqual(wanted);
  });
});
