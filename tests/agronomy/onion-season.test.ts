// The gates of bulbing, leaf growth, tops down and its refit, and whether a variety suits.

import { describe, expect, test } from 'vitest';
import { bulbing } from '../../engine/agronomy/bulbing.ts';
import { dayLength } from '../../engine/agronomy/day-length.ts';
import { firstDateReaching, longestDay } from '../../engine/agronomy/day-length-dates.ts';
import { leafGrowthDegreeDays, onionDryWeight, onionLeafArea } from '../../engine/agronomy/leaf-growth.ts';
import { criticalHoursOfType, DEFAULT_CRITICAL_HOURS, TYPE_BANDS } from '../../engine/agronomy/onion-types.ts';
import {
  dayLengthVerdict,
  hoursAndMinutes,
  seasonSuitability,
  suitability,
} from '../../engine/agronomy/suitability.ts';
import { refitTopsDown, topsDownDate } from '../../engine/agronomy/tops-down.ts';
import { civilDay } from '../../engine/values/civil.ts';

const FIRST_DAY = civilDay(2026, 1, 1);
const constant = (mean: number, count = 365): Float64Array => new Float64Array(count).fill(mean);
const season = { latitude: 45, firstDay: FIRST_DAY, means: constant(15), criticalHours: 14 };

describe('gates', () => {
  test('grown early, the plants wait for the days', () => {
    const early = bulbing({ ...season, emergence: civilDay(2026, 2, 1) });
    expect(early.heldBy).toBe('day length');
    expect(early.starts).toBe(firstDateReaching(45, 14, 2026));
    expect(early.thermalTimeMet).toBe(civilDay(2026, 2, 1) + 59);
  });

  test('sown late, the days wait for the plants', () => {
    const late = bulbing({ ...season, emergence: civilDay(2026, 5, 1) });
    expect(late.heldBy).toBe('thermal time');
    expect(late.starts).toBe(civilDay(2026, 5, 1) + 59);
    expect(late.dayLengthMet).toBe(civilDay(2026, 5, 1));
  });

  test('too late, and the days are short again', () => {
    const never = bulbing({ ...season, emergence: civilDay(2026, 7, 1) });
    expect(never.starts).toBeNaN();
    expect(dayLength(45, never.thermalTimeMet)).toBeLessThan(14);
    expect(seasonSuitability(never, 500)).toMatchObject({ verdict: 'never bulbs' });
  });

  test('never long enough, or never warm enough', () => {
    const dark = bulbing({ ...season, latitude: 20, emergence: civilDay(2026, 2, 1) });
    expect(dark.dayLengthMet).toBeNaN();
    expect(dark.heldBy).toBe('day length');
    expect(seasonSuitability(dark, 500).verdict).toBe('never bulbs');
    const cold = bulbing({ ...season, means: constant(6), emergence: civilDay(2026, 2, 1) });
    expect(cold.thermalTimeMet).toBeNaN();
    expect(cold.starts).toBeNaN();
    expect(cold.heldBy).toBe('thermal time');
    expect(seasonSuitability(cold, 500).verdict).toBe('never bulbs');
  });

  test('heat above 25 C does not hasten it', () => {
    const emergence = civilDay(2026, 5, 1);
    const warm = bulbing({ ...season, means: constant(25), emergence });
    const hot = bulbing({ ...season, means: constant(33), emergence });
    expect(hot.starts).toBe(warm.starts);
  });

  test('works south of the equator', () => {
    const south = bulbing({ ...season, latitude: -40, emergence: civilDay(2026, 6, 20) });
    expect(south.starts).toBe(firstDateReaching(-40, 14, 2026));
  });
});

describe('leaf growth', () => {
  test('earlier planting makes larger plants by the same bulbing date', () => {
    const bulbs = firstDateReaching(45, 14, 2026) - FIRST_DAY;
    const early = leafGrowthDegreeDays(season.means, 60, bulbs);
    const late = leafGrowthDegreeDays(season.means, 80, bulbs);
    expect(early - late).toBeCloseTo(20 * 9, 10);
    expect(onionLeafArea(early)).toBeGreaterThan(onionLeafArea(late) * 5);
    expect(onionDryWeight(early)).toBeGreaterThan(onionDryWeight(late) * 5);
  });

  test('degrees above 20 C do not count', () => {
    expect(leafGrowthDegreeDays(constant(30), 0, 10)).toBe(140);
  });
});

