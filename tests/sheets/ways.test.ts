// Ways to plant: each way beside a planting typed the same, figure by figure; a missing price is said; a way becomes the planting.

import { describe, expect, it } from 'vitest';
import { rowId } from '../../engine/index.ts';
import { plantWay } from '../../sheets-templates/acts/plant-way.ts';
import { latitudeOf, monthsOf } from '../reference/calendars.ts';
import { errorsOf, type Season, seasonOf } from './season.ts';

const PLACE = 'Madison WI';

function season(): Season {
  return seasonOf(
    {
      'Monthly climate': monthsOf(PLACE),
      Varieties: [
        { Variety: 'Bulb', Crop: 'Onion, bulb', Germination: '90%', 'Day-length type': 'long' },
        { Variety: 'Root', Crop: 'Carrot', Germination: '80%' },
      ],
      Beds: [{ Bed: 'B1', Length: '50 ft', Width: '30 in' }],
      Packs: [
        { Variety: 'Bulb', Supplier: 'East', Seeds: '1000', Price: '9.00' },
        { Variety: 'Bulb', Supplier: 'East', Form: 'plants', Seeds: '100', Price: '6.00' },
      ],
      Plantings: [
        {
          Planting: 'Clumps',
          Variety: 'Bulb',
          Bed: 'B1',
          Start: 'blocks',
          'In-row spacing': '9 in',
          'Seeds per station': '4',
          Sown: '2027-02-20',
          'Planted out': '2027-04-28',
          Price: '2.00',
        },
      ],
      'Beds to try': [
        { 'Bed to try': 'Onions', Planting: 'Clumps' },
        { 'Bed to try': 'Carrots', Variety: 'Root', 'Bed length used': '20 ft' },
      ],
    },
    { Latitude: String(latitudeOf(PLACE)), Wage: '19', 'Mix price': '0.60 money/L' },
  );
}

/** The row of a way on a bed, by its place in the sheet. */
function wayRow(of: Season, bed: string, way: string): number {
  const found = [...of.book.rows('Ways to plant')].find(
    (row) =>
      of.book.cell('Ways to plant', row, 'Bed to try').text === bed &&
      of.book.cell('Ways to plant', row, 'Name').text === way,
  );
  if (found === undefined) throw new Error(`${way} is not tried on ${bed}`);
  return found;
}

function plant(of: Season, bed: string, way: string): string {
  const { workbook } = of.book;
  const act = plantWay(workbook, rowId(workbook, 'ways-to-plant', wayRow(of, bed, way)));
  if (!act.ok) return act.why;
  const done = workbook.do(act.commands, act.message);
  if (done.refused) throw new Error(done.why);
  return act.said;
}

const FIGURES = [
  'Stations',
  'Blocks to start',
  'Plants standing',
  'Mean plant mass',
  'Marketable yield',
  'Cured yield',
  'Hours',
  'Bench area',
  'Seed cost',
  'Mix cost',
  'Labour cost',
  'Revenue',
  'Harvest',
];

describe('ways to plant', () => {
  const tried = season();
  const ways = (bed: string): readonly string[] =>
    [...tried.book.rows('Ways to plant')]
      .filter((row) => tried.book.cell('Ways to plant', row, 'Bed to try').text === bed)
      .map((row) => tried.book.cell('Ways to plant', row, 'Name').text);

  it('leave no cell in error, and offer only what a crop is started by', () => {
    expect(errorsOf(tried.book)).toEqual([]);
    expect(ways('Onions')).toContain('Fours in blocks');
    expect(ways('Onions')).toContain('Loose in a nursery bed');
    expect(ways('Onions')).toContain('Bought plants');
    expect(ways('Carrots')).toEqual(['Seed in the bed']);
  });

  it('come to what a planting does that is typed the same, every way of them', () => {
    const names = ways('Onions');
    expect(names.length).toBeGreaterThan(9);
    const fresh = season();
    for (const name of names) {
      const before = FIGURES.map((column) => fresh.book.value('Ways to plant', wayRow(fresh, 'Onions', name), column));
      expect(plant(fresh, 'Onions', name)).toMatch(/^Clumps is planted so: /);
      const after = FIGURES.map((column) => fresh.value('Plantings', 'Clumps', column));
      before.forEach((value, k) => {
        const label = `${name}, ${FIGURES[k] ?? ''}`;
        if (typeof value === 'number') expect(after[k], label).toBeCloseTo(value, 6);
        else expect(after[k], label).toEqual(value);
      });
      fresh.book.undo();
    }
  });

  it('say what has no price, and reckon no margin without it', () => {
    const sets = wayRow(tried, 'Onions', 'Sets');
    expect(tried.book.value('Ways to plant', sets, 'What has no price')).toBe('sets');
    expect(tried.book.value('Ways to plant', sets, 'Margin')).toBeNull();
    expect(tried.book.value('Ways to plant', sets, 'Costs')).toBeNull();
    const said = tried.book.attention().filter(({ table }) => table === 'Ways to plant');
    expect(said.map(({ says }) => says).join()).toMatch(
      /No price for sets: costs and margin of this way are not reckoned/,
    );
    tried.type('Beds to try', 'Onions', 'Price of a set', '0.03');
    expect(tried.book.cell('Ways to plant', sets, 'Margin').number).toBeGreaterThan(0);
  });

  it('count the time to lift and part loose plants', () => {
    const hours = (name: string): number =>
      tried.book.cell('Ways to plant', wayRow(tried, 'Onions', name), 'Planting hours').number ?? Number.NaN;
    const places =
      tried.book.cell('Ways to plant', wayRow(tried, 'Onions', 'Singles in cells'), 'Stations').number ?? 0;
    expect(hours('Loose in a deep tray') - hours('Singles in cells')).toBeCloseTo(places / 600, 6);
  });

  it('plant a new planting where the bed to try is about none, one step of undo', () => {
    expect(plant(tried, 'Carrots', 'Seed in the bed')).toBe('Carrots, seed in the bed is in Plantings.');
    expect(tried.shown('Plantings', 'Carrots, seed in the bed', 'Start')).toBe('direct seed');
    expect(tried.number('Plantings', 'Carrots, seed in the bed', 'Bed length used')).toBeCloseTo(20, 6);
    tried.book.undo();
    expect(tried.book.rowOf('Plantings', 'Carrots, seed in the bed')).toBeUndefined();
  });

  it('name the way with the best margin', () => {
    const margins = ways('Onions').map(
      (name) => [tried.book.cell('Ways to plant', wayRow(tried, 'Onions', name), 'Margin').number, name] as const,
    );
    const known = margins.filter(([margin]) => margin !== undefined).sort(([a = 0], [b = 0]) => b - a);
    expect(tried.shown('Beds to try', 'Onions', 'Best way')).toBe(known[0]?.[1]);
  });
});
