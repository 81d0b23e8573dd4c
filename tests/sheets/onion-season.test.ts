// Onions through the season as the sheets have it, against facts of the trade (common practice near 38 degrees north) and
// dates of an astronomy library.

import { Body, MakeTime, Observer, SearchRiseSet } from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import { civilDay, isoDate } from '../../engine/index.ts';
import { errorsOf, type Rows, seasonOf } from './season.ts';

/** Sunrise to sunset in hours by astronomy-engine, at longitude 0. */
function dayLengthByLibrary(latitude: number, day: number): number {
  const noon = new Date(day * 86_400_000 + 43_200_000);
  const observer = new Observer(latitude, 0, 0);
  const rise = SearchRiseSet(Body.Sun, observer, +1, MakeTime(new Date(noon.getTime() - 43_200_000)), 1);
  const set = SearchRiseSet(Body.Sun, observer, -1, MakeTime(noon), 1);
  return rise === null || set === null ? Number.NaN : (set.date.getTime() - rise.date.getTime()) / 3_600_000;
}

const VARIETIES = [
  { Variety: 'Short', Crop: 'Onion, bulb', 'Day-length type': 'short' },
  { Variety: 'Middle', Crop: 'Onion, bulb', 'Day-length type': 'intermediate' },
  { Variety: 'Fourteen', Crop: 'Onion, bulb', 'Day-length type': 'intermediate', 'Critical day length': '14 h' },
  { Variety: 'Long', Crop: 'Onion, bulb', 'Day-length type': 'long' },
  { Variety: 'Very long', Crop: 'Onion, bulb', 'Day-length type': 'long', 'Critical day length': '16 h' },
  { Variety: 'Far north', Crop: 'Onion, bulb', 'Day-length type': 'long', 'Adapted from latitude': '45' },
  { Variety: 'Lettuce', Crop: 'Lettuce, head' },
];

function planted(variety: string) {
  return {
    Planting: variety,
    Variety: variety,
    Start: 'blocks',
    Rows: '4',
    'In-row spacing': '8 in',
    'Seeds per station': '3.5',
    Sown: '2027-01-05',
    'Planted out': '2027-03-15',
  };
}

const MONTHS: readonly (readonly [string, number, number])[] = [
  ['January', -2, 6],
  ['February', -1, 8],
  ['March', 3, 13],
  ['April', 7, 19],
  ['May', 12, 24],
  ['June', 17, 28],
  ['July', 20, 31],
  ['August', 19, 30],
  ['September', 15, 26],
  ['October', 8, 20],
  ['November', 3, 13],
  ['December', -1, 7],
];

const CLIMATE = MONTHS.map(([Month, low, high]) => ({ Month, Low: `${low} degC`, High: `${high} degC` }));

const ROWS: Rows = { Varieties: VARIETIES, Plantings: ['Middle', 'Fourteen', 'Very long'].map(planted) };
const FARM = { Latitude: '38', 'Last frost': '2027-04-12', 'First frost': '2027-10-20' };

describe('varieties against the day length of the farm', () => {
  const season = seasonOf(ROWS, FARM);
  const suits = (variety: string) => season.value('Varieties', variety, 'Suits this farm');

  it('has the longest day of an astronomy library', () => {
    const longest = season.number('Varieties', 'Long', 'Longest day here') ?? Number.NaN;
    expect(longest).toBeCloseTo(dayLengthByLibrary(38, civilDay(2027, 6, 21)), 2);
  });

  it('reaches each critical day length on the first day that is long enough', () => {
    for (const variety of ['Short', 'Middle', 'Fourteen', 'Long']) {
      const date = Number(season.value('Varieties', variety, 'Day length reached'));
      const critical = season.number('Varieties', variety, 'Critical day length') ?? Number.NaN;
      expect(dayLengthByLibrary(38, date), isoDate(date)).toBeGreaterThan(critical - 0.005);
      expect(dayLengthByLibrary(38, date - 1), isoDate(date)).toBeLessThan(critical + 0.005);
    }
    expect(season.value('Varieties', 'Very long', 'Day length reached')).toBeNull();
  });

  it('begins by type within what extension services give: 10 to 12, 12 to 14, 14 to 16 h', () => {
    const hours = (variety: string) => season.number('Varieties', variety, 'Critical day length') ?? Number.NaN;
    expect(hours('Short')).toBeGreaterThanOrEqual(10);
    expect(hours('Short')).toBeLessThanOrEqual(12);
    expect(hours('Middle')).toBeGreaterThanOrEqual(12);
    expect(hours('Middle')).toBeLessThanOrEqual(14);
    expect(hours('Long')).toBeGreaterThanOrEqual(14);
    expect(hours('Long')).toBeLessThanOrEqual(16);
  });

  it('says yes, marginal within half an hour, and no, each with its reason', () => {
    expect(suits('Fourteen')).toBe('yes');
    expect(suits('Long')).toBe('marginal');
    expect(suits('Very long')).toBe('no');
    expect(season.value('Varieties', 'Very long', 'Why')).toMatch(/never bulbs here/);
    expect(suits('Far north')).toBe('marginal');
    expect(suits('Lettuce')).toBe('yes');
    season.type('Varieties', 'Fourteen', 'Critical day length', '14.31 h');
    expect(suits('Fourteen')).toBe('marginal');
    season.book.undo();
  });

  it('turns a short-day variety down in the north, where its days come before it can grow leaves', () => {
    const north = seasonOf(ROWS, { Latitude: '50', 'Last frost': '2027-05-10' });
    expect(north.value('Varieties', 'Short', 'Suits this farm')).toBe('no');
    expect(north.value('Varieties', 'Long', 'Suits this farm')).toBe('yes');
    // 24 degree-days (degC) in the week that its day length leaves it after the earliest planting-out.
    expect(north.number('Varieties', 'Short', 'Leaf growth before bulbing')).toBeLessThan(30 * 1.8);
  });

  it('follows the latitude, and waits for it', () => {
    season.type('Farm', '', 'Latitude', '52');
    expect(suits('Very long')).toBe('yes');
    season.type('Farm', '', 'Latitude', '');
    expect(suits('Very long')).toBeNull();
    season.book.undo();
    season.book.undo();
    expect(suits('Very long')).toBe('no');
  });
});

