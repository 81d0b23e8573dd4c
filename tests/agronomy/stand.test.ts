// The stand models against enumeration and against a search that counts up one block at a time.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  blockChance,
  blocksNeeded,
  blocksWithPlants,
  directSownStand,
  emptyShare,
  gapShare,
  meanPlants,
  plantsPerBlockDistribution,
  seedRateForStand,
  thinToMost,
} from '../../engine/agronomy/stand.ts';

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

// Coin by coin: the chance of each number of plants, adding one seed at a time.
function seedBySeed(seeds: number, chance: number): number[] {
  let shares = [1];
  for (let seed = 0; seed < seeds; seed += 1) {
    const next = new Array<number>(shares.length + 1).fill(0);
    shares.forEach((share, plants) => {
      next[plants] = (next[plants] ?? 0) + share * (1 - chance);
      next[plants + 1] = (next[plants + 1] ?? 0) + share * chance;
    });
    shares = next;
  }
  return shares;
}

function oneByOne(wanted: number, chance: number, confidence: number): number {
  for (let n = wanted; ; n += 1) {
    const shares = seedBySeed(n, chance);
    if (sum(shares.slice(wanted)) >= confidence * (1 - 1e-12)) return n;
  }
}

describe('plants per block', () => {
  test.each([
    [3, 0.8],
    [3.5, 0.7],
    [0, 0.9],
    [2, 1],
    [4, 0],
    [Number.NaN, 0.5],
    [2, 1.1],
  ])('a share alone is the same number as among all: %d seeds at %d', (seeds, chance) => {
    const all = plantsPerBlockDistribution(seeds, chance);
    for (const plants of [0, 1, 2, 3, 4, 5, 1.5]) {
      expect(blocksWithPlants(plants, seeds, chance)).toBe(all.length === 0 ? Number.NaN : (all[plants] ?? 0));
    }
    expect(blocksWithPlants(-1, seeds, chance)).toBeNaN();
  });

  test('three seeds at 85 %', () => {
    const shares = plantsPerBlockDistribution(3, 0.85);
    seedBySeed(3, 0.85).forEach((share, plants) => {
      expect(shares[plants]).toBeCloseTo(share, 14);
    });
  });

  test('3.5 seeds are half threes and half fours', () => {
    const threes = [...seedBySeed(3, 0.8), 0];
    const fours = seedBySeed(4, 0.8);
    const mixed = plantsPerBlockDistribution(3.5, 0.8);
    expect(mixed).toHaveLength(5);
    mixed.forEach((share, plants) => {
      expect(share).toBeCloseTo(((threes[plants] ?? 0) + (fours[plants] ?? 0)) / 2, 14);
    });
  });

  test('shares sum to one, their mean is seeds x chance, the first is the empty share', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (seeds, chance) => {
          const shares = plantsPerBlockDistribution(seeds, chance);
          expect(sum(shares)).toBeCloseTo(1, 11);
          expect(sum(shares.map((share, plants) => share * plants))).toBeCloseTo(seeds * chance, 9);
          expect(emptyShare(seeds, chance)).toBeCloseTo(shares[0] ?? Number.NaN, 11);
        },
      ),
    );
  });

  test('the mean of blocks with a plant leaves the empty ones out', () => {
    const shares = seedBySeed(2, 0.5);
    const filled = shares.slice(1);
    const mean = sum(filled.map((share, i) => share * (i + 1))) / sum(filled);
    expect(meanPlants(2, 0.5)).toBeCloseTo(mean, 14);
    expect(meanPlants(3, 0)).toBeNaN();
  });

  test('impossible inputs give nothing', () => {
    expect(plantsPerBlockDistribution(-1, 0.5)).toEqual([]);
    expect(plantsPerBlockDistribution(3, 1.2)).toEqual([]);
    expect(emptyShare(3, Number.NaN)).toBeNaN();
  });

  test.each([
    [-0.5, 0.5],
    [-1, 0.5],
    [Number.NaN, 0.5],
    [3, -0.1],
    [3, 1.1],
    [3, Number.NaN],
  ])('no answer for %d seeds at a chance of %d', (seeds, chance) => {
    expect(plantsPerBlockDistribution(seeds, chance)).toEqual([]);
    expect(emptyShare(seeds, chance)).toBeNaN();
    expect(meanPlants(seeds, chance)).toBeNaN();
  });

  test.each([
    [0, 0.5, [1], 1],
    [3, 0, [1, 0, 0, 0], 1],
    [2, 1, [0, 0, 1], 0],
    [0.5, 1, [0.5, 0.5], 0.5],
  ])('%d seeds at a chance of %d', (seeds, chance, shares, empty) => {
    expect(plantsPerBlockDistribution(seeds, chance)).toEqual(shares);
    expect(emptyShare(seeds, chance)).toBe(empty);
  });

  test('a block stands when any seed comes up and the nursery keeps it', () => {
    expect(blockChance(0.8, 3, 0.95)).toBeCloseTo((1 - 0.2 ** 3) * 0.95, 14);
  });
});

