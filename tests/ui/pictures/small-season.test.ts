// Pictures of a season that is just begun: some dates typed, the frosts of six years, no price and no wage.

import { describe, expect, test } from 'vitest';
import { civilDay, MONTHS, showDate } from '../../../engine/index.ts';
import { yearStrip } from '../../../ui/browser/glance/year-strip.ts';
import type { BedOnMap, Piece } from '../../../ui/browser/pictures/bed-map/bed-map.ts';
import { namesOnBed } from '../../../ui/browser/pictures/bed-map/bed-names.ts';
import { climateOfYear, cropsOf } from '../../../ui/browser/pictures/climate/climate.ts';
import { frostChances } from '../../../ui/browser/pictures/frost/frost.ts';
import { said, totalOf } from '../../../ui/browser/pictures/kit/model.ts';
import { moneyByMonth } from '../../../ui/browser/pictures/money/money.ts';
import { benchByWeek, hoursByWeek } from '../../../ui/browser/pictures/room/room.ts';
import { seasonOf } from '../../sheets/season.ts';

/** Means of a warm temperate place, made up: lows in degrees Fahrenheit. */
const LOWS = [30, 33, 40, 49, 58, 66, 70, 69, 62, 50, 40, 33];
/** Last frosts of April and first of November, made up; hard ones a fortnight inside. */
const FROSTS = [
  ['2020', '2020-04-05', '2020-11-09', '2020-03-20', '2020-11-25'],
  ['2021', '2021-04-21', '2021-10-28', '2021-03-30', '2021-11-12'],
  ['2022', '2022-03-30', '2022-11-04', '2022-03-12', '2022-11-20'],
  ['2023', '2023-04-12', '2023-11-01', '2023-03-28', '2023-11-15'],
  ['2024', '2024-04-08', '2024-11-12', '2024-03-22', '2024-11-30'],
  ['2025', '2025-04-16', '2025-11-06', '2025-04-01', '2025-11-22'],
] as const;

const season = seasonOf(
  {
    'Monthly climate': LOWS.map((low, index) => ({
      Month: MONTHS[index] ?? '',
      Number: String(index + 1),
      Low: `${low} degF`,
      High: `${low + 19.7} degF`,
    })),
    'Frost years': FROSTS.map(([Year, last, first, lastHard, firstHard]) => ({
      Year,
      'Last frost': last,
      'First frost': first,
      'Last hard frost': lastHard,
      'First hard frost': firstHard,
    })),
    Varieties: [
      { Variety: 'Bulbs', Crop: 'Onion, bulb' },
      { Variety: 'Cloves', Crop: 'Garlic' },
      { Variety: 'Reds', Crop: 'Tomato' },
    ],
    Plantings: [
      {
        Planting: 'Onions',
        Variety: 'Bulbs',
        'Bed length used': '50 ft',
        Sown: '2026-12-11',
        'Planted out': '2027-02-20',
      },
      { Planting: 'Garlic', Variety: 'Cloves', 'Bed length used': '50 ft', 'Planted out': '2027-11-06' },
      { Planting: 'Early tomatoes', Variety: 'Reds', 'Bed length used': '50 ft', 'Planted out': '2027-03-25' },
      { Planting: 'Tomatoes', Variety: 'Reds', 'Bed length used': '50 ft', 'Planted out': '2027-05-20' },
    ],
  },
  { Latitude: '36' },
);
const { workbook } = season.book;

describe('frost', () => {
  const model = frostChances(workbook);

  test('what goes in in autumn stands at the chance that a frost has come', () => {
    const autumn = model?.lines.find(({ name }) => name === 'a frost come in autumn');
    const garlic = model?.dots.find(({ name }) => name === 'Garlic');
    expect(garlic?.x).toBe(civilDay(2027, 11, 6));
    // Four of the six first frosts come by then.
    expect(garlic?.y).toBeGreaterThan(50);
    expect(garlic?.y).toBe(autumn?.points.find(({ x }) => x === garlic?.x)?.y);
    expect(model?.dots.find(({ name }) => name === 'Tomatoes')?.y).toBeLessThan(5);
  });

  test('of those that go in while a frost is likely, the ones that do not stand it are named', () => {
    expect(model?.says).toContain(
      '3 of 4 plantings go in while a frost is more likely than not; not hardy among them: Early tomatoes.',
    );
  });

  test('the legend has the dots, and the table the hard frosts', () => {
    expect(model?.dotsAre).toBe('a planting, on the day it goes in');
    const { head = [], rows = [] } = model?.table ?? {};
    expect(head.slice(3, 5)).toEqual(['Hard frost still to come', 'Hard frost come']);
    expect(rows.every((row) => row.length === head.length)).toBe(true);
    const [first] = rows;
    expect(first?.slice(1, 5)).toEqual(['100%', '0%', '100%', '0%']);
  });
});

