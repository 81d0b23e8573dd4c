// Applies steps to the state and gives back their opposites, notes what was touched, and brings the computed columns up to
// date. The only file that writes to columns and rows after a workbook is open.

import { ColumnNode } from '../recalculation/column-node.ts';
import type { Node } from '../recalculation/graph.ts';
import type { TableData } from '../recalculation/model.ts';
import { RowSet } from '../recalculation/row-set.ts';
import { type Column, FILLED } from '../values/column.ts';
import type { CellAddress } from '../values/error.ts';
import { type Content, NOTHING, typedUnit } from './cells.ts';
import type { ChangeSet } from './face.ts';
import { isHidden } from './names.ts';
import { openColumn, typeOf } from './open-sheets.ts';
import { findSheetColumn, isComputed, isTyped, type Sheet, type SheetColumn } from './sheet.ts';
import type { State } from './state.ts';
import { changesSchema, type Step } from './steps.ts';

type ChangedCells = ChangeSet['cells'][number];

export class Changes {
  readonly #state: State;
  readonly #columns = new Map<Column, { readonly table: string; readonly column: string; readonly rows: RowSet }>();
  readonly #rows = new Map<TableData, RowSet>();
  readonly #spare: RowSet[] = [];
  readonly #schemaOf = new Set<string>();
  /** Cells handed back to their formula. */
  #demands: { readonly table: string; readonly column: string; readonly row: number }[] = [];
  #today = false;
  #recompile = false;

  constructor(state: State) {
    this.#state = state;
  }

  /** Does a step and gives back its opposite. */
  apply(step: Step): Step {
    if (changesSchema(step)) this.#recompile = true;
    switch (step.step) {
      case 'cell':
        return this.#cell(step);
      case 'row':
        return this.#row(step);
      case 'formula': {
        const column = this.#columnOf(step.table, step.column);
        const opposite = { ...step, formula: column.formula };
        column.formula = step.formula;
        this.#schemaOf.add(step.table);
        return opposite;
      }
      case 'new column':
        return this.#newColumn(step);
      case 'drop column':
        return this.#dropColumn(step);
      case 'units': {
        const opposite: Step = { step: 'units', units: this.#state.units };
        this.#state.units = step.units;
        for (const sheet of this.#state.sheets.values()) this.#retype(sheet);
        return opposite;
      }
      case 'today': {
        const { today } = this.#state.model;
        const opposite: Step = { step: 'today', today: today.values[0] ?? 0 };
        today.write(0, step.today, FILLED);
        this.#today = true;
        return opposite;
      }
    }
  }

  #sheet(name: string): Sheet {
    const sheet = this.#state.sheet(name);
    if (sheet === undefined) throw new Error(`No sheet ${name}`);
    return sheet;
  }

  #columnOf(table: string, name: string): SheetColumn {
    const column = findSheetColumn(this.#sheet(table), name);
    if (column === undefined) throw new Error(`No column ${name} in ${table}`);
    return column;
  }

  #touch(table: string, column: string, data: Column, row: number): void {
    let touched = this.#columns.get(data);
    if (touched === undefined) {
      touched = { table, column, rows: this.#emptySet() };
      this.#columns.set(data, touched);
    }
    touched.rows.add(row);
  }

  #cell(step: Extract<Step, { step: 'cell' }>): Step {
    const state = this.#state;
    const sheet = this.#sheet(step.table);
    const column = this.#columnOf(step.table, step.column);
    const { data } = column;
    const { row } = step;
    const own = isTyped(column, row);
    const before: Content = own
      ? { value: data.values[row] ?? 0, state: data.states[row] ?? 0, unit: typedUnit(column, row, state) }
      : NOTHING;
    if (step.own || column.role === 'entered') {
      putTyped(state, sheet, column, row, step.content);
      this.#touch(step.table, step.column, data, row);
    } else {
      column.overrides.delete(row);
      keepUnit(column, row, 0);
      this.#demands.push({ table: step.table, column: step.column, row });
    }
    return { ...step, content: before, own };
  }

