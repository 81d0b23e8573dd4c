// 90 % intervals about a fitted yield-density curve, by the t distribution on the plots less the parameters and the fit's
// covariance: of the curve's mass at a density, on the logarithm where its errors lie even; of the isolated mass and the ceiling
// yield, from the intervals of a and b of which they are the reciprocals. Called by the functions; calls the fit's parts.

import type { DensityFit } from './density-fit.ts';
import { FORMS } from './density-forms.ts';
import { tWithBeyond } from './distributions.ts';
import type { ModelSource } from './source.ts';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** How sure the intervals are. */
export const COVERAGE = 0.9;

const NONE: Interval = { low: Number.NaN, high: Number.NaN };

function deviates({ degrees }: DensityFit): number {
  return tWithBeyond((1 - COVERAGE) / 2, degrees);
}

/** Mean mass at a density by the curve, low and high, in the units of the plots; no answer where there is no fit. */
export function massInterval(fit: DensityFit, density: number): Interval {
  if (fit.fault !== undefined) return NONE;
  const parameters = [fit.a, fit.b, ...(Number.isNaN(fit.shape) ? [] : [fit.shape])];
  const { value, slopes } = FORMS[fit.form];
  const along = slopes(parameters, density);
  let variance = 0;
  fit.covariance.forEach((row, i) => {
    row.forEach((covariance, j) => {
      variance += (along[i] ?? Number.NaN) * covariance * (along[j] ?? Number.NaN);
    });
  });
  const reach = deviates(fit) * Math.sqrt(variance);
  const middle = value(parameters, density);
  return { low: Math.exp(middle - reach), high: Math.exp(middle + reach) };
}

/** 1 / of a parameter, low and high; without a high end where the parameter may be 0, without any where it is not above 0. */
function reciprocalInterval(parameter: number, error: number, reach: number): Interval {
  if (!(parameter > 0)) return NONE;
  const least = parameter - reach * error;
  return { low: 1 / (parameter + reach * error), high: least > 0 ? 1 / least : Number.NaN };
}

/** Mass of a plant on its own, low and high; the two-number form only. */
export function isolatedInterval(fit: DensityFit): Interval {
  return fit.form === 'reciprocal' ? reciprocalInterval(fit.a, fit.aError, deviates(fit)) : NONE;
}

/** Yield that the curve climbs to, low and high; the two-number form only. */
export function ceilingInterval(fit: DensityFit): Interval {
  return fit.form === 'reciprocal' ? reciprocalInterval(fit.b, fit.bError, deviates(fit)) : NONE;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Intervals about a fitted curve',
    gives: 'low and high ends within which the curve, the isolated mass and the ceiling yield lie nine times in ten',
    equation: 'ln(mass) +/- t x root(slopes x covariance x slopes), t on plots less parameters; 1/(a +/- t x error)',
    range: 'the densities of the trial; no high end where a or b may be 0',
    source: 'Bates & Watts 1988, Nonlinear Regression Analysis and Its Applications, chapter 2 (linear approximation)',
    standing: 'published',
  },
];
