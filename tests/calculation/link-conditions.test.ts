// Conditions on links against what a row says: rows other than, before and behind go by the names that rows are known by, whatever
// order they stand in. Checked against walking the names; the figures stay those of a workbook opened afresh when rows are called
// otherwise and stand elsewhere.

import { expect, test } from 'vitest';
import { rowId } from '../../engine/index.ts';
import { type Book, opened, openedFrom } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;
const BED = { type: 'link', table: 'Plots' } as const;

type Takes = (name: string, own: string) => boolean;

const CONDITIONS: Readonly<Record<string, readonly [sign: string, takes: Takes]>> = {
  other: ['<>', (name, own) => name !== own],
  before: ['<', (name, own) => name < own],
  'up to': ['<=', (name, own) => name <= own],
  behind: ['>', (name, own) => name > own],
  from: ['>=', (name, own) => name >= own],
  own: ['=', (name, own) => name === own],
};

/** Of a word (the plot's own name), of a link, and of the name that a link leads to. */
const ASKED = { word: '[Plot]', link: '[On]', name: '[On].[Plot]' } as const;

function asking(word: string): ReturnType<typeof computed>[] {
  return Object.entries(CONDITIONS).flatMap(([name, [sign]]) => [
    computed(`${name} rows`, plain, `COUNTIFS(Rows[On]; "${sign}" & ${word})`),
    computed(`${name} most`, plain, `SUM(MAXIFS(Rows[Held]; Rows[On]; "${sign}" & ${word}))`),
    computed(`${name} first`, plain, `SUM(FIRSTIFS(Rows[Held]; Rows[On]; "${sign}" & ${word}))`),
  ]);
}

const PLOTS = ['Creek 2', 'barn', 'Creek 10', 'Orchard', 'Ash', 'Mill'];
const ROWS = Array.from({ length: 24 }, (_, at) => ({
  On: PLOTS[(at * 5 + (at % 3)) % 5] ?? '',
  Held: ((at * 7) % 24) + 1,
}));

function book(): Book {
  return opened(
    besideFarm(
      [
        sheet('Plots', { key: 'Plot', columns: [entered('Plot', TEXT), ...asking(ASKED.word)] }),
        sheet('Rows', { columns: [entered('On', BED), entered('Held', plain), ...asking(ASKED.link)] }),
        sheet('More', { columns: [entered('On', BED), ...asking(ASKED.name)] }),
      ],
      {
        Plots: PLOTS.map((Plot) => ({ Plot })),
        Rows: [...ROWS, { Held: 99 }],
        More: PLOTS.map((On) => ({ On })),
      },
    ),
  );
}

function agrees(of: Book): void {
  const named = (table: string, row: number, column: string): string => of.cell(table, row, column).text.toLowerCase();
  const rows = [...of.rows('Rows')].map((row) => ({
    on: named('Rows', row, 'On'),
    held: Number(of.value('Rows', row, 'Held')),
  }));
  for (const [table, column] of [
    ['Plots', 'Plot'],
    ['Rows', 'On'],
    ['More', 'On'],
  ] as const) {
    for (const row of of.rows(table)) {
      const own = named(table, row, column);
      for (const [name, [, takes]] of Object.entries(CONDITIONS)) {
        const where = `${table} ${own} ${name}`;
        const met = own === '' ? undefined : rows.filter(({ on }) => on !== '' && takes(on, own));
        expect(of.value(table, row, `${name} rows`), where).toBe(met?.length ?? null);
        if (met === undefined) continue;
        expect(of.value(table, row, `${name} most`), where).toBe(Math.max(0, ...met.map(({ held }) => held)));
        expect(of.value(table, row, `${name} first`), where).toBe(met[0]?.held ?? 0);
      }
    }
  }
}

function figures(of: Book): readonly unknown[] {
  return ['Plots', 'Rows', 'More'].flatMap((table) =>
    [...of.rows(table)].flatMap((row) =>
      Object.keys(CONDITIONS).flatMap((name) =>
        ['rows', 'most', 'first'].map((what) => of.value(table, row, `${name} ${what}`)),
      ),
    ),
  );
}

test('rows other than, before and behind one are told by name, through other names and another order', () => {
  const workbook = book();
  agrees(workbook);
  const afresh = (): void => {
    agrees(workbook);
    expect(figures(workbook)).toEqual(figures(openedFrom(workbook.workbook.data(), workbook.template)));
  };
  const [first = 0] = workbook.rows('Plots');
  workbook.edit([{ edit: 'cell', table: 'Plots', row: first, column: 'Plot', entry: 'Zeta' }]);
  afresh();
  const { workbook: made } = workbook;
  const done = made.do([{ command: 'move rows', sheet: 'plots', rows: [rowId(made, 'plots', first)] }], {
    code: 'move',
    parts: {},
  });
  expect(done.refused).toBe(false);
  afresh();
  const [row = 0] = workbook.rows('Rows');
  workbook.edit([{ edit: 'cell', table: 'Rows', row, column: 'On', entry: 'Mill' }]);
  afresh();
  workbook.edit([{ edit: 'insert row', table: 'Rows', entries: { On: 'Ash', Held: '40' } }]);
  afresh();
});
