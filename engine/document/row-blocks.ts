// Many rows that come or go at once, as an import and its undo are: sheet by sheet and column by column instead of cell by
// cell. Called by changes.ts, for changes made here; what another person sends goes one by one, since any of its cells may have
// to give way. Leaves a document exactly as the single operations would.

import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isMadeSheet } from '../schema/schema.ts';
import { contentAt, placeContent } from './cells.ts';
import type { Content } from './content.ts';
import { type Document, storeCell } from './document.ts';
import type { GraphRun } from './graph-run.ts';
import type { RowRecord } from './sheet-rows.ts';
import type { Stamp } from './stamps.ts';
import type { Operation } from './transaction.ts';

type InsertRows = Extract<Operation, { readonly op: 'insert rows' }>;
type RemoveRows = Extract<Operation, { readonly op: 'remove rows' }>;

/** Whether the rows can come at once: an entered sheet that is there, and none of them there already or known from before. */
export function comeAtOnce(document: Document, { sheet: sheetId, rows }: InsertRows): ProgramSheet | undefined {
  const sheet = document.program.sheet(sheetId);
  if (sheet === undefined || isMadeSheet(sheet.schema)) return undefined;
  const known = document.rowsOf(sheetId);
  const seen = new Set<string>();
  for (const { row } of rows) {
    const record = known.record(row);
    if (seen.has(row) || (record !== undefined && (record.slot >= 0 || record.removed === undefined))) return undefined;
    seen.add(row);
  }
  return sheet;
}

/**
 * Brings the rows in and gives what takes them out again, and whether they stand behind all others, in order, as their slots
 * do. Whoever calls it has asked comeAtOnce, and says which rows came.
 */
export function insertRows(
  document: Document,
  sheet: ProgramSheet,
  { columns, rows }: InsertRows,
  run: GraphRun,
): { readonly inverse: Operation; readonly last: boolean } {
  const { length } = document.store.table(sheet.table);
  const slots = takeSlots(document, sheet, rows.length);
  const records = document.ownRowsOf(sheet.id);
  let last = document.store.table(sheet.table).labels === undefined;
  rows.forEach(({ row, at }, i) => {
    const slot = slots[i] ?? 0;
    last &&= slot === length + i && at > records.lastAt;
    records.put({ id: row, slot, at });
    run.rowChanged(sheet.table, slot);
  });
  const waited = rows.map(({ row, cells }) => document.shelf.take(sheet.id, row, columns, cells));
  for (const [i, columnId] of columns.entries()) {
    const column = sheet.column(columnId);
    rows.forEach(({ row, cells }, at) => {
      place(document, sheet, column ?? columnId, row, slots[at] ?? 0, cells[i] ?? null, run);
    });
  }
  waited.forEach((cells, at) => {
    for (const [columnId, content] of cells) {
      place(document, sheet, sheet.column(columnId) ?? columnId, rows[at]?.row ?? '', slots[at] ?? 0, content, run);
    }
  });
  return { inverse: { op: 'remove rows', sheet: sheet.id, rows: rows.map(({ row }) => row) }, last };
}

/** Puts a content in a blank cell of a row that has just come, or on the shelf where the column can't hold it. */
function place(
  document: Document,
  sheet: ProgramSheet,
  column: ProgramColumn | string,
  row: string,
  slot: number,
  content: Content,
  run: GraphRun,
): void {
  if (content === null) return;
  if (typeof column === 'string') {
    document.shelf.put(sheet.id, row, column, content);
    return;
  }
  const placed = column.role === 'made' ? undefined : placeContent(content, column, document.program, document);
  if (placed?.ok !== true) {
    document.shelf.put(sheet.id, row, column.id, content);
    return;
  }
  storeCell(document, column, slot, placed.cell);
  run.cellChanged(column.def, slot);
  if (sheet.schema.key === column.id && typeof content === 'string') document.ownNamesOf(sheet.id).add(content, slot);
}

/** Slots of rows that went, then new ones behind all others. */
function takeSlots(document: Document, { table }: ProgramSheet, count: number): Int32Array {
  const { store: frame } = document;
  const slots = new Int32Array(count);
  const rows = frame.ownTable(table);
  let taken = 0;
  for (; taken < count; taken++) {
    const slot = rows.takeSlot();
    if (slot >= rows.length) break;
    slots[taken] = slot;
  }
  frame.setManyLive(table, slots.subarray(0, taken), true);
  const first = rows.length;
  frame.addRows(table, count - taken);
  for (let i = taken; i < count; i++) slots[i] = first + i - taken;
  return slots;
}

/** Whether all the rows can go at once: every one of them is there, none named twice. */
export function goAtOnce(document: Document, { sheet: sheetId, rows }: RemoveRows): ProgramSheet | undefined {
  const sheet = document.program.sheet(sheetId);
  if (sheet === undefined || isMadeSheet(sheet.schema)) return undefined;
  const known = document.rowsOf(sheetId);
  const here = rows.every((row) => known.slotOf(row) !== undefined);
  return here && new Set(rows).size === rows.length ? sheet : undefined;
}

/** Takes the rows out, what they held kept on the shelf; gives what brings them back. */
export function removeRows(
  document: Document,
  sheet: ProgramSheet,
  { rows }: RemoveRows,
  stamp: Stamp,
  run: GraphRun,
): InsertRows {
  const records = document.ownRowsOf(sheet.id);
  const gone = rows.flatMap((row) => records.record(row) ?? []);
  const held = heldBy(document, sheet, gone);
  const columns = [...held.keys()];
  const lists = [...held.values()];
  const lines = gone.map(({ id, at }, i) => ({ row: id, at, cells: lists.map((list) => list[i] ?? null) }));
  const key = sheet.schema.key === undefined ? undefined : held.get(sheet.schema.key);
  const names = document.ownNamesOf(sheet.id);
  // From the last to the first, so that rows that take their slots again stand in the same order.
  for (let i = gone.length - 1; i >= 0; i--) {
    const { id, slot, at } = gone[i] as RowRecord;
    const name = key?.[i];
    if (typeof name === 'string') names.remove(name, slot);
    records.put({ id, slot: -1, at, removed: stamp });
    run.rowChanged(sheet.table, slot);
  }
  document.store.setManyLive(sheet.table, gone.map(({ slot }) => slot).reverse(), false);
  document.shelf.putLines(sheet.id, columns, lines);
  return { op: 'insert rows', sheet: sheet.id, columns, rows: lines };
}

/** What is typed in the rows, by column; columns in which nothing is are left out. */
function heldBy(
  document: Document,
  sheet: ProgramSheet,
  rows: readonly RowRecord[],
): ReadonlyMap<string, readonly Content[]> {
  const { store: frame, program, shelf } = document;
  const held = new Map<string, Content[]>();
  for (const column of sheet.columns) {
    if (column.role === 'made') continue;
    const over = column.role === 'entered' ? undefined : frame.typed[column.def.number]?.over;
    if (column.role !== 'entered' && (over === undefined || over.size === 0)) continue;
    let any = false;
    const contents = rows.map(({ slot }): Content => {
      if (over?.has(slot) === false) return null;
      const content = contentAt(column, slot, frame, program, document);
      any ||= content !== null;
      return content;
    });
    if (any) held.set(column.id, contents);
  }
  if (!shelf.has(sheet.id)) return held;
  rows.forEach(({ id }, i) => {
    for (const [column, content] of shelf.cells(sheet.id, id)) {
      const contents = held.get(column) ?? rows.map(() => null);
      held.set(column, contents);
      contents[i] = content;
    }
  });
  return held;
}
