// What a planting makes of its crop, its climate and its bed, worked out a second time by hand: warmth to harvest, the cold that
// ends it, covers, ground, pieces, hours, weeks, bolting, the propagation house, seed that waits for a person.

import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/index.ts';
import { monthsOf } from '../reference/calendars.ts';
import { errorsOf, type Rows, seasonOf } from './season.ts';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** The same mean the year round, five degrees either way by day and night. */
function steady(mean: number): readonly Readonly<Record<string, string>>[] {
  return MONTHS.map((Month) => ({ Month, Low: `${mean - 5} degC`, High: `${mean + 5} degC` }));
}

/** A crop with round figures and nothing from the library. */
const LEAF = {
  Crop: 'Leaf',
  Family: 'Anyaceae',
  'Usual start': 'direct seed',
  'Germination standard': '80%',
  'Emergence base': '5 degC',
  'Emergence thermal time': '100 degC day',
  'Degree-day base': '5 degC',
  'Degree-day ceiling': '25 degC',
  'Growth minimum': '5 degC',
  'Growth best from': '14 degC',
  'Growth best to': '16 degC',
  'Growth maximum': '24 degC',
  'Days to maturity direct': '50 days',
  'Days to maturity direct low': '40 days',
  'Days to maturity direct high': '60 days',
  'Days to maturity': '30 days',
  'Harvest window': '20 days',
  'Frost limit': '-4 degC',
  'Sow outdoors from last frost': '-3 weeks',
  'Plant out from last frost': '-3 weeks',
  'In-row spacing': '20 cm',
  'Rows per bed': '3',
  'Isolated plant mass': '500 g',
  'Ceiling yield': '4 kg/m2',
  'Harvest unit': 'head',
  'Plants per harvest unit': '0.5',
  'Unit mass': '200 g',
  Yield: '2 kg/m2',
  'Yield low': '1 kg/m2',
  'Yield high': '4 kg/m2',
  'Marketable share': '80%',
};

function leafSeason(
  mean: number,
  crop: Readonly<Record<string, string>> = {},
  planting: Readonly<Record<string, string>> = {},
) {
  return seasonOf(
    {
      'Monthly climate': steady(mean),
      Crops: [{ ...LEAF, ...crop }],
      Varieties: [{ Variety: 'Leaf', Crop: 'Leaf' }],
      Beds: [
        { Bed: 'A', Length: '10 m', Width: '1 m' },
        { Bed: 'B', Length: '10 m', Width: '1 m' },
      ],
      Plantings: [{ Planting: 'One', Variety: 'Leaf', Bed: 'A', Sown: '2027-05-01', ...planting }],
    },
    { Latitude: '45' },
    { units: 'si' },
  );
}

const MAY = civilDay(2027, 5, 1);

describe('warmth to harvest', () => {
  it('counts days at the growth mean less those to emergence, from emergence on', () => {
    // At 15 degC seed is up in 100/10 = 10 days; the 40 days left are 400 degree-days of 10 a day.
    const season = leafSeason(15);
    expect(season.number('Varieties', 'Leaf', 'Warmth to harvest direct')).toBeCloseTo(400, 9);
    expect(season.value('Plantings', 'One', 'Emergence')).toBe(MAY + 9);
    expect(season.value('Plantings', 'One', 'Harvest')).toBe(MAY + 9 + 39);
    expect(season.value('Plantings', 'One', 'Harvest reckoned by')).toBe('days, scaled by warmth');
  });

  it('is slower in the cool, no quicker than best in the heat, and quicker under a cover', () => {
    // 5 degree-days a day at 10 degC: 20 days to come up, 80 to grow.
    expect(leafSeason(10).value('Plantings', 'One', 'Harvest')).toBe(MAY + 19 + 79);
    // Warmer than the best, 16 degC, counts as 11 a day: 400/11 is 37 days.
    const warm = leafSeason(20);
    expect(
      Number(warm.value('Plantings', 'One', 'Harvest')) - Number(warm.value('Plantings', 'One', 'Emergence')),
    ).toBe(36);
    // Two degrees more: 7 a day, 15 days to come up, 58 to grow.
    expect(leafSeason(10, {}, { Cover: 'row cover' }).value('Plantings', 'One', 'Harvest')).toBe(MAY + 14 + 57);
  });

  it('goes by published degree-days where the crop has them, with their range', () => {
    const season = leafSeason(15, {
      'Warmth to harvest direct low': '500 degC day',
      'Warmth to harvest direct': '600 degC day',
      'Warmth to harvest direct high': '700 degC day',
    });
    const harvest = (column: string): number => Number(season.value('Plantings', 'One', column)) - MAY - 9;
    expect([harvest('Harvest low'), harvest('Harvest'), harvest('Harvest high')]).toEqual([49, 59, 69]);
    expect(season.value('Plantings', 'One', 'Harvest reckoned by')).toBe('degree-days');
  });

  it('says that it is never warm enough, and then gives no yield and no money', () => {
    const season = leafSeason(4, {}, { Price: '3' });
    expect(season.value('Plantings', 'One', 'Harvest')).toBeNull();
    expect(season.value('Plantings', 'One', 'Marketable yield')).toBeNull();
    expect(season.value('Plantings', 'One', 'Revenue')).toBeNull();
    expect(season.value('Plantings', 'One', 'No harvest because')).toBe('it is never warm enough here for this crop');
  });
});