describe('names on a bed where it lies', () => {
  const piece = (name: string, at: number, length: number): Piece => ({
    planting: name,
    name,
    crop: '',
    at,
    length,
    picking: false,
  });
  const bed = (...pieces: readonly Piece[]): BedOnMap => ({
    bed: 'b',
    name: 'Orchard 4',
    length: 30,
    width: 0.75,
    place: undefined,
    turned: false,
    pieces,
    free: 0,
    over: 0,
    cover: '',
  });
  const drawn = (names: ReturnType<typeof namesOnBed>): readonly string[] => names.map(({ text }) => text);

  test('each stands within its own part, none over a divider', () => {
    const two = bed(piece('Cucumbers', 0, 15), piece('Basil', 15, 15));
    const names = namesOnBed(two, 12);
    expect(drawn(names)).toEqual(['Orchard 4: Cucumbers', 'Basil']);
    expect(names[1]?.x).toBeGreaterThan(180);
  });

  test('on a short first part the bed’s name stands whole, and what comes after begins behind it', () => {
    const two = bed(piece('Cucumbers', 0, 2), piece('Basil', 2, 28));
    const names = namesOnBed(two, 12);
    expect(drawn(names)).toEqual(['Orchard 4', 'Basil']);
    // Nine letters of 13 px are some 60 px wide.
    expect(names[1]?.x).toBeGreaterThan(60);
    expect(drawn(namesOnBed(bed(), 12))).toEqual(['Orchard 4: free']);
    expect(drawn(namesOnBed({ ...bed(), cover: 'clover' }, 12))).toEqual(['Orchard 4: clover']);
  });
});

test('the strip of the year has every week that the hours by week have, so that both name the same busiest', () => {
  const strip = yearStrip(workbook, civilDay(2026, 12, 1));
  const drawn = hoursByWeek(workbook)?.columns ?? [];
  // Onions are sown on 11 December for a season from 1 January.
  expect(strip?.season.first).toBe(civilDay(2026, 12, 7));
  expect(strip?.weeks.map(({ monday }) => monday)).toEqual(drawn.map(({ from }) => from));
  const busiest = drawn.reduce((most, week) => (totalOf(week) > totalOf(most) ? week : most));
  expect(strip?.says).toContain(`The busiest week begins ${showDate(busiest.from)}: about `);
});

test('hours before the first day of the season are drawn, as bench before it is', () => {
  const weeks = [hoursByWeek(workbook), benchByWeek(workbook)].map((model) => model?.columns ?? []);
  // Friday 11 December 2026 lies in the week of the 7th.
  for (const columns of weeks) expect(columns[0]?.from).toBe(civilDay(2026, 12, 7));
  const [sowing] = weeks[0] ?? [];
  expect(sowing === undefined ? 0 : totalOf(sowing)).toBeGreaterThan(0);
});

describe('money', () => {
  test('without a price and a wage there is nothing to draw', () => {
    expect(moneyByMonth(workbook)).toBeUndefined();
  });

  test('months are called by their names', () => {
    const paid = seasonOf({
      'Own costs': [{ Cost: 'Rent', Amount: '300', 'First on': '2027-03-01' }],
    });
    const model = moneyByMonth(paid.book.workbook);
    expect(model?.says).toMatch(
      /^0 USD come in from outlets and 300 USD go out\. The till is emptiest at the end of March 2027: -300 USD\.$/,
    );
    expect(model?.table.rows.find(([month]) => month === 'March 2027')?.slice(1)).toEqual(['0', '300', '-300']);
    expect(model?.readings.some(({ words }) => words.startsWith('March 2027: 0 USD in, 300 USD out'))).toBe(true);
  });
});

describe('figures', () => {
  test('have no more decimals than their sheet shows', () => {
    expect(said(0.0387, 1)).toBe('0');
    expect(said(0.698, 1)).toBe('0.7');
    expect(said(-0.04, 1)).toBe('0');
    expect(said(12_345.6, 1)).toBe('12,346');
    expect(said(0.0387)).toBe('0.0387');
  });

  test('in words and tables of hours and of the climate', () => {
    const fine = /\d\.\d\d/;
    const hours = hoursByWeek(workbook);
    const climate = climateOfYear(workbook, cropsOf(workbook)[0]);
    for (const model of [hours, climate]) {
      expect(model?.table.rows.flat().filter((cell) => fine.test(cell))).toEqual([]);
      expect(model?.readings.filter(({ words }) => fine.test(words))).toEqual([]);
    }
  });
});
