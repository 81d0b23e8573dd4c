// The average year summed once and smoothed: warmth between days against plain sums, the first and the latest day, cold and
// heat counted, the course of the year and the temperature a bed must have.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coldEffect, freezesAndThaws } from '../../engine/agronomy/cold-of-year.ts';
import { courseOfYear, warmSpan } from '../../engine/agronomy/course-of-year.ts';
import { dayLength } from '../../engine/agronomy/day-length.ts';
import { shortDayFrom } from '../../engine/agronomy/day-length-dates.ts';
import { START_POINTS, startTemperature } from '../../engine/agronomy/planting-season.ts';
import { degreeDaysOfMean } from '../../engine/agronomy/thermal-time.ts';
import { runningTotals, totalBetween } from '../../engine/agronomy/totals-of-year.ts';
import {
  dayOfWarmth,
  latestStartForWarmth,
  warmthBetween,
  warmthOfYear,
} from '../../engine/agronomy/warmth-of-year.ts';
import { civilDay } from '../../engine/values/civil.ts';

/** A year from -5 degC in winter to 25 in summer, coldest on its first day. */
const YEAR = Float64Array.from({ length: 365 }, (_, day) => 10 - 15 * Math.cos((2 * Math.PI * day) / 365));

function slowly(from: number, to: number, base: number, upper: number): number {
  let sum = 0;
  for (let day = from; day < to; day += 1) {
    sum += degreeDaysOfMean(YEAR[((day % 365) + 365) % 365] as number, base, upper);
  }
  return sum;
}

describe('warmth of the year', () => {
  test('between any two days is the sum of the days between, years before and after included', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -400, max: 800 }),
        fc.integer({ min: 0, max: 500 }),
        fc.integer({ min: -2, max: 15 }),
        (from, count, base) => {
          const warmth = warmthOfYear(YEAR, base, 22);
          expect(warmthBetween(warmth, from, from + count)).toBeCloseTo(slowly(from, from + count, base, 22), 7);
        },
      ),
    );
  });

  test('the day of a sum is the first at whose end it is reached', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -300, max: 600 }),
        fc.double({ min: 1, max: 2500, noNaN: true }),
        (from, wanted) => {
          const day = dayOfWarmth(warmthOfYear(YEAR, 5, 25), from, wanted);
          expect(slowly(from, day + 1, 5, 25)).toBeGreaterThanOrEqual(wanted - 1e-6);
          expect(slowly(from, day, 5, 25)).toBeLessThan(wanted);
        },
      ),
    );
  });

  test('the latest start is the last day from which the sum still comes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 700 }), fc.double({ min: 1, max: 2500, noNaN: true }), (by, wanted) => {
        const day = latestStartForWarmth(warmthOfYear(YEAR, 5, 25), by, wanted);
        expect(slowly(day, by, 5, 25)).toBeGreaterThanOrEqual(wanted - 1e-6);
        expect(slowly(day + 1, by, 5, 25)).toBeLessThan(wanted);
      }),
    );
  });

  test('nothing wanted is there at once, and a warmth that never comes has no day', () => {
    const warmth = warmthOfYear(YEAR, 5, 25);
    expect(dayOfWarmth(warmth, 40, 0)).toBe(40);
    expect(latestStartForWarmth(warmth, 40, 0)).toBe(40);
    expect(dayOfWarmth(warmth, 40, 1e5)).toBeNaN();
    expect(latestStartForWarmth(warmth, 40, 1e5)).toBeNaN();
    expect(dayOfWarmth(warmthOfYear(YEAR, 30, 40), 0, 1)).toBeNaN();
    expect(warmthBetween(warmth, 50, 50)).toBe(0);
    expect(warmthBetween(warmth, 50, 20)).toBe(0);
    expect(dayOfWarmth(warmth, 0, Number.NaN)).toBeNaN();
    expect(latestStartForWarmth(warmth, 0, Number.NaN)).toBeNaN();
  });

  test('a day without a temperature leaves the sums across it unknown, and the others known', () => {
    const gap = YEAR.slice();
    gap[200] = Number.NaN;
    const warmth = warmthOfYear(gap, 5, 25);
    expect(warmthBetween(warmth, 100, 200)).toBeCloseTo(slowly(100, 200, 5, 25), 7);
    expect(warmthBetween(warmth, 190, 210)).toBeNaN();
    expect(dayOfWarmth(warmth, 195, 200)).toBeNaN();
    expect(latestStartForWarmth(warmth, 205, 200)).toBeNaN();
  });
});

describe('totals of a year', () => {
  test('repeat year after year', () => {
    const totals = runningTotals(365, (day) => (day < 10 ? 1 : 0));
    expect(totalBetween(totals, 0, 365)).toBe(10);
    expect(totalBetween(totals, -365, 730)).toBe(30);
    expect(totalBetween(totals, 5, 5)).toBe(0);
    expect(totalBetween(totals, 360, 370)).toBe(5);
    expect(totalBetween(totals, 370, 360)).toBe(0);
  });
});

