// Own spacing trials turned into a yield-density curve: least squares on the logarithm of mean mass, since its spread is a
// share of the mean, not a fixed weight. Gives parameters, standard errors and the curve over the densities tried. Units
// are those of yield-density.ts. The forms of the curve stand in density-forms.ts, intervals in fit-intervals.ts. May call
// least-squares.ts; the function library and the trials sheet call it.

import { type FitForm, FORMS, three } from './density-forms.ts';
import { covarianceOf, fitLeastSquares, normalMatrix, type Observation } from './least-squares.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

/** One plot: plants per area and mean mass per plant; `weight` counts it more or less than 1 (say, plants weighed). */
export interface TrialRow {
  readonly density: number;
  readonly mass: number;
  readonly weight?: number;
}

export type { FitForm } from './density-forms.ts';

/** Why a trial gives no curve. */
export type FitFault = 'too few rows' | 'too few densities' | 'not above zero' | 'no curve found';

export interface CurvePoint {
  readonly density: number;
  readonly mass: number;
  readonly yield: number;
}

/** A fitted curve. Where `fault` is set every number but `rows` is NaN and the curve is empty. */
export interface DensityFit {
  readonly form: FitForm;
  readonly fault: FitFault | undefined;
  readonly rows: number;
  readonly a: number;
  readonly b: number;
  /** theta, c or phi of the three-parameter forms; NaN in the reciprocal form. */
  readonly shape: number;
  readonly aError: number;
  readonly bError: number;
  readonly shapeError: number;
  /** Variances and covariances of a, b and the shape; empty where there is no fit. */
  readonly covariance: readonly (readonly number[])[];
  /** Plots less what was fitted to them. */
  readonly degrees: number;
  /** Weighted sum of squares and standard deviation of the residuals of ln(mass); 0.08 is about 8 %. */
  readonly sumOfSquares: number;
  readonly residualSd: number;
  /** Mass of a plant on its own, where the curve has one; a fitted a at or below zero has none. */
  readonly isolated: number;
  readonly isolatedError: number;
  /** Yield the curve climbs to, reciprocal form only. */
  readonly ceiling: number;
  readonly ceilingError: number;
  /** The curve over the densities tried, never beyond them. */
  readonly curve: readonly CurvePoint[];
}

/** Below this theta the general form has become a straight line of ln(mass) on density, and its a and b say nothing. */
const LEAST_THETA = 0.01;

export const FIT_LIMITS = {
  rows: {
    min: 3,
    why: 'two unknowns and a spread need three plots at two densities or more; a third unknown one more of each',
  },
} satisfies Limits;

const CURVE_POINTS = 41;

function noFit(form: FitForm, fault: FitFault, rows: number): DensityFit {
  const none = Number.NaN;
  return {
    form,
    fault,
    rows,
    a: none,
    b: none,
    shape: none,
    aError: none,
    bError: none,
    shapeError: none,
    covariance: [],
    degrees: none,
    sumOfSquares: none,
    residualSd: none,
    isolated: none,
    isolatedError: none,
    ceiling: none,
    ceilingError: none,
    curve: [],
  };
}

function faultOf(rows: readonly TrialRow[], parameterCount: number): FitFault | undefined {
  if (rows.some((row) => !(row.density > 0 && row.mass > 0 && (row.weight ?? 1) > 0))) return 'not above zero';
  if (rows.length <= parameterCount) return 'too few rows';
  if (new Set(rows.map((row) => row.density)).size < parameterCount) return 'too few densities';
  return undefined;
}

function isMeasured(row: TrialRow): boolean {
  return !Number.isNaN(row.density) && !Number.isNaN(row.mass) && !Number.isNaN(row.weight);
}

function weightedMean(rows: readonly TrialRow[], value: (row: TrialRow) => number): number {
  let total = 0;
  let sum = 0;
  for (const row of rows) {
    const weight = row.weight ?? 1;
    total += weight;
    sum += weight * value(row);
  }
  return sum / total;
}

/** Straight line of 1/mass on density as the starting point, kept above zero over the data. */
function startingLine(data: readonly Observation[]): readonly [number, number] {
  const meanOf = (value: (row: Observation) => number): number =>
    data.reduce((sum, row) => sum + row.weight * value(row), 0) / data.reduce((sum, row) => sum + row.weight, 0);
  const x = meanOf((row) => row.x);
  const reciprocal = meanOf((row) => Math.exp(-row.y));
  const covariance = meanOf((row) => (row.x - x) * (Math.exp(-row.y) - reciprocal));
  const slope = covariance / meanOf((row) => (row.x - x) ** 2);
  const intercept = reciprocal - slope * x;
  const positive = data.every((row) => intercept + slope * row.x > 0);
  return positive ? [intercept, slope] : [reciprocal / 2, reciprocal / (2 * x)];
}

