// From pulling to the last sale as the sheets have it: bolters sold fresh, racks, curing, the store by lot and by week; against
// figures worked out by hand from published rates, and against facts of the trade (common practice).

import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/index.ts';
import { errorsOf, type Rows, type Season, seasonOf } from './season.ts';

const ROWS: Rows = {
  Varieties: [
    { Variety: 'Keeper', Crop: 'Onion, bulb', 'Day-length type': 'intermediate', 'Storage life': '200 days' },
    { Variety: 'Sweet', Crop: 'Onion, bulb', 'Day-length type': 'intermediate', 'Storage life': '60 days' },
    { Variety: 'Root', Crop: 'Carrot' },
    { Variety: 'Leaf', Crop: 'Lettuce, head' },
  ],
  Plantings: [
    ...['Keeper', 'Sweet'].map((variety) => ({
      Planting: variety,
      Variety: variety,
      Start: 'blocks',
      Rows: '4',
      'In-row spacing': '20 cm',
      'Seeds per station': '3.5',
      Sown: '2027-01-05',
      'Planted out': '2027-03-15',
    })),
    { Planting: 'Root', Variety: 'Root', Sown: '2027-07-01' },
    { Planting: 'Leaf', Variety: 'Leaf', Sown: '2027-03-01' },
  ],
};
const FARM = { Latitude: '38', 'Last frost': '2027-04-12', 'First frost': '2027-10-20' };

function opened(farm: Readonly<Record<string, string>> = {}, rows: Rows = ROWS): Season {
  return seasonOf(rows, { ...FARM, ...farm }, { units: 'si' });
}

const CURING = 'Harvest and curing';
const LOTS = 'Stored lots';

/** Who takes the harvest: a market that takes onions and roots every week until spring. */
const SELLING: Rows = {
  Products: [
    { Product: 'Onions', Crop: 'Onion, bulb' },
    { Product: 'Carrots', Crop: 'Carrot' },
  ],
  Outlets: [{ Outlet: 'Market', Kind: 'market' }],
  Demand: [
    { Outlet: 'Market', Product: 'Onions', Weight: '3 kg' },
    { Outlet: 'Market', Product: 'Carrots', Weight: '5 kg' },
  ],
};

describe('harvest and curing', () => {
  const season = opened({ 'Curing area': '10 m2' });
  const number = (column: string, row = 'Keeper'): number => season.number(CURING, row, column) ?? Number.NaN;

  it('has the plantings that are cured and no other', () => {
    expect([...season.book.rows(CURING)].map((row) => season.book.rowName(CURING, row))).toEqual(['Keeper', 'Sweet']);
    expect(errorsOf(season.book)).toEqual([]);
  });

  it('cures about two weeks by default (common practice), at the warmth extension services give', () => {
    expect(number('Curing days')).toBeGreaterThanOrEqual(12);
    expect(number('Curing days')).toBeLessThanOrEqual(16);
    expect(season.value(CURING, 'Keeper', 'Cured on')).toBe(
      Number(season.value('Plantings', 'Keeper', 'Harvest')) + number('Curing days'),
    );
    // University of Massachusetts Extension: 68 to 86 F, 70 % humidity.
    expect(season.value(CURING, 'Keeper', 'Cure at')).toMatch(/^20 to 30 degC, 70 % humidity/);
  });

  it('sells bolters and doubles fresh and cures none of them (common practice)', () => {
    const fresh = season.number('Plantings', 'Keeper', 'Total yield') ?? Number.NaN;
    const marketable = season.number('Plantings', 'Keeper', 'Marketable yield') ?? Number.NaN;
    expect(number('Sold fresh')).toBeCloseTo(fresh * 0.03, 9);
    expect(number('To cure')).toBeCloseTo(marketable, 9);
    expect(number('To cure') + number('Sold fresh')).toBeLessThanOrEqual(fresh);
    season.type(CURING, 'Keeper', 'Bolters and doubles', '40%');
    // No more than what is not fit for store.
    const fit = (season.number('Plantings', 'Keeper', 'Marketable share') ?? Number.NaN) / 100;
    expect(number('Sold fresh')).toBeCloseTo(fresh * (1 - fit), 9);
    season.book.undo();
  });

  it('loses what Maw & Mullinix 2005 print for optimal maturity, 7.3 %', () => {
    expect(number('Cured mass') / number('To cure')).toBeCloseTo(1 - 0.073, 9);
    expect(number('Cured mass')).toBeCloseTo(season.number('Plantings', 'Keeper', 'Cured yield') ?? Number.NaN, 9);
  });

  it('fills racks by mass, bulk density and depth, and adds up what is on them the same day', () => {
    expect(number('Rack area')).toBeCloseTo(number('To cure') / (550 * 0.1016), 9);
    expect(number('Racks that day')).toBeCloseTo(number('Rack area') + number('Rack area', 'Sweet'), 9);
    expect(season.says(CURING, 'Keeper')).toEqual([]);
    season.type('Farm', '', 'Curing area', '1 m2');
    expect(season.says(CURING, 'Keeper').join()).toMatch(/more is on the racks/i);
    season.type(CURING, 'Sweet', 'Brought in', '2027-09-01');
    expect(number('Racks that day')).toBeCloseTo(number('Rack area'), 9);
    season.book.undo();
    season.book.undo();
  });

  it('counts containers by bulk volume', () => {
    season.type(CURING, 'Keeper', 'Container', '35 L');
    expect(number('Containers')).toBe(Math.ceil(number('Cured mass') / 550 / 0.035));
    season.book.undo();
  });

  it('measures the loss of what was weighed, and warns of wet necks', () => {
    season.type(CURING, 'Keeper', 'Weighed cured', `${number('To cure') * 0.9} kg`);
    expect(number('Measured loss')).toBeCloseTo(10, 6);
    season.type(CURING, 'Keeper', 'Necks dry', 'no');
    expect(season.says(CURING, 'Keeper').join()).toMatch(/necks were not dry/);
    season.book.undo();
    season.book.undo();
  });

  it('says outside the range of a model instead of guessing', () => {
    season.type(CURING, 'Keeper', 'Curing loss', '75%');
    expect(season.says(CURING, 'Keeper').join()).toMatch(/60 % is no longer curing/);
    season.book.undo();
  });

  it('reads the tops', () => {
    season.type(CURING, 'Keeper', 'Tops fallen', '30%');
    expect(season.value(CURING, 'Keeper', 'Pull')).toMatch(/leave the bulbs/);
    season.type(CURING, 'Keeper', 'Tops fallen', '55%');
    expect(season.value(CURING, 'Keeper', 'Pull')).toMatch(/pull in dry weather/);
    season.book.undo();
    season.book.undo();
  });
});

