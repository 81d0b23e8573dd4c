// Rows of a table that meet comparisons, kept so that they are found without looking through the table: within each group the
// rows stand sorted by the column that most conditions look at, and what each row was last seen with is remembered, so that
// a change tells whom it concerns. Kept current row by row; equal values stand in the order of the table, so that a total
// added up again has the same bits as one added up from scratch.

import { FILLED, type Token } from '../../values/column.ts';
import { firstPlace } from '../../values/first-place.ts';
import { compareNumbers, equalNumbers } from '../../values/tolerance.ts';
import type { Frame, FrameState, Shared } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { FEW_ROWS, fewInOrder, keysOf, rowsByKeys } from '../row-order.ts';
import { RowSet } from '../row-set.ts';
import type { GroupIndex } from './group-index.ts';
import { KeyTable } from './key-table.ts';
import { meetsAll, type RowFilter } from './totals.ts';

export type RangeComparison = '<' | '<=' | '>' | '>=';

/** A comparison of a row's cell with a cell of whoever reads. */
export interface RangeCondition {
  readonly column: ColumnDef;
  readonly comparison: RangeComparison;
  readonly wanted: ColumnDef;
}

/** What is looked for, the same in every frame. */
export interface RangeOf {
  readonly table: TableDef;
  readonly index: FrameState<GroupIndex>;
  readonly filters: readonly RowFilter[];
  readonly conditions: readonly RangeCondition[];
  /** The column by which the rows of a group are sorted: one of the conditions'. */
  readonly sortedBy: ColumnDef;
  /** Columns whose cells the answers rest on besides. */
  readonly values: readonly ColumnDef[];
}

/** Whether a value stands so to the wanted one, binary dust forgiven. */
export function isWithin(comparison: RangeComparison, value: number, wanted: number): boolean {
  const order = compareNumbers(value, wanted);
  switch (comparison) {
    case '<':
      return order < 0;
    case '<=':
      return order <= 0;
    case '>':
      return order > 0;
    case '>=':
      return order >= 0;
  }
}

/**
 * Where in values that rise, of those in `values[from..to)`, the run of those within a comparison ends (`<`, `<=`) or begins (`>`,
 * `>=`), binary dust forgiven. It is looked for first at `near` and one further: rows one after another mostly ask in the order in
 * which the values stand.
 */
export function boundary(
  values: Float64Array,
  from: number,
  to: number,
  comparison: RangeComparison,
  wanted: number,
  near = to,
): number {
  // Those equal to the wanted value belong to the run of `<=` and of `>=`.
  const equalBefore = comparison === '<=' || comparison === '>';
  let low = from;
  let high = to;
  if (near < to) {
    if (!standsBefore(values[near] as number, wanted, equalBefore)) {
      high = near;
      if (near > from && standsBefore(values[near - 1] as number, wanted, equalBefore)) low = near;
    } else {
      low = near + 1;
      if (low < to && !standsBefore(values[low] as number, wanted, equalBefore)) high = low;
    }
  }
  while (low < high) {
    const middle = (low + high) >> 1;
    if (standsBefore(values[middle] as number, wanted, equalBefore)) low = middle + 1;
    else high = middle;
  }
  const beside = equalBefore ? low : low - 1;
  const isDusty = beside >= from && beside < to && equalNumbers(values[beside] as number, wanted);
  return isDusty ? dustyBoundary(values, from, to, equalBefore, wanted) : low;
}

function standsBefore(value: number, wanted: number, equalBefore: boolean): boolean {
  return value < wanted || (equalBefore && value === wanted);
}

/** As boundary, where values differ from the wanted one by dust alone. */
function dustyBoundary(values: Float64Array, from: number, to: number, equalBefore: boolean, wanted: number): number {
  return firstPlace(from, to, (place) => {
    const value = values[place] as number;
    return equalNumbers(value, wanted) ? equalBefore : value < wanted;
  });
}

/**
 * Rows as they were seen: their groups and their cells in the columns of the conditions. Those alike are told once: of jobs that
 * move, many move from one day to another.
 */
export class SeenRows {
  readonly #states: KeyTable;
  readonly #state: number[] = [];

  constructor({ conditions }: RangeOf) {
    this.#states = new KeyTable(1 + conditions.length);
  }

  get count(): number {
    return this.#states.count;
  }

  group(at: number): number {
    return this.#states.key(at, 0);
  }

  /** The cell of the condition with this number. */
  cell(at: number, condition: number): number {
    return this.#states.key(at, 1 + condition);
  }

