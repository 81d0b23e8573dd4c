// The data that kernels work on: the tables' rows and columns, what people typed over, indexes and totals, and which rows
// wait to be worked out. A branch shares everything with the frame it came from; each copies what it writes first.
// Knows layouts and storage; knows no formula.

import { BLANK, Column, FILLED, type Token } from '../values/column.ts';
import type { Figures } from '../values/figures.ts';
import { SpareArrays } from '../values/spare-arrays.ts';
import type { Faults, Texts } from '../values/texts.ts';
import type { ColumnDef, Layout, TableDef } from './layout.ts';
import { compareRows, rowsInOrder } from './row-order.ts';
import { RowSet } from './row-set.ts';
import { TableRows } from './table-rows.ts';
import { TypedCells } from './typed-cells.ts';

/** State that a frame keeps and branches share until one of them writes it. */
export interface Shared {
  owner: Token | undefined;
  copy(owner: Token): Shared;
}

/** The place in frames of one piece of state: an index, a total, what a row generator remembers. */
export class FrameState<T extends Shared> {
  readonly number: number;
  readonly #make: (owner: Token) => T;

  constructor(number: number, make: (owner: Token) => T) {
    this.number = number;
    this.#make = make;
  }

  /** To read. */
  read(frame: Frame): T {
    // Only this place writes under its number, so what stands there is a T.
    const kept = frame.states[this.number] as T | undefined;
    return kept ?? this.put(frame, this.#make(frame.token));
  }

  /** To write: a copy of its own where the state is shared with another branch. */
  own(frame: Frame): T {
    const kept = this.read(frame);
    return kept.owner === frame.token ? kept : this.put(frame, kept.copy(frame.token) as T);
  }

  /** To set anew, with state that the frame owns. */
  put(frame: Frame, state: T): T {
    frame.states[this.number] = state;
    return state;
  }
}

/** What a person typed in rows that row generators make, put back when such a row comes to life. */
export interface MadeCells {
  /** Puts the typed cells of a new row in place; gives the columns that it wrote. */
  rowMade(table: TableDef, row: number): readonly ColumnDef[];
}

export interface Dictionaries {
  readonly texts: Texts;
  readonly faults: Faults;
  /** Answers of several figures on their way from a function to the columns that keep them; empty between runs. */
  readonly figures: Figures[];
}

/** What frames share after a branch, until one of them writes it. */
interface Contents {
  readonly layout: Layout;
  readonly dictionaries: Dictionaries;
  readonly nodes: number;
  readonly tables: TableRows[];
  readonly columns: Column[];
  readonly typed: (TypedCells | undefined)[];
  readonly states: (Shared | undefined)[];
  readonly today: number;
  readonly spare: SpareArrays;
}

/** The rows of a table in order, for as long as its stamp stays the same, and their places once they were asked for. */
interface RowList {
  readonly stamp: string;
  readonly rows: Int32Array;
  places: Int32Array | undefined;
}

export class Frame {
  readonly layout: Layout;
  readonly texts: Texts;
  readonly faults: Faults;
  readonly figures: Figures[];
  token: Token;
  readonly tables: TableRows[];
  readonly columns: Column[];
  readonly typed: (TypedCells | undefined)[];
  readonly states: (Shared | undefined)[];
  /** Dirty rows by node and lane (graph.ts). */
  readonly sets: (RowSet | undefined)[] = [];
  /** Which nodes have dirty rows, by rank, or are to be made whole (graph.ts). */
  readonly pending: Uint8Array;
  /** Which nodes are known to rest on nothing that is pending, by rank. */
  readonly fresh: Uint8Array;
  /** The civil day that TODAY() gives. */
  today: number;
  madeCells: MadeCells | undefined;
  /** For columns that are to be copied, of this frame and its branches. */
  readonly #spare: SpareArrays;
  /** Tables in which rows died since slots were last released. */
  readonly #dying = new Set<TableDef>();
  readonly #rowLists: (RowList | undefined)[] = [];

  private constructor(contents: Contents, token: Token) {
    this.layout = contents.layout;
    this.texts = contents.dictionaries.texts;
    this.faults = contents.dictionaries.faults;
    this.figures = contents.dictionaries.figures;
    this.token = token;
    this.tables = contents.tables;
    this.columns = contents.columns;
    this.typed = contents.typed;
    this.states = contents.states;
    this.today = contents.today;
    this.#spare = contents.spare;
    this.pending = new Uint8Array(contents.nodes);
    this.fresh = new Uint8Array(contents.nodes);
  }

  /** A frame without rows, for a graph of so many nodes. */
  static empty(layout: Layout, nodes: number, dictionaries: Dictionaries): Frame {
    const token: Token = {};
    const tables = layout.tables.map(() => new TableRows(token));
    const columns = layout.columns.map(({ whole }) => new Column(whole, token));
    const spare = new SpareArrays();
    return new Frame({ layout, dictionaries, nodes, tables, columns, typed: [], states: [], today: 0, spare }, token);
  }

