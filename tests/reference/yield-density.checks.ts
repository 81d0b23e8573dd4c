// Crowding: published trials fitted anew and compared with an independent least-squares program. The fits are nobody's publication.
import { type DensityFit, type FitForm, fitDensity } from '../../engine/agronomy/density-fit.ts';
import {
  farazdaghiHarrisPlantMass,
  generalPlantMass,
  hollidayPlantMass,
  plantMass,
} from '../../engine/agronomy/yield-density.ts';
import type { Fact, Point, Publication } from './check.ts';
import { MEAD, RATKOWSKY } from './publications.ts';
import { numberOf, readTable, textOf } from './table.ts';

const SQUARE_FOOT = 0.09290304;

interface Trial {
  readonly data: Publication;
  readonly at: string;
}

const TRIALS: Readonly<Record<string, Trial>> = {
  'Purnong Landing': { data: RATKOWSKY, at: 'page 58, onions at Purnong Landing' },
  'Mead variety 1': { data: MEAD, at: 'onions, variety 1' },
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

const THETAS: Readonly<Record<string, number>> = {
  'Purnong Landing': 0.9055,
  Virginia: 1.0004,
  'Mead variety 1': 1.146,
};

const FITTED_BY = 'an independent least-squares program on ln(mass)';

const fits = readTable('density-fits').map((row): Fact => {
  const name = textOf(row, 'trial');
  const form = FORMS.find((known) => known === textOf(row, 'form')) ?? 'reciprocal';
  const trial = TRIALS[name];
  if (trial === undefined) throw new Error(`no source of ${name}`);
  const point = (what: string, header: string, tolerance: number, of: (fit: DensityFit) => number): Point => ({
    what,
    given: numberOf(row, header),
    computed: () => of(fitOf(name, form)),
    tolerance,
  });
  const common = [
    point('sum of squares of ln(mass)', 'sum_of_squares', 1e-6, (fit) => fit.sumOfSquares),
    point('residual standard deviation', 'residual_sd', 5e-5, (fit) => fit.residualSd),
    point('mass at 25 plants/m2, g', 'mass_at_25', 0.02, (fit) => massAt(fit, 25)),
    point('mass at 50 plants/m2, g', 'mass_at_50', 0.02, (fit) => massAt(fit, 50)),
    point('mass at 100 plants/m2, g', 'mass_at_100', 0.02, (fit) => massAt(fit, 100)),
  ];
  const theta: Point = {
    what: 'theta',
    given: THETAS[name] ?? Number.NaN,
    computed: () => fitOf(name, form).shape,
    tolerance: 0.0005,
  };
  const own: Readonly<Record<FitForm, readonly Point[]>> = {
    reciprocal: [point('a, 1/g', 'a', 1e-8, (fit) => fit.a), point('b, m2/g', 'b', 1e-9, (fit) => fit.b)],
    general: [theta],
    quadratic: [],
    power: [],
  };
  return {
    kind: 're-fitted',
    fact: `${form} curve of ${name}`,
    unit: '',
    ...trial,
    fittedBy: FITTED_BY,
    points: [...common, ...own[form]],
  };
});

export const facts: readonly Fact[] = [
  ...fits,
  {
    kind: 're-fitted',
    fact: 'general curve of Virginia',
    unit: '',
    data: RATKOWSKY,
    at: 'page 58, onions at Virginia',
    fittedBy: FITTED_BY,
    points: [
      {
        what: 'theta',
        given: THETAS.Virginia ?? Number.NaN,
        computed: () => fitOf('Virginia', 'general').shape,
        tolerance: 0.0005,
      },
    ],
  },
];
