// What a season leaves of its seed: of every lot what its plantings did not take, and what is over of the packs that were bought. Seed is
// taken as Seed order counts it, so that nothing is taken twice: by the plantings that name a lot from that lot, else from the
// lots counted as on hand, the oldest first, and the rest from the packs.

import { type DocumentData, rowId, rows, type Workbook } from '../../engine/index.ts';
import { type RowOf, rowAt } from './act.ts';
import { placed, type Row, rowsIn, without } from './rows.ts';

interface Lot {
  readonly row: Row;
  readonly variety: number;
  readonly slot: number;
  readonly isCounted: boolean;
  readonly packedOn: number;
  left: number;
}

/** Lots with what is left of them, and one for each variety of whose packs something is left over. */
export function lotsLeft(workbook: Workbook, data: DocumentData, ending: number): readonly Row[] {
  const lots = rowsIn(workbook, data, 'seed-lots').map(({ row, of }) => lotOf(row, of));
  const wanting = takeFrom(lots, workbook);
  const old = lots.flatMap(({ row, left }): Row[] => {
    const quantity = Math.floor(left);
    if (quantity <= 0) return [];
    return [{ ...row, cells: { ...without(row.cells, 'weight', 'sowing-date', 'count-it'), quantity } }];
  });
  const bought = boughtIn(workbook, wanting, ending);
  return placed([...old, ...bought.filter(({ cells }) => !old.some((one) => one.cells.lot === cells.lot))]);
}

function lotOf(row: Row, of: RowOf): Lot {
  return {
    row,
    slot: of.slot,
    variety: of.number('variety') ?? -1,
    isCounted: of.value('count-it') === true,
    packedOn: of.number('packed-on') ?? Number.NEGATIVE_INFINITY,
    left: of.number('seeds-in-lot') ?? 0,
  };
}

/** Takes what the plantings sow off the lots; gives what of it the lots did not have, by the variety's slot. */
function takeFrom(lots: readonly Lot[], workbook: Workbook): ReadonlyMap<number, number> {
  const wanting = new Map<number, number>();
  const take = (lot: Lot, want: number): number => {
    const taken = Math.min(lot.left, want);
    lot.left -= taken;
    return want - taken;
  };
  for (const slot of rows(workbook, 'plantings')) {
    const planting = rowAt(workbook, 'plantings', '', slot);
    const variety = planting.number('variety') ?? -1;
    const seeds = planting.number('seeds-needed') ?? 0;
    const named = lots.find((lot) => lot.slot === planting.value('seed-lot') && lot.variety === variety);
    const rest = named === undefined ? seeds : take(named, seeds);
    wanting.set(variety, (wanting.get(variety) ?? 0) + rest);
  }
  for (const lot of [...lots].sort((a, b) => a.packedOn - b.packedOn)) {
    const want = wanting.get(lot.variety) ?? 0;
    if (lot.isCounted && want > 0) wanting.set(lot.variety, take(lot, want));
  }
  return wanting;
}

/** A lot of what is over of the packs: of the whole order where one was worked out, else of the cheapest that cover the need. */
function boughtIn(workbook: Workbook, wanting: ReadonlyMap<number, number>, ending: number): readonly Row[] {
  return [...rows(workbook, 'seed-order')].flatMap((slot): Row[] => {
    const of = rowAt(workbook, 'seed-order', '', slot);
    const variety = of.number('variety');
    if (variety === undefined) return [];
    const bought = of.number('in-the-order') || (of.number('seeds-bought') ?? 0);
    const quantity = Math.floor(bought - (wanting.get(variety) ?? 0));
    if (quantity <= 0) return [];
    const id = rowId(workbook, 'varieties', variety);
    const name = rowAt(workbook, 'varieties', id, variety).text('variety');
    const cells = {
      lot: `${name} ${ending}`,
      variety: { row: id },
      quantity,
      'packed-on': { date: `${ending}-01-01` },
    };
    return [{ id: workbook.newId(), at: '', cells }];
  });
}