  /** `cells`: by condition and row. */
  add(group: number, cells: readonly Float64Array[], row: number): void {
    const state = this.#state;
    state[0] = group;
    for (let k = 0; k < cells.length; k++) state[1 + k] = (cells[k] as Float64Array)[row] as number;
    if (this.#states.find(state) < 0) this.#states.add(state);
  }
}

const NOBODY: readonly number[] = [];
const NO_LIST = new Int32Array(0);
const NO_CELLS = new Float64Array(0);

type Compare = ((a: number, b: number) => number) | undefined;

/** The rows of a group by rising value: read `rows[from..from + count)` and `values[from..from + count)`. */
export interface SortedRows {
  readonly rows: Int32Array;
  readonly values: Float64Array;
  readonly from: number;
  readonly count: number;
}

/** In a stretch of arrays that groups share, until it grows out of it. */
class SortedGroup implements SortedRows {
  rows: Int32Array = NO_LIST;
  values: Float64Array = NO_CELLS;
  from = 0;
  count = 0;
  /** So many rows have room. */
  #room = 0;
  readonly owner: Token;

  constructor(owner: Token) {
    this.owner = owner;
  }

  /** From now on the rows stand in a stretch of arrays that has room for so many. */
  stand(rows: Int32Array, values: Float64Array, from: number, room: number): void {
    this.rows = rows;
    this.values = values;
    this.from = from;
    this.#room = room;
  }

  copy(owner: Token): SortedGroup {
    const { rows, values, from, count } = this;
    const copy = new SortedGroup(owner);
    if (count > 0) copy.stand(rows.slice(from, from + count), values.slice(from, from + count), 0, count);
    copy.count = count;
    return copy;
  }

  /** Puts a row after the others, where there is room for it. */
  push(row: number, value: number): void {
    const place = this.from + this.count++;
    this.rows[place] = row;
    this.values[place] = value;
  }

  /** Sorts the rows, which stand as in the table, by their values: those with one value stay so. */
  putInOrder(sorting: Float64Array): void {
    const { rows, values, from, count } = this;
    const end = from + count;
    let rises = from + 1;
    while (rises < end && (values[rises - 1] as number) <= (values[rises] as number)) rises++;
    if (rises >= end) return;
    if (count > FEW_ROWS) rows.set(rowsByKeys(rows.slice(from, end), values.slice(from, end)), from);
    else fewInOrder(rows, from, count, (a, b) => (sorting[a] as number) - (sorting[b] as number));
    for (let at = from; at < end; at++) values[at] = sorting[rows[at] as number] as number;
  }

  insert(row: number, value: number, compare: Compare): void {
    if (this.count === this.#room) this.#makeRoom(Math.max(8, Math.ceil(this.count * 1.5)));
    const { rows, values, from } = this;
    const end = from + this.count;
    let low = from;
    let high = end;
    while (low < high) {
      const middle = (low + high) >> 1;
      const there = values[middle] as number;
      const other = rows[middle] as number;
      const before = there === value ? (compare === undefined ? other - row : compare(other, row)) < 0 : there < value;
      if (before) low = middle + 1;
      else high = middle;
    }
    rows.copyWithin(low + 1, low, end);
    values.copyWithin(low + 1, low, end);
    rows[low] = row;
    values[low] = value;
    this.count++;
  }

  /** Found by its value, then by looking: it may have moved in the table's order since it was put here. */
  remove(row: number, value: number): void {
    const { rows, values, from } = this;
    const end = from + this.count;
    let low = from;
    let high = end;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((values[middle] as number) < value) low = middle + 1;
      else high = middle;
    }
    while (low < end && rows[low] !== row) low++;
    if (low === end) return;
    rows.copyWithin(low, low + 1, end);
    values.copyWithin(low, low + 1, end);
    this.count--;
  }

