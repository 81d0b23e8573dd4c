// Crowding: how the mean mass of a plant falls, and the yield of an area rises, as plants stand closer. Masses and areas
// are in any one set of units (kg and m2 in the workbook; density is then plants per m2). Calls nothing; the function
// library, density-fit.ts and best-spacing.ts call it.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const PLANT_MASS_LIMITS = {
  density: { min: 0, why: 'plants per area cannot be negative' },
  isolated: { min: 0, why: 'the mass of a plant on its own must be above zero' },
  ceiling: { min: 0, why: 'the ceiling yield must be above zero' },
} satisfies Limits;

/** The densities the onion trials behind the default figures cover: figures outside it are a guess. */
export const ONION_DENSITY_LIMITS = {
  density: { min: 18.78, max: 334.55, why: 'onion trials of Ratkowsky 1983 and Mead 1970: 19 to 335 plants per m2' },
} satisfies Limits;

/**
 * Mean mass of a plant: 1/w = 1/isolated + density/ceiling. At density 0 it is the isolated plant's mass; the yield of an
 * area climbs towards the ceiling and never falls. NaN for a negative density or masses not above zero.
 * Source: Shinozaki & Kira 1956, J. Inst. Polytech. Osaka City Univ. D7: 35-72.
 */
export function plantMass(density: number, isolated: number, ceiling: number): number {
  if (!(density >= 0) || !(isolated > 0) || !(ceiling > 0)) return Number.NaN;
  return 1 / (1 / isolated + density / ceiling);
}

/** Mass per area, density x mean plant mass by `plantMass`. */
export function cropYield(density: number, isolated: number, ceiling: number): number {
  return density * plantMass(density, isolated, ceiling);
}

/** The density whose mean plant mass is `mass`, the same relation turned round: 0 at the isolated mass, NaN above it. */
export function densityForMass(mass: number, isolated: number, ceiling: number): number {
  if (!(mass > 0) || !(mass <= isolated) || !(ceiling > 0)) return Number.NaN;
  return ceiling * (1 / mass - 1 / isolated);
}

/**
 * The general form w^-theta = a + b x density, so w = (a + b x density)^(-1/theta). NaN where the bracket is not above
 * zero, as it can be below the densities of a trial whose fitted a is negative.
 * Source: Bleasdale & Nelder 1960, Nature 188: 342.
 */
export function generalPlantMass(density: number, a: number, b: number, theta: number): number {
  const bracket = a + b * density;
  return density >= 0 && theta > 0 && bracket > 0 ? bracket ** (-1 / theta) : Number.NaN;
}

/**
 * The density with the greatest yield in the general form: a x theta / (b x (1 - theta)). It exists only for theta below
 * 1 with a and b above zero; at theta 1 or more the yield keeps rising, and the answer is NaN.
 */
export function optimumDensity(a: number, b: number, theta: number): number {
  return a > 0 && b > 0 && theta > 0 && theta < 1 ? (a * theta) / (b * (1 - theta)) : Number.NaN;
}

/** 1/w = a + b x density + c x density^2. For describing trials only. Source: Holliday 1960, Field Crop Abstr. 13: 159-167. */
export function hollidayPlantMass(density: number, a: number, b: number, c: number): number {
  const reciprocal = a + b * density + c * density * density;
  return density >= 0 && reciprocal > 0 ? 1 / reciprocal : Number.NaN;
}

/** 1/w = a + b x density^phi. For describing trials only. Source: Farazdaghi & Harris 1968, Nature 217: 289-290. */
export function farazdaghiHarrisPlantMass(density: number, a: number, b: number, phi: number): number {
  const reciprocal = a + b * density ** phi;
  return density >= 0 && phi > 0 && reciprocal > 0 ? 1 / reciprocal : Number.NaN;
}

/** Isolated mass and ceiling yield of a reciprocal line through two (density, yield per area) points; NaN if they coincide. */
export function lineThroughYields(
  first: { readonly density: number; readonly yield: number },
  second: { readonly density: number; readonly yield: number },
): { readonly isolated: number; readonly ceiling: number } {
  const firstReciprocal = first.density / first.yield;
  const secondReciprocal = second.density / second.yield;
  const slope = (secondReciprocal - firstReciprocal) / (second.density - first.density);
  const intercept = firstReciprocal - slope * first.density;
  return { isolated: 1 / intercept, ceiling: 1 / slope };
}

