// The node of a column whose formula answers with several figures: works out dirty rows once, in batches, and writes each
// figure into a column of its own behind the sheet. The record column itself only says whether there is an answer.

import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
import { type Stored, toStored } from '../kernels/scalars.ts';
import { BATCH, blankKernel, type Kernel, type Vector } from '../kernels/vector.ts';
import { type ColumnDef, columnKey } from '../layout.ts';
import type { RowSet } from '../row-set.ts';
import { workedOut } from './column-node.ts';
import { dirtyRows, type Node, Source } from './graph.ts';
import { inParts } from './parts.ts';

const stored: Stored = { value: 0, state: FILLED };

export class RecordNode implements Node {
  readonly name: string;
  readonly dependencies: Node[] = [];
  readonly source: Source;
  readonly lanes = 1;
  rank = 0;
  firstSet = 0;
  readonly column: ColumnDef;
  /** The columns of the figures, in the order of the record's type. */
  readonly figures: readonly ColumnDef[];
  /** Gives numbers of answers that wait among the frame's figures. */
  kernel: Kernel = blankKernel;

  constructor(column: ColumnDef, figures: readonly ColumnDef[]) {
    this.name = columnKey(column.table.id, column.id);
    this.source = new Source(this);
    this.column = column;
    this.figures = figures;
  }

  run(frame: Frame, changed: RowSet): void {
    const dirty = dirtyRows(frame, this);
    this.#runRows(frame, changed, dirty.all ? undefined : dirty.sorted());
  }

  runSome(frame: Frame, changed: RowSet, goOn: () => boolean): boolean {
    return inParts(dirtyRows(frame, this), frame.table(this.column.table).length, goOn, {
      whole: () => this.run(frame, changed),
      some: (rows) => this.#runRows(frame, changed, rows),
    });
  }

  /** Some rows; all where no list is given. */
  #runRows(frame: Frame, changed: RowSet, listed: Int32Array | undefined): void {
    const { length, live } = frame.table(this.column.table);
    const most = listed?.length ?? length;
    const rows = new Int32Array(most);
    let count = 0;
    for (let i = 0; i < most; i++) {
      const row = listed === undefined ? i : (listed[i] as number);
      if (live[row] === 1) rows[count++] = row;
    }
    const alive = rows.subarray(0, count);
    for (let start = 0; start < alive.length; start += BATCH)
      this.#batch(frame, alive.subarray(start, start + BATCH), changed);
  }

  #batch(frame: Frame, rows: Int32Array, changed: RowSet): void {
    const one = rows.length === 1;
    const batch = { frame, rows: one ? undefined : rows, from: rows[0] ?? 0, count: rows.length };
    const vector = workedOut(this.kernel, batch);
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i] as number;
      if (this.#write(frame, row, vector, i)) changed.add(row);
    }
    frame.figures.length = 0;
  }

  #write(frame: Frame, row: number, vector: Vector, i: number): boolean {
    const at = vector.at + (vector.uniform ? 0 : i);
    const state = vector.clean ? FILLED : (vector.states[at] ?? FILLED);
    const value = vector.values[at] ?? 0;
    if (state === FAULT) return this.#writeAll(frame, row, this.#placed(frame, row, value), FAULT);
    const answer = state === FILLED ? frame.figures[value] : undefined;
    if (answer === undefined) return this.#writeAll(frame, row, 0, BLANK);
    let changed = frame.write(this.column, row, 1, FILLED);
    for (let k = 0; k < this.figures.length; k++) {
      toStored(frame, answer.values[k] ?? null, stored);
      const given = stored.state === FAULT ? this.#placed(frame, row, stored.value) : stored.value;
      changed = frame.write(this.figures[k] as ColumnDef, row, given, stored.state) || changed;
    }
    return changed;
  }

  #writeAll(frame: Frame, row: number, value: number, state: number): boolean {
    let changed = false;
    for (const column of [this.column, ...this.figures]) changed = frame.write(column, row, value, state) || changed;
    return changed;
  }

  /** An error says the cell in which it began. */
  #placed(frame: Frame, row: number, number: number): number {
    const error = frame.faults.error(number);
    if (error.at !== undefined) return number;
    return frame.faults.number({ ...error, at: { sheet: this.column.table.id, row, column: this.column.id } });
  }
}
