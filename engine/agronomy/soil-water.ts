// Water held by the root zone and when it runs short, after FAO Irrigation and Drainage Paper 56, chapter 8: how much a
// crop can draw before it suffers, how far it suffers beyond, and how many days a watering lasts. Depths of water are in
// mm, rooting depth in m, soil water in shares of volume. Calls nothing; water.ts gives the crop's daily use.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const SOIL_WATER_LIMITS = {
  depletion: { min: 0.1, max: 0.8, why: 'FAO-56 chapter 8: depletion fraction 0.1 to 0.8' },
  rootDepth: { min: 0, max: 3, why: 'FAO-56 table 22: vegetables root down to 2 m at most' },
} satisfies Limits;

/** Water a root zone holds between field capacity and wilting point, mm (equation 82). NaN where capacity is the lower. */
export function availableWater(fieldCapacity: number, wiltingPoint: number, rootDepth: number): number {
  if (!(fieldCapacity >= wiltingPoint) || !(wiltingPoint >= 0) || !(rootDepth >= 0)) return Number.NaN;
  return 1000 * (fieldCapacity - wiltingPoint) * rootDepth;
}

/** The part of it a crop can draw without suffering, mm (equation 83); `depletion` is the crop's fraction p. */
export function readilyAvailableWater(available: number, depletion: number): number {
  return available >= 0 && depletion >= 0 && depletion <= 1 ? available * depletion : Number.NaN;
}

/**
 * Share of its full water use that a crop still reaches when `drawn` mm are gone from the root zone: 1 until the readily
 * available water is gone, then falling evenly to 0 at the wilting point (equation 84).
 */
export function stressFactor(drawn: number, available: number, depletion: number): number {
  const ready = readilyAvailableWater(available, depletion);
  if (!(drawn >= 0) || Number.isNaN(ready)) return Number.NaN;
  if (drawn <= ready) return 1;
  return drawn >= available ? 0 : (available - drawn) / (available - ready);
}

/** One day of a root zone left alone. */
export interface DryDay {
  readonly drawnBefore: number;
  readonly stress: number;
  readonly used: number;
  readonly drawnAfter: number;
}

/** Day by day without rain or watering, from `drawn` mm already gone and the crop's full use each day, mm. */
export function dryDown(
  drawn: number,
  dailyUse: readonly number[],
  available: number,
  depletion: number,
): readonly DryDay[] {
  let gone = drawn;
  return dailyUse.map((full) => {
    const stress = stressFactor(gone, available, depletion);
    const used = full * stress;
    const day = { drawnBefore: gone, stress, used, drawnAfter: Math.min(available, gone + used) };
    gone = day.drawnAfter;
    return day;
  });
}

/**
 * Days that a root zone filled to field capacity lasts before the crop suffers, at a steady daily use; a part of a day
 * counts as none. NaN where nothing is used.
 */
export function daysBetweenWaterings(available: number, depletion: number, dailyUse: number): number {
  return dailyUse > 0 ? Math.floor(readilyAvailableWater(available, depletion) / dailyUse) : Number.NaN;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Water in the root zone',
    gives: 'how much a crop can draw before it suffers, and days between waterings',
    equation:
      '1000 (field capacity - wilting point) x rooting depth; times the crop’s depletion fraction (equations 82 to 84)',
    range: 'depletion fraction 0.1 to 0.8; soils without a water table near the roots',
    source: 'Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, chapter 8',
    standing: 'published',
  },
];
