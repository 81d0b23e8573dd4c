// Least squares by itself: the system it solves, the errors it states, and what a search does when it cannot move.

import { describe, expect, test } from 'vitest';
import {
  type Curve,
  covarianceOf,
  fitLeastSquares,
  normalMatrix,
  type Observation,
  solve,
} from '../../engine/agronomy/least-squares.ts';

const at = (parameters: readonly number[], index: number): number => parameters[index] ?? Number.NaN;
const plots = (...points: readonly (readonly [number, number])[]): Observation[] =>
  points.map(([x, y]) => ({ x, y, weight: 1 }));

const line: Curve = {
  value: (parameters, x) => at(parameters, 0) + at(parameters, 1) * x,
  slopes: (_, x) => [1, x],
};

const errorsOf = (normal: number[][], spread: number): number[] =>
  covarianceOf(normal, spread).map((row, i) => Math.sqrt(row[i] ?? Number.NaN));

describe('solve', () => {
  test.each([
    ['one unknown', [[4]], [2], [0.5]],
    // 2x + y = 4, x + 3y = 7: y = 2, x = 1.
    // biome-ignore format: a system reads as rows
    ['two unknowns', [[2, 1], [1, 3]], [4, 7], [1, 2]],
    // x = 1, y = -1, z = 2 put into each row.
    // biome-ignore format: a system reads as rows
    ['three unknowns', [[4, 1, 2], [1, 3, 0], [2, 0, 5]], [7, -2, 12], [1, -1, 2]],
  ])('%s', (_, matrix, right, answer) => {
    const found = solve(matrix, right) ?? [];
    expect(found).toHaveLength(answer.length);
    found.forEach((value, i) => {
      expect(value).toBeCloseTo(at(answer, i), 12);
    });
  });

  test('leaves the system it was given as it was', () => {
    const matrix = [
      [2, 1],
      [1, 3],
    ];
    solve(matrix, [4, 7]);
    expect(matrix).toEqual([
      [2, 1],
      [1, 3],
    ]);
  });

  test.each([
    // biome-ignore format: a system reads as rows
    ['two rows alike', [[1, 2], [2, 4]], [1, 2]],
    // biome-ignore format: a system reads as rows
    ['not positive', [[1, 3], [3, 1]], [1, 1]],
    ['nought', [[0]], [1]],
    ['a missing figure', [[Number.NaN]], [1]],
  ])('%s has no answer', (_, matrix, right) => {
    expect(solve(matrix, right)).toBeUndefined();
  });
});

describe('a straight line', () => {
  // Means 2 and 4, sums of squares about them 2 and of products 3: slope 1.5, intercept 1; residuals 0.5, -1, 0.5.
  const data = plots([1, 3], [2, 3], [3, 6]);

  test('comes out as worked by hand', () => {
    const fit = fitLeastSquares(line, data, [0, 0]);
    expect(fit.converged).toBe(true);
    expect(at(fit.parameters, 0)).toBeCloseTo(1, 10);
    expect(at(fit.parameters, 1)).toBeCloseTo(1.5, 10);
    expect(fit.sumOfSquares).toBeCloseTo(1.5, 12);
  });

  test('the normal matrix holds count, sum and sum of squares of x, weights counted', () => {
    expect(normalMatrix(line, data, [0, 0])).toEqual([
      [3, 6],
      [6, 14],
    ]);
    expect(normalMatrix(line, [{ x: 3, y: 6, weight: 2 }], [0, 0])).toEqual([
      [2, 6],
      [6, 18],
    ]);
  });

  test('its standard errors are those of the textbook: sd / root Sxx for the slope', () => {
    const [ofIntercept, ofSlope] = errorsOf(normalMatrix(line, data, [1, 1.5]), 2);
    expect(ofSlope).toBeCloseTo(2 / Math.SQRT2, 12);
    // sd x root(1/n + mean^2 / Sxx)
    expect(ofIntercept).toBeCloseTo(2 * Math.sqrt(1 / 3 + 4 / 2), 12);
  });

  test('a plot of weight 3 pulls as three plots do', () => {
    const heavy = fitLeastSquares(line, [...data, { x: 4, y: 4, weight: 3 }], [0, 0]);
    const repeated = fitLeastSquares(line, [...data, ...plots([4, 4], [4, 4], [4, 4])], [0, 0]);
    expect(at(heavy.parameters, 1)).toBeCloseTo(at(repeated.parameters, 1), 10);
    expect(heavy.sumOfSquares).toBeCloseTo(repeated.sumOfSquares, 10);
  });
});

