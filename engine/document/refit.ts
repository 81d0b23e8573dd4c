// Fits a document's data to another program: other columns, formulas, sheets or units. What is typed in a column whose kind
// changed, or that is gone, goes on the shelf, and what waits on the shelf for a column or sheet that is there now goes
// into it. Rows that follow from other data are made anew. Everything is to be worked out again when it is asked for.

import type { Frame } from '../calculation/frame.ts';
import type { Program, ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isMadeSheet, isOneRow } from '../schema/schema.ts';
import { sameDimension } from '../units/dimension.ts';
import { BLANK, FILLED } from '../values/column.ts';
import type { ValueType } from '../values/type.ts';
import { EMPTY_CELL, placeContent } from './cells.ts';
import { type Document, storeCell } from './document.ts';
import { ONLY_ROW } from './ids.ts';
import { byPlace } from './row-places.ts';

export function refit(document: Document, program: Program): void {
  const before = document.program;
  const kept = keptColumns(before, program);
  for (const sheet of before.sheets) if (!isMadeSheet(sheet.schema)) shelve(document, sheet, program, kept);
  const frame = carriedOver(document.store, before, program, kept);
  document.use(program, frame);
  document.forgetNames();
  for (const sheet of program.sheets) {
    if (isMadeSheet(sheet.schema)) continue;
    if (before.sheet(sheet.id) === undefined) wakeRows(document, sheet);
    unshelve(document, sheet);
    nameRows(document, sheet);
  }
  document.run.begin();
}

/** The columns of entered sheets that hold the same sort of thing as before, by 'sheet/column'. */
function keptColumns(before: Program, program: Program): ReadonlySet<string> {
  const kept = new Set<string>();
  for (const { id, columns, schema } of program.sheets) {
    const old = before.sheet(id);
    if (old === undefined || isMadeSheet(schema) || isMadeSheet(old.schema)) continue;
    for (const column of columns) {
      const was = old.column(column.id);
      if (was !== undefined && was.role === column.role && holdSame(was.type, column.type))
        kept.add(`${id}/${column.id}`);
    }
  }
  return kept;
}

function holdSame(a: ValueType | undefined, b: ValueType | undefined): boolean {
  if (a === undefined || b === undefined || a.kind !== b.kind) return a === b;
  if (a.kind === 'number' && b.kind === 'number') return sameDimension(a.dimension, b.dimension);
  if (a.kind === 'choice' && b.kind === 'choice') return a.options.join('\n') === b.options.join('\n');
  if (a.kind === 'link' && b.kind === 'link') return a.table === b.table;
  return true;
}

/** Puts on the shelf what is typed in columns that don't stay as they are. */
function shelve(document: Document, sheet: ProgramSheet, program: Program, kept: ReadonlySet<string>): void {
  const leaving = sheet.columns.filter((column) => column.role !== 'made' && !kept.has(`${sheet.id}/${column.id}`));
  const sheetGoes = program.sheet(sheet.id) === undefined;
  for (const { id, slot } of [...document.rowsOf(sheet.id).records()]) {
    if (slot < 0) continue;
    for (const column of leaving) {
      const content = document.typedAt(column, slot);
      if (content !== null) document.shelf.put(sheet.id, id, column.id, content);
    }
    if (sheetGoes) document.ownRowsOf(sheet.id).put({ ...recordOf(document, sheet.id, id), slot: -1 });
  }
}

function recordOf(document: Document, sheet: string, row: string) {
  const record = document.rowsOf(sheet).record(row);
  if (record === undefined) throw new Error(`No row ${row} in ${sheet}`);
  return record;
}

/** A frame for the program with the columns that stay, and blanks in the others. */
function carriedOver(from: Frame, before: Program, program: Program, kept: ReadonlySet<string>): Frame {
  const frame = program.newFrame();
  // What stays is shared with the frame it came from, as after a branch.
  from.token = {};
  frame.today = from.today;
  for (const { id, table, schema } of program.sheets) {
    const old = before.layout.findTable(id);
    if (old === undefined || isMadeSheet(schema) || isMadeSheet(before.sheet(id)?.schema ?? schema)) continue;
    frame.tables[table.number] = from.table(old);
    for (const column of table.columns) {
      const was = before.layout.findColumn(id, column.id);
      if (was !== undefined && kept.has(`${id}/${column.id}`)) {
        frame.columns[column.number] = from.column(was);
        frame.typed[column.number] = from.typed[was.number];
      } else blankColumn(frame, table.number, column.number);
    }
  }
  // The two ends of a span stand in a row of their own, which is always there.
  for (const table of program.layout.tables) if (program.sheet(table.id) === undefined) frame.setLive(table, 0, true);
  return frame;
}

function blankColumn(frame: Frame, table: number, number: number): void {
  const column = frame.columns[number];
  const rows = frame.tables[table];
  if (column === undefined || rows === undefined) return;
  column.grow(rows.length);
  for (let slot = 0; slot < rows.length; slot++) column.write(slot, 0, rows.live[slot] === 1 ? BLANK : FILLED);
}

/** The rows of a sheet that is there again take slots again; a one-row sheet always has its row. */
function wakeRows(document: Document, sheet: ProgramSheet): void {
  const rows = document.ownRowsOf(sheet.id);
  if (isOneRow(sheet.schema) && rows.record(ONLY_ROW) === undefined) rows.put({ id: ONLY_ROW, slot: -1, at: '' });
  const isMine = (id: string): boolean => !isOneRow(sheet.schema) || id === ONLY_ROW;
  const asleep = [...rows.records()].filter(({ id, slot, removed }) => slot < 0 && removed === undefined && isMine(id));
  for (const record of asleep.sort(byPlace)) {
    const slot = document.store.table(sheet.table).length;
    document.store.setLive(sheet.table, slot, true);
    rows.put({ ...record, slot });
  }
}

/** Puts what waits for columns of a sheet into them. */
function unshelve(document: Document, sheet: ProgramSheet): void {
  for (const row of document.shelf.rows(sheet.id)) {
    const slot = document.slotOf(sheet.id, row);
    if (slot === undefined) continue;
    for (const [columnId, content] of [...document.shelf.cells(sheet.id, row)]) {
      const column = sheet.column(columnId);
      if (column === undefined) continue;
      const placed = placeContent(content, column, document.program, document);
      if (placed.ok) document.shelf.put(sheet.id, row, columnId, null);
      if (placed.ok || !isComputedRole(column)) storeCell(document, column, slot, placed.ok ? placed.cell : EMPTY_CELL);
    }
  }
}

function isComputedRole({ role }: ProgramColumn): boolean {
  return role === 'computed' || role === 'default';
}

/** Notes how the rows are called. */
export function nameRows(document: Document, sheet: ProgramSheet): void {
  const key = sheet.schema.key === undefined ? undefined : sheet.column(sheet.schema.key);
  if (key === undefined) return;
  const names = document.ownNamesOf(sheet.id);
  for (const slot of document.store.rows(sheet.table)) {
    const name = document.typedAt(key, slot);
    if (typeof name === 'string') names.add(name, slot);
  }
}
