// Crowding: published trials fitted anew and compared with an independent least-squares program, and published yields.
import { type DensityFit, type FitForm, fitDensity } from '../../engine/agronomy/density-fit.ts';
import {
  farazdaghiHarrisPlantMass,
  generalPlantMass,
  hollidayPlantMass,
  plantMass,
  squarenessFactor,
} from '../../engine/agronomy/yield-density.ts';
import type { Check } from './check.ts';
import { numberOf, readTable, textOf } from './table.ts';

const SQUARE_FOOT = 0.09290304;

const TRIAL_SOURCES: Readonly<Record<string, string>> = {
  'Purnong Landing': 'Ratkowsky 1983, Nonlinear Regression Modeling, p. 58 (data)',
  Virginia: 'Ratkowsky 1983, Nonlinear Regression Modeling, p. 58 (data)',
  'Mead variety 1': 'Mead 1970, Plant density and crop yield, Applied Statistics 19: 64-81, variety 1 (data)',
};

const trials = readTable('onion-density-trials');

function fitOf(trial: string, form: FitForm): DensityFit {
  const rows = trials
    .filter((row) => textOf(row, 'trial') === trial)
    .map((row) => ({
      density: numberOf(row, 'density') / (textOf(row, 'density_unit') === 'plants/ft2' ? SQUARE_FOOT : 1),
      mass: numberOf(row, 'mass_g'),
    }));
  return fitDensity(rows, form);
}

function massAt(fit: DensityFit, density: number): number {
  switch (fit.form) {
    case 'reciprocal':
      return plantMass(density, fit.isolated, fit.ceiling);
    case 'general':
      return generalPlantMass(density, fit.a, fit.b, fit.shape);
    case 'quadratic':
      return hollidayPlantMass(density, fit.a, fit.b, fit.shape);
    case 'power':
      return farazdaghiHarrisPlantMass(density, fit.a, fit.b, fit.shape);
  }
}

const FORMS: readonly FitForm[] = ['reciprocal', 'general', 'quadratic', 'power'];

const fits = readTable('density-fits').flatMap((row): readonly Check[] => {
  const trial = textOf(row, 'trial');
  const form = FORMS.find((known) => known === textOf(row, 'form')) ?? 'reciprocal';
  const source = TRIAL_SOURCES[trial] ?? trial;
  const check = (
    what: string,
    unit: string,
    header: string,
    tolerance: number,
    of: (fit: DensityFit) => number,
  ): Check => ({
    source,
    what: `${trial}, ${form} form, ${what}`,
    unit,
    published: numberOf(row, header),
    computed: () => of(fitOf(trial, form)),
    tolerance,
    standing: 'dataset',
  });
  const common = [
    check('sum of squares of ln(mass)', '', 'sum_of_squares', 1e-6, (fit) => fit.sumOfSquares),
    check('residual standard deviation', '', 'residual_sd', 5e-5, (fit) => fit.residualSd),
    check('mass at 25 plants/m2', 'g', 'mass_at_25', 0.02, (fit) => massAt(fit, 25)),
    check('mass at 50 plants/m2', 'g', 'mass_at_50', 0.02, (fit) => massAt(fit, 50)),
    check('mass at 100 plants/m2', 'g', 'mass_at_100', 0.02, (fit) => massAt(fit, 100)),
  ];
  if (form !== 'reciprocal') return common;
  return [...common, check('a', '1/g', 'a', 1e-8, (fit) => fit.a), check('b', 'm2/g', 'b', 1e-9, (fit) => fit.b)];
});

const thetas = (
  [
    ['Purnong Landing', 0.9055],
    ['Virginia', 1.0004],
    ['Mead variety 1', 1.146],
  ] as const
).map(
  ([trial, theta]): Check => ({
    source: TRIAL_SOURCES[trial] ?? trial,
    what: `${trial}, theta of the general form`,
    unit: '',
    published: theta,
    computed: () => fitOf(trial, 'general').shape,
    tolerance: 0.0005,
    standing: 'dataset',
  }),
);

export const checks: readonly Check[] = [
  ...fits,
  ...thetas,
  {
    source: 'Overwintered onion spacing trial, 43 to 129 plants/m2, abstract: square 15 to 20 % over 8 to 1',
    what: 'gain of square planting over rectangularity 8',
    unit: '%',
    published: 17.5,
    computed: () => 100 * (squarenessFactor(1) / squarenessFactor(8) - 1),
    tolerance: 2.5,
    standing: 'published',
  },
];
