// Seed ageing, moisture, storage life, germination by temperature and the standards: order, inverses, edges, and the
// ranking of a published storage trial.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emergenceDays, THERMAL_TIMES_TO_EMERGENCE } from '../../engine/agronomy/emergence.ts';
import { daysToEmergence, germinationRow, normalSeedlings } from '../../engine/agronomy/germination.ts';
import {
  GERMINATION_STANDARDS,
  germinationStandard,
  isBelowStandard,
} from '../../engine/agronomy/germination-standards.ts';
import { GERMINATION_BY_TEMPERATURE, GERMINATION_TEMPERATURES } from '../../engine/agronomy/germination-table.ts';
import { germinationByStorageLife, STORAGE_LIVES } from '../../engine/agronomy/seed-life.ts';
import { humidityAtMoisture, seedMoisture } from '../../engine/agronomy/seed-moisture.ts';
import {
  daysUntilViability,
  halfViabilityPeriod,
  moistureForStorage,
  seedViability,
  temperatureForStorage,
} from '../../engine/agronomy/seed-viability.ts';
import { VIABILITY_CONSTANTS } from '../../engine/agronomy/seed-viability-constants.ts';

const ONION = { ke: 6.975, cw: 3.47, ch: 0.04, cq: 0.000428 }; // Ellis & Roberts 1981
const age = (germination: number, days: number, moisture: number, temperature: number): number =>
  seedViability(germination, days, moisture, temperature, ONION.ke, ONION.cw, ONION.ch, ONION.cq);

const share = fc.double({ min: 0.55, max: 0.99, noNaN: true });
const moisture = fc.double({ min: 0.05, max: 0.2, noNaN: true });
const temperature = fc.double({ min: -15, max: 40, noNaN: true });

describe('viability', () => {
  test('falls with age, moisture and warmth', () => {
    fc.assert(
      fc.property(share, fc.double({ min: 1, max: 4000, noNaN: true }), moisture, temperature, (g, days, m, t) => {
        const now = age(g, days, m, t);
        expect(now).toBeLessThanOrEqual(g + 1e-12);
        expect(age(g, days + 10, m, t)).toBeLessThanOrEqual(now);
        expect(age(g, days, m + 0.01, t)).toBeLessThanOrEqual(now);
        expect(age(g, days, m, t + 2)).toBeLessThanOrEqual(now);
      }),
    );
  });

  test('days, moisture and temperature for a wanted level lead back to it', () => {
    fc.assert(
      fc.property(share, moisture, fc.double({ min: 0, max: 35, noNaN: true }), (g, m, t) => {
        const wanted = g * 0.8;
        const days = daysUntilViability(g, wanted, m, t, ONION);
        expect(age(g, days, m, t)).toBeCloseTo(wanted, 10);
        expect(moistureForStorage(g, wanted, days, t, ONION)).toBeCloseTo(m, 10);
        expect(temperatureForStorage(g, wanted, days, m, ONION)).toBeCloseTo(t, 7);
        expect(age(g, halfViabilityPeriod(g, m, t, ONION), m, t)).toBeCloseTo(0.5, 10);
      }),
    );
  });

  test('a test of 100 % counts as 99.5 %, of 0 % stays 0', () => {
    expect(age(1, 0, 0.08, 20)).toBeCloseTo(0.995, 12);
    expect(age(0, 100, 0.08, 20)).toBe(0);
    expect(age(0.9, 0, 0.08, 20)).toBeCloseTo(0.9, 12);
  });

  test('impossible inputs have no answer', () => {
    expect(age(0.9, -1, 0.08, 20)).toBeNaN();
    expect(age(1.1, 10, 0.08, 20)).toBeNaN();
    expect(age(0.9, 10, 0, 20)).toBeNaN();
    expect(daysUntilViability(0.5, 0.9, 0.08, 20, ONION)).toBeNaN();
  });

  test('ranks the six warm and cool, dry and damp stores of the onion trial as they ranked', () => {
    // Justice & Bass 1978, USDA Agriculture Handbook 506, Table 13: onion of 80 % after 250 days.
    const trial = [
      { temperature: 10, humidity: 0.51, after: 0.75 },
      { temperature: 10, humidity: 0.81, after: 0.64 },
      { temperature: 26.7, humidity: 0.66, after: 0.37 },
      { temperature: 26.7, humidity: 0.78, after: 0 },
    ];
    const predicted = trial.map((store) =>
      age(0.8, 250, seedMoisture(store.humidity, store.temperature, 0.24), store.temperature),
    );
    for (let i = 1; i < trial.length; i += 1) {
      expect(trial[i]?.after).toBeLessThan(trial[i - 1]?.after ?? 0);
      expect(predicted[i]).toBeLessThan(predicted[i - 1] ?? 0);
    }
  });

  test('every usable set gives dry, cool seed at least two months and answers to moisture and cold', () => {
    expect(VIABILITY_CONSTANTS).toHaveLength(34);
    for (const set of VIABILITY_CONSTANTS) {
      const dry = halfViabilityPeriod(0.9, 0.06, 10, set);
      expect(dry, set.crop).toBeGreaterThan(60);
      expect(halfViabilityPeriod(0.9, 0.12, 10, set), set.crop).toBeLessThan(dry / 2);
      expect(halfViabilityPeriod(0.9, 0.06, 25, set), set.crop).toBeLessThan(dry);
    }
  });
});

