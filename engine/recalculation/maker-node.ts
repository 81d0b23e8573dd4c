// The node that makes a sheet's rows: one per row of another sheet, per day, week or month, per pair, per dated event. It
// runs before every column of its sheet. How rows are made stands in makers.ts.

import type { Column } from '../values/column.ts';
import { type Node, Source } from './graph.ts';
import type { TableData } from './model.ts';
import { RowSet } from './row-set.ts';

export interface Maker {
  readonly table: TableData;
  /** The columns it fills: the link, the date, the names of events. */
  readonly columns: readonly Column[];
  readonly readsRows: readonly TableData[];
  readonly readsColumns: readonly Column[];
  /** Brings the rows up to date; `dirty` are rows of `readsRows`, `changed` takes the rows of the table that changed. */
  make(dirty: RowSet, changed: RowSet): void;
}

export class MakerNode implements Node {
  readonly name: string;
  readonly dirty = new RowSet();
  readonly feeds: Node[] = [];
  readonly source = new Source(this);
  rank = 0;
  readonly maker: Maker;

  constructor(maker: Maker) {
    this.name = maker.table.name;
    this.maker = maker;
  }

  run(changed: RowSet): void {
    this.maker.make(this.dirty, changed);
  }
}
