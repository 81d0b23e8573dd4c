// Average years with gaps, daily values from monthly means, degree-days and frost dates.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averageYear, calendarIndex, meansFrom } from '../../engine/agronomy/climate.ts';
import {
  autumnDateAtRisk,
  chanceOfEarlierFrost,
  chanceOfLaterFrost,
  fitFrostDates,
  fitFrostLevels,
  frostYears,
  springDateAtRisk,
} from '../../engine/agronomy/frost.ts';
import { dailyFromMonthlyMeans } from '../../engine/agronomy/monthly-means.ts';
import { dayReachingSum, degreeDays, sumDegreeDays } from '../../engine/agronomy/thermal-time.ts';
import { civilDay } from '../../engine/values/civil.ts';

const FIRST = civilDay(2019, 1, 1);

function readings(count: number, low: (i: number) => number): { days: number[]; lows: number[]; highs: number[] } {
  const days = Array.from({ length: count }, (_, i) => FIRST + i);
  const lows = days.map((_, i) => low(i));
  return { days, lows, highs: lows.map((value) => value + 10) };
}

describe('average year', () => {
  test('averages the years and leaves 29 February out', () => {
    const leap = civilDay(2020, 2, 29) - FIRST;
    const year = averageYear(readings(731, (i) => (i === leap ? 99 : i < 365 ? 4 : 8)));
    expect(year?.years).toEqual([2019, 2020]);
    expect(Math.max(...(year?.lows ?? []))).toBe(6);
    expect(Math.min(...(year?.lows ?? []))).toBe(6);
    expect(year?.highs[100]).toBe(16);
    expect(year?.gaps).toEqual([]);
  });

  test('fills five missing days by a straight line and names six without filling', () => {
    const missing = new Set([100, 101, 102, 103, 104, 200, 201, 202, 203, 204, 205]);
    const year = averageYear(readings(365, (i) => (missing.has(i) ? Number.NaN : i)));
    expect(year?.gaps).toEqual([
      { from: FIRST + 100, to: FIRST + 104, filled: true },
      { from: FIRST + 200, to: FIRST + 205, filled: false },
    ]);
    expect(year?.lows[102]).toBeCloseTo(102, 10);
    expect(year?.lows[203]).toBeNaN();
    expect(year?.blankDays).toBe(6);
  });

  test('rows left out altogether are gaps too, and other years cover them', () => {
    const all = readings(730, () => 5);
    const keep = all.days.map((_, i) => i).filter((i) => i < 40 || i > 60);
    const year = averageYear({
      days: keep.map((i) => all.days[i] ?? 0),
      lows: keep.map((i) => all.lows[i] ?? 0),
      highs: keep.map((i) => all.highs[i] ?? 0),
    });
    expect(year?.gaps).toEqual([{ from: FIRST + 40, to: FIRST + 60, filled: false }]);
    expect(year?.blankDays).toBe(0);
  });

  test('a low or a high missing at either end is a gap that is not filled', () => {
    const record = readings(20, (i) => (i < 2 ? Number.NaN : 3));
    record.highs[19] = Number.NaN;
    const year = averageYear(record);
    expect(year?.gaps).toEqual([
      { from: FIRST, to: FIRST + 1, filled: false },
      { from: FIRST + 19, to: FIRST + 19, filled: false },
    ]);
    expect(year?.lows[1]).toBeNaN();
    expect(year?.lows[19]).toBe(3);
    expect(year?.highs[19]).toBeNaN();
    expect(year?.blankDays).toBe(365 - 17);
  });

  test('a gap may begin on the second day and be one day long', () => {
    const year = averageYear(readings(10, (i) => (i === 1 ? Number.NaN : i)));
    expect(year?.gaps).toEqual([{ from: FIRST + 1, to: FIRST + 1, filled: true }]);
    expect(year?.lows[1]).toBe(1);
  });

  test('one day is a record, and rows may come in any order', () => {
    const one = averageYear({ days: [FIRST], lows: [2], highs: [9] });
    expect([one?.lows[0], one?.highs[0], one?.blankDays, one?.gaps]).toEqual([2, 9, 364, []]);
    const days = [civilDay(2021, 1, 1), civilDay(2019, 1, 1), civilDay(2020, 1, 1)];
    const mixed = averageYear({ days, lows: [3, 4, 8], highs: [10, 10, 10] });
    expect(mixed?.years).toEqual([2019, 2020, 2021]);
    expect(mixed?.lows[0]).toBe(5);
  });

  test('without a nursery every day is the weather', () => {
    expect([...meansFrom([2, 4], [8, 10], FIRST, 2)]).toEqual([5, 7]);
    expect([...meansFrom([2], [8], FIRST, 0)]).toEqual([]);
  });

  test('nothing gives nothing', () => {
    expect(averageYear({ days: [], lows: [], highs: [] })).toBeUndefined();
  });

  test('calendar days run 0 to 364 and the leap day counts as the 28th', () => {
    expect(calendarIndex(civilDay(2024, 1, 1))).toBe(0);
    expect(calendarIndex(civilDay(2024, 2, 29))).toBe(calendarIndex(civilDay(2024, 2, 28)));
    expect(calendarIndex(civilDay(2024, 3, 1))).toBe(calendarIndex(civilDay(2023, 3, 1)));
    expect(calendarIndex(civilDay(2024, 12, 31))).toBe(364);
  });

  test('a nursery takes the place of the weather until planting out', () => {
    const lows = new Float64Array(365).fill(2);
    const highs = new Float64Array(365).fill(8);
    const means = meansFrom(lows, highs, FIRST, 4, { plantedOut: FIRST + 2, mean: 16 });
    expect([...means]).toEqual([16, 16, 5, 5]);
  });
});

