// Binomial counts drawn from even numbers, against the distribution itself.

import { describe, expect, test } from 'vitest';
import { binomialPmf } from '../../engine/agronomy/binomial.ts';
import { drawBinomial } from '../../engine/agronomy/binomial-draw.ts';

describe('a binomial count from an even number', () => {
  // Each count answers to one stretch of the numbers from 0 to 1, as long as its probability: of a fine even grid it gets that
  // share, but for one point at the stretch's end.
  test.each([
    [1, 0.85],
    [7, 0.5],
    [40, 0.03],
    [40, 0.97],
    [350, 0.8],
    [2500, 0.9],
  ])('of %i at %f comes as often as its probability', (trials, chance) => {
    const points = 100_000;
    const counts = new Float64Array(trials + 1);
    for (let i = 0; i < points; i++) {
      const count = drawBinomial((i + 0.5) / points, trials, chance);
      counts[count] = (counts[count] ?? 0) + 1;
    }
    for (let count = 0; count <= trials; count++) {
      const expected = points * binomialPmf(count, trials, chance);
      expect(Math.abs((counts[count] ?? 0) - expected)).toBeLessThanOrEqual(1 + 1e-6);
    }
  });

  test('chances at the ends and what is none', () => {
    expect(drawBinomial(0.3, 12, 0)).toBe(0);
    expect(drawBinomial(0.3, 12, 1)).toBe(12);
    expect(drawBinomial(0.3, 0, 0.4)).toBe(0);
    expect(drawBinomial(1 - 2 ** -53, 12, 0.4)).toBeLessThanOrEqual(12);
    expect(drawBinomial(0.3, 2.5, 0.4)).toBeNaN();
    expect(drawBinomial(0.3, 12, 1.4)).toBeNaN();
  });
});
