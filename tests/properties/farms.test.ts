// Laws that hold on any farm, tried on random small ones: nothing picked gets lost from the books, supply and demand balance, hours
// and money add up whichever way they are summed, and a season rolled over opens clean.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Workbook } from '../../engine/index.ts';
import { rollOver } from '../../sheets-templates/index.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { Book, testWorld } from '../book.ts';
import { runs } from '../runs.ts';
import { errorsOf, type Rows, type Season, seasonOf } from '../sheets/season.ts';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');
const LOWS = [-10, -8, -4, 2, 8, 13, 16, 15, 10, 4, -1, -7];
const CROPS = [
  ['Heads', 'Lettuce, head', 'blocks'],
  ['Roots', 'Carrot', 'direct seed'],
  ['Bulbs', 'Onion, bulb', 'blocks'],
  ['Fruit', 'Tomato', 'cells'],
  ['Pods', 'Bean, snap bush', 'direct seed'],
  ['Beets', 'Beet', 'direct seed'],
] as const;

const two = (n: number): string => String(n).padStart(2, '0');
const day = (month: number, of: number): string => `2027-${two(month)}-${two(of)}`;

/** A farm of some plantings, products, outlets and costs, as a grower might type it. */
const farms: fc.Arbitrary<Rows> = fc
  .record({
    plantings: fc.array(
      fc.record({
        crop: fc.nat(CROPS.length - 1),
        bed: fc.integer({ min: 1, max: 4 }),
        length: fc.integer({ min: 3, max: 12 }),
        month: fc.integer({ min: 3, max: 6 }),
        of: fc.integer({ min: 1, max: 28 }),
        clump: fc.constantFrom('1', '2', '3.5'),
      }),
      { minLength: 2, maxLength: 6 },
    ),
    demand: fc.array(
      fc.record({
        crop: fc.nat(CROPS.length - 1),
        outlet: fc.nat(1),
        kilos: fc.integer({ min: 1, max: 30 }),
        from: fc.integer({ min: 5, max: 8 }),
        months: fc.integer({ min: 1, max: 5 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    costs: fc.array(
      fc.record({
        amount: fc.integer({ min: 1, max: 400 }),
        every: fc.constantFrom('once', 'week', 'month', 'quarter', 'year'),
        month: fc.integer({ min: 1, max: 12 }),
      }),
      { maxLength: 3 },
    ),
  })
  .map(({ plantings, demand, costs }) => ({
    'Monthly climate': MONTHS.map((Month, at) => ({
      Month,
      Low: `${LOWS[at]} degC`,
      High: `${(LOWS[at] ?? 0) + 11} degC`,
    })),
    Beds: [1, 2, 3, 4].map((number) => ({ Bed: `B${number}`, Length: '15 m', Width: '75 cm' })),
    Varieties: CROPS.map(([Variety, Crop]) => ({
      Variety,
      Crop,
      ...(Crop === 'Onion, bulb' ? { 'Day-length type': 'long' } : {}),
    })),
    Packs: CROPS.map(([Variety]) => ({ Variety, Supplier: 'A', Seeds: '1000', Price: '7' })),
    Plantings: plantings.map(({ crop, bed, length, month, of, clump }, at) => {
      const [Variety, , Start] = CROPS[crop] ?? CROPS[0];
      return {
        Planting: `${Variety} ${at}`,
        Variety,
        Start,
        Bed: `B${bed}`,
        'Bed length used': `${length} m`,
        ...(Start === 'direct seed' ? {} : { 'Seeds per station': clump }),
        Sown: day(month, of),
      };
    }),
    Stores: [{ Store: 'Cellar', Temperature: '1 degC', Humidity: '95%', Room: '800 kg' }],
    Products: CROPS.map(([Product, Crop]) => ({ Product, Crop, 'Sold by': 'weight', Price: '3 money/kg' })),
    Outlets: [
      {
        Outlet: 'Market',
        Kind: 'market',
        'Cost each time': '12',
        'Kept by the outlet': '5%',
        'Hours each time': '4 h',
      },
      { Outlet: 'Kitchen', Kind: 'kitchen', 'Weeks between': '2' },
    ],
    Demand: demand.map(({ crop, outlet, kilos, from, months }) => ({
      Outlet: outlet === 0 ? 'Market' : 'Kitchen',
      Product: (CROPS[crop] ?? CROPS[0])[0],
      Weight: `${kilos} kg`,
      From: day(from, 3),
      Until: day(Math.min(12, from + months), 24),
    })),
    'Own costs': costs.map(({ amount, every, month }, at) => ({
      Cost: `Cost ${at}`,
      Amount: String(amount),
      Every: every,
      'First on': day(month, 9),
    })),
  }));

const FARM = { Latitude: '43', Wage: '17', 'Mix price': '400 money/m3' };

function open(rows: Rows): Season {
  return seasonOf(rows, FARM, { units: 'si' });
}

interface Sheet {
  readonly rows: readonly number[];
  number(row: number, column: string): number;
  text(row: number, column: string): string;
  sum(column: string): number;
}

function sheetOf({ book }: Season, name: string): Sheet {
  const rows = [...book.rows(name)];
  const number = (row: number, column: string): number => book.cell(name, row, column).number ?? 0;
  return {
    rows,
    number,
    text: (row, column) => book.cell(name, row, column).text,
    sum: (column) => rows.reduce((all, row) => all + number(row, column), 0),
  };
}

function lawsOf(season: Season): void {
  expect(errorsOf(season.book)).toEqual([]);
  const plantings = sheetOf(season, 'Plantings');
  const lots = sheetOf(season, 'Lots');
  const weeks = sheetOf(season, 'Lots by week');
  const supply = sheetOf(season, 'Supply against demand');
  const demand = sheetOf(season, 'Demand by week');

  // What comes in is sold, lost, or left, week by week and over all; what is left of a week is there in the next.
  for (const row of weeks.rows) {
    const [before = 0, come = 0, sold = 0, lost = 0, left = 0] = ['From before', 'In', 'Sold', 'Lost', 'Left'].map(
      (one) => weeks.number(row, one),
    );
    expect(before + come - sold - lost - left).toBeCloseTo(0, 6);
  }
  expect(weeks.sum('In')).toBeCloseTo(lots.sum('Mass'), 6);
  expect(lots.sum('Mass') - lots.sum('Sold') - lots.sum('Lost') - lots.sum('Left')).toBeCloseTo(0, 6);
  expect(plantings.sum('Fresh thinnings') + plantings.sum('Sold weight')).toBeGreaterThanOrEqual(
    lots.sum('Mass') - 1e-6,
  );
  const harvest = sheetOf(season, 'Weekly harvest');
  expect(harvest.sum('Picked')).toBeCloseTo(harvest.sum('Mass') + harvest.sum('Sorted out'), 6);

  // Supply less demand is what is over less what is short, and nobody gets what is not there.
  for (const row of supply.rows) {
    const [there = 0, wanted = 0, over = 0, short = 0] = ['Supply', 'Wanted', 'Over', 'Short'].map((one) =>
      supply.number(row, one),
    );
    expect(there - wanted).toBeCloseTo(over - short, 6);
  }
  expect(demand.sum('Gets')).toBeCloseTo(weeks.sum('Sold'), 6);

  // Hours by week and by job, money by month and by outlet.
  expect(sheetOf(season, 'Labour').sum('Hours')).toBeCloseTo(sheetOf(season, 'Tasks').sum('Hours counted'), 6);
  const months = sheetOf(season, 'Months');
  const budget = season.number('Budget', '', 'Margin') ?? Number.NaN;
  expect(months.sum('Cash')).toBeCloseTo(months.sum('Sales') - months.sum('Costs'), 6);
  expect(months.sum('Cash')).toBeCloseTo(budget, 6);
  expect(months.sum('Sales')).toBeCloseTo(sheetOf(season, 'Outlets').sum('Sales'), 6);
  expect(months.sum('Hours')).toBeCloseTo(sheetOf(season, 'Tasks').sum('Hours counted'), 6);
  expect(months.sum('Own costs')).toBeCloseTo(sheetOf(season, 'Own costs').sum('In all'), 6);

  // As many blocks as places at least, and no bed over its length unless it is said.
  for (const row of plantings.rows) {
    if (plantings.text(row, 'Start') === 'direct seed') continue;
    expect(plantings.number(row, 'Blocks to start')).toBeGreaterThanOrEqual(plantings.number(row, 'Stations') - 1e-9);
  }
  const flagged = new Set(season.book.attention().flatMap(({ table, rowName }) => (table === 'Beds' ? [rowName] : [])));
  const calendar = sheetOf(season, 'Bed calendar');
  for (const row of calendar.rows) {
    if (calendar.number(row, 'Planted') > 15 + 1e-9) expect(flagged).toContain(calendar.text(row, 'Bed'));
  }
}

describe('on any farm', () => {
  it(
    'kilograms, hours and money add up whichever way they are summed',
    () => {
      fc.assert(
        fc.property(farms, (rows) => lawsOf(open(rows))),
        { numRuns: runs(3, 60) },
      );
    },
    runs(120_000, 3_600_000),
  );

  it(
    'a season rolled over opens clean',
    () => {
      fc.assert(
        fc.property(farms, fc.constantFrom('own' as const, 'all' as const, 'none' as const), (rows, plan) => {
          const season = open(rows);
          const rolled = rollOver(season.book.workbook, { season: 2028, plan });
          if (!rolled.ok) throw new Error(rolled.why);
          const next = Workbook.open(rolled.data, testWorld(SEASON));
          if (next === undefined) throw new Error('It does not open.');
          const again = Workbook.open(next.data(), testWorld(SEASON));
          expect(again?.data()).toEqual(next.data());
          const errors = new Book(next, SEASON).attention().filter(({ level }) => level === 'error');
          expect(errors).toEqual([]);
        }),
        { numRuns: runs(2, 30) },
      );
    },
    runs(120_000, 3_600_000),
  );
});