  /** A frame for a graph of its own beside another's: it shares the tables there are and has those that the layout adds. */
  static beside(frame: Frame, layout: Layout, nodes: number): Frame {
    const token: Token = {};
    const tables = layout.tables.map(({ number }) => frame.tables[number] ?? new TableRows(token));
    const columns = layout.columns.map(({ number, whole }) => frame.columns[number] ?? new Column(whole, token));
    const { today } = frame;
    const typed = frame.typed.slice();
    const spare = frame.#spare;
    return new Frame({ layout, dictionaries: frame, nodes, tables, columns, typed, states: [], today, spare }, token);
  }

  /** Brings a frame beside another's up to date with that one: it shares again what there is, and keeps nothing made of what there was. */
  follow(frame: Frame): void {
    for (let k = 0; k < frame.tables.length; k++) this.tables[k] = frame.tables[k] as TableRows;
    for (let k = 0; k < frame.columns.length; k++) this.columns[k] = frame.columns[k] as Column;
    for (let k = 0; k < frame.typed.length; k++) this.typed[k] = frame.typed[k];
    this.today = frame.today;
    this.states.length = 0;
  }

  /** A frame that holds the same and changes by itself from here on; what waits in this one waits there too. */
  branch(): Frame {
    this.token = {};
    const branch = new Frame(
      {
        layout: this.layout,
        dictionaries: this,
        nodes: this.pending.length,
        tables: this.tables.slice(),
        columns: this.columns.slice(),
        typed: this.typed.slice(),
        states: this.states.slice(),
        today: this.today,
        spare: this.#spare,
      },
      {},
    );
    branch.pending.set(this.pending);
    branch.fresh.set(this.fresh);
    this.sets.forEach((set, number) => {
      if (set?.empty === false) branch.sets[number] = set.copy();
    });
    for (const table of this.#dying) branch.#dying.add(table);
    return branch;
  }

  /** Gives what this frame alone holds away to be used again. Nothing can be read from it, or from its columns, afterwards. */
  release(): void {
    for (const column of this.columns) if (column.owner === this.token) column.release(this.#spare);
    this.columns.length = 0;
  }

  /** Whoever shared what this frame held under an earlier token is gone: it may be written again without being copied. */
  ownAgain(earlier: Token): void {
    const own = [...this.columns, ...this.tables, ...this.typed, ...this.states];
    for (const one of own) if (one?.owner === this.token) one.owner = earlier;
    this.token = earlier;
  }

  /** A dirty set of a node; made when first asked for. */
  set(number: number): RowSet {
    let set = this.sets[number];
    if (set === undefined) {
      set = new RowSet();
      this.sets[number] = set;
    }
    return set;
  }

  column({ number }: ColumnDef): Column {
    return this.columns[number] as Column;
  }

  table({ number }: TableDef): TableRows {
    return this.tables[number] as TableRows;
  }

  /** A column that this frame may write. */
  ownColumn({ number }: ColumnDef): Column {
    const column = this.columns[number] as Column;
    if (column.owner === this.token) return column;
    const own = column.copy(this.token, this.#spare);
    this.columns[number] = own;
    return own;
  }

  /** The rows of a table, for writing. */
  ownTable({ number }: TableDef): TableRows {
    const table = this.tables[number] as TableRows;
    if (table.owner === this.token) return table;
    const own = table.copy(this.token);
    this.tables[number] = own;
    return own;
  }

  /** What is typed in a column, for writing. */
  ownTyped({ number }: ColumnDef): TypedCells {
    const typed = this.typed[number];
    if (typed?.owner === this.token) return typed;
    const own = typed?.copy(this.token) ?? new TypedCells(this.token);
    this.typed[number] = own;
    return own;
  }

  /** Writes one cell; true where it changed. */
  write(column: ColumnDef, row: number, value: number, state: number): boolean {
    const kept = this.column(column);
    if (kept.states[row] === state && kept.values[row] === (state === BLANK ? 0 : value + 0)) return false;
    return this.ownColumn(column).write(row, value, state);
  }

  grow(table: TableDef, length: number): void {
    if (length <= this.table(table).length) return;
    this.ownTable(table).grow(length);
    const { columns } = table;
    for (let k = 0; k < columns.length; k++) this.ownColumn(columns[k] as ColumnDef).grow(length);
  }

  /**
   * Brings a slot to life, all cells blank, or lets it die. A dead row's cells read as filled zeros, so that they cost
   * kernels nothing, and nothing is typed in them.
   */
  setLive(table: TableDef, row: number, alive: boolean): void {
    const isNew = row >= this.table(table).length;
    this.grow(table, row + 1);
    if ((this.table(table).live[row] === 1) === alive) return;
    this.ownTable(table).setLive(row, alive);
    // The cells of a slot that was just made are blank, and nothing is typed in them.
    if (isNew && alive) return;
    if (!alive) this.#dying.add(table);
    for (const column of table.columns) {
      this.write(column, row, 0, alive ? BLANK : FILLED);
      if (this.typed[column.number]?.isMarked(row) === true) this.ownTyped(column).forget(row);
    }
  }

  /** As setLive, for many slots that there are already, a column at a time. */
  setManyLive(table: TableDef, rows: ArrayLike<number>, alive: boolean): void {
    const own = this.ownTable(table);
    const turned = Int32Array.from(rows).filter((row) => own.setLive(row, alive));
    if (turned.length === 0) return;
    if (!alive) this.#dying.add(table);
    for (const column of table.columns) {
      this.ownColumn(column).writeSame(turned, 0, alive ? BLANK : FILLED);
      const typed = this.typed[column.number];
      if (typed === undefined) continue;
      for (const row of turned) if (typed.isMarked(row)) this.ownTyped(column).forget(row);
    }
  }

  /**
   * Brings a slot past the others to life with cells in some columns alone: where rows are made by the thousand, making the
   * cells of the rest one row at a time costs more than all else. `fillOut` is to follow before anyone looks at those.
   */
  addSlot(table: TableDef, row: number, columns: readonly ColumnDef[]): void {
    const rows = this.ownTable(table);
    rows.grow(row + 1);
    rows.setLive(row, true);
    for (let k = 0; k < columns.length; k++) this.ownColumn(columns[k] as ColumnDef).grow(row + 1);
  }

  /** So many rows in the table's order take the place of those there were; some columns are blank, the others' cells are to be worked out. */
  remake(table: TableDef, count: number, blank: readonly ColumnDef[]): void {
    this.ownTable(table).remake(count);
    for (const column of table.columns) this.ownColumn(column).resize(count);
    for (const column of blank) this.ownColumn(column).blank();
  }

  /** Gives the rows of slots that were added so their cells in every column, all blank. */
  fillOut(table: TableDef): void {
    const { length } = this.table(table);
    for (const column of table.columns) if (this.column(column).length < length) this.ownColumn(column).grow(length);
  }

  /** To be called once nothing waits that had been worked out before: new rows may then take the slots of those that died. */
  releaseSlots(): void {
    for (const table of this.#dying) this.ownTable(table).releaseSlots();
    this.#dying.clear();
  }

  /** Makes `count` new rows that live, all cells blank, after those there are. */
  addRows(table: TableDef, count: number): void {
    const first = this.table(table).length;
    this.grow(table, first + count);
    const rows = this.ownTable(table);
    for (let row = first; row < first + count; row++) rows.setLive(row, true);
  }

  /** Whether a row is there: alive, and not left out by the condition on its sheet's rows. */
  exists(table: TableDef, row: number): boolean {
    if (this.table(table).live[row] !== 1) return false;
    if (table.shown === undefined) return true;
    const shown = this.column(table.shown);
    return shown.states[row] === FILLED && shown.values[row] === 1;
  }

  /** Slots of the rows that exist, in their order; good until the next change of rows. */
  rows(table: TableDef): Int32Array {
    return this.#rowList(table).rows;
  }

  /** Where each row that exists stands among them, by slot; good until the next change of rows. */
  places(table: TableDef): Int32Array {
    const list = this.#rowList(table);
    if (list.places !== undefined) return list.places;
    const { rows } = list;
    const places = new Int32Array(this.table(table).length);
    for (let place = 0; place < rows.length; place++) places[rows[place] as number] = place;
    list.places = places;
    return places;
  }

  #rowList(table: TableDef): RowList {
    const stamp = this.rowsStamp(table);
    const kept = this.#rowLists[table.number];
    if (kept?.stamp === stamp) return kept;
    const list = { stamp, rows: rowsInOrder(this, table), places: undefined };
    this.#rowLists[table.number] = list;
    return list;
  }

  /** Another after any change of which rows exist and how they stand in order. */
  rowsStamp(table: TableDef): string {
    const own = `${this.table(table).stamp} ${table.shown === undefined ? '' : this.column(table.shown).stamp}`;
    const { order } = table;
    if (this.table(table).inOrder) return own;
    switch (order.by) {
      case 'own':
        return own;
      case 'table':
        return `${own} ${this.rowsStamp(order.table)}`;
      case 'links':
        return `${own} ${order.links.map(({ column, to }) => `${this.column(column).stamp} ${this.rowsStamp(to)}`)}`;
      case 'events':
        return `${own} ${this.column(order.date).stamp} ${order.about.map(({ to }) => this.rowsStamp(to))}`;
    }
  }

  /** Another after any change of these columns and of which rows of these tables exist, or in another branch. */
  stampOf(columns: readonly ColumnDef[], tables: readonly TableDef[]): string {
    let stamp = '';
    for (const column of columns) stamp += `${this.column(column).stamp} `;
    for (const table of tables) stamp += `${this.rowsStamp(table)} `;
    return stamp;
  }

  /** How two rows of a table stand in order; undefined where slots do. */
  compare(table: TableDef): ((a: number, b: number) => number) | undefined {
    return compareRows(this, table);
  }

  /** Bytes of column storage held, by the arrays themselves. */
  bytes(): number {
    let bytes = 0;
    for (const table of this.tables) bytes += table.bytes();
    for (const column of this.columns) bytes += column.bytes();
    return bytes;
  }
}
