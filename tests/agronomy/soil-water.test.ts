// Water in the root zone at the edges of the equations of FAO Irrigation and Drainage Paper 56, chapter 8.
import { describe, expect, it } from 'vitest';
import {
  availableWater,
  daysBetweenWaterings,
  dryDown,
  readilyAvailableWater,
  stressFactor,
} from '../../engine/agronomy/soil-water.ts';

const NONE = Number.NaN;

describe('water in the root zone', () => {
  it.each([
    ['a soil that holds nothing', 0.2, 0.2, 0.5, 0],
    ['a soil that dries out wholly', 0.25, 0, 0.5, 125],
    ['no roots', 0.3, 0.1, 0, 0],
    ['a capacity below the wilting point', 0.1, 0.2, 0.5, NONE],
    ['a wilting point below nothing', 0.2, -0.1, 0.5, NONE],
    ['roots above the ground', 0.3, 0.1, -0.5, NONE],
  ])('held by %s', (_, capacity, wilting, depth, water) => {
    expect(availableWater(capacity, wilting, depth)).toBe(water);
  });

  it.each([
    ['none held', 0, 0.5, 0],
    ['none of it', 100, 0, 0],
    ['all of it', 100, 1, 100],
    ['more than all', 100, 1.1, NONE],
    ['less than none of it', 100, -0.1, NONE],
    ['less than none held', -100, 0.5, NONE],
    ['both below nothing', -100, -0.5, NONE],
  ])('to be drawn without harm, %s', (_, available, depletion, ready) => {
    expect(readilyAvailableWater(available, depletion)).toBe(ready);
  });

  it.each([
    ['nothing drawn', 0, 100, 0.4, 1],
    ['the last drop of what is ready', 40, 100, 0.4, 1],
    ['half way on', 70, 100, 0.4, 0.5],
    ['everything drawn', 100, 100, 0.4, 0],
    ['more than everything', 120, 100, 0.4, 0],
    ['everything drawn, where all of it is ready', 100, 100, 1, 1],
    ['less than nothing drawn', -1, 100, 0.4, NONE],
    ['an impossible depletion', 50, 100, 2, NONE],
  ])('stress with %s', (_, drawn, available, depletion, factor) => {
    expect(stressFactor(drawn, available, depletion)).toBe(factor);
  });

  it('dries day by day: full use while it is ready, less after, never below the wilting point', () => {
    expect(dryDown(30, [10, 30, 90], 100, 0.4)).toEqual([
      { drawnBefore: 30, stress: 1, used: 10, drawnAfter: 40 },
      { drawnBefore: 40, stress: 1, used: 30, drawnAfter: 70 },
      { drawnBefore: 70, stress: 0.5, used: 45, drawnAfter: 100 },
    ]);
    expect(dryDown(30, [], 100, 0.4)).toEqual([]);
  });

  it('counts whole days between waterings', () => {
    expect(daysBetweenWaterings(100, 0.5, 5)).toBe(10);
    expect(daysBetweenWaterings(100, 0.5, 5.1)).toBe(9);
    expect(daysBetweenWaterings(100, 0.5, 0)).toBeNaN();
    expect(daysBetweenWaterings(100, 0.5, -5)).toBeNaN();
  });
});
