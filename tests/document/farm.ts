// A small template in two versions, with rows of every kind, for the laws of documents. The second version renames a sheet and
// columns, mends a formula, adds a column and a check, takes a column out, and ships a row more and one less.

import {
  createVocabulary,
  type DocumentData,
  type HistoryData,
  newDocument,
  type Template,
  type TemplateShelf,
  toCanonical,
  Workbook,
  type World,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { bindSheets, layOver } from '../../engine/schema/lay-over.ts';
import { NOTHING_OWN } from '../../engine/schema/own.ts';
import { wordOf } from '../../sheets-templates/names.ts';
import { Book, templateOf } from '../book.ts';
import { snapshot } from '../properties/snapshot.ts';
import { computed, entered, number, plain, SMALL, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;

const FIRST = templateOf({
  ...SMALL,
  sheets: [
    ...SMALL.sheets,
    sheet('Trays', {
      key: 'Tray',
      columns: [entered('Tray', TEXT), entered('Cells', plain), entered('Depth', number('in', 'cm'))],
    }),
    sheet('Bed weeks', {
      rows: { from: 'pairs', tables: ['Beds', 'Weeks'], as: ['Bed', 'Week'], where: '[Week].[Sown] > 0' },
      columns: [entered('Remark', TEXT), computed('Room', number('ft', 'm'), '[Bed].[Free]')],
    }),
  ],
});

const TRAYS = [
  { id: 'tray-72', cells: { tray: '72 cells', cells: 72, depth: '2 in' } },
  { id: 'tray-128', cells: { tray: '128 cells', cells: 128, depth: '1.5 in' } },
];

/** A way of looking at the beds, which the second version widens. */
const ROOM = { id: 'room', name: 'How much room?', columns: ['free'] };

export const VERSION_1: Template = {
  ...FIRST,
  rows: { trays: TRAYS },
  sheets: FIRST.sheets.map((one) => (one.id === 'beds' ? { ...one, views: [ROOM] } : one)),
};

export const VERSION_2: Template = {
  ...FIRST,
  version: 2,
  rows: {
    trays: [
      { id: 'tray-50', cells: { tray: '50 cells', cells: 50 } },
      { id: 'tray-128', cells: { tray: '128 cells', cells: 120 } },
    ],
  },
  // Formulas in kept form follow the new names.
  sheets: bindSheets(layOver(FIRST, NOTHING_OWN), FIRST.sheets).map((one) => {
    if (one.id === 'beds') return { ...one, name: 'Garden beds', views: [{ ...ROOM, columns: ['length', 'free'] }] };
    if (one.id === 'trays') return { ...one, columns: one.columns.filter(({ id }) => id !== 'depth') };
    if (one.id !== 'plantings') return one;
    return {
      ...one,
      columns: [
        ...one.columns.map((column) => {
          if (column.id === 'spacing') return { ...column, name: 'In-row spacing' };
          if (column.id === 'stations')
            return { ...column, formula: 'ROUNDDOWN([#plantings/length] / [#plantings/spacing]; 0) + 1' };
          return column;
        }),
        {
          id: 'lost',
          name: 'Lost',
          type: { type: 'number', unit: { us: '%', si: '%' } } as const,
          group: '',
          note: '',
          role: 'entered' as const,
          formula: '',
        },
      ],
      checks: [
        ...one.checks,
        {
          id: 'many',
          name: 'many',
          level: 'note' as const,
          column: 'lost',
          says: 'IF([#plantings/lost] > 50%; "Half is lost.")',
        },
      ],
    };
  }),
};

/** Both versions; whichever a workbook begins with is today's for it. */
export function shelf(today: Template): TemplateShelf {
  return {
    today: (name) => (name === today.name ? today : undefined),
    earlier: (_, version) => [VERSION_1, VERSION_2].find((one) => one.version === version),
  };
}

let ids = 0;
let time = 0;

/** Ids that nothing has yet and a clock that ticks at every look. */
export function world(actor = 'anna', today: Template = VERSION_2): World {
  return { newId: () => `n${++ids}`, now: () => ++time, actor, templates: shelf(today) };
}

function beginning(): DocumentData {
  const { title, units, currency, today, rows } = SMALL;
  const byId = <T>(row: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(row).map(([name, value]) => [wordOf(name), value]));
  const { Order: _, ...typed } = rows;
  const given = Object.fromEntries(Object.entries(typed).map(([sheet, list]) => [wordOf(sheet), list.map(byId)]));
  const started = newDocument(VERSION_1, { title, units, currency, today, rows: given }, () => `r${++ids}`);
  if (!started.ok) throw new Error(started.problems.join('\n'));
  return started.data;
}

export const BEGINNING = beginning();

/** The same, where every row had been removed and is back, since somebody else had changed it. */
export const BROUGHT_BACK: DocumentData = {
  ...BEGINNING,
  rows: Object.fromEntries(
    Object.entries(BEGINNING.rows).map(([sheet, rows]) => [
      sheet,
      sheet === 'farm' ? rows : rows.map((row) => ({ ...row, broughtBack: true as const })),
    ]),
  ),
};

export function openFarm(data: DocumentData = BEGINNING, actor?: string, history?: HistoryData): Workbook {
  const workbook = Workbook.open(data, world(actor), history);
  if (workbook === undefined) throw new Error('its template is not known');
  return workbook;
}

/** What a workbook would keep in a file, and everything it shows, to the last bit. */
export function everything(workbook: Workbook): { readonly file: string; readonly shown: unknown } {
  return { file: writeWorkbookFile(workbook.data()), shown: snapshot(new Book(workbook, VERSION_1)) };
}

const vocabulary = createVocabulary({ currency: 'EUR' });

/**
 * A quantity that waits aside is written in the unit of the day it was put there: what counts is how much it is, and not
 * whether its line still fits a page.
 */
export function everythingByAmount(workbook: Workbook): ReturnType<typeof everything> {
  const { file, shown } = everything(workbook);
  const followed = /\[([-\d.e]+), "([^"]+)", true\]/g;
  const canonical = file.replace(followed, (_, number: string, symbol: string) => {
    const unit = vocabulary.find(symbol);
    return unit === undefined ? `${number} ${symbol}` : String(toCanonical(unit, Number(number)));
  });
  return { file: JSON.stringify(JSON.parse(canonical)), shown };
}