describe('pieces and ranges', () => {
  const season = leafSeason(15);
  const number = (column: string): number => season.number('Plantings', 'One', column) ?? Number.NaN;

  it('are no more heads than plants that stand and sell, whatever a plant gives', () => {
    expect(number('Pieces')).toBeCloseTo(number('Plants standing') * 0.8, 9);
    expect(number('Mass of a piece')).toBeCloseTo((1000 * number('Marketable yield')) / number('Pieces'), 6);
  });

  it("take low and high from the crop's lowest and highest yield", () => {
    expect(number('Marketable yield low')).toBeCloseTo(number('Marketable yield') / 2, 9);
    expect(number('Marketable yield high')).toBeCloseTo(number('Marketable yield') * 2, 9);
  });

  it('say so outside the densities that are known', () => {
    const close = leafSeason(15, {}, { 'In-row spacing': '5 cm' });
    expect(close.says('Plantings', 'One').some((one) => one.startsWith('Closer or wider than is known'))).toBe(true);
    expect(season.says('Plantings', 'One').some((one) => one.startsWith('Closer or wider than is known'))).toBe(false);
  });

  it('leave no cell in error', () => {
    expect(errorsOf(season.book)).toEqual([]);
  });
});

describe('ground', () => {
  it('of a crop that spreads over two beds counts twice, and takes the bed beside it', () => {
    const season = leafSeason(15, { 'Beds across': '2' }, { 'Spreads over': 'B' });
    expect(season.number('Plantings', 'One', 'Ground area')).toBeCloseTo(20, 9);
    expect(season.number('Beds', 'A', 'Length in use')).toBeCloseTo(10, 9);
    expect(season.number('Beds', 'B', 'Length in use')).toBeCloseTo(10, 9);
    const alone = leafSeason(15, { 'Beds across': '2' });
    expect(alone.says('Plantings', 'One').some((one) => one.startsWith('It covers 2 beds in the end'))).toBe(true);
    expect(season.number('Plantings', 'One', 'Plant density')).toBeCloseTo(
      (leafSeason(15).number('Plantings', 'One', 'Plant density') ?? 0) / 2,
      9,
    );
  });
});

describe('hours', () => {
  it('add up task by task at the rates of the crop and of the farm', () => {
    const season = leafSeason(15, {
      'Picking rate low': '10 kg/h',
      'Picking rate': '20 kg/h',
      'Picking rate high': '40 kg/h',
      'Packing rate low': '25 kg/h',
      'Packing rate': '50 kg/h',
      'Packing rate high': '100 kg/h',
      'Weeding time low': '3 min/m2',
      'Weeding time': '6 min/m2',
      'Weeding time high': '12 min/m2',
    });
    const number = (column: string): number => season.number('Plantings', 'One', column) ?? Number.NaN;
    const mass = number('Marketable yield');
    expect(number('Weeding hours')).toBeCloseTo(1, 9);
    expect(number('Picking hours')).toBeCloseTo(mass / 20, 9);
    expect(number('Packing hours')).toBeCloseTo(mass / 50, 9);
    expect(number('Bed hours')).toBeCloseTo((10 * 8) / 60, 9);
    expect(number('Planting hours')).toBeCloseTo((4 * 10) / 1200, 9);
    const bed = (column: string): number => Number(season.value('Plantings', 'One', column));
    const weeks = (bed('Bed free') - bed('Planted out')) / 7;
    expect(weeks).toBeGreaterThan(3);
    expect(number('Tending hours')).toBeCloseTo((10 * 0.2 * weeks) / 60, 9);
    const before = number('Bed hours') + number('Planting hours') + number('Tending hours');
    expect(number('Hours')).toBeCloseTo(before + 1 + mass / 20 + mass / 50, 9);
    expect(number('Hours low')).toBeCloseTo(before + 0.5 + mass / 40 + mass / 100, 9);
    expect(number('Hours high')).toBeCloseTo(before + 2 + mass / 10 + mass / 25, 9);
  });
});

