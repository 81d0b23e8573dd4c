// Own spacing trials as functions: the yield-density curve fitted to plots, its numbers with their standard errors, what it
// says at a density. The fit stands in agronomy/density-fit.ts; read by trade/index.ts.

import { type DensityFit, fitDensity, fitFaultSentence } from '../../agronomy/density-fit.ts';
import { ceilingInterval, type Interval, isolatedInterval, massInterval } from '../../agronomy/fit-intervals.ts';
import { generalPlantMass, optimumDensity, plantMass } from '../../agronomy/yield-density.ts';
import type { Parameter } from '../../language/signature.ts';
import { canonicalUnit } from '../../units/arithmetic.ts';
import { dimension, MASS } from '../../units/dimension.ts';
import type { Unit } from '../../units/unit.ts';
import type { CellError, Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import {
  columnOf,
  GRAM,
  KILOGRAM,
  KILOGRAMS_PER_SQUARE_METRE,
  numeric,
  OUNCE,
  PER_SQUARE_METRE,
  PLAIN,
  POUNDS_PER_SQUARE_FOOT,
  plain,
  quantity,
  SHARE,
} from './build.ts';
import { numberOf } from './over-days.ts';
import { matchingRecord, recordOf } from './records.ts';

const INTERVALS = 'Bates & Watts 1988, Nonlinear Regression Analysis and Its Applications, chapter 2';
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

interface Fitted {
  readonly fit: DensityFit;
  readonly isolated: Interval;
  readonly ceiling: Interval;
}

/** What the plots of a variety say: the two-number curve with its errors, and why there is none where there is none. */
const YIELD_CURVE = recordOf<Fitted>('yield-curve', 'yield curve', [
  { name: 'Plots', gives: PLAIN, from: ({ fit }) => fit.rows },
  { name: 'Isolated mass', gives: KILOGRAM, us: OUNCE, from: ({ fit }) => fit.isolated },
  { name: 'Isolated mass error', gives: KILOGRAM, us: OUNCE, from: ({ fit }) => fit.isolatedError },
  { name: 'Isolated mass low', gives: KILOGRAM, us: OUNCE, from: ({ isolated }) => isolated.low },
  { name: 'Isolated mass high', gives: KILOGRAM, us: OUNCE, from: ({ isolated }) => isolated.high },
  {
    name: 'Ceiling yield',
    gives: KILOGRAMS_PER_SQUARE_METRE,
    us: POUNDS_PER_SQUARE_FOOT,
    from: ({ fit }) => fit.ceiling,
  },
  {
    name: 'Ceiling yield error',
    gives: KILOGRAMS_PER_SQUARE_METRE,
    us: POUNDS_PER_SQUARE_FOOT,
    from: ({ fit }) => fit.ceilingError,
  },
  {
    name: 'Ceiling yield low',
    gives: KILOGRAMS_PER_SQUARE_METRE,
    us: POUNDS_PER_SQUARE_FOOT,
    from: ({ ceiling }) => ceiling.low,
  },
  {
    name: 'Ceiling yield high',
    gives: KILOGRAMS_PER_SQUARE_METRE,
    us: POUNDS_PER_SQUARE_FOOT,
    from: ({ ceiling }) => ceiling.high,
  },
  { name: 'Scatter', gives: SHARE, from: ({ fit }) => fit.residualSd },
  { name: 'a', gives: PER_MASS, from: ({ fit }) => fit.a },
  { name: 'a error', gives: PER_MASS, from: ({ fit }) => fit.aError },
  { name: 'b', gives: AREA_PER_MASS, from: ({ fit }) => fit.b },
  { name: 'b error', gives: AREA_PER_MASS, from: ({ fit }) => fit.bError },
  {
    name: 'No curve because',
    gives: { is: 'text' },
    from: ({ fit }) => (fit.fault === undefined ? null : fitFaultSentence(fit.fault)),
  },
]);

/** The general form, whose third number says how far the two-number curve holds. */
const GENERAL_CURVE = recordOf<DensityFit>('general-curve', 'general yield curve', [
  { name: 'Theta', gives: PLAIN, from: (fit) => fit.shape },
  { name: 'Theta error', gives: PLAIN, from: (fit) => fit.shapeError },
]);

interface AtDensity extends Interval {
  readonly mass: number;
}

/** What the curve says at one density of the trial: nine times in ten it lies between low and high. */
const MASS_BY_CURVE = recordOf<AtDensity>('mass-by-curve', 'mass by a yield curve', [
  { name: 'Mass', gives: KILOGRAM, us: OUNCE, from: ({ mass }) => mass },
  { name: 'Low', gives: KILOGRAM, us: OUNCE, from: ({ low }) => low },
  { name: 'High', gives: KILOGRAM, us: OUNCE, from: ({ high }) => high },
]);

interface TriedFit {
  readonly fit: DensityFit;
  /** The densities tried. */
  readonly least: number;
  readonly most: number;
}

/** Once for the plots as they were handed over: all plots of a variety are handed the same. */
const fitOf = keptFor((columns: Columns): TriedFit => {
  const plots = plotsOf(columns).filter((plot) => !Number.isNaN(plot.density + plot.mass));
  const least = plots.reduce((so, { density }) => Math.min(so, density), Number.POSITIVE_INFINITY);
  const most = plots.reduce((so, { density }) => Math.max(so, density), Number.NEGATIVE_INFINITY);
  return { fit: fitDensity(plots), least, most };
});

/** An answer of the curve at a density of the trial; outside the densities tried the cell says so. */
function ofCurve<T>(
  density: number,
  columns: Columns,
  answer: (fit: DensityFit, density: number) => T,
): T | CellError | undefined {
  const { fit, least, most } = fitOf(columns);
  if (fit.fault !== undefined || Number.isNaN(density)) return undefined;
  if (density < least || density > most) {
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
  matchingRecord(
    {
      name: 'FIT',
      group: 'space and yield',
      parameters: [],
      doc: 'The yield-density curve 1/w = a + b x density through the plots that meet the conditions, by least squares on the logarithm of mass, with standard errors and 90% intervals.',
      source: `${FIT}; ${INTERVALS}`,
    },
    PLOTS,
    YIELD_CURVE,
    (_, columns) => {
      const fit = fitDensity(plotsOf(columns), 'reciprocal');
      return { fit, isolated: isolatedInterval(fit), ceiling: ceilingInterval(fit) };
    },
  ),
  matchingRecord(
    {
      name: 'FITGENERAL',
      group: 'space and yield',
      parameters: [],
      doc: 'The general form w^-theta = a + b x density through the plots that meet the conditions; theta 1 is the two-number curve.',
      source: `${FIT}; ${GENERAL}`,
    },
    PLOTS,
    GENERAL_CURVE,
    (_, columns) => fitDensity(plotsOf(columns), 'general'),
  ),
  matchingRecord(
    {
      name: 'FITAT',
      group: 'space and yield',
      parameters: [quantity('density', PER_AREA)],
      doc: 'Mean mass of a plant at a density by the curve fitted to the plots, within the densities tried; nine times in ten the curve lies between low and high.',
      source: `${FIT}; ${INTERVALS}`,
    },
    PLOTS,
    MASS_BY_CURVE,
    ([density], columns) =>
      ofCurve(numberOf(density), columns, (fit, at) => ({ mass: massOf(fit, at), ...massInterval(fit, at) })),
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
