// From bed to outlet as a grower would have it: products, outlets and demand, what the field and the stores have for them, who gets
// what when it is short, share boxes. Figures are worked out by hand where they can be.

import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/index.ts';
import { errorsOf, type Rows, type Season, seasonOf } from './season.ts';

const FARM = {
  Latitude: '44',
  'Last frost': '2027-05-10',
  'First frost': '2027-09-30',
  'Cold store capacity': '5000 kg',
};

const ROWS: Rows = {
  Varieties: [
    { Variety: 'Keeper', Crop: 'Onion, bulb', 'Day-length type': 'long', 'Storage life': '200 days' },
    { Variety: 'Mild', Crop: 'Onion, bulb', 'Day-length type': 'intermediate', 'Storage life': '60 days' },
    { Variety: 'Head', Crop: 'Lettuce, head' },
    { Variety: 'Root', Crop: 'Carrot' },
  ],
  Beds: [
    { Bed: 'A', Length: '30 m' },
    { Bed: 'B', Length: '33 m' },
    { Bed: 'C', Length: '30 m' },
  ],
  Plantings: [
    {
      Planting: 'Keeper',
      Variety: 'Keeper',
      Start: 'blocks',
      Bed: 'A',
      Sown: '2027-02-15',
      'Planted out': '2027-04-20',
      Price: '4',
    },
    {
      Planting: 'Mild',
      Variety: 'Mild',
      Start: 'blocks',
      Bed: 'B',
      Sown: '2027-02-15',
      'Planted out': '2027-04-20',
      Price: '5',
    },
    {
      Planting: 'Lettuce',
      Variety: 'Head',
      Start: 'blocks',
      Bed: 'C',
      'Bed length used': '5 m',
      Sown: '2027-04-20',
      'Planted out': '2027-05-20',
      'Price each': '2',
    },
    {
      Planting: 'Carrots',
      Variety: 'Root',
      Start: 'direct seed',
      Bed: 'C',
      'Bed length used': '20 m',
      Sown: '2027-06-10',
      Price: '3',
    },
  ],
  Products: [
    { Product: 'Onions', Crop: 'Onion, bulb' },
    { Product: 'Lettuce', Crop: 'Lettuce, head' },
  ],
  Outlets: [
    {
      Outlet: 'Boxes',
      Kind: 'share boxes',
      Boxes: '10',
      'Promised worth': '8',
      From: '2027-06-01',
      Until: '2027-12-15',
    },
    {
      Outlet: 'Market',
      Kind: 'market',
      From: '2027-05-01',
      Until: '2027-12-31',
      'Kept by the outlet': '10%',
      'Cost each time': '25',
      'Hours each time': '6 h',
    },
  ],
  Demand: [
    { Outlet: 'Boxes', Product: 'Onions', 'Weight in each box': '1 kg', Price: '4.5' },
    { Outlet: 'Market', Product: 'Onions', Weight: '30 kg', Price: '5' },
    { Outlet: 'Boxes', Product: 'Lettuce', 'In each box': '1' },
    { Outlet: 'Market', Product: 'Lettuce', Pieces: '40', From: '2027-06-01', Until: '2027-08-01' },
  ],
};

function opened(more: Rows = {}): Season {
  return seasonOf({ ...ROWS, ...more }, FARM, { units: 'si' });
}

/** A column's figures of a sheet, by the values of another column. */
function figures(
  season: Season,
  sheet: string,
  column: string,
  where: Readonly<Record<string, string>> = {},
): number[] {
  return [...season.book.rows(sheet)]
    .filter((row) => Object.entries(where).every(([name, text]) => season.book.cell(sheet, row, name).text === text))
    .map((row) => season.book.cell(sheet, row, column).number ?? Number.NaN);
}

const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