/**
 * Fits a form to trial plots. A plot with a blank (NaN) in it is left out; a density, mass or weight at or below zero
 * refuses the whole trial, as do too few plots or densities: then the numbers are NaN and `fault` says why.
 */
export function fitDensity(trial: readonly TrialRow[], form: FitForm = 'reciprocal'): DensityFit {
  const rows = trial.filter(isMeasured);
  const model = FORMS[form];
  const parameterCount = 2 + model.third.length;
  const fault = faultOf(rows, parameterCount);
  if (fault !== undefined) return noFit(form, fault, rows.length);

  const densityScale = weightedMean(rows, (row) => row.density);
  const massScale = Math.exp(weightedMean(rows, (row) => Math.log(row.mass)));
  const scaled = rows.map((row) => ({
    x: row.density / densityScale,
    y: Math.log(row.mass / massScale),
    weight: row.weight ?? 1,
  }));
  const fit = fitLeastSquares(model, scaled, [...startingLine(scaled), ...model.third]);
  const parameters = model.unscale(fit.parameters, densityScale, massScale);
  const vanishing = form === 'general' && three(parameters)[2] < LEAST_THETA;
  if (!fit.converged || !parameters.every(Number.isFinite) || vanishing)
    return noFit(form, 'no curve found', rows.length);

  const degrees = rows.length - parameterCount;
  const residualSd = Math.sqrt(fit.sumOfSquares / degrees);
  const data = rows.map((row) => ({ x: row.density, y: Math.log(row.mass), weight: row.weight ?? 1 }));
  const covariance = covarianceOf(normalMatrix(model, data, parameters), residualSd);
  const [aError, bError, shapeError] = three(covariance.map((row, i) => Math.sqrt(row[i] ?? Number.NaN)));
  const [a, b, shape] = three(parameters);
  const theta = form === 'general' ? shape : 1;
  const isolated = a > 0 ? a ** (-1 / theta) : Number.NaN;
  const ceiling = form === 'reciprocal' && b > 0 ? 1 / b : Number.NaN;
  return {
    form,
    fault: undefined,
    rows: rows.length,
    a,
    b,
    shape,
    aError,
    bError,
    shapeError,
    covariance,
    degrees,
    sumOfSquares: fit.sumOfSquares,
    residualSd,
    isolated,
    isolatedError: form === 'general' ? Number.NaN : (isolated * aError) / a,
    ceiling,
    ceilingError: ceiling * bError * ceiling,
    curve: curveOver(rows, (density) => model.value(parameters, density)),
  };
}

function curveOver(rows: readonly TrialRow[], logMassAt: (density: number) => number): CurvePoint[] {
  const densities = rows.map((row) => row.density);
  const low = Math.min(...densities);
  const high = Math.max(...densities);
  const points: CurvePoint[] = [];
  for (let step = 0; step < CURVE_POINTS; step += 1) {
    const density = low + ((high - low) * step) / (CURVE_POINTS - 1);
    const mass = Math.exp(logMassAt(density));
    points.push({ density, mass, yield: density * mass });
  }
  return points;
}

/** A fault as a grower reads it. */
export function fitFaultSentence(fault: FitFault): string {
  switch (fault) {
    case 'too few rows':
      return 'A curve needs at least three weighed plots (four for the general form). Add plots to the trial.';
    case 'too few densities':
      return 'All plots stand at nearly the same spacing. Add plots planted closer or wider.';
    case 'not above zero':
      return 'A density, mass or weight is zero or below. Correct that plot or leave it blank.';
    case 'no curve found':
      return 'No curve of this form follows these plots. Check for a mistyped weight, or use the two-number form.';
  }
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Fit of a spacing trial',
    gives: 'isolated plant mass and ceiling yield from own plots, with standard errors',
    equation: 'least squares on ln(mass); 1/w = a + b x density, or w^-theta = a + b x density',
    range: 'the densities of the trial; three plots or more',
    source: 'Ratkowsky 1983, Nonlinear Regression Modeling, chapter 3; steps by Marquardt 1963',
    standing: 'published',
  },
];
