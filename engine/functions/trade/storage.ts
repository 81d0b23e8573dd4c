// The store as functions: what is left after a time, whether the store suits a crop, how long it keeps, what to sell first.
// Models stand in agronomy/storage.ts; read by trade/index.ts.

import {
  MONTH_DAYS,
  massAfter,
  massToStore,
  monthlyLossOf,
  STORAGE_LIMITS,
  type StoredLot,
  sellingOrder,
  storeRun,
  storeSentence,
  storeVerdict,
  storeVolume,
} from '../../agronomy/storage.ts';
import { divideDimensions, MASS, NONE, TIME } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  type Argument,
  CUBIC_METRE,
  columnOf,
  columnOfDates,
  columnOfText,
  date,
  days,
  inUnit,
  isList,
  KILOGRAM,
  MASS_PER_VOLUME,
  mass,
  numeric,
  overColumns,
  overMatching,
  PLAIN,
  plain,
  quantity,
  SHARE,
  scalar,
  temperature,
} from './build.ts';
import { numberOf, numbersOf } from './over-days.ts';

const LOSS_SOURCE = 'Msika & Jackson 1997, in Rabinowitch & Currah 2002, Allium Crop Science';
const OPTIMA =
  'USDA Agriculture Handbook 66; New England Vegetable Management Guide, Table 16; a degree and five points of slack: common practice';
const MASS_PER_TIME = divideDimensions(MASS, TIME);
const WEEK = 7;

const MONTHLY_LOSS = plain('monthly_loss', { limit: STORAGE_LIMITS.monthlyLoss });
const TIME_IN_STORE = days('time', {
  limit: { min: 0, max: STORAGE_LIMITS.months.max * MONTH_DAYS, why: STORAGE_LIMITS.months.why },
});

/** Lots as the selling order wants them, from columns of names, keeping dates and masses; blank rows are left out. */
function lotsOf(names: Argument, until: Argument, masses: Argument): readonly StoredLot[] {
  const ends = numbersOf(until);
  return Array.from(numbersOf(masses), (held, row) => {
    const name = isList(names) ? names[row] : row;
    return { name: String(name ?? ''), storedOn: ends[row] ?? Number.NaN, keepsDays: 0, mass: held };
  });
}

function sellFirst([names, until, masses]: readonly Argument[]): Scalar {
  return sellingOrder(lotsOf(names, until, masses))[0]?.name ?? null;
}

/** 1 is sold first; blank for a lot without mass. */
function rankOf([keeps, held, until, masses]: readonly Argument[]): number {
  const own = numberOf(held);
  const end = numberOf(keeps);
  if (!(own > 0)) return Number.NaN;
  const order = sellingOrder(lotsOf(null, until, masses));
  const place = order.findIndex(
    (lot) => lot.mass === own && (lot.storedOn === end || (Number.isNaN(lot.storedOn) && Number.isNaN(end))),
  );
  return place < 0 ? Number.NaN : place + 1;
}

interface Held {
  readonly left: number;
  readonly sold: number;
}

const NOTHING: Held = { left: 0, sold: 0 };
/** Weeks that a lot is followed: past two years nothing is in store. */
const LONGEST = 104;

/** A lot week by week from the day it came in, so much of it taken every week from the second on; what is sold is added up. */
function lotRun(held: number, loss: number, weekly: number): readonly Held[] {
  const wanted = Array.from({ length: LONGEST }, (_, week) => (week === 0 || Number.isNaN(weekly) ? 0 : weekly));
  let sold = 0;
  return storeRun([held], wanted, Number.isNaN(loss) ? 0 : loss, WEEK).map((period) => {
    sold += period.sold;
    return { left: period.left, sold };
  });
}

interface Runs {
  readonly of: readonly Float64Array[];
  readonly runs: readonly (readonly Held[])[];
}

let followed: Runs = { of: [], runs: [] };

/** The runs of all lots, worked out once for as long as the engine hands over the same columns. */
function runsOf(masses: Float64Array, losses: Float64Array, taken: Float64Array): Runs['runs'] {
  const of = [masses, losses, taken];
  if (of.some((column, k) => column !== followed.of[k])) {
    const runs = Array.from(masses, (held, row) =>
      Number.isNaN(held) ? [] : lotRun(held, losses[row] ?? Number.NaN, (taken[row] ?? Number.NaN) * WEEK),
    );
    followed = { of, runs };
  }
  return followed.runs;
}

function inStore([date, stored, masses, losses, taken]: readonly Argument[], of: keyof Held): number {
  const day = numberOf(date);
  if (Number.isNaN(day)) return Number.NaN;
  const on = numbersOf(stored);
  return runsOf(numbersOf(masses), numbersOf(losses), numbersOf(taken)).reduce((sum, run, row) => {
    const week = Math.floor((day - (on[row] ?? Number.NaN)) / WEEK);
    const held = week >= 0 ? (run[Math.min(week, LONGEST - 1)] ?? NOTHING) : NOTHING;
    return sum + held[of];
  }, 0);
}

const LOTS = [
  date('date'),
  columnOfDates('stored_on'),
  columnOf('masses', MASS),
  columnOf('monthly_losses', NONE),
  columnOf('taken', MASS_PER_TIME),
];

