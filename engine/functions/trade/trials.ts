// Own spacing trials as functions: the yield-density curve fitted to plots, its numbers with their standard errors, what it
// says at a density. The fit stands in agronomy/density-fit.ts; read by trade/index.ts.

import { type DensityFit, type FitForm, fitDensity, fitFaultSentence } from '../../agronomy/density-fit.ts';
import { ceilingInterval, type Interval, isolatedInterval, massInterval } from '../../agronomy/fit-intervals.ts';
import { generalPlantMass, optimumDensity, plantMass } from '../../agronomy/yield-density.ts';
import type { Parameter, Result } from '../../language/signature.ts';
import { canonicalUnit } from '../../units/arithmetic.ts';
import { dimension, MASS } from '../../units/dimension.ts';
import type { Unit } from '../../units/unit.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  columnOf,
  GRAM,
  inUnit,
  KILOGRAMS_PER_SQUARE_METRE,
  numeric,
  overMatching,
  PER_SQUARE_METRE,
  PLAIN,
  plain,
  quantity,
  SHARE,
} from './build.ts';
import { numberOf } from './over-days.ts';

const FIT = 'Ratkowsky 1983, Nonlinear Regression Modeling, chapter 3; steps by Marquardt 1963';
const GENERAL = 'Bleasdale & Nelder 1960, Nature 188:342';
const PER_AREA = dimension({ length: -2 });
const PER_MASS: Unit = canonicalUnit(dimension({ mass: -1 }));
const AREA_PER_MASS: Unit = canonicalUnit(dimension({ mass: -1, length: 2 }));

const PLOTS: readonly Parameter[] = [columnOf('densities', PER_AREA), columnOf('masses', MASS)];

type Columns = readonly (readonly Scalar[])[];

function plotsOf([densities = [], masses = []]: Columns): { readonly density: number; readonly mass: number }[] {
  return densities.map((density, row) => ({ density: numberOf(density), mass: numberOf(masses[row]) }));
}

function fitting(
  name: string,
  doc: string,
  result: Result,
  answer: (fit: DensityFit) => Scalar,
  form: FitForm = 'reciprocal',
): FunctionDefinition {
  return overMatching(
    { name, group: 'space and yield', parameters: [], result, doc, source: FIT },
    PLOTS,
    (_, columns) => answer(fitDensity(plotsOf(columns), form)),
  );
}

const INTERVALS = 'Bates & Watts 1988, Nonlinear Regression Analysis and Its Applications, chapter 2';

/** One end of an interval of the fit. */
function bound(
  name: string,
  doc: string,
  result: Result,
  interval: (fit: DensityFit) => Interval,
  end: keyof Interval,
) {
  return overMatching(
    { name, group: 'space and yield', parameters: [], result, doc, source: INTERVALS },
    PLOTS,
    (_, columns) => interval(fitDensity(plotsOf(columns)))[end],
  );
}

function massBound(name: string, doc: string, end: keyof Interval): FunctionDefinition {
  return overMatching(
    {
      name,
      group: 'space and yield',
      parameters: [quantity('density', PER_AREA)],
      result: inUnit(GRAM),
      doc,
      source: INTERVALS,
    },
    PLOTS,
    ([density], columns) => ofCurve(numberOf(density), columns, (fit, at) => massInterval(fit, at)[end]),
  );
}

/** An answer of the curve at a density of the trial; outside the densities tried the cell says so. */
function ofCurve(density: number, columns: Columns, answer: (fit: DensityFit, density: number) => Scalar): Scalar {
  const plots = plotsOf(columns).filter((plot) => !Number.isNaN(plot.density + plot.mass));
  const fit = fitDensity(plots);
  if (fit.fault !== undefined || Number.isNaN(density)) return null;
  const tried = plots.map((plot) => plot.density);
  if (density < Math.min(...tried) || density > Math.max(...tried)) {
    return {
      error: 'range',
      why: 'This density lies outside those of the trial, where the curve is only known: choose one between its widest and closest plots.',
    };
  }
  return answer(fit, density);
}

function massOf(fit: DensityFit, density: number): number {
  return fit.a > 0 ? plantMass(density, fit.isolated, fit.ceiling) : 1 / (fit.a + fit.b * density);
}

