// What the cheapest packs cost, hold, are called and who sells them, asked figure by figure, as the first template did before COVER
// answered them together. Packs far larger than the need were bought then.

import { type Cover, cheapestCover, MOST_SEEDS, SEED_PACK_LIMITS, SOURCES } from '../../agronomy/seed-packs.ts';
import type { Parameter, Result } from '../../language/signature.ts';
import { MONEY, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { columnOf, columnOfText, inUnit, MATCHING, MONEY_UNIT, PLAIN, plain } from '../trade/build.ts';
import { distinctNames, listedPacks, numberAt } from '../trade/packs.ts';

type Columns = readonly (readonly Scalar[])[];

function coverOf(needed: number, columns: Columns): Cover | undefined {
  const [seeds, prices] = columns;
  const packs = (seeds ?? []).map((_, row) => ({ seeds: numberAt(seeds, row), price: numberAt(prices, row) }));
  return cheapestCover(needed, packs);
}

/** A function over the packs that meet the conditions; blank where they cannot cover the need. */
function covering(
  name: string,
  doc: string,
  extra: readonly Parameter[],
  result: Result,
  answer: (cover: Cover, columns: Columns) => Scalar,
): FunctionDefinition {
  const values = [columnOf('pack_seeds', NONE), columnOf('pack_price', MONEY), ...extra];
  return {
    signature: {
      name,
      group: 'seed',
      parameters: [plain('needed'), ...values, ...MATCHING],
      repeating: MATCHING.length,
      result,
      doc,
      source: SOURCES.map((one) => one.source).join('; '),
    },
    body: {
      lane: 'matching rows',
      valueColumns: values.length,
      compute: ([needed], columns) => {
        if (typeof needed !== 'number') return null;
        if (needed > MOST_SEEDS) {
          return { error: 'range', why: `Too many seeds for one order: ${SEED_PACK_LIMITS.needed.why}.` };
        }
        const cover = coverOf(needed, columns);
        return cover === undefined ? null : answer(cover, columns);
      },
    },
  };
}

export const FORMER_PACKS: readonly FunctionDefinition[] = [
  covering(
    'COVERCOST',
    'What the cheapest packs cost that hold the seeds needed.',
    [],
    inUnit(MONEY_UNIT),
    (cover) => cover.cost,
  ),
  covering(
    'COVERSEEDS',
    'Seeds in the cheapest packs that hold the seeds needed.',
    [],
    inUnit(PLAIN),
    (cover) => cover.seeds,
  ),
  covering(
    'COVERPACKS',
    'The cheapest packs that hold the seeds needed, named and counted.',
    [columnOfText('pack_name')],
    { is: 'text' },
    (cover, columns) => listedPacks(cover.counts, columns[2]),
  ),
  covering(
    'COVERSUPPLIER',
    'Who sells the cheapest packs that hold the seeds needed.',
    [columnOfText('supplier')],
    { is: 'text' },
    (cover, columns) => distinctNames(cover.counts, columns[2]),
  ),
];
