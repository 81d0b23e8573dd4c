// A sheet on paper as it is looked at: all of its columns, or those of a view with its filters, order, groups, widths and colours.

import { describe, expect, test } from 'vitest';
import { message, rowId, sheetView, type View, views, type Workbook } from '../../../engine/index.ts';
import type { Paper } from '../../../ui/browser/paper/paper.ts';
import { type Look, sheetOnPaper } from '../../../ui/browser/paper/sheet-pages.ts';
import { demoBook } from '../../browser/workbook-page.ts';

const demo = demoBook();
const { workbook } = demo;

/** A sheet through the view that has all of its columns, or through one that is given. */
function onPaper(book: Workbook, id: string, part: Partial<View> & Partial<Omit<Look, 'view'>> = {}): Paper {
  const sheet = sheetView(book, id);
  const all = sheet === undefined ? undefined : views(book, sheet).find((view) => view.id === (part.id ?? 'all'));
  if (sheet === undefined || all === undefined) throw new Error(`There is no sheet or view of ${id}.`);
  const { found = () => false, widths = {}, ...view } = part;
  return sheetOnPaper(book, sheet, { view: { ...all, ...view }, found, widths });
}

describe('a sheet', () => {
  test('has a table a question, each with the rows’ names in front and every row', () => {
    const paper = onPaper(workbook, 'beds');
    expect(paper.title).toBe('Beds');
    expect(paper.tables.length).toBeGreaterThan(1);
    for (const { rows, columns, heading } of paper.tables) {
      expect(rows.length, heading).toBe(demo.rows('Beds').length);
      expect(rows[0]?.[0], heading).toBe('Barn 1');
      expect(
        rows.every((row) => row.length === columns.length),
        heading,
      ).toBe(true);
    }
  });

  test('of one row is what is asked and its entry', () => {
    const { tables } = onPaper(workbook, 'farm');
    // Tables of the very same columns are set as one: its head and the farm's name are there once a page, not once a question.
    expect(tables.length).toBeGreaterThan(4);
    expect(new Set(tables.map(({ columns }) => columns)).size).toBe(1);
    const rows = tables.flatMap((table) => table.rows);
    expect(rows.find(([name]) => name === 'Latitude')).toEqual(['Latitude', '44.6 deg']);
  });
});

