// Size grades: how a crop with a normal spread of diameters falls into size bands, by number and by mass, where a piece
// weighs shape x diameter^3. Lengths and masses are in one set of units (m, kg and kg/m3 in the workbook; cm, g and g/cm3
// give the same shape factor over 1000). May call distributions.ts; the function library and best-spacing.ts call it.

import { standardNormalCdf, standardNormalPdf } from './distributions.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const GRADE_LIMITS = {
  mean: { min: 0, why: 'a mean diameter must be above zero' },
  spread: { min: 0, max: 0.3, why: 'above 30 % a normal spread would give diameters below zero' },
} satisfies Limits;

/**
 * Mass over diameter cubed of a bulb onion, kg/m3: a medium onion 2.5 in across weighs 110 g (USDA National Nutrient
 * Database SR28), which is 430. Flat sweet onions come to 360 to 400, round ones to 500; the grower may set it.
 */
export const ONION_SHAPE = 430;

/** Usual coefficient of variation of bulb diameter: 14.0 % measured on one crop; 10 to 18 % is a judgement. */
export const ONION_SPREAD = 0.14;

function isSpread(mean: number, spread: number): boolean {
  return mean > 0 && Number.isFinite(mean) && spread >= 0 && spread <= GRADE_LIMITS.spread.max;
}

function standardized(limit: number, mean: number, spread: number): number {
  return (limit - mean) / (mean * spread);
}

/** z^power x normal density of z, which is 0 at either infinity. */
function edge(z: number, power: number): number {
  return Number.isFinite(z) ? z ** power * standardNormalPdf(z) : 0;
}

/** Probability between two standard limits, worked from the nearer tail so that a far band keeps its digits. */
function between(low: number, high: number): number {
  return low > 0
    ? standardNormalCdf(-low) - standardNormalCdf(-high)
    : standardNormalCdf(high) - standardNormalCdf(low);
}

/**
 * Share by number of diameters in [from, to): normal with a mean and a coefficient of variation `spread`. An open end is
 * -Infinity or Infinity. With no spread every piece has the mean diameter. 0 where `to` is not above `from`; NaN for a
 * mean not above zero, a spread outside 0 to 0.3 or a limit that is not a number.
 */
export function gradeShare(mean: number, spread: number, from: number, to: number): number {
  if (!isSpread(mean, spread) || Number.isNaN(from) || Number.isNaN(to)) return Number.NaN;
  if (to <= from) return 0;
  if (spread === 0) return mean >= from && mean < to ? 1 : 0;
  return between(standardized(from, mean, spread), standardized(to, mean, spread));
}

/**
 * Share by mass of diameters in [from, to), a piece weighing shape x diameter^3: the third moment of the normal spread
 * cut at both limits, over the whole third moment, in closed form. Ends, blanks and bad input as for `gradeShare`.
 */
export function gradeMassShare(mean: number, spread: number, from: number, to: number): number {
  const numberShare = gradeShare(mean, spread, from, to);
  if (!(numberShare > 0) || spread === 0) return numberShare;
  const low = standardized(from, mean, spread);
  const high = standardized(to, mean, spread);
  const first = edge(low, 0) - edge(high, 0);
  const second = numberShare + edge(low, 1) - edge(high, 1);
  const third = 2 * first + edge(low, 2) - edge(high, 2);
  const cut = numberShare + 3 * spread * first + 3 * spread ** 2 * second + spread ** 3 * third;
  return Math.min(1, Math.max(0, cut / (1 + 3 * spread ** 2)));
}

/** Mass of one piece of a diameter: shape x diameter^3. NaN for a negative diameter or a shape not above zero. */
export function pieceMass(diameter: number, shape: number): number {
  return diameter >= 0 && shape > 0 ? shape * diameter ** 3 : Number.NaN;
}

/** Shape factor of a piece that was measured and weighed: mass / diameter^3. */
export function shapeFactor(mass: number, diameter: number): number {
  return mass > 0 && diameter > 0 ? mass / diameter ** 3 : Number.NaN;
}

/** Mean mass of a crop: shape x mean^3 x (1 + 3 spread^2), more than the mass of the mean diameter. NaN as `gradeShare`. */
export function meanMassOfDiameter(mean: number, spread: number, shape: number): number {
  return isSpread(mean, spread) && shape > 0 ? shape * mean ** 3 * (1 + 3 * spread ** 2) : Number.NaN;
}

/** The mean diameter whose crop has this mean mass: `meanMassOfDiameter` turned round. NaN for a mass not above zero. */
export function meanDiameterOfMass(meanMass: number, spread: number, shape: number): number {
  if (!(meanMass > 0) || !(shape > 0) || !isSpread(1, spread)) return Number.NaN;
  return Math.cbrt(meanMass / (shape * (1 + 3 * spread ** 2)));
}

/** Mean mass of the pieces of one band, from the crop's mean mass and the band's two shares. NaN where none falls in it. */
export function bandMeanMass(meanMass: number, numberShare: number, massShare: number): number {
  return numberShare > 0 ? (meanMass * massShare) / numberShare : Number.NaN;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Size grades',
    gives: 'share of a crop in a size band, by number and by mass',
    equation:
      'diameters normal with mean and coefficient of variation; mass = shape x diameter^3; mean mass = shape x mean^3 x (1 + 3 CV^2)',
    range: 'coefficient of variation up to 30 %',
    source:
      'Diameter distribution with a weight-diameter relation as in J. Agric. Sci. Camb., "Weight, size and shape relationships and their uses in the study of graded yield data"; shape from USDA National Nutrient Database SR28',
    standing: 'published',
  },
];
