// The gamma distribution and those made of it: chi-squared, Weibull, exponential. Shares below and above a value to near full
// relative accuracy, and the values that have them. Called by the functions; calls the incomplete gamma function.

import { gammaLower, gammaTerm, gammaUpper } from './incomplete-gamma.ts';
import { standardNormalQuantile } from './normal.ts';
import { reaches } from './quantile-search.ts';
import { logGamma } from './special-functions.ts';

/** Density at x of the gamma distribution of shape and scale above 0; none at 0 for a shape below 1, where it has no end. */
export function gammaPdf(x: number, shape: number, scale: number): number {
  if (!(shape > 0 && scale > 0)) return Number.NaN;
  if (x < 0) return 0;
  if (x === 0) return shape === 1 ? 1 / scale : shape > 1 ? 0 : Number.NaN;
  return (gammaTerm(shape, x / scale) * shape) / x;
}

/** Share at or below x. */
export function gammaCdf(x: number, shape: number, scale: number): number {
  return scale > 0 ? gammaLower(shape, x / scale) : Number.NaN;
}

/** Share above x, a small one with its figures. */
export function gammaAbove(x: number, shape: number, scale: number): number {
  return scale > 0 ? gammaUpper(shape, x / scale) : Number.NaN;
}

/** The value with `below` of the distribution under it, `above` being 1 - below; 0 where nothing is below, no answer where nothing is above. */
export function gammaQuantile(below: number, above: number, shape: number, scale: number): number {
  if (!(shape > 0 && scale > 0) || !(below >= 0 && above > 0)) return Number.NaN;
  if (below === 0) return 0;
  const rises = below <= 0.5;
  const tail = {
    share: (z: number) => (rises ? gammaLower(shape, z) : gammaUpper(shape, z)),
    slope: (z: number) => gammaTerm(shape, z) * shape,
    rises,
  };
  return reaches(tail, rises ? below : above, startOf(below, above, shape)) * scale;
}

/** Wilson & Hilferty 1931 where the cube is above 0, the first term of the series elsewhere. */
function startOf(below: number, above: number, shape: number): number {
  const z = below <= 0.5 ? standardNormalQuantile(below) : -standardNormalQuantile(above);
  const root = 1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape));
  if (root > 0.3) return shape * root ** 3;
  return Math.exp((Math.log(below) + logGamma(shape + 1)) / shape);
}

/** Share at or below x of a Weibull distribution; 0 below 0. Source: W. Weibull 1951, J. Appl. Mech. 18: 293-297. */
export function weibullCdf(x: number, shape: number, scale: number): number {
  if (!(shape > 0 && scale > 0)) return Number.NaN;
  return x <= 0 ? 0 : -Math.expm1(-((x / scale) ** shape));
}

/** Density at x of a Weibull distribution; none at 0 for a shape below 1. */
export function weibullPdf(x: number, shape: number, scale: number): number {
  if (!(shape > 0 && scale > 0)) return Number.NaN;
  if (x < 0) return 0;
  if (x === 0) return shape === 1 ? 1 / scale : shape > 1 ? 0 : Number.NaN;
  const power = (x / scale) ** shape;
  return (shape / x) * power * Math.exp(-power);
}

/** Share at or below x of an exponential distribution with so many events a unit. */
export function exponentialCdf(x: number, rate: number): number {
  if (!(rate > 0)) return Number.NaN;
  return x <= 0 ? 0 : -Math.expm1(-rate * x);
}

/** Density at x of an exponential distribution. */
export function exponentialPdf(x: number, rate: number): number {
  if (!(rate > 0)) return Number.NaN;
  return x < 0 ? 0 : rate * Math.exp(-rate * x);
}
