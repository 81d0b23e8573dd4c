// Buying seed, sets and plants as a function over the packs on offer: what the cheapest cover of one need is made of, who sells
// it, what it holds and costs. The search stands in agronomy/seed-packs.ts; read by trade/index.ts.

import {
  type Cover,
  cheapestCover,
  fittingPacks,
  MOST_SEEDS,
  SEED_PACK_LIMITS,
  SOURCES,
} from '../../agronomy/seed-packs.ts';
import { MONEY, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { columnOf, columnOfText, MONEY_UNIT, PLAIN, plain } from './build.ts';
import { matchingRecord, recordOf } from './records.ts';

export function numberAt(column: readonly Scalar[] | undefined, row: number): number {
  const value = column?.[row];
  return typeof value === 'number' ? value : Number.NaN;
}

/** '2 x Pack A + 1 x Pack B': the names of the packs bought, in their order. */
export function listedPacks(counts: readonly number[], names: readonly Scalar[] | undefined): string {
  return counts
    .flatMap((count, row) => {
      const name = names?.[row];
      const said = typeof name === 'string' ? name : 'a pack without a name';
      return count === 0 ? [] : [`${count} x ${said}`];
    })
    .join(' + ');
}

/** Each of the names of what is bought once. */
export function distinctNames(counts: readonly number[], names: readonly Scalar[] | undefined): string {
  const said = counts.flatMap((count, row) => {
    const name = names?.[row];
    return count > 0 && typeof name === 'string' ? [name] : [];
  });
  return [...new Set(said)].join(', ');
}

interface Bought {
  readonly cover: Cover;
  readonly packs: string;
  readonly suppliers: string;
}

/** The cheapest packs that cover a need. */
const COVER_OF_A_NEED = recordOf<Bought>('cover-of-a-need', 'cover of a need', [
  { name: 'Packs', gives: { is: 'text' }, from: ({ packs }) => packs },
  { name: 'Supplier', gives: { is: 'text' }, from: ({ suppliers }) => suppliers },
  { name: 'Holds', gives: PLAIN, from: ({ cover }) => cover.seeds },
  { name: 'Cost', gives: MONEY_UNIT, from: ({ cover }) => cover.cost },
]);

export const PACKS: readonly FunctionDefinition[] = [
  matchingRecord(
    {
      name: 'COVER',
      group: 'seed',
      parameters: [plain('needed')],
      doc: 'The cheapest packs that hold what is needed, seeds or pieces: their names, who sells them, what they hold and cost; none of fifty times the need where a smaller one is sold.',
      source: SOURCES.map((one) => one.source).join('; '),
    },
    [columnOf('pack_sizes', NONE), columnOf('prices', MONEY), columnOfText('packs'), columnOfText('suppliers')],
    COVER_OF_A_NEED,
    ([needed], [sizes = [], prices, names, suppliers]) => {
      if (typeof needed !== 'number' || needed <= 0) return undefined;
      if (needed > MOST_SEEDS) {
        return { error: 'range', why: `Too many for one order: ${SEED_PACK_LIMITS.needed.why}.` };
      }
      const held = sizes.map((_, row) => numberAt(sizes, row));
      const fits = fittingPacks(
        needed,
        held.map((size, row) => (numberAt(prices, row) >= 0 ? size : Number.NaN)),
      );
      const packs = held.map((seeds, row) => ({ seeds: fits[row] === true ? seeds : 0, price: numberAt(prices, row) }));
      const cover = cheapestCover(needed, packs);
      if (cover === undefined) return undefined;
      return { cover, packs: listedPacks(cover.counts, names), suppliers: distinctNames(cover.counts, suppliers) };
    },
  ),
];
