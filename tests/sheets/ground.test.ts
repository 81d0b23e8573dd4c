// The ground as the sheets have it: what stands on each bed week by week, cover crops, what is given to the beds and how long before
// harvest, and the nitrogen that comes and goes; against the published rules and figures.

import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/index.ts';
import { errorsOf, type Rows, type Season, seasonOf } from './season.ts';

const POUND = 0.45359237;
const ACRE = 4046.8564224;

const ROWS: Rows = {
  Beds: [
    { Bed: 'One', Length: '20 m', Width: '75 cm' },
    { Bed: 'Two', Length: '20 m', Width: '75 cm' },
    { Bed: 'Acre', Length: '4046.8564224 m', Width: '1 m' },
  ],
  Varieties: [
    { Variety: 'Leaf', Crop: 'Lettuce, head' },
    { Variety: 'Fruit', Crop: 'Tomato' },
  ],
  Plantings: [
    {
      Planting: 'Leaf 1',
      Variety: 'Leaf',
      Start: 'blocks',
      Bed: 'One',
      'Bed length used': '10 m',
      Sown: '2027-04-01',
      'Planted out': '2027-05-03',
    },
    {
      Planting: 'Fruit 1',
      Variety: 'Fruit',
      Start: 'cells',
      Bed: 'Two',
      Sown: '2027-04-01',
      'Planted out': '2027-05-28',
    },
  ],
  'Cover crops': [
    { Bed: 'Two', Kind: 'Rye and vetch', Sown: '2026-09-20', Ended: '2027-05-01' },
    { Bed: 'Acre', Kind: 'Crimson clover', Sown: '2027-04-01', Ended: '2027-07-01', 'Dry mass': '3260 lb/acre' },
  ],
};

function opened(more: Rows = {}): Season {
  return seasonOf({ ...ROWS, ...more }, { 'Last frost': '2027-05-10', 'First frost': '2027-10-01' }, { units: 'si' });
}

const GIVEN = 'Straw-pack beef manure, raw';

describe('the bed calendar', () => {
  const season = opened();
  const weekOf = (bed: string, monday: string, column: string) => {
    for (const row of season.book.rows('Bed calendar')) {
      const starts = season.book.cell('Bed calendar', row, 'Week starts').text;
      if (season.book.cell('Bed calendar', row, 'Bed').text === bed && starts === monday) {
        return season.book.cell('Bed calendar', row, column);
      }
    }
    throw new Error(`${bed} has no week of ${monday}`);
  };

  it('opens without a cell in error', () => {
    expect(errorsOf(season.book)).toEqual([]);
  });

  it('says of each bed and week what stands, what is free and what comes next', () => {
    expect(weekOf('One', '12 Apr 2027', 'State').text).toBe('free');
    expect(weekOf('One', '12 Apr 2027', 'Next planting').text).toBe('3 May 2027');
    expect(weekOf('One', '12 Apr 2027', 'Weeks until it').number).toBe(3);
    expect(weekOf('One', '3 May 2027', 'Stands').text).toBe('Leaf 1');
    expect(weekOf('One', '3 May 2027', 'State').text).toBe('part free');
    expect(weekOf('One', '3 May 2027', 'Free').number).toBeCloseTo(10, 9);
    expect(weekOf('Two', '31 May 2027', 'State').text).toBe('full');
    expect(weekOf('Two', '31 May 2027', 'Families').text).toBe('Solanaceae');
    expect(weekOf('Two', '12 Apr 2027', 'State').text).toBe('cover crop');
    expect(weekOf('Two', '12 Apr 2027', 'Cover crop').text).toBe('Rye and vetch');
  });

  it('says when more stands than the bed holds', () => {
    const full = opened({
      Plantings: [...(ROWS.Plantings ?? []), { ...ROWS.Plantings?.[0], Planting: 'Leaf 2', 'Bed length used': '12 m' }],
    });
    const states = [...full.book.rows('Bed calendar')].map((row) => full.book.cell('Bed calendar', row, 'State').text);
    expect(states).toContain('too full');
    expect(full.says('Plantings', 'Leaf 2').join(' ')).toMatch(/More stands on this bed on that day than it holds/);
  });

  it('finds a cover crop in the way of a planting, and one sown where something stands', () => {
    const late = opened({
      'Cover crops': [
        { Bed: 'Two', Kind: 'Rye and vetch', Sown: '2026-09-20', Ended: '2027-06-05' },
        { Bed: 'Two', Kind: 'Oats', Sown: '2027-07-01' },
        { Bed: 'One', Kind: 'Oats', Sown: '2027-09-01', Ended: '2027-08-01' },
      ],
    });
    const says = late.book.attention().filter(({ table }) => table === 'Cover crops');
    expect(says.map((one) => one.says).join(' ')).toMatch(/still stands when Fruit 1 goes into this bed/);
    expect(says.map((one) => one.says).join(' ')).toMatch(/not free for it on that day: Fruit 1 still stands there/);
    expect(says.map((one) => one.says).join(' ')).toMatch(/ends before it is sown/);
  });
});

