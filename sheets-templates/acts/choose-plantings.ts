// The plantings whose amounts can still be chosen, what each earns, works and takes as it stands, and what all of them earn: by Margin, or
// by what outlets take where Demand is kept within. Called by choose-amounts.ts.

import { type Book, rowId, rows, settings } from '../../engine/index.ts';
import { type RowOf, rowAt } from './act.ts';
import type { Room } from './choose-limits.ts';
import { plantingsInLots } from './choose-sales.ts';

const HOUR = 1 / 24;

/** A planting whose length is chosen. */
export interface Grown {
  readonly id: string;
  readonly slot: number;
  /** In the unit of length in which beds are measured out. */
  readonly length: number;
  /** What it brings, less its costs; only these where what it brings is reckoned by sales. */
  readonly earns: number;
  readonly hours: number;
  readonly takes: ReadonlyMap<string, number>;
}

/** By which figure of the sheets amounts are chosen, and its name there. */
export type Measure = 'margin' | 'sales';

export const MEASURE_NAMES: Readonly<Record<Measure, string>> = {
  margin: 'a Margin',
  sales: 'Sales by outlets less Costs',
};

/** Plantings with a length and dates that have not begun and of which nothing was noted: what stands already is no choice any more. */
export function choosable(book: Book): ReadonlySet<number> {
  const { today } = settings(book);
  const noted = notedPlantings(book);
  const found = new Set<number>();
  for (const slot of rows(book, 'plantings')) {
    const row = rowAt(book, 'plantings', '', slot);
    const [used, from, until] = [row.number('bed-length-used'), row.number('planted-out'), row.number('bed-free')];
    if (used === undefined || from === undefined || until === undefined || used <= 0 || noted.has(slot)) continue;
    if (Math.min(from, row.number('sown') ?? from) > today) found.add(slot);
  }
  return found;
}

/** Those of which it is known what they earn, lengths in units of `size` metres; and what all others take of limits. */
export function plantingsOf(
  book: Book,
  { room, chosen, measure, size }: { room: Room; chosen: ReadonlySet<number>; measure: Measure; size: number },
): { readonly grown: readonly Grown[]; readonly taken: ReadonlyMap<string, number> } {
  const grown: Grown[] = [];
  const taken = new Map<string, number>();
  for (const slot of rows(book, 'plantings')) {
    const id = rowId(book, 'plantings', slot);
    const row = rowAt(book, 'plantings', id, slot);
    const [used, margin] = [row.number('bed-length-used'), row.number('margin')];
    const takes = room.takes(slot);
    const isKnown = margin !== undefined || (measure === 'sales' && room.isSold(slot));
    if (chosen.has(slot) && used !== undefined && isKnown) {
      // What outlets take is reckoned week by week, and the planting itself only costs.
      const earns = room.isSold(slot) ? -(row.number('costs') ?? 0) : (margin ?? 0);
      const hours = (row.number('hours') ?? 0) / HOUR;
      grown.push({ id, slot, length: used / size, earns, hours, takes });
    } else {
      // It keeps the room and the hours that it has.
      for (const [limit, amount] of takes) taken.set(limit, (taken.get(limit) ?? 0) + amount);
    }
  }
  return { grown, taken };
}

/**
 * What all plantings of a workbook or branch earn, in its currency: their Margin; or what outlets pay for them less what they cost, and
 * the Margin of those that go to no outlet.
 */
export function earnedIn(book: Book, measure: Measure): number {
  const sold = measure === 'sales' ? plantingsInLots(book) : new Set<number>();
  return sumOf(book, (row) => {
    const margin = row.number('margin');
    if (measure === 'margin' || (margin !== undefined && !sold.has(row.slot))) return margin ?? 0;
    return (row.number('sales-by-outlets') ?? 0) - (row.number('costs') ?? 0);
  });
}

/** Whether any planting that has a Margin goes to no outlet. */
export function goesNowhere(book: Book): boolean {
  const sold = plantingsInLots(book);
  return Array.from(rows(book, 'plantings')).some((slot) => {
    return !sold.has(slot) && rowAt(book, 'plantings', '', slot).number('margin') !== undefined;
  });
}

/** Hours of work on all plantings of a workbook or branch. */
export function hoursIn(book: Book): number {
  return sumOf(book, (row) => row.number('hours') ?? 0) / HOUR;
}

function sumOf(book: Book, of: (row: RowOf) => number): number {
  return Array.from(rows(book, 'plantings'), (slot) => of(rowAt(book, 'plantings', '', slot))).reduce(
    (sum, one) => sum + one,
    0,
  );
}

/** Plantings of which something was noted, by slot. */
function notedPlantings(book: Book): ReadonlySet<number> {
  const named = Array.from(rows(book, 'records'), (slot) => rowAt(book, 'records', '', slot).number('planting'));
  return new Set(named.filter((slot) => slot !== undefined));
}
