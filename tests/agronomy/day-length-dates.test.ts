// Dates by day length at their edges: lengths met exactly, the turn of the year, the equator and the poles.

import { describe, expect, test } from 'vitest';
import { dayLength } from '../../engine/agronomy/day-length.ts';
import { firstDateReaching, longestDay, longestDayDate } from '../../engine/agronomy/day-length-dates.ts';
import { civilDay } from '../../engine/values/civil.ts';

const YEAR = 2026;
const january = (day: number): number => civilDay(YEAR, 1, day);
const december = (day: number): number => civilDay(YEAR, 12, day);
const june = (day: number): number => civilDay(YEAR, 6, day);

function longestByEveryDay(latitude: number): number {
  let best = january(1);
  for (let day = january(1); day <= december(31); day += 1) {
    if (dayLength(latitude, day) > dayLength(latitude, best)) best = day;
  }
  return best;
}

function firstByEveryDay(latitude: number, hours: number): number {
  for (let day = january(1); day <= december(31); day += 1) {
    if (dayLength(latitude, day) >= hours && dayLength(latitude, day - 1) < hours) return day;
  }
  return Number.NaN;
}

describe('the longest day', () => {
  test.each([65, 40, 5, 2, 0.005, 0, -0.005, -2, -5, -40, -65])('at latitude %d', (latitude) => {
    expect(longestDayDate(latitude, YEAR)).toBe(longestByEveryDay(latitude));
  });

  test('beside the equator it falls in December on both sides: noons lie farther apart then', () => {
    for (const latitude of [-0.005, 0, 0.005]) {
      expect(longestDayDate(latitude, YEAR)).toBeGreaterThan(december(1));
    }
  });

  test.each([
    [70, june(17)],
    [90, june(17)],
    [-70, december(17)],
    [-90, december(17)],
  ])('where the sun stays up, latitude %d, it is the first from the 17th on, of 24 hours', (latitude, day) => {
    expect(longestDayDate(latitude, YEAR)).toBe(day);
    expect(longestDay(latitude, YEAR)).toBe(24);
  });

  test.each([
    [90.1, YEAR],
    [-90.1, YEAR],
    [Number.NaN, YEAR],
    [40, 2026.5],
    [40, Number.NaN],
  ])('no answer for latitude %d in the year %d', (latitude, year) => {
    expect(longestDayDate(latitude, year)).toBeNaN();
    expect(longestDay(latitude, year)).toBeNaN();
    expect(firstDateReaching(latitude, 12, year)).toBeNaN();
  });
});

describe('the first date that reaches a length', () => {
  test.each([90, 66, 40, 5, 3, 0.03, 0, -0.03, -3, -5, -40, -66, -90])('12.1 h at latitude %d', (latitude) => {
    expect(firstDateReaching(latitude, 12.1, YEAR)).toEqual(firstByEveryDay(latitude, 12.1));
  });

  test.each([40, 3, 0.03, -3, -40])('the longest length of all is reached on its day, latitude %d', (latitude) => {
    const longest = longestDay(latitude, YEAR);
    expect(firstDateReaching(latitude, longest, YEAR)).toBe(longestDayDate(latitude, YEAR));
    expect(firstDateReaching(latitude, longest + 1e-6, YEAR)).toBeNaN();
  });

  test.each([40, 3])('a length met on New Year, latitude %d', (latitude) => {
    expect(firstDateReaching(latitude, dayLength(latitude, january(1)), YEAR)).toBe(january(1));
    expect(firstDateReaching(latitude, dayLength(latitude, january(2)), YEAR)).toBe(january(2));
  });

  test.each([40, 3])("the length of last New Year's Eve was not missed before, latitude %d", (latitude) => {
    const hours = dayLength(latitude, january(1) - 1);
    const found = firstDateReaching(latitude, hours, YEAR);
    expect(found).toEqual(firstByEveryDay(latitude, hours));
    expect(found).not.toBe(january(1));
  });

  // Four years are a day longer than four turns of the year, so this New Year's Eve is a little shorter than the last.
  test.each([40, 3])("a length met again on New Year's Eve alone, latitude %d", (latitude) => {
    expect(firstDateReaching(latitude, dayLength(latitude, december(31)), YEAR)).toBe(december(31));
  });

  test.each([
    [-40, june(24)],
    [40, december(24)],
  ])('a length met days after the shortest day, latitude %d', (latitude, day) => {
    const hours = dayLength(latitude, day);
    expect(firstDateReaching(latitude, hours, YEAR)).toBe(day);
    expect(firstByEveryDay(latitude, hours)).toBe(day);
  });

  test.each([0.005, 0, -0.005])('beside the equator, where days lengthen twice a year, latitude %d', (latitude) => {
    const hours = dayLength(latitude, civilDay(YEAR, 5, 1));
    expect(firstDateReaching(latitude, hours, YEAR)).toBe(civilDay(YEAR, 5, 1));
    expect(firstByEveryDay(latitude, hours)).toBe(civilDay(YEAR, 5, 1));
  });

  test('the shortest length of all is never missed', () => {
    for (const latitude of [40, -40]) {
      const shortest = Math.min(...Array.from({ length: 365 }, (_, day) => dayLength(latitude, january(1) + day)));
      expect(firstDateReaching(latitude, shortest - 1e-6, YEAR)).toBeNaN();
    }
  });
});
