// Space and yield as functions: places on a bed, plant mass under crowding, size grades. Bodies stand in agronomy/; read
// by trade/index.ts. Lengths, areas and masses may come in any units that agree with each other.

import { GRADE_LIMITS, gradeMassShare, gradeShare, meanDiameterOfMass } from '../../agronomy/grades.ts';
import {
  offsetGain,
  offsetStations,
  offsetVerdict,
  rectangularity,
  SPACING_LIMITS,
  stations,
} from '../../agronomy/spacing.ts';
import { densityForMass, PLANT_MASS_LIMITS, plantMass, squarenessFactor } from '../../agronomy/yield-density.ts';
import type { ArgumentType, Result, Signature } from '../../language/signature.ts';
import { MASS, multiplyDimensions, nameOfDimension, sameDimension } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  alike,
  CENTIMETRE,
  inUnit,
  MASS_PER_AREA,
  MASS_PER_VOLUME,
  numeric,
  PER_SQUARE_METRE,
  PLAIN,
  plain,
  quantity,
  quantityOf,
} from './build.ts';

const SHINOZAKI = 'Shinozaki & Kira 1956, J. Inst. Polytech. Osaka City Univ. D7: 35-72';
const GRADES =
  'Normal spread of diameters, mass = shape x diameter^3; J. Agric. Sci., Weight, size and shape relationships and their uses in the study of graded yield data';

const ON_A_BED = [alike('length', 'L'), alike('spacing', 'L'), plain('rows', { limit: SPACING_LIMITS.rows })];

/** Ceiling yield must be a density times a mass; the answer is shown like the isolated mass. */
const MASS_RESULT: Result = {
  is: 'rule',
  rule: ([density, isolated, ceiling]: readonly ArgumentType[]) => {
    const [per, mass, yields] = [quantityOf(density), quantityOf(isolated), quantityOf(ceiling)];
    if (per === undefined || mass === undefined || yields === undefined) return 'Give a density, a mass and a yield.';
    const wanted = multiplyDimensions(per.dimension, mass.dimension);
    if (sameDimension(wanted, yields.dimension)) return mass;
    return `The ceiling yield must be ${nameOfDimension(wanted)} to go with this density and mass; here it is ${nameOfDimension(yields.dimension)}.`;
  },
};

function open(end: Scalar | undefined, otherwise: number): number {
  return typeof end === 'number' ? end : otherwise;
}

/** A share of a size band; a blank end is open. */
function bandShare(
  name: string,
  doc: string,
  share: (mean: number, spread: number, from: number, to: number) => number,
): FunctionDefinition {
  const signature: Signature = {
    name,
    group: 'space and yield',
    parameters: [
      alike('mean', 'L'),
      plain('spread', { limit: GRADE_LIMITS.spread }),
      alike('from', 'L', { optional: true }),
      alike('to', 'L', { optional: true }),
    ],
    repeating: 0,
    result: inUnit(PLAIN),
    doc,
    source: GRADES,
  };
  return {
    signature,
    body: {
      lane: 'scalar',
      blanks: 'given',
      compute: ([mean, spread, from, to]) => {
        if (typeof mean !== 'number' || typeof spread !== 'number') return null;
        if (spread < 0 || spread > GRADE_LIMITS.spread.max) {
          return { error: 'range', why: `The spread of diameters is outside its range: ${GRADE_LIMITS.spread.why}.` };
        }
        const result = share(mean, spread, open(from, Number.NEGATIVE_INFINITY), open(to, Number.POSITIVE_INFINITY));
        return Number.isNaN(result) ? null : result;
      },
    },
  };
}

