// Civil days against the calendar of ECMAScript's Date, which is written down in ECMA-262 and implemented apart from
// ours, and against their own inverses.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civilDay, civilDayOfIso, dayOfYear, isLeapYear, isoDate, yearMonthDay } from '../../engine/values/civil.ts';

/** JavaScript's proleptic Gregorian calendar (ECMA-262, "Day Number"), for whole days since 1970-01-01. */
const dayByEcma = (year: number, month: number, day: number): number => {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return date.getTime() / 86_400_000;
};

describe('a civil day', () => {
  test('agrees with the ECMAScript calendar for every date, months and days rolling over as there', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9999, max: 9999 }),
        fc.integer({ min: -30, max: 40 }),
        fc.integer({ min: -400, max: 400 }),
        (year, month, day) => civilDay(year, month, day) === dayByEcma(year, month, day),
      ),
      { numRuns: 3000 },
    );
  });

  test('gives back its year, month and day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -5_000_000, max: 5_000_000 }), (civil) => {
        const { year, month, day } = yearMonthDay(civil);
        return civilDay(year, month, day) === civil && month >= 1 && month <= 12 && day >= 1 && day <= 31;
      }),
      { numRuns: 3000 },
    );
  });

  test('is the last of its 400 years where a leap day ends them', () => {
    expect(yearMonthDay(civilDay(2000, 2, 29))).toEqual({ year: 2000, month: 2, day: 29 });
    expect(yearMonthDay(civilDay(1600, 2, 29))).toEqual({ year: 1600, month: 2, day: 29 });
  });

  test('with a part of a day belongs to that day', () => {
    expect(yearMonthDay(0.99)).toEqual({ year: 1970, month: 1, day: 1 });
    expect(dayOfYear(31.5)).toBe(32);
  });
});

describe('the day of the year', () => {
  test('agrees with the ECMAScript calendar', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9999, max: 9999 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 28 }),
        (year, month, day) =>
          dayOfYear(civilDay(year, month, day)) === dayByEcma(year, month, day) - dayByEcma(year, 1, 1) + 1,
      ),
      { numRuns: 3000 },
    );
  });

  // Inter gravissimas, 1582: a century year is a leap year only where 400 divides it.
  test.each([
    [1900, false],
    [2000, true],
    [2023, false],
    [2024, true],
    [2100, false],
  ])('%i is a leap year: %s', (year, leap) => {
    expect(isLeapYear(year)).toBe(leap);
    expect(dayOfYear(civilDay(year, 12, 31))).toBe(leap ? 366 : 365);
  });
});

describe('date text', () => {
  test('is read back to the same day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -4_000_000, max: 2_900_000 }), (civil) => civilDayOfIso(isoDate(civil)) === civil),
    );
  });

  test('is ISO 8601', () => {
    expect(isoDate(civilDay(2027, 3, 5))).toBe('2027-03-05');
    expect(isoDate(civilDay(476, 9, 4))).toBe('0476-09-04');
    expect(isoDate(civilDay(0, 1, 1))).toBe('0000-01-01');
    expect(isoDate(civilDay(-44, 3, 15))).toBe('-0044-03-15');
  });

  test.each(['2027-02-29', '2027-13-01', '2027-00-10', '2027-3-15', '15 Mar', 'x2027-03-15', '2027-03-15x', ''])(
    '%j is no date',
    (text) => {
      expect(civilDayOfIso(text)).toBeUndefined();
    },
  );
});
