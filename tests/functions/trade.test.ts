// The trade's own functions as a grower writes them: with units and without, at the edges, and outside the range of their
// models. Values from outside stand with their source; the models' own checks are in tests/reference.

import { default as binomialCdf } from '@stdlib/stats-base-dists-binomial-cdf';
import { default as normalCdf } from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/values/civil.ts';
import { type Answer, answers } from './formulas.ts';

function answer(formula: string): Answer {
  return answers([formula])[0] ?? { is: 'blank' };
}

/** In the unit it is shown in; dates as civil days. */
function value(formula: string): number {
  const found = answer(formula);
  if (found.is !== 'value' || typeof found.value !== 'number') throw new Error(`${formula}: ${JSON.stringify(found)}`);
  return found.value;
}

describe('day length', () => {
  it('is the time from sunrise to sunset: 45 N on 15 June 2025, 15.598 h (astronomy-engine)', () => {
    expect(value('DAYLENGTH(45; DATE(2025; 6; 15)) / (1 h)')).toBeCloseTo(15.598, 2);
    expect(answer('DAYLENGTH(45; DATE(2025; 6; 15))')).toMatchObject({
      shown: expect.stringMatching(/^15\.[56]\d* h$/),
    });
  });

  it('is 24 h and 0 h beyond the polar circle, and refuses a latitude beyond the pole', () => {
    expect(value('DAYLENGTH(75; DATE(2025; 6; 21)) / (1 h)')).toBe(24);
    expect(value('DAYLENGTH(75; DATE(2025; 12; 21)) / (1 h)')).toBe(0);
    expect(answer('DAYLENGTH(91; DATE(2025; 6; 21))')).toMatchObject({ is: 'error' });
  });

  it('is reached on the dates of astronomy-engine, hours written with or without their unit', () => {
    expect(value('DAYLENGTHDATE(38; 14 h; 2025)')).toBe(civilDay(2025, 5, 8));
    expect(value('DAYLENGTHDATE(38; 14; 2025)')).toBe(civilDay(2025, 5, 8));
    expect(value('DAYLENGTHDATE(52; 16 h; 2025)')).toBe(civilDay(2025, 5, 22));
    expect(answer('DAYLENGTHDATE(38; 15 h; 2025)')).toEqual({ is: 'blank' });
  });
});

describe('seed', () => {
  it('ages by the published equation: sigma 741 days for onion at 8 % and 20 C (Ellis & Roberts 1981)', () => {
    const sigma = 10 ** (6.975 - 3.47 * Math.log10(8) - 0.04 * 20 - 0.000428 * 400);
    const expected = normalCdf(1.2815515655446004 - 365 / sigma, 0, 1);
    const formula = 'SEEDVIABILITY(90%; 365 days; 8%; 20 degC; 6.975; 3.47; 0.04; 0.000428)';
    expect(value(formula)).toBeCloseTo(expected, 9);
    expect(value(formula.replace('365 days', '365').replace('20 degC', '20'))).toBeCloseTo(expected, 9);
    expect(value(formula.replace('20 degC', '68 degF'))).toBeCloseTo(expected, 9);
  });

  it('says where the store is outside the range of the equation', () => {
    const dry = answer('SEEDVIABILITY(90%; 365 days; 3%; 20 degC; 6.975; 3.47; 0.04; 0.000428)');
    expect(dry).toMatchObject({ is: 'error', why: expect.stringContaining('5 to 25 %') });
    expect(answer('SEEDMOISTURE(85%; 20 degC; 24%)')).toMatchObject({ is: 'error' });
  });

  it('comes up by thermal time, and not at or below its base', () => {
    expect(value('EMERGENCEDAYS(11.4 degC; 1.4 degC; 219 degC day)')).toBeCloseTo(21.9, 9);
    expect(value('EMERGENCEDAYS(11.4; 1.4; 219)')).toBeCloseTo(21.9, 9);
    expect(answer('EMERGENCEDAYS(1.4 degC; 1.4 degC; 219 degC day)')).toEqual({ is: 'blank' });
  });
});

