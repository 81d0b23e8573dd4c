// Figures that lie between a low and a high: shown rounded with their ends beside, kept exact, alone where a person typed them.

import { describe, expect, it } from 'vitest';
import { roundedInterval } from '../../engine/index.ts';
import { onions } from '../../sheets-templates/onions.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { seedlings } from '../../sheets-templates/seedlings.ts';
import { monthsOf } from '../reference/calendars.ts';
import { type Season, seasonOf } from './season.ts';

describe('ends of a figure', () => {
  it('are columns of the same sheet and kind, in every template', () => {
    let ranges = 0;
    for (const { sheets } of [SEASON, onions(), seedlings()]) {
      for (const { columns } of sheets) {
        for (const { range, type } of columns) {
          if (range === undefined) continue;
          ranges += 1;
          for (const end of [range.low, range.high]) {
            expect(columns.find(({ id }) => id === end)?.type).toEqual(type);
          }
        }
      }
    }
    expect(ranges).toBeGreaterThan(20);
  });

  it('are shown with two significant digits, none finer than a hundredth of the width', () => {
    expect(roundedInterval({ low: 132.83, likely: 183.01, high: 233.19 })).toEqual({
      low: 130,
      likely: 180,
      high: 230,
    });
    expect(roundedInterval({ low: -961, likely: 3.4, high: 1499 })).toEqual({ low: -960, likely: 0, high: 1500 });
    expect(roundedInterval({ low: 6.76, likely: 9.97, high: 15.7 })).toEqual({ low: 6.8, likely: 10, high: 16 });
    expect(roundedInterval({ low: 0.012, likely: 0.0234, high: 0.0311 })).toEqual({
      low: 0.012,
      likely: 0.023,
      high: 0.031,
    });
  });
});

it('a yield, a harvest date and hours stand between their ends; what is typed stands as typed', () => {
  const season = seasonOf({
    'Monthly climate': monthsOf('Raleigh NC'),
    Varieties: [{ Variety: 'Round', Crop: 'Tomato' }],
    Plantings: [
      { Planting: 'Reckoned', Variety: 'Round', 'Bed length used': '50 ft', Price: '3' },
      { Planting: 'Typed', Variety: 'Round', 'Bed length used': '50 ft', 'Marketable yield': '123.4 lb' },
    ],
  });
  const { book } = season;
  const cell = (at: number, column: string) => book.cell('Plantings', book.rows('Plantings')[at] ?? -1, column);
  const yields = cell(0, 'Marketable yield');
  expect(yields.number).toBeGreaterThan(100);
  expect(yields.figure).toBe(String(Number(yields.number?.toPrecision(2))));
  expect(yields.ends).toMatch(/^\d+ to \d+$/);
  expect(yields.entry).toBe(String(yields.number));
  expect(cell(0, 'Harvest')).toMatchObject({ text: '26 Jun 2027', ends: '13 Jun to 19 Jul 2027' });
  expect(cell(0, 'Hours').ends).not.toBe('');
  expect(cell(0, 'Revenue').ends).not.toBe('');
  expect(cell(1, 'Marketable yield')).toMatchObject({ text: '123.4', ends: '', origin: 'override' });
  // Without a price there is no revenue, so nothing lies between anything.
  expect(cell(1, 'Revenue')).toMatchObject({ text: '', ends: '' });
});

describe('years that differ', () => {
  const planted = (yearToYear: string, crop: string) =>
    seasonOf({
      'Monthly climate': monthsOf('Raleigh NC').map((month) => ({ ...month, 'Year to year': yearToYear })),
      Varieties: [{ Variety: 'Round', Crop: crop }],
      Plantings: [{ Planting: 'One', Variety: 'Round', 'Bed length used': '50 ft' }],
    });
  const ends = (season: Season) =>
    ['Harvest low', 'Harvest', 'Harvest high'].map((column) => Number(season.value('Plantings', 'One', column)));

  it('widen the harvest where they differ more than varieties do, and not where they differ less', () => {
    const [[low = 0, likely = 0, high = 0], alike, little] = [
      ends(planted('6 Cdeg', 'Tomato')),
      ends(planted('', 'Tomato')),
      ends(planted('0.1 Cdeg', 'Tomato')),
    ];
    expect(little).toEqual(alike);
    expect(alike[1]).toBe(likely);
    expect(low).toBeLessThan(alike[0] ?? 0);
    expect(high).toBeGreaterThan(alike[2] ?? 0);
  });

  it('reach the warmth wanted on the day that a sum over its own days so much warmer gives', () => {
    const season = planted('6 Cdeg', 'Tomato');
    const of = (column: string) => Number(season.value('Plantings', 'One', column));
    const [from, ripe] = [of('Growth counts from'), of('Ripe')];
    // The mean of so many months that are each by themselves differs by the root of their number less; one in ten is 1.2816 of it.
    const warmer = (1.2816 * 6) / Math.sqrt((ripe - from) / 30.4);
    const { book } = season;
    const days = [...book.rows('Climate')].map((row) => [
      Number(book.value('Climate', row, 'Day')),
      celsius(book.cell('Climate', row, 'Mean').number ?? 0) + warmer,
    ]);
    const base = celsius(season.number('Plantings', 'One', 'Growth base') ?? 0);
    const ceiling = celsius(season.number('Plantings', 'One', 'Growth ceiling') ?? 0);
    const wanted = ((season.number('Plantings', 'One', 'Warmth wanted') ?? 0) * 5) / 9;
    let sum = 0;
    const [reached = 0] =
      days.find(([day = 0, mean = 0]) => {
        if (day >= from) sum += Math.min(Math.max(mean - base, 0), ceiling - base);
        return sum >= wanted;
      }) ?? [];
    expect(Math.abs(of('Harvest by year low') - reached)).toBeLessThanOrEqual(1);
    expect(reached).toBeLessThan(ripe - 14);
  });

  it('follow into what is cured and sold: both ends by the ends of the yield', () => {
    const season = planted('', 'Onion, bulb');
    const of = (column: string) => season.number('Plantings', 'One', column) ?? Number.NaN;
    for (const end of ['low', 'high']) {
      const share = of(`Marketable yield ${end}`) / of('Marketable yield');
      expect(of(`Cured yield ${end}`)).toBeCloseTo(of('Cured yield') * share, 8);
      expect(of(`Sold weight ${end}`)).toBeCloseTo(of('Cured yield') * share, 8);
    }
  });
});

const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
