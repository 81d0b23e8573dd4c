// Intervals about a fitted curve: how often they hold the truth, the figures of one trial worked out another way, and where there are
// none.

import tQuantileOfLibrary from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, test } from 'vitest';
import { type DensityFit, fitDensity, type TrialRow } from '../../engine/agronomy/density-fit.ts';
import { ceilingInterval, isolatedInterval, massInterval } from '../../engine/agronomy/fit-intervals.ts';
import { standardNormalQuantile } from '../../engine/agronomy/normal.ts';
import { plantMass } from '../../engine/agronomy/yield-density.ts';
import { numberOf, readTable, textOf } from '../reference/table.ts';

const TRUE_ISOLATED = 0.3;
const TRUE_CEILING = 6;

/** Numbers from 0 to 1 that look random and are the same in every run (Park & Miller 1988). */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function simulated(seed: number): readonly TrialRow[] {
  const chance = chances(seed * 7919 + 1);
  for (let warm = 0; warm < 5; warm += 1) chance();
  return [10, 20, 20, 40, 40, 80, 80, 120].map((density) => ({
    density,
    mass: plantMass(density, TRUE_ISOLATED, TRUE_CEILING) * Math.exp(0.08 * standardNormalQuantile(chance())),
  }));
}

describe('intervals of a trial', () => {
  test('hold the truth about nine times in ten', () => {
    const TRIALS = 1000;
    const held = { mass: 0, isolated: 0, ceiling: 0 };
    for (let seed = 1; seed <= TRIALS; seed += 1) {
      const fit = fitDensity(simulated(seed));
      const within = ({ low, high }: { low: number; high: number }, truth: number): number =>
        Number(low <= truth && !(high < truth));
      held.mass += within(massInterval(fit, 60), plantMass(60, TRUE_ISOLATED, TRUE_CEILING));
      held.isolated += within(isolatedInterval(fit), TRUE_ISOLATED);
      held.ceiling += within(ceilingInterval(fit), TRUE_CEILING);
    }
    // Three standard errors of a share of 90 % in a thousand are 2.8 %.
    for (const count of Object.values(held)) expect(Math.abs(count / TRIALS - 0.9)).toBeLessThan(0.028);
  });

  test('are the error of the fit times t, by the library', () => {
    const fit = fitDensity(simulated(3));
    const t = tQuantileOfLibrary(0.95, 6);
    const { low, high } = ceilingInterval(fit);
    expect(low).toBeCloseTo(1 / (fit.b + t * fit.bError), 10);
    expect(high).toBeCloseTo(1 / (fit.b - t * fit.bError), 10);
    // The curve about the middle of the plots, its slopes by small steps.
    const value = (a: number, b: number): number => -Math.log(a + b * 40);
    const [da, db] = [fit.a * 1e-6, fit.b * 1e-6];
    const slopes = [
      (value(fit.a + da, fit.b) - value(fit.a - da, fit.b)) / (2 * da),
      (value(fit.a, fit.b + db) - value(fit.a, fit.b - db)) / (2 * db),
    ];
    let variance = 0;
    for (const i of [0, 1])
      for (const j of [0, 1]) variance += (slopes[i] ?? 0) * (fit.covariance[i]?.[j] ?? 0) * (slopes[j] ?? 0);
    const middle = plantMass(40, fit.isolated, fit.ceiling);
    const mass = massInterval(fit, 40);
    expect(mass.high / middle).toBeCloseTo(Math.exp(t * Math.sqrt(variance)), 7);
    expect(mass.low * mass.high).toBeCloseTo(middle ** 2, 10);
  });

  test('lie about the curve of a published trial, and narrower within it than at its ends', () => {
    const plots = readTable('onion-density-trials')
      .filter((row) => textOf(row, 'trial') === 'Purnong Landing')
      .map((row) => ({ density: numberOf(row, 'density'), mass: numberOf(row, 'mass_g') }));
    for (const form of ['reciprocal', 'general'] as const) {
      const fit: DensityFit = fitDensity(plots, form);
      const spread = (density: number): number => {
        const { low, high } = massInterval(fit, density);
        expect(low).toBeLessThan(high);
        return Math.log(high / low);
      };
      expect(spread(50)).toBeLessThan(spread(20));
      expect(spread(50)).toBeLessThan(spread(180));
    }
  });

  test('have no high end where the plots set none, and none at all without a fit', () => {
    const loose = fitDensity([
      { density: 40, mass: 0.1 },
      { density: 50, mass: 0.07 },
      { density: 60, mass: 0.08 },
    ]);
    expect(isolatedInterval(loose).high).toBeNaN();
    const none = fitDensity([{ density: 40, mass: 0.1 }]);
    for (const { low, high } of [massInterval(none, 40), isolatedInterval(none), ceilingInterval(none)]) {
      expect([low, high]).toEqual([Number.NaN, Number.NaN]);
    }
    expect(isolatedInterval(fitDensity(simulated(1), 'general')).low).toBeNaN();
  });
});
