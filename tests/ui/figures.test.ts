// Figures in a column: their parts, the room that lines them up, and what a selection adds up to.

import { expect, test } from 'vitest';
import { type CellView, type ColumnView, rowName, rows } from '../../engine/index.ts';
import { matching } from '../../ui/browser/entry/entry-options.ts';
import { figureParts, padding, roomFor, widerRoom } from '../../ui/browser/grid/figures.ts';
import { summarize, summaryNumber } from '../../ui/browser/grid/summary.ts';
import { findPlaces } from '../../ui/browser/page/find-places.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { copiedBook } from '../bench/season/copies.ts';
import { demoBook } from '../browser/workbook-page.ts';

const DEMO = demoBook();

test('a shown figure comes apart into whole and fraction', () => {
  expect(figureParts('1,240.50')).toEqual({ whole: '1,240', fraction: '.50' });
  expect(figureParts('-0.5')).toEqual({ whole: '-0', fraction: '.5' });
  expect(figureParts('2 ft 6 in')).toBeUndefined();
  expect(figureParts('Amber early')).toBeUndefined();
  expect(figureParts('')).toBeUndefined();
});

test('every figure of a column is given the room of the longest', () => {
  const figures = [
    { figure: '7', unit: '', ends: '' },
    { figure: '62.25', unit: '', ends: '' },
    { figure: '0.5', unit: '', ends: '' },
    { figure: 'no figure', unit: '', ends: '' },
    { figure: '2 ft 6 in', unit: '', ends: '' },
    { figure: '20', unit: 'cm', ends: '10 to 30' },
  ];
  const room = roomFor(figures);
  expect(room).toEqual({ fraction: '.00', unit: 'cm', ends: '00 to 00' });
  expect(widerRoom(room, { fraction: '.000', unit: '', ends: '' })).toEqual({
    fraction: '.000',
    unit: 'cm',
    ends: '00 to 00',
  });
  for (const [text, width] of [
    ['7', '.00'],
    ['0.5', '0'],
    ['62.25', ''],
  ] as const) {
    expect(padding(figureParts(text)?.fraction ?? '', room)).toBe(width);
  }
});

const column = (unit: string, kind: 'number' | 'date' = 'number'): ColumnView => {
  const view = DEMO.column('Beds', 'Length');
  if (view === undefined) throw new Error('The Beds sheet has no Length.');
  return { ...view, unit, ...(kind === 'date' ? { type: { kind } } : {}) };
};

const cell = (text: string, number: number | undefined, value: number | null = number ?? null): CellView => ({
  value,
  number,
  figure: text,
  unit: '',
  fullUnit: '',
  text,
  ends: '',
  entry: text,
  range: '',
  origin: 'entered',
});

test('numbers of one unit are added, blanks are left out, unlike units are only counted', () => {
  const feet = column('ft');
  const same = summarize([
    { column: feet, cell: cell('50', 50) },
    { column: feet, cell: cell('62.25', 62.25) },
    { column: feet, cell: cell('', undefined) },
  ]);
  expect(same).toMatchObject({ cells: 3, filled: 2 });
  expect(same.numbers).toMatchObject({ sum: 112.25, mean: 56.125, least: 50, most: 62.25, unit: 'ft', decimals: 2 });
  const mixed = summarize([
    { column: feet, cell: cell('50', 50) },
    { column: column('lb'), cell: cell('2', 2) },
  ]);
  expect(mixed).toMatchObject({ filled: 2, numbers: undefined });
});

test('a sum is written as the cells that it adds up', () => {
  expect(summaryNumber(12_405.5, 2)).toBe('12,405.50');
  const german = writingOf('de-DE');
  const euros = column('EUR');
  const bill = [
    { column: euros, cell: cell('60,76', 60.76) },
    { column: euros, cell: cell('12.000,10', 12_000.1) },
  ];
  const { numbers } = summarize(bill, german);
  expect(numbers?.decimals).toBe(2);
  expect(summaryNumber(numbers?.sum ?? 0, numbers?.decimals ?? 0, german)).toBe('12.060,86');
});

test('of dates the first and the last are told', () => {
  const day = column('', 'date');
  const dates = summarize([
    { column: day, cell: cell('2 Apr 2027', undefined, 20_910) },
    { column: day, cell: cell('1 Apr 2027', undefined, 20_909) },
  ]);
  expect(dates).toMatchObject({ numbers: undefined, dates: { first: 20_909, last: 20_910 } });
});

test('a list narrows to what holds the typed text, the closest first', () => {
  const names = ['Copper Kettle', 'Kettle Black', 'Lamplight', 'Black kettle'];
  expect(matching(names, 'kettle')).toEqual(['Kettle Black', 'Copper Kettle', 'Black kettle']);
  expect(matching(names, 'lamplight')).toEqual(['Lamplight']);
  expect(matching(names, '')).toEqual(names);
  expect(matching(names, 'nothing like it')).toEqual([]);
});

test('sheets, rows and columns are found by name, sheets first', () => {
  const found = findPlaces(DEMO.workbook, 'beds', 5);
  expect(found[0]).toMatchObject({ kind: 'sheet', sheet: 'beds' });
  const bed = findPlaces(DEMO.workbook, 'barn 1', 5)[0];
  expect(bed).toMatchObject({ kind: 'row', sheet: 'beds', column: 'bed' });
  expect(findPlaces(DEMO.workbook, 'in-row spacing', 5).map(({ sheet }) => sheet)).toContain('plantings');
});

test('rows that were entered are named before those that they made', () => {
  const found = findPlaces(DEMO.workbook, 'lettuce', 14).map(({ kind, sheet }) => `${kind} ${sheet}`);
  expect(found.slice(0, 4).sort()).toEqual(['row crops', 'row crops', 'row plantings', 'row plantings']);
  expect(found).toContain('row raising');
});

test('what stands in the cells of the sheet on screen comes before other sheets, which are found all the same', () => {
  const found = findPlaces(DEMO.workbook, 'lamplight', 14, 'plantings');
  const [first, ...others] = found.map(({ kind, sheet }) => `${kind} ${sheet}`);
  expect(first).toBe('value plantings');
  expect(others).toContain('row varieties');
  // A sheet is gone to from anywhere, and of many values here not all stand before what others have.
  expect(findPlaces(DEMO.workbook, 'beds', 14, 'plantings')[0]).toMatchObject({ kind: 'sheet', sheet: 'beds' });
  const kinds = findPlaces(DEMO.workbook, 'barn', 14, 'plantings').map(({ kind, sheet }) => `${kind} ${sheet}`);
  expect(kinds.indexOf('row beds')).toBe(kinds.lastIndexOf('value plantings') + 1);
  expect(kinds.indexOf('row beds')).toBeLessThanOrEqual(5);
});

test('a made row far down is found on the sheet on screen; on another, the rows that made it are', () => {
  const { workbook } = copiedBook(200);
  const last = rows(workbook, 'bed-calendar').at(-1) ?? -1;
  expect(rows(workbook, 'bed-calendar').length).toBeGreaterThan(2_000);
  const [bed = ''] = rowName(workbook, 'bed-calendar', last).split(' / ');
  const found = findPlaces(workbook, rowName(workbook, 'bed-calendar', last), 5, 'bed-calendar');
  expect(found.map(({ kind, sheet, name }) => [kind, sheet, name])).toEqual([
    ['row', 'bed-calendar', rowName(workbook, 'bed-calendar', last)],
  ]);
  const elsewhere = findPlaces(workbook, bed, 5, 'crops');
  expect(elsewhere[0]).toMatchObject({ kind: 'row', sheet: 'beds', name: bed });
});