  /** Takes rows out and puts others in, in one pass over the group; those that come stand in order among themselves. */
  exchange(leaving: RowSet, joining: ArrayLike<number>, sorting: Float64Array, compare: Compare): void {
    const end = this.from + this.count;
    let kept = this.from;
    for (let place = this.from; place < end; place++) {
      const row = this.rows[place] as number;
      if (leaving.has(row)) continue;
      this.rows[kept] = row;
      this.values[kept++] = this.values[place] as number;
    }
    this.count = kept - this.from;
    const count = this.count + joining.length;
    if (count > this.#room) this.#makeRoom(count);
    const { rows, values, from } = this;
    let last = from + this.count - 1;
    let coming = joining.length - 1;
    for (let place = from + count - 1; coming >= 0; place--) {
      const row = joining[coming] as number;
      const value = sorting[row] as number;
      if (last >= from && standsAfter(values[last] as number, rows[last] as number, value, row, compare)) {
        rows[place] = rows[last] as number;
        values[place] = values[last--] as number;
      } else {
        rows[place] = row;
        values[place] = value;
        coming--;
      }
    }
    this.count = count;
  }

  /** In arrays of its own. */
  #makeRoom(room: number): void {
    const end = this.from + this.count;
    const rows = new Int32Array(room);
    rows.set(this.rows.subarray(this.from, end));
    const values = new Float64Array(room);
    values.set(this.values.subarray(this.from, end));
    this.stand(rows, values, 0, room);
  }
}

/** Whether a row of one value stands after another of another value. */
function standsAfter(value: number, row: number, other: number, otherRow: number, compare: Compare): boolean {
  if (value !== other) return value > other;
  return (compare === undefined ? row - otherRow : compare(row, otherRow)) > 0;
}

/** From so many rows on it costs less to go through a group once than to find the place of each. */
const MANY_ROWS = 32;
/** So too from so many on where all rows are one group: moving rows aside in a long list costs most. */
const MANY_OF_ALL = 4;
/** Reused from call to call. */
const leaving = new RowSet();

/** How rows that exist stand in their table, by the places that were found for all of them. */
function byPlace(places: Int32Array): (a: number, b: number) => number {
  return (a, b) => (places[a] as number) - (places[b] as number);
}

/** Many rows by rising value, those of one value as they stand in their table: by slot where no places are given. */
function sortedRows(rows: readonly number[], values: Float64Array, places: Int32Array | undefined): ArrayLike<number> {
  const slots = Int32Array.from(rows);
  const inTable = places === undefined ? slots.sort() : rowsByKeys(slots, keysOf(slots, places));
  return rowsByKeys(inTable, keysOf(inTable, values));
}

const NO_ROWS: SortedRows = new SortedGroup({});

export class RangedRows implements Shared {
  owner: Token | undefined;
  built = false;
  readonly #of: RangeOf;
  #groups: (SortedGroup | undefined)[] = [];
  /** The group that each row takes part in; -1 where it takes part in none. */
  #groupOf = new Int32Array(0);
  /** Each row's cells in the columns of the conditions as last seen. */
  readonly #cells: Float64Array[];

  constructor(of: RangeOf, owner: Token) {
    this.owner = owner;
    this.#of = of;
    this.#cells = of.conditions.map(() => new Float64Array(0));
  }

  copy(owner: Token): RangedRows {
    const copy = new RangedRows(this.#of, owner);
    copy.built = this.built;
    copy.#groups = this.#groups.slice();
    copy.#groupOf = this.#groupOf.slice();
    this.#cells.forEach((cells, k) => {
      copy.#cells[k] = cells.slice();
    });
    return copy;
  }

  /** The rows of a group by rising value; the same object while nothing of it changes. */
  group(group: number): SortedRows {
    return this.#groups[group] ?? NO_ROWS;
  }