describe('the store', () => {
  const season = opened({ 'Cold store capacity': '2000 kg' }, { ...ROWS, ...SELLING });
  const number = (column: string, row = 'Keeper'): number => season.number(LOTS, row, column) ?? Number.NaN;

  it('takes what keeps a month or more', () => {
    expect([...season.book.rows(LOTS)].map((row) => season.book.rowName(LOTS, row))).toEqual([
      'Keeper',
      'Sweet',
      'Root',
    ]);
  });

  it('stands at 3 to 4 degC (common practice), which suits onions and not carrots', () => {
    const temperature = season.number('Farm', '', 'Cold store temperature') ?? Number.NaN;
    expect(temperature).toBeGreaterThanOrEqual(3);
    expect(temperature).toBeLessThanOrEqual(4);
    expect(season.value(LOTS, 'Keeper', 'Store suits')).toMatch(/keeps best at; the humidity is right/);
    expect(season.value(LOTS, 'Root', 'Store suits')).toMatch(/drier/);
    season.type('Farm', '', 'Cold store temperature', '15 degC');
    expect(season.value(LOTS, 'Keeper', 'Store suits')).toMatch(/warmer/);
    season.book.undo();
  });

  it('compounds the monthly loss: 1000 kg less 7.3 % in curing, then 3.3 % a month, is 757.9 kg after six', () => {
    season.type(LOTS, 'Keeper', 'Stored mass', '927 kg');
    season.type(LOTS, 'Keeper', 'Monthly loss', '3.3%');
    expect(number('Left after 6 months')).toBeCloseTo(757.9, 1);
    expect(number('Left after 1 month')).toBeCloseTo(927 * 0.967, 9);
    season.book.undo();
    season.book.undo();
  });

  it('keeps each lot as long as its variety, and sells the shortest first', () => {
    const stored = Number(season.value(LOTS, 'Sweet', 'Stored on'));
    expect(season.value(LOTS, 'Sweet', 'Keeps until')).toBe(stored + 60);
    expect(season.number(LOTS, 'Sweet', 'Left after 3 months')).toBeUndefined();
    expect(number('Sell in place', 'Sweet')).toBe(1);
    expect(number('Sell in place', 'Keeper')).toBeGreaterThan(1);
  });

  it('balances week by week: in, lost, sold, left; all stores are the sum of each', () => {
    let held = 0;
    const sums = { in: 0, sold: 0, lost: 0 };
    const weeks = season.book.rows('Storage');
    for (const week of weeks) {
      const of = (column: string): number => season.book.cell('Storage', week, column).number ?? Number.NaN;
      expect(of('Left')).toBeCloseTo(held + of('In') - of('Sold') - of('Lost'), 6);
      held = of('Left');
      sums.in += of('In');
      sums.sold += of('Sold');
      sums.lost += of('Lost');
    }
    const stored = ['Keeper', 'Sweet', 'Root'].reduce((sum, row) => sum + number('Stored mass', row), 0);
    expect(sums.in).toBeCloseTo(stored, 6);
    expect(sums.lost).toBeGreaterThan(0);
    expect(sums.sold).toBeGreaterThan(0.2 * stored);
    expect(weeks.length).toBe(79);
    const each = [...season.book.rows('Stores by week')].reduce(
      (sum, row) => sum + (season.book.cell('Stores by week', row, 'Sold').number ?? 0),
      0,
    );
    expect(each).toBeCloseTo(sums.sold, 6);
  });

  it('loses weight by the month as one lot does that nobody asks for', () => {
    const alone = opened({ 'Cold store capacity': '2000 kg' });
    const stored = Number(alone.value(LOTS, 'Keeper', 'Stored on'));
    const week = [...alone.book.rows('Lots by week')].find((row) => {
      const starts = Number(alone.book.value('Lots by week', row, 'Week starts'));
      return alone.book.cell('Lots by week', row, 'Lot name').text === 'Keeper' && starts > stored + 84;
    });
    if (week === undefined) throw new Error('no such week');
    const starts = Number(alone.book.value('Lots by week', week, 'Week starts'));
    const came = Math.floor((stored - civilDay(2026, 12, 28)) / 7) * 7 + civilDay(2026, 12, 28);
    const loss = (alone.number(LOTS, 'Keeper', 'Monthly loss') ?? Number.NaN) / 100;
    // In the week it came in nothing is lost before the week begins.
    expect(alone.book.cell('Lots by week', week, 'From before').number).toBeCloseTo(
      (alone.number(LOTS, 'Keeper', 'Stored mass') ?? Number.NaN) * (1 - loss) ** ((starts - came) / 30.436875),
      6,
    );
  });

  it('puts each lot into the store that suits it, and says what must not stand together', () => {
    const two = opened(
      {},
      {
        ...ROWS,
        ...SELLING,
        Stores: [{ Store: 'Damp cellar', Temperature: '1 degC', Humidity: '95%', Room: '800 kg' }],
      },
    );
    expect(two.shown(LOTS, 'Keeper', 'Store')).toBe('Cold store');
    expect(two.shown(LOTS, 'Root', 'Store')).toBe('Damp cellar');
    expect(two.says(LOTS, 'Root')).toEqual([]);
    two.type(LOTS, 'Root', 'Store', 'Cold store');
    expect(two.says(LOTS, 'Root').join()).toMatch(/stands with Onion, bulb and takes on the smell/);
    two.book.undo();
    const stores = new Set(
      [...two.book.rows('Stores by week')].map((row) => two.book.cell('Stores by week', row, 'Store').text),
    );
    expect([...stores].sort()).toEqual(['Cold store', 'Damp cellar']);
    expect(errorsOf(two.book)).toEqual([]);
  });

  it('names the lot to sell first while it is there', () => {
    const first = (iso: number): string =>
      [...season.book.rows('Storage')].flatMap((week) => {
        const day = season.book.value('Storage', week, 'Week');
        const lot = season.book.value('Storage', week, 'Sell first');
        return typeof day === 'number' && day <= iso && iso < day + 7 && typeof lot === 'string' ? [lot] : [];
      })[0] ?? '';
    expect(first(civilDay(2027, 8, 10))).toBe('Sweet');
    expect(first(civilDay(2028, 1, 20))).toBe('Keeper');
    expect(first(civilDay(2027, 3, 1))).toBe('');
  });

  it('warns when the store is full', () => {
    season.type('Farm', '', 'Cold store capacity', '20 kg');
    expect(season.book.attention().filter((one) => one.table === 'Stores by week').length).toBeGreaterThan(0);
    season.book.undo();
    expect(season.book.attention().filter((one) => one.table === 'Stores by week')).toEqual([]);
  });
});

describe('cautions', () => {
  it('stand where work can hurt someone', () => {
    const season = opened();
    const said = (sheet: string): string => season.book.table(sheet)?.cautions.join(' ') ?? '';
    for (const word of [/fan/, /wiring/, /local codes/, /dust/, /lift/, /mould/]) expect(said(CURING)).toMatch(word);
    for (const word of [/rot/i, /not sold/, /door/, /lift/]) expect(said(LOTS)).toMatch(word);
    for (const word of [/nitrogen/, /local limits/, /manure/]) expect(said('Nutrients and rotation')).toMatch(word);
    expect(said('Farm')).toMatch(/ventilation/);
  });
});
