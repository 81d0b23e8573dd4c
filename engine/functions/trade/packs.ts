// Buying seed as functions over the packs on offer: what the cheapest cover costs, holds, is made of and who sells it.
// The search stands in agronomy/seed-packs.ts; read by trade/index.ts.

import { type Cover, cheapestCover, MOST_SEEDS, SEED_PACK_LIMITS, SOURCES } from '../../agronomy/seed-packs.ts';
import type { Parameter, Result } from '../../language/signature.ts';
import { MONEY, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { columnOf, columnOfText, inUnit, MATCHING, MONEY_UNIT, PLAIN, plain } from './build.ts';

type Columns = readonly (readonly Scalar[])[];

function numberAt(column: readonly Scalar[] | undefined, row: number): number {
  const value = column?.[row];
  return typeof value === 'number' ? value : Number.NaN;
}

function coverOf(needed: number, columns: Columns): Cover | undefined {
  const [seeds, prices] = columns;
  const packs = (seeds ?? []).map((_, row) => ({ seeds: numberAt(seeds, row), price: numberAt(prices, row) }));
  return cheapestCover(needed, packs);
}

/** '2 x Pack A + 1 x Pack B': the names of the packs bought, in their order. */
function listed(counts: readonly number[], names: readonly Scalar[] | undefined): string {
  return counts
    .flatMap((count, row) => {
      const name = names?.[row];
      const said = typeof name === 'string' ? name : 'a pack without a name';
      return count === 0 ? [] : [`${count} x ${said}`];
    })
    .join(' + ');
}

function distinct(counts: readonly number[], names: readonly Scalar[] | undefined): string {
  const said = counts.flatMap((count, row) => {
    const name = names?.[row];
    return count > 0 && typeof name === 'string' ? [name] : [];
  });
  return [...new Set(said)].join(', ');
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

export const PACKS: readonly FunctionDefinition[] = [
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
    (cover, columns) => listed(cover.counts, columns[2]),
  ),
  covering(
    'COVERSUPPLIER',
    'Who sells the cheapest packs that hold the seeds needed.',
    [columnOfText('supplier')],
    { is: 'text' },
    (cover, columns) => distinct(cover.counts, columns[2]),
  ),
];