describe('monthly means', () => {
  const month = fc.array(fc.double({ min: -20, max: 35, noNaN: true }), { minLength: 12, maxLength: 12 });
  const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

  function expectBack(wave: (i: number) => number): void {
    let first = 0;
    const means = lengths.map((length) => {
      const days = Array.from({ length }, (_, i) => wave(first + i));
      first += length;
      return days.reduce((sum, value) => sum + value, 0) / length;
    });
    dailyFromMonthlyMeans(means).forEach((value, i) => {
      expect(Math.abs(value - wave(i))).toBeLessThan(1e-9);
    });
  }

  test('every month keeps its mean', () => {
    fc.assert(
      fc.property(month, (means) => {
        const daily = dailyFromMonthlyMeans(means);
        let first = 0;
        lengths.forEach((length, i) => {
          const mean = daily.slice(first, first + length).reduce((sum, value) => sum + value, 0) / length;
          expect(mean).toBeCloseTo(means[i] ?? Number.NaN, 8);
          first += length;
        });
      }),
    );
  });

  test('a smooth wave comes back within a tenth of a degree, December joining January', () => {
    const wave = (i: number): number => 12 - 11 * Math.cos((2 * Math.PI * (i - 20)) / 365);
    let first = 0;
    const means = lengths.map((length) => {
      let sum = 0;
      for (let i = first; i < first + length; i += 1) sum += wave(i);
      first += length;
      return sum / length;
    });
    const daily = dailyFromMonthlyMeans(means);
    daily.forEach((value, i) => {
      expect(Math.abs(value - wave(i))).toBeLessThan(0.1);
    });
    expect(Math.abs((daily[364] ?? 0) - (daily[0] ?? 99))).toBeLessThan(0.3);
  });

  test.each([1, 2, 3, 4, 5])('a wave that swings %d times a year comes back whole, whatever its phase', (times) => {
    expectBack((i) => 9 + 4 * Math.cos((2 * Math.PI * times * (i + 3.7)) / 365));
  });

  test('a wave of two months comes back whole when it swings from middle of January to middle of January', () => {
    // Noon of 16 January is 15.5 days into the year.
    expectBack((i) => 9 + 4 * Math.cos((2 * Math.PI * 6 * (i + 0.5 - 15.5)) / 365));
  });

  test('a missing month gives nothing', () => {
    expect(dailyFromMonthlyMeans([1, 2, 3])).toHaveLength(0);
    expect(dailyFromMonthlyMeans(lengths.map((_, i) => (i === 4 ? Number.NaN : 10)))).toHaveLength(0);
  });
});

