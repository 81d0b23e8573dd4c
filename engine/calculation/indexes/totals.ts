// A conditional total kept per group: one value for each group of the source table's rows, folded from one column over the
// rows that meet the fixed conditions. Cells of other tables read it by key, so a total is worked out once however many
// cells show it.

import type { Fold } from '../../functions/definition.ts';
import { BLANK, Column, FAULT, FILLED, type Token } from '../../values/column.ts';
import type { Faults } from '../../values/texts.ts';
import type { Frame, FrameState, Shared } from '../frame.ts';
import type { ColumnDef } from '../layout.ts';
import type { RowSet } from '../row-set.ts';
import type { GroupIndex, Members } from './group-index.ts';

/** Whether a stored value of a column meets a condition. */
export interface RowFilter {
  readonly column: ColumnDef;
  readonly meets: (value: number, state: number, frame: Frame) => boolean;
  /** Where the column holds links: the keys that their rows are known by, which the condition rests on too. */
  readonly keys?: ColumnDef;
}

export function meetsAll(filters: readonly RowFilter[], row: number, frame: Frame): boolean {
  for (let k = 0; k < filters.length; k++) {
    const { column, meets } = filters[k] as RowFilter;
    const { values, states } = frame.column(column);
    if (!meets(values[row] ?? 0, states[row] ?? BLANK, frame)) return false;
  }
  return true;
}

/** Room for gathering a group's numbers; grows with the largest group. */
export class Gathering {
  values = new Float64Array(1024);
  count = 0;
  /** The number of the first fault met, if any. */
  fault: number | undefined;
  /** What came of it, once finished. */
  result = 0;

  start(room: number): void {
    if (room > this.values.length) this.values = new Float64Array(room * 2);
    this.count = 0;
    this.fault = undefined;
  }

  /** Takes in one stored value as the fold wants it. */
  take(fold: Fold, value: number, state: number): void {
    if (state === FILLED) {
      if (fold.takes !== 'blanks') this.values[this.count++] = value;
    } else if (state === BLANK) {
      if (fold.takes === 'blanks') this.values[this.count++] = 0;
    } else if (fold.takes === 'filled') this.values[this.count++] = 0;
    else if (fold.takes === 'numbers' && this.fault === undefined) this.fault = value;
  }

  /** Folds what was taken in: gives the state of the cell that it is, whose value stands in `result`. */
  finish(fold: Fold, faults: Faults): number {
    if (this.fault !== undefined) {
      this.result = this.fault;
      return FAULT;
    }
    const result = fold.fold(this.values, this.count);
    if (result - result === 0) {
      this.result = result;
      return FILLED;
    }
    const none = undefinedCell(fold, faults);
    this.result = none.value;
    return none.state;
  }
}

/** What stands where a fold has no value. */
export function undefinedCell(
  { undefinedMeans }: Fold,
  faults: Faults,
): { readonly value: number; readonly state: number } {
  if (undefinedMeans === 'blank') return { value: 0, state: BLANK };
  return { value: faults.number(undefinedMeans), state: FAULT };
}

/** What a total adds up, the same in every frame. */
export interface TotalOf {
  readonly index: FrameState<GroupIndex>;
  /** undefined: rows are counted rather than values. */
  readonly column: ColumnDef | undefined;
  readonly filters: readonly RowFilter[];
  readonly fold: Fold;
}

const gathering = new Gathering();
const NO_HOLDERS = new Int32Array(0);

/** The totals of one frame. */
export class Totals implements Shared {
  owner: Token | undefined;
  /** A cell a group. */
  readonly cells: Column;
  /** At slot 0 the total of no rows, for keys that no row has. */
  readonly nothing: Column;
  /** How the index numbered its groups when all were last worked out. */
  numbering: number | undefined;
  /** Of a least or most the row of each group that holds it; below 0 where none is known. */
  #holders = NO_HOLDERS;

  constructor(owner: Token, cells = new Column(false, owner), nothing = new Column(false, owner)) {
    this.owner = owner;
    this.cells = cells;
    this.nothing = nothing;
  }

  copy(owner: Token): Totals {
    const copy = new Totals(owner, this.cells.copy(owner), this.nothing);
    copy.numbering = this.numbering;
    copy.#holders = this.#holders.slice();
    return copy;
  }

