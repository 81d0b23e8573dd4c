// Starts of harvests in a succession and which are left beside plantings that stay: by examples and by properties.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eachPlanting, harvestStarts, MOST_PLANTINGS, startsLeft } from '../../engine/index.ts';

const DAY = fc.integer({ min: 18_000, max: 22_000 });
const EVERY = fc.integer({ min: 1, max: 60 });

describe('harvest starts', () => {
  it('run evenly from the first to the last', () => {
    expect(harvestStarts(100, 128, 7)).toEqual([100, 107, 114, 121, 128]);
    expect(harvestStarts(100, 127, 7)).toEqual([100, 107, 114, 121]);
    expect(harvestStarts(100, 100, 7)).toEqual([100]);
    expect(harvestStarts(100, 99, 7)).toEqual([]);
    expect(harvestStarts(Number.NaN, 99, 7)).toEqual([]);
    expect(harvestStarts(100, 102, 0)).toEqual([100, 101, 102]);
  });

  it('never leave the span, never come closer or wider than asked, and end', () => {
    fc.assert(
      fc.property(DAY, fc.integer({ min: 0, max: 2000 }), EVERY, (from, days, every) => {
        const starts = harvestStarts(from, from + days, every);
        expect(starts[0]).toBe(from);
        expect(starts.length).toBeLessThanOrEqual(MOST_PLANTINGS);
        starts.forEach((start, k) => {
          if (k > 0) expect(start - (starts[k - 1] ?? 0)).toBe(every);
          expect(start).toBeLessThanOrEqual(from + days);
        });
        if (starts.length < MOST_PLANTINGS) expect((starts.at(-1) ?? 0) + every).toBeGreaterThan(from + days);
      }),
    );
  });
});

describe('starts still to be laid', () => {
  it('leave out those that a planting which stays takes, each planting one', () => {
    expect(startsLeft([100, 107, 114, 121], [109], 7)).toEqual([100, 114, 121]);
    expect(startsLeft([100, 107, 114], [107, 108], 7)).toEqual([100, 114]);
    expect(startsLeft([100, 107, 114], [90], 7)).toEqual([100, 107, 114]);
    expect(startsLeft([], [90], 7)).toEqual([]);
  });

  it('are in order, and with those taken are all of them', () => {
    fc.assert(
      fc.property(DAY, EVERY, fc.array(DAY, { maxLength: 12 }), (from, every, kept) => {
        const starts = harvestStarts(from, from + 300, every);
        const left = startsLeft(starts, kept, every);
        expect(left).toEqual(starts.filter((start) => left.includes(start)));
        expect(starts.length - left.length).toBeLessThanOrEqual(kept.length);
        for (const start of starts) {
          if (!left.includes(start)) expect(kept.some((one) => Math.abs(one - start) <= every / 2)).toBe(true);
        }
        expect(startsLeft(starts, starts, every)).toEqual([]);
      }),
    );
  });
});

it('each planting gives the weeks until the next', () => {
  expect(eachPlanting(60, 7)).toBe(60);
  expect(eachPlanting(60, 14)).toBe(120);
  expect(eachPlanting(60, 10)).toBeCloseTo(85.714, 3);
});
