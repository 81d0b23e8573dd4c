// Equilibrium moisture: what moisture a seed takes up from the air of its store, and back. Called by the functions and
// the seed-lot sheet; calls nothing.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const SEED_MOISTURE_LIMITS = {
  humidity: {
    min: 0.1,
    max: 0.7,
    why: 'Cromarty, Ellis & Roberts 1985: 10 to 70 % relative humidity',
  },
  temperature: { min: 0, max: 40, why: 'Cromarty, Ellis & Roberts 1985: 0 to 40 C (15 to 25 C for oily seed)' },
  oil: { min: 0, max: 0.6, why: 'oil is a share of the dry seed' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Seed moisture in equilibrium with air',
    gives: 'share of fresh weight that is water, at the relative humidity and temperature of the store',
    equation:
      '1 - R = exp(-[Me (1.1 + T/90) / (1 - D)]^2 / 440), Me in % of dry weight; fresh-weight share = Me / (100 + Me)',
    range:
      '10 to 70 % relative humidity; 0 to 40 C for starchy seed, 15 to 25 C for oily seed; poor for onion and beet, where a measured moisture is better',
    source:
      'Cromarty, Ellis & Roberts 1982, The Design of Seed Storage Facilities for Genetic Conservation (revised 1985, 1990)',
    standing: 'published',
  },
];

/** Share of fresh weight from a share of dry weight. */
export function freshWeightShare(dryWeightShare: number): number {
  return dryWeightShare / (1 + dryWeightShare);
}

/** Share of dry weight from a share of fresh weight. */
export function dryWeightShare(freshShare: number): number {
  return freshShare / (1 - freshShare);
}

function humidityFactor(temperature: number, oil: number): number {
  return (1.1 + temperature / 90) / (1 - oil);
}

/**
 * Equilibrium moisture, share of fresh weight. `humidity` is relative humidity 0 to 1, `temperature` in C, `oil` the
 * share of oil in the dry seed. No answer at 100 % humidity or for impossible shares. Source: see SOURCES.
 */
export function seedMoisture(humidity: number, temperature: number, oil: number): number {
  const factor = humidityFactor(temperature, oil);
  if (!(factor > 0 && oil >= 0 && oil < 1)) return Number.NaN;
  // The logarithm and the root have no answer for a humidity below 0, of 1 or above.
  return freshWeightShare(Math.sqrt(-440 * Math.log1p(-humidity)) / factor / 100);
}

/** Relative humidity (0 to 1) with which a moisture (share of fresh weight) is in equilibrium. Source: as seedMoisture. */
export function humidityAtMoisture(moisture: number, temperature: number, oil: number): number {
  if (!(moisture >= 0 && moisture < 1 && oil >= 0 && oil < 1)) return Number.NaN;
  const factored = 100 * dryWeightShare(moisture) * humidityFactor(temperature, oil);
  return -Math.expm1((-factored * factored) / 440);
}