describe('a harvest cut short by cold', () => {
  const rows: Rows = {
    'Monthly climate': monthsOf('Madison WI'),
    Crops: [
      {
        ...LEAF,
        'Frost limit': '0 degC',
        Hardiness: 'tender',
        'Harvest window': '60 days',
        'Harvest curve middle': '50%',
        'Harvest curve spread': '20%',
        'Days between pickings': '3 days',
      },
    ],
    Varieties: [{ Variety: 'Leaf', Crop: 'Leaf' }],
    Plantings: [{ Planting: 'One', Variety: 'Leaf', Sown: '2027-07-01' }],
  };
  const farm = { Latitude: '43', 'Last frost': '2027-05-20', 'First frost': '2027-09-20' };
  const season = seasonOf(rows, farm, { units: 'si' });
  const date = (column: string): number => Number(season.value('Plantings', 'One', column));
  const number = (column: string): number => season.number('Plantings', 'One', column) ?? Number.NaN;

  it('ends on the day before the first frost at the risk accepted, and later under a cover', () => {
    expect(Math.abs(date('Cold ends it') - civilDay(2027, 9, 20))).toBeLessThanOrEqual(1);
    expect(date('Harvest ends')).toBe(date('Cold ends it') - 1);
    const covered = seasonOf(
      { ...rows, Plantings: [{ Planting: 'One', Variety: 'Leaf', Sown: '2027-07-01', Cover: 'row cover' }] },
      farm,
    );
    expect(Number(covered.value('Plantings', 'One', 'Cold ends it'))).toBeGreaterThan(date('Cold ends it'));
  });

  it('takes the rest of the curve off the yield, and says so', () => {
    const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
    const at = (share: number): number => logistic((share - 0.5) / 0.2);
    const picked = number('Days picked') / 60;
    const kept = (at(picked) - at(0)) / (at(1) - at(0));
    expect(number('Window lost')).toBeCloseTo(100 * (1 - kept), 6);
    expect(number('Marketable yield')).toBeCloseTo(number('Marketable if all is picked') * kept, 6);
    expect(season.says('Plantings', 'One').some((one) => one.startsWith('Cold ends the harvest about'))).toBe(true);
  });
});

describe('cuts and side shoots', () => {
  const weekly = (season: ReturnType<typeof leafSeason>): readonly number[] =>
    [...season.book.rows('Weekly harvest')].map((row) => season.book.cell('Weekly harvest', row, 'Share').number ?? 0);

  it('come in the weeks they are cut: 100, 75 and 45 % of the first', () => {
    const season = leafSeason(15, {
      'Harvest unit': 'weight',
      'Harvest window': '29 days',
      'Days between pickings': '14 days',
      'Second cut share': '75%',
      'Third cut share': '45%',
      'Plants per harvest unit': '',
    });
    const shares = weekly(season).filter((share) => share > 1e-9);
    expect(shares.length).toBe(3);
    for (const [index, part] of [100, 75, 45].entries()) expect(shares[index]).toBeCloseTo((100 * part) / 220, 6);
  });

  it('give the main head in the first week and the rest after it', () => {
    const shares = weekly(leafSeason(15, { 'Harvest window': '28 days', 'Side shoot share': '30%' }));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 6);
    expect((shares[0] ?? 0) + (shares[1] ?? 0)).toBeGreaterThan(70);
  });
});

