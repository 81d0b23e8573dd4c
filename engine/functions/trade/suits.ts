// Whether a variety suits the farm, as functions: the verdict and its reason. The model stands in agronomy/suitability.ts;
// read by trade/index.ts.

import { type Suitability, suitability } from '../../agronomy/suitability.ts';
import type { Parameter, Result } from '../../language/signature.ts';
import { TIME } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { DEGREE_DAYS, plain, quantity } from './build.ts';

const HOURS_A_DAY = 24;

const NEUTRAL = 'Day length does not decide this crop.';

const PARAMETERS: readonly Parameter[] = [
  quantity('longest_day', TIME),
  quantity('critical_day_length', TIME),
  quantity('leaf_growth', DEGREE_DAYS),
  plain('latitude'),
  plain('adapted_from'),
  plain('adapted_to'),
];

function numberOf(value: Scalar | undefined, factor = 1): number {
  return typeof value === 'number' ? value * factor : Number.NaN;
}

/** Blank where the longest day isn't known; a blank critical day length leaves the latitudes to decide. */
function judge([longest, critical, leaves, latitude, from, to]: readonly Scalar[]): Suitability | undefined {
  const longestDay = numberOf(longest, HOURS_A_DAY);
  if (Number.isNaN(longestDay)) return undefined;
  const criticalHours = numberOf(critical, HOURS_A_DAY);
  const neutral = Number.isNaN(criticalHours);
  const found = suitability({
    longestDay,
    criticalHours: neutral ? 0 : criticalHours,
    leafGrowth: neutral ? Number.NaN : numberOf(leaves),
    latitude: numberOf(latitude),
    adaptedFrom: numberOf(from),
    adaptedTo: numberOf(to),
  });
  return neutral && found?.verdict === 'yes' ? { verdict: 'yes', reason: NEUTRAL } : found;
}

function judging(name: string, doc: string, answer: (found: Suitability) => string): FunctionDefinition {
  const result: Result = { is: 'text' };
  return {
    signature: {
      name,
      group: 'light and climate',
      parameters: PARAMETERS,
      repeating: 0,
      result,
      doc,
      source: 'Common practice; critical day lengths: Lancaster et al. 1996, Annals of Botany 78:423-430',
    },
    body: {
      lane: 'scalar',
      blanks: 'given',
      compute: (args) => {
        const found = judge(args);
        return found === undefined ? null : answer(found);
      },
    },
  };
}

export const SUITS: readonly FunctionDefinition[] = [
  judging(
    'SUITSFARM',
    'Yes, marginal or no: the longest day against the critical day length (half an hour either way is marginal), leaf growth before it, latitudes.',
    (found) => found.verdict,
  ),
  judging('SUITSWHY', 'Why a variety suits the farm or not, in a sentence.', (found) => found.reason),
];
