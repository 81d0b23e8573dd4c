// What an answer over whole sheets rests on: told to the graph as read, and remembered, so that the answer is worked out
// again only when something of it has changed and not once a batch. Used by the files that plan such functions.

import type { Column } from '../values/column.ts';
import type { TableData } from './model.ts';
import type { Reader } from './reader.ts';

export class WholeReads {
  readonly #reader: Reader;
  readonly #columns: Column[] = [];
  readonly #tables: TableData[] = [];

  constructor(reader: Reader) {
    this.#reader = reader;
  }

  /** A whole column, which is read from now on. */
  column(table: string, name: string): Column {
    this.#reader.readsWhole(table, name);
    const column = this.#reader.model.table(table).column(name);
    this.#columns.push(column);
    return column;
  }

  /** A sheet of which rows are read from now on. */
  rows(name: string): TableData {
    this.#reader.readsRowsOf(name);
    const table = this.#reader.model.table(name);
    this.#tables.push(table);
    return table;
  }

  /** Rises whenever anything that is read changes. */
  version(): number {
    let sum = 0;
    for (const column of this.#columns) sum += column.version;
    for (const table of this.#tables) sum += table.version + (table.shown?.version ?? 0);
    return sum;
  }
}
