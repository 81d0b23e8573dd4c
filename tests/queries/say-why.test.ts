// Why a cell is what it is, in sentences: the branch that is taken, figures in the workbook's own units, what matters and what
// doesn't; every computed cell of the season has one.

import { expect, test } from 'vitest';
import { cellView, type Saying, sayWhy, sheetNamed, sheetViews } from '../../engine/index.ts';
import { type Season, seasonOf } from '../sheets/season.ts';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');
const MEANS = [-5, -4, 1, 8, 14, 19, 22, 21, 16, 10, 3, -3];

const ROWS = {
  'Monthly climate': MONTHS.map((Month, i) => {
    return { Month, Low: `${(MEANS[i] ?? 0) - 5} degC`, High: `${(MEANS[i] ?? 0) + 5} degC` };
  }),
  Beds: [{ Bed: 'North 1', Length: '50 ft', Width: '30 in' }],
  Varieties: [{ Variety: 'Test onion', Crop: 'Onion, bulb' }],
  Plantings: [
    {
      Planting: 'First',
      Variety: 'Test onion',
      Start: 'cells',
      Bed: 'North 1',
      'Bed length used': '50 ft',
      Rows: '4',
      'In-row spacing': '8 in',
      'Planted out': '2027-04-20',
    },
  ],
};

function told({ book: { workbook } }: Season, sheet: string, column: string): Saying {
  const view = sheetNamed(workbook, sheet);
  const id = view?.columns.find(({ name }) => name === column)?.id ?? '';
  const said = sayWhy(workbook, view?.id ?? '', 0, id);
  if (said === undefined) throw new Error(`${sheet} / ${column} says nothing`);
  return said;
}

const season = seasonOf(ROWS);

test('places on a bed are told by their reckoning', () => {
  const { words, matters } = told(season, 'Plantings', 'Stations');
  expect(words).toBe('300 places, because 50 ft at 8 in is 75 a row, less half a spacing at each end, times 4 rows.');
  expect(matters('plantings', 0, 'in-row-spacing')).toBe(true);
  expect(matters('plantings', 0, 'variety')).toBe(false);
  season.type('Plantings', 'First', 'Pattern', 'offset');
  expect(told(season, 'Plantings', 'Stations').words).toBe(
    '298 places, because 50 ft at 8 in is 75 a row, less half a spacing at each end, times 4 rows, every second row shifted by half a spacing, since Pattern (offset) is offset.',
  );
  season.type('Plantings', 'First', 'Pattern', 'square');
});

test("a plant's mass is told by what plants do, without the model's words and without factors that leave all", () => {
  const crowded = seasonOf({
    ...ROWS,
    Plantings: [{ Planting: 'First', Variety: 'Test onion', Bed: 'North 1', Rows: '4', 'In-row spacing': '2 in' }],
  });
  const { words, matters } = told(crowded, 'Plantings', 'Mean plant mass');
  expect(words).toMatch(
    /^[\d.]+ oz, because it is what a plant weighs at [\d.]+ plants\/ft² \(one with all the room it wants weighs [\d.]+ oz, full ground yields [\d.]+ lb\/ft²\) times what is left where plants stand 3.75 times as far apart one way as the other \([\d.]+% is lost at eight times\)/,
  );
  expect(words).not.toMatch(/100%|Rectangularity|Isolated|Ceiling|Squareness/);
  expect(matters('plantings', 0, 'clump-factor')).toBe(true);
  crowded.type('Plantings', 'First', 'Clump factor', '90%');
  crowded.type('Plantings', 'First', 'Squareness loss', '0%');
  const without = told(crowded, 'Plantings', 'Mean plant mass').words;
  expect(without).toContain(' times Clump factor (90%)');
  expect(without).not.toContain('one way as the other');
});

test('products, sums and what is taken as it stands are told with names and figures', () => {
  expect(told(season, 'Beds', 'Area').words).toBe('125 ft², because it is Length (50 ft) times Width (30 in).');
  expect(told(season, 'Plantings', 'Bed width').words).toBe('Taken from Width of North 1 (30 in).');
  expect(told(season, 'Plantings', 'Row spacing').words).toBe(
    '7.50 in, because it is Bed width (30 in) divided by Rows (4).',
  );
  expect(told(season, 'Plantings', 'Loose').words).toBe(
    'no, because Start (cells) is not deep tray and Start (cells) is not nursery bed.',
  );
});

test("a model says what goes in and what it does, its terms below, all in the workbook's own degrees", () => {
  const us = told(season, 'Climate', 'Leaf growth degree-days');
  expect(us.words).toContain('42.8 °F and 68 °F. ');
  expect(us.terms.map(({ name }) => name)).toEqual(['THERMALTIME']);
  expect(us.words).not.toContain('degC');
  const metric = seasonOf(ROWS, {}, { units: 'si' });
  expect(told(metric, 'Climate', 'Leaf growth degree-days').words).toContain('6 °C and 20 °C. ');
  expect(told(metric, 'Plantings', 'Stations').words).toContain('300 places, because 50 ft at 8 in');
});

test('notes of columns, cautions and what formulas say in words have the same degrees', () => {
  const { workbook } = season.book;
  for (const { about, cautions, columns, name } of sheetViews(workbook)) {
    for (const text of [about, ...cautions, ...columns.map(({ note }) => note)])
      expect(`${name}: ${text}`).not.toMatch(/degC/);
  }
  const harvest = sheetNamed(workbook, 'Harvest and curing');
  const conditions = harvest?.columns.find(({ name }) => name === 'Cure at');
  expect(cellView(workbook, harvest?.id ?? '', 0, conditions?.id ?? '').text).toMatch(/^\d+ to \d+ °F, /);
});

test('every computed cell with a value has a sentence', () => {
  const { workbook } = season.book;
  let sentences = 0;
  for (const { id, columns, name: sheet } of sheetViews(workbook)) {
    if (season.book.rows(sheet).length === 0) continue;
    for (const { id: column, name } of columns) {
      const said = sayWhy(workbook, id, season.book.rows(sheet)[0] ?? 0, column);
      if (said === undefined) continue;
      expect(said.words, `${sheet} / ${name}`).toMatch(/\S.*\.$/s);
      expect(said.words, `${sheet} / ${name}`).not.toMatch(/undefined|NaN|\bnull\b/);
      sentences += 1;
    }
  }
  expect(sentences).toBeGreaterThan(200);
});
