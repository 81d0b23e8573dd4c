// Which rows of a sheet with a condition are to be looked at in a trial. Called by trial-run.ts.

import { FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { dirtyRows, type Node } from './graph.ts';

const NO_ROWS = new Int32Array(0);

/**
 * Which rows of a sheet its own condition shows, trial by trial. Where all rows of such a sheet are to be looked at again, those
 * are enough that are shown, or were: what a sheet of pairs leaves out is most of it.
 */
export class ShownRows {
  readonly #table: TableDef;
  readonly #condition: ColumnDef;
  #trial = 0;
  /** Of the rows and of the condition when they were last looked at. */
  #stamps: readonly number[] = [];
  /** By rising slot, as all of these. */
  #shown = NO_ROWS;
  #was = new Uint8Array(0);
  /** Rows that came to be shown, or are no more, since the trial before. */
  #turned = NO_ROWS;
  /** Those that are shown, or were. */
  #either = NO_ROWS;

  constructor(table: TableDef, condition: ColumnDef) {
    this.#table = table;
    this.#condition = condition;
  }

  /** The rows to be looked at where all are, by rising slot; undefined where that is every row. */
  rows(frame: Frame, trial: number): Int32Array | undefined {
    if (this.#trial !== trial) this.#look(frame, trial);
    return this.#isEveryRow(frame, trial) ? undefined : this.#either;
  }

  narrow(frame: Frame, node: Node, trial: number): void {
    if (this.#trial !== trial) this.#look(frame, trial);
    if (trial === 1) return;
    const dirty = dirtyRows(frame, node);
    if (dirty.all && this.#isEveryRow(frame, trial)) return;
    if (dirty.all || dirty.count > this.#shown.length) {
      const kept = dirty.all ? this.#shown : this.#shown.filter((row) => dirty.has(row));
      dirty.clear();
      for (const row of kept) dirty.add(row);
    }
    for (const row of this.#turned) dirty.add(row);
    if (this.#turned.length > 0) frame.pending[node.rank] = 1;
  }

  /** The first trial looks at every row, so that what is left out then is as fresh as any; where most rows are shown, all are
      looked at sooner than they are told apart. */
  #isEveryRow(frame: Frame, trial: number): boolean {
    return trial === 1 || this.#shown.length * 2 > frame.table(this.#table).length;
  }

  #look(frame: Frame, trial: number): void {
    const isFirst = trial === 1;
    this.#trial = trial;
    const { length, stamp, live } = frame.table(this.#table);
    const { values, states, stamp: ofCondition } = frame.column(this.#condition);
    if (!isFirst && this.#stamps[0] === stamp && this.#stamps[1] === ofCondition) {
      this.#turned = NO_ROWS;
      this.#either = this.#shown;
      return;
    }
    this.#stamps = [stamp, ofCondition];
    if (length > this.#was.length) {
      const longer = new Uint8Array(length * 2);
      longer.set(this.#was);
      this.#was = longer;
    }
    const was = this.#was;
    const [shown, turned, either] = [new Int32Array(length), new Int32Array(length), new Int32Array(length)];
    let [manyShown, manyTurned, many] = [0, 0, 0];
    for (let row = 0; row < length; row++) {
      const is = live[row] === 1 && states[row] === FILLED && values[row] === 1 ? 1 : 0;
      const before = was[row];
      if (is === 0 && before === 0) continue;
      either[many++] = row;
      if (is === 1) shown[manyShown++] = row;
      if (is !== before) turned[manyTurned++] = row;
      was[row] = is;
    }
    this.#shown = shown.subarray(0, manyShown);
    this.#turned = isFirst ? NO_ROWS : turned.subarray(0, manyTurned);
    this.#either = either.subarray(0, many);
  }
}
