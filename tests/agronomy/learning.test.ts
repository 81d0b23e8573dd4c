// Learned figures: worked out by hand, at the edges, and as a farm would use them: seasons with a known truth give it back.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learn } from '../../engine/agronomy/learning.ts';

const LIBRARY = { figure: 100, low: 67.102, high: 132.898 };

describe('a learned figure', () => {
  it('is the mean weighted by precision: a spread of 20 about 100, four seasons of 130 with a deviation of 10', () => {
    // Scatter (2 x 400 + 3 x 100) / 5 = 220; weights 1/400 and 4/220.
    const learned = learn(LIBRARY, { count: 4, mean: 130, deviation: 10 });
    const weight = 4 / 220 / (1 / 400 + 4 / 220);
    expect(learned?.weight).toBeCloseTo(weight, 4);
    expect(learned?.figure).toBeCloseTo(100 + 30 * weight, 2);
    // t with 5 degrees and 5 % beyond: 2.015 (Soong 2004, table A.4).
    const middle = 100 + 30 * weight;
    const end = 2.015 / Math.sqrt(1 / 400 + 4 / 220);
    expect(learned?.high).toBeCloseTo(middle * Math.exp(end / middle), 1);
    expect(learned?.low).toBeCloseTo(middle / Math.exp(end / middle), 1);
  });

  it('has ends that can be, however little is known: a rate of work of 32 lb/h between 4 and 60 in the library', () => {
    const learned = learn({ figure: 32, low: 4, high: 60 }, { count: 1, mean: 32.2, deviation: Number.NaN });
    expect(learned?.low).toBeGreaterThan(0);
    expect(learned?.low).toBeLessThan(32);
    expect(learned?.high).toBeGreaterThan(32);
  });

  it('is halfway between library and farm after one season', () => {
    expect(learn(LIBRARY, { count: 1, mean: 140, deviation: Number.NaN })?.figure).toBeCloseTo(120, 2);
  });

  it('takes a quarter of the figure for a spread that is not printed', () => {
    const learned = learn(
      { figure: 8, low: Number.NaN, high: Number.NaN },
      { count: 1, mean: 12, deviation: Number.NaN },
    );
    expect(learned?.weight).toBeCloseTo(0.5, 9);
  });

  it('is none without a figure, an observation or any spread', () => {
    const one = { count: 1, mean: 12, deviation: Number.NaN };
    expect(learn({ figure: Number.NaN, low: 1, high: 2 }, one)).toBeUndefined();
    expect(learn(LIBRARY, { count: 0, mean: Number.NaN, deviation: Number.NaN })).toBeUndefined();
    expect(learn({ figure: 0, low: Number.NaN, high: Number.NaN }, one)).toBeUndefined();
  });

  it('lies between the two, nearer the farm the more seasons there are and the more they agree', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.integer({ min: 2, max: 30 }),
        (mean, deviation, count) => {
          const few = learn(LIBRARY, { count, mean, deviation });
          const more = learn(LIBRARY, { count: count + 1, mean, deviation });
          if (few === undefined || more === undefined) throw new Error('nothing learned');
          expect(few.figure).toBeGreaterThanOrEqual(Math.min(100, mean) - 1e-9);
          expect(few.figure).toBeLessThanOrEqual(Math.max(100, mean) + 1e-9);
          expect(few.low).toBeLessThan(few.figure);
          if (deviation <= 20) expect(more.weight).toBeGreaterThan(few.weight);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('gives a known truth back: within its range nine times in ten, and close after many seasons', () => {
    // Normal noise from uniform numbers of a fixed generator (Park & Miller 1988), so that the test is the same each time.
    let state = 20271;
    const uniform = (): number => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
    const noise = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const season = (truth: number, scatter: number): number => truth + scatter * noise();
    let within = 0;
    const farms = 400;
    for (let farm = 0; farm < farms; farm++) {
      const truth = 100 + 20 * noise();
      const seen = Array.from({ length: 6 }, () => season(truth, 18));
      const mean = seen.reduce((sum, one) => sum + one, 0) / seen.length;
      const deviation = Math.sqrt(seen.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (seen.length - 1));
      const learned = learn(LIBRARY, { count: seen.length, mean, deviation });
      if (learned !== undefined && learned.low <= truth && truth <= learned.high) within += 1;
    }
    expect(within / farms).toBeGreaterThan(0.86);
    expect(within / farms).toBeLessThan(0.95);
    const many = Array.from({ length: 200 }, () => season(150, 18));
    const mean = many.reduce((sum, one) => sum + one, 0) / many.length;
    expect(Math.abs((learn(LIBRARY, { count: 200, mean, deviation: 18 })?.figure ?? 0) - 150)).toBeLessThan(4);
  });
});
