// Figures that lie between a low and a high: shown rounded with their ends beside, kept exact, alone where a person typed them.

import { describe, expect, it } from 'vitest';
import { roundedInterval } from '../../engine/index.ts';
import { ONIONS } from '../../sheets-templates/onions.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { SEEDLINGS } from '../../sheets-templates/seedlings.ts';
import { monthsOf } from '../reference/calendars.ts';
import { seasonOf } from './season.ts';

describe('ends of a figure', () => {
  it('are columns of the same sheet and kind, in every template', () => {
    let ranges = 0;
    for (const { sheets } of [SEASON, ONIONS, SEEDLINGS]) {
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
