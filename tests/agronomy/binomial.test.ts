// The binomial at its edges: certain and impossible chances, counts outside the trials, ties, and quantiles far out.

import { describe, expect, test } from 'vitest';
import { binomialAtLeast, binomialCdf, binomialPmf, binomialQuantile } from '../../engine/agronomy/binomial.ts';

describe('probability of a number', () => {
  // Three seeds at 20 %: 0.512, 3 x 0.2 x 0.64 = 0.384, 3 x 0.04 x 0.8 = 0.096, 0.008.
  test.each([
    [0, 0.512],
    [1, 0.384],
    [2, 0.096],
    [3, 0.008],
    [4, 0],
    [-1, 0],
  ])('%d of three at 20 %%', (successes, share) => {
    expect(binomialPmf(successes, 3, 0.2)).toBeCloseTo(share, 14);
  });

  test.each([
    [0, 5, 0, 1],
    [2, 5, 0, 0],
    [5, 5, 0, 0],
    [0, 5, 1, 0],
    [2, 5, 1, 0],
    [5, 5, 1, 1],
    [0, 0, 0, 1],
    [0, 0, 1, 1],
  ])('%d of %d at a chance of %d is certain or impossible', (successes, trials, chance, share) => {
    expect(binomialPmf(successes, trials, chance)).toBe(share);
  });
});

describe('at most and at least', () => {
  test.each([
    [0, 0.512, 1],
    [1, 0.896, 0.488],
    [1.5, 0.896, 0.104],
    [2, 0.992, 0.104],
    [3, 1, 0.008],
    [-1, 0, 1],
    [4, 1, 0],
    [Number.POSITIVE_INFINITY, 1, 0],
    [Number.NEGATIVE_INFINITY, 0, 1],
  ])('%d of three at 20 %%', (successes, atMost, atLeast) => {
    expect(binomialCdf(successes, 3, 0.2)).toBeCloseTo(atMost, 14);
    expect(binomialAtLeast(successes, 3, 0.2)).toBeCloseTo(atLeast, 14);
  });

  test.each([
    [-1, 0, 0, 1],
    [0, 0, 1, 1],
    [2, 0, 1, 0],
    [5, 0, 1, 0],
    [6, 0, 1, 0],
    [-1, 1, 0, 1],
    [0, 1, 0, 1],
    [2, 1, 0, 1],
    [5, 1, 1, 1],
    [6, 1, 1, 0],
  ])('%d of five at a chance of %d', (successes, chance, atMost, atLeast) => {
    expect(binomialCdf(successes, 5, chance)).toBe(atMost);
    expect(binomialAtLeast(successes, 5, chance)).toBe(atLeast);
  });

  test('no trials have no successes', () => {
    expect(binomialCdf(0, 0, 0.5)).toBe(1);
    expect(binomialCdf(-1, 0, 0.5)).toBe(0);
    expect(binomialAtLeast(0, 0, 0.5)).toBe(1);
    expect(binomialAtLeast(1, 0, 0.5)).toBe(0);
  });
});

describe('no answer', () => {
  test.each([
    ['trials below nought', -3, 0.5],
    ['part of a trial', 5.5, 0.5],
    ['trials not given', Number.NaN, 0.5],
    ['trials past counting', 1.1e12, 0.5],
    ['trials far past counting', 1e300, 0.5],
    ['a chance below nought', 5, -0.1],
    ['a chance above one', 5, 1.1],
    ['a chance not given', 5, Number.NaN],
  ])('%s', (_, trials, chance) => {
    for (const successes of [0, 2, 5, 9]) {
      expect(binomialPmf(successes, trials, chance)).toBeNaN();
      expect(binomialCdf(successes, trials, chance)).toBeNaN();
      expect(binomialAtLeast(successes, trials, chance)).toBeNaN();
    }
    for (const share of [0, 0.5, 1]) expect(binomialQuantile(share, trials, chance)).toBeNaN();
  });

  test('part of a success has no probability, and a blank none of any kind', () => {
    expect(binomialPmf(1.5, 5, 0.5)).toBeNaN();
    expect(binomialPmf(Number.NaN, 5, 0.5)).toBeNaN();
    expect(binomialCdf(Number.NaN, 5, 0.5)).toBeNaN();
    expect(binomialAtLeast(Number.NaN, 5, 0.5)).toBeNaN();
  });

  test.each([-0.1, 1.1, Number.NaN])('a share of %d', (share) => {
    for (const chance of [0, 0.5, 1]) expect(binomialQuantile(share, 10, chance)).toBeNaN();
  });
});

describe('quantile', () => {
  // The first k at which the shares, added from the lowest number up, reach the share asked.
  function addingUp(share: number, trials: number, chance: number): number {
    let sum = 0;
    let pmf = (1 - chance) ** trials;
    for (let k = 0; k < trials; k += 1) {
      sum += pmf;
      if (sum >= share) return k;
      pmf *= ((trials - k) * chance) / ((k + 1) * (1 - chance));
    }
    return trials;
  }

  test.each([
    [1e-9, 5, 0.001],
    [0.99999, 5, 0.001],
    [0.99999, 5, 0.01],
    [1e-5, 5, 0.99],
    [0.99999, 5, 0.99],
    [1e-9, 20, 0.001],
    [1e-9, 20, 0.99],
    [1e-9, 100, 0.99],
    [0.3, 1, 0.5],
    [0.5, 7, 0.5],
    [0.2, 40, 0.3],
    [0.8, 40, 0.3],
    [0.999, 40, 0.9],
  ])('%d of %d trials at %d, as adding up finds it', (share, trials, chance) => {
    expect(binomialQuantile(share, trials, chance)).toBe(addingUp(share, trials, chance));
  });

  test('a share met exactly, or within a ten-million-millionth of it, is met', () => {
    expect(binomialQuantile(0.7, 1, 0.3)).toBe(0);
    expect(binomialQuantile(0.75, 2, 0.5)).toBe(1);
    expect(binomialQuantile(0.75 * (1 + 5e-14), 2, 0.5)).toBe(1);
    expect(binomialQuantile(0.75 * (1 + 1e-12), 2, 0.5)).toBe(2);
    expect(binomialQuantile(0.25 * (1 + 5e-14), 2, 0.5)).toBe(0);
    expect(binomialQuantile(0.25 * (1 + 1e-12), 2, 0.5)).toBe(1);
  });

  test.each([
    [0, 0.5, 0],
    [1, 0.5, 10],
    [0.5, 0, 0],
    [0.5, 1, 10],
    [1, 1, 10],
    [0, 1, 0],
  ])('a share of %d at a chance of %d, of ten', (share, chance, answer) => {
    expect(binomialQuantile(share, 10, chance)).toBe(answer);
  });

  test('no trials, no successes', () => {
    expect(binomialQuantile(0.5, 0, 0.5)).toBe(0);
  });
});
