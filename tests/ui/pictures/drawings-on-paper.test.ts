// Drawings of the beds on paper: every bed once and in order, no drawing taller than a page, type that can be read.

import { describe, expect, test } from 'vitest';
import { civilDay } from '../../../engine/index.ts';
import { bedMap, mapParts } from '../../../ui/browser/pictures/bed-map/bed-map.ts';
import { ACROSS, UPRIGHT } from '../../../ui/browser/pictures/kit/paper-size.ts';
import { calendarParts, layCalendar } from '../../../ui/browser/pictures/season-calendar/calendar-layout.ts';
import { seasonCalendar } from '../../../ui/browser/pictures/season-calendar/season-calendar.ts';
import { demoBook } from '../../browser/workbook-page.ts';

const demo = demoBook();
const calendar = seasonCalendar(demo.workbook, demo.today);
if (calendar === undefined) throw new Error('The demo farm has no beds.');

/** Millimetres between the margins (print.css: 12 at each side, 14 above, 16 below) of Letter and of A4. */
const PRINTED = [
  { short: 215.9 - 24, long: 279.4 - 24, shortTall: 279.4 - 30, longTall: 215.9 - 30 },
  { short: 210 - 24, long: 297 - 24, shortTall: 297 - 30, longTall: 210 - 30 },
];
const POINT = 25.4 / 72;

test('letters of 13 pixels are 7 points tall at least, and a drawing leaves room for its title and its legend', () => {
  for (const { short, long, shortTall, longTall } of PRINTED) {
    for (const [{ width, tall }, wide, high] of [
      [UPRIGHT, short, shortTall],
      [ACROSS, long, longTall],
    ] as const) {
      const millimetres = wide / width;
      expect((13 * millimetres) / POINT).toBeGreaterThanOrEqual(7);
      expect(tall * millimetres).toBeLessThan(high - 25);
    }
  }
});

describe('the calendar in parts', () => {
  test('has every bed once, in order, and no part is taller than it may be', () => {
    for (const { width, tall } of [UPRIGHT, ACROSS]) {
      const parts = calendarParts(calendar, tall);
      expect(parts.length).toBeGreaterThan(1);
      expect(parts.flatMap(({ lines }) => lines.map(({ bed }) => bed))).toEqual(calendar.lines.map(({ bed }) => bed));
      const heights = parts.map((part) => layCalendar(part, width).height);
      expect(Math.max(...heights)).toBeLessThanOrEqual(tall);
      // None is left with a bed or two.
      expect(Math.min(...heights)).toBeGreaterThan(tall / 2);
    }
  });

  test('is one where all of it has room, and a bed that is taller than a part has one to itself', () => {
    expect(calendarParts(calendar, 100_000).length).toBe(1);
    expect(calendarParts(calendar, 10).length).toBe(calendar.lines.length);
  });
});

describe('the map in parts', () => {
  const map = bedMap(demo.workbook, calendar, civilDay(2027, 7, 15));
  const beds = map.fields.flatMap((field) => field.beds.map(({ name }) => name));
  const fieldsOf = (columns: number, rows: number) =>
    mapParts(map, columns, rows).map(({ fields }) => fields.map((field) => [field.name, field.beds.length]));

  test('has every bed once, whatever the room', () => {
    for (const [columns, rows] of [
      [2, 32],
      [2, 23],
      [1, 23],
      [2, 4],
      [1, 1],
    ] as const) {
      const parts = mapParts(map, columns, rows);
      expect(parts.flatMap(({ fields }) => fields.flatMap((field) => field.beds.map(({ name }) => name)))).toEqual(
        beds,
      );
      expect(parts.every(({ fields }) => fields.length > 0)).toBe(true);
    }
  });

  test('keeps a field together where it can, breaks it over columns where it must, and says that it goes on', () => {
    const whole = map.fields.map(({ name, beds: own }) => [name, own.length]);
    expect(fieldsOf(1, 100)).toEqual([whole]);
    expect(fieldsOf(2, 23)).toEqual([
      [
        ['Barn', 5],
        ['Creek', 7],
        ['Orchard', 4],
      ],
      [
        ['Ridge', 21],
        ['Ridge, continued', 3],
      ],
    ]);
  });
});