  /** Makes room for all groups there are, and works out what none of them gives. */
  ready(total: TotalOf, frame: Frame): void {
    this.cells.grow(total.index.read(frame).groupCount);
    if (this.nothing.length > 0) return;
    this.nothing.grow(1);
    gathering.start(0);
    const state = gathering.finish(total.fold, frame.faults);
    this.nothing.write(0, gathering.result, state);
  }

  /** The groups were numbered anew: what is left of numbers that none has must not pass for the total of one to come. */
  forgetPast(groupCount: number): void {
    for (let group = groupCount; group < this.cells.length; group++) this.cells.write(group, 0, BLANK);
  }

  /** Works every group out again; those whose total became another go into `changed`, all where many did. */
  refreshAll(total: TotalOf, frame: Frame, changed: RowSet): void {
    const index = total.index.read(frame);
    const { groupCount } = index;
    const summed = summedColumn(total, frame);
    const { cells } = this;
    const many = groupCount >> 1;
    if (total.column === undefined && total.filters.length === 0) {
      this.#countAll(total, frame, changed);
      return;
    }
    const sums = summed?.exceptions === 0 ? sumsByGroup(index, summed, frame) : undefined;
    for (let group = 0; group < groupCount; group++) {
      const sum = sums?.[group] ?? sumOf(summed, index.members(group));
      if (sum - sum !== 0) {
        if (this.refresh(total, group, frame) && !changed.all) changed.add(group);
      } else if (changed.all) cells.put(group, sum + 0, FILLED);
      else if (cells.write(group, sum, FILLED)) changed.add(group);
      if (!changed.all && changed.count > many) changed.addAll();
    }
    cells.touched();
  }

  /** As refreshAll, where rows are counted: of as many rows the count is the same, and most groups have few. */
  #countAll(total: TotalOf, frame: Frame, changed: RowSet): void {
    const index = total.index.read(frame);
    const { cells } = this;
    const many = index.groupCount >> 1;
    alike.clear();
    for (let group = 0; group < index.groupCount; group++) {
      const { count } = index.members(group);
      const known = alike.get(count);
      let isOther: boolean;
      if (known === undefined) {
        isOther = this.refresh(total, group, frame);
        alike.set(count, group);
      } else isOther = cells.write(group, cells.values[known] as number, cells.states[known] as number);
      if (isOther && !changed.all) changed.add(group);
      if (!changed.all && changed.count > many) changed.addAll();
    }
    cells.touched();
  }

  /** Works one group out again; true where its total changed. */
  refresh(total: TotalOf, group: number, frame: Frame): boolean {
    const members = total.index.read(frame).members(group);
    const sum = sumOf(summedColumn(total, frame), members);
    if (sum - sum === 0) return this.cells.write(group, sum, FILLED);
    gathering.start(members.count);
    gather(total, members, frame);
    const state = gathering.finish(total.fold, frame.faults);
    if (total.fold.picks !== undefined)
      this.#hold(group, state === FILLED ? holderOf(total, members, gathering.result, frame) : -1);
    return this.cells.write(group, gathering.result, state);
  }

  /**
   * Brings some groups' least or most up to date: `rows` are all that may be another, or of another group, than they were. A group's
   * rows are looked through only where the one that held it holds it no more. Groups whose total changed go into `changed`.
   */
  pickAgain(total: TotalOf, groups: RowSet, rows: RowSet, frame: Frame, changed: RowSet): void {
    const { index, column, filters, fold } = total;
    const { groupOf, groupCount } = index.read(frame);
    if (column === undefined) return;
    for (let i = 0; i < groups.count; i++) {
      const group = groups.at(i);
      if (group >= groupCount || this.#isHeld(total, group, frame)) continue;
      if (this.refresh(total, group, frame)) changed.add(group);
    }
    const { values, states } = frame.column(column);
    for (let i = 0; i < rows.count; i++) {
      const row = rows.at(i);
      const group = groupOf[row] ?? -1;
      if (group < 0 || this.cells.states[group] !== FILLED) continue;
      if (states[row] === BLANK || !meetsAll(filters, row, frame)) continue;
      const value = values[row] as number;
      if (states[row] === FAULT) {
        if (this.refresh(total, group, frame)) changed.add(group);
      } else if (isPicked(fold, value, this.cells.values[group] as number)) {
        this.#hold(group, row);
        this.cells.write(group, value, FILLED);
        changed.add(group);
      }
    }
  }

  /** Whether the row that held a group's least or most still does, with what it was or with more of the kind. */
  #isHeld({ index, column, filters, fold }: TotalOf, group: number, frame: Frame): boolean {
    const row = this.#holders[group] ?? -1;
    if (row < 0 || column === undefined || this.cells.states[group] !== FILLED) return false;
    if (index.read(frame).groupOf[row] !== group || !meetsAll(filters, row, frame)) return false;
    const { values, states } = frame.column(column);
    const [value, was] = [values[row] as number, this.cells.values[group] as number];
    return states[row] === FILLED && (value === was || isPicked(fold, value, was));
  }

  #hold(group: number, row: number): void {
    if (group >= this.#holders.length) {
      const holders = new Int32Array(Math.max(this.cells.length, group + 1)).fill(-1);
      holders.set(this.#holders);
      this.#holders = holders;
    }
    this.#holders[group] = row;
  }
}

