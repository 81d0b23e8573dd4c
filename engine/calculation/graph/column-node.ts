// The node of one computed column: runs its kernel over the dirty rows in batches, keeps what a person typed over, writes
// what changed and says which rows did. Errors that began here get this cell as their place.

import { BLANK, type Column, FAULT, FILLED } from '../../values/column.ts';
import type { CellError } from '../../values/error.ts';
import type { Frame } from '../frame.ts';
import { BATCH, type Batch, blankKernel, type Kernel, room, scratch, type Vector } from '../kernels/vector.ts';
import { type ColumnDef, columnKey } from '../layout.ts';
import type { RowSet } from '../row-set.ts';
import { dirtyRows, type Node, Source } from './graph.ts';
import { inParts } from './parts.ts';

/** What stands where a function failed instead of answering: a fault of the program, not of the formula. */
const FAILED: CellError = {
  error: 'value',
  why: 'This could not be worked out: a function failed, which is a fault in Dibble. Change a value it rests on to go on.',
};
const NONE: ReadonlySet<number> = new Set();
const listed = new Int32Array(BATCH);

/** A kernel's values; where it fails, row by row, so that only the rows it fails on hold an error. */
export function workedOut(kernel: Kernel, batch: Batch): Vector {
  try {
    return kernel(batch);
  } catch {
    return rowByRow(kernel, batch);
  }
}

function rowByRow(kernel: Kernel, { frame, rows, from, count }: Batch): Vector {
  const out: Vector = { ...room(scratch(), count), clean: false };
  for (let i = 0; i < count; i++) {
    const row = rows === undefined ? from + i : (rows[i] ?? 0);
    try {
      const { values, states, at, clean } = kernel({ frame, rows: undefined, from: row, count: 1 });
      out.values[i] = values[at] ?? 0;
      out.states[i] = clean ? FILLED : (states[at] ?? FILLED);
    } catch {
      out.values[i] = frame.faults.number(FAILED);
      out.states[i] = FAULT;
    }
  }
  return out;
}

export class ColumnNode implements Node {
  readonly name: string;
  readonly dependencies: Node[] = [];
  readonly source: Source;
  readonly lanes = 1;
  rank = 0;
  firstSet = 0;
  readonly column: ColumnDef;
  /** Planned once all nodes are there; until then every cell is blank. */
  kernel: Kernel = blankKernel;

  constructor(column: ColumnDef) {
    this.name = columnKey(column.table.id, column.id);
    this.source = new Source(this);
    this.column = column;
  }

  run(frame: Frame, changed: RowSet): void {
    const { length } = frame.table(this.column.table);
    const dirty = dirtyRows(frame, this);
    if (dirty.all || dirty.count * 2 > length) this.runAll(frame, changed);
    else this.runRows(frame, changed, dirty.sorted());
  }

  runSome(frame: Frame, changed: RowSet, goOn: () => boolean): boolean {
    const { length } = frame.table(this.column.table);
    const run = {};
    return inParts(dirtyRows(frame, this), length, goOn, {
      whole: () => this.run(frame, changed),
      some: (rows) => this.runRows(frame, changed, rows, run),
    });
  }

  /** Works every row out again, whichever are dirty. */
  runAll(frame: Frame, changed: RowSet): void {
    const { length } = frame.table(this.column.table);
    const over = this.#typedOver(frame);
    const batch: Batch = { frame, run: {}, rows: undefined, from: 0, count: 0 };
    const plain = over.size === 0 && frame.table(this.column.table).liveCount === length;
    // Past this many changed rows a list costs more than saying that all changed.
    const many = Math.max(16, length >> 2);
    for (let from = 0; from < length; from += BATCH) {
      batch.from = from;
      batch.count = Math.min(BATCH, length - from);
      const vector = workedOut(this.kernel, batch);
      const clean = vector.clean && frame.column(this.column).exceptions === 0;
      if (plain && clean) this.#copyClean(frame, vector, from, batch.count, changed, many);
      else if (plain && changed.all) this.#putAll(frame, vector, from, batch.count);
      else if (plain) this.#copy(frame, vector, from, batch.count, changed, many);
      else this.#write(frame, over, batch, vector, changed);
      if (!changed.all && changed.count > many) changed.addAll();
    }
  }