/** The furthest from square that the penalty is drawn to; wider rows keep the factor of this one. */
export const SQUARENESS_RANGE = 8;

/** Loss of yield at rectangularity 8: square planting gave 15 to 20 % more, the middle of which is 17.5 %. */
export const SQUARENESS_LOSS_AT_RANGE = 1 - 1 / 1.175;

/**
 * The factor on yield for spacing far from square: 1 at rectangularity 1, falling evenly with its logarithm to 1 -
 * `lossAtEight` at 8, and no further beyond. The straight fall is a judgement; the default end point is the middle of a
 * published range for overwintered bulb onions at 43 to 129 plants per m2, and small pickling onions showed no effect up
 * to 16 (McGeary & Morgans 1985), so a grower may set the loss to 0. NaN for rectangularity below 1 or a loss outside 0 to 1.
 */
export function squarenessFactor(rectangularity: number, lossAtEight: number = SQUARENESS_LOSS_AT_RANGE): number {
  if (!(rectangularity >= 1) || !(lossAtEight >= 0) || !(lossAtEight <= 1)) return Number.NaN;
  return 1 - (lossAtEight * Math.log(Math.min(rectangularity, SQUARENESS_RANGE))) / Math.log(SQUARENESS_RANGE);
}

export interface Stand {
  /** Plants per area, clumps counted plant by plant. */
  readonly density: number;
  readonly isolated: number;
  readonly ceiling: number;
  /** Longer spacing over shorter between stations. */
  readonly rectangularity: number;
  /** Yield lost at rectangularity 8; blank takes the default. */
  readonly squarenessLoss?: number;
  /** The grower's own factor for clumps against singles at the same density; blank is 1. */
  readonly clumpFactor?: number;
}

/**
 * Mean plant mass on a real bed: crowding, then the squareness penalty, then the grower's factor for clumps. A clump is
 * taken as its plants' density, for no published table says more about bulbs at four or more a block. NaN as its parts.
 */
export function standPlantMass(stand: Stand): number {
  const clump = stand.clumpFactor ?? 1;
  if (!(clump > 0)) return Number.NaN;
  return (
    plantMass(stand.density, stand.isolated, stand.ceiling) *
    squarenessFactor(stand.rectangularity, stand.squarenessLoss) *
    clump
  );
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Plant mass and density',
    gives: 'mean mass per plant and yield at a density',
    equation: '1/w = 1/isolated + density/ceiling',
    range: 'onion trials behind it: 19 to 335 plants per m2; below about 20 per m2 it extrapolates',
    source: 'Shinozaki & Kira 1956, J. Inst. Polytech. Osaka City Univ. D7: 35-72',
    standing: 'published',
  },
  {
    model: 'General yield-density form',
    gives: 'plant mass with a best density where theta is below 1',
    equation: 'w^-theta = a + b x density; best density a theta / (b (1 - theta))',
    range: 'the densities of the trial it was fitted to',
    source: 'Bleasdale & Nelder 1960, Nature 188: 342',
    standing: 'published',
  },
  {
    model: 'Holliday; Farazdaghi & Harris',
    gives: 'two further curves for describing trials',
    equation: '1/w = a + b x density + c x density^2; 1/w = a + b x density^phi',
    range: 'the densities of the trial they were fitted to',
    source: 'Holliday 1960, Field Crop Abstracts 13: 159-167; Farazdaghi & Harris 1968, Nature 217: 289-290',
    standing: 'published',
  },
  {
    model: 'Squareness penalty',
    gives: 'yield lost where rows are far apart and plants close in them',
    equation: '1 - loss at 8 x ln R / ln 8',
    range: 'rectangularity 1 to 8, held beyond; bulb onions at 43 to 129 plants per m2',
    source:
      'End point from a trial of overwintered onions (square 15 to 20 % over 8 to 1); the line between is a judgement. McGeary & Morgans 1985 found no effect on small onions',
    standing: 'common practice',
  },
];
