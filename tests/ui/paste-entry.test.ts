// How cells of other programs are read when they are pasted: formats of accounts with the value behind them, months that look like
// days, per cent that looks like a share.

import { expect, test } from 'vitest';
import { rowId, rows, sheetView, Workbook, type World } from '../../engine/index.ts';
import type { BlockCell } from '../../ui/browser/grid/clipboard/block.ts';
import { entryFor } from '../../ui/browser/grid/clipboard/paste-entry.ts';
import { PasteJob } from '../../ui/browser/grid/clipboard/paste-job.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { BEGINNING, openFarm, world } from '../document/farm.ts';
import { seasonOf } from '../sheets/season.ts';

const season = seasonOf({}, {}, {});
const amount = column(season.book.workbook, 'own-costs', 'amount');

function column(workbook: Workbook, sheet: string, id: string) {
  const found = sheetView(workbook, sheet)?.columns.find((each) => each.id === id);
  if (found === undefined) throw new Error(`${sheet} has no ${id}`);
  return found;
}

/** What a cell of another program is typed as in the amounts of a workbook in US dollars. */
function amountOf(text: string, value: number | undefined, decimal: '.' | ',' = '.'): string {
  const reading = { dayFirst: false, decimal };
  const cell: BlockCell = value === undefined ? { text } : { text, value };
  return entryFor(cell, amount, reading, { reading, currency: 'USD' }).entry;
}

test('formats of accounts give the value behind them', () => {
  expect(amount.unit).toBe('USD');
  expect(amountOf('$-', 0)).toBe('0 $');
  expect(amountOf(' $ -   ', 0)).toBe('0 $');
  expect(amountOf('-', 0)).toBe('0');
  expect(amountOf('1.250,-', 1250)).toBe('1250');
  expect(amountOf('1’250.–', 1250)).toBe('1250');
  expect(amountOf('(1,250.50)', -1250.5)).toBe('-1250.5');
  expect(amountOf('$(1,250.50)', -1250.5)).toBe('-1250.5 $');
  expect(amountOf('1.250,50', 1250.5, ',')).toBe('1250,5');
  expect(amountOf('$1,250', 1250, ',')).toBe('1250 $');
});

test('what says more than its number, or is no number, is read as it stands', () => {
  expect(amountOf('-', undefined)).toBe('-');
  expect(amountOf('', 0)).toBe('');
  expect(amountOf('85%', 0.85)).toBe('85%');
  expect(amountOf('15.3.2027', 46461)).toBe('15.3.2027');
  expect(amountOf('2027-03-15', 46461)).toBe('2027-03-15');
  expect(amountOf('ten or $12', 10)).toBe('ten or $12');
});

test('a figure with a unit takes its marks from the value behind it, where both have the same figures', () => {
  const farm = openFarm();
  const length = column(farm, 'beds', 'length');
  const reading = { dayFirst: true, decimal: ',' } as const;
  const read = (text: string, value: number) =>
    entryFor({ text, value }, length, reading, { reading, currency: 'EUR' });
  expect(read('1,250 ft', 1250)).toEqual({ entry: '1250 ft', exact: true });
  expect(read('1,250.5 ft', 1250.5)).toEqual({ entry: '1250,5 ft', exact: true });
  // Shown in thousands by its format, or rounded.
  expect(read('1,3 ft', 1300)).toEqual({ entry: '1,3 ft', exact: false });
  expect(read('1,250 ft', 1250.4)).toEqual({ entry: '1,250 ft', exact: false });
});

function farmAt(machine: string): Workbook {
  const at: World = { ...world(), writings: (locale) => writingOf(locale ?? machine) };
  const workbook = Workbook.open(BEGINNING, at);
  if (workbook === undefined) throw new Error('its template is not known');
  return workbook;
}

/** The state of one cell pasted in a column, and what is said of it. */
function pasted(workbook: Workbook, sheet: string, id: string, cell: BlockCell): readonly [string, string] {
  const view = sheetView(workbook, sheet);
  const slot = rows(workbook, sheet)[0] ?? -1;
  if (view === undefined) throw new Error(`there is no ${sheet}`);
  const { cells } = new PasteJob({
    book: workbook,
    sheet: view,
    block: { cells: [[cell]] },
    repeated: false,
    columns: [column(workbook, sheet, id)],
    rows: () => [{ row: { id: rowId(workbook, sheet, slot), slot } }],
    keepFormulas: false,
  }).plan();
  return [cells[0]?.state ?? '', cells[0]?.says ?? ''];
}

test('a month of the years around with a hyphen is asked about; a day beside it and a known value are not', () => {
  const farm = farmAt('en-US');
  const sown = (text: string, value?: number) =>
    pasted(farm, 'plantings', 'sown', value === undefined ? { text } : { text, value });
  expect(sown('Mar-27')).toEqual(['open', '27 Mar 2027; if the month is meant, write a day of it: 1 Mar 2027']);
  expect(sown('Mar-28')[0]).toBe('open');
  // Nobody means March 2015 in a season of 2027.
  expect(sown('Mar-15')).toEqual(['fits', '15 Mar 2027']);
  expect(sown('27-Mar')).toEqual(['fits', '27 Mar 2027']);
  expect(sown('Mar 27')).toEqual(['fits', '27 Mar 2027']);
  expect(sown('week 27')[0]).toBe('fits');
  // Day 46447 of spreadsheets is 1 March 2027.
  expect(sown('Mar-27', 46447)).toEqual(['fits', '1 Mar 2027']);
});

test('where days go before months, a month and two figures with a blank may be a month too', () => {
  expect(pasted(farmAt('de-DE'), 'plantings', 'sown', { text: 'Mär 27' })[0]).toBe('open');
});

test('a bare figure below 1 for a column of per cent is asked about, but for what was typed here', () => {
  const farm = farmAt('en-US');
  const tested = (cell: BlockCell) => pasted(farm, 'varieties', 'germination', cell);
  expect(tested({ text: '0.5' })).toEqual(['open', '50%; if 0.5% is meant, write 0.5%']);
  expect(tested({ text: '0.5', value: 0.5 })[0]).toBe('open');
  expect(tested({ text: '0.5', typed: { entry: '0.5%', unit: '%' } })).toEqual(['fits', '0.5%']);
  expect(tested({ text: '0.5%' })).toEqual(['fits', '0.5%']);
  expect(tested({ text: '85' })).toEqual(['fits', '85%']);
  expect(tested({ text: '1' })).toEqual(['fits', '1%']);
});
