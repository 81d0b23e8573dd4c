// A workbook file as scripts use it (open-workbook.ts says what each part does): names in, plain values out, refusals as errors.

import {
  type ColumnView,
  type Command,
  cellData,
  cellValue,
  cellView,
  evaluate,
  Findings,
  isError,
  message,
  rowId,
  rowName,
  rows,
  type SheetView,
  sheetViews,
  tableData,
  unitSymbol,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { hashOf, isSameFile, readPlain, type Snapshot, writePlain } from '../terminal/disk.ts';
import { findColumn, findRow, findTable, placeInWords } from '../terminal/places.ts';
import { onOneLine, refuse } from '../terminal/world.ts';
import type { Answer, Column, Found, OpenWorkbook, Saving, Value } from './open-workbook.ts';

/** Where a script finds what is there. */
const LISTED = {
  columns: (table: string) => `columns(${JSON.stringify(table)}) gives its columns.`,
  rows: (table: string) => `rows(${JSON.stringify(table)}) gives its rows.`,
};

export class FileWorkbook implements OpenWorkbook {
  readonly notes: readonly string[];
  readonly #workbook: Workbook;
  readonly #path: string;
  /** The file as it was read or last written; undefined for a branch, which has none. */
  #file: Snapshot | undefined;
  /** Other files as they were last written from here: they may be written over, as long as they are as they were left. */
  #written: readonly Snapshot[] = [];

  constructor(workbook: Workbook, path: string, file: Snapshot | undefined, notes: readonly string[]) {
    this.#workbook = workbook;
    this.#path = path;
    this.#file = file;
    this.notes = notes;
  }

  get title(): string {
    return this.#workbook.document.title;
  }

  tables(): readonly string[] {
    return sheetViews(this.#workbook).map(({ name }) => name);
  }

  columns(table: string): readonly Column[] {
    return tableData(this.#workbook, this.#table(table).id)?.columns ?? [];
  }

  rows(table: string): readonly Readonly<Record<string, Value>>[] {
    const { id, columns } = this.#table(table);
    return Array.from(rows(this.#workbook, id), (row) =>
      Object.fromEntries(
        columns.map(({ id: column, name, type }) => [
          name,
          cellData(this.#workbook, cellValue(this.#workbook, id, row, column), type),
        ]),
      ),
    );
  }

  read(tableName: string, row: string, columnName: string): Answer {
    const table = this.#table(tableName);
    const column = this.#column(table, columnName);
    const slot = findRow(this.#workbook, table, this.#path, row, LISTED);
    const view = cellView(this.#workbook, table.id, slot, column.id);
    return {
      value: cellData(this.#workbook, view.value, column.type),
      unit: column.type === undefined ? null : unitSymbol(column.type),
      shown: view.fullUnit === '' || view.unit !== '' ? view.text : `${view.text} ${view.fullUnit}`,
    };
  }

  ask(formula: string): Answer {
    const answer = evaluate(this.#workbook, formula);
    if (!answer.ok) return refuse(onOneLine(answer.diagnostic.why));
    const { value, type, shown } = answer;
    return {
      value: cellData(this.#workbook, value, type),
      unit: unitSymbol(type),
      shown: isError(value) ? value.why : value === null ? 'blank' : shown,
    };
  }

  set(tableName: string, row: string, columnName: string, entry: string | number | boolean): void {
    const table = this.#table(tableName);
    const column = this.#column(table, columnName);
    const slot = findRow(this.#workbook, table, this.#path, row, LISTED);
    const place = placeInWords(table, rowName(this.#workbook, table.id, slot), column.name);
    const cell = { sheet: table.id, row: rowId(this.#workbook, table.id, slot), column: column.id };
    this.#do({ command: 'set cell', ...cell, entry: typed(entry) }, place);
  }

  add(tableName: string, entries: Readonly<Record<string, string | number | boolean>>): void {
    const table = this.#table(tableName);
    const byId = Object.entries(entries).map(([name, entry]) => [this.#column(table, name).id, typed(entry)]);
    this.#do({ command: 'insert row', sheet: table.id, entries: Object.fromEntries(byId) }, table.name);
  }

  remove(tableName: string, row: string): void {
    const table = this.#table(tableName);
    const slot = findRow(this.#workbook, table, this.#path, row, LISTED);
    const command = { command: 'remove rows', sheet: table.id, rows: [rowId(this.#workbook, table.id, slot)] } as const;
    this.#do(command, table.name);
  }

  undo(): boolean {
    return this.#workbook.undo() !== undefined;
  }

  findings(): readonly Found[] {
    return new Findings(this.#workbook)
      .all()
      .map(({ level, sheetName: table, rowName: row, columnName: column, says }) => ({
        level,
        table,
        row,
        column,
        says,
      }));
  }

  branch(): OpenWorkbook {
    return new FileWorkbook(this.#workbook.branch(), this.#path, undefined, []);
  }

  save(path: string = this.#path, { over = false }: Saving = {}): void {
    if (this.#file === undefined && !over && isSameFile(path, this.#path))
      refuse(`A branch does not go over the file of its plan: save it under another name, or pass { over: true }.`);
    const text = writeWorkbookFile(this.#workbook.data());
    const written = this.#written.find((one) => isSameFile(one.place, path));
    writePlain(path, text, { over: written ?? this.#file, force: over, forcedBy: 'pass { over: true }' });
    const now = readPlain(path);
    if (now.hash !== hashOf(text)) return;
    if (now.place === this.#file?.place) this.#file = now;
    else this.#written = [...this.#written.filter(({ place }) => place !== now.place), now];
  }

  #column(table: SheetView, name: string): ColumnView {
    return findColumn(table, this.#path, name, LISTED);
  }

  #table(name: string): SheetView {
    return findTable(this.#workbook, this.#path, name);
  }

  #do(command: Command, place: string): void {
    const done = this.#workbook.do([command], message('trial'));
    if (done.refused) refuse(onOneLine(`${place}: ${done.why}`));
  }
}

function typed(entry: string | number | boolean): string {
  return typeof entry === 'boolean' ? (entry ? 'yes' : 'no') : String(entry);
}