describe('the course of the year', () => {
  test('smooths weather away and keeps the season', () => {
    const jagged = YEAR.map((mean, day) => mean + (day % 2 === 0 ? 4 : -4));
    const course = courseOfYear(jagged);
    const smooth = courseOfYear(YEAR);
    expect(Math.abs((course?.warmest ?? 0) - 182.5)).toBeLessThan(4);
    for (const day of [0, 90, 182, 300]) {
      expect(Math.abs((course?.values[day] as number) - (smooth?.values[day] as number))).toBeLessThan(0.3);
    }
    expect(smooth?.values[182]).toBeLessThan(25);
    expect(smooth?.values[182]).toBeGreaterThan(24.8);
  });

  test('keeps the mean of the year, across its end too', () => {
    const values = courseOfYear(YEAR.map((_, day) => (day === 364 ? 365 : 0)))?.values ?? new Float64Array(0);
    expect(values.reduce((sum, value) => sum + value, 0)).toBeCloseTo(365, 6);
    expect(values[3]).toBeGreaterThan(0);
    expect(values[13]).toBeGreaterThan(0);
    expect(values[14]).toBeCloseTo(0, 9);
    expect(values[350]).toBeGreaterThan(0);
  });

  test('is none where a day has no temperature', () => {
    const gap = YEAR.slice();
    gap[7] = Number.NaN;
    expect(courseOfYear(gap)).toBeUndefined();
    expect(courseOfYear(new Float64Array(0))).toBeUndefined();
  });

  test('finds the days as warm as a level around the warmest, or says all or none', () => {
    const course = courseOfYear(YEAR);
    if (course === undefined) throw new Error('a whole year has a course');
    const span = warmSpan(course, 15);
    if (typeof span === 'string') throw new Error('some days are warmer than 15, others not');
    const at = (offset: number): number => course.values[course.warmest + offset] as number;
    expect(at(span.from)).toBeGreaterThanOrEqual(15);
    expect(at(span.from - 1)).toBeLessThan(15);
    expect(at(span.until)).toBeLessThan(15);
    expect(at(span.until - 1)).toBeGreaterThanOrEqual(15);
    expect(warmSpan(course, -20)).toBe('all');
    expect(warmSpan(course, 30)).toBe('none');
  });
});

describe('cold', () => {
  const range = { base: 0, bestFrom: 5, bestTo: 13, maximum: 15 };

  test('counts whole between the best, half half-way, nothing beyond', () => {
    expect([0, 2.5, 5, 9, 13, 14, 15, 16, -1].map((mean) => coldEffect(range, mean))).toEqual([
      0, 0.5, 1, 1, 1, 0.5, 0, 0, 0,
    ]);
    expect(coldEffect(range, Number.NaN)).toBeNaN();
  });

  test('counts whole at a base or limit where the best reaches to it', () => {
    const flat = { base: 0, bestFrom: 0, bestTo: 13, maximum: 13 };
    expect([0, 13, 13.1, -0.1].map((mean) => coldEffect(flat, mean))).toEqual([1, 1, 0, 0]);
  });

  test('freezes and thaws only where the low is below and the high above freezing, under the cover', () => {
    expect(freezesAndThaws(-3, 4, 0)).toBe(true);
    expect(freezesAndThaws(-3, 4, 3)).toBe(false);
    expect(freezesAndThaws(-3, -1, 0)).toBe(false);
    expect(freezesAndThaws(0, 4, 0)).toBe(false);
    expect(freezesAndThaws(-3, 0, 0)).toBe(false);
  });
});

describe('the temperature a bed must have', () => {
  test('is that of the points, straight between and level beyond them', () => {
    for (const { weeks, mean } of START_POINTS) expect(startTemperature(weeks)).toBe(mean);
    expect(startTemperature(-4.5)).toBeCloseTo(6.25, 12);
    expect(startTemperature(0.5)).toBeCloseTo(15.75, 12);
    expect(startTemperature(-10)).toBe(5.5);
    expect(startTemperature(9)).toBe(18);
    expect(startTemperature(Number.NaN)).toBeNaN();
  });
});

describe('the first short day', () => {
  test('is shorter than asked, and the day before is not', () => {
    for (const [latitude, from] of [
      [42, civilDay(2027, 7, 20)],
      [60, civilDay(2027, 7, 20)],
      [-43, civilDay(2028, 1, 20)],
      [35, civilDay(2027, 6, 1)],
    ] as const) {
      const day = shortDayFrom(latitude, 10, from);
      expect(dayLength(latitude, day)).toBeLessThan(10);
      expect(dayLength(latitude, day - 1)).toBeGreaterThanOrEqual(10);
      expect(day).toBeGreaterThan(from);
    }
  });

  test('is the day asked from where that is short already, the next winter after a past one, and none near the equator', () => {
    const christmas = civilDay(2027, 12, 25);
    expect(shortDayFrom(52, 10, christmas)).toBe(christmas);
    expect(shortDayFrom(52, 10, civilDay(2028, 3, 1))).toBeGreaterThan(civilDay(2028, 10, 1));
    expect(shortDayFrom(20, 10, christmas)).toBeNaN();
    expect(shortDayFrom(2, 12, christmas)).toBeNaN();
    expect(shortDayFrom(95, 10, christmas)).toBeNaN();
    expect(shortDayFrom(52, 0, christmas)).toBeNaN();
    expect(shortDayFrom(52, 10, Number.NaN)).toBeNaN();
  });
});