export const SPACE: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'STATIONS',
      group: 'space and yield',
      parameters: ON_A_BED,
      gives: PLAIN,
      doc: 'Planting places on a bed: rows x whole spacings in the length; half a spacing stays free at each end.',
      source: 'Geometry; half a spacing free at each end is common practice',
    },
    stations,
  ),
  numeric(
    {
      name: 'OFFSETSTATIONS',
      group: 'space and yield',
      parameters: ON_A_BED,
      gives: PLAIN,
      doc: 'Planting places where every second row is shifted by half a spacing.',
      source: 'Geometry',
    },
    offsetStations,
  ),
  numeric(
    {
      name: 'OFFSETGAIN',
      group: 'space and yield',
      parameters: ON_A_BED,
      gives: PLAIN,
      doc: 'Places an offset gains on this bed over square rows: 0, or fewer than 0 where the ends cost places.',
      source: 'Geometry',
    },
    offsetGain,
  ),
  {
    signature: {
      name: 'OFFSETWHY',
      group: 'space and yield',
      parameters: ON_A_BED,
      repeating: 0,
      result: { is: 'text' },
      doc: 'What an offset does on this bed, in a sentence.',
      source: 'Geometry',
    },
    body: {
      lane: 'scalar',
      blanks: 'pass',
      compute: ([length, spacing, rows]) => {
        if (typeof length !== 'number' || typeof spacing !== 'number' || typeof rows !== 'number') return null;
        return offsetVerdict(length, spacing, rows) || null;
      },
    },
  },
  numeric(
    {
      name: 'RECTANGULARITY',
      group: 'space and yield',
      parameters: [alike('row_spacing', 'L'), alike('spacing', 'L')],
      gives: PLAIN,
      doc: 'Longer spacing over shorter: 1 where plants stand square.',
      source: 'Geometry',
    },
    rectangularity,
  ),
  numeric(
    {
      name: 'SQUARENESS',
      group: 'space and yield',
      parameters: [plain('rectangularity'), plain('loss_at_8', { optional: true })],
      gives: PLAIN,
      doc: 'Factor on yield for spacing far from square: 1 at 1, falling to 1 less the loss at 8, even in the logarithm.',
      source:
        'End point from an overwintered onion trial (square 15 to 20 % over 8 to 1); the line between is a judgement',
    },
    (shape = Number.NaN, loss = Number.NaN) => squarenessFactor(shape, Number.isNaN(loss) ? undefined : loss),
  ),
  numeric(
    {
      name: 'PLANTMASS',
      group: 'space and yield',
      parameters: [
        alike('density', 'D', { limit: PLANT_MASS_LIMITS.density }),
        alike('isolated_mass', 'M', { limit: PLANT_MASS_LIMITS.isolated }),
        alike('ceiling_yield', 'Y', { limit: PLANT_MASS_LIMITS.ceiling }),
      ],
      gives: MASS_RESULT,
      doc: 'Mean mass per plant at a density: 1/w = 1/isolated mass + density/ceiling yield.',
      source: SHINOZAKI,
    },
    plantMass,
  ),
  numeric(
    {
      name: 'DENSITYFORMASS',
      group: 'space and yield',
      parameters: [quantity('mass', MASS), quantity('isolated_mass', MASS), quantity('ceiling_yield', MASS_PER_AREA)],
      gives: PER_SQUARE_METRE,
      doc: 'Plants per area at which the mean plant has this mass; blank at or above the isolated mass.',
      source: SHINOZAKI,
    },
    densityForMass,
  ),
  numeric(
    {
      name: 'BULBDIAMETER',
      group: 'space and yield',
      parameters: [
        quantity('mean_mass', MASS, { unit: 'g' }),
        plain('spread', { limit: GRADE_LIMITS.spread }),
        quantity('shape', MASS_PER_VOLUME, { unit: 'g/cm3' }),
      ],
      gives: CENTIMETRE,
      doc: 'Mean diameter of a crop with this mean mass, where a piece weighs shape x diameter^3.',
      source: GRADES,
    },
    meanDiameterOfMass,
  ),
  bandShare(
    'GRADESHARE',
    'Share by number of diameters from `from` up to, not including, `to`; either end may be blank.',
    gradeShare,
  ),
  bandShare(
    'GRADEMASSSHARE',
    'Share by mass of diameters from `from` up to, not including, `to`; either end may be blank.',
    gradeMassShare,
  ),
];
