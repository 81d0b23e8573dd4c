// Facts of the onion trade that growers agree on without a publication (common practice): the default sheets land inside them.

import { describe, expect, it } from 'vitest';
import { type Rows, seasonOf } from './season.ts';

const onion = (Variety: string, more: Readonly<Record<string, string>> = {}) => ({
  Variety,
  Crop: 'Onion, bulb',
  'Day-length type': 'intermediate',
  ...more,
});
const raised = (Planting: string, more: Readonly<Record<string, string>> = {}) => ({
  Planting,
  Variety: 'Bulb',
  Sown: '2027-01-05',
  'Planted out': '2027-03-15',
  ...more,
});

/** Means of a place near 38 degrees north with cold winters and hot summers, invented. */
const MEANS = [2, 4, 8, 13, 18, 23, 26, 25, 21, 14, 8, 3];
const MONTHS = 'January February March April May June July August September October November December'.split(' ');
const CLIMATE = MONTHS.map((Month, index) => ({
  Month,
  Low: `${(MEANS[index] ?? 0) - 5.5} degC`,
  High: `${(MEANS[index] ?? 0) + 5.5} degC`,
}));

const ROWS: Rows = {
  Varieties: [onion('Bulb', { Germination: '85%' }), onion('Long', { 'Day-length type': 'long' })],
  Plantings: [
    raised('Clumps'),
    raised('Singles', { 'Seeds per station': '1' }),
    raised('Early', { 'Planted out': '2027-03-01' }),
    raised('Late', { 'Planted out': '2027-04-05' }),
    raised('Large', { Variety: 'Long' }),
    raised('Autumn', { Sown: '2026-07-20', 'Planted out': '2026-10-01' }),
  ],
  'Monthly climate': CLIMATE,
};

const FARM = { Latitude: '38', 'Last frost': '2027-04-12', 'First frost': '2027-10-20' };
const season = seasonOf(ROWS, FARM);
const number = (planting: string, column: string): number => season.number('Plantings', planting, column) ?? Number.NaN;

