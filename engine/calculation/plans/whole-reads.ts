// What an answer over whole sheets rests on: told to the graph as read, and remembered, so that the answer is worked out
// again only when something of it has changed and not once a batch. Used by the files that plan such functions.

import type { Frame } from '../frame.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import type { Reader } from './reader.ts';

export class WholeReads {
  readonly #reader: Reader;
  readonly #columns: ColumnDef[] = [];
  readonly #tables: TableDef[] = [];

  constructor(reader: Reader) {
    this.#reader = reader;
  }

  /** A whole column, which is read from now on. */
  column(table: string, name: string): ColumnDef {
    this.#reader.readsWhole(table, name);
    const column = this.#reader.layout.column(table, name);
    this.#columns.push(column);
    return column;
  }

  /** A sheet of which rows are read from now on. */
  rows(name: string): TableDef {
    this.#reader.readsRowsOf(name);
    const table = this.#reader.layout.table(name);
    this.#tables.push(table);
    return table;
  }

  /** What `work` gives, worked out again only where something that is read changed. */
  once<T>(work: (frame: Frame) => T): (frame: Frame) => T {
    let seen: { readonly stamp: string; readonly answer: T } | undefined;
    return (frame) => {
      const stamp = frame.stampOf(this.#columns, this.#tables);
      if (seen?.stamp !== stamp) seen = { stamp, answer: work(frame) };
      return seen.answer;
    };
  }
}
