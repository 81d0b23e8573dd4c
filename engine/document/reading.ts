// The figures of a document as all who ask see them: what is asked for is brought up to date first, with all that it rests on, and
// nothing else is. The document's own store stands behind it; whoever is outside this room has no other way to a figure.

import type { Frame } from '../calculation/frame.ts';
import type { Node } from '../calculation/graph/graph.ts';
import type { ColumnDef, TableDef } from '../calculation/layout.ts';
import type { TableRows } from '../calculation/table-rows.ts';
import type { TypedCells } from '../calculation/typed-cells.ts';
import type { Typed } from '../language/typed.ts';
import type { Column } from '../values/column.ts';
import type { GraphRun } from './graph-run.ts';

/** What a graph beside the document's own reads of it. */
export interface Reads {
  readonly columns: readonly ColumnDef[];
  readonly tables: readonly TableDef[];
}

export class Reading {
  readonly #store: Frame;
  readonly #run: GraphRun;

  constructor(store: Frame, run: GraphRun) {
    this.#store = store;
    this.#run = run;
  }

  /** The civil day that TODAY() gives. */
  get today(): number {
    return this.#store.today;
  }

  column(def: ColumnDef): Column {
    this.#run.bringColumn(def);
    return this.#store.column(def);
  }

  /** Which slots live; whether a sheet's own condition shows them is asked of `rows`. */
  table(def: TableDef): TableRows {
    this.#run.bringRows(def);
    return this.#store.table(def);
  }

  /** What is typed in a column, where anything is. */
  typedIn(def: ColumnDef): TypedCells | undefined {
    this.#run.bringRows(def.table);
    return this.#store.typed[def.number];
  }

  /** Slots of the rows that exist, in their order; good until the next change of rows. */
  rows(def: TableDef): Int32Array {
    this.#bringOrder(def);
    return this.#store.rows(def);
  }

  /** Where each row that exists stands among them, by slot; good until the next change of rows. */
  places(def: TableDef): Int32Array {
    this.#bringOrder(def);
    return this.#store.places(def);
  }

  /** Another after any change of which rows exist and how they stand in order. */
  rowsStamp(def: TableDef): string {
    this.#bringOrder(def);
    return this.#store.rowsStamp(def);
  }

  /** The store, with some columns and rows up to date, for a graph beside the document's. */
  besideOf({ columns, tables }: Reads): Frame {
    for (const column of columns) this.#run.bringColumn(column);
    const known = this.#store.layout.tables;
    for (const table of new Set([...tables, ...columns.map(({ table: of }) => of)])) {
      if (known[table.number] === table) this.#bringOrder(table);
    }
    return this.#store;
  }

  /** The store, with some steps of the document's graph up to date. */
  upTo(nodes: readonly Node[]): Frame {
    for (const node of nodes) this.#run.bring(node);
    return this.#store;
  }

  /** The rows of another table that a call in a formula counts for one row; undefined for calls that count none. */
  countedRows(call: Typed, row: number): Int32Array | undefined {
    const counted = this.#run.counted(call);
    return counted?.rows(this.upTo([counted.step]), row);
  }

  /**
   * The store, for one who works out the rest by himself: from now on it is read as it stands. Some steps are up to date at
   * first with all that they rest on.
   */
  takenOver(nodes: readonly Node[]): Frame {
    this.#run.handOver(nodes);
    return this.#store;
  }

  /** Bytes of column storage held. */
  bytes(): number {
    return this.#store.bytes();
  }

  #bringOrder(def: TableDef): void {
    this.#run.bringRows(def);
    if (def.shown !== undefined) this.#run.bringColumn(def.shown);
    const { order } = def;
    if (order.by === 'table') this.#bringOrder(order.table);
    if (order.by === 'links') for (const { to } of order.links) this.#bringOrder(to);
    if (order.by === 'events') for (const { to } of order.about) this.#bringOrder(to);
  }
}
