// Raising: bench and germination space by week, the sowing list, mixes, potting on, readiness, and loose seedlings; worked out by
// hand beside the sheets.

import { describe, expect, it } from 'vitest';
import { civilDayOfIso } from '../../engine/index.ts';
import { errorsOf, seasonOf } from './season.ts';

const day = (iso: string): number => civilDayOfIso(iso) ?? Number.NaN;

const season = seasonOf(
  {
    Varieties: [
      { Variety: 'Bulb', Crop: 'Onion, bulb', Germination: '90%', 'Day-length type': 'long' },
      { Variety: 'Red', Crop: 'Tomato', Germination: '90%' },
      { Variety: 'Root', Crop: 'Carrot', Germination: '80%' },
    ],
    Beds: [{ Bed: 'B1', Length: '50 ft', Width: '30 in' }],
    Plantings: [
      {
        Planting: 'Clumps',
        Variety: 'Bulb',
        Start: 'blocks',
        'Bed length used': '50 ft',
        Rows: '4',
        'In-row spacing': '8 in',
        'Seeds per station': '4',
        Sown: '2027-02-15',
        'Planted out': '2027-04-20',
      },
      {
        Planting: 'Tomatoes',
        Variety: 'Red',
        Start: 'cells',
        'Bed length used': '50 ft',
        Rows: '1',
        'In-row spacing': '20 in',
        Sown: '2027-04-01',
        'Planted out': '2027-05-20',
        'Pot on into': '50 cells',
        'Pot on': '2027-04-22',
      },
      {
        Planting: 'Loose',
        Variety: 'Bulb',
        Start: 'deep tray',
        'Bed length used': '50 ft',
        Rows: '4',
        'In-row spacing': '4 in',
        Sown: '2027-02-20',
        'Planted out': '2027-04-20',
      },
      { Planting: 'Carrots', Variety: 'Root', 'Bed length used': '20 ft', Sown: '2027-05-05' },
    ],
  },
  { 'Bench area': '20 ft2', 'Germination area': '16 ft2' },
);

const TRAY = 21 * 11;

/** Square feet of the trays on a day, by a walk along the plantings. */
function areaOn(date: number, apart: boolean): number {
  return ['Clumps', 'Tomatoes', 'Loose'].reduce((sum, name) => {
    const figure = (column: string): number => season.number('Raising', name, column) ?? 0;
    const on = (column: string): number => Number(season.value('Raising', name, column) ?? Number.NaN);
    const inside = (from: number, until: number): boolean => from <= date && until > date;
    if (apart) return inside(on('Sown'), on('Up')) ? sum + (figure('Trays') * TRAY) / 144 : sum;
    const potted = season.value('Raising', name, 'Pot on') === null ? on('Planted out') : on('Pot on');
    const first = inside(on('Up'), potted) ? (figure('Trays') * TRAY) / 144 : 0;
    const second = inside(potted, on('Planted out')) ? (figure('Trays potted on') * TRAY) / 144 : 0;
    return sum + first + second;
  }, 0);
}