describe('a sheet through a view', () => {
  const view = { id: 'plan' } as const;
  const columnsOf = (paper: Paper) => paper.tables[0]?.columns.map(({ name }) => name);

  test('has the view’s columns in its order, in one table', () => {
    const shows = ['planting', 'variety', 'bed', 'planted-out'];
    const paper = onPaper(workbook, 'plantings', { ...view, columns: shows, shows, inFront: 1 });
    expect(paper.title).toBe('Plantings: What goes where?');
    expect(paper.tables.length).toBe(1);
    expect(columnsOf(paper)).toEqual(['Planting', 'Variety', 'Bed', 'Planted out']);
    expect(paper.tables[0]?.rows.length).toBe(demo.rows('Plantings').length);
  });

  test('has the widths that were drawn on the screen, in proportion', () => {
    const paper = onPaper(workbook, 'plantings', { ...view, widths: { variety: 200, bed: 100 } });
    const widths = new Map(paper.tables[0]?.columns.map(({ name, width }) => [name, width]));
    const [variety, bed] = ['Variety', 'Bed'].map((name) => Number.parseFloat(widths.get(name) ?? ''));
    expect((variety ?? 0) / (bed ?? 0)).toBeCloseTo(2, 1);
    expect(widths.get('Planting')).toBeUndefined();
  });

  test('leaves out the rows that its filters keep back, and says how many of how many there are', () => {
    const filters = [{ by: 'cell', column: 'planting', when: { is: 'holding', text: 'lettuce' } }] as const;
    const paper = onPaper(workbook, 'plantings', { ...view, filters });
    expect(paper.tables[0]?.rows.map(([name]) => name)).toEqual(['Lettuce 1', 'Lettuce 2']);
    expect(paper.says).toBe('2 of 115 rows: Planting holds “lettuce”.');
  });

  test('keeps those in which something was found where that is its filter', () => {
    const row = demo.rows('Beds')[3] ?? -1;
    const id = rowId(workbook, 'beds', row);
    const filters = [{ by: 'finding', level: 'any' }] as const;
    const paper = onPaper(workbook, 'beds', { filters, found: (each) => each === id });
    expect(paper.tables[0]?.rows.map(([name]) => name)).toEqual(['Barn 4']);
    expect(paper.says).toBe('1 of 40 rows: Rows that need attention.');
  });

  test('has its rows in its order', () => {
    const paper = onPaper(workbook, 'beds', { sort: [{ column: 'bed', descending: true }] });
    expect(paper.tables[0]?.rows[0]?.[0]).toBe('Ridge 24');
    expect(paper.tables[0]?.rows.at(-1)?.[0]).toBe('Barn 1');
    expect(paper.says).toBe('Sorted by Bed (Z to A).');
  });

  test('has its groups one under the other, what adds up under each', () => {
    const shows = ['bed', 'length', 'field'];
    const paper = onPaper(workbook, 'beds', { columns: shows, shows, inFront: 1, groupBy: 'field' });
    expect(paper.tables.map(({ heading }) => heading)).toEqual([
      'Barn, 5 rows',
      'Creek, 7 rows',
      'Orchard, 4 rows',
      'Ridge, 24 rows',
    ]);
    expect(new Set(paper.tables.map(({ columns }) => columns)).size).toBe(1);
    expect(paper.tables[0]?.rows.map((row) => row[1])).toEqual(['50', '50', '50', '50', '50']);
    expect(paper.tables[0]?.totals).toEqual(['Barn in all', '250', '']);
    expect(paper.says).toBe('Grouped by Field.');
  });

  test('of very many columns is cut into tables that each begin with what names the rows', () => {
    const sheet = sheetView(workbook, 'plantings');
    const shows = sheet?.columns.slice(0, 40).map(({ id }) => id) ?? [];
    const { tables } = onPaper(workbook, 'plantings', { ...view, columns: shows, shows, inFront: 1 });
    expect(tables.length).toBeGreaterThan(2);
    expect(new Set(tables.map(({ columns }) => columns[0]?.name))).toEqual(new Set(['Planting']));
    expect(tables.reduce((sum, { columns }) => sum + columns.length - 1, 0)).toBe(39);
  });

  test('tells the colours of its cells by their marks, and what each means', () => {
    const book = demoBook().workbook;
    const rule = {
      id: 'r',
      name: 'short',
      column: 'length',
      when: { is: 'at most', most: 13 },
      tone: 'rose',
      mark: 'S',
    } as const;
    book.do(
      [{ command: 'set colour', sheet: 'beds', rule }],
      message('set colour', { colour: 'short', sheet: 'Beds' }),
    );
    const shows = ['bed', 'length'];
    const paper = onPaper(book, 'beds', { columns: shows, shows, inFront: 1 });
    const marked = paper.tables[0]?.rows.filter((row) => typeof row[1] === 'object') ?? [];
    expect(marked.length).toBeGreaterThan(0);
    expect(marked.every(([, cell]) => typeof cell === 'object' && 'mark' in cell && cell.mark === 'S')).toBe(true);
    expect(paper.marks?.map(({ mark, says }) => [mark, says])).toEqual([['S', 'short']]);
  });
});

test('of more cells than a browser prints at once there are the first rows, and it says so', () => {
  const { workbook: own } = demoBook();
  const about = { question: '', about: 'What it is.', checks: [], cautions: [] };
  const column = { type: { type: 'text' }, role: 'computed', formula: '"x"', note: '', group: '' } as const;
  const mass = { type: 'number', unit: { us: 'kg', si: 'kg' } } as const;
  const columns = [
    { ...column, id: 'year', name: 'Year', formula: 'TEXT([Day]; "yyyy")' },
    { ...column, id: 'mass', name: 'Mass', type: mass, formula: '1 kg' },
    ...Array.from({ length: 27 }, (_, at) => ({ ...column, id: `c${at}`, name: `Column ${at}` })),
  ];
  const rows = { from: 'span', first: 'DATE(2000; 1; 1)', last: 'DATE(2000; 1; 1) + 3999 days', step: 'day' } as const;
  const sheet = { ...about, id: 'long', name: 'Long', rows: { ...rows, as: { id: 'day', name: 'Day' } }, columns };
  expect(own.do([{ command: 'put sheet', sheet }], message('trial'))).toMatchObject({ refused: false });
  // 30 columns: 3,333 rows are 99,990 cells.
  const paper = onPaper(own, 'long');
  expect(paper.tables.map((table) => table.rows.length)).toEqual([3_333]);
  expect(paper.says).toMatch(/^Here are the first 3333 of 4000 rows, as many as a browser prints at once:/);
  const part = onPaper(own, 'long', { shows: ['day', 'c1', 'c2'] });
  expect(part.tables.map((table) => table.rows.length)).toEqual([4_000]);
  expect(part.says).toBe('What it is.');
  // By year, 366 days of each fourth: 3,288 until the end of 2008. What stands under a group stands under whole ones only.
  const grouped = onPaper(own, 'long', { groupBy: 'year', totals: { mass: 'sum' } });
  const last = grouped.tables.at(-1);
  expect(last?.heading).toBe('2009, 365 rows');
  expect(last?.rows.length).toBe(45);
  expect(grouped.tables.map(({ totals }) => totals !== undefined)).toEqual([...Array(9).fill(true), false]);
});
