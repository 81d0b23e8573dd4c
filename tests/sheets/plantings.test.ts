// Plantings worked out a second time by hand: the stand by the binomial distribution of an outside library, the yield by
// its equation, money by arithmetic; and what follows when a figure changes.

import { default as binomialCdf } from '@stdlib/stats-base-dists-binomial-cdf';
import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/index.ts';
import { errorsOf, type Rows, seasonOf } from './season.ts';

const ROWS: Rows = {
  Varieties: [
    {
      Variety: 'Yellow',
      Crop: 'Onion, bulb',
      'Day-length type': 'long',
      Germination: '85%',
      'Isolated plant mass': '531 g',
      'Ceiling yield': '10.92 kg/m2',
    },
    { Variety: 'Orange', Crop: 'Carrot', Germination: '80%' },
  ],
  Packs: [{ Variety: 'Yellow', Supplier: 'Any', Seeds: '100', Price: '1.20' }],
  Beds: [
    { Bed: 'A', Length: '50 ft', Width: '30 in', 'Family last year': 'Amaryllidaceae' },
    { Bed: 'B', Length: '100 ft', Width: '30 in' },
  ],
  Plantings: [
    {
      Planting: 'Clumps',
      Variety: 'Yellow',
      Start: 'blocks',
      Bed: 'A',
      'Bed length used': '50 ft',
      Rows: '4',
      'In-row spacing': '8 in',
      'Seeds per station': '3.5',
      Sown: '2027-02-20',
      'Planted out': '2027-04-25',
      'Nursery survival': '95%',
      'Field survival': '97%',
      'Squareness loss': '15%',
      Price: '2',
    },
    {
      Planting: 'Drilled',
      Variety: 'Orange',
      Start: 'direct seed',
      Bed: 'B',
      'Bed length used': '60 ft',
      Rows: '5',
      'In-row spacing': '1.5 in',
      'Seeds per station': '2',
      Sown: '2027-05-10',
    },
  ],
};

const FARM = { 'Last frost': '2027-05-10', 'First frost': '2027-09-30', Wage: '20' };

/** A block of 3 or 4 seeds, half and half, comes up with a plant. */
const COMES_UP = 1 - (0.15 ** 3 + 0.15 ** 4) / 2;

/** Smallest n with P(Binomial(n, chance) >= wanted) >= 90 %, one by one. */
function blocksOneByOne(wanted: number, chance: number): number {
  let blocks = wanted;
  while (1 - binomialCdf(wanted - 1, blocks, chance) < 0.9) blocks += 1;
  return blocks;
}

describe('a planting of onions in clumps', () => {
  const season = seasonOf(ROWS, FARM);
  const number = (column: string): number => season.number('Plantings', 'Clumps', column) ?? Number.NaN;

  it('counts places: 4 rows of 50 ft at 8 in are 4 x 75', () => {
    expect(number('Stations')).toBe(300);
    expect(number('Row spacing')).toBeCloseTo(7.5, 12);
    expect(number('Offset gain')).toBe(0 - 4 / 2);
  });

  it('starts as many blocks as fill the bed nine times in ten', () => {
    expect(number('Empty stations')).toBeCloseTo(100 * (1 - COMES_UP), 10);
    expect(number('Plants per station')).toBeCloseTo((3.5 * 0.85) / COMES_UP, 10);
    expect(number('Blocks to start')).toBe(blocksOneByOne(300, COMES_UP * 0.95));
  });

  it('has the whole distribution of plants in a block', () => {
    const exactly = (plants: number, seeds: number): number =>
      binomialCdf(plants, seeds, 0.85) - binomialCdf(plants - 1, seeds, 0.85);
    for (const [plants, column] of [
      [1, 'With 1 plant'],
      [2, 'With 2 plants'],
      [3, 'With 3 plants'],
      [4, 'With 4 plants'],
    ] as const) {
      const share = (exactly(plants, 3) + exactly(plants, 4)) / 2;
      expect(number(column)).toBeCloseTo(100 * share, 8);
    }
    expect(number('With 5 or more')).toBeCloseTo(0, 8);
  });

  it('buys seed for the blocks with a tenth to spare, rounded up', () => {
    expect(number('Seeds needed')).toBe(Math.ceil(number('Blocks to start') * 3.5 * 1.1 - 1e-9));
    expect(number('Trays')).toBe(Math.ceil(number('Blocks to start') / 50));
  });

  it('takes loose mix for its blocks: 8 cubic inches each, half as much again loose', () => {
    expect(number('Mix volume')).toBeCloseTo((number('Blocks to start') * 8 * 1.5) / 231, 9);
  });

  it('weighs its bulbs by crowding and squareness', () => {
    const area = 50 * 0.3048 * 30 * 0.0254;
    const plants = 300 * ((3.5 * 0.85) / COMES_UP) * 0.97;
    const density = plants / area;
    expect(number('Plant density')).toBeCloseTo(density * 0.09290304, 10);
    const squareness = 1 - (0.15 * Math.log(8 / 7.5)) / Math.log(8);
    const mass = squareness / (1 / 0.531 + density / 10.92);
    expect(number('Mean plant mass')).toBeCloseTo(mass / 0.028349523125, 9);
    expect(number('Total yield')).toBeCloseTo((plants * mass) / 0.45359237, 8);
    expect(number('Yield per bed area')).toBeCloseTo((plants * mass) / area / 4.882427636383051, 9);
  });

  it('sorts every bulb into one band', () => {
    const bands = ['Share under size', 'Share small', 'Share medium', 'Share large', 'Share extra large'];
    expect(bands.reduce((sum, band) => sum + number(band), 0)).toBeCloseTo(100, 9);
  });

  it('earns what its graded and cured bulbs fetch', () => {
    const shares = { small: 0.6, medium: 1, large: 1, 'extra large': 0.9 };
    const earned = Object.entries(shares).reduce(
      (sum, [band, share]) => sum + number(`Mass ${band}`) * 0.927 * 2 * share,
      0,
    );
    expect(number('Revenue')).toBeCloseTo(earned, 8);
    expect(number('Cured yield')).toBeCloseTo(number('Marketable yield') * 0.927, 9);
    expect(number('Margin')).toBeCloseTo(number('Revenue') - number('Costs'), 9);
  });

  it('waits for the day length and then for the tops to fall', () => {
    // 14.5 h at 44 degrees: between the dates at 40 (19 May) and 45 degrees (7 May) of an astronomy library for 2025.
    const starts = season.value('Plantings', 'Clumps', 'Bulbing starts');
    expect(starts).toBeGreaterThan(civilDay(2027, 5, 7));
    expect(starts).toBeLessThan(civilDay(2027, 5, 13));
    expect(season.value('Plantings', 'Clumps', 'Harvest')).toBe(Number(starts) + 70);
    expect(season.value('Plantings', 'Clumps', 'Held back by')).toBe('day length');
  });

  it('says that onions stood here last year', () => {
    expect(season.says('Plantings', 'Clumps')).toContain(
      'Amaryllidaceae stood on this bed last year; 4 years are wanted. Choose another bed.',
    );
    expect(season.number('Beds', 'A', 'Families too soon')).toBe(1);
  });

  it('leaves no cell in error', () => {
    expect(errorsOf(season.book)).toEqual([]);
  });
});

