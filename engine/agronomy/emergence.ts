// Days from sowing to emergence by thermal time. Called by the functions and the sowing plan; calls nothing.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const EMERGENCE_LIMITS = {
  temperature: {
    max: 35,
    why: 'Harrington & Minges 1954: above 35 C no vegetable comes up faster (cool-season ones not above about 25 C)',
  },
  thermalTime: { min: 0, why: 'a thermal time is 0 degree-days or more' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Days to emergence',
    gives: 'days from sowing to emergence at a constant temperature, or the date in varying weather',
    equation: 'days = thermal time / (temperature - base)',
    range:
      'above the base temperature; onion and other cool-season crops up to about 25 C, warm-season ones up to 35 C; moist soil',
    source:
      'Bierhuizen & Wagenvoort 1974, Scientia Horticulturae 2:213-219; onion: Brewster 2008, Onions and Other Vegetable Alliums, eq 4.6-4.7',
    standing: 'published',
  },
];

/** Days to emergence at a constant temperature (C), base temperature (C) and thermal time (C days); none at or below base. */
export function emergenceDays(temperature: number, base: number, thermalTime: number): number {
  if (!(temperature > base) || !(thermalTime >= 0)) return Number.NaN;
  return thermalTime / (temperature - base);
}

export interface ThermalTimeToEmergence {
  readonly crop: string;
  readonly event: string;
  /** C */
  readonly base: number;
  /** C days */
  readonly thermalTime: number;
  readonly source: string;
  readonly standing: 'published' | 'memory';
}

const BIERHUIZEN = 'Bierhuizen & Wagenvoort 1974, Scientia Horticulturae 2:213-219 (recalled)';

function inSoil(crop: string, base: number, thermalTime: number): ThermalTimeToEmergence {
  return { crop, event: 'half the seedlings up, in soil', base, thermalTime, source: BIERHUIZEN, standing: 'memory' };
}

/** Base temperatures and thermal times to emergence; the ones marked memory are starting values for a grower's own. */
export const THERMAL_TIMES_TO_EMERGENCE: readonly ThermalTimeToEmergence[] = [
  {
    crop: 'Onion',
    event: 'half the seeds germinated, on moist paper',
    base: 2.5,
    thermalTime: 80,
    source: 'Brewster 2008, Onions and Other Vegetable Alliums, eq 4.6-4.7, from data of Harrington 1962',
    standing: 'published',
  },
  {
    crop: 'Onion',
    event: 'first roots out, the moment to water',
    base: 1.4,
    thermalTime: 90,
    source: 'Finch-Savage & Steckel 1994, in Brewster 2008',
    standing: 'published',
  },
  inSoil('Onion', 1.4, 219),
  inSoil('Leek', 1.7, 222),
  inSoil('Lettuce', 3.5, 71),
  inSoil('Carrot', 1.3, 170),
  inSoil('Radish', 1.2, 75),
  inSoil('Turnip', 1.4, 97),
  inSoil('Cabbage', 1, 106),
  inSoil('Cauliflower', 1.3, 112),
  inSoil('Brussels sprouts', 1.1, 108),
  inSoil('Spinach', 0.1, 111),
  inSoil('Beet', 2.1, 119),
  inSoil('Pea', 3.2, 86),
  inSoil('Bean, broad', 0.4, 148),
  inSoil('Bean, snap', 7.7, 130),
  inSoil('Celery', 4.6, 237),
  inSoil('Parsley', 0, 268),
  inSoil('Endive', 2.2, 93),
  inSoil('Chicory', 5.3, 85),
  inSoil('Cornsalad', 0, 161),
  inSoil('Cress, garden', 1, 64),
  inSoil('Tomato', 8.7, 88),
  inSoil('Eggplant', 12.1, 93),
  inSoil('Cucumber', 12.7, 108),
  inSoil('Melon', 12.2, 108),
  inSoil('Purslane', 11, 48),
];
