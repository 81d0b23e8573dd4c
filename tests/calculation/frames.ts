// Small tables for tests of the calculation: frames of a layout, sets of rows, and both told in a line of text.

import { type Dictionaries, Frame } from '../../engine/calculation/frame.ts';
import type { ColumnDef, Layout, TableDef } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { Faults, Texts } from '../../engine/values/texts.ts';

export function dictionaries(): Dictionaries {
  return { texts: new Texts(), faults: new Faults(), figures: [] };
}

/** A frame without rows, for a graph of so many nodes. */
export function emptyFrame(layout: Layout, nodes = 0): Frame {
  return Frame.empty(layout, nodes, dictionaries());
}

export function rowsOf(...rows: number[]): RowSet {
  const set = new RowSet();
  for (const row of rows) set.add(row);
  return set;
}

export function allRows(): RowSet {
  const set = new RowSet();
  set.addAll();
  return set;
}

/** '0 2 5', 'all', or '' where no row is in the set. */
export function told(set: RowSet): string {
  return set.all ? 'all' : [...set.sorted()].join(' ');
}

/** The rows that exist, in their order, with what a column holds of each: '0:3 2:5'. */
export function listed(frame: Frame, table: TableDef, column: ColumnDef): string {
  return [...frame.rows(table)].map((row) => `${row}:${frame.column(column).values[row]}`).join(' ');
}