  fromScratch(frame: Frame): void {
    const { table, index, conditions, sortedBy } = this.#of;
    const inOrder = frame.rows(table);
    this.#makeRoom(frame.table(table).length);
    this.#groupOf.fill(-1);
    const counts = new Int32Array(index.read(frame).groupCount);
    const groupFor = this.#grouping(frame);
    const looked = conditions.map(({ column }) => frame.column(column).values);
    for (let i = 0; i < inOrder.length; i++) {
      const row = inOrder[i] as number;
      const group = groupFor(row);
      this.#groupOf[row] = group;
      if (group < 0) continue;
      for (let k = 0; k < looked.length; k++)
        (this.#cells[k] as Float64Array)[row] = (looked[k] as ArrayLike<number>)[row] as number;
      counts[group] = (counts[group] as number) + 1;
    }
    const there = counts.reduce((sum, count) => sum + count, 0);
    const [rows, values] = [new Int32Array(there), new Float64Array(there)];
    const groups: SortedGroup[] = [];
    for (let group = 0, from = 0; group < counts.length; group++) {
      const made = new SortedGroup(frame.token);
      made.stand(rows, values, from, counts[group] as number);
      from += counts[group] as number;
      groups.push(made);
    }
    const sorting = this.#cells[conditions.findIndex(({ column }) => column === sortedBy)] ?? NO_CELLS;
    for (let i = 0; i < inOrder.length; i++) {
      const row = inOrder[i] as number;
      groups[this.#groupOf[row] as number]?.push(row, sorting[row] as number);
    }
    for (let group = 0; group < groups.length; group++) (groups[group] as SortedGroup).putInOrder(sorting);
    this.#groups = groups;
    this.built = true;
  }

  /**
   * Looks at some rows again. Of each, what it was seen as and what it is goes into `seen`: whoever either concerns reads another
   * set of rows now, or the same with other cells.
   */
  update(frame: Frame, rows: RowSet, seen: SeenRows): void {
    const { conditions, sortedBy, table } = this.#of;
    const sorting = conditions.findIndex(({ column }) => column === sortedBy);
    this.#makeRoom(frame.table(table).length);
    const groupFor = this.#grouping(frame);
    const compare = frame.compare(table);
    const many = rows.count >= (this.#groups.length > 1 ? MANY_ROWS : MANY_OF_ALL);
    const left = new Set<number>();
    const joining: number[] = [];
    for (let i = 0; i < rows.count; i++) {
      const row = rows.at(i);
      const before = this.#groupOf[row] ?? -1;
      const now = groupFor(row);
      if (before < 0 && now < 0) continue;
      if (before >= 0) {
        seen.add(before, this.#cells, row);
        if (many) {
          leaving.add(row);
          left.add(before);
        } else this.#own(frame, before).remove(row, this.#cells[sorting]?.[row] ?? 0);
      }
      this.#groupOf[row] = now;
      this.#see(frame, row);
      if (now < 0) continue;
      seen.add(now, this.#cells, row);
      joining.push(row);
    }
    const cells = this.#cells[sorting] ?? NO_CELLS;
    if (many) {
      const places = rows.count >= MANY_ROWS && compare !== undefined ? frame.places(table) : undefined;
      this.#exchange(frame, left, joining, cells, places === undefined ? compare : byPlace(places), places);
      return;
    }
    for (const row of joining) this.#own(frame, this.#groupOf[row] ?? 0).insert(row, cells[row] ?? 0, compare);
  }

  #exchange(
    frame: Frame,
    left: ReadonlySet<number>,
    joining: readonly number[],
    sorting: Float64Array,
    compare: Compare,
    places: Int32Array | undefined,
  ): void {
    const joined = new Map<number, number[]>();
    for (const row of joining) {
      const group = this.#groupOf[row] ?? 0;
      const list = joined.get(group);
      if (list === undefined) joined.set(group, [row]);
      else list.push(row);
    }
    const order = (a: number, b: number): number =>
      (sorting[a] as number) - (sorting[b] as number) || (compare === undefined ? a - b : compare(a, b));
    for (const [group, list] of joined) {
      const sorted = list.length < MANY_ROWS ? list.sort(order) : sortedRows(list, sorting, places);
      this.#own(frame, group).exchange(leaving, sorted, sorting, compare);
    }
    for (const group of left)
      if (!joined.has(group)) this.#own(frame, group).exchange(leaving, NOBODY, sorting, compare);
    leaving.clear();
  }

  /** Puts a row as it was last seen into `seen`, where it takes part in a group. */
  tell(row: number, seen: SeenRows): void {
    const group = this.#groupOf[row] ?? -1;
    if (group >= 0) seen.add(group, this.#cells, row);
  }

  /** Which group a row takes part in by its cells as they stand; below 0 where in none. */
  #grouping(frame: Frame): (row: number) => number {
    const { index, filters, conditions } = this.#of;
    const { groupOf } = index.read(frame);
    // A column in which every cell is filled need not be asked.
    const columns = conditions.map(({ column }) => frame.column(column)).filter(({ exceptions }) => exceptions > 0);
    const states = columns.map((column) => column.states);
    return (row) => {
      const group = groupOf[row] ?? -1;
      if (group < 0 || !meetsAll(filters, row, frame)) return -1;
      for (let k = 0; k < states.length; k++) if ((states[k] as Uint8Array)[row] !== FILLED) return -1;
      return group;
    };
  }

  #see(frame: Frame, row: number): void {
    const { conditions } = this.#of;
    for (let k = 0; k < conditions.length; k++) {
      const condition = conditions[k] as RangeCondition;
      const cells = this.#cells[k] as Float64Array;
      cells[row] = frame.column(condition.column).values[row] ?? 0;
    }
  }

  #makeRoom(length: number): void {
    if (length <= this.#groupOf.length) return;
    const room = Math.max(length, Math.ceil(this.#groupOf.length * 1.5));
    const groupOf = new Int32Array(room).fill(-1);
    groupOf.set(this.#groupOf);
    this.#groupOf = groupOf;
    this.#cells.forEach((cells, k) => {
      const larger = new Float64Array(room);
      larger.set(cells);
      this.#cells[k] = larger;
    });
  }

  #own(frame: Frame, group: number): SortedGroup {
    const known = this.#groups[group];
    if (known?.owner === frame.token) return known;
    const own = known?.copy(frame.token) ?? new SortedGroup(frame.token);
    this.#groups[group] = own;
    return own;
  }
}
