// Selling out of store: lots of one crop, each with a place in the order of selling, week by week. What is asked for is taken from
// the lots there are, the first in order first. Calls nothing.

import type { ModelSource } from './source.ts';

/** Lots of one crop week by week, a row a lot and week: column by column, not-a-number where a figure is not known. */
export interface LotWeeks {
  /** Its place in the order of selling, 1 first; lots with one place share what is taken by what they hold. */
  readonly place: Float64Array;
  /** Any number that rises from week to week. */
  readonly week: Float64Array;
  /** What came in that week. */
  readonly incoming: Float64Array;
  /** What all lots together are asked for in it. */
  readonly wanted: Float64Array;
}

/**
 * What is sold of each lot in each week, row by row. A lot is there in the weeks it has, and what is left of it after
 * its last week is lost; the largest `wanted` of a week counts. Losses of weight are no matter here: hand over amounts reckoned
 * back to one date where lots lose alike. Amounts that are not known count as nothing; of rows without a place or week nothing is sold.
 */
export function soldFromStore(lots: LotWeeks): Float64Array {
  const { place, week, incoming, wanted } = lots;
  const sold = new Float64Array(place.length);
  const order = byWeekAndPlace(place, week);
  const held = new Map<number, number>();
  for (let from = 0; from < order.length; ) {
    const thisWeek = week[order[from] as number];
    let to = from;
    let open = 0;
    while (to < order.length && week[order[to] as number] === thisWeek) {
      open = Math.max(open, known(wanted[order[to] as number] as number));
      to += 1;
    }
    while (from < to) {
      // Rows of one place are one lot told in parts.
      const lot = place[order[from] as number] as number;
      const first = from;
      let there = held.get(lot) ?? 0;
      for (; from < to && place[order[from] as number] === lot; from++) {
        there += known(incoming[order[from] as number] as number);
      }
      const taken = Math.min(open, there);
      held.set(lot, there - taken);
      open -= taken;
      for (let at = first; at < from; at++) sold[order[at] as number] = taken / (from - first);
    }
  }
  return sold;
}

/** The rows that have both, by week, then by place, then as they stand. */
function byWeekAndPlace(place: Float64Array, week: Float64Array): Int32Array {
  const rows = new Int32Array(place.length);
  let count = 0;
  for (let row = 0; row < place.length; row++) {
    if (!Number.isNaN((place[row] as number) + (week[row] as number))) rows[count++] = row;
  }
  const order = rows.subarray(0, count);
  return sideBySide(order, place, week) ?? order.sort((a, b) => byBoth(place, week, a, b) || a - b);
}

function byBoth(place: Float64Array, week: Float64Array, a: number, b: number): number {
  return (week[a] as number) - (week[b] as number) || (place[a] as number) - (place[b] as number);
}

/** Whole weeks and places fit into one number with the row's own, and numbers alone are sorted far sooner; undefined where they don't. */
function sideBySide(order: Int32Array, place: Float64Array, week: Float64Array): Int32Array | undefined {
  const [firstWeek, lastWeek] = span(order, week);
  const [firstPlace, lastPlace] = span(order, place);
  const places = lastPlace - firstPlace + 1;
  const rows = place.length;
  if (!((lastWeek - firstWeek + 1) * places * rows < Number.MAX_SAFE_INTEGER)) return undefined;
  const keys = new Float64Array(order.length);
  for (let at = 0; at < order.length; at++) {
    const row = order[at] as number;
    const [ofWeek, ofPlace] = [(week[row] as number) - firstWeek, (place[row] as number) - firstPlace];
    if (!Number.isInteger(ofWeek) || !Number.isInteger(ofPlace)) return undefined;
    keys[at] = (ofWeek * places + ofPlace) * rows + row;
  }
  keys.sort();
  return Int32Array.from(keys, (key) => key % rows);
}

function span(order: Int32Array, values: Float64Array): readonly [least: number, most: number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < order.length; at++) {
    const value = values[order[at] as number] as number;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return [least, most];
}

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