  #copyClean(frame: Frame, vector: Vector, from: number, count: number, changed: RowSet, many: number): void {
    const { values: given, at } = vector;
    const step = vector.uniform ? 0 : 1;
    if (changed.all) {
      const column = frame.ownColumn(this.column);
      const { values } = column;
      for (let i = 0; i < count; i++) values[from + i] = (given[at + i * step] as number) + 0;
      column.touched();
      return;
    }
    const first = firstDifference(frame.column(this.column), from, given, at, step, count);
    if (first === count) return;
    const column = frame.ownColumn(this.column);
    const { values } = column;
    let differ = 0;
    for (let i = first; i < count; i++) {
      const value = (given[at + i * step] as number) + 0;
      if (values[from + i] !== value) {
        values[from + i] = value;
        differ++;
        if (differ <= many) changed.add(from + i);
      }
    }
    if (differ > many) changed.addAll();
    column.touched();
  }

  /** As #copy, where it is known that all rows are told of. */
  #putAll(frame: Frame, vector: Vector, from: number, count: number): void {
    const { values: given, states: givenStates, clean } = vector;
    const step = vector.uniform ? 0 : 1;
    const column = frame.ownColumn(this.column);
    const { values, states } = column;
    let exceptions = 0;
    for (let i = 0, at = vector.at; i < count; i++, at += step) {
      const row = from + i;
      const state = clean ? FILLED : (givenStates[at] as number);
      let value = state === BLANK ? 0 : (given[at] as number) + 0;
      if (state === FAULT) value = this.#placed(frame, row, value);
      exceptions += (state === FILLED ? 0 : 1) - (states[row] === FILLED ? 0 : 1);
      values[row] = value;
      states[row] = state;
    }
    column.exceptions += exceptions;
    column.touched();
  }

  /** As #copyClean, with states: what is worked out for the first time is blank till then. */
  #copy(frame: Frame, vector: Vector, from: number, count: number, changed: RowSet, many: number): void {
    const { values: given, states: givenStates, clean } = vector;
    const step = vector.uniform ? 0 : 1;
    let column: Column | undefined;
    let { values, states } = frame.column(this.column);
    let exceptions = 0;
    let differ = 0;
    const first = firstOther(frame.column(this.column), from, vector, count);
    for (let i = first, at = vector.at + first * step; i < count; i++, at += step) {
      const row = from + i;
      const state = clean ? FILLED : (givenStates[at] as number);
      let value = state === BLANK ? 0 : (given[at] as number) + 0;
      if (state === FAULT) value = this.#placed(frame, row, value);
      const before = states[row];
      if (before === state && values[row] === value) continue;
      if (column === undefined) {
        column = frame.ownColumn(this.column);
        ({ values, states } = column);
      }
      if (before === FILLED && state !== FILLED) exceptions++;
      else if (before !== FILLED && state === FILLED) exceptions--;
      values[row] = value;
      states[row] = state;
      differ++;
      if (differ <= many) changed.add(row);
    }
    if (column === undefined) return;
    if (differ > many) changed.addAll();
    column.exceptions += exceptions;
    column.touched();
  }

  /** Works some rows out again, given by rising slot. */
  runRows(frame: Frame, changed: RowSet, rows: Int32Array, run = {}): void {
    const over = this.#typedOver(frame);
    const batch: Batch = { frame, run, rows: undefined, from: 0, count: 0 };
    for (let start = 0; start < rows.length; start += BATCH) {
      const count = Math.min(BATCH, rows.length - start);
      if (count === 1) {
        batch.rows = undefined;
        batch.from = rows[start] ?? 0;
      } else {
        for (let i = 0; i < count; i++) listed[i] = rows[start + i] as number;
        batch.rows = listed;
      }
      batch.count = count;
      const vector = workedOut(this.kernel, batch);
      if (vector.clean && over.size === 0 && frame.column(this.column).exceptions === 0)
        this.#writeClean(frame, batch, vector, changed);
      else this.#write(frame, over, batch, vector, changed);
    }
  }

  /** As #write, where every cell has a number and had one. */
  #writeClean(frame: Frame, { rows, from, count }: Batch, vector: Vector, changed: RowSet): void {
    const { live } = frame.table(this.column.table);
    const { values: given } = vector;
    const step = vector.uniform ? 0 : 1;
    let { values } = frame.column(this.column);
    let column: Column | undefined;
    for (let i = 0, at = vector.at; i < count; i++, at += step) {
      const row = rows === undefined ? from + i : (rows[i] as number);
      const kept = (given[at] as number) + 0;
      if (values[row] === kept || live[row] !== 1) continue;
      if (column === undefined) {
        column = frame.ownColumn(this.column);
        values = column.values;
      }
      values[row] = kept;
      changed.add(row);
    }
    column?.touched();
  }

  #typedOver(frame: Frame): ReadonlySet<number> {
    return frame.typed[this.column.number]?.over ?? NONE;
  }

  /** Writes a batch's values into rows that live and are not typed over. */
  #write(frame: Frame, over: ReadonlySet<number>, { rows, from, count }: Batch, vector: Vector, changed: RowSet): void {
    const { live } = frame.table(this.column.table);
    const { values: given, states: givenStates, clean } = vector;
    const step = vector.uniform ? 0 : 1;
    const isTyped = over.size > 0;
    let { values, states } = frame.column(this.column);
    let column: Column | undefined;
    for (let i = 0; i < count; i++) {
      const row = rows === undefined ? from + i : (rows[i] as number);
      if (live[row] !== 1 || (isTyped && over.has(row))) continue;
      const at = vector.at + i * step;
      const state = clean ? FILLED : (givenStates[at] ?? FILLED);
      let value = given[at] ?? 0;
      if (state === FAULT) value = this.#placed(frame, row, value);
      const kept = state === BLANK ? 0 : value + 0;
      if (states[row] === state && values[row] === kept) continue;
      if (column === undefined) {
        column = frame.ownColumn(this.column);
        ({ values, states } = column);
      }
      column.put(row, kept, state);
      changed.add(row);
    }
    column?.touched();
  }

  /** An error says the cell in which it began. */
  #placed(frame: Frame, row: number, number: number): number {
    const error = frame.faults.error(number);
    if (error.at !== undefined) return number;
    return frame.faults.number({ ...error, at: { sheet: this.column.table.id, row, column: this.column.id } });
  }
}

/** Where the new values first differ from those kept; `count` where nowhere. */
function firstDifference(
  { values: kept }: Column,
  from: number,
  given: Float64Array,
  at: number,
  step: number,
  count: number,
): number {
  let i = 0;
  while (i < count && kept[from + i] === given[at + i * step]) i++;
  return i;
}

/** Where cells first differ in value or state, or an error stands, which is still to be placed; `count` where nowhere. */
function firstOther({ values, states }: Column, from: number, vector: Vector, count: number): number {
  const { values: given, states: givenStates, clean, uniform } = vector;
  const step = uniform ? 0 : 1;
  let i = 0;
  for (let at = vector.at; i < count; i++, at += step) {
    const state = clean ? FILLED : (givenStates[at] as number);
    if (states[from + i] !== state || state === FAULT) break;
    if (state === FILLED && values[from + i] !== given[at]) break;
  }
  return i;
}