describe('a direct sowing', () => {
  const season = seasonOf(ROWS, FARM);
  const number = (column: string): number => season.number('Plantings', 'Drilled', column) ?? Number.NaN;

  it('sows its places and loses the empty ones', () => {
    expect(number('Stations')).toBe(5 * 480);
    expect(number('Seeds needed')).toBe(2400 * 2 * 1.1);
    expect(number('Empty stations')).toBeCloseTo(4, 10);
    // 80 % of two seeds a place come up, 85 % of those reach harvest.
    expect(number('Plants standing')).toBeCloseTo(2400 * 2 * 0.8 * 0.85, 8);
    expect(season.value('Plantings', 'Drilled', 'Blocks to start')).toBeNull();
  });

  it('harvests by days to maturity from sowing', () => {
    const days = season.number('Varieties', 'Orange', 'Days to maturity direct') ?? Number.NaN;
    expect(season.value('Plantings', 'Drilled', 'Harvest')).toBe(civilDay(2027, 5, 10) + days);
  });
});

describe('what follows from a change', () => {
  it('closer spacing gives more places, smaller bulbs, more yield and more seed; undo brings every figure back', () => {
    const season = seasonOf(ROWS, FARM);
    const columns = ['Stations', 'Plant density', 'Mean plant mass', 'Total yield', 'Blocks to start', 'Seeds needed'];
    const figures = (): readonly number[] => [
      ...columns.map((column) => season.number('Plantings', 'Clumps', column) ?? Number.NaN),
      season.number('Seed order', 'Yellow', 'Seeds needed') ?? Number.NaN,
      season.number('Seed order', 'Yellow', 'Cost') ?? Number.NaN,
    ];
    const before = figures();
    season.type('Plantings', 'Clumps', 'In-row spacing', '6 in');
    const after = figures();
    expect(after[0]).toBe(400);
    const direction = after.map((value, index) => Math.sign(value - (before[index] ?? Number.NaN)));
    expect(direction).toEqual([1, 1, -1, 1, 1, 1, 1, 1]);
    season.book.undo();
    expect(figures()).toEqual(before);
  });

  it('a shorter bed, a longer critical day and poorer seed each reach the planting', () => {
    const season = seasonOf(ROWS, FARM);
    const harvest = Number(season.value('Plantings', 'Clumps', 'Harvest'));
    season.type('Varieties', 'Yellow', 'Critical day length', '15 h');
    expect(Number(season.value('Plantings', 'Clumps', 'Harvest'))).toBeGreaterThan(harvest);
    season.type('Beds', 'A', 'Length', '40 ft');
    expect(season.says('Plantings', 'Clumps')).toContain(
      'Longer than the bed: shorten it, or split the planting over two beds.',
    );
    const blocks = season.number('Plantings', 'Clumps', 'Blocks to start') ?? Number.NaN;
    season.type('Varieties', 'Yellow', 'Germination', '60%');
    expect(season.number('Plantings', 'Clumps', 'Blocks to start')).toBeGreaterThan(blocks);
  });

  it('a second planting at the same time is found where the bed is too short for both', () => {
    const season = seasonOf({
      ...ROWS,
      Plantings: [
        ...(ROWS.Plantings ?? []),
        { Planting: 'Also there', Variety: 'Orange', Bed: 'B', 'Bed length used': '50 ft', Sown: '2027-06-01' },
        { Planting: 'After it', Variety: 'Orange', Bed: 'B', 'Bed length used': '60 ft', Sown: '2027-11-20' },
      ],
    });
    expect(
      season.says('Plantings', 'Also there').some((sentence) => sentence.startsWith('More stands on this bed')),
    ).toBe(true);
    expect(
      season.says('Plantings', 'After it').some((sentence) => sentence.startsWith('More stands on this bed')),
    ).toBe(false);
    expect(season.number('Beds', 'B', 'Length in use')).toBeCloseTo(110, 9);
    expect(season.number('Beds', 'B', 'Free length')).toBe(0);
  });
});