describe('harvest of onions', () => {
  for (const [name, rows] of [
    ['without a climate', ROWS],
    ['with twelve monthly means', { ...ROWS, 'Monthly climate': CLIMATE }],
  ] as const) {
    // Common practice: sown soon after the winter solstice and planted out in mid-March near 38 degrees north, intermediate
    // and 14-hour onions come in mostly in July.
    it(`comes mostly in July near 38 degrees north, ${name}`, () => {
      const season = seasonOf(rows, FARM);
      for (const variety of ['Middle', 'Fourteen']) {
        const harvest = Number(season.value('Plantings', variety, 'Harvest'));
        expect(harvest, `${variety} ${isoDate(harvest)}`).toBeGreaterThanOrEqual(civilDay(2027, 6, 28));
        expect(harvest, `${variety} ${isoDate(harvest)}`).toBeLessThanOrEqual(civilDay(2027, 7, 31));
      }
      expect(errorsOf(season.book)).toEqual([]);
    });
  }

  it('never comes where the days never get long enough, and says so', () => {
    const season = seasonOf(ROWS, FARM);
    expect(season.value('Plantings', 'Very long', 'Harvest')).toBeNull();
    expect(season.says('Plantings', 'Very long')).toContain(
      'Nothing to harvest: it never bulbs: the days stay shorter than this variety needs.',
    );
  });

  it('gives more leaf growth before bulbing to an earlier planting', () => {
    const season = seasonOf({ ...ROWS, 'Monthly climate': CLIMATE }, FARM);
    const early = season.number('Plantings', 'Fourteen', 'Leaf growth in the bed') ?? Number.NaN;
    season.type('Plantings', 'Fourteen', 'Planted out', '2027-04-15');
    expect(season.number('Plantings', 'Fourteen', 'Leaf growth in the bed')).toBeLessThan(early);
  });

  it('takes planting out, sets and late sowings through both gates', () => {
    const season = seasonOf(
      {
        ...ROWS,
        'Monthly climate': CLIMATE,
        Plantings: [
          planted('Fourteen'),
          {
            Planting: 'Drilled late',
            Variety: 'Fourteen',
            Start: 'direct seed',
            Sown: '2027-05-01',
            Rows: '5',
            'In-row spacing': '3 in',
          },
          {
            Planting: 'Sets',
            Variety: 'Fourteen',
            Start: 'sets',
            'Planted out': '2027-03-20',
            Rows: '5',
            'In-row spacing': '3 in',
          },
        ],
      },
      FARM,
    );
    expect(season.value('Plantings', 'Fourteen', 'Held back by')).toBe('day length');
    expect(season.value('Plantings', 'Drilled late', 'Held back by')).toBe('size');
    expect(season.value('Plantings', 'Sets', 'Bulbing starts')).toBe(
      season.value('Plantings', 'Fourteen', 'Bulbing starts'),
    );
    expect(season.number('Plantings', 'Sets', 'Seeds needed')).toBe(0);
    expect(season.number('Plantings', 'Sets', 'Sets or plants to buy')).toBe(Math.ceil(5 * 200 * 1.1 - 1e-9));
  });
});
