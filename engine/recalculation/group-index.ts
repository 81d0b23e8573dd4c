// Groups of a table's rows by the values of some of its columns, kept current row by row. Conditional totals, look-ups and
// the way back along links all read it. Groups keep their rows in rising order, so that a total summed again has the same
// bits as one summed from scratch.

import { type Column, FILLED } from '../values/column.ts';
import type { Texts } from '../values/texts.ts';
import type { TableData } from './model.ts';
import type { RowSet } from './row-set.ts';

export interface KeyColumn {
  readonly column: Column;
  /** Texts are grouped ignoring case. */
  readonly text: boolean;
}

class RowList {
  rows: Int32Array;
  count: number;

  constructor(rows: Int32Array, count: number) {
    this.rows = rows;
    this.count = count;
  }

  /** Where `row` is or would go. */
  #place(row: number): number {
    let [low, high] = [0, this.count];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.rows[middle] ?? 0) < row) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  insert(row: number): void {
    if (this.count === this.rows.length) {
      const rows = new Int32Array(Math.max(4, Math.ceil(this.count * 1.5)));
      rows.set(this.rows);
      this.rows = rows;
    }
    const place = this.#place(row);
    this.rows.copyWithin(place + 1, place, this.count);
    this.rows[place] = row;
    this.count++;
  }

  remove(row: number): void {
    const place = this.#place(row);
    if (this.rows[place] !== row || place >= this.count) return;
    this.rows.copyWithin(place, place + 1, this.count);
    this.count--;
  }
}

const NO_ROWS = new RowList(new Int32Array(0), 0);

export class GroupIndex {
  readonly table: TableData;
  readonly keys: readonly KeyColumn[];
  readonly #texts: Texts;
  #groups = new Map<number | string, number>();
  #members: RowList[] = [];
  /** The key values of each group, group by group. */
  #keyValues: number[] = [];
  groupOf = new Int32Array(0);

  /** Whether rows that a sheet's own condition leaves out are grouped too: so for the way back along links. */
  readonly #leftOutToo: boolean;

  constructor(table: TableData, keys: readonly KeyColumn[], texts: Texts, leftOutToo: boolean) {
    this.#leftOutToo = leftOutToo;
    this.table = table;
    this.keys = keys;
    this.#texts = texts;
  }

  get groupCount(): number {
    return this.#members.length;
  }

  /** The rows of a group, in rising order: read `rows[0..count)`. */
  members(group: number): { readonly rows: Int32Array; readonly count: number } {
    return this.#members[group] ?? NO_ROWS;
  }

  /** The value of key column `k` shared by a group's rows: a number, a row slot or a folded text. */
  keyValue(group: number, k: number): number {
    return this.#keyValues[group * this.keys.length + k] ?? 0;
  }

  /** The group with these key values; -1 where no row has or had them. */
  find(keyValues: ArrayLike<number>): number {
    return this.#groups.get(this.#mapKey(keyValues)) ?? -1;
  }

  /** As find, for an index on one column. */
  findOne(keyValue: number): number {
    return this.#groups.get(keyValue) ?? -1;
  }

  #mapKey(values: ArrayLike<number>): number | string {
    if (values.length === 1) return (values[0] ?? 0) + 0;
    let text = '';
    for (let k = 0; k < values.length; k++) text += `${values[k]}|`;
    return text;
  }

  readonly #row: number[] = [];

  /** The group a row belongs to now by its cells; -1 where it doesn't exist or a key is blank or faulty. */
  #groupFor(row: number): number {
    if (this.#leftOutToo ? this.table.live[row] !== 1 : !this.table.exists(row)) return -1;
    const values = this.#row;
    if (values.length !== this.keys.length) values.length = this.keys.length;
    for (let k = 0; k < this.keys.length; k++) {
      const key = this.keys[k];
      if (key === undefined || key.column.states[row] !== FILLED) return -1;
      const value = key.column.values[row] ?? 0;
      values[k] = key.text ? this.#texts.fold(value) : value;
    }
    const mapKey = this.#mapKey(values);
    const known = this.#groups.get(mapKey);
    if (known !== undefined) return known;
    const group = this.#members.length;
    this.#groups.set(mapKey, group);
    this.#members.push(new RowList(new Int32Array(0), 0));
    for (const value of values) this.#keyValues.push(value);
    return group;
  }

  fromScratch(): void {
    const { length } = this.table;
    this.#groups = new Map();
    this.#members = [];
    this.#keyValues = [];
    this.groupOf = new Int32Array(length).fill(-1);
    for (let row = 0; row < length; row++) this.groupOf[row] = this.#groupFor(row);
    const counts = new Int32Array(this.#members.length);
    for (const group of this.groupOf) if (group >= 0) counts[group] = (counts[group] ?? 0) + 1;
    this.#members = Array.from(counts, (count) => new RowList(new Int32Array(count), 0));
    for (let row = 0; row < length; row++) {
      const list = this.#members[this.groupOf[row] ?? -1];
      if (list !== undefined) list.rows[list.count++] = row;
    }
  }

  /** Looks at one row again; the groups it left and joined go into `touched`. */
  update(row: number, touched: RowSet): void {
    if (row >= this.groupOf.length) {
      const groupOf = new Int32Array(Math.max(row + 1, Math.ceil(this.groupOf.length * 1.5))).fill(-1);
      groupOf.set(this.groupOf);
      this.groupOf = groupOf;
    }
    const before = this.groupOf[row] ?? -1;
    const now = this.#groupFor(row);
    if (before === now) return;
    this.groupOf[row] = now;
    if (before >= 0) {
      this.#members[before]?.remove(row);
      touched.add(before);
    }
    if (now >= 0) {
      this.#members[now]?.insert(row);
      touched.add(now);
    }
  }
}