function verdict([warmth, air, coldest, warmest, driest, dampest, freezing]: readonly Scalar[]): Scalar {
  const low = numberOf(coldest);
  const dry = numberOf(driest);
  const optimum = {
    temperature: [low, Number.isNaN(numberOf(warmest)) ? low : numberOf(warmest)],
    humidity: [dry, Number.isNaN(numberOf(dampest)) ? dry : numberOf(dampest)],
  } as const;
  const freezes = numberOf(freezing);
  if (Number.isNaN(low + dry)) return null;
  const found = storeVerdict(
    numberOf(warmth),
    numberOf(air),
    Number.isNaN(freezes) ? optimum : { ...optimum, freezing: freezes },
  );
  return found === undefined ? null : storeSentence(found);
}

export const STORAGE: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'STOREDMASS',
      group: 'after harvest',
      parameters: [mass('mass'), MONTHLY_LOSS, TIME_IN_STORE],
      result: inUnit(KILOGRAM),
      doc: 'Mass left after a time in store: mass x (1 - monthly loss)^months.',
      source: LOSS_SOURCE,
    },
    (held = Number.NaN, loss = Number.NaN, time = Number.NaN) => massAfter(held, loss, time / MONTH_DAYS),
  ),
  numeric(
    {
      name: 'MASSTOSTORE',
      group: 'after harvest',
      parameters: [mass('wanted'), MONTHLY_LOSS, TIME_IN_STORE],
      result: inUnit(KILOGRAM),
      doc: 'Mass to put in for what must be left after a time in store.',
      source: LOSS_SOURCE,
    },
    (wanted = Number.NaN, loss = Number.NaN, time = Number.NaN) => massToStore(wanted, loss, time / MONTH_DAYS),
  ),
  numeric(
    {
      name: 'MONTHLYLOSS',
      group: 'after harvest',
      parameters: [plain('whole_loss', { limit: { min: 0, max: 1, why: 'a share of what went in' } }), TIME_IN_STORE],
      result: inUnit(SHARE),
      doc: 'The loss a month that compounds to a whole loss over a time in store.',
      source: 'Arithmetic',
    },
    (whole = Number.NaN, time = Number.NaN) => monthlyLossOf(whole, time / MONTH_DAYS),
  ),
  numeric(
    {
      name: 'STOREVOLUME',
      group: 'after harvest',
      parameters: [mass('mass'), quantity('bulk_density', MASS_PER_VOLUME), plain('usable_share')],
      result: inUnit(CUBIC_METRE),
      doc: 'Room that a mass takes in store, where only a share of the room can be filled.',
      source: 'Arithmetic',
    },
    storeVolume,
  ),
  scalar(
    {
      name: 'STOREVERDICT',
      group: 'after harvest',
      parameters: [
        temperature('temperature'),
        plain('humidity'),
        temperature('best_from'),
        temperature('best_to', { optional: true }),
        plain('humidity_from'),
        plain('humidity_to', { optional: true }),
        temperature('freezing', { optional: true }),
      ],
      result: { is: 'text' },
      doc: 'Whether a store suits a crop: its temperature and humidity against those the crop keeps best in, in a sentence.',
      source: OPTIMA,
    },
    verdict,
    'given',
  ),
  numeric(
    {
      name: 'KEEPSUNTIL',
      group: 'after harvest',
      parameters: [date('stored_on'), days('keeps')],
      result: { is: 'date' },
      doc: 'Last day on which a lot is expected to keep.',
      source: 'Keeping lives: New England Vegetable Management Guide, Table 16, from USDA Agriculture Handbook 66',
    },
    (stored = Number.NaN, keeps = Number.NaN) => (keeps >= 0 ? stored + Math.floor(keeps) : Number.NaN),
  ),
  overColumns(
    {
      name: 'SELLRANK',
      group: 'after harvest',
      parameters: [date('keeps_until'), mass('mass'), columnOfDates('all_keep_until'), columnOf('all_masses', MASS)],
      result: inUnit(PLAIN),
      doc: 'Place in the order of selling: 1 has the shortest time left, of equals the larger lot.',
      source: 'Common practice',
    },
    rankOf,
  ),
  overMatching(
    {
      name: 'SELLFIRST',
      group: 'after harvest',
      parameters: [],
      result: { is: 'text' },
      doc: 'Of the lots that meet the conditions the one to sell first: the one with the shortest time left.',
      source: 'Common practice',
    },
    [columnOfText('names'), columnOfDates('keep_until'), columnOf('masses', MASS)],
    (_, columns) => sellFirst(columns),
  ),
  overColumns(
    {
      name: 'INSTORE',
      group: 'after harvest',
      parameters: LOTS,
      result: inUnit(KILOGRAM),
      doc: 'Mass in store on a day: every lot less its monthly loss and what is taken of it, week by week.',
      source: LOSS_SOURCE,
    },
    (args) => inStore(args, 'left'),
  ),
  overColumns(
    {
      name: 'TAKENFROMSTORE',
      group: 'after harvest',
      parameters: LOTS,
      result: inUnit(KILOGRAM),
      doc: 'Mass taken out of store up to a day, as far as the lots went.',
      source: LOSS_SOURCE,
    },
    (args) => inStore(args, 'sold'),
  ),
];
