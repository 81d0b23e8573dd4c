// Reference evapotranspiration from temperatures at the edges: poles, frost, a low above the high. Printed figures stand in
// tests/reference/water.checks.ts.

import { describe, expect, it } from 'vitest';
import { hargreaves, topRadiation } from '../../engine/agronomy/reference-evapotranspiration.ts';

describe('radiation at the top of the atmosphere', () => {
  it('is nothing in the polar night and most of the year’s in the polar day', () => {
    expect(topRadiation(80, 355)).toBeCloseTo(0, 9);
    expect(topRadiation(-80, 172)).toBeCloseTo(0, 9);
    expect(topRadiation(90, 172)).toBeGreaterThan(topRadiation(45, 172));
  });

  it('is that of the other half of the earth half a year on, but for the distance of the sun', () => {
    for (const latitude of [10, 30, 50]) {
      const ratio = topRadiation(latitude, 172) / topRadiation(-latitude, 172 + 182.5);
      expect(ratio).toBeGreaterThan(0.92);
      expect(ratio).toBeLessThan(0.96);
    }
  });

  it('is not known beyond the poles', () => {
    expect(topRadiation(91, 1)).toBeNaN();
    expect(topRadiation(Number.NaN, 1)).toBeNaN();
  });
});

describe('water of grass from temperatures', () => {
  it('rises with warmth and with the span between night and day', () => {
    expect(hargreaves(10, 20, 45, 180)).toBeLessThan(hargreaves(15, 25, 45, 180));
    expect(hargreaves(14, 16, 45, 180)).toBeLessThan(hargreaves(10, 20, 45, 180));
    expect(hargreaves(15, 15, 45, 180)).toBe(0);
  });

  it('is never below nothing, and not known where the low is above the high', () => {
    expect(hargreaves(-40, -30, 60, 20)).toBe(0);
    expect(hargreaves(20, 10, 45, 180)).toBeNaN();
    expect(hargreaves(Number.NaN, 10, 45, 180)).toBeNaN();
  });
});
