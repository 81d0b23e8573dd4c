// Weighted nonlinear least squares for a handful of parameters, by Levenberg-Marquardt: the steps of Marquardt 1963
// (J. Soc. Indust. Appl. Math. 11: 431-441) with damping scaled by the diagonal. Small and dense, made for trial data of
// tens of rows. Calls elimination.ts; density-fit.ts calls it.

import { eliminate } from './elimination.ts';

/** A curve to fit: its value at x and its slope along each parameter; NaN where the parameters have no value there. */
export interface Curve {
  value(parameters: readonly number[], x: number): number;
  slopes(parameters: readonly number[], x: number): readonly number[];
}

export interface Observation {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

export interface Fit {
  readonly parameters: readonly number[];
  /** Weighted sum of squared residuals; NaN where the start had no value at an x. */
  readonly sumOfSquares: number;
  readonly converged: boolean;
}

const MOST_STEPS = 500;
const SETTLED = 1e-13;

function at(values: readonly number[], index: number): number {
  return values[index] ?? Number.NaN;
}

/** Solves a symmetric positive definite system, which has pivots above zero and needs no exchange; undefined for any other. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | undefined {
  const size = right.length;
  const rows = matrix.map((row, index) => [...row, at(right, index)]);
  eliminate(rows);
  if (!rows.every((row, index) => at(row, index) > 0)) return undefined;
  return rows.map((row, index) => at(row, size) / at(row, index));
}

function sumOfSquares(curve: Curve, data: readonly Observation[], parameters: readonly number[]): number {
  let sum = 0;
  for (const { x, y, weight } of data) sum += weight * (y - curve.value(parameters, x)) ** 2;
  return sum;
}

/** The normal matrix J'WJ of a curve over the data. */
export function normalMatrix(curve: Curve, data: readonly Observation[], parameters: readonly number[]): number[][] {
  const normal = parameters.map(() => parameters.map(() => 0));
  for (const { x, weight } of data) {
    const slopes = curve.slopes(parameters, x);
    normal.forEach((row, i) => {
      for (let j = 0; j < row.length; j += 1) row[j] = at(row, j) + weight * at(slopes, i) * at(slopes, j);
    });
  }
  return normal;
}

function gradient(curve: Curve, data: readonly Observation[], parameters: readonly number[]): number[] {
  const sums = parameters.map(() => 0);
  for (const { x, y, weight } of data) {
    const residual = y - curve.value(parameters, x);
    const slopes = curve.slopes(parameters, x);
    for (let i = 0; i < sums.length; i += 1) sums[i] = at(sums, i) + weight * residual * at(slopes, i);
  }
  return sums;
}

/** The parameters with the least weighted sum of squares, searched from `start`, which must have a value at every x. */
export function fitLeastSquares(curve: Curve, data: readonly Observation[], start: readonly number[]): Fit {
  let parameters = [...start];
  let best = sumOfSquares(curve, data, parameters);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS && Number.isFinite(best); step += 1) {
    const normal = normalMatrix(curve, data, parameters);
    const damped = normal.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) : value)));
    const change = solve(damped, gradient(curve, data, parameters)) ?? parameters.map(() => Number.NaN);
    const tried = parameters.map((value, i) => value + at(change, i));
    const sum = sumOfSquares(curve, data, tried);
    if (!(sum <= best)) {
      damping *= 10;
      if (damping > 1e12) return { parameters, sumOfSquares: best, converged: true };
      continue;
    }
    const settled = change.every((value, i) => Math.abs(value) <= SETTLED * (Math.abs(at(tried, i)) + SETTLED));
    parameters = tried;
    best = sum;
    damping = Math.max(damping / 10, 1e-12);
    if (settled) return { parameters, sumOfSquares: best, converged: true };
  }
  return { parameters, sumOfSquares: best, converged: false };
}

/**
 * Variances and covariances of the parameters: residual sd squared x the inverse normal matrix, worked on a matrix scaled to a unit
 * diagonal. NaN throughout where the parameters cannot be told apart.
 */
export function covarianceOf(normal: readonly (readonly number[])[], residualSd: number): number[][] {
  const scale = normal.map((row, i) => Math.sqrt(at(row, i)));
  const scaled = normal.map((row, i) => row.map((value, j) => value / (at(scale, i) * at(scale, j))));
  return scale.map((size, i) => {
    const unit = scale.map((_, j) => (i === j ? 1 : 0));
    const inverse = solve(scaled, unit) ?? unit.map(() => Number.NaN);
    return inverse.map((value, j) => (residualSd ** 2 * value) / (size * at(scale, j)));
  });
}