  #row(step: Extract<Step, { step: 'row' }>): Step {
    this.#live(this.#sheet(step.table), step.row, step.alive);
    return { ...step, alive: !step.alive };
  }

  /** A row and the rows that sheets make of it come and go together, so that what was typed there can be put back. */
  #live(sheet: Sheet, row: number, alive: boolean): void {
    sheet.data.setLive(row, alive);
    let rows = this.#rows.get(sheet.data);
    if (rows === undefined) {
      rows = this.#emptySet();
      this.#rows.set(sheet.data, rows);
    }
    rows.add(row);
    for (const other of this.#state.sheets.values()) {
      if (other.source.from !== 'each' || other.source.table !== sheet.name) continue;
      if ((other.data.live[row] === 1) === alive) continue;
      this.#live(other, row, alive);
      if (alive) other.data.column(other.source.as).write(row, row, FILLED);
    }
  }

  #newColumn(step: Extract<Step, { step: 'new column' }>): Step {
    const sheet = this.#sheet(step.table);
    const declared = step.type;
    const type = declared === undefined ? undefined : typeOf(declared, this.#state.units, this.#state.vocabulary);
    const column = openColumn(
      step.table,
      {
        name: step.column,
        type: declared ?? { type: 'text' },
        group: 'Own columns',
        note: '',
        own: true,
        role: declared === undefined ? 'computed' : 'entered',
        formula: step.formula,
      },
      declared === undefined ? 'computed' : 'entered',
      type,
      declared === undefined,
      this.#state,
    );
    for (let row = 0; row < sheet.data.length; row++) if (sheet.data.live[row] !== 1) column.data.write(row, 0, FILLED);
    sheet.columns.splice(step.at, 0, column);
    this.#schemaOf.add(step.table);
    return { step: 'drop column', table: step.table, column: step.column };
  }

  #dropColumn(step: Extract<Step, { step: 'drop column' }>): Step {
    const sheet = this.#sheet(step.table);
    const column = this.#columnOf(step.table, step.column);
    const at = sheet.columns.indexOf(column);
    sheet.columns.splice(at, 1);
    sheet.data.columns.delete(step.column);
    this.#schemaOf.add(step.table);
    return {
      step: 'new column',
      table: step.table,
      column: step.column,
      formula: column.formula,
      type: column.inferred ? undefined : column.declaration.type,
      at,
    };
  }

  #retype(sheet: Sheet): void {
    this.#schemaOf.add(sheet.name);
    for (const column of sheet.columns) {
      if (!column.inferred) column.type = typeOf(column.declaration.type, this.#state.units, this.#state.vocabulary);
    }
  }

  /**
   * Brings everything up to date and says what changed. Where only some cells are wanted, what they don't rest on waits,
   * dirty, for the next call that wants all.
   */
  finish(label: string, inserted: readonly number[], cellsWanted?: readonly CellAddress[]): ChangeSet {
    const cells: ChangedCells[] = [];
    const rowsOf = new Set<string>();
    if (this.#recompile) this.#recompileAll();
    const { built } = this.#state;
    for (const [table, rows] of this.#rows) {
      rowsOf.add(table.name);
      built.graph.changed(built.rowsSource(table), rows);
    }
    for (const [data, { table, column, rows }] of this.#columns) {
      built.graph.changed(built.columnSource(data), rows);
      cells.push({ table, column, rows: rows.sorted().slice() });
    }
    for (const { table, column, row } of this.#demands) {
      const node = built.columnNode(table, column);
      if (node !== undefined) built.graph.demand(node, row);
      cells.push({ table, column, rows: Int32Array.of(row) });
    }
    if (this.#today) {
      const rows = new RowSet();
      rows.add(0);
      built.graph.changed(built.todaySource, rows);
    }
    built.graph.run((node, changed) => noteChange(node, changed, cells, rowsOf), this.#only(cellsWanted));
    const columnsOf = [...this.#schemaOf];
    this.#clear();
    return { refused: false, label, cells, rowsOf: [...rowsOf], columnsOf, inserted };
  }

  /** The part of the graph that these cells rest on; undefined for all of it. */
  #only(cells: readonly CellAddress[] | undefined): Uint8Array | undefined {
    if (cells === undefined) return undefined;
    const { built } = this.#state;
    return built.graph.upstream(cells.flatMap(({ table, column }) => built.columnNode(table, column) ?? []));
  }

  /** Formulas, columns or units changed: the graph is built anew and everything worked out again. */
  #recompileAll(): void {
    this.#state.compile();
    this.#state.built.graph.demandAll();
  }

  /** A set left over from an earlier transaction, or a new one: making one anew for a far row costs more than the edit. */
  #emptySet(): RowSet {
    return this.#spare.pop() ?? new RowSet();
  }

  #giveBack(rows: RowSet): void {
    rows.clear();
    this.#spare.push(rows);
  }

  #clear(): void {
    for (const { rows } of this.#columns.values()) this.#giveBack(rows);
    for (const rows of this.#rows.values()) this.#giveBack(rows);
    this.#columns.clear();
    this.#rows.clear();
    this.#schemaOf.clear();
    this.#demands = [];
    this.#today = false;
    this.#recompile = false;
  }
}

function noteChange(node: Node, changed: RowSet, cells: ChangedCells[], rowsOf: Set<string>): void {
  if (node instanceof ColumnNode) {
    if (isHidden(node.columnName)) {
      if (node.column === node.table.shown) rowsOf.add(node.table.name);
      return;
    }
    cells.push({
      table: node.table.name,
      column: node.columnName,
      rows: changed.all ? 'all' : changed.sorted().slice(),
    });
  } else if (node.name !== '') rowsOf.add(node.name);
}

/** Writes what a person typed into a cell: value, unit, name of the row. What depends on it is not worked out here. */
export function putTyped(state: State, sheet: Sheet, column: SheetColumn, row: number, content: Content): void {
  if (sheet.declaration.key === column.declaration.name) rename(state, sheet, column, row, content);
  if (isComputed(column)) column.overrides.add(row);
  keepUnit(column, row, state.unitNumber(content.unit));
  column.data.write(row, content.value, content.state);
}

function keepUnit(column: SheetColumn, row: number, number: number): void {
  if (number === 0 && column.typedUnits === undefined) return;
  let kept = column.typedUnits;
  if (kept === undefined || row >= kept.length) {
    const room = new Uint8Array(Math.max(row + 1, column.data.states.length));
    if (kept !== undefined) room.set(kept);
    kept = room;
    column.typedUnits = kept;
  }
  kept[row] = number;
}

function rename(state: State, sheet: Sheet, column: SheetColumn, row: number, content: Content): void {
  const { data } = column;
  const { texts } = state.model;
  if (data.states[row] === FILLED) {
    const before = texts.text(data.values[row] ?? 0).toLowerCase();
    if (sheet.keys?.get(before) === row) sheet.keys.delete(before);
  }
  if (content.state === FILLED) sheet.keys?.set(texts.text(content.value).toLowerCase(), row);
}