describe('the way from bed to outlet', () => {
  const season = opened();

  it('has no error, and a lot for each planting and product', () => {
    expect(errorsOf(season.book)).toEqual([]);
    const lots = [...season.book.rows('Lots')].map(
      (row) => `${season.book.cell('Lots', row, 'Planting').text}: ${season.book.cell('Lots', row, 'Product').text}`,
    );
    expect(lots.sort()).toEqual(['Carrots: Everything else', 'Keeper: Onions', 'Lettuce: Lettuce', 'Mild: Onions']);
  });

  it('balances every week of every product: supply less demand is over less short', () => {
    const rows = [...season.book.rows('Supply against demand')];
    expect(rows.length).toBeGreaterThan(30);
    for (const row of rows) {
      const of = (column: string): number =>
        season.book.cell('Supply against demand', row, column).number ?? Number.NaN;
      expect(of('Supply') - of('Wanted')).toBeCloseTo(of('Over') - of('Short'), 6);
      expect(of('Over')).toBeCloseTo(of('Left') + of('Lost'), 6);
      expect(Math.min(of('Over'), of('Short'))).toBeLessThan(1e-6);
    }
  });

  it('sells from the lot with the shortest time left first', () => {
    const weeks = (lot: string): ReadonlyMap<string, { readonly sold: number; readonly left: number }> =>
      new Map(
        [...season.book.rows('Lots by week')]
          .filter((row) => season.book.cell('Lots by week', row, 'Lot name').text === lot)
          .map((row) => {
            const of = (column: string): number => season.book.cell('Lots by week', row, column).number ?? Number.NaN;
            return [season.book.cell('Lots by week', row, 'Week').text, { sold: of('Sold'), left: of('Left') }];
          }),
      );
    const [mild, keeper] = [weeks('Mild'), weeks('Keeper')];
    let together = 0;
    for (const [week, { left }] of mild) {
      // While mild ones are left over, the keepers are not touched.
      if (left < 1e-6 || !keeper.has(week)) continue;
      together += 1;
      expect(keeper.get(week)?.sold).toBeCloseTo(0, 6);
      expect(mild.get(week)?.sold).toBeCloseTo(40, 6);
    }
    expect(together).toBeGreaterThan(0);
    expect(season.value('Lots', 'Mild / Onions', 'Place')).toBe(1);
    expect(season.value('Lots', 'Keeper / Onions', 'Place')).toBe(2);
  });

  it('keeps the books of each lot: what came in was sold, lost or is left', () => {
    for (const row of season.book.rows('Lots')) {
      const of = (column: string): number => season.book.cell('Lots', row, column).number ?? Number.NaN;
      const name = season.book.rowName('Lots', row);
      const lot = name.split(' / ')[0] ?? '';
      const came = sum(figures(season, 'Lots by week', 'In', { 'Lot name': lot }));
      expect(came, name).toBeCloseTo(of('Mass'), 4);
      expect(of('Sold') + of('Lost') + of('Left'), name).toBeCloseTo(of('Mass'), 4);
    }
  });

  it('gives what there is to those whose turn comes first', () => {
    for (const row of season.book.rows('Demand by week')) {
      const text = (column: string): string => season.book.cell('Demand by week', row, column).text;
      const of = (column: string): number => season.book.cell('Demand by week', row, column).number ?? Number.NaN;
      if (text('Product') !== 'Lettuce') continue;
      if (text('Outlet') === 'Boxes') expect(of('Gets')).toBeCloseTo(Math.min(of('Weight'), of('There is')), 6);
      else
        expect(of('Gets')).toBeCloseTo(Math.max(0, Math.min(of('Weight'), of('There is') - of('Before its turn'))), 6);
    }
    const gets = sum(figures(season, 'Demand by week', 'Gets', { Product: 'Onions' }));
    expect(gets).toBeCloseTo(sum(figures(season, 'Supply against demand', 'Sold', { Product: 'Onions' })), 4);
  });

  it('says of a product how long and by how much it is short', () => {
    expect(season.says('Products', 'Lettuce').join()).toMatch(/^Short in \d+ weeks, first that of/);
    expect(season.says('Products', 'Onions').join()).toMatch(/^Short in/);
    expect(season.says('Products', 'Everything else')).toEqual([]);
  });

  it('fills boxes and says what they are worth against what was promised', () => {
    const rows = [...season.book.rows('Share boxes')];
    const on = rows.map((row) => Number(season.book.value('Share boxes', row, 'On')));
    expect(Math.min(...on)).toBeGreaterThanOrEqual(civilDay(2027, 6, 1));
    const august = rows.find((row) => season.book.cell('Share boxes', row, 'Week').text === '23 Aug 2027');
    if (august === undefined) throw new Error('no box in August');
    // A kilogram of onions at 4.50, no lettuce any more.
    expect(season.book.cell('Share boxes', august, 'What').text).toBe('Onions');
    expect(season.book.cell('Share boxes', august, 'Missing').text).toBe('Lettuce');
    expect(season.book.cell('Share boxes', august, 'Worth').number).toBeCloseTo(4.5, 6);
    expect(season.book.cell('Share boxes', august, 'Against promised').number).toBeCloseTo(-3.5, 6);
    expect(
      season.book.attention().filter((one) => one.table === 'Share boxes' && one.says.includes('56%')).length,
    ).toBeGreaterThan(0);
  });

  it('counts the money of each outlet, what it keeps and what going there costs', () => {
    const onions = sum(figures(season, 'Demand by week', 'Gets', { Outlet: 'Market', Product: 'Onions' })) * 5;
    const lettuce = sum(figures(season, 'Demand by week', 'Money', { Outlet: 'Market', Product: 'Lettuce' }));
    expect(season.number('Outlets', 'Market', 'Sales')).toBeCloseTo(onions + lettuce, 4);
    const times = season.number('Outlets', 'Market', 'Deliveries') ?? 0;
    expect(times).toBeGreaterThan(5);
    expect(season.number('Outlets', 'Market', 'Costs')).toBeCloseTo((onions + lettuce) * 0.1 + 25 * times, 4);
    expect(season.number('Outlets', 'Market', 'Hours')).toBeCloseTo(6 * times, 6);
  });

  it('shares evenly between outlets of one turn', () => {
    season.type('Outlets', 'Boxes', 'Turn', '3');
    for (const row of season.book.rows('Demand by week')) {
      const of = (column: string): number => season.book.cell('Demand by week', row, column).number ?? Number.NaN;
      expect(of('Gets')).toBeCloseTo((of('There is') / of('In its turn')) * of('Weight'), 6);
    }
    season.book.undo();
  });

  it('goes every second week where it is told to', () => {
    const weeks = (): number =>
      figures(season, 'Demand by week', 'Weight', { Outlet: 'Market', Product: 'Onions' }).length;
    const every = weeks();
    season.type('Outlets', 'Market', 'Weeks between', '2');
    expect(Math.abs(weeks() - every / 2)).toBeLessThanOrEqual(1);
    season.book.undo();
  });
});