describe('moisture', () => {
  test('humidity and moisture undo each other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (humidity, t, oil) => {
          expect(humidityAtMoisture(seedMoisture(humidity, t, oil), t, oil)).toBeCloseTo(humidity, 12);
        },
      ),
    );
  });

  test('damper air wets, oil and warmth dry', () => {
    expect(seedMoisture(0.5, 20, 0.2)).toBeGreaterThan(seedMoisture(0.4, 20, 0.2));
    expect(seedMoisture(0.5, 20, 0.4)).toBeLessThan(seedMoisture(0.5, 20, 0.2));
    expect(seedMoisture(0.5, 30, 0.2)).toBeLessThan(seedMoisture(0.5, 20, 0.2));
    expect(seedMoisture(1, 20, 0.2)).toBeNaN();
    expect(seedMoisture(0.5, 20, 1)).toBeNaN();
  });
});

describe('storage life', () => {
  test('seed of 90 % is down to 70 % at the end of its life, and half way in between in probits', () => {
    expect(germinationByStorageLife(0.9, 365.25, 1)).toBeCloseTo(0.7, 10);
    expect(germinationByStorageLife(0.9, 3 * 365.25, 3)).toBeCloseTo(0.7, 10);
    const half = germinationByStorageLife(0.9, 365.25 / 2, 1);
    expect(half).toBeGreaterThan(0.8);
    expect(half).toBeLessThan(0.83);
  });

  test('no answer without a life, and onion keeps the least', () => {
    expect(germinationByStorageLife(0.9, 100, 0)).toBeNaN();
    expect(germinationByStorageLife(0.9, -1, 1)).toBeNaN();
    const lives = STORAGE_LIVES.map((life) => life.handbook).filter((years) => !Number.isNaN(years));
    expect(STORAGE_LIVES.find((life) => life.kind === 'Onion')?.handbook).toBe(Math.min(...lives));
  });
});

describe('germination by temperature', () => {
  test('gives the table at its temperatures and a rate between neighbours', () => {
    for (const row of GERMINATION_BY_TEMPERATURE) {
      GERMINATION_TEMPERATURES.forEach((t, i) => {
        const days = row.days[i] ?? Number.NaN;
        if (Number.isNaN(days)) expect(daysToEmergence(row, t)).toBeNaN();
        else expect(daysToEmergence(row, t)).toBeCloseTo(days, 12);
      });
    }
    const onion = germinationRow('Onion');
    expect(onion).toBeDefined();
    if (onion === undefined) return;
    expect(daysToEmergence(onion, 12.5)).toBeCloseTo(2 / (1 / 13 + 1 / 7), 12);
    expect(daysToEmergence(onion, 41)).toBeNaN();
    expect(daysToEmergence(onion, -1)).toBeNaN();
    expect(daysToEmergence(onion, Number.NaN)).toBeNaN();
    expect(daysToEmergence(onion, 37)).toBeNaN();
    expect(normalSeedlings(onion, 31)).toBeCloseTo(0.8 * 0.91 + 0.2 * 0.73, 12);
    expect(normalSeedlings(onion, 40.1)).toBeNaN();
    expect(normalSeedlings(onion, -0.1)).toBeNaN();
    expect(normalSeedlings(onion, Number.NaN)).toBeNaN();
  });

  test('the table answers at its own temperatures beside an untested one: cabbage at 0, 15, 25 and 40 C', () => {
    const cabbage = germinationRow('Cabbage');
    expect(cabbage).toBeDefined();
    if (cabbage === undefined) return;
    expect([0, 15, 25, 40].map((t) => normalSeedlings(cabbage, t))).toEqual([0, 0.93, 0.99, 0]);
    expect([15.1, 24.9].map((t) => normalSeedlings(cabbage, t))).toEqual([Number.NaN, Number.NaN]);
    expect([30, 30.1].map((t) => daysToEmergence(cabbage, t))).toEqual([4, Number.NaN]);
  });

  test('untested shares stay blank: cabbage at 20 C', () => {
    const cabbage = germinationRow('Cabbage');
    expect(cabbage === undefined ? 0 : normalSeedlings(cabbage, 20)).toBeNaN();
    expect(germinationRow('Nettle')).toBeUndefined();
  });
});

describe('emergence', () => {
  test('no answer at or below the base', () => {
    expect(emergenceDays(2.5, 2.5, 80)).toBeNaN();
    expect(emergenceDays(1, 2.5, 80)).toBeNaN();
    expect(emergenceDays(10, 2.5, -1)).toBeNaN();
  });

  test('warmer is faster, up to where the line holds', () => {
    for (const row of THERMAL_TIMES_TO_EMERGENCE) {
      expect(emergenceDays(22, row.base, row.thermalTime), row.crop).toBeLessThan(
        emergenceDays(16, row.base, row.thermalTime),
      );
    }
  });
});

describe('standards', () => {
  test('68 kinds, each a share', () => {
    const shares = Object.values(GERMINATION_STANDARDS);
    expect(shares).toHaveLength(68);
    for (const value of shares) {
      expect(value).toBeGreaterThanOrEqual(0.4);
      expect(value).toBeLessThanOrEqual(0.8);
    }
  });

  test('a lot is below its standard only when it is lower', () => {
    const onion = germinationStandard('Onion');
    expect(isBelowStandard(0.69, onion)).toBe(true);
    expect(isBelowStandard(0.7, onion)).toBe(false);
    expect(isBelowStandard(Number.NaN, onion)).toBe(false);
    expect(germinationStandard('Nettle')).toBeNaN();
    expect(germinationStandard('toString')).toBeNaN();
  });
});
