// The forms of a yield-density curve as they are fitted: ln(mass) at a density, its slopes along the parameters, and the way back
// from scaled units. Called by the fits of trials; calls nothing but the least-squares types.

import type { Curve } from './least-squares.ts';

/**
 * 'reciprocal' 1/w = a + b d (Shinozaki & Kira); 'general' w^-shape = a + b d (Bleasdale & Nelder); 'quadratic' 1/w = a +
 * b d + shape d^2 (Holliday); 'power' 1/w = a + b d^shape (Farazdaghi & Harris).
 */
export type FitForm = 'reciprocal' | 'general' | 'quadratic' | 'power';

export interface FormModel extends Curve {
  readonly start: readonly number[];
  /** Parameters for densities measured in `density` and masses in `mass`, back to the units of the rows. */
  unscale(parameters: readonly number[], density: number, mass: number): number[];
}

type Parameters3 = readonly [number, number, number];

export function three(parameters: readonly number[]): Parameters3 {
  return [parameters[0] ?? Number.NaN, parameters[1] ?? Number.NaN, parameters[2] ?? Number.NaN];
}

// A bracket below zero has no logarithm, and so no mass.
function logMass(bracket: number, theta: number): number {
  return theta > 0 ? -Math.log(bracket) / theta : Number.NaN;
}

export const FORMS: Readonly<Record<FitForm, Omit<FormModel, 'start'> & { readonly third: readonly number[] }>> = {
  reciprocal: {
    third: [],
    value: (parameters, x) => {
      const [a, b] = three(parameters);
      return logMass(a + b * x, 1);
    },
    slopes: (parameters, x) => {
      const [a, b] = three(parameters);
      const bracket = a + b * x;
      return [-1 / bracket, -x / bracket];
    },
    unscale: (parameters, density, mass) => {
      const [a, b] = three(parameters);
      return [a / mass, b / (mass * density)];
    },
  },
  general: {
    third: [1],
    value: (parameters, x) => {
      const [a, b, theta] = three(parameters);
      return logMass(a + b * x, theta);
    },
    slopes: (parameters, x) => {
      const [a, b, theta] = three(parameters);
      const bracket = a + b * x;
      return [-1 / (theta * bracket), -x / (theta * bracket), Math.log(bracket) / theta ** 2];
    },
    unscale: (parameters, density, mass) => {
      const [a, b, theta] = three(parameters);
      const scale = mass ** -theta;
      return [a * scale, (b * scale) / density, theta];
    },
  },
  quadratic: {
    third: [0],
    value: (parameters, x) => {
      const [a, b, c] = three(parameters);
      return logMass(a + b * x + c * x * x, 1);
    },
    slopes: (parameters, x) => {
      const [a, b, c] = three(parameters);
      const bracket = a + b * x + c * x * x;
      return [-1 / bracket, -x / bracket, (-x * x) / bracket];
    },
    unscale: (parameters, density, mass) => {
      const [a, b, c] = three(parameters);
      return [a / mass, b / (mass * density), c / (mass * density ** 2)];
    },
  },
  power: {
    third: [1],
    value: (parameters, x) => {
      const [a, b, phi] = three(parameters);
      return logMass(a + b * x ** phi, 1);
    },
    slopes: (parameters, x) => {
      const [a, b, phi] = three(parameters);
      const power = x ** phi;
      const bracket = a + b * power;
      return [-1 / bracket, -power / bracket, (-b * power * Math.log(x)) / bracket];
    },
    unscale: (parameters, density, mass) => {
      const [a, b, phi] = three(parameters);
      return [a / mass, b / (mass * density ** phi), phi];
    },
  },
};