describe('products', () => {
  it('share a planting by size grades, and the rest by halves, until a share is typed', () => {
    const season = opened({
      Demand: [],
      Products: [
        { Product: 'Large onions', Crop: 'Onion, bulb', Grade: 'large' },
        { Product: 'Onions by the kilo', Crop: 'Onion, bulb' },
        { Product: 'Onions in nets', Crop: 'Onion, bulb' },
      ],
    });
    const share = (product: string): number => season.number('Lots', `Keeper / ${product}`, 'Share') ?? Number.NaN;
    const mass = (grade: string): number => season.number('Plantings', 'Keeper', grade) ?? Number.NaN;
    expect(share('Large onions')).toBeCloseTo((mass('Mass large') / mass('Marketable yield')) * 100, 6);
    expect(share('Onions by the kilo')).toBeCloseTo(share('Onions in nets'), 9);
    expect(share('Large onions') + 2 * share('Onions in nets')).toBeCloseTo(100, 6);
    expect(errorsOf(season.book)).toEqual([]);
    season.type('Lots', 'Keeper / Onions in nets', 'Share', '90%');
    expect(season.says('Lots', 'Keeper / Onions in nets').join()).toMatch(/More than all of this planting/);
  });

  it('of one variety take all of its harvest', () => {
    const season = opened({
      Demand: [],
      Products: [
        { Product: 'Onions', Crop: 'Onion, bulb' },
        { Product: 'Mild onions', Crop: 'Onion, bulb', Variety: 'Mild' },
      ],
    });
    const lots = [...season.book.rows('Lots')].map((row) => season.book.rowName('Lots', row)).sort();
    expect(lots).toContain('Mild / Mild onions');
    expect(lots).not.toContain('Mild / Onions');
    expect(lots).toContain('Keeper / Onions');
    expect(season.number('Lots', 'Mild / Mild onions', 'Share')).toBe(100);
  });

  it('of thinnings come on the day of thinning', () => {
    const season = opened({
      Demand: [],
      Plantings: [
        {
          Planting: 'Clumps',
          Variety: 'Keeper',
          Start: 'blocks',
          Bed: 'A',
          Sown: '2027-02-15',
          'Planted out': '2027-04-20',
          'Seeds per station': '5',
          'Thin to': '3',
          Price: '4',
          'Fresh price': '6',
        },
      ],
      Products: [
        { Product: 'Onions', Crop: 'Onion, bulb' },
        { Product: 'Salad onions', Crop: 'Onion, bulb', Form: 'thinnings' },
      ],
    });
    const thinned = Number(season.value('Plantings', 'Clumps', 'Thinned on'));
    expect(thinned).toBe(civilDay(2027, 4, 20) + 35);
    const weeks = [...season.book.rows('Lots by week')].filter(
      (row) => season.book.cell('Lots by week', row, 'Product').text === 'Salad onions',
    );
    expect(weeks.length).toBe(1);
    const [week = -1] = weeks;
    const starts = Number(season.book.value('Lots by week', week, 'Week starts'));
    expect(thinned - starts).toBeGreaterThanOrEqual(0);
    expect(thinned - starts).toBeLessThan(7);
    expect(season.book.cell('Lots by week', week, 'In').number).toBeCloseTo(
      season.number('Plantings', 'Clumps', 'Fresh thinnings') ?? Number.NaN,
      6,
    );
  });
});

describe('what is wrong', () => {
  it('is said in a sentence: two outlets of one name, a span upside down, a variety of another crop', () => {
    const season = opened();
    const again = season.book.edit([{ edit: 'insert row', table: 'Outlets', entries: { Outlet: 'market' } }], 'Add');
    expect(again.refused && again.why).toMatch(/already has a row called “market”: choose another name/);
    season.type('Demand', 'row 2', 'Until', '2027-03-01');
    expect(season.says('Demand', 'row 2').join()).toMatch(/ends before it begins/);
    season.type('Products', 'Lettuce', 'Variety', 'Root');
    expect(season.says('Products', 'Lettuce').join()).toMatch(/of another crop/);
  });
});
