// Selling out of store: lots of one crop, each with a place in the order of selling, week by week. What is asked for is taken from
// the lots there are, the first in order first. Calls nothing.

import type { ModelSource } from './source.ts';

/** One lot in one week: what came in that week, and what all lots together are asked for in it. */
export interface LotWeek {
  /** Its place in the order of selling, 1 first; lots with one place share what is taken by what they hold. */
  readonly place: number;
  /** Any number that rises from week to week. */
  readonly week: number;
  readonly incoming: number;
  readonly wanted: number;
}

/**
 * What is sold of each lot in each week, in the order given. A lot is there in the weeks it has, and what is left of it after
 * its last week is lost; the largest `wanted` of a week counts. Losses of weight are no matter here: hand over amounts reckoned
 * back to one date where lots lose alike. Figures that are not known count as nothing.
 */
export function soldFromStore(weeks: readonly LotWeek[]): Float64Array {
  const sold = new Float64Array(weeks.length);
  const order = Uint32Array.from(weeks, (_, at) => at).sort((a, b) => compare(weeks[a], weeks[b]));
  const held = new Map<number, number>();
  for (let from = 0; from < order.length; ) {
    const { week } = at(weeks, order[from]);
    let to = from;
    let wanted = 0;
    while (to < order.length && at(weeks, order[to]).week === week) {
      wanted = Math.max(wanted, known(at(weeks, order[to]).wanted));
      to += 1;
    }
    sellWeek(weeks, order.subarray(from, to), wanted, held, sold);
    from = to;
  }
  return sold;
}

/** Sells one week's rows, which stand by place; rows of one place are one lot told in parts. */
function sellWeek(
  weeks: readonly LotWeek[],
  rows: Uint32Array,
  wanted: number,
  held: Map<number, number>,
  sold: Float64Array,
): void {
  const there = new Map<number, number>();
  const parts = new Map<number, number>();
  for (const row of rows) {
    const { place, incoming } = at(weeks, row);
    there.set(place, (there.get(place) ?? held.get(place) ?? 0) + known(incoming));
    parts.set(place, (parts.get(place) ?? 0) + 1);
  }
  let open = wanted;
  const taken = new Map<number, number>();
  for (const [place, amount] of there) {
    const take = Math.min(open, amount);
    taken.set(place, take);
    held.set(place, amount - take);
    open -= take;
  }
  for (const row of rows) {
    const { place } = at(weeks, row);
    sold[row] = (taken.get(place) ?? 0) / (parts.get(place) ?? 1);
  }
}

function compare(a: LotWeek | undefined, b: LotWeek | undefined): number {
  return (a?.week ?? 0) - (b?.week ?? 0) || (a?.place ?? 0) - (b?.place ?? 0);
}

function at(weeks: readonly LotWeek[], row: number | undefined): LotWeek {
  return weeks[row ?? -1] ?? NOTHING;
}

const NOTHING: LotWeek = { place: 0, week: 0, incoming: 0, wanted: 0 };

function known(value: number): number {
  return Number.isNaN(value) ? 0 : Math.max(value, 0);
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Selling out of store',
    gives: 'what is taken of each lot week by week',
    equation: 'what outlets ask for, from the lot with the shortest time left first',
    range: 'lots of one crop that lose weight alike; what a lot still holds after its keeping life is lost',
    source: 'first to expire, first out: common practice',
    standing: 'common practice',
  },
];
