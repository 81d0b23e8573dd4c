// One run of the graph over a document: what was touched goes in, what changed comes out. Made anew with every program.

import { ColumnNode } from '../calculation/graph/column-node.ts';
import { GeneratorNode } from '../calculation/graph/generator-node.ts';
import type { Node } from '../calculation/graph/graph.ts';
import { RecordNode } from '../calculation/graph/record-node.ts';
import type { ColumnDef, TableDef } from '../calculation/layout.ts';
import { RowSet } from '../calculation/row-set.ts';
import { isHidden } from '../schema/hidden.ts';
import type { CellAddress } from '../values/error.ts';
import type { ChangedCells } from './change-set.ts';
import type { Document } from './document.ts';

export class GraphRun {
  readonly #document: Document;
  readonly #columns = new Map<ColumnDef, RowSet>();
  readonly #tables = new Map<TableDef, RowSet>();
  /** Sets left over from earlier runs: making one anew for a far row costs more than the edit. */
  readonly #spare: RowSet[] = [];
  /** Cells handed back to their formula. */
  #demands: { readonly column: ColumnDef; readonly slot: number }[] = [];
  #today = false;

  constructor(document: Document) {
    this.#document = document;
  }

  cellChanged(column: ColumnDef, slot: number): void {
    this.#touch(this.#columns, column, slot);
  }

  rowChanged(table: TableDef, slot: number): void {
    this.#touch(this.#tables, table, slot);
  }

  todayChanged(): void {
    this.#today = true;
  }

  demand(column: ColumnDef, slot: number): void {
    this.#demands.push({ column, slot });
  }

  /** Everything is to be worked out again. */
  everything(): void {
    const { program, frame } = this.#document;
    program.built.graph.demandAll(frame);
  }

  #touch<K>(sets: Map<K, RowSet>, key: K, slot: number): void {
    let rows = sets.get(key);
    if (rows === undefined) {
      rows = this.#spare.pop() ?? new RowSet();
      sets.set(key, rows);
    }
    rows.add(slot);
  }

  /** Brings everything up to date, or only what some cells rest on; the rest waits. */
  run(wanted?: readonly CellAddress[]): {
    readonly cells: readonly ChangedCells[];
    readonly rowsOf: readonly string[];
  } {
    const { program, frame } = this.#document;
    const { built, layout } = program;
    const cells: ChangedCells[] = [];
    const rowsOf = new Set<string>();
    for (const [table, rows] of this.#tables) built.graph.changed(frame, built.rowsSource(table), rows);
    for (const [column, rows] of this.#columns) {
      built.graph.changed(frame, built.columnSource(column), rows);
      const typed = built.typedSource(column);
      if (typed !== undefined) built.graph.changed(frame, typed, rows);
      cells.push({ sheet: column.table.id, column: column.id, rows: rows.sorted().slice() });
    }
    for (const { column, slot } of this.#demands) {
      const node = built.columnNode(column);
      if (node !== undefined) built.graph.demand(frame, node, slot);
      const typed = built.typedSource(column);
      if (typed !== undefined) built.graph.changed(frame, typed, oneRow(slot));
      cells.push({ sheet: column.table.id, column: column.id, rows: Int32Array.of(slot) });
    }
    if (this.#today) {
      built.graph.changed(frame, built.todaySource, oneRow(0));
    }
    this.#clear();
    const only = wanted?.flatMap(({ sheet, column }) => {
      const def = layout.findColumn(sheet, column);
      return (def === undefined ? undefined : built.columnNode(def)) ?? [];
    });
    built.graph.run(
      frame,
      (node, changed) => noteChange(node, changed, cells, rowsOf),
      only === undefined ? undefined : built.graph.upstream(only),
    );
    return { cells, rowsOf: [...rowsOf] };
  }

  #clear(): void {
    for (const sets of [this.#columns, this.#tables]) {
      for (const rows of sets.values()) {
        rows.clear();
        this.#spare.push(rows);
      }
      sets.clear();
    }
    this.#demands = [];
    this.#today = false;
  }
}

function oneRow(slot: number): RowSet {
  const rows = new RowSet();
  rows.add(slot);
  return rows;
}

function noteChange(node: Node, changed: RowSet, cells: ChangedCells[], rowsOf: Set<string>): void {
  if (node instanceof ColumnNode || node instanceof RecordNode) {
    const { table, id } = node.column;
    if (node.column === table.shown) rowsOf.add(table.id);
    cells.push({ sheet: table.id, column: id, rows: changed.all ? 'all' : changed.sorted().slice() });
  } else if (node instanceof GeneratorNode) rowsOf.add(node.name);
}

/** Whether a person can see the column that changed. */
export function isSeen({ column }: ChangedCells): boolean {
  return !isHidden(column);
}
