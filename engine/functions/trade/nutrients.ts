// Nutrients and rotation as functions: what leaves with a harvest, oxides and elements, when a family may come back. Models
// stand in agronomy/nutrients.ts and rotation.ts; read by trade/index.ts.

import { NUTRIENT_LIMITS, PHOSPHATE_PER_PHOSPHORUS, POTASH_PER_POTASSIUM } from '../../agronomy/nutrients.ts';
import {
  clearYearsBetween,
  earliestReturn,
  longestClearYears,
  type PastCrop,
  ROTATION_LIMITS,
  rotationSentence,
  rotationVerdict,
} from '../../agronomy/rotation.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { alike, inUnit, KILOGRAM, mass, numeric, PLAIN, plain, scalar, text } from './build.ts';
import { numberOf } from './over-days.ts';

const REMOVAL =
  'USDA National Nutrient Database for Standard Reference; onion: Khokhar 2019, J. Hort. Sci. Biotechnol. 94:703-717';
const ROTATION =
  'University of Connecticut Integrated Pest Management, rotation periods for vegetable diseases; alliums: common practice';
const CLEAR = plain('clear_years', { limit: ROTATION_LIMITS.clearYears });
const A_TONNE = 1000;

/** Blank past years and families are passed over. */
function rotationSays([family, year, wanted, ...past]: readonly Scalar[]): Scalar {
  const season = numberOf(year);
  const years = numberOf(wanted);
  if (typeof family !== 'string' || Number.isNaN(season + years)) return null;
  const history = past.flatMap((one, back): PastCrop[] =>
    typeof one === 'string' ? [{ family: one, year: season - back - 1 }] : [],
  );
  const verdict = rotationVerdict(history, family, season, years);
  if (verdict === undefined) return history.length === 0 ? null : `Clear: no ${family} in the years recorded.`;
  return rotationSentence(family, verdict) || `Clear: ${family} last stood here in ${verdict.lastGrown}.`;
}

export const NUTRIENTS: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'NUTRIENTREMOVED',
      group: 'soil and water',
      parameters: [
        mass('harvest'),
        plain('rate', {
          limit: { min: 0, max: NUTRIENT_LIMITS.rate.max / A_TONNE, why: NUTRIENT_LIMITS.rate.why },
        }),
      ],
      gives: KILOGRAM,
      doc: 'Mass of a nutrient that leaves with a harvest, at so much of it in a harvest.',
      source: REMOVAL,
    },
    (harvest = Number.NaN, rate = Number.NaN) => (harvest >= 0 ? harvest * rate : Number.NaN),
  ),
  numeric(
    {
      name: 'PHOSPHATE',
      group: 'soil and water',
      parameters: [alike('phosphorus', 'M')],
      gives: { is: 'letter', letter: 'M', among: 'numbers' },
      doc: 'P2O5, as bags of fertiliser name it, that holds so much phosphorus.',
      source: 'Atomic masses',
    },
    (phosphorus = Number.NaN) => phosphorus * PHOSPHATE_PER_PHOSPHORUS,
  ),
  numeric(
    {
      name: 'POTASH',
      group: 'soil and water',
      parameters: [alike('potassium', 'M')],
      gives: { is: 'letter', letter: 'M', among: 'numbers' },
      doc: 'K2O, as bags of fertiliser name it, that holds so much potassium.',
      source: 'Atomic masses',
    },
    (potassium = Number.NaN) => potassium * POTASH_PER_POTASSIUM,
  ),
  numeric(
    {
      name: 'CLEARYEARS',
      group: 'soil and water',
      parameters: [plain('earlier_year'), plain('later_year')],
      gives: PLAIN,
      doc: 'Whole years between two crops in which the bed was clear: 2024 and 2028 leave three.',
      source: ROTATION,
    },
    clearYearsBetween,
  ),
  numeric(
    {
      name: 'ROTATIONCLEAR',
      group: 'soil and water',
      parameters: [plain('last_year'), CLEAR],
      gives: PLAIN,
      doc: 'First year in which a family may stand on a bed again.',
      source: ROTATION,
    },
    earliestReturn,
  ),
  scalar(
    {
      name: 'DISEASEYEARS',
      group: 'soil and water',
      parameters: [text('family')],
      result: inUnit(PLAIN),
      doc: 'The most clear years that any published disease of a family asks for; blank for families without a figure.',
      source: ROTATION,
    },
    ([family]) => (typeof family === 'string' ? (longestClearYears(family) ?? null) : null),
  ),
  scalar(
    {
      name: 'ROTATIONSAYS',
      group: 'soil and water',
      parameters: [
        text('family'),
        plain('year'),
        CLEAR,
        text('one_year_ago'),
        text('two_years_ago'),
        text('three_years_ago'),
        text('four_years_ago'),
      ],
      result: { is: 'text' },
      doc: 'Whether a family may stand on a bed this year, from the families of the last four, in a sentence.',
      source: ROTATION,
    },
    rotationSays,
    'given',
  ),
];
