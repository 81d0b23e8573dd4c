// Bulb onions through the season as functions: when bulbs start and which gate held, how large the plant is by then, when
// the tops go down, when they may be pulled. Models stand in agronomy/; read by trade/index.ts.

import { BULBING_LIMITS, type Bulbing, bulbing } from '../../agronomy/bulbing.ts';
import { DAY_LENGTH_LIMITS } from '../../agronomy/day-length.ts';
import { HARVEST_LIMITS, lodging, lodgingSentence } from '../../agronomy/harvest.ts';
import {
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_LIMITS,
  LEAF_GROWTH_UPPER,
  onionDryWeight,
  onionLeafArea,
} from '../../agronomy/leaf-growth.ts';
import { sumDegreeDays } from '../../agronomy/thermal-time.ts';
import { topsDownDate } from '../../agronomy/tops-down.ts';
import type { Parameter } from '../../language/signature.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  type Argument,
  DEGREE_DAY,
  date,
  degreeDays,
  GRAM,
  hours,
  inUnit,
  numeric,
  plain,
  SQUARE_CENTIMETRE,
  scalar,
  temperature,
} from './build.ts';
import { KELVIN, numberOf, numbersOf, overDays, placeOf, YEAR_OF_DAYS, yearOf } from './over-days.ts';

const LANCASTER =
  'Lancaster, Triggs, de Ruiter & Gandar 1996, Annals of Botany 78:423-430; base 5 degC memory; no gain above 25 degC: Tesfay et al. 2011';
const BREWSTER = 'Brewster 2008, Onions and Other Vegetable Alliums, eq 4.17a and 4.17b';

/** An onion that has not bulbed two seasons on never does. */
const LONGEST_WAIT = 500;

/** Daily means (degC) from a date on in the average year; before planting out those of the nursery. */
function meansFrom(from: number, count: number, days: Argument, means: Argument, nursery?: Nursery): Float64Array {
  const year = yearOf(numbersOf(days));
  const kelvin = numbersOf(means);
  return Float64Array.from({ length: count }, (_, index) => {
    const day = from + index;
    if (nursery !== undefined && day < nursery.plantedOut && !Number.isNaN(nursery.mean)) return nursery.mean;
    return year === undefined ? Number.NaN : (kelvin[placeOf(year, day)] ?? Number.NaN) - KELVIN;
  });
}

interface Nursery {
  readonly plantedOut: number;
  readonly mean: number;
}

function bulbingOf(args: readonly Argument[]): Bulbing | undefined {
  const [latitude, emergence, critical, thermal, out, nursery, days, means] = args;
  const from = numberOf(emergence);
  const wanted = numberOf(thermal);
  if (Number.isNaN(from + numberOf(latitude) + numberOf(critical))) return undefined;
  const daily = meansFrom(from, LONGEST_WAIT, days, means, {
    plantedOut: numberOf(out),
    mean: numberOf(nursery),
  });
  if (Number.isNaN(daily[LONGEST_WAIT - 1] ?? Number.NaN)) return undefined;
  const input = {
    latitude: numberOf(latitude),
    firstDay: from,
    means: daily,
    emergence: from,
    criticalHours: numberOf(critical),
  };
  return bulbing(Number.isNaN(wanted) ? input : { ...input, thermalTime: wanted });
}

const BULBING_PARAMETERS: readonly Parameter[] = [
  plain('latitude', { limit: DAY_LENGTH_LIMITS.latitude }),
  date('emergence'),
  hours('critical_day_length', { limit: BULBING_LIMITS.criticalHours }),
  degreeDays('thermal_time', { limit: BULBING_LIMITS.thermalTime, optional: true }),
  date('planted_out', { optional: true }),
  temperature('nursery_temperature', { optional: true }),
  ...YEAR_OF_DAYS,
];

const LEAF_DEGREES = [degreeDays('leaf_growth', { limit: LEAF_GROWTH_LIMITS.degreeDays })];

export const BULBING: readonly FunctionDefinition[] = [
  overDays(
    'BULBINGDATE',
    'Date on which an onion starts its bulb: thermal time since emergence and day length both reached; blank if they never are.',
    LANCASTER,
    BULBING_PARAMETERS,
    { is: 'date' },
    (args) => bulbingOf(args)?.starts ?? Number.NaN,
  ),
  overDays(
    'BULBINGHELDBY',
    'Which gate holds the bulb back, the one that opens last or never: thermal time or day length.',
    LANCASTER,
    BULBING_PARAMETERS,
    { is: 'text' },
    (args) => bulbingOf(args)?.heldBy ?? Number.NaN,
  ),
  overDays(
    'LEAFGROWTH',
    'Degree-days between 6 and 20 degC from one date up to another: what onion leaves grow by.',
    BREWSTER,
    [date('from'), date('to'), ...YEAR_OF_DAYS],
    inUnit(DEGREE_DAY),
    ([from, to, days, means]) => {
      const start = numberOf(from);
      const count = Math.floor(numberOf(to) - start);
      if (!(count >= 0) || count > 3 * LONGEST_WAIT) return Number.NaN;
      return sumDegreeDays(meansFrom(start, count, days, means), 0, count, LEAF_GROWTH_BASE, LEAF_GROWTH_UPPER);
    },
  ),
  numeric(
    {
      name: 'LEAFAREA',
      group: 'light and climate',
      parameters: LEAF_DEGREES,
      gives: SQUARE_CENTIMETRE,
      doc: 'Leaf area of an onion plant by its leaf growth in degree-days between 6 and 20 degC since emergence.',
      source: BREWSTER,
    },
    onionLeafArea,
  ),
  numeric(
    {
      name: 'ONIONDRYMASS',
      group: 'light and climate',
      parameters: LEAF_DEGREES,
      gives: GRAM,
      doc: 'Dry mass of an onion plant by its leaf growth in degree-days between 6 and 20 degC since emergence.',
      source: BREWSTER,
    },
    onionDryWeight,
  ),
  overDays(
    'TOPSDOWNDATE',
    'Date on which half the tops are down: so many degree-days (5 to 25 degC) after the bulb started.',
    'Common practice; refit from own dates',
    [date('bulbing'), degreeDays('thermal_time', { limit: BULBING_LIMITS.thermalTime }), ...YEAR_OF_DAYS],
    { is: 'date' },
    ([start, thermal, days, means]) => {
      const from = numberOf(start);
      if (Number.isNaN(from)) return Number.NaN;
      return topsDownDate(meansFrom(from, LONGEST_WAIT, days, means), from, from, numberOf(thermal));
    },
  ),
  scalar(
    {
      name: 'LODGINGSAYS',
      group: 'after harvest',
      parameters: [plain('share_down', { limit: HARVEST_LIMITS.lodged })],
      result: { is: 'text' },
      doc: 'What the share of fallen tops means for pulling bulb onions, in a sentence.',
      source: 'Hoepting, Cornell Cooperative Extension, harvest and post-harvest of onions',
    },
    ([share]) => {
      const stage = typeof share === 'number' ? lodging(share) : undefined;
      return stage === undefined ? null : lodgingSentence(stage);
    },
  ),
];