describe('tops down', () => {
  test('a refit from own dates predicts them again', () => {
    const means = constant(18);
    const started = civilDay(2026, 5, 1);
    const down = topsDownDate(means, FIRST_DAY, started, 950);
    const fit = refitTopsDown([{ firstDay: FIRST_DAY, means, bulbingStarted: started, topsDown: down }]);
    expect(topsDownDate(means, FIRST_DAY, started, fit.mean)).toBe(down);
    expect(fit.deviation).toBeNaN();
  });

  test('gives the mean and spread of several years, leaving out those without weather', () => {
    const record = (mean: number, days: number): Parameters<typeof refitTopsDown>[0][number] => ({
      firstDay: FIRST_DAY,
      means: constant(mean),
      bulbingStarted: FIRST_DAY + 120,
      topsDown: FIRST_DAY + 119 + days,
    });
    const fit = refitTopsDown([record(15, 90), record(20, 66), record(Number.NaN, 80)]);
    expect(fit.records).toBe(2);
    expect(fit.mean).toBeCloseTo((900 + 990) / 2, 9);
    expect(fit.deviation).toBeCloseTo(90 / Math.SQRT2, 9);
  });

  test('no bulbing, no tops down', () => {
    expect(topsDownDate(constant(15), FIRST_DAY, Number.NaN)).toBeNaN();
  });
});

describe('suits this farm', () => {
  const at38 = longestDay(38, 2026);

  test('within half an hour is marginal, not refused', () => {
    expect(dayLengthVerdict(14.8, 14.3)).toBe('yes');
    expect(dayLengthVerdict(14.8, 14.31)).toBe('marginal');
    expect(dayLengthVerdict(14.8, 15.29)).toBe('marginal');
    expect(dayLengthVerdict(14.8, 15.3)).toBe('no');
    expect(dayLengthVerdict(14.8, Number.NaN)).toBeUndefined();
  });

  test('near 38 degrees north: intermediate and 14-hour types suit, 16-hour ones do not, long-day ones are marginal', () => {
    expect(dayLengthVerdict(at38, DEFAULT_CRITICAL_HOURS.intermediate)).toBe('yes');
    expect(dayLengthVerdict(at38, 14)).toBe('yes');
    expect(dayLengthVerdict(at38, DEFAULT_CRITICAL_HOURS.long)).toBe('marginal');
    expect(dayLengthVerdict(at38, 16)).toBe('no');
  });

  test('the default of each type lies inside a published band', () => {
    for (const type of ['short', 'intermediate', 'long'] as const) {
      const hours = criticalHoursOfType(type);
      const inside = TYPE_BANDS.filter((band) => band.type === type && hours >= band.from && !(hours > band.to));
      expect(inside.length).toBeGreaterThan(0);
    }
    expect(criticalHoursOfType('round')).toBeNaN();
  });

  test('the reason says the hours', () => {
    const answer = suitability({ longestDay: at38, criticalHours: 16 });
    expect(answer?.verdict).toBe('no');
    expect(answer?.reason).toContain('14 h 48 min');
    expect(answer?.reason).toContain('16 h');
    expect(hoursAndMinutes(13.9999)).toBe('14 h');
  });

  test('too little leaf growth before bulbing, and off-latitude, tell against it', () => {
    const base = { longestDay: at38, criticalHours: 12 };
    expect(suitability(base)?.verdict).toBe('yes');
    expect(suitability({ ...base, leafGrowth: 12 })?.verdict).toBe('no');
    expect(suitability({ ...base, leafGrowth: 45 })?.verdict).toBe('marginal');
    expect(suitability({ ...base, leafGrowth: 250 })?.verdict).toBe('yes');
    expect(suitability({ ...base, latitude: 38, adaptedFrom: 25, adaptedTo: 35 })?.reason).toContain('25 to 35');
    expect(suitability({ ...base, latitude: -38, adaptedFrom: 32, adaptedTo: 42 })?.verdict).toBe('yes');
    expect(suitability({ longestDay: Number.NaN, criticalHours: 12 })).toBeUndefined();
  });

  test('a season suits, or makes small bulbs for want of time or growth', () => {
    const gates = bulbing({ ...season, emergence: civilDay(2026, 2, 1) });
    expect(seasonSuitability(gates, 300).verdict).toBe('suits');
    expect(seasonSuitability(gates, 5).verdict).toBe('bulbs too small');
    const late = bulbing({ ...season, emergence: civilDay(2026, 4, 26) });
    expect(seasonSuitability(late, 300).verdict).toBe('bulbs too small');
  });
});
