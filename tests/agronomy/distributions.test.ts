// The distributions as a whole: they undo each other, sum to one and keep their tails.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  binomialAtLeast,
  binomialCdf,
  binomialPmf,
  binomialQuantile,
  logBeta,
  logGamma,
  normalCdf,
  normalPdf,
  normalQuantile,
  poissonCdf,
  poissonPmf,
  standardNormalCdf,
  standardNormalQuantile,
} from '../../engine/agronomy/distributions.ts';

const relative = (a: number, b: number): number => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-300);

describe('normal', () => {
  test('the quantile undoes the share, deep into the lower tail', () => {
    fc.assert(
      fc.property(fc.double({ min: -37, max: 5, noNaN: true }), (z) => {
        expect(Math.abs(standardNormalQuantile(standardNormalCdf(z)) - z)).toBeLessThan(1e-9);
      }),
    );
    expect(standardNormalQuantile(1e-10)).toBeCloseTo(-standardNormalQuantile(1 - 1e-10), 5);
  });

  test('symmetry and the middle', () => {
    expect(standardNormalCdf(0)).toBe(0.5);
    expect(standardNormalCdf(-1.7) + standardNormalCdf(1.7)).toBeCloseTo(1, 15);
    expect(normalPdf(3, 3, 2)).toBeCloseTo(1 / (2 * Math.sqrt(2 * Math.PI)), 15);
  });

  test('the density is the slope of the share', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
        const slope = (normalCdf(z + 1e-5, 0, 1) - normalCdf(z - 1e-5, 0, 1)) / 2e-5;
        expect(slope).toBeCloseTo(normalPdf(z, 0, 1), 8);
      }),
    );
  });

  test('no answer without a spread or outside 0 to 1', () => {
    expect(normalCdf(1, 0, 0)).toBeNaN();
    expect(normalQuantile(1, 0, 1)).toBeNaN();
    expect(normalQuantile(-0.1, 0, 1)).toBeNaN();
    expect(standardNormalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('binomial', () => {
  const trials = fc.integer({ min: 0, max: 3000 });
  const chance = fc.double({ min: 0, max: 1, noNaN: true });

  test('at most k and at least k + 1 make a whole', () => {
    fc.assert(
      fc.property(trials, chance, fc.double({ min: 0, max: 1, noNaN: true }), (n, p, part) => {
        const k = Math.floor(part * n);
        expect(binomialCdf(k, n, p) + binomialAtLeast(k + 1, n, p)).toBeCloseTo(1, 12);
      }),
    );
  });

  test('the cumulative share grows by the probability of each number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), chance, fc.nat(), (n, p, pick) => {
        const k = pick % (n + 1);
        expect(binomialCdf(k, n, p) - binomialCdf(k - 1, n, p)).toBeCloseTo(binomialPmf(k, n, p), 12);
      }),
    );
  });

  test('successes at p are failures at 1 - p, tails kept', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2000 }),
        fc.integer({ min: 1, max: 63 }),
        fc.nat(),
        (n, sixtyFourths, pick) => {
          const p = sixtyFourths / 64;
          const k = pick % (n + 1);
          expect(relative(binomialPmf(k, n, p), binomialPmf(n - k, n, 1 - p))).toBeLessThan(1e-11);
          expect(relative(binomialAtLeast(k, n, p), binomialCdf(n - k, n, 1 - p))).toBeLessThan(1e-11);
        },
      ),
    );
  });

  test('the quantile is the first number whose cumulative share reaches it', () => {
    fc.assert(
      fc.property(trials, chance, fc.double({ min: 0.0001, max: 0.9999, noNaN: true }), (n, p, share) => {
        const k = binomialQuantile(share, n, p);
        expect(binomialCdf(k, n, p)).toBeGreaterThanOrEqual(share * (1 - 1e-12));
        expect(binomialCdf(k - 1, n, p)).toBeLessThan(share);
      }),
    );
  });

  test('a million trials', () => {
    expect(binomialCdf(500_000, 1_000_000, 0.5) - binomialPmf(500_000, 1_000_000, 0.5) / 2).toBeCloseTo(0.5, 12);
  });

  test('edges', () => {
    expect(binomialPmf(0, 0, 0.3)).toBe(1);
    expect(binomialPmf(-1, 5, 0.3)).toBe(0);
    expect(binomialPmf(6, 5, 0.3)).toBe(0);
    expect(binomialPmf(2, 5, 1.1)).toBeNaN();
    expect(binomialPmf(2, 5.5, 0.5)).toBeNaN();
    expect(binomialCdf(-1, 5, 0.3)).toBe(0);
    expect(binomialCdf(5, 5, 0.3)).toBe(1);
    expect(binomialCdf(2, 5, 1)).toBe(0);
    expect(binomialAtLeast(2, 5, 0)).toBe(0);
    expect(binomialQuantile(0, 10, 0.5)).toBe(0);
    expect(binomialQuantile(1, 10, 0.5)).toBe(10);
    expect(binomialQuantile(1.5, 10, 0.5)).toBeNaN();
  });
});

describe('Poisson', () => {
  test('cumulative shares are sums of probabilities', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 80, noNaN: true }), fc.integer({ min: 0, max: 120 }), (mean, count) => {
        let sum = 0;
        for (let k = 0; k <= count; k += 1) sum += poissonPmf(k, mean);
        expect(poissonCdf(count, mean)).toBeCloseTo(sum, 12);
      }),
    );
  });

  test('edges', () => {
    expect(poissonPmf(0, 0)).toBe(1);
    expect(poissonPmf(3, 0)).toBe(0);
    expect(poissonPmf(-1, 2)).toBe(0);
    expect(poissonPmf(1, -2)).toBeNaN();
    expect(poissonCdf(-1, 2)).toBe(0);
    expect(poissonCdf(10, Number.NaN)).toBeNaN();
  });

  test('large means: half lies at most at the mean and two thirds of the share of the mean itself; past 1E12 no answer', () => {
    expect(poissonCdf(1e12, 1e12)).toBeCloseTo(0.5 + 2 / 3 / Math.sqrt(2 * Math.PI * 1e12), 10);
    expect(poissonCdf(1e300, 1e12)).toBe(1);
    expect(poissonCdf(1e300, 1.1e12)).toBeNaN();
    expect(poissonCdf(1e300, 1e300)).toBeNaN();
  });
});

describe('gamma and beta', () => {
  test('logarithms of factorials', () => {
    let logFactorial = 0;
    for (let n = 1; n <= 170; n += 1) {
      logFactorial += Math.log(n);
      expect(relative(logGamma(n + 1), logFactorial || logGamma(2))).toBeLessThan(1e-13);
    }
  });

  test('gamma of a half is the root of pi, and beta follows from gamma', () => {
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 14);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 60, noNaN: true }),
        fc.double({ min: 0.01, max: 60, noNaN: true }),
        (a, b) => {
          expect(logBeta(a, b)).toBeCloseTo(logGamma(a) + logGamma(b) - logGamma(a + b), 10);
        },
      ),
    );
    expect(logGamma(-1)).toBeNaN();
    expect(logBeta(0, 2)).toBeNaN();
  });
});
