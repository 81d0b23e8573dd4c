// From fresh harvest to cured crop: how long, what is lost, and the floor, racks, containers and air it takes. Masses,
// lengths and volumes are in one set of units (kg, m, m3 in the workbook; bulk density kg per m3). Dates are civil days.
// Calls values/tolerance.ts alone.

import { tolerantCeil } from '../values/tolerance.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const CURING_LIMITS = {
  loss: { min: 0, max: 0.6, why: 'published curing losses run from 3 to 10 % of onions; 60 % is no longer curing' },
  bulkDensity: { min: 100, max: 900, why: 'published bulk density of onions is 390 to 679 kg per m3' },
} satisfies Limits;

/** Published conditions for curing a crop; shares for humidity, deg C and days otherwise. */
export interface CuringConditions {
  readonly crop: string;
  readonly temperature: readonly [low: number, high: number];
  readonly humidity: readonly [low: number, high: number];
  readonly days: readonly [low: number, high: number];
  readonly source: string;
}

export const CURING_CONDITIONS: readonly CuringConditions[] = [
  {
    crop: 'Onion',
    temperature: [20, 30],
    humidity: [0.7, 0.7],
    days: [14, 20],
    source: 'University of Massachusetts Extension (68 to 86 F, 70 %); Oregon State University (14 to 20 days in all)',
  },
  {
    crop: 'Potato',
    temperature: [15, 20],
    humidity: [0.9, 0.95],
    days: [5, 10],
    source: 'Kitinoja & Kader, Small-scale postharvest handling practices, FAO',
  },
  {
    crop: 'Sweet potato',
    temperature: [30, 32],
    humidity: [0.85, 0.9],
    days: [4, 7],
    source: 'Kitinoja & Kader, Small-scale postharvest handling practices, FAO',
  },
];

/** Curing loss of sweet onions by maturity at harvest (Maw & Mullinix 2005, Postharvest Biol. Technol. 35: 223-227). */
export const SWEET_ONION_CURING_LOSS = { early: 0.101, optimal: 0.073, late: 0.059 } as const;

/** Mass after curing: fresh x (1 - loss). NaN for a loss outside 0 to 1. */
export function curedMass(fresh: number, loss: number): number {
  return fresh >= 0 && loss >= 0 && loss <= 1 ? fresh * (1 - loss) : Number.NaN;
}

/** Fresh mass to harvest for a cured mass. NaN where all would be lost. */
export function freshForCured(cured: number, loss: number): number {
  return cured >= 0 && loss >= 0 && loss < 1 ? cured / (1 - loss) : Number.NaN;
}

/** Share of mass lost, from what was weighed fresh and weighs now. NaN where it weighs more than it did. */
export function measuredLoss(fresh: number, now: number): number {
  return fresh > 0 && now >= 0 && now <= fresh ? (fresh - now) / fresh : Number.NaN;
}

/** The first day a batch is cured: the day it came in and its whole days of curing. */
export function curedOn(broughtIn: number, days: number): number {
  return days >= 0 ? broughtIn + tolerantCeil(days) : Number.NaN;
}

/** Rack or floor area for a mass spread `depth` deep: mass / (bulk density x depth). NaN for a depth not above zero. */
export function rackArea(mass: number, bulkDensity: number, depth: number): number {
  return mass >= 0 && bulkDensity > 0 && depth > 0 ? mass / (bulkDensity * depth) : Number.NaN;
}

/** Bulk volume of a mass. */
export function bulkVolume(mass: number, bulkDensity: number): number {
  return mass >= 0 && bulkDensity > 0 ? mass / bulkDensity : Number.NaN;
}

/** Containers for a mass, each holding `volume` filled to `fill` of it; the last one perhaps part filled. */
export function containersForMass(mass: number, bulkDensity: number, volume: number, fill = 1): number {
  if (!(volume > 0) || !(fill > 0 && fill <= 1)) return Number.NaN;
  return tolerantCeil(bulkVolume(mass, bulkDensity) / (volume * fill));
}

/** Air a batch wants: bulk volume x flow per volume (curing 2 to 3 volumes a minute, store 0.25 to 0.5 a minute). */
export function airflow(mass: number, bulkDensity: number, flowPerVolume: number): number {
  return flowPerVolume >= 0 ? bulkVolume(mass, bulkDensity) * flowPerVolume : Number.NaN;
}

/** A batch on the racks; `until` is the first day it is gone. */
export interface RackBatch {
  readonly from: number;
  readonly until: number;
  readonly area: number;
}

/** Greatest rack area in use on any one day; 0 without batches. */
export function peakRackArea(batches: readonly RackBatch[]): number {
  return batches.reduce((peak, batch) => {
    const together = batches.filter((other) => other.from <= batch.from && other.until > batch.from);
    return Math.max(
      peak,
      together.reduce((sum, other) => sum + other.area, 0),
    );
  }, 0);
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Curing',
    gives: 'days, mass after curing, racks, containers and air',
    equation: 'cured = fresh x (1 - loss); area = mass / (bulk density x depth)',
    range: 'onions lose 3 to 5 %, sweet types 6 to 10 %; bulk density 390 to 679 kg per m3',
    source:
      'Maw & Mullinix 2005, Postharvest Biol. Technol. 35: 223-227; Kitinoja & Kader, FAO; Oregon State and Massachusetts extension',
    standing: 'published',
  },
];