export const TRIALS: readonly FunctionDefinition[] = [
  fitting(
    'FITISOLATED',
    'Mass of a plant on its own by the curve fitted to the plots; blank where they give none.',
    inUnit(GRAM),
    (fit) => fit.isolated,
  ),
  fitting('FITISOLATEDERROR', 'Standard error of FITISOLATED.', inUnit(GRAM), (fit) => fit.isolatedError),
  fitting(
    'FITCEILING',
    'Yield per area that the curve fitted to the plots climbs to.',
    inUnit(KILOGRAMS_PER_SQUARE_METRE),
    (fit) => fit.ceiling,
  ),
  fitting(
    'FITCEILINGERROR',
    'Standard error of FITCEILING.',
    inUnit(KILOGRAMS_PER_SQUARE_METRE),
    (fit) => fit.ceilingError,
  ),
  fitting('FITA', 'a of 1/w = a + b x density, fitted on the logarithm of mass.', inUnit(PER_MASS), (fit) => fit.a),
  fitting('FITAERROR', 'Standard error of FITA.', inUnit(PER_MASS), (fit) => fit.aError),
  fitting('FITB', 'b of 1/w = a + b x density.', inUnit(AREA_PER_MASS), (fit) => fit.b),
  fitting('FITBERROR', 'Standard error of FITB.', inUnit(AREA_PER_MASS), (fit) => fit.bError),
  fitting(
    'FITSPREAD',
    'How far plots scatter about the curve: standard deviation of the logarithm of mass, about a share of the mass.',
    inUnit(SHARE),
    (fit) => fit.residualSd,
  ),
  fitting('FITPLOTS', 'Plots that count in the fit.', inUnit(PLAIN), (fit) => fit.rows),
  fitting(
    'FITTHETA',
    'Theta of the general form w^-theta = a + b x density; 1 is the two-number curve.',
    inUnit(PLAIN),
    (fit) => fit.shape,
    'general',
  ),
  fitting('FITTHETAERROR', 'Standard error of FITTHETA.', inUnit(PLAIN), (fit) => fit.shapeError, 'general'),
  fitting('FITSAYS', 'Why the plots give no curve, in a sentence; blank where they give one.', { is: 'text' }, (fit) =>
    fit.fault === undefined ? null : fitFaultSentence(fit.fault),
  ),
  overMatching(
    {
      name: 'FITMASS',
      group: 'space and yield',
      parameters: [quantity('density', PER_AREA)],
      result: inUnit(GRAM),
      doc: 'Mean mass of a plant at a density by the curve fitted to the plots, within the densities tried.',
      source: FIT,
    },
    PLOTS,
    ([density], columns) => ofCurve(numberOf(density), columns, massOf),
  ),
  massBound('FITLOW', 'Low end of FITMASS: nine times in ten the curve lies between FITLOW and FITHIGH.', 'low'),
  massBound('FITHIGH', 'High end of FITMASS: nine times in ten the curve lies between FITLOW and FITHIGH.', 'high'),
  bound(
    'FITISOLATEDLOW',
    'Low end of FITISOLATED: nine times in ten it lies between this and FITISOLATEDHIGH.',
    inUnit(GRAM),
    isolatedInterval,
    'low',
  ),
  bound(
    'FITISOLATEDHIGH',
    'High end of FITISOLATED; blank where the plots set none.',
    inUnit(GRAM),
    isolatedInterval,
    'high',
  ),
  bound(
    'FITCEILINGLOW',
    'Low end of FITCEILING: nine times in ten it lies between this and FITCEILINGHIGH.',
    inUnit(KILOGRAMS_PER_SQUARE_METRE),
    ceilingInterval,
    'low',
  ),
  bound(
    'FITCEILINGHIGH',
    'High end of FITCEILING; blank where the plots set none.',
    inUnit(KILOGRAMS_PER_SQUARE_METRE),
    ceilingInterval,
    'high',
  ),
  numeric(
    {
      name: 'GENERALMASS',
      group: 'space and yield',
      parameters: [quantity('density', PER_AREA), plain('a'), plain('b'), plain('theta')],
      gives: GRAM,
      doc: 'Mass of a plant by w^-theta = a + b x density, a and b fitted to masses in g and plants per m2.',
      source: GENERAL,
    },
    generalPlantMass,
  ),
  numeric(
    {
      name: 'OPTIMUMDENSITY',
      group: 'space and yield',
      parameters: [plain('a'), plain('b'), plain('theta')],
      gives: PER_SQUARE_METRE,
      doc: 'Plants per area with the greatest yield in the general form; blank where theta is 1 or more.',
      source: GENERAL,
    },
    optimumDensity,
  ),
];
