// Frost dates at the edges of the half-years, records with days missing, fits by hand and the ends of the chances.
import { describe, expect, it } from 'vitest';
import {
  autumnDateAtRisk,
  chanceOfEarlierFrost,
  chanceOfLaterFrost,
  dayNumberOf,
  type FrostYear,
  fitFrostDates,
  fitFrostLevels,
  frostYears,
  springDateAtRisk,
} from '../../engine/agronomy/frost.ts';
import { civilDay } from '../../engine/values/civil.ts';

const NONE = Number.NaN;

interface Record {
  readonly days: number[];
  readonly lows: number[];
}

/** Every day of some years at 6 degrees, but for the frosts named; days in `missing` have no low. */
function record(from: number, to: number, frosts: readonly number[] = [], missing: readonly number[] = []): Record {
  const days = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  return { days, lows: days.map((day) => (missing.includes(day) ? NONE : frosts.includes(day) ? -1 : 6)) };
}

function firstYear({ days, lows }: Record, southern = false): FrostYear | undefined {
  return frostYears(days, lows, 0, southern)[0];
}

const run = (from: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + i);

describe('half-years', () => {
  const whole = [civilDay(2019, 1, 1), civilDay(2019, 12, 31)] as const;

  it.each([
    ['1 January', civilDay(2019, 1, 1), 'lastSpring'],
    ['31 July', civilDay(2019, 7, 31), 'lastSpring'],
    ['1 August', civilDay(2019, 8, 1), 'firstAutumn'],
    ['31 December', civilDay(2019, 12, 31), 'firstAutumn'],
  ] as const)('a frost on %s counts in its half-year alone', (_, day, half) => {
    const year = firstYear(record(...whole, [day]));
    expect(year?.[half]).toBe(day);
    expect(year?.[half === 'lastSpring' ? 'firstAutumn' : 'lastSpring']).toBeNaN();
  });

  it('a year without any frost has neither date', () => {
    expect(firstYear(record(...whole))).toEqual({
      year: 2019,
      lastSpring: NONE,
      firstAutumn: NONE,
      springKnown: true,
      autumnKnown: true,
    });
  });

  it.each([
    ['15 of 150 days', 14, true],
    ['16 of 150 days', 15, false],
  ])('a southern autumn with %s missing, its last among them', (_, count, known) => {
    // February to June of 2019 is 28 + 31 + 30 + 31 + 30 = 150 days, and a tenth of them 15.
    const missing = [...run(civilDay(2019, 3, 1), count), civilDay(2019, 6, 30)];
    expect(firstYear(record(...whole, [], missing), true)?.autumnKnown).toBe(known);
  });

  it.each([
    ['21 of 212 days', 21, true],
    ['22 of 212 days', 22, false],
  ])('a northern spring with %s missing', (_, count, known) => {
    expect(firstYear(record(...whole, [], run(civilDay(2019, 2, 1), count)))?.springKnown).toBe(known);
  });

  it('come year by year whatever the order of the rows, and rows without a day or a low are passed over', () => {
    const days = [civilDay(2021, 5, 1), civilDay(2019, 5, 1), NONE, civilDay(2020, 5, 1), civilDay(2018, 5, 1)];
    const years = frostYears(days, [-1, -1, -1, -1, NONE], 0, false);
    expect(years.map((year) => year.year)).toEqual([2019, 2020, 2021]);
    expect(years[1]?.lastSpring).toBe(civilDay(2020, 5, 1));
  });

  it('are not made of rows that stop short', () => {
    expect(frostYears([], [], 0, false)).toEqual([]);
    expect(dayNumberOf(civilDay(2020, 1, 3), 2019)).toBe(368);
  });
});

describe('fits', () => {
  it('by hand: days 100, 104 and 108 have mean 104 and deviation 4', () => {
    expect(fitFrostDates([100, 104, 108])).toEqual({ mean: 104, deviation: 4, frostShare: 1 });
    expect(fitFrostDates([NONE, 100, 104, 108]).frostShare).toBe(0.75);
  });

  it('without a frost there is neither mean nor deviation, with one no deviation', () => {
    expect(fitFrostDates([NONE, NONE])).toEqual({ mean: NONE, deviation: NONE, frostShare: 0 });
    expect(fitFrostDates([100])).toEqual({ mean: 100, deviation: NONE, frostShare: 1 });
  });

  it('of a printed table by hand: half at day 100, 15.8655 % at 110, 84.1345 % at 93', () => {
    // Deviates 0, 1 and -1: slope (110 - 93) / 2 = 8.5, through the mean of the three days, 101.
    const fit = fitFrostLevels([
      { day: 100, chance: 0.5 },
      { day: 110, chance: 0.158655253931457 },
      { day: 93, chance: 0.841344746068543 },
    ]);
    expect(fit.mean).toBeCloseTo(101, 9);
    expect(fit.deviation).toBeCloseTo(8.5, 9);
  });
});

describe('chances', () => {
  const everyYear = { mean: 100, deviation: 10, frostShare: 1 };
  const never = { mean: NONE, deviation: NONE, frostShare: 0 };

  it.each([
    ['no risk at all', everyYear, 0],
    ['less than no risk', everyYear, -0.1],
    ['a certain frost', everyYear, 1],
    ['more than certain', everyYear, 1.1],
    ['half where half the years have a frost', { ...everyYear, frostShare: 0.5 }, 0.5],
    ['a place without frost', never, 0.1],
  ])('no date has %s', (_, fit, risk) => {
    expect(springDateAtRisk(fit, risk)).toBeNaN();
    expect(autumnDateAtRisk(fit, risk)).toBeNaN();
  });

  it('one probit before the mean in autumn, and after it in spring, has 15.8655 %', () => {
    expect(springDateAtRisk(everyYear, 0.158655253931457)).toBeCloseTo(110, 9);
    expect(autumnDateAtRisk(everyYear, 0.158655253931457)).toBeCloseTo(90, 9);
  });

  it('a place without frost has none in autumn either', () => {
    expect(chanceOfEarlierFrost(never, 300)).toBe(0);
    expect(chanceOfLaterFrost(never, 100)).toBe(0);
  });

  it('the same date every year has come by that day and not the day before', () => {
    const same = { mean: 280, deviation: 0, frostShare: 0.5 };
    expect([279, 280, 281].map((day) => chanceOfEarlierFrost(same, day))).toEqual([0, 0.5, 0.5]);
  });
});
