// Harvest over its window: the curve against the weekly shares worked out from its parameters by hand, cuts, and what onions
// lose by bulbing with little leaf.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bulbingLight, bulbYieldFactor, USUAL_LIGHT } from '../../engine/agronomy/bulb-light.ts';
import { cutShare, harvestedShare } from '../../engine/agronomy/harvest-curve.ts';

describe('the curve of a harvest', () => {
  test('starts at nothing, ends with all, and never falls', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0.05, max: 0.5, noNaN: true }),
        fc.double({ min: -10, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (middle, spread, time, later) => {
          expect(harvestedShare(0, 70, middle, spread)).toBe(0);
          expect(harvestedShare(70, 70, middle, spread)).toBeCloseTo(1, 12);
          expect(harvestedShare(90, 70, middle, spread)).toBeCloseTo(1, 12);
          expect(harvestedShare(time + later, 70, middle, spread)).toBeGreaterThanOrEqual(
            harvestedShare(time, 70, middle, spread),
          );
        },
      ),
    );
  });

  test('is even where the spread is wide, and has half by the middle where the middle is half', () => {
    expect(harvestedShare(35, 70, 0.5, 0.2)).toBeCloseTo(0.5, 12);
    expect(harvestedShare(14, 70, 0.5, 10)).toBeCloseTo(0.2, 3);
  });

  test('has no answer without a window or spread', () => {
    expect(harvestedShare(1, 0, 0.5, 0.2)).toBeNaN();
    expect(harvestedShare(1, 70, 0.5, 0)).toBeNaN();
    expect(harvestedShare(Number.NaN, 70, 0.5, 0.2)).toBeNaN();
    expect(harvestedShare(1, 70, Number.NaN, 0.2)).toBeNaN();
  });
});

describe('cuts', () => {
  test('come one after the other, as shares of the first', () => {
    const at = (day: number): number => cutShare(day, 14, 0.75, 0.45);
    expect([-1, 0, 13, 14, 27, 28, 60].map(at)).toEqual([0, 1 / 2.2, 1 / 2.2, 1.75 / 2.2, 1.75 / 2.2, 1, 1]);
  });

  test('are one where no more are given', () => {
    expect(cutShare(0, 14, 0, 0)).toBe(1);
    expect(cutShare(0, 0, 0.5, 0)).toBeNaN();
    expect(cutShare(Number.NaN, 14, 0.5, 0)).toBeNaN();
  });
});

describe('light caught by bulbing onions', () => {
  test('rises with leaf growth towards all of it, and gives the usual yield near 375 degree-days', () => {
    expect(bulbingLight(0)).toBeLessThan(0.15);
    expect(bulbingLight(900)).toBeGreaterThan(0.99);
    expect(bulbYieldFactor(375)).toBeCloseTo(1, 1);
    expect(bulbYieldFactor(3000)).toBeLessThanOrEqual(1 / USUAL_LIGHT);
    expect(bulbingLight(-1)).toBeNaN();
    expect(bulbingLight(Number.NaN)).toBeNaN();
  });

  test('costs more the smaller the plants are, a fifth of the yield for an onion that bulbs as it is planted', () => {
    expect(bulbYieldFactor(30)).toBeLessThan(0.25);
    const week = (from: number): number => 1 - bulbYieldFactor(from - 40) / bulbYieldFactor(from);
    expect(week(375)).toBeLessThan(week(300));
    expect(week(300)).toBeLessThan(week(200));
  });
});