describe('blocks to start', () => {
  test('agrees with counting up one block at a time', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.double({ min: 0.15, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 0.999, noNaN: true }),
        (wanted, chance, confidence) => {
          expect(blocksNeeded(wanted, chance, confidence)).toBe(oneByOne(wanted, chance, confidence));
        },
      ),
      { numRuns: 300 },
    );
  });

  test('an exact tie counts as reached', () => {
    expect(blocksNeeded(1, 0.7, 0.91)).toBe(2);
    expect(blocksNeeded(1, 0.5, 0.75)).toBe(2);
    expect(blocksNeeded(1, 0.9, 0.9)).toBe(1);
  });

  test('edges', () => {
    expect(blocksNeeded(0, 0.9, 0.9)).toBe(0);
    expect(blocksNeeded(100, 1, 0.9)).toBe(100);
    expect(blocksNeeded(100, 0, 0.9)).toBeNaN();
    expect(blocksNeeded(100, 0.9, 1)).toBeNaN();
    expect(blocksNeeded(Number.NaN, 0.9, 0.9)).toBeNaN();
    expect(blocksNeeded(99.5, 1, 0.9)).toBe(100);
    expect(blocksNeeded(100, 0.9, 0)).toBe(0);
    expect(blocksNeeded(-5, 0.9, 0.9)).toBe(0);
    expect(blocksNeeded(0, 0.9, 1)).toBe(0);
    expect(blocksNeeded(100, 1, 1)).toBe(100);
  });

  test.each([
    [0, 1.1, 0.9],
    [0, -0.1, 0.9],
    [0, 0.9, -0.1],
    [0, 0.9, 1.1],
    [5, 0.9, -0.1],
    [5, 1, 1.1],
    [Number.POSITIVE_INFINITY, 0.9, 0.9],
    // More blocks than can be counted.
    [12, 1e-300, 0.9],
    [1, 1e-12, 0.9],
    [5, Number.NaN, 0.9],
    [5, 0.9, Number.NaN],
  ])('no answer for %d stations at a chance of %d and a confidence of %d', (wanted, chance, confidence) => {
    expect(blocksNeeded(wanted, chance, confidence)).toBeNaN();
  });

  test('as many as can be counted: one of n stands with the chance 1 - (1 - p)^n, so n is ln 0.1 / ln(1 - p)', () => {
    expect(blocksNeeded(1, 1e-11, 0.9) / (Math.log(10) * 1e11)).toBeCloseTo(1, 9);
  });

  test('stations that rounding left a hair above a whole number are that number', () => {
    expect(blocksNeeded(0.1 * 3 * 1e6, 1, 0.9)).toBe(300_000);
    expect(blocksNeeded(100.000_000_001, 1, 0.9)).toBe(101);
  });

  // One station of one: n blocks all fail with the chance (1 - chance)^n, so n is the first with 1 - (1 - chance)^n
  // at or above the confidence, a logarithm: ln(1 - confidence) / ln(1 - chance).
  test.each([
    [0.001, 1e-9, 1],
    [0.001, 0.001, 1],
    [0.001, 0.01, 11],
    [0.001, 0.5, 693],
    [0.001, 0.9, 2302],
    [0.001, 0.999_999, 13_809],
    [0.05, 0.9, 45],
    [0.05, 0.999_999, 270],
    [0.7, 1e-9, 1],
    [0.99, 0.000_001, 1],
  ])('one plant at a chance of %d with a confidence of %d', (chance, confidence, blocks) => {
    expect(Math.ceil(Math.log1p(-confidence) / Math.log1p(-chance))).toBe(blocks);
    expect(blocksNeeded(1, chance, confidence)).toBe(blocks);
  });

  // Two plants: short of them with none or one, (1 - c)^n + n c (1 - c)^(n - 1).
  test.each([
    [0.001, 0.001],
    [0.001, 0.5],
    [0.01, 0.9],
    [0.01, 0.999_999],
    [0.05, 0.000_001],
    [0.3, 0.99],
  ])('two plants at a chance of %d with a confidence of %d', (chance, confidence) => {
    const short = (n: number): number => (1 - chance) ** n + n * chance * (1 - chance) ** (n - 1);
    const blocks = blocksNeeded(2, chance, confidence);
    expect(1 - short(blocks)).toBeGreaterThanOrEqual(confidence * (1 - 1e-9));
    expect(1 - short(blocks - 1)).toBeLessThan(confidence);
  });

  test('more confidence, more stations or a worse chance never need fewer blocks', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.double({ min: 0.05, max: 0.999, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (wanted, chance, confidence) => {
          const blocks = blocksNeeded(wanted, chance, confidence);
          expect(blocksNeeded(wanted + 1, chance, confidence)).toBeGreaterThan(blocks);
          expect(blocksNeeded(wanted, chance * 0.98, confidence)).toBeGreaterThanOrEqual(blocks);
          expect(blocksNeeded(wanted, chance, confidence + 0.005)).toBeGreaterThanOrEqual(blocks);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('thinning', () => {
  test('keeps every block and pulls the rest', () => {
    const shares = plantsPerBlockDistribution(5, 0.8);
    const { kept, thinningsPerBlock } = thinToMost(shares, 3);
    expect(kept).toHaveLength(4);
    expect(sum(kept)).toBeCloseTo(1, 13);
    const keptMean = sum(kept.map((share, plants) => share * plants));
    expect(keptMean + thinningsPerBlock).toBeCloseTo(4, 12);
  });

  test('a wide limit pulls nothing', () => {
    const shares = plantsPerBlockDistribution(3, 0.8);
    expect(thinToMost(shares, 9)).toEqual({ kept: shares, thinningsPerBlock: 0 });
  });

  test('a limit of nought pulls every plant', () => {
    const { kept, thinningsPerBlock } = thinToMost(plantsPerBlockDistribution(3, 0.8), 0);
    expect(kept).toHaveLength(1);
    expect(thinningsPerBlock).toBeCloseTo(2.4, 12);
  });

  test('half a block in four has two too many', () => {
    // Shares of 0 to 4 plants; no more than two stay: 0.25 x 1 + 0.125 x 2 are pulled.
    expect(thinToMost([0.125, 0.25, 0.25, 0.25, 0.125], 2)).toEqual({
      kept: [0.125, 0.25, 0.625],
      thinningsPerBlock: 0.5,
    });
    expect(thinToMost([], 2)).toEqual({ kept: [], thinningsPerBlock: 0 });
  });
});

describe('direct sowing', () => {
  test('rate and stand undo each other', () => {
    expect(directSownStand(seedRateForStand(40, 0.8, 0.6), 0.8, 0.6)).toBeCloseTo(40, 12);
    expect(seedRateForStand(40, 0, 0.6)).toBeNaN();
  });

  test('gaps are the Poisson chance of no plant', () => {
    expect(gapShare(10, 0.1)).toBeCloseTo(Math.exp(-1), 14);
    expect(gapShare(-1, 1)).toBeNaN();
    expect(gapShare(0, 1)).toBe(1);
  });
});
