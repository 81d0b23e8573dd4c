// What goes on paper: a week's jobs with boxes, the sowing list by month, an order a supplier, labels in their grids.

import { describe, expect, test } from 'vitest';
import { civilDay } from '../../../engine/index.ts';
import { weekJobs } from '../../../ui/browser/glance/week-jobs.ts';
import {
  LABEL_GRIDS,
  labelGrid,
  labelSheets,
  labelsInWords,
  rowLabels,
  trayLabels,
} from '../../../ui/browser/paper/labels.ts';
import { ordersOnPaper } from '../../../ui/browser/paper/order-pages.ts';
import { sowingOnPaper } from '../../../ui/browser/paper/sowing-pages.ts';
import { weekOnPaper } from '../../../ui/browser/paper/week-pages.ts';
import { opened } from '../../book.ts';
import { demoBook } from '../../browser/workbook-page.ts';
import { seasonOf } from '../../sheets/season.ts';

const demo = demoBook();
const { workbook } = demo;
const other = opened({ title: 'Other', units: 'si', currency: 'EUR', today: 0, rows: {}, sheets: [] }).workbook;

describe('a week', () => {
  const book = demoBook();
  // Nothing was noted so far: what is past is late.
  book.edit([{ edit: 'cell', table: 'Farm', row: 0, column: 'Jobs noted from', entry: '' }]);
  const paper = weekOnPaper(book.workbook, civilDay(2027, 7, 21));

  test('day by day, a box before each job, nothing called late that is still to come', () => {
    expect(paper?.title).toBe('Jobs of week 29, 19 Jul 2027 to 25 Jul 2027');
    expect(paper?.tables[0]?.heading).toBe('Monday 19 Jul 2027');
    const ticks = paper?.tables.flatMap(({ rows }) => rows.map(([what]) => what)) ?? [];
    expect(ticks.every((what) => Array.isArray(what))).toBe(true);
    const listed = ticks.flat().length;
    const inWeek = weekJobs(book.workbook, civilDay(2027, 7, 21))?.jobs.filter(
      ({ late, done }) => !late && !done,
    ).length;
    expect(listed).toBe(inWeek);
  });

  test('picking shares a line with washing and packing what was picked', () => {
    const lines = paper?.tables.flatMap(({ rows }) => rows) ?? [];
    const picked = lines.filter(([what]) => Array.isArray(what) && what.includes('Pick'));
    expect(picked.length).toBeGreaterThan(0);
    for (const [what] of picked) expect(what).toEqual(['Pick', 'Wash and pack']);
  });

  test('this week begins with what is late', () => {
    expect(weekOnPaper(book.workbook, book.today)?.tables[0]?.heading).toBe('Late');
  });

  test('no sheet of jobs, no page', () => expect(weekOnPaper(other, 0)).toBeUndefined());
});

test('every sowing of the list is on paper once, under its month', () => {
  const paper = sowingOnPaper(workbook);
  const rows = paper?.tables.flatMap((table) => table.rows.map((row) => [table.heading, row[0] ?? ''] as const)) ?? [];
  expect(rows.length).toBe(demo.rows('Sowing list').length);
  for (const [heading, date] of rows) {
    const [, month = '', year = ''] = String(date).split('\u00a0');
    expect(heading).toMatch(new RegExp(`^${month}\\w* ${year}$`));
  }
  // Short names of trays take no second line.
  const trays = paper?.tables.flatMap(({ rows: lines }) => lines.map((line) => String(line[9] ?? ''))) ?? [];
  expect(trays).toContain('128\u00a0cells');
  expect(sowingOnPaper(other)).toBeUndefined();
});

test('an order a supplier, and together they hold every line', () => {
  const orders = ordersOnPaper(workbook);
  expect(new Set(orders.map(({ title }) => title)).size).toBe(orders.length);
  const lines = orders.reduce((sum, { tables }) => sum + (tables[0]?.rows.length ?? 0), 0);
  const packs = [
    ['Seed order', 'Packs'],
    ['Sets and plants', 'Packs of sets'],
    ['Sets and plants', 'Packs of plants'],
  ] as const;
  const wanted = packs.flatMap(([sheet, column]) =>
    [...demo.rows(sheet)].filter((row) => demo.cell(sheet, row, column).text !== ''),
  ).length;
  expect(lines).toBe(wanted);
  expect(ordersOnPaper(other)).toEqual([]);
});

test('sets stand in the order of their supplier, counted and weighed', () => {
  const rows = ordersOnPaper(workbook).flatMap(({ title, tables }) =>
    tables.flatMap((table) => table.rows.map((row) => [title, ...row])),
  );
  const garlic = rows.find(([, , crop]) => crop === 'Garlic');
  expect(garlic).toEqual([
    'To order from Seven Thistles',
    'Stone Garlic',
    'Garlic',
    '330 cloves, 3.6 lb',
    '4 x Seven Thistles 100 sets',
    '116.00',
  ]);
});