describe('parameters that cannot be told apart', () => {
  const twins: Curve = {
    value: (parameters, x) => (at(parameters, 0) + at(parameters, 1)) * x,
    slopes: (_, x) => [x, x],
  };

  test('their sum is found all the same', () => {
    const fit = fitLeastSquares(twins, plots([1, 5], [2, 10]), [0, 0]);
    expect(fit.converged).toBe(true);
    expect(at(fit.parameters, 0) + at(fit.parameters, 1)).toBeCloseTo(5, 9);
  });

  test('they have no standard error', () => {
    expect(errorsOf(normalMatrix(twins, plots([1, 5], [2, 10]), [2, 3]), 1)).toEqual([Number.NaN, Number.NaN]);
  });
});

describe('the search', () => {
  test('a start without a value is given back as not found', () => {
    const root: Curve = {
      value: (parameters) => (at(parameters, 0) > 0 ? Math.sqrt(at(parameters, 0)) : Number.NaN),
      slopes: () => [1],
    };
    expect(fitLeastSquares(root, plots([1, 2]), [-1])).toEqual({
      parameters: [-1],
      sumOfSquares: Number.NaN,
      converged: false,
    });
  });

  test('a curve no parameter moves stays where it started', () => {
    const still: Curve = { value: (parameters) => 3 + 0 * at(parameters, 0), slopes: () => [0] };
    expect(fitLeastSquares(still, plots([1, 5]), [7])).toEqual({ parameters: [7], sumOfSquares: 4, converged: true });
  });

  test('a full step that overshoots is shortened until the sum falls', () => {
    // From 2 the full step of arctan lands at -3.5 and the next ones run away.
    const arctangent: Curve = {
      value: (parameters) => Math.atan(at(parameters, 0)),
      slopes: (parameters) => [1 / (1 + at(parameters, 0) ** 2)],
    };
    const fit = fitLeastSquares(arctangent, plots([1, 0]), [2]);
    expect(fit.converged).toBe(true);
    expect(at(fit.parameters, 0)).toBeCloseTo(0, 12);
  });

  test('it goes on while one parameter still moves, though the other stands at its best', () => {
    const halves: Curve = {
      value: (parameters, x) => at(parameters, 0) + Math.exp(at(parameters, 1)) * x,
      slopes: (parameters, x) => [1, Math.exp(at(parameters, 1)) * x],
    };
    const fit = fitLeastSquares(halves, plots([-1, -4], [1, 4]), [0, 0]);
    expect(at(fit.parameters, 0)).toBeCloseTo(0, 12);
    expect(at(fit.parameters, 1)).toBeCloseTo(Math.log(4), 12);
  });

  test('small parameters are found as closely as large ones', () => {
    const steep: Curve = {
      value: (parameters) => Math.exp(1e9 * at(parameters, 0)),
      slopes: (parameters) => [1e9 * Math.exp(1e9 * at(parameters, 0))],
    };
    const fit = fitLeastSquares(steep, plots([0, 4]), [0]);
    expect(at(fit.parameters, 0) * 1e9).toBeCloseTo(Math.log(4), 10);
  });

  test('one that still creeps after hundreds of steps says that it found nothing', () => {
    // Each step on a tenth power takes a tenth off: 1e8 falls to about 1e-15 in 500 steps and has not settled.
    const flat: Curve = {
      value: (parameters) => at(parameters, 0) ** 10,
      slopes: (parameters) => [10 * at(parameters, 0) ** 9],
    };
    const fit = fitLeastSquares(flat, plots([1, 0]), [1e8]);
    expect(fit.converged).toBe(false);
    expect(at(fit.parameters, 0)).toBeGreaterThan(0);
    expect(at(fit.parameters, 0)).toBeLessThan(1e-12);
  });
});
