// Rows of a table that meet comparisons, kept so that they are found without looking through the table: within each group the
// rows stand sorted by the column that most conditions look at, and what each row was last seen with is remembered, so that
// a change tells whom it concerns. Kept current row by row; equal values stand in the order of the table, so that a total
// added up again has the same bits as one added up from scratch.

import { FILLED, type Token } from '../../values/column.ts';
import { compareNumbers, equalNumbers } from '../../values/tolerance.ts';
import type { Frame, FrameState, Shared } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { rowsByKeys } from '../row-order.ts';
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
 * Where in values that rise the run of those within a comparison ends (`<`, `<=`) or begins (`>`, `>=`), binary dust forgiven. It is
 * looked for first at `near` and one further: rows one after another mostly ask in the order in which the values stand.
 */
export function boundary(
  values: Float64Array,
  count: number,
  comparison: RangeComparison,
  wanted: number,
  near = count,
): number {
  // Those equal to the wanted value belong to the run of `<=` and of `>=`.
  const equalBefore = comparison === '<=' || comparison === '>';
  let low = 0;
  let high = count;
  if (near < count) {
    if (!standsBefore(values[near] as number, wanted, equalBefore)) {
      high = near;
      if (near > 0 && standsBefore(values[near - 1] as number, wanted, equalBefore)) low = near;
    } else {
      low = near + 1;
      if (low < count && !standsBefore(values[low] as number, wanted, equalBefore)) high = low;
    }
  }
  while (low < high) {
    const middle = (low + high) >> 1;
    if (standsBefore(values[middle] as number, wanted, equalBefore)) low = middle + 1;
    else high = middle;
  }
  const beside = equalBefore ? low : low - 1;
  const isDusty = beside >= 0 && beside < count && equalNumbers(values[beside] as number, wanted);
  return isDusty ? dustyBoundary(values, count, equalBefore, wanted) : low;
}

function standsBefore(value: number, wanted: number, equalBefore: boolean): boolean {
  return value < wanted || (equalBefore && value === wanted);
}

/** As boundary, where values differ from the wanted one by dust alone. */
function dustyBoundary(values: Float64Array, count: number, equalBefore: boolean, wanted: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    const value = values[middle] as number;
    const before = equalNumbers(value, wanted) ? equalBefore : value < wanted;
    if (before) low = middle + 1;
    else high = middle;
  }
  return low;
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

type Compare = ((a: number, b: number) => number) | undefined;

class SortedGroup {
  rows: Int32Array;
  values: Float64Array;
  count: number;
  owner: Token;

  constructor(rows: Int32Array, values: Float64Array, count: number, owner: Token) {
    this.rows = rows;
    this.values = values;
    this.count = count;
    this.owner = owner;
  }

  copy(owner: Token): SortedGroup {
    return new SortedGroup(this.rows.slice(), this.values.slice(), this.count, owner);
  }

  /** Sorts the rows, which stand as in the table, by their values: those with one value stay so. */
  putInOrder(sorting: Float64Array): void {
    const { rows, values, count } = this;
    let rises = true;
    for (let i = 0; i < count; i++) {
      values[i] = sorting[rows[i] as number] as number;
      if (i > 0 && (values[i - 1] as number) > (values[i] as number)) rises = false;
    }
    if (rises) return;
    this.rows = rowsByKeys(rows, values.slice(0, count));
    for (let i = 0; i < count; i++) values[i] = sorting[this.rows[i] as number] as number;
  }

  insert(row: number, value: number, compare: Compare): void {
    if (this.count === this.rows.length) this.#grow();
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      const there = this.values[middle] as number;
      const other = this.rows[middle] as number;
      const before = there === value ? (compare === undefined ? other - row : compare(other, row)) < 0 : there < value;
      if (before) low = middle + 1;
      else high = middle;
    }
    this.rows.copyWithin(low + 1, low, this.count);
    this.values.copyWithin(low + 1, low, this.count);
    this.rows[low] = row;
    this.values[low] = value;
    this.count++;
  }

  /** Found by its value, then by looking: it may have moved in the table's order since it was put here. */
  remove(row: number, value: number): void {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.values[middle] as number) < value) low = middle + 1;
      else high = middle;
    }
    const place = this.rows.indexOf(row, low);
    if (place < 0 || place >= this.count) return;
    this.rows.copyWithin(place, place + 1, this.count);
    this.values.copyWithin(place, place + 1, this.count);
    this.count--;
  }

  /** Takes rows out and puts others in, in one pass over the group; those that come stand in order among themselves. */
  exchange(leaving: RowSet, joining: readonly number[], sorting: Float64Array, compare: Compare): void {
    let kept = 0;
    for (let place = 0; place < this.count; place++) {
      const row = this.rows[place] as number;
      if (leaving.has(row)) continue;
      this.rows[kept] = row;
      this.values[kept++] = this.values[place] as number;
    }
    this.count = kept + joining.length;
    if (this.count > this.rows.length) this.#makeRoom(this.count);
    let last = kept - 1;
    let coming = joining.length - 1;
    for (let place = this.count - 1; coming >= 0; place--) {
      const row = joining[coming] as number;
      const value = sorting[row] as number;
      if (last >= 0 && standsAfter(this.values[last] as number, this.rows[last] as number, value, row, compare)) {
        this.rows[place] = this.rows[last] as number;
        this.values[place] = this.values[last--] as number;
      } else {
        this.rows[place] = row;
        this.values[place] = value;
        coming--;
      }
    }
  }

  #grow(): void {
    this.#makeRoom(Math.max(8, Math.ceil(this.count * 1.5)));
  }

  #makeRoom(room: number): void {
    const rows = new Int32Array(room);
    rows.set(this.rows);
    const values = new Float64Array(room);
    values.set(this.values);
    this.rows = rows;
    this.values = values;
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

const NO_LIST: readonly number[] = [];
const NO_CELLS = new Float64Array(0);
const NO_ROWS: SortedGroup = new SortedGroup(new Int32Array(0), new Float64Array(0), 0, {});

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

  /** The rows of a group by rising value: read `rows[0..count)` and `values[0..count)`. */
  group(group: number): { readonly rows: Int32Array; readonly values: Float64Array; readonly count: number } {
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
    const groups: SortedGroup[] = [];
    for (let group = 0; group < counts.length; group++) {
      const count = counts[group] as number;
      groups.push(new SortedGroup(new Int32Array(count), new Float64Array(count), 0, frame.token));
    }
    for (let i = 0; i < inOrder.length; i++) {
      const row = inOrder[i] as number;
      const list = groups[this.#groupOf[row] as number];
      if (list !== undefined) list.rows[list.count++] = row;
    }
    const sorting = this.#cells[conditions.findIndex(({ column }) => column === sortedBy)] ?? NO_CELLS;
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
    const compare = frame.compare(table);
    this.#makeRoom(frame.table(table).length);
    const groupFor = this.#grouping(frame);
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
      this.#exchange(frame, left, joining, cells, compare);
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
    for (const [group, list] of joined) this.#own(frame, group).exchange(leaving, list.sort(order), sorting, compare);
    for (const group of left)
      if (!joined.has(group)) this.#own(frame, group).exchange(leaving, NO_LIST, sorting, compare);
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
    const own = known?.copy(frame.token) ?? new SortedGroup(new Int32Array(0), new Float64Array(0), 0, frame.token);
    this.#groups[group] = own;
    return own;
  }
}
