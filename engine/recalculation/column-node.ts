// The node of one computed column: runs its kernel over the dirty rows in batches, keeps hand-typed overrides, writes what
// changed and says which rows did. Errors that began here get this cell as their place.

import { BLANK, type Column, FAULT, FILLED } from '../values/column.ts';
import type { Faults } from '../values/texts.ts';
import { type Node, Source } from './graph.ts';
import type { TableData } from './model.ts';
import { RowSet } from './row-set.ts';
import { BATCH, type Batch, constantKernel, type Kernel, type Vector } from './vector.ts';

export class ColumnNode implements Node {
  readonly name: string;
  readonly dirty = new RowSet();
  readonly feeds: Node[] = [];
  readonly source: Source;
  rank = 0;
  readonly table: TableData;
  readonly columnName: string;
  readonly column: Column;
  /** Rows whose value a person typed over the formula. */
  readonly overrides: ReadonlySet<number>;
  /** Planned once all nodes are there; until then every cell is blank. */
  kernel: Kernel = constantKernel(0, BLANK);
  readonly #faults: Faults;
  readonly #batch: Batch = { rows: undefined, from: 0, count: 0 };
  readonly #rows = new Int32Array(BATCH);

  constructor(table: TableData, columnName: string, overrides: ReadonlySet<number>, faults: Faults) {
    this.name = `${table.name} / ${columnName}`;
    this.source = new Source(this);
    this.table = table;
    this.columnName = columnName;
    this.column = table.column(columnName);
    this.overrides = overrides;
    this.#faults = faults;
  }

  run(changed: RowSet): void {
    const { length } = this.table;
    if (this.dirty.all || this.dirty.count * 2 > length) this.#runAll(changed, length);
    else this.#runRows(changed, this.dirty.sorted());
  }

  #runAll(changed: RowSet, length: number): void {
    const batch = this.#batch;
    const plain = this.overrides.size === 0 && this.table.liveCount === length;
    // Past this many changed rows a list costs more than saying that all changed.
    const many = Math.max(16, length >> 4);
    for (let from = 0; from < length; from += BATCH) {
      batch.rows = undefined;
      batch.from = from;
      batch.count = Math.min(BATCH, length - from);
      const vector = this.kernel(batch);
      if (plain && vector.clean && this.column.exceptions === 0)
        this.#copyClean(vector, from, batch.count, changed, many);
      else for (let i = 0; i < batch.count; i++) this.#write(from + i, vector, i, changed);
      if (!changed.all && changed.count > many) changed.addAll();
    }
  }

  #copyClean(vector: Vector, from: number, count: number, changed: RowSet, many: number): void {
    const { values } = this.column;
    const { values: given, at } = vector;
    const step = vector.uniform ? 0 : 1;
    const first = firstDifference(values, from, given, at, step, count);
    if (first === count) return;
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
    this.column.version++;
  }

  #runRows(changed: RowSet, rows: Int32Array): void {
    const batch = this.#batch;
    for (let start = 0; start < rows.length; start += BATCH) {
      const count = Math.min(BATCH, rows.length - start);
      if (count === 1) {
        batch.rows = undefined;
        batch.from = rows[start] ?? 0;
      } else {
        this.#rows.set(rows.subarray(start, start + count));
        batch.rows = this.#rows;
      }
      batch.count = count;
      const vector = this.kernel(batch);
      for (let i = 0; i < count; i++) this.#write(rows[start + i] ?? 0, vector, i, changed);
    }
  }

  #write(row: number, vector: Vector, i: number, changed: RowSet): void {
    if (this.table.live[row] !== 1 || this.overrides.has(row)) return;
    const at = vector.at + (vector.uniform ? 0 : i);
    const state = vector.clean ? FILLED : (vector.states[at] ?? FILLED);
    let value = vector.values[at] ?? 0;
    if (state === FAULT) {
      const error = this.#faults.error(value);
      if (error.at === undefined) {
        value = this.#faults.number({ ...error, at: { table: this.table.name, row, column: this.columnName } });
      }
    }
    if (this.column.write(row, value, state)) changed.add(row);
  }
}

/** Where the new values first differ from those kept; `count` where nowhere. */
function firstDifference(
  kept: Float64Array | Int32Array,
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