/** Whether a least or most is rather the one number than the other. */
function isPicked({ picks }: Fold, one: number, other: number): boolean {
  return picks === 'least' ? one < other : one > other;
}

/** The first row that has the least or most, which was found among a group's; below 0 where it is nobody's own. */
function holderOf({ column, filters }: TotalOf, { rows, from, count }: Members, found: number, frame: Frame): number {
  if (column === undefined) return -1;
  const { values, states } = frame.column(column);
  for (let i = from; i < from + count; i++) {
    const row = rows[i] as number;
    if (values[row] === found && states[row] === FILLED && meetsAll(filters, row, frame)) return row;
  }
  return -1;
}

/** The column whose cells a total adds up as they are; undefined where it is another total. */
function summedColumn({ column, filters, fold }: TotalOf, frame: Frame): Column | undefined {
  return fold.addsUp === true && column !== undefined && filters.length === 0 ? frame.column(column) : undefined;
}

/** Of counts: by how many rows a group has, one that has as many, whose count is the same. Reused from call to call. */
const alike = new Map<number, number>();

/** Reused from call to call. */
let sumsOfGroups = new Float64Array(0);

/**
 * The sum of each group, of a column that is all filled: added up in the table's order, as the rows of a group stand, in one walk over
 * the table. Totals leave out the rows that a sheet leaves out.
 */
function sumsByGroup({ grouping, groupOf, groupCount }: GroupIndex, { values }: Column, frame: Frame): Float64Array {
  if (groupCount > sumsOfGroups.length) sumsOfGroups = new Float64Array(groupCount * 2);
  const sums = sumsOfGroups.fill(0, 0, groupCount);
  const rows = frame.rows(grouping.table);
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i] as number;
    const group = groupOf[row] as number;
    if (group >= 0) sums[group] = (sums[group] as number) + (values[row] as number);
  }
  return sums;
}

/** A sum of rows none of which is faulty, added up where they lie; not-a-number where one is, the sum is too large, or there is no column. */
function sumOf(column: Column | undefined, { rows, from, count }: Members): number {
  if (column === undefined) return Number.NaN;
  const { values, states, exceptions } = column;
  const end = from + count;
  let sum = 0;
  if (exceptions === 0) {
    for (let i = from; i < end; i++) sum += values[rows[i] as number] as number;
    return sum;
  }
  for (let i = from; i < end; i++) {
    const row = rows[i] as number;
    const state = states[row];
    if (state === FILLED) sum += values[row] as number;
    else if (state === FAULT) return Number.NaN;
  }
  return sum;
}

function gather({ column, filters, fold }: TotalOf, { rows, from, count }: Members, frame: Frame): void {
  const end = from + count;
  if (column === undefined) {
    if (filters.length === 0 && fold.takes !== 'blanks') {
      gathering.values.fill(1, 0, count);
      gathering.count = count;
      return;
    }
    for (let i = from; i < end; i++) {
      if (meetsAll(filters, rows[i] as number, frame)) gathering.take(fold, 1, FILLED);
    }
    return;
  }
  const { values, states, exceptions } = frame.column(column);
  if (filters.length === 0 && exceptions === 0 && fold.takes !== 'blanks') {
    const gathered = gathering.values;
    for (let i = 0; i < count; i++) gathered[i] = values[rows[from + i] as number] as number;
    gathering.count = count;
    return;
  }
  for (let i = from; i < end; i++) {
    const row = rows[i] as number;
    if (filters.length === 0 || meetsAll(filters, row, frame)) {
      gathering.take(fold, values[row] as number, states[row] as number);
    }
  }
}
