// Coefficient curve, its mean and sum, the climate adjustment, weekly water.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  availableWater,
  daysBetweenWaterings,
  dryDown,
  readilyAvailableWater,
  stressFactor,
} from '../../engine/agronomy/soil-water.ts';
import {
  climateCoefficient,
  coefficientDays,
  cropCoefficient,
  meanCoefficient,
  scaledStages,
  seasonLength,
  waterVolume,
  weeklyWater,
} from '../../engine/agronomy/water.ts';
import { numberOf, readTable, textOf } from '../reference/table.ts';

/** Dry onion, FAO-56 tables 11 and 12, Mediterranean, April. */
const STAGES = { initial: 15, development: 25, middle: 70, late: 40 };
const COEFFICIENTS = { initial: 0.7, middle: 1.05, end: 0.75 };

describe('the coefficient curve', () => {
  it('runs flat, up, flat, down', () => {
    const at = (day: number): number => cropCoefficient(day, STAGES, COEFFICIENTS);
    expect([0, 15, 40, 110, 150].map(at)).toEqual(
      [0.7, 0.7, 1.05, 1.05, 0.75].map((value) => expect.closeTo(value, 12)),
    );
    expect(at(27.5)).toBeCloseTo(0.875, 12);
    expect(at(130)).toBeCloseTo(0.9, 12);
    expect(at(-1)).toBeNaN();
    expect(at(151)).toBeNaN();
  });

  it('has an area that agrees with adding up small steps', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 140, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        (from, span) => {
          const to = Math.min(150, from + span);
          const steps = 2000;
          let sum = 0;
          for (let step = 0; step < steps; step += 1) {
            sum +=
              cropCoefficient(from + ((step + 0.5) * (to - from)) / steps, STAGES, COEFFICIENTS) *
              ((to - from) / steps);
          }
          expect(coefficientDays(from, to, STAGES, COEFFICIENTS)).toBeCloseTo(sum, 4);
        },
      ),
    );
  });

  it('counts nothing outside the season', () => {
    expect(coefficientDays(-10, 0, STAGES, COEFFICIENTS)).toBe(0);
    expect(coefficientDays(150, 170, STAGES, COEFFICIENTS)).toBe(0);
    expect(meanCoefficient(10, 10, STAGES, COEFFICIENTS)).toBeNaN();
    expect(coefficientDays(Number.NaN, 10, STAGES, COEFFICIENTS)).toBeNaN();
  });

  it('copes with a stage of no days', () => {
    const green = { initial: 90, development: 45, middle: 40, late: 0 };
    expect(cropCoefficient(175, green, COEFFICIENTS)).toBeCloseTo(1.05, 12);
    expect(coefficientDays(0, 175, green, COEFFICIENTS)).toBeCloseTo(90 * 0.7 + 45 * 0.875 + 40 * 1.05, 10);
  });

  it('stretches to the season a grower has', () => {
    const stretched = scaledStages(STAGES, 120);
    expect(seasonLength(stretched)).toBeCloseTo(120, 10);
    expect(stretched.middle).toBeCloseTo(56, 10);
  });
});

describe('the climate adjustment', () => {
  it('changes nothing at the standard climate and refuses what lies outside its range', () => {
    expect(climateCoefficient(1.05, 2, 0.45, 0.4)).toBeCloseTo(1.05, 12);
    expect(climateCoefficient(1.05, 0.5, 0.45, 0.4)).toBeNaN();
    expect(climateCoefficient(1.05, 2, 0.9, 0.4)).toBeNaN();
    expect(climateCoefficient(1.05, 2, 0.45, 0.05)).toBeNaN();
  });
});

describe('weekly water', () => {
  const reference = Array.from({ length: 30 }, () => 5);
  const plan = { stages: STAGES, coefficients: COEFFICIENTS, area: 11.6, reference };

  it('covers the season and adds up to the area under the curve', () => {
    const weeks = weeklyWater(plan);
    expect(weeks).toHaveLength(22);
    const total = weeks.reduce((sum, week) => sum + week.crop, 0);
    expect(total).toBeCloseTo(5 * coefficientDays(0, 150, STAGES, COEFFICIENTS), 8);
    for (const week of weeks) expect(week.litres).toBeCloseTo((week.need * 11.6) / 0.9, 8);
  });

  it('gives less for rain and never below nothing', () => {
    const [first, second] = weeklyWater({ ...plan, rain: [10, 100], rainServes: 0.5 });
    expect(first?.need).toBeCloseTo(0.7 * 35 - 5, 10);
    expect(second?.need).toBe(0);
  });

  it('stops where reference figures stop', () => {
    expect(weeklyWater({ ...plan, reference: [5, 5] })).toHaveLength(2);
    expect(weeklyWater({ ...plan, reference: [] })).toEqual([]);
  });

  it('is a litre for a millimetre on a square metre', () => {
    expect(waterVolume(1, 1)).toBe(1);
    expect(waterVolume(-1, 1)).toBeNaN();
  });
});

describe('a slip in print', () => {
  it('is green gram alone, whose stages add to 100 days where 110 are printed', () => {
    const slips = readTable('crop-stage-lengths').filter(
      (row) =>
        seasonLength({
          initial: numberOf(row, 'initial'),
          development: numberOf(row, 'development'),
          middle: numberOf(row, 'middle'),
          late: numberOf(row, 'late'),
        }) !== numberOf(row, 'printed_total'),
    );
    expect(slips.map((row) => textOf(row, 'crop'))).toEqual(['green gram cowpeas']);
  });
});

describe('the root zone', () => {
  it('dries to the wilting point and never beyond', () => {
    const days = dryDown(
      0,
      Array.from({ length: 400 }, () => 6),
      68,
      0.3,
    );
    expect(days.at(-1)?.drawnAfter).toBeLessThanOrEqual(68);
    expect(days.at(-1)?.stress).toBeLessThan(0.01);
    days.slice(1).forEach((day, index) => {
      expect(day.drawnBefore).toBe(days[index]?.drawnAfter);
      expect(day.stress).toBeLessThanOrEqual(days[index]?.stress ?? Number.NaN);
    });
  });

  it('lasts an onion on silt three days in high summer', () => {
    expect(daysBetweenWaterings(68, 0.3, 6)).toBe(3);
    expect(daysBetweenWaterings(68, 0.3, 0)).toBeNaN();
  });

  it('has no answer for soils and crops that cannot be', () => {
    expect(availableWater(0.1, 0.2, 0.4)).toBeNaN();
    expect(readilyAvailableWater(68, 1.2)).toBeNaN();
    expect(stressFactor(-1, 68, 0.3)).toBeNaN();
    expect(stressFactor(70, 68, 0.3)).toBe(0);
  });
});