describe('degree-days', () => {
  test('mean above base, cut at the upper limit, never below nought', () => {
    expect(degreeDays(10, 20, 5)).toBe(10);
    expect(degreeDays(10, 20, 5, 12)).toBe(7);
    expect(degreeDays(-5, 5, 5)).toBe(0);
    expect(degreeDays(10, 20, 5, Number.NaN)).toBe(10);
    expect(degreeDays(10, Number.NaN, 5)).toBeNaN();
    expect(degreeDays(20, 30, 10, 5)).toBe(0);
  });

  test('the day that reaches a sum is the first at whose end the sum is there', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -5, max: 30, noNaN: true }), { minLength: 1, maxLength: 80 }),
        fc.double({ min: 0.1, max: 300, noNaN: true }),
        (means, wanted) => {
          const day = dayReachingSum(means, 0, wanted, 4, 20);
          const total = sumDegreeDays(means, 0, means.length, 4, 20);
          if (Number.isNaN(day)) expect(total).toBeLessThan(wanted);
          else {
            expect(sumDegreeDays(means, 0, day + 1, 4, 20)).toBeGreaterThanOrEqual(wanted);
            expect(sumDegreeDays(means, 0, day, 4, 20)).toBeLessThan(wanted);
          }
        },
      ),
    );
  });

  test('a missing day on the way gives no answer', () => {
    expect(dayReachingSum([10, Number.NaN, 10], 0, 12, 4)).toBeNaN();
    expect(dayReachingSum([10, Number.NaN, 10], 0, 5, 4)).toBe(0);
  });
});

describe('frost', () => {
  test('finds the last of spring and the first of autumn, and marks half-years not recorded', () => {
    const frosts = new Set([
      civilDay(2019, 4, 20) - FIRST,
      civilDay(2019, 5, 2) - FIRST,
      civilDay(2019, 10, 9) - FIRST,
    ]);
    const record = readings(400, (i) => (frosts.has(i) ? 0 : 6));
    const years = frostYears(record.days, record.lows, 0, false);
    expect(years[0]).toEqual({
      year: 2019,
      lastSpring: civilDay(2019, 5, 2),
      firstAutumn: civilDay(2019, 10, 9),
      springKnown: true,
      autumnKnown: true,
    });
    expect(years[1]?.springKnown).toBe(false);
    expect(years[1]?.lastSpring).toBeNaN();
  });

  test('in the south spring runs from July', () => {
    const frosts = new Set([civilDay(2019, 5, 20) - FIRST, civilDay(2019, 9, 15) - FIRST]);
    const record = readings(420, (i) => (frosts.has(i) ? -1 : 6));
    const year = frostYears(record.days, record.lows, 0, true)[0];
    expect(year?.firstAutumn).toBe(civilDay(2019, 5, 20));
    expect(year?.lastSpring).toBe(civilDay(2019, 9, 15));
    expect(year?.springKnown).toBe(true);
  });

  test('the date at a risk has that risk, in spring and autumn', () => {
    const fit = fitFrostDates([110, 95, 102, 99, 120, Number.NaN]);
    expect(fit.frostShare).toBeCloseTo(5 / 6, 14);
    for (const risk of [0.05, 0.1, 0.5, 0.8]) {
      expect(chanceOfLaterFrost(fit, springDateAtRisk(fit, risk))).toBeCloseTo(risk, 12);
      expect(chanceOfEarlierFrost(fit, autumnDateAtRisk(fit, risk))).toBeCloseTo(risk, 12);
    }
    expect(springDateAtRisk(fit, 0.9)).toBeNaN();
  });

  test('no frost ever is no risk, one frost has no spread, the same date every year is certain', () => {
    expect(chanceOfLaterFrost(fitFrostDates([Number.NaN, Number.NaN]), 100)).toBe(0);
    expect(chanceOfLaterFrost(fitFrostDates([100]), 90)).toBeNaN();
    const same = fitFrostDates([100, 100, 100]);
    expect(chanceOfLaterFrost(same, 99)).toBe(1);
    expect(chanceOfLaterFrost(same, 100)).toBe(0);
  });

  test('a table made from a distribution gives the distribution back', () => {
    const fit = { mean: 92, deviation: 15, frostShare: 1 };
    const levels = [0.1, 0.3, 0.5, 0.9].map((chance) => ({ chance, day: springDateAtRisk(fit, chance) }));
    expect(fitFrostLevels(levels).mean).toBeCloseTo(92, 10);
    expect(fitFrostLevels(levels).deviation).toBeCloseTo(15, 10);
  });
});
