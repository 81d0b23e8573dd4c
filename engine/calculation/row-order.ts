// How the rows of a table stand in order: by their own labels, as the rows they were made from, by pairs of rows, by date.
// Totals add up and lists stand in this order, whatever slots the rows have, so that their bits are those of a fresh workbook.

import type { Column } from '../values/column.ts';
import type { ColumnDef, LinkDef, TableDef } from './layout.ts';
import type { TableRows } from './table-rows.ts';

/** Where rows and columns are read: a data. */
interface Data {
  column(def: ColumnDef): Column;
  table(def: TableDef): TableRows;
}

type Compare = (a: number, b: number) => number;

/** The order of slots themselves. */
export const bySlot: Compare = (a, b) => a - b;

/** The first so many slots, as they stand. */
export function slotsUpTo(length: number): Int32Array<ArrayBuffer> {
  const slots = new Int32Array(length);
  for (let slot = 0; slot < length; slot++) slots[slot] = slot;
  return slots;
}

/** Below zero where row a stands before row b; undefined where slots stand in order themselves. */
export function compareRows(data: Data, table: TableDef): Compare | undefined {
  const { order } = table;
  if (data.table(table).inOrder) return undefined;
  switch (order.by) {
    case 'own': {
      const { labels } = data.table(table);
      return labels === undefined ? undefined : (a, b) => (labels[a] as number) - (labels[b] as number) || a - b;
    }
    case 'table':
      return compareRows(data, order.table);
    case 'links': {
      const [first, second] = order.links;
      const [one, other] = [compareLinked(data, first), compareLinked(data, second)];
      return (a, b) => one(a, b) || other(a, b);
    }
    case 'events': {
      const [days, kinds] = [data.column(order.date).values, data.column(order.kind).values];
      const abouts = order.about.map((link) => compareLinked(data, link));
      return (a, b) => {
        const earlier = (days[a] as number) - (days[b] as number) || (kinds[a] as number) - (kinds[b] as number);
        return earlier || (abouts[kinds[a] as number]?.(a, b) ?? 0);
      };
    }
  }
}

/** By the rows that a link column names. */
function compareLinked(data: Data, { column, to }: LinkDef): Compare {
  const { values } = data.column(column);
  const compare = compareRows(data, to) ?? bySlot;
  return (a, b) => compare(values[a] as number, values[b] as number);
}

/** Slots of the rows that exist, in order. */
export function rowsInOrder(data: Data, table: TableDef): Int32Array {
  const { length, live, liveCount } = data.table(table);
  const shown = table.shown === undefined ? undefined : data.column(table.shown);
  const rows = new Int32Array(liveCount);
  let count = 0;
  for (let row = 0; row < length; row++) {
    if (live[row] !== 1) continue;
    if (shown === undefined || (shown.states[row] === 0 && shown.values[row] === 1)) rows[count++] = row;
  }
  return putInOrder(data, table, rows.subarray(0, count));
}

/**
 * Puts slots of a table, given by rising number, in the order of compareRows: what tells rows apart least comes first, each pass
 * leaves what it finds equal as it stood. A comparison of two rows by pairs or events costs far more than a pass.
 */
function putInOrder(data: Data, table: TableDef, slots: Int32Array): Int32Array {
  const { order } = table;
  switch (order.by) {
    case 'own': {
      const { labels } = data.table(table);
      return labels === undefined ? slots : rowsByKeys(slots, keysOf(slots, labels));
    }
    case 'table':
      return putInOrder(data, order.table, slots);
    case 'links': {
      if (data.table(table).inOrder) return slots;
      const [first, second] = order.links;
      const later = rowsByKeys(slots, linkedPlaces(data, second, slots));
      return rowsByKeys(later, linkedPlaces(data, first, later));
    }
    case 'events': {
      const kinds = data.column(order.kind).values;
      const known = new Map<TableDef, Int32Array | undefined>();
      const places = order.about.map(({ column, to }) => {
        if (!known.has(to)) known.set(to, placesOf(data, to));
        return { rows: data.column(column).values, of: known.get(to) };
      });
      const abouts = new Float64Array(slots.length);
      for (let i = 0; i < slots.length; i++) {
        const slot = slots[i] as number;
        const about = places[kinds[slot] as number];
        const row = about?.rows[slot] ?? 0;
        abouts[i] = about?.of?.[row] ?? row;
      }
      const byAbout = rowsByKeys(slots, abouts);
      const byKind = rowsByKeys(byAbout, keysOf(byAbout, kinds));
      return rowsByKeys(byKind, keysOf(byKind, data.column(order.date).values));
    }
  }
}

/** Where each slot of a table stands among all of them, those that live or not; undefined where slots stand in order themselves. */
function placesOf(data: Data, table: TableDef): Int32Array | undefined {
  if (compareRows(data, table) === undefined) return undefined;
  const { length } = data.table(table);
  const inOrder = putInOrder(data, table, slotsUpTo(length));
  const places = new Int32Array(length);
  for (let place = 0; place < length; place++) places[inOrder[place] as number] = place;
  return places;
}

