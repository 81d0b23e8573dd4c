// The runs of the graph over a document: what was touched goes in, what changed comes out, and what is asked for is brought up to
// date. Made anew with every program.

import type { Frame } from '../calculation/frame.ts';
import { ColumnNode } from '../calculation/graph/column-node.ts';
import { GeneratorNode } from '../calculation/graph/generator-node.ts';
import { type Node, type OnChange, WAITING } from '../calculation/graph/graph.ts';
import { RecordNode } from '../calculation/graph/record-node.ts';
import type { ColumnDef, TableDef } from '../calculation/layout.ts';
import type { Built, Counted } from '../calculation/plans/build.ts';
import { RowSet } from '../calculation/row-set.ts';
import type { Typed } from '../language/typed.ts';
import { isHidden } from '../schema/hidden.ts';
import type { ChangedCells } from './change-set.ts';

export class GraphRun {
  readonly #built: Built;
  readonly #frame: Frame;
  readonly #columns = new Map<ColumnDef, RowSet>();
  readonly #tables = new Map<TableDef, RowSet>();
  /** Sets left over from earlier runs: making one anew for a far row costs more than the edit. */
  readonly #spare: RowSet[] = [];
  /** Cells handed back to their formula. */
  #demands: { readonly column: ColumnDef; readonly slot: number }[] = [];
  /** The tables of these columns and cells. */
  readonly #touched = new Set<TableDef>();
  #today = false;
  /** While it runs, and while a document is being filled, columns are read as they stand. */
  #held = true;
  /** By the numbers of columns. */
  readonly #makers: (Node | null | undefined)[] = [];
  /** What makes the rows of tables, by their numbers. */
  readonly #rowMakers: (Node | null | undefined)[] = [];
  // What changed and nobody was told of yet.
  #cells: ChangedCells[] = [];
  readonly #rowsOf = new Set<string>();
  readonly #note: OnChange = (node, changed, wasAsleep) => {
    // What nobody ever asked for is news to nobody.
    if (!wasAsleep) this.#noteChange(node, changed);
  };

  constructor(built: Built, frame: Frame) {
    this.#built = built;
    this.#frame = frame;
  }

  /** The document is filled: from now on what is asked for is worked out. Everything sleeps until then. */
  begin(): void {
    this.#built.graph.demandAll(this.#frame);
    this.#held = false;
  }

  /** Of a document that goes on where another stands. */
  goOn(): void {
    this.#held = false;
  }

  cellChanged(column: ColumnDef, slot: number): void {
    this.#touched.add(column.table);
    this.#touch(this.#columns, column, slot);
  }

  rowChanged(table: TableDef, slot: number): void {
    this.#touch(this.#tables, table, slot);
  }

  todayChanged(): void {
    this.#today = true;
  }

  demand(column: ColumnDef, slot: number): void {
    this.#touched.add(column.table);
    this.#demands.push({ column, slot });
  }

  #touch<K>(sets: Map<K, RowSet>, key: K, slot: number): void {
    let rows = sets.get(key);
    if (rows === undefined) {
      rows = this.#spare.pop() ?? new RowSet();
      sets.set(key, rows);
    }
    rows.add(slot);
  }

  // Bringing up to date.

  /** A step with all that it rests on. */
  bring(node: Node): void {
    if (this.#held || this.#frame.fresh[node.rank] === 1) return;
    this.#run(() => this.#built.graph.bring(this.#frame, node, this.#note));
  }

  bringColumn(column: ColumnDef): void {
    const maker = this.#maker(column);
    if (maker !== null) this.bring(maker);
  }

  /** Some columns with all that they rest on, for as long as `goOn` says; true where more is left. */
  bringSome(columns: readonly ColumnDef[], goOn: () => boolean): boolean {
    let left = false;
    const nodes = columns.map((column) => this.#maker(column)).filter((node) => node !== null);
    this.#run(() => {
      left = this.#built.graph.bringSome(this.#frame, nodes, this.#note, goOn);
    });
    return left;
  }

  #maker(column: ColumnDef): Node | null {
    let maker = this.#makers[column.number];
    if (maker === undefined) {
      maker = this.#built.columnSource(column).maker ?? null;
      this.#makers[column.number] = maker;
    }
    return maker;
  }

  counted(call: Typed): Counted | undefined {
    return this.#built.countedRows(call);
  }

  /** Which rows of a table live. */
  bringRows(table: TableDef): void {
    let maker = this.#rowMakers[table.number];
    if (maker === undefined) {
      maker = this.#built.rowsSource(table).maker ?? null;
      this.#rowMakers[table.number] = maker;
    }
    if (maker !== null) this.bring(maker);
  }

  /** All that was asked for since the document was opened, for as long as `goOn` says; true where more is left. */
  settle(goOn?: () => boolean): boolean {
    this.#run(() => this.#built.graph.run(this.#frame, this.#note, false, goOn));
    if (this.#frame.pending.includes(WAITING)) return true;
    this.#frame.releaseSlots();
    return false;
  }

  /** Everything, asked for or not, worked out again from what is entered. */
  everythingAgain(): void {
    this.#built.graph.demandAll(this.#frame);
    this.#run(() => this.#built.graph.run(this.#frame, (node, changed) => this.#noteChange(node, changed)));
  }

  /** Some steps are up to date with all that they rest on, and everything stays as it stands from now on. */
  handOver(nodes: readonly Node[]): void {
    for (const node of nodes) this.bring(node);
    this.#held = true;
  }

  #run(work: () => void): void {
    this.#held = true;
    try {
      work();
    } catch (fault) {
      this.#frame.fresh.fill(0);
      throw fault;
    } finally {
      this.#held = false;
    }
  }

  // What was touched, and what changed.

  /** Tells the graph what was touched, where a cell of a table was: for whoever asks before all is done. */
  passFrom(table: TableDef): void {
    if (this.#touched.has(table)) this.pass();
  }

  /** Tells the graph what was touched. */
  pass(): void {
    const { graph } = this.#built;
    const [built, frame] = [this.#built, this.#frame];
    for (const [table, rows] of this.#tables) graph.changed(frame, built.rowsSource(table), rows);
    for (const [column, rows] of this.#columns) {
      graph.changed(frame, built.columnSource(column), rows);
      const typed = built.typedSource(column);
      if (typed !== undefined) graph.changed(frame, typed, rows);
      this.#cells.push({ sheet: column.table.id, column: column.id, rows: rows.sorted().slice() });
    }
    for (const { column, slot } of this.#demands) {
      const node = built.columnNode(column);
      if (node !== undefined) graph.demand(frame, node, slot);
      const typed = built.typedSource(column);
      if (typed !== undefined) graph.changed(frame, typed, oneRow(slot));
      this.#cells.push({ sheet: column.table.id, column: column.id, rows: Int32Array.of(slot) });
    }
    if (this.#today) graph.changed(frame, built.todaySource, oneRow(0));
    this.#clear();
  }

  /** What changed since it was last asked. */
  take(): { readonly cells: readonly ChangedCells[]; readonly rowsOf: readonly string[] } {
    const taken = { cells: this.#cells, rowsOf: [...this.#rowsOf] };
    this.#cells = [];
    this.#rowsOf.clear();
    return taken;
  }

  #clear(): void {
    for (const sets of [this.#columns, this.#tables]) {
      for (const rows of sets.values()) {
        rows.clear();
        this.#spare.push(rows);
      }
      sets.clear();
    }
    this.#touched.clear();
    this.#demands = [];
    this.#today = false;
  }

  #noteChange(node: Node, changed: RowSet): void {
    if (node instanceof ColumnNode || node instanceof RecordNode) {
      const { table, id } = node.column;
      if (node.column === table.shown) this.#rowsOf.add(table.id);
      this.#cells.push({ sheet: table.id, column: id, rows: changed.all ? 'all' : changed.sorted().slice() });
    } else if (node instanceof GeneratorNode) this.#rowsOf.add(node.name);
  }
}

function oneRow(slot: number): RowSet {
  const rows = new RowSet();
  rows.add(slot);
  return rows;
}

/** Whether a person can see the column that changed. */
export function isSeen({ column }: ChangedCells): boolean {
  return !isHidden(column);
}
