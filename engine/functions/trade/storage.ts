// The store as functions: what is left after a time, whether the store suits a crop, how long it keeps.
// Models stand in agronomy/storage.ts; read by trade/index.ts.

import {
  MONTH_DAYS,
  massAfter,
  massToStore,
  monthlyLossOf,
  STORAGE_LIMITS,
  storeSentence,
  storeVerdict,
  storeVolume,
} from '../../agronomy/storage.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  CUBIC_METRE,
  date,
  days,
  KILOGRAM,
  MASS_PER_VOLUME,
  mass,
  numeric,
  plain,
  quantity,
  SHARE,
  scalar,
  temperature,
} from './build.ts';
import { numberOf } from './over-days.ts';

const LOSS_SOURCE = 'Msika & Jackson 1997, in Rabinowitch & Currah 2002, Allium Crop Science';
const OPTIMA =
  'USDA Agriculture Handbook 66; New England Vegetable Management Guide, Table 16; a degree and five points of slack: common practice';

const MONTHLY_LOSS = plain('monthly_loss', { limit: STORAGE_LIMITS.monthlyLoss });
const TIME_IN_STORE = days('time', {
  limit: { min: 0, max: STORAGE_LIMITS.months.max * MONTH_DAYS, why: STORAGE_LIMITS.months.why },
});

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
      gives: KILOGRAM,
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
      gives: KILOGRAM,
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
      gives: SHARE,
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
      gives: CUBIC_METRE,
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
      gives: { is: 'date' },
      doc: 'Last day on which a lot is expected to keep.',
      source: 'Keeping lives: New England Vegetable Management Guide, Table 16, from USDA Agriculture Handbook 66',
    },
    (stored = Number.NaN, keeps = Number.NaN) => (keeps >= 0 ? stored + Math.floor(keeps) : Number.NaN),
  ),
];
