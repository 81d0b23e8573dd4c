// The best spacing asked figure by figure with everything it rests on in one call, as the first template did before the bed, the
// stand and the sale were worked out in columns of their own.

import { BEST_SPACING_LIMITS, type Goal } from '../../agronomy/best-spacing.ts';
import { GRADE_LIMITS } from '../../agronomy/grades.ts';
import { SPACING_LIMITS } from '../../agronomy/spacing.ts';
import { PLANT_MASS_LIMITS } from '../../agronomy/yield-density.ts';
import type { Parameter, Result } from '../../language/signature.ts';
import { divideDimensions, LENGTH, MASS, MONEY, NONE } from '../../units/dimension.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  type Argument,
  CENTIMETRE,
  columnOf,
  columnOfText,
  GRAM,
  inUnit,
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
} from '../trade/build.ts';
import { type BestFigures, bedFor, PRICE } from '../trade/tried-beds.ts';

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

function bestOf(args: readonly Argument[]): BestFigures | undefined {
  const [word] = args;
  if (typeof word !== 'string') return undefined;
  const goal = goalOf(word);
  return goal.most === 'money' && typeof args[1 + PRICE] !== 'number' ? undefined : bedFor(args, 1)?.best(goal);
}

function best(name: string, doc: string, result: Result, answer: (best: BestFigures) => number): FunctionDefinition {
  return overColumns(
    { name, group: 'space and yield', parameters: PARAMETERS, result, doc, source: SOURCE, former: true },
    (args) => {
      const found = bestOf(args);
      return found === undefined ? null : answer(found);
    },
  );
}

export const FORMER_BEST_SPACING: readonly FunctionDefinition[] = [
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