describe('what no pack is listed of', () => {
  const { book, shown, type } = seasonOf({
    Varieties: [
      { Variety: 'Root', Crop: 'Carrot' },
      { Variety: 'Stone', Crop: 'Garlic' },
      { Variety: 'Mealy', Crop: 'Potato' },
    ],
    Plantings: [
      { Planting: 'Carrot 1', Variety: 'Root', Start: 'direct seed', 'Bed length used': '20 ft' },
      { Planting: 'Garlic 1', Variety: 'Stone', 'Bed length used': '20 ft' },
      { Planting: 'Potato 1', Variety: 'Mealy', 'Bed length used': '20 ft' },
    ],
  });
  const seeds = shown('Seed order', 'Root', 'Seeds to buy');
  const [cloves, tubers] = ['Stone', 'Mealy'].map((row) => shown('Sets and plants', row, 'Sets to buy'));

  test('stands on a page of its own, seed, cloves and tubers', () => {
    const [page, ...others] = ordersOnPaper(book.workbook);
    expect(others).toEqual([]);
    expect(page?.title).toBe('No supplier yet');
    const rows = page?.tables[0]?.rows ?? [];
    expect(rows.map(([variety]) => variety)).toEqual(['Root', 'Stone', 'Mealy']);
    expect(rows[0]?.[2]).toBe(`${seeds} seeds`);
    expect(String(rows[1]?.[2])).toMatch(new RegExp(`^${cloves} cloves, [\\d.]+ lb$`));
    expect(String(rows[2]?.[2])).toMatch(new RegExp(`^${tubers} seed tubers, [\\d.]+ lb$`));
    expect(Number(cloves)).toBeGreaterThan(0);
    expect(Number(tubers)).toBeGreaterThan(0);
    expect(Number(seeds.replaceAll(',', ''))).toBeGreaterThan(0);
  });

  test('is told beside an order that has been chosen', () => {
    const chosen = seasonOf({
      Varieties: [
        { Variety: 'Root', Crop: 'Carrot' },
        { Variety: 'Stone', Crop: 'Garlic' },
      ],
      Packs: [{ Variety: 'Root', Supplier: 'One', Seeds: '5000', Price: '3', 'Packs to order': '1' }],
      Plantings: [
        { Planting: 'Carrot 1', Variety: 'Root', Start: 'direct seed', 'Bed length used': '20 ft' },
        { Planting: 'Garlic 1', Variety: 'Stone', 'Bed length used': '20 ft' },
      ],
    });
    const papers = ordersOnPaper(chosen.book.workbook);
    expect(papers.map(({ title, tables }) => [title, tables[0]?.rows.length])).toEqual([
      ['Order to One', 1],
      ['No supplier yet', 1],
    ]);
    expect(papers[1]?.tables[0]?.rows[0]?.[0]).toBe('Stone');
  });

  test('what is on hand needs no order', () => {
    type('Sets and plants', 'Stone', 'Sets on hand', cloves ?? '');
    const rows = ordersOnPaper(book.workbook)[0]?.tables[0]?.rows ?? [];
    expect(rows.map(([variety]) => variety)).toEqual(['Root', 'Mealy']);
  });
});

describe('labels', () => {
  test('a label a tray, numbered', () => {
    const labels = trayLabels(workbook);
    const trays = [...demo.rows('Sowing list')]
      .filter((row) => demo.cell('Sowing list', row, 'Job').text === 'Sow')
      .reduce((sum, row) => sum + Math.ceil(demo.cell('Sowing list', row, 'Trays').number ?? 0), 0);
    expect(labels.length).toBe(trays);
    expect(labels[0]?.lines.at(-1)).toMatch(/1 of \d+$/);
  });

  test('a label a planting', () => {
    expect(rowLabels(workbook).length).toBe(demo.rows('Plantings').length);
  });

  test('a name that planting and variety share is said once', () => {
    const book = demoBook();
    const [row = -1] = book.rows('Plantings');
    const variety = book.cell('Plantings', row, 'Variety').text;
    const before = rowLabels(book.workbook)[0]?.lines[0];
    expect(before).toBe(`${book.cell('Plantings', row, 'Planting').text}, ${book.cell('Plantings', row, 'Bed').text}`);
    book.edit([{ edit: 'cell', table: 'Plantings', row, column: 'Planting', entry: variety }]);
    const [label] = rowLabels(book.workbook);
    expect(label?.head).toBe(variety);
    expect(label?.lines[0]).toBe(book.cell('Plantings', row, 'Bed').text);
    expect(trayLabels(book.workbook).every(({ head, lines }) => !lines.includes(head))).toBe(true);
  });

  test('every grid fits its sheet', () => {
    const pages = { letter: [215.9, 279.4], A4: [210, 297] } as const;
    for (const { name, page, across, down, width, height, left, top, gap } of LABEL_GRIDS) {
      const [wide, tall] = pages[page];
      expect(left + across * width + (across - 1) * gap, name).toBeLessThanOrEqual(wide + 0.5);
      expect(top + down * height, name).toBeLessThanOrEqual(tall + 0.5);
    }
  });

  test('the paper goes with the units until a person has chosen', () => {
    expect(labelGrid(workbook, '')?.page).toBe('letter');
    expect(labelGrid(other, '')?.page).toBe('A4');
    for (const { id } of LABEL_GRIDS) expect(labelGrid(other, id)?.id).toBe(id);
    expect(labelGrid(other, 'no longer sold')?.page).toBe('A4');
  });

  test('one label is one, and on one sheet', () => {
    expect(labelsInWords(134, 5)).toBe('134 labels on 5 sheets');
    expect(labelsInWords(21, 1)).toBe('21 labels on 1 sheet');
    expect(labelsInWords(1, 1)).toBe('1 label on 1 sheet');
  });

  test('sheets hold as many as their grid', () => {
    const [grid] = LABEL_GRIDS;
    if (grid === undefined) throw new Error('There are no grids.');
    const labels = Array.from({ length: 61 }, (_, index) => ({ head: String(index), lines: [] }));
    expect(labelSheets(labels, grid).map(({ length }) => length)).toEqual([30, 30, 1]);
  });
});