function linkedPlaces(data: Data, { column, to }: LinkDef, slots: Int32Array): Float64Array {
  const keys = keysOf(slots, data.column(column).values);
  const places = placesOf(data, to);
  if (places !== undefined) for (let i = 0; i < keys.length; i++) keys[i] = places[keys[i] as number] as number;
  return keys;
}

/** What slots have in a column, in their order. */
export function keysOf(slots: Int32Array, values: ArrayLike<number>): Float64Array {
  const keys = new Float64Array(slots.length);
  for (let i = 0; i < keys.length; i++) keys[i] = values[slots[i] as number] as number;
  return keys;
}

/** Up to so many rows are put in order one by one: a sort costs more to begin. */
export const FEW_ROWS = 16;

/** Puts so few of a list in order where they stand, from one place on; equal ones stay as they stood. */
export function fewInOrder(rows: Int32Array, from: number, count: number, compare: Compare): void {
  for (let at = from + 1; at < from + count; at++) {
    const row = rows[at] as number;
    let place = at;
    for (; place > from && compare(rows[place - 1] as number, row) > 0; place--)
      rows[place] = rows[place - 1] as number;
    rows[place] = row;
  }
}

/** Slots by rising key, equal ones as they stood. Most stand so already. */
export function rowsByKeys(slots: Int32Array, keys: Float64Array): Int32Array {
  let rises = true;
  let whole = true;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < keys.length; i++) {
    const key = keys[i] as number;
    if (i > 0 && key < (keys[i - 1] as number)) rises = false;
    if (key < least) least = key;
    if (key > most) most = key;
    if (!Number.isInteger(key)) whole = false;
  }
  if (rises) return slots;
  const range = most - least + 1;
  if (whole && range <= 4 * keys.length + MOST_COUNTED) return counted(slots, keys, least, range);
  return dealt(slots, keys, least, most) ?? compared(slots, keys);
}

/** Keys in so narrow a range are counted, whatever the number of rows. */
const MOST_COUNTED = 4096;

function counted(slots: Int32Array, keys: Float64Array, least: number, range: number): Int32Array {
  const next = new Int32Array(range + 1);
  for (let i = 0; i < keys.length; i++) {
    const at = (keys[i] as number) - least + 1;
    next[at] = (next[at] as number) + 1;
  }
  for (let at = 1; at <= range; at++) next[at] = (next[at] as number) + (next[at - 1] as number);
  const sorted = new Int32Array(slots.length);
  for (let i = 0; i < keys.length; i++) {
    const at = (keys[i] as number) - least;
    const place = next[at] as number;
    next[at] = place + 1;
    sorted[place] = slots[i] as number;
  }
  return sorted;
}

/** With more than so many rows in one place, putting them in order one by one would cost more than comparing. */
const MOST_IN_PLACE = 32;

/**
 * Keys that are spread about are dealt out to as many places as there are, by how far they lie between the least and the most, which
 * leaves few to be moved: equal ones never are. undefined where many that differ stand too close, or one is no number.
 */
function dealt(slots: Int32Array, keys: Float64Array, least: number, most: number): Int32Array | undefined {
  const { length } = keys;
  const span = most - least;
  if (!Number.isFinite(span) || keys.includes(Number.NaN)) return undefined;
  const places = new Int32Array(length);
  const next = new Int32Array(length + 1);
  for (let i = 0; i < length; i++) {
    const place = Math.min(length - 1, (((keys[i] as number) - least) / span) * length) | 0;
    places[i] = place;
    next[place + 1] = (next[place + 1] as number) + 1;
  }
  if (isCrowded(keys, places, next)) return undefined;
  for (let place = 1; place <= length; place++) {
    next[place] = (next[place] as number) + (next[place - 1] as number);
  }
  const order = new Int32Array(length);
  for (let i = 0; i < length; i++) {
    const place = places[i] as number;
    const at = next[place] as number;
    next[place] = at + 1;
    order[at] = i;
  }
  for (let at = 1; at < length; at++) {
    const moving = order[at] as number;
    const key = keys[moving] as number;
    let to = at;
    for (; to > 0 && (keys[order[to - 1] as number] as number) > key; to--) order[to] = order[to - 1] as number;
    order[to] = moving;
  }
  const sorted = places;
  for (let at = 0; at < length; at++) sorted[at] = slots[order[at] as number] as number;
  return sorted;
}

/** Whether more keys than are soon put in order stand in one place, other than one key again and again; `counts`: of each place before. */
function isCrowded(keys: Float64Array, places: Int32Array, counts: Int32Array): boolean {
  let most = 0;
  for (let place = 1; place < counts.length; place++) most = Math.max(most, counts[place] as number);
  if (most <= MOST_IN_PLACE) return false;
  const first = new Float64Array(keys.length).fill(Number.NaN);
  for (let i = 0; i < keys.length; i++) {
    const place = places[i] as number;
    if ((counts[place + 1] as number) <= MOST_IN_PLACE || first[place] === keys[i]) continue;
    if (!Number.isNaN(first[place])) return true;
    first[place] = keys[i] as number;
  }
  return false;
}

function compared(slots: Int32Array, keys: Float64Array): Int32Array {
  const places = slotsUpTo(slots.length);
  places.sort((a, b) => (keys[a] as number) - (keys[b] as number) || a - b);
  return places.map((place) => slots[place] as number);
}