describe('nitrogen', () => {
  // Managing Cover Crops Profitably, 2nd edition (Sustainable Agriculture Network 1998), "How much N?": total N (lb/acre) = yield
  // (lb/acre) x % N / 100; divided by 2 where it is worked in.
  it('of a cover crop is its dry mass times the nitrogen in it, half of it for the next crop', () => {
    const season = opened();
    const [, acre = -1] = [...season.book.rows('Cover crops')];
    const nitrogen = season.book.cell('Cover crops', acre, 'Nitrogen').number ?? Number.NaN;
    expect(nitrogen / POUND).toBeCloseTo((3260 * 3.25) / 100, 6);
    expect(season.book.cell('Cover crops', acre, 'Nitrogen left').number).toBeCloseTo(nitrogen / 2, 9);
    expect(season.number('Bed nitrogen', 'Acre', 'From cover crops')).toBeCloseTo(nitrogen / 2, 9);
    expect(season.number('Bed nitrogen', 'Acre', 'Balance per area')).toBeCloseTo((nitrogen / 2 / ACRE) * 10_000, 6);
  });

  it('of a bed is what was given less what leaves with the harvest', () => {
    const season = opened({
      Inputs: [{ Input: 'Feather meal', Bed: 'One', 'Given on': '2027-05-01', Amount: '2 kg' }],
    });
    expect(season.number('Bed nitrogen', 'One', 'From inputs')).toBeCloseTo(2 * 0.12 * 0.75, 9);
    const [given = 0, removed = 0] = ['Given', 'Removed'].map((one) => season.number('Bed nitrogen', 'One', one));
    expect(removed).toBeGreaterThan(0);
    expect(season.number('Bed nitrogen', 'One', 'Balance')).toBeCloseTo(given - removed, 9);
  });
});

describe('days between manure and harvest', () => {
  /** Manure so many days before the first harvest of a bed. */
  const manured = (bed: string, planting: string, days: number): Season => {
    const harvest = Number(opened().value('Plantings', planting, 'Harvest'));
    const on = new Date((harvest - days) * 86_400_000).toISOString().slice(0, 10);
    return opened({ Inputs: [{ Input: GIVEN, Bed: bed, 'Given on': on, Amount: '10 kg', 'Worked in': 'yes' }] });
  };
  const tooSoon = (season: Season): unknown =>
    season.book.value('Inputs', season.book.rows('Inputs')[0] ?? -1, 'Too soon');

  it('are 120 where the part sold touches the soil, 90 where it does not (7 CFR 205.203(c)(1))', () => {
    expect(tooSoon(manured('One', 'Leaf 1', 119))).toBe(true);
    expect(tooSoon(manured('One', 'Leaf 1', 120))).toBe(false);
    expect(tooSoon(manured('Two', 'Fruit 1', 89))).toBe(true);
    expect(tooSoon(manured('Two', 'Fruit 1', 90))).toBe(false);
  });

  it('are told with the rule, and that the rule of the place may differ', () => {
    const says = manured('One', 'Leaf 1', 60)
      .book.attention()
      .filter(({ table }) => table === 'Inputs');
    expect(says.map((one) => one.says).join(' ')).toMatch(
      /60 days, and 120 are wanted .*7 CFR 205\.203\(c\)\(1\); the rule of your place may differ/,
    );
  });

  it('count picking that goes on as none at all', () => {
    const season = opened();
    const during = Number(season.value('Plantings', 'Fruit 1', 'Harvest')) + 3;
    expect(during).toBeLessThan(civilDay(2027, 12, 31));
    const on = new Date(during * 86_400_000).toISOString().slice(0, 10);
    const sprayed = opened({ Inputs: [{ Input: GIVEN, Bed: 'Two', 'Given on': on, 'Worked in': 'yes' }] });
    expect(sprayed.book.cell('Inputs', sprayed.book.rows('Inputs')[0] ?? -1, 'Days clear of it').number).toBe(0);
    expect(tooSoon(sprayed)).toBe(true);
  });
});

describe('water where no evapotranspiration is typed', () => {
  it('is reckoned from temperatures, so that it is never empty', () => {
    const months = 'January February March April May June July August September October November December'.split(' ');
    const season = opened({
      'Monthly climate': months.map((Month) => ({ Month, Low: '12 degC', High: '24 degC', Rain: '0 mm' })),
    });
    const water = [...season.book.rows('Bed water')].map(
      (row) => season.book.cell('Bed water', row, 'Water').number ?? 0,
    );
    expect(water.length).toBeGreaterThan(10);
    expect(Math.min(...water)).toBeGreaterThan(0);
  });
});
