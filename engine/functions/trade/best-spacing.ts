// The spacing that serves best on one bed as functions over the size bands: for the most mass, the most money or the most
// bulbs of one band, and what it gives. The search stands in agronomy/best-spacing.ts; read by trade/index.ts.

import {
  BEST_SPACING_LIMITS,
  type BedCrop,
  bestSpacing,
  candidatesOf,
  type Goal,
  type PricedBand,
  type SpacingResult,
  spacingCurve,
} from '../../agronomy/best-spacing.ts';
import { GRADE_LIMITS } from '../../agronomy/grades.ts';
import { SPACING_LIMITS } from '../../agronomy/spacing.ts';
import { PLANT_MASS_LIMITS } from '../../agronomy/yield-density.ts';
import type { Parameter, Result } from '../../language/signature.ts';
import { divideDimensions, LENGTH, MASS, MONEY, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  type Argument,
  CENTIMETRE,
  columnOf,
  columnOfText,
  GRAM,
  inUnit,
  isList,
  KILOGRAM,
  length,
  MASS_PER_AREA,
  MASS_PER_VOLUME,
  MONEY_UNIT,
  mass,
  overColumns,
  PLAIN,
  plain,
  quantity,
  text,
} from './build.ts';
import { numberOf } from './over-days.ts';

/** Spacings tried at most; a finer step is taken for a slip of the pen. */
const MOST_TRIED = 400;
const SOURCE = 'Graded yield from a diameter distribution: Chapman 1981, J. Agric. Sci. Camb.; only the spacings tried';

const PARAMETERS: readonly Parameter[] = [
  text('most'),
  length('closest'),
  length('widest'),
  length('step'),
  length('bed_length'),
  length('bed_width'),
  plain('rows', { limit: SPACING_LIMITS.rows }),
  plain('plants_per_station', { limit: BEST_SPACING_LIMITS.plantsPerStation }),
  mass('isolated_mass', { limit: PLANT_MASS_LIMITS.isolated }),
  quantity('ceiling_yield', MASS_PER_AREA, { limit: PLANT_MASS_LIMITS.ceiling }),
  plain('squareness_loss'),
  plain('spread', { limit: GRADE_LIMITS.spread }),
  quantity('shape', MASS_PER_VOLUME),
  plain('sound_share', { limit: BEST_SPACING_LIMITS.sound }),
  quantity('price', divideDimensions(MONEY, MASS), { optional: true }),
  quantity('cost_per_station', MONEY, { optional: true }),
  columnOfText('grades'),
  columnOf('from', LENGTH),
  columnOf('to', LENGTH),
  columnOf('price_shares', NONE),
];

function goalOf(word: string): Goal {
  const lower = word.toLowerCase();
  return lower === 'mass' || lower === 'money' ? { most: lower } : { most: 'bulbs', band: lower };
}

function listOf(argument: Argument): readonly Scalar[] {
  return isList(argument) ? argument : [];
}

function or(argument: Argument, otherwise: number): number {
  return typeof argument === 'number' ? argument : otherwise;
}

/** A band is sold where it has a price share above zero; without a price the masses are still told apart. */
function bandsOf(price: number, columns: readonly Argument[]): readonly PricedBand[] {
  const [names, from, to, shares] = columns.map(listOf);
  return (names ?? []).map((name, row) => {
    const share = numberOf(shares?.[row]);
    const band = {
      name: String(name ?? '').toLowerCase(),
      from: or(from?.[row], Number.NEGATIVE_INFINITY),
      to: or(to?.[row], Number.POSITIVE_INFINITY),
    };
    return share > 0 ? { ...band, price: price * share } : band;
  });
}

interface Tried {
  readonly from: number;
  readonly by: number;
  readonly count: number;
  readonly rows: number;
}

const MOST_KEPT = 500;
const curves = new Map<string, readonly SpacingResult[]>();

/** Every spacing tried, kept for the other goals that ask for the same bed. */
function curveOf(crop: BedCrop, tried: Tried): readonly SpacingResult[] {
  const key = JSON.stringify([crop, tried]);
  const kept = curves.get(key);
  if (kept !== undefined) return kept;
  const spacings = Array.from({ length: tried.count }, (_, index) => tried.from + index * tried.by);
  const curve = spacingCurve(crop, candidatesOf(spacings, [tried.rows]));
  if (curves.size >= MOST_KEPT) curves.clear();
  curves.set(key, curve);
  return curve;
}

function bestOf(args: readonly Argument[]): SpacingResult | undefined {
  const [word, closest, widest, step, bedLength, width, rows, plants, isolated, ceiling, loss, spread, shape] = args;
  const [sound, price, cost, ...columns] = args.slice(13);
  const [from, to, by] = [numberOf(closest), numberOf(widest), numberOf(step)];
  const count = Math.floor((to - from) / by + 1e-9) + 1;
  if (typeof word !== 'string' || !(from > 0) || !(by > 0) || !(count >= 1) || count > MOST_TRIED) return undefined;
  const goal = goalOf(word);
  if (goal.most === 'money' && typeof price !== 'number') return undefined;
  const crop: BedCrop = {
    length: numberOf(bedLength),
    width: numberOf(width),
    pattern: 'square',
    plantsPerStation: numberOf(plants),
    isolated: numberOf(isolated),
    ceiling: numberOf(ceiling),
    squarenessLoss: numberOf(loss),
    spread: numberOf(spread),
    shape: numberOf(shape),
    sound: numberOf(sound),
    costPerStation: or(cost, 0),
    bands: bandsOf(or(price, 0), columns),
  };
  const curve = curveOf(crop, { from, by, count, rows: numberOf(rows) });
  return bestSpacing(curve, goal);
}

function best(name: string, doc: string, result: Result, answer: (best: SpacingResult) => number): FunctionDefinition {
  return overColumns(
    { name, group: 'space and yield', parameters: PARAMETERS, result, doc, source: SOURCE },
    (args) => {
      const found = bestOf(args);
      return found === undefined ? null : answer(found);
    },
  );
}

export const BEST_SPACING: readonly FunctionDefinition[] = [
  best(
    'BESTSPACING',
    'In-row spacing, of those tried from `closest` to `widest`, with the most "mass", the most "money", or the most bulbs of the grade named.',
    inUnit(CENTIMETRE),
    ({ spacing }) => spacing,
  ),
  best('BESTSPACINGMASS', 'Mass for sale at that spacing.', inUnit(KILOGRAM), ({ marketableMass }) => marketableMass),
  best(
    'BESTSPACINGMONEY',
    'Takings less the cost of the places at that spacing.',
    inUnit(MONEY_UNIT),
    ({ money }) => money,
  ),
  best('BESTSPACINGPLANT', 'Mean mass of a plant at that spacing.', inUnit(GRAM), ({ meanMass }) => meanMass),
  best('BESTSPACINGSTATIONS', 'Planting places at that spacing.', inUnit(PLAIN), ({ stations }) => stations),
];