describe('facts of the trade', () => {
  it('two to four seeds a block leave about three plants', () => {
    expect(number('Clumps', 'Seeds per station')).toBeGreaterThanOrEqual(2);
    expect(number('Clumps', 'Seeds per station')).toBeLessThanOrEqual(4);
    expect(number('Clumps', 'Plants per station')).toBeGreaterThan(2.5);
    expect(number('Clumps', 'Plants per station')).toBeLessThan(3.5);
  });

  it('clusters stand 7 to 8 in square, singles 2 in apart in the row', () => {
    expect(number('Clumps', 'In-row spacing')).toBeGreaterThanOrEqual(7);
    expect(number('Clumps', 'In-row spacing')).toBeLessThanOrEqual(8);
    expect(number('Clumps', 'Row spacing')).toBeGreaterThanOrEqual(7);
    expect(number('Clumps', 'Row spacing')).toBeLessThanOrEqual(8);
    expect(number('Singles', 'In-row spacing')).toBeCloseTo(2, 9);
  });

  it('plants go out at 10 to 15 cm', () => {
    const height = (season.number('Crops', 'Onion, bulb', 'Transplant height') ?? Number.NaN) * 2.54;
    expect(height).toBeGreaterThanOrEqual(10);
    expect(height).toBeLessThanOrEqual(15);
  });

  it('seed comes up within two weeks at 10 to 24 degC', () => {
    for (const warmth of ['10 degC', '17 degC', '24 degC']) {
      season.type('Plantings', 'Clumps', 'Germination temperature', warmth);
      const days =
        Number(season.value('Plantings', 'Clumps', 'Emergence')) - Number(season.value('Plantings', 'Clumps', 'Sown'));
      expect(days, warmth).toBeGreaterThan(0);
      expect(days, warmth).toBeLessThanOrEqual(14);
      season.book.undo();
    }
  });

  it('a propagation house outside the temperatures at which the seed comes up is named', () => {
    const said = (): string => season.says('Plantings', 'Clumps').join();
    expect(said()).not.toMatch(/than the seed of this crop comes up in/);
    season.type('Plantings', 'Clumps', 'Raising temperature', '1 degC');
    expect(said()).not.toMatch(/than the seed of this crop comes up in/);
    season.type('Farm', '', 'Heated to germinate', 'no');
    expect(said()).toMatch(/cooler than the seed of this crop comes up in/);
    season.type('Plantings', 'Clumps', 'Raising temperature', '38 degC');
    expect(said()).toMatch(/warmer than the seed of this crop comes up in/);
    season.book.undo();
    season.book.undo();
    season.book.undo();
  });

  it('a heated house is as warm as it is heated to, and no cooler than the weather', () => {
    const tropics = seasonOf(
      { ...ROWS, 'Monthly climate': CLIMATE.map(({ Month }) => ({ Month, Low: '23 degC', High: '31 degC' })) },
      FARM,
    );
    expect(season.value('Plantings', 'Clumps', 'Raising temperature')).toEqual(
      season.value('Farm', '', 'Nursery temperature'),
    );
    expect(tropics.number('Plantings', 'Clumps', 'Raising temperature')).toBeCloseTo(80.6, 6);
    expect(tropics.says('Plantings', 'Clumps').join()).toMatch(/grows on warmer/);
  });

  it('an onion that never bulbs has no bulbs, no yield and no money', () => {
    const tropics = seasonOf(ROWS, { ...FARM, Latitude: '5' });
    expect(tropics.value('Plantings', 'Large', 'No harvest because')).toMatch(/never bulbs/);
    for (const column of [
      'Total yield',
      'Yield per bed area',
      'Mean diameter',
      'Share large',
      'Marketable yield',
      'Pieces',
    ])
      expect(tropics.value('Plantings', 'Large', column), column).toBeNull();
    expect(number('Large', 'Total yield')).toBeGreaterThan(0);
    expect(number('Large', 'Mean diameter')).toBeGreaterThan(0);
  });

  it('sowing or planting earlier makes larger plants at bulbing', () => {
    const leaves = (planting: string): number => number(planting, 'Leaf growth at bulbing');
    expect(leaves('Early')).toBeGreaterThan(leaves('Late'));
    expect(leaves('Clumps')).toBeGreaterThan(leaves('Late'));
    season.type('Plantings', 'Clumps', 'Sown', '2027-01-20');
    const later = leaves('Clumps');
    season.book.undo();
    expect(leaves('Clumps')).toBeGreaterThan(later);
  });

  it('an onion planted in autumn, large before winter, is in danger of bolting; one planted in mid-March is not in the same', () => {
    const rank = (planting: string): number =>
      ['low', 'raised', 'high'].indexOf(String(season.value('Plantings', planting, 'Bolting risk')));
    expect(rank('Autumn')).toBe(2);
    expect(rank('Clumps')).toBeGreaterThanOrEqual(0);
    expect(rank('Clumps')).toBeLessThan(2);
    expect(season.value('Plantings', 'Autumn', 'Bolting why')).toMatch(/pencil/);
    // Never a percentage that no one has measured.
    expect(String(season.value('Plantings', 'Autumn', 'Bolting why'))).not.toMatch(/%/);
    season.type('Plantings', 'Autumn', 'Cover', 'tunnel');
    expect(rank('Autumn')).toBeLessThanOrEqual(2);
    season.book.undo();
  });

  it('without a climate bulbing and harvest still come, and what needs warmth stays blank', () => {
    const bare = seasonOf({ ...ROWS, 'Monthly climate': [] }, FARM);
    expect(bare.value('Plantings', 'Clumps', 'Bulbing starts')).not.toBeNull();
    expect(bare.value('Plantings', 'Clumps', 'Tops down')).not.toBeNull();
    for (const column of ['Leaf growth in the bed', 'Leaf growth at bulbing', 'Leaf area at bulbing', 'Bolting risk']) {
      expect(bare.value('Plantings', 'Clumps', column), column).toBeNull();
    }
  });

  it('past the range of the leaf equation no area is given, and a note says so', () => {
    const large = ['Large', 'Clumps', 'Late'].filter((planting) => number(planting, 'Leaf growth at bulbing') > 1080);
    const small = ['Large', 'Clumps', 'Late'].filter((planting) => number(planting, 'Leaf growth at bulbing') <= 1080);
    expect(large.length).toBeGreaterThan(0);
    expect(small.length).toBeGreaterThan(0);
    for (const planting of large) {
      expect(season.value('Plantings', planting, 'Leaf area at bulbing')).toBeNull();
      expect(season.says('Plantings', planting).join()).toMatch(/no leaf area is given/);
    }
    for (const planting of small) {
      // ln area = ln 0.5 + 0.0108 D, in cm2 and degC days (Brewster 2008 eq 4.17a); the sheet shows in2 and degF days.
      const area = 0.5 * Math.exp((0.0108 * number(planting, 'Leaf growth at bulbing') * 5) / 9);
      expect(number(planting, 'Leaf area at bulbing') * 6.4516).toBeCloseTo(area, 6);
    }
  });

  it('short-day types begin at 10 to 12 h, intermediate at 12 to 14, long-day at 14 to 16', () => {
    const types = seasonOf(
      { Varieties: ['short', 'intermediate', 'long'].map((type) => onion(type, { 'Day-length type': type })) },
      FARM,
    );
    for (const [type, from, to] of [
      ['short', 10, 12],
      ['intermediate', 12, 14],
      ['long', 14, 16],
    ] as const) {
      const hours = types.number('Varieties', type, 'Critical day length') ?? Number.NaN;
      expect(hours, type).toBeGreaterThanOrEqual(from);
      expect(hours, type).toBeLessThanOrEqual(to);
    }
  });
});
