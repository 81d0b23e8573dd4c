// Day length over whole years against a planetary theory, its symmetries and edges, and the dates found by length.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayLength, dayLengthWithCivilTwilight, sunrise, sunset } from '../../engine/agronomy/day-length.ts';
import { firstDateReaching, longestDay, longestDayDate } from '../../engine/agronomy/day-length-dates.ts';
import { placeSun, sunDeclination, sunEquationOfTime } from '../../engine/agronomy/sun-position.ts';
import { civilDay } from '../../engine/values/civil.ts';
import { hoursByAstronomyEngine } from '../reference/day-length.checks.ts';

const RADIANS = Math.PI / 180;

const someLatitude = fc.double({ min: -90, max: 90, noNaN: true });
const someDay = fc.integer({ min: civilDay(1900, 1, 1), max: civilDay(2100, 12, 31) });

describe('day length', () => {
  test.each([
    [-65, 0.6],
    [-52, 0.25],
    [-38, 0.25],
    [0, 0.25],
    [38, 0.25],
    [45, 0.25],
    [52, 0.25],
    [65, 0.6],
  ])('at latitude %d, every sixth day of a year, within %d minute of a planetary theory', (latitude, minutes) => {
    let worst = 0;
    for (let day = civilDay(2031, 1, 1); day <= civilDay(2031, 12, 31); day += 6) {
      worst = Math.max(worst, Math.abs(dayLength(latitude, day) - hoursByAstronomyEngine(latitude, day)) * 60);
    }
    expect(worst).toBeLessThan(minutes);
  });

  test('polar day is 24 h and polar night 0 h, at both ends of the earth', () => {
    const june = civilDay(2025, 6, 21);
    const december = civilDay(2025, 12, 21);
    expect(dayLength(70, june)).toBe(24);
    expect(dayLength(-70, june)).toBe(0);
    expect(dayLength(70, december)).toBe(0);
    expect(dayLength(-70, december)).toBe(24);
    expect(dayLength(90, june)).toBe(24);
    expect(dayLength(-90, june)).toBe(0);
    expect(sunrise(70, june)).toBeNaN();
  });

  test('stays between 0 and 24 hours, and twilight lengthens it', () => {
    fc.assert(
      fc.property(someLatitude, someDay, (latitude, day) => {
        const hours = dayLength(latitude, day);
        expect(hours).toBeGreaterThanOrEqual(0);
        expect(hours).toBeLessThanOrEqual(24);
        expect(dayLengthWithCivilTwilight(latitude, day)).toBeGreaterThanOrEqual(hours);
      }),
    );
  });

  test('north and south together make a day and what refraction and the width of the sun add', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 52, noNaN: true }), someDay, (latitude, day) => {
        const both = dayLength(latitude, day) + dayLength(-latitude, day);
        expect(both).toBeGreaterThan(24.2);
        expect(both).toBeLessThan(24.7);
      }),
    );
  });

  test('sunset less sunrise is the day length', () => {
    fc.assert(
      fc.property(fc.double({ min: -64, max: 64, noNaN: true }), someDay, (latitude, day) => {
        expect(sunset(latitude, day) - sunrise(latitude, day)).toBeCloseTo(dayLength(latitude, day), 9);
      }),
    );
  });

  // Spherical trigonometry: cos zenith = sin L sin d + cos L cos d cos H, the sun taken at the moment of the event itself.
  function zenithAt(latitude: number, day: number, hours: number): number {
    placeSun(day + hours / 24);
    const hourAngle = (((hours - 12) * 60 + sunEquationOfTime()) / 4) * RADIANS;
    const [l, d] = [latitude * RADIANS, sunDeclination()];
    const cosine = Math.sin(l) * Math.sin(d) + Math.cos(l) * Math.cos(d) * Math.cos(hourAngle);
    return Math.acos(cosine) / RADIANS;
  }

  test.each([-65, -52, -20, 0, 45, 60, 65])(
    'at sunrise and sunset the sun stands on the horizon, at latitude %d',
    (l) => {
      for (let day = civilDay(2025, 1, 1); day <= civilDay(2025, 12, 31); day += 9) {
        expect(Math.abs(zenithAt(l, day, sunrise(l, day)) - 90.833)).toBeLessThan(0.004);
        expect(Math.abs(zenithAt(l, day, sunset(l, day)) - 90.833)).toBeLessThan(0.004);
      }
    },
  );

  test.each([67, 70, 74, 80, 87])('at latitude %d a day is 24 h long when the sun is up at both its midnights', (l) => {
    for (let day = civilDay(2025, 3, 1); day <= civilDay(2025, 9, 30); day += 1) {
      const depths = [day, day + 1].map((midnight) => {
        placeSun(midnight);
        return 180 - l - sunDeclination() / RADIANS - 90.833;
      });
      if (depths.every((depth) => depth < -0.02)) expect(dayLength(l, day)).toBe(24);
      if (depths.some((depth) => depth > 0.02)) expect(dayLength(l, day)).toBeLessThan(24);
    }
  });

  test('no sunrise on a day of polar night', () => {
    expect(sunrise(70, civilDay(2025, 12, 21))).toBeNaN();
    expect(sunset(-70, civilDay(2025, 6, 21))).toBeNaN();
  });

  test('no answer beyond the poles or without a date', () => {
    expect(dayLength(-91, 20_000)).toBeNaN();
    expect(dayLength(91, 20_000)).toBeNaN();
    expect(dayLength(Number.NaN, 20_000)).toBeNaN();
    expect(dayLength(45, Number.NaN)).toBeNaN();
  });
});

describe('dates by day length', () => {
  function byEveryDay(latitude: number, hours: number, year: number): number {
    for (let day = civilDay(year, 1, 1); day <= civilDay(year, 12, 31); day += 1) {
      if (dayLength(latitude, day) >= hours && dayLength(latitude, day - 1) < hours) return day;
    }
    return Number.NaN;
  }

  test('the first date is the one found by looking at every day', () => {
    fc.assert(
      fc.property(
        someLatitude,
        fc.double({ min: 0.5, max: 24, noNaN: true }),
        fc.integer({ min: 1950, max: 2080 }),
        (latitude, hours, year) => {
          expect(firstDateReaching(latitude, hours, year)).toEqual(byEveryDay(latitude, hours, year));
        },
      ),
      { numRuns: 400 },
    );
  });

  test('a length passed in the dark end of December counts', () => {
    const hours = dayLength(40, civilDay(2025, 12, 28));
    expect(firstDateReaching(40, hours, 2025)).toBe(byEveryDay(40, hours, 2025));
  });

  test('the longest day is the longest of all', () => {
    fc.assert(
      fc.property(someLatitude, fc.integer({ min: 1950, max: 2080 }), (latitude, year) => {
        let longest = 0;
        for (let day = civilDay(year, 1, 1); day <= civilDay(year, 12, 31); day += 1) {
          longest = Math.max(longest, dayLength(latitude, day));
        }
        expect(longestDay(latitude, year)).toBe(longest);
      }),
      { numRuns: 60 },
    );
  });

  test('a length never reached, always exceeded or not given has no date', () => {
    expect(firstDateReaching(25, 15, 2025)).toBeNaN();
    expect(firstDateReaching(0, 11, 2025)).toBeNaN();
    expect(firstDateReaching(45, Number.NaN, 2025)).toBeNaN();
    expect(longestDayDate(95, 2025)).toBeNaN();
  });
});