describe('raising', () => {
  it('has no cell in error', () => {
    expect(errorsOf(season.book)).toEqual([]);
  });

  it('sums the bench and the germination space of every week as a walk along the plantings does', () => {
    for (const row of season.book.rows('Propagation')) {
      const middle = Number(season.book.value('Propagation', row, 'Middle'));
      const read = (column: string): number => season.book.cell('Propagation', row, column).number ?? Number.NaN;
      expect(read('Bench used')).toBeCloseTo(areaOn(middle, false), 6);
      expect(read('Germinating')).toBeCloseTo(areaOn(middle, true), 6);
      expect(read('Bench free')).toBeCloseTo(20 - read('Bench used'), 6);
    }
  });

  it('says where the bench is too full', () => {
    const tooFull = (): boolean =>
      season.book.attention().some(({ says }) => /More trays than the bench holds this week/.test(says));
    expect(tooFull()).toBe(false);
    season.type('Farm', '', 'Bench area', '8 ft2');
    expect(tooFull()).toBe(true);
  });

  it('counts trays, blocks and mix of the season once in the weeks', () => {
    const overWeeks = (column: string): number =>
      [...season.book.rows('Propagation')].reduce(
        (sum, row) => sum + (season.book.cell('Propagation', row, column).number ?? 0),
        0,
      );
    const all = (column: string): number =>
      ['Clumps', 'Tomatoes', 'Loose'].reduce((sum, name) => sum + (season.number('Raising', name, column) ?? 0), 0);
    expect(overWeeks('Trays')).toBe(all('Trays'));
    expect(overWeeks('Blocks')).toBe(all('Blocks'));
    expect(overWeeks('Seeds')).toBe(all('Seeds'));
    expect(overWeeks('Mix to make')).toBeCloseTo(all('Mix volume') + all('Mix for potting on'), 6);
  });

  it('raises loose plants: seed so that enough stand, trays by their seeds, no blocks, time to lift and part', () => {
    const places = 4 * Math.floor((50 * 12) / 4);
    expect(season.number('Plantings', 'Loose', 'Stations')).toBe(places);
    expect(season.number('Plantings', 'Loose', 'Plants per station')).toBe(1);
    expect(season.number('Plantings', 'Loose', 'Blocks to start')).toBeUndefined();
    const seeds = season.number('Plantings', 'Loose', 'Seeds needed') ?? 0;
    const expected = (places / (0.9 * 0.85)) * 1.1;
    expect(seeds).toBeGreaterThan(expected);
    expect(seeds).toBeLessThan(expected * 1.08);
    expect(season.number('Plantings', 'Loose', 'Trays')).toBe(Math.ceil(seeds / 600));
    expect(season.number('Plantings', 'Loose', 'Planting hours')).toBeCloseTo(places / 500 + places / 600, 6);
    expect(season.number('Plantings', 'Loose', 'Mean plant mass')).toBeGreaterThan(0);
  });

  it('lists what is sown and potted on day by day', () => {
    const rows = [...season.book.rows('Sowing list')].map((row) => {
      const text = (column: string): string => season.book.cell('Sowing list', row, column).text;
      return [season.book.value('Sowing list', row, 'On'), text('Job'), text('Planting'), text('Trays')];
    });
    const trays = (name: string, column: string): string => season.shown('Raising', name, column);
    expect(rows).toEqual([
      [day('2027-02-15'), 'Sow', 'Clumps', trays('Clumps', 'Trays')],
      [day('2027-02-20'), 'Sow', 'Loose', trays('Loose', 'Trays')],
      [day('2027-04-01'), 'Sow', 'Tomatoes', trays('Tomatoes', 'Trays')],
      [day('2027-04-22'), 'Pot on', 'Tomatoes', trays('Tomatoes', 'Trays potted on')],
      [day('2027-05-05'), 'Sow in bed', 'Carrots', ''],
    ]);
  });

  it('shares a mix out by parts, and prices it by them', () => {
    const needed = season.number('Mixes', 'Compost, coir and grit', 'Needed') ?? 0;
    const parts = [...season.book.rows('Mix ingredients')]
      .filter((row) => season.book.cell('Mix ingredients', row, 'Mix').text === 'Compost, coir and grit')
      .map((row) => season.book.cell('Mix ingredients', row, 'Needed').number ?? 0);
    expect(needed).toBeGreaterThan(10);
    for (const part of parts) expect(part).toBeCloseTo(needed / 3, 6);
  });

  it('judges age and height, and advises on trimming', () => {
    expect(season.shown('Raising', 'Clumps', 'By age')).toBe('right');
    season.type('Raising', 'Clumps', 'Height measured', '8 cm');
    expect(season.shown('Raising', 'Clumps', 'By height')).toBe('short');
    season.type('Raising', 'Clumps', 'Height measured', '12 cm');
    expect(season.shown('Raising', 'Clumps', 'By height')).toBe('ready');
    expect(season.shown('Raising', 'Clumps', 'Trimming')).toMatch(/^No need: .*Brewster 2008/);
    expect(season.shown('Raising', 'Tomatoes', 'Trimming')).toBe('');
    season.type('Plantings', 'Tomatoes', 'Pot on', '2027-06-01');
    expect(season.says('Raising', 'Tomatoes').join()).toMatch(/give it a day between the two/);
  });
});
