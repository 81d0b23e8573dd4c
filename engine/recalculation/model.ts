// The data that recalculation works on: tables with their slots and columns, the dictionary of texts, the errors and the
// workbook's own input, today. Holds state and its plainest questions; the graph and the workbook change it.

import { BLANK, Column, FILLED } from '../values/column.ts';
import { Faults, Texts } from '../values/texts.ts';

export class TableData {
  readonly name: string;
  readonly columns = new Map<string, Column>();
  /** Slots in use, dead ones included. */
  length = 0;
  live = new Uint8Array(8);
  liveCount = 0;
  /** Rises when rows come or go. */
  version = 0;
  /** For sheets with a `where`: the yes/no column that says which rows exist. */
  shown: Column | undefined;

  constructor(name: string) {
    this.name = name;
  }

  column(name: string): Column {
    const column = this.columns.get(name);
    if (column === undefined) throw new Error(`No column ${name} in ${this.name}`);
    return column;
  }

  addColumn(name: string, whole: boolean): Column {
    const column = new Column(whole);
    column.grow(this.length);
    this.columns.set(name, column);
    return column;
  }

  /** Makes slots up to `length`; the new ones are dead. */
  grow(length: number): void {
    if (length > this.live.length) {
      const live = new Uint8Array(Math.max(length, this.live.length * 2));
      live.set(this.live);
      this.live = live;
    }
    this.length = Math.max(this.length, length);
    for (const column of this.columns.values()) column.grow(this.length);
  }

  /** Makes `count` new rows that live, all cells blank, after those there are. */
  addRows(count: number): void {
    const first = this.length;
    this.grow(first + count);
    this.live.fill(1, first, first + count);
    this.liveCount += count;
    this.version++;
  }

  /** Brings a slot to life or lets it die. A dead row's cells read as filled zeros, so that they cost kernels nothing. */
  setLive(row: number, alive: boolean): void {
    this.grow(row + 1);
    if ((this.live[row] === 1) === alive) return;
    this.live[row] = alive ? 1 : 0;
    this.liveCount += alive ? 1 : -1;
    this.version++;
    for (const column of this.columns.values()) column.write(row, 0, alive ? BLANK : FILLED);
  }

  exists(row: number): boolean {
    if (this.live[row] !== 1) return false;
    return this.shown === undefined || (this.shown.states[row] === FILLED && this.shown.values[row] === 1);
  }

  /** Slots of the rows that exist, in order. */
  rows(): Int32Array {
    const rows = new Int32Array(this.liveCount);
    let count = 0;
    for (let row = 0; row < this.length; row++) if (this.exists(row)) rows[count++] = row;
    return rows.subarray(0, count);
  }
}

export class Model {
  readonly tables = new Map<string, TableData>();
  readonly texts = new Texts();
  readonly faults = new Faults();
  /** One cell: the civil day that TODAY() gives. */
  readonly today = new Column(false);

  constructor() {
    this.today.grow(1);
  }

  table(name: string): TableData {
    const table = this.tables.get(name);
    if (table === undefined) throw new Error(`No table ${name}`);
    return table;
  }
}
