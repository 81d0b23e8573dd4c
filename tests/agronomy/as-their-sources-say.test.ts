// Constants that are taken as they stand from their sources: that a change to one is noticed. These say nothing of how well a model
// does, so they are no reference checks; what is told by a model and measured by others stands in tests/reference.

import { describe, expect, test } from 'vitest';
import { lightCaught } from '../../engine/agronomy/bulb-light.ts';
import { bulbing } from '../../engine/agronomy/bulbing.ts';
import { CURING_CONDITIONS } from '../../engine/agronomy/curing.ts';
import { emergenceDays } from '../../engine/agronomy/emergence.ts';
import { ONION_SHAPE, pieceMass } from '../../engine/agronomy/grades.ts';
import { GROWTH_AFTER_LODGING, LODGED_TO_PULL } from '../../engine/agronomy/harvest.ts';
import { onionDryWeight, onionLeafArea } from '../../engine/agronomy/leaf-growth.ts';
import { criticalHoursOfType } from '../../engine/agronomy/onion-types.ts';
import { clearYearsBetween, DISEASE_CLEAR_YEARS, earliestReturn } from '../../engine/agronomy/rotation.ts';
import { ONION_BANDS, packSpread, type SizeBand, US_ONION_SIZES } from '../../engine/agronomy/size-bands.ts';
import { squarenessFactor } from '../../engine/agronomy/yield-density.ts';
import { civilDay } from '../../engine/values/civil.ts';

const FIRST_DAY = civilDay(2026, 1, 1);
const constant = (mean: number): Float64Array => new Float64Array(365).fill(mean);
const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

describe('onions', () => {
  test('bulbing waits for 600 degree-days above 5 C where days are long (Lancaster et al. 1996, Annals of Botany 78: 423-430)', () => {
    const emergence = civilDay(2026, 4, 20);
    const { starts } = bulbing({
      latitude: 52,
      firstDay: FIRST_DAY,
      means: constant(15),
      emergence,
      criticalHours: 13.75,
    });
    expect(Math.abs((starts - emergence + 1) * 10 - 600)).toBeLessThanOrEqual(10);
  });

  test.each([
    [3.7, 69],
    [1.5, 45],
  ] as const)(
    'a bed with leaf area index %d catches %d %% of the light, within 5 (Brewster 2008, table 4.2)',
    (index, share) => {
      expect(Math.abs(100 * lightCaught(index) - share)).toBeLessThanOrEqual(5);
    },
  );

  test('leaf and weight at emergence (Brewster 2008, equations 4.17a and 4.17b)', () => {
    expect(onionLeafArea(0)).toBeCloseTo(0.5, 5);
    expect(onionDryWeight(0)).toBeCloseTo(0.00227, 5);
  });

  test('germination takes 80 degree-days above 2.5 C (Brewster 2008, equations 4.6 and 4.7)', () => {
    expect(emergenceDays(22.5, 2.5, 80)).toBeCloseTo(4, 9);
    expect(emergenceDays(7.5, 2.5, 80)).toBeCloseTo(16, 9);
  });

  test.each([
    ['short', 10, 12, 'Iowa State University Extension, long-day-type onion varieties'],
    ['short', 11, 13, 'Oregon State University Extension 2006'],
    ['short', 12, 12, 'Texas Cooperative Extension, Horticulture Update 2006'],
    ['intermediate', 12, 14, 'Iowa State University Extension, long-day-type onion varieties'],
    ['intermediate', 13, 14, 'Oregon State University Extension 2006'],
    ['long', 14, 16, 'common practice'],
  ] as const)('%s-day types wait for %d to %d hours (%s)', (type, from, to, _source) => {
    expect(criticalHoursOfType(type)).toBeGreaterThanOrEqual(from);
    expect(criticalHoursOfType(type)).toBeLessThanOrEqual(to);
  });

  test('a medium bulb of 2.5 in weighs 110 g (USDA Standard Reference 28)', () => {
    expect(Math.abs(pieceMass(0.0635, ONION_SHAPE) * 1000 - 110)).toBeLessThan(0.5);
  });

  test('square planting gains 15 to 20 % over 8 to 1 (overwintered onions, 43 to 129 plants/m2)', () => {
    const gain = 100 * (squarenessFactor(1) / squarenessFactor(8) - 1);
    expect(gain).toBeGreaterThanOrEqual(15);
    expect(gain).toBeLessThanOrEqual(20);
  });

  test('are pulled with half the tops down, and grow by 25 to 33 % after (Hoepting, Cornell Cooperative Extension)', () => {
    expect(LODGED_TO_PULL).toBe(0.5);
    expect(GROWTH_AFTER_LODGING.low).toBe(0.25);
    expect(GROWTH_AFTER_LODGING.high).toBeCloseTo(0.33, 2);
  });
});

describe('after harvest', () => {
  test.each([
    // University of Massachusetts Extension, onions: harvest and curing; Oregon State University, drying and curing (days).
    ['Onion', [celsius(68), celsius(86)], [14, 20]],
    // Kitinoja & Kader, Small-scale postharvest handling practices (FAO ae075e05), curing table.
    ['Potato', [15, 20], [5, 10]],
    ['Sweet potato', [30, 32], [4, 7]],
  ] as const)('%s is cured as its source says', (crop, temperature, days) => {
    const kept = CURING_CONDITIONS.find((row) => row.crop === crop);
    for (const end of [0, 1] as const) {
      expect(kept?.temperature[end]).toBeCloseTo(temperature[end], 1);
      expect(kept?.days[end]).toBeCloseTo(days[end], 1);
    }
  });

  test('clear years between crops of a disease (University of Connecticut IPM, suggested rotation periods)', () => {
    const printed = [2, 2, 3, 7, 3, 2, 3, 2, 4, 3, 3];
    const clear = printed.map((_, index) =>
      clearYearsBetween(2024, earliestReturn(2024, DISEASE_CLEAR_YEARS[index]?.years ?? Number.NaN)),
    );
    expect(clear).toEqual(printed);
  });
});

describe('size classes', () => {
  function expectBands(
    bands: readonly SizeBand[],
    printed: readonly (readonly [name: string, from: number, to?: number])[],
    within: number,
  ): void {
    for (const [name, from, to] of printed) {
      const band = bands.find((one) => one.name === name);
      expect(Math.abs((band?.from ?? Number.NaN) * 1000 - from), name).toBeLessThanOrEqual(within);
      if (to !== undefined) expect(Math.abs((band?.to ?? Number.NaN) * 1000 - to), name).toBeLessThanOrEqual(within);
    }
  }

  test('onions, 7 CFR 51.3198, in mm', () => {
    expectBands(
      US_ONION_SIZES,
      [
        ['Small', 25.4, 57.2],
        ['Repacker/Prepacker', 44.5, 76.2],
        ['Medium', 50.8, 82.6],
        ['Large or Jumbo', 76.2],
        ['Colossal', 95.3],
      ],
      0.06,
    );
    expectBands(ONION_BANDS, [['Small', 38.1]], 0.06);
  });

  test('onions as sold in the north-west (Shock et al., Malheur Experiment Station)', () => {
    expectBands(
      ONION_BANDS,
      [
        ['Medium', 57, 76],
        ['Jumbo', 76, 102],
        ['Colossal', 102],
      ],
      0.5,
    );
  });

  test.each([
    [10, 5],
    [30, 15],
    [55, 20],
    [70, 30],
  ])('a pack whose smallest bulb is %d mm spreads by %d mm at most (UNECE standard FFV-25)', (smallest, spread) => {
    expect(packSpread(smallest / 1000) * 1000).toBeCloseTo(spread, 9);
  });
});
