// The floor, order: what seed each variety needs over all plantings, and the cheapest packs for what is not on hand. The columns stand in
// seed-order.ts of the templates; the search for packs is the engine's own model.

import { cheapestCover, fittingPacks, MOST_SEEDS } from '../../../../engine/agronomy/seed-packs.ts';
import { type Columns, columnIn, columnOf, type Inputs, isBlank } from './inputs.ts';
import type { Part } from './part.ts';

export interface Order extends Part {
  /** By the slot of the variety. */
  readonly columns: Columns;
}

export function orderOf(inputs: Inputs, columns: Columns): Order {
  const { varietyOf } = inputs;
  const varieties = inputs.variety('germination').length;
  const own: Columns = new Map();
  const [needed, onHand, buy, cost] = [
    columnIn(own, 'seeds-needed', varieties),
    columnIn(own, 'seeds-on-hand', varieties),
    columnIn(own, 'seeds-to-buy', varieties),
    columnIn(own, 'cost', varieties),
  ];
  inputs.of('seed-lots', 'variety').forEach((variety, lot) => {
    const usable = inputs.of('seed-lots', 'usable-seeds')[lot] as number;
    if (!isBlank(variety + usable)) onHand[variety] = (onHand[variety] as number) + usable;
  });
  const packVariety = inputs.of('packs', 'variety');
  const packSeeds = inputs.of('packs', 'seeds-on-offer');
  const packPrice = inputs.of('packs', 'price');
  const packsOf = Array.from({ length: varieties }, (_, variety) =>
    [...packVariety.keys()].filter((pack) => packVariety[pack] === variety),
  );
  const touched = new Set<number>();

  function costOf(variety: number, seeds: number): number {
    if (seeds > MOST_SEEDS) return Number.NaN;
    const packs = (packsOf[variety] ?? []).map((pack) => ({
      seeds: packSeeds[pack] as number,
      price: packPrice[pack] as number,
    }));
    const fits = fittingPacks(
      seeds,
      packs.map((pack) => (pack.price >= 0 ? pack.seeds : Number.NaN)),
    );
    const fitting = packs.map((pack, index) => ({ ...pack, seeds: fits[index] === true ? pack.seeds : 0 }));
    return cheapestCover(seeds, fitting)?.cost ?? Number.NaN;
  }

  function add(row: number, sign: number): void {
    const variety = varietyOf[row] as number;
    needed[variety] = (needed[variety] as number) + sign * (columnOf(columns, 'seeds-needed')[row] as number);
    touched.add(variety);
  }

  return {
    columns: own,
    take: (row) => add(row, -1),
    put: (row) => add(row, 1),
    finish() {
      for (const variety of touched) {
        const wanted = Math.max(0, (needed[variety] as number) - (onHand[variety] as number));
        if (wanted === buy[variety] && !isBlank(cost[variety] as number)) continue;
        buy[variety] = wanted;
        cost[variety] = wanted > 0 ? costOf(variety, wanted) : 0;
      }
      touched.clear();
    },
    clear() {
      needed.fill(0);
      buy.fill(Number.NaN);
      for (let variety = 0; variety < varieties; variety++) touched.add(variety);
    },
  };
}
