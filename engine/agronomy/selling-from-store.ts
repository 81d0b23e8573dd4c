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

/** What is sold, row by row, and of a place in a week. */
export interface Sold {
  readonly byRow: Float64Array;
  /** Not-a-number where the week has no such lot. */
  readonly of: (place: number, week: number) => number;
}

/**
 * What is sold of each lot in each week. A lot is there in the weeks it has, and what is left of it after its last week is lost;
 * the largest `wanted` of a week counts. Losses of weight are no matter here: hand over amounts reckoned back to one date
 * where lots lose alike. Amounts that are not known count as nothing; of rows without a place or week nothing is sold.
 */
export function soldFromStore({ place, week, incoming, wanted }: LotWeeks): Sold {
  const sold = new Float64Array(place.length);
  const rows = rowsWithBoth(place, week);
  const [places, weeks] = [ranked(place, rows), ranked(week, rows)];
  const order = inOrder(inOrder(rows, places).rows, weeks);
  const held = new Float64Array(places.count);
  for (let at = 0; at < weeks.count; at++) {
    let from = order.ends[at - 1] ?? 0;
    const to = order.ends[at] as number;
    let open = 0;
    for (let k = from; k < to; k++) open = Math.max(open, known(wanted[order.rows[k] as number] as number));
    while (from < to) {
      // Rows of one place are one lot told in parts.
      const lot = places.of[order.rows[from] as number] as number;
      const first = from;
      let there = held[lot] as number;
      for (; from < to && places.of[order.rows[from] as number] === lot; from++) {
        there += known(incoming[order.rows[from] as number] as number);
      }
      const taken = Math.min(open, there);
      held[lot] = there - taken;
      open -= taken;
      for (let k = first; k < from; k++) sold[order.rows[k] as number] = taken / (from - first);
    }
  }
  return {
    byRow: sold,
    of: (ofPlace, ofWeek) => {
      const at = weeks.rank(ofWeek);
      const to = order.ends[at] ?? 0;
      for (let k = order.ends[at - 1] ?? 0; k < to; k++) {
        const row = order.rows[k] as number;
        if (place[row] === ofPlace) return sold[row] as number;
      }
      return Number.NaN;
    },
  };
}

function rowsWithBoth(place: Float64Array, week: Float64Array): Int32Array {
  const rows = new Int32Array(place.length);
  let count = 0;
  for (let row = 0; row < place.length; row++) {
    if (!Number.isNaN((place[row] as number) + (week[row] as number))) rows[count++] = row;
  }
  return rows.subarray(0, count);
}

/** Whole numbers from 0 up to but not `count` that rise as values do. */
interface Ranks {
  readonly count: number;
  /** By row. */
  readonly of: Int32Array;
  /** Of a value; -1 of one that is none of them. */
  readonly rank: (value: number) => number;
}

/** Days of two years and some, and any places there may be: a list of so many is gone through at once. */
const SHORT_SPAN = 1024;

function ranked(values: Float64Array, rows: Int32Array): Ranks {
  const of = new Int32Array(values.length);
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  let whole = true;
  for (let at = 0; at < rows.length; at++) {
    const value = values[rows[at] as number] as number;
    if (value < least) least = value;
    if (value > most) most = value;
    if (!Number.isInteger(value)) whole = false;
  }
  if (rows.length === 0) return { count: 0, of, rank: () => -1 };
  if (whole && most - least < SHORT_SPAN) {
    for (let at = 0; at < rows.length; at++) {
      const row = rows[at] as number;
      of[row] = (values[row] as number) - least;
    }
    return { count: most - least + 1, of, rank: (value) => (value >= least && value <= most ? value - least : -1) };
  }
  const distinct = [...new Set(Array.from(rows, (row) => values[row] as number))].sort((a, b) => a - b);
  const ranks = new Map(distinct.map((value, rank) => [value, rank]));
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at] as number;
    of[row] = ranks.get(values[row] as number) ?? 0;
  }
  return { count: distinct.length, of, rank: (value) => ranks.get(value) ?? -1 };
}

/** Rows by rank, those of one rank as they stood; where the rows of each rank end. */
function inOrder(rows: Int32Array, { of, count }: Ranks): { readonly rows: Int32Array; readonly ends: Int32Array } {
  // Where the next row of a rank goes: at first where the rank begins, in the end where it ends.
  const ends = new Int32Array(count + 1);
  for (let at = 0; at < rows.length; at++) {
    const next = (of[rows[at] as number] as number) + 1;
    ends[next] = (ends[next] as number) + 1;
  }
  for (let rank = 1; rank <= count; rank++) ends[rank] = (ends[rank] as number) + (ends[rank - 1] as number);
  const sorted = new Int32Array(rows.length);
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at] as number;
    const rank = of[row] as number;
    const to = ends[rank] as number;
    sorted[to] = row;
    ends[rank] = to + 1;
  }
  return { rows: sorted, ends };
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