describe('degree-days', () => {
  it('are the mean above the base, capped and never below nothing', () => {
    expect(value('THERMALTIME(8 degC; 20 degC; 6 degC)')).toBeCloseTo(8, 9);
    expect(value('THERMALTIME(50 degF; 68 degF; 41 degF)')).toBeCloseTo(10, 9);
    expect(value('THERMALTIME(18 degC; 30 degC; 6 degC; 20 degC)')).toBeCloseTo(14, 9);
    expect(value('THERMALTIME(0 degC; 8 degC; 6 degC)')).toBe(0);
  });
});

describe('the stand', () => {
  it('starts the smallest number of blocks that is enough', () => {
    const blocks = value('BLOCKSNEEDED(300; 0.93; 90%)');
    const enough = (count: number): number => 1 - binomialCdf(299, count, 0.93);
    expect(enough(blocks)).toBeGreaterThanOrEqual(0.9);
    expect(enough(blocks - 1)).toBeLessThan(0.9);
    expect(value('BLOCKSNEEDED(0; 0.9; 90%)')).toBe(0);
    expect(answer('BLOCKSNEEDED(10; 0; 90%)')).toEqual({ is: 'blank' });
    expect(answer('BLOCKSNEEDED(10; 120%; 90%)')).toMatchObject({ is: 'error' });
  });

  it('knows how many plants blocks have: 3.5 seeds are half threes, half fours', () => {
    expect(value('EMPTYSHARE(3.5; 80%)')).toBeCloseTo((0.2 ** 3 + 0.2 ** 4) / 2, 12);
    expect(value('MEANPLANTS(3.5; 80%)')).toBeCloseTo((3.5 * 0.8) / (1 - (0.2 ** 3 + 0.2 ** 4) / 2), 12);
    expect(value('PLANTSSHARE(4; 3.5; 80%)')).toBeCloseTo(0.8 ** 4 / 2, 12);
    const kept = 1 - 0.2 ** 3;
    expect(value('THINNEDMEAN(3; 80%; 2)')).toBeCloseTo((3 * 0.8 - 0.8 ** 3) / kept, 12);
    expect(value('THINNINGS(3; 80%; 2)')).toBeCloseTo(0.8 ** 3, 12);
  });
});

describe('space', () => {
  it('counts places exactly where the spacing goes in whole: 3 x 8 in is 2 ft', () => {
    expect(value('STATIONS(2 ft; 8 in; 1)')).toBe(3);
    expect(value('STATIONS(50 ft; 8 in; 4)')).toBe(300);
    expect(value('STATIONS(15.24 m; 20.32 cm; 4)')).toBe(300);
    expect(value('OFFSETSTATIONS(50 ft; 8 in; 4)')).toBe(298);
    expect(answer('STATIONS(50 ft; 8 lb; 4)')).toMatchObject({ is: 'refused' });
  });

  it('weighs plants by crowding: Ratkowsky 1983 (Purnong), 239.67 g at 25 plants per m2 from 1/a and 1/b', () => {
    const formula = 'PLANTMASS(25/1 m2; (1/0.0018825689) * 1 g; (1/0.000091592101) * 1 g/m2)';
    expect(value(formula)).toBeCloseTo(239.67, 1);
    expect(value('PLANTMASS(25; 1/0.0018825689; 1/0.000091592101)')).toBeCloseTo(239.67, 1);
    const unlike = answer('PLANTMASS(25; 531 g; 10.92 kg/m2)');
    expect(unlike).toMatchObject({ is: 'refused', why: expect.stringContaining('ceiling yield') });
  });

  it('grades diameters: mean 70 mm, 14 %: 71.15 % from 2 to 3 in, open ends blank', () => {
    expect(value('GRADESHARE(70 mm; 14%; 2 in; 3 in)')).toBeCloseTo(0.7115, 3);
    const below = normalCdf(50.8, 70, 9.8);
    expect(value('GRADESHARE(70 mm; 14%; ; 2 in)')).toBeCloseTo(below, 9);
    expect(value('GRADESHARE(70 mm; 14%; 2 in)')).toBeCloseTo(1 - below, 9);
    expect(value('GRADEMASSSHARE(70 mm; 14%; 2 in; 3 in)')).toBeCloseTo(0.5862, 3);
    expect(answer('GRADESHARE(70 mm; 60%; 2 in; 3 in)')).toMatchObject({ is: 'error' });
  });
});
