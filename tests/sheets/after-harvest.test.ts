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
    expect(number('Sold fresh')).toBeCloseTo(fresh - marketable, 9);
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
  const season = opened({ 'Cold store capacity': '2000 kg' });
  const number = (column: string, row = 'Keeper'): number => season.number('Storage', row, column) ?? Number.NaN;

  it('takes what keeps a month or more', () => {
    expect([...season.book.rows('Storage')].map((row) => season.book.rowName('Storage', row))).toEqual([
      'Keeper',
      'Sweet',
      'Root',
    ]);
  });

  it('stands at 3 to 4 degC (common practice), which suits onions and not carrots', () => {
    const temperature = season.number('Farm', '', 'Cold store temperature') ?? Number.NaN;
    expect(temperature).toBeGreaterThanOrEqual(3);
    expect(temperature).toBeLessThanOrEqual(4);
    expect(season.value('Storage', 'Keeper', 'Store suits')).toMatch(/keeps best at; the humidity is right/);
    expect(season.value('Storage', 'Root', 'Store suits')).toMatch(/drier/);
    season.type('Farm', '', 'Cold store temperature', '15 degC');
    expect(season.value('Storage', 'Keeper', 'Store suits')).toMatch(/warmer/);
    season.book.undo();
  });

  it('compounds the monthly loss: 1000 kg less 7.3 % in curing, then 3.3 % a month, is 757.9 kg after six', () => {
    season.type('Storage', 'Keeper', 'Stored mass', '927 kg');
    season.type('Storage', 'Keeper', 'Monthly loss', '3.3%');
    expect(number('Left after 6 months')).toBeCloseTo(757.9, 1);
    expect(number('Left after 1 month')).toBeCloseTo(927 * 0.967, 9);
    season.book.undo();
    season.book.undo();
  });

  it('keeps each lot as long as its variety, and sells the shortest first', () => {
    const stored = Number(season.value('Storage', 'Sweet', 'Stored on'));
    expect(season.value('Storage', 'Sweet', 'Keeps until')).toBe(stored + 60);
    expect(season.number('Storage', 'Sweet', 'Left after 3 months')).toBeUndefined();
    expect(number('Sell in place', 'Sweet')).toBe(1);
    expect(number('Sell in place', 'Keeper')).toBeGreaterThan(1);
  });

  it('balances week by week: in, lost, taken, left', () => {
    let held = 0;
    const sums = { in: 0, taken: 0, lost: 0 };
    const weeks = season.book.rows('Store by week');
    for (const week of weeks) {
      const of = (column: string): number => season.book.cell('Store by week', week, column).number ?? Number.NaN;
      expect(of('Left')).toBeCloseTo(held + of('In') - of('Taken') - of('Lost'), 6);
      held = of('Left');
      sums.in += of('In');
      sums.taken += of('Taken');
      sums.lost += of('Lost');
    }
    const stored = ['Keeper', 'Sweet', 'Root'].reduce((sum, row) => sum + number('Stored mass', row), 0);
    expect(sums.in).toBeCloseTo(stored, 6);
    expect(sums.lost).toBeGreaterThan(0);
    expect(sums.taken).toBeGreaterThan(0.8 * stored);
    expect(weeks.length).toBe(79);
  });

  it('names the lot to sell first while it is there', () => {
    const first = (iso: number): string =>
      [...season.book.rows('Store by week')].flatMap((week) => {
        const day = season.book.value('Store by week', week, 'Week');
        const lot = season.book.value('Store by week', week, 'Sell first');
        return typeof day === 'number' && day <= iso && iso < day + 7 && typeof lot === 'string' ? [lot] : [];
      })[0] ?? '';
    expect(first(civilDay(2027, 8, 10))).toBe('Sweet');
    expect(first(civilDay(2028, 1, 20))).toBe('Keeper');
    expect(first(civilDay(2027, 3, 1))).toBe('');
  });

  it('warns when the store is full', () => {
    season.type('Farm', '', 'Cold store capacity', '20 kg');
    expect(season.book.attention().filter((one) => one.table === 'Store by week').length).toBeGreaterThan(0);
    season.book.undo();
    expect(season.book.attention().filter((one) => one.table === 'Store by week')).toEqual([]);
  });
});

describe('cautions', () => {
  it('stand where work can hurt someone', () => {
    const season = opened();
    const said = (sheet: string): string => season.book.table(sheet)?.cautions.join(' ') ?? '';
    for (const word of [/fan/, /wiring/, /local codes/, /dust/, /lift/, /mould/]) expect(said(CURING)).toMatch(word);
    for (const word of [/rot/i, /not sold/, /door/, /lift/]) expect(said('Storage')).toMatch(word);
    for (const word of [/nitrogen/, /local limits/, /manure/]) expect(said('Nutrients and rotation')).toMatch(word);
    expect(said('Farm')).toMatch(/ventilation/);
  });
});
