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
  const known = rowsWithBoth(place, week);
  const weeks = ranked(week, known, ofWeeks);
  const { rows, ends } = inOrder(known, weeks.count);
  const places = ranked(place, known, ofPlaces);
  const held = new Float64Array(places.count);
  for (let at = 0; at < weeks.count; at++) {
    let from = ends[at - 1] ?? 0;
    const to = ends[at] as number;
    byPlace(rows, from, to);
    let open = 0;
    for (let k = from; k < to; k++) open = Math.max(open, amount(wanted[rows[k] as number] as number));
    while (from < to) {
      // Rows of one place are one lot told in parts.
      const lot = ofPlaces.ranks[rows[from] as number] as number;
      const first = from;
      let there = held[lot] as number;
      for (; from < to && ofPlaces.ranks[rows[from] as number] === lot; from++) {
        there += amount(incoming[rows[from] as number] as number);
      }
      const taken = Math.min(open, there);
      held[lot] = there - taken;
      open -= taken;
      for (let k = first; k < from; k++) sold[rows[k] as number] = taken / (from - first);
    }
  }
  return {
    byRow: sold,
    of: (ofPlace, ofWeek) => {
      const at = weeks.rank(ofWeek);
      const to = ends[at] ?? 0;
      for (let k = ends[at - 1] ?? 0; k < to; k++) {
        const row = rows[k] as number;
        if (place[row] === ofPlace) return sold[row] as number;
      }
      return Number.NaN;
    },
  };
}

/** Ranks by row, in room that is used again from call to call: a season asks this of every product that is stored. */
const [ofPlaces, ofWeeks] = [{ ranks: new Int32Array(64) }, { ranks: new Int32Array(64) }];
let bothKnown = new Int32Array(64);

/** The rows that have a place and a week; good until the next call. */
function rowsWithBoth(place: Float64Array, week: Float64Array): Int32Array {
  if (place.length > bothKnown.length) bothKnown = new Int32Array(place.length * 2);
  let count = 0;
  for (let row = 0; row < place.length; row++) {
    if (!Number.isNaN((place[row] as number) + (week[row] as number))) bothKnown[count++] = row;
  }
  return bothKnown.subarray(0, count);
}

/** Whole numbers from 0 up to but not `count` that rise as values do. */
interface Ranks {
  readonly count: number;
  /** Of a value; -1 of one that is none of them. */
  readonly rank: (value: number) => number;
}

/** Days of two years and some, and any places there may be: a list of so many is gone through at once. */
const SHORT_SPAN = 1024;

/** Puts the ranks of rows into `into`. */
function ranked(values: Float64Array, rows: Int32Array, into: { ranks: Int32Array }): Ranks {
  if (values.length > into.ranks.length) into.ranks = new Int32Array(values.length * 2);
  const { ranks } = into;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  let whole = true;
  for (let at = 0; at < rows.length; at++) {
    const value = values[rows[at] as number] as number;
    if (value < least) least = value;
    if (value > most) most = value;
    if (!Number.isInteger(value)) whole = false;
  }
  if (rows.length === 0) return { count: 0, rank: () => -1 };
  if (whole && most - least < SHORT_SPAN) {
    // Weeks lie seven days apart.
    let apart = 0;
    for (let at = 0; at < rows.length; at++) {
      const offset = (values[rows[at] as number] as number) - least;
      ranks[rows[at] as number] = offset;
      if (apart === 0 || offset % apart !== 0) apart = commonDivisor(apart, offset);
    }
    for (let at = 0; at < rows.length && apart > 1; at++) {
      const row = rows[at] as number;
      ranks[row] = (ranks[row] as number) / apart;
    }
    const by = Math.max(apart, 1);
    const rank = (value: number): number => {
      const at = (value - least) / by;
      return value <= most && at >= 0 && Number.isInteger(at) ? at : -1;
    };
    return { count: (most - least) / by + 1, rank };
  }
  const distinct = [...new Set(Array.from(rows, (row) => values[row] as number))].sort((a, b) => a - b);
  const known = new Map(distinct.map((value, rank) => [value, rank]));
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at] as number;
    ranks[row] = known.get(values[row] as number) ?? 0;
  }
  return { count: distinct.length, rank: (value) => known.get(value) ?? -1 };
}

function commonDivisor(one: number, other: number): number {
  let [a, b] = [one, other];
  while (b > 0) [a, b] = [b, a % b];
  return a;
}

/** Rows by week, those of one week as they stood; where the rows of each week end. */
function inOrder(known: Int32Array, weeks: number): { readonly rows: Int32Array; readonly ends: Int32Array } {
  const { ranks } = ofWeeks;
  // Where the next row of a week goes: at first where the week begins, in the end where it ends.
  const ends = new Int32Array(weeks + 1);
  for (let at = 0; at < known.length; at++) {
    const next = (ranks[known[at] as number] as number) + 1;
    ends[next] = (ends[next] as number) + 1;
  }
  for (let rank = 1; rank <= weeks; rank++) ends[rank] = (ends[rank] as number) + (ends[rank - 1] as number);
  const rows = new Int32Array(known.length);
  for (let at = 0; at < known.length; at++) {
    const row = known[at] as number;
    const rank = ranks[row] as number;
    const to = ends[rank] as number;
    rows[to] = row;
    ends[rank] = to + 1;
  }
  return { rows, ends };
}

/** Puts the few rows of a week in the order of their places, those of one place as they stood. */
function byPlace(rows: Int32Array, from: number, to: number): void {
  const { ranks } = ofPlaces;
  for (let k = from + 1; k < to; k++) {
    const row = rows[k] as number;
    const rank = ranks[row] as number;
    let at = k;
    for (; at > from && (ranks[rows[at - 1] as number] as number) > rank; at--) rows[at] = rows[at - 1] as number;
    rows[at] = row;
  }
}

function amount(value: number): number {
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