describe('bolting', () => {
  const COLD = {
    'Bolting trigger': 'cold',
    'Bolting cold base': '0 degC',
    'Bolting cold best from': '5 degC',
    'Bolting cold best to': '13 degC',
    'Bolting cold': '15 degC',
    'Bolting cold days': '10 days',
    'Bolting cold days most': '60 days',
    'Bolting size': 'four leaves',
    'Bolting size warmth': '200 degC day',
    'Bolting size warmth base': '5 degC',
  };
  const risk = (season: ReturnType<typeof leafSeason>): unknown => season.value('Plantings', 'One', 'Bolting risk');

  it('by cold counts the days felt once the plant is large enough', () => {
    // At 10 degC it comes up on day 19, has 200 degree-days on day 59, is ripe on day 98: 39 days of full cold.
    const season = leafSeason(10, COLD);
    expect(season.number('Plantings', 'One', 'Cold felt')).toBeCloseTo(40, 0);
    expect(risk(season)).toBe('raised');
    expect(season.value('Plantings', 'One', 'Bolting why')).toMatch(
      /^Raised: 40 days of full cold after four leaves; some bolt from about 10, most from about 60/,
    );
    expect(risk(leafSeason(10, { ...COLD, 'Bolting cold days most': '30 days' }))).toBe('high');
    expect(risk(leafSeason(16, COLD))).toBe('low');
  });

  it('by long days goes by when they come before the harvest, by heat by how many days are hot', () => {
    const long = { 'Bolting trigger': 'long days', 'Bolting day length': '14 h' };
    expect(risk(leafSeason(15, long))).toBe('high');
    expect(risk(leafSeason(15, long, { Sown: '2027-08-25' }))).toBe('low');
    const heat = { 'Bolting trigger': 'heat', 'Bolting heat': '18 degC', 'Bolting heat days': '20 days' };
    expect(risk(leafSeason(20, heat))).toBe('high');
    expect(risk(leafSeason(15, heat))).toBe('low');
    const both = {
      'Bolting trigger': 'heat and long days',
      'Bolting day length': '14 h',
      'Bolting heat': '18 degC',
      'Bolting heat days': '20 days',
    };
    expect(risk(leafSeason(15, both))).toBe('raised');
    expect(risk(leafSeason(20, both))).toBe('high');
  });

  it('is blank for a crop that nothing sends to seed', () => {
    expect(risk(leafSeason(10, { 'Bolting trigger': 'none' }))).toBeNull();
    expect(leafSeason(10, { 'Bolting trigger': 'none' }).value('Plantings', 'One', 'Bolting why')).toBeNull();
  });
});

describe('the propagation house', () => {
  const raised = { Start: 'cells', 'Planted out': '2027-06-10' };
  const warmth = { 'Germination best from': '20 degC', 'Germination best to': '30 degC' };
  const days = (season: ReturnType<typeof leafSeason>): number =>
    Number(season.value('Plantings', 'One', 'Emergence')) - MAY;

  it('germinates warm and grows on cooler, or not, by the farm and by the planting', () => {
    // 100 degree-days over 5: at 25 degC five days, at 18 degC (100/13) eight.
    expect(days(leafSeason(15, warmth, raised))).toBe(5);
    expect(days(leafSeason(15, warmth, { ...raised, 'Heated to germinate': 'no' }))).toBe(8);
    const cold = leafSeason(15, warmth, { ...raised, 'Nursery heated': 'no' });
    expect(cold.number('Plantings', 'One', 'Raising temperature')).toBeCloseTo(18.5, 6);
    expect(days(cold)).toBe(5);
  });

  it('gets several plants from a ball of seed', () => {
    const season = leafSeason(15, { ...warmth, 'Seedlings per seed': '2' }, { ...raised, 'Seeds per station': '1' });
    expect(season.number('Plantings', 'One', 'Plants per station')).toBeCloseTo(2, 9);
  });
});

describe('seed on hand', () => {
  const season = seasonOf({
    Varieties: [{ Variety: 'Green', Crop: 'Lettuce, head' }],
    'Seed lots': [
      { Lot: 'Packed', Variety: 'Green', Quantity: '1000', 'Packed on': '2024-01-10', 'Sowing date': '2027-03-01' },
      {
        Lot: 'Unknown',
        Variety: 'Green',
        Quantity: '1000',
        'Sowing date': '2027-03-01',
        'Germination when tested': '60%',
      },
    ],
  });
  const number = (lot: string, column: string): number => season.number('Seed lots', lot, column) ?? Number.NaN;

  it('ages from its packing where nothing was tested, with what it may have fallen to at worst and best', () => {
    expect(number('Packed', 'Age at sowing')).toBe(civilDay(2027, 3, 1) - civilDay(2024, 1, 10));
    expect(number('Packed', 'Germination at sowing')).toBeLessThan(number('Packed', 'Germination when tested'));
    expect(number('Packed', 'Germination at sowing low')).toBeLessThan(number('Packed', 'Germination at sowing'));
    expect(number('Packed', 'Germination at sowing high')).toBeGreaterThan(number('Packed', 'Germination at sowing'));
  });

  it('that is flagged stays out of the count until a person says otherwise', () => {
    expect(season.value('Seed lots', 'Unknown', 'Flagged')).toBe(true);
    expect(number('Unknown', 'Usable seeds')).toBe(0);
    season.type('Seed lots', 'Unknown', 'Count it', 'yes');
    expect(number('Unknown', 'Usable seeds')).toBe(1000);
    season.book.undo();
  });
});
