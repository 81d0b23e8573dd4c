// The operations on one row of an entered sheet: it comes, goes, moves, is kept, or comes back because another changed it. Each
// is done to the document and gives its inverse. Called by changes.ts once the schema is settled, and by cell-operations.ts for a
// row that comes back; calls put-content.ts for what the row holds. Many rows at once are in row-blocks.ts.

import type { ProgramSheet } from '../schema/compile.ts';
import { isMadeSheet, isOneRow } from '../schema/schema.ts';
import type { Content } from './content.ts';
import type { Document } from './document.ts';
import { ONLY_ROW } from './ids.ts';
import { forgetName, putContent } from './put-content.ts';
import { comesUnknown, saidOf } from './row-blocks.ts';
import { markOf } from './sheet-rows.ts';
import { type Arrival, BEFORE_ALL, isLater } from './stamps.ts';
import type { Touched } from './touched.ts';
import type { Operation, OperationOf } from './transaction.ts';

/** A row that is there already moves to its place and is marked, or not, as this one; one whose sheet is not there waits for it. */
export function insertRow(
  document: Document,
  operation: OperationOf<'insert row'>,
  touched: Touched,
): readonly Operation[] {
  const { sheet: sheetId, row, at } = operation;
  if (isOnlyRow(document, operation)) return [];
  const before = document.rowsOf(sheetId).record(row);
  if (before !== undefined && before.removed === undefined)
    return [
      ...mark(document, operation, touched),
      ...moveRow(document, { op: 'move row', sheet: sheetId, row, at }, touched),
    ];
  const sheet = document.program.sheet(sheetId);
  // Its one row is always there.
  if (sheet !== undefined && isOneRow(sheet.schema)) return [];
  const asUnknown = comesUnknown(document, sheetId, row) ? { asUnknown: true as const } : {};
  const gone: Operation = { op: 'remove row', sheet: sheetId, row, ...asUnknown };
  const rows = document.ownRowsOf(sheetId);
  if (sheet === undefined || isMadeSheet(sheet.schema)) {
    rows.put({ id: row, slot: -1, at, ...markOf(operation) });
    return [gone];
  }
  const { store: frame } = document;
  const slot = frame.ownTable(sheet.table).takeSlot();
  const { length, labels } = frame.table(sheet.table);
  touched.rowsCame(sheetId, [operation], labels === undefined && at > rows.lastAt && slot === length);
  frame.setLive(sheet.table, slot, true);
  rows.put({ id: row, slot, at, ...markOf(operation) });
  document.run.rowChanged(sheet.table, slot);
  unshelve(document, sheet, row, slot);
  return [gone];
}

/** A row that comes gets what was typed for it. */
function unshelve(document: Document, sheet: ProgramSheet, row: string, slot: number): void {
  for (const [columnId, content] of [...document.shelf.cells(sheet.id, row)]) {
    const column = sheet.column(columnId);
    if (column !== undefined && column.role !== 'made') putContent(document, sheet, column, row, slot, content);
  }
}

/** What the row held is kept on the shelf. One that another person changed since stays, marked. */
export function removeRow(
  document: Document,
  { sheet: sheetId, row, asUnknown, unshipped }: OperationOf<'remove row'>,
  arrival: Arrival,
  touched: Touched,
): readonly Operation[] {
  const rows = document.ownRowsOf(sheetId);
  const record = rows.record(row);
  const sheet = document.program.sheet(sheetId);
  const removed = {
    removed: arrival.stamp,
    ...(asUnknown === true ? { asUnknown } : {}),
    ...(unshipped === true ? { unshipped } : {}),
  };
  if (sheet !== undefined && isOneRow(sheet.schema)) return [];
  if (record === undefined || sheet === undefined || record.slot < 0) {
    if (record !== undefined) rows.put({ ...record, ...removed });
    // One that waits with its sheet is there again when that is taken back.
    const waits = record !== undefined && record.removed === undefined;
    return waits ? [{ op: 'insert row', sheet: sheetId, row, at: record.at, ...markOf(record) }] : [];
  }
  if (arrival.remote && document.stamps.isChangedSince(sheetId, row, arrival.stamp)) {
    return mark(document, { sheet: sheetId, row, broughtBack: true }, touched);
  }
  const { slot } = record;
  const said = saidOf(document, sheet, row);
  const cells: { readonly column: string; readonly content: Content }[] = [];
  for (const column of sheet.columns) {
    const content = column.role === 'made' ? null : document.contentOf(sheetId, row, column.id);
    if (content === null) continue;
    cells.push({ column: column.id, content });
    if (sheet.schema.key === column.id) forgetName(document, sheet, column, slot);
  }
  for (const [column, content] of document.shelf.cells(sheetId, row)) {
    if (sheet.column(column) === undefined) cells.push({ column, content });
  }
  document.store.setLive(sheet.table, slot, false);
  for (const { column, content } of cells) document.shelf.put(sheetId, row, column, content);
  rows.put({ id: row, slot: -1, at: record.at, ...removed });
  document.run.rowChanged(sheet.table, slot);
  touched.rowsWent(sheetId, [record]);
  const columns = cells.map(({ column }) => column);
  const line = { row, at: record.at, cells: cells.map(({ content }) => content), ...markOf(record), ...said };
  return [{ op: 'insert rows', sheet: sheetId, columns, rows: [line] }];
}

/** The row stands at another place among the others. */
export function moveRow(
  document: Document,
  { sheet: sheetId, row, at }: OperationOf<'move row'>,
  touched: Touched,
): readonly Operation[] {
  const rows = document.ownRowsOf(sheetId);
  const record = rows.record(row);
  if (record === undefined || record.at === at || isOnlyRow(document, { sheet: sheetId, row })) return [];
  rows.put({ ...record, at });
  const sheet = document.program.sheet(sheetId);
  if (sheet !== undefined && record.slot >= 0) {
    document.run.rowChanged(sheet.table, record.slot);
    touched.rowMoved(sheetId);
  }
  return [{ op: 'move row', sheet: sheetId, row, at: record.at }];
}

/** A row that came back is marked no longer, or again; one that was removed meanwhile is there again. */
export function keepRow(
  document: Document,
  operation: OperationOf<'keep row'>,
  touched: Touched,
): readonly Operation[] {
  const record = document.rowsOf(operation.sheet).record(operation.row);
  if (record?.removed === undefined) return mark(document, operation, touched);
  return insertRow(document, { ...operation, op: 'insert row', at: record.at }, touched);
}

/** A row that somebody removed, and that another changed afterwards, is there again, marked. */
export function bringBack(
  document: Document,
  sheet: ProgramSheet,
  row: string,
  { stamp, remote }: Arrival,
  touched: Touched,
): void {
  const record = document.rowsOf(sheet.id).record(row);
  if (!remote || record?.removed === undefined) return;
  if (record.removed.actor === stamp.actor || !isLater(stamp, record.removed)) return;
  insertRow(document, { op: 'insert row', sheet: sheet.id, row, at: record.at }, touched);
  // A row that an improved template ships no more is simply kept: nobody took it out.
  if (record.removed !== BEFORE_ALL) mark(document, { sheet: sheet.id, row, broughtBack: true }, touched);
}

/** The row of a sheet of one row is always there, and stands alone. */
function isOnlyRow(document: Document, { sheet, row }: { readonly sheet: string; readonly row: string }): boolean {
  const schema = document.program.schema.sheet(sheet);
  return row === ONLY_ROW && schema !== undefined && isOneRow(schema);
}

type Mark = Pick<OperationOf<'keep row'>, 'sheet' | 'row' | 'broughtBack'>;

/** Puts the mark on a row, or takes it off. */
function mark(document: Document, { sheet, row, broughtBack }: Mark, touched: Touched): readonly Operation[] {
  const rows = document.ownRowsOf(sheet);
  const record = rows.record(row);
  if (record === undefined || record.broughtBack === broughtBack || isOnlyRow(document, { sheet, row })) return [];
  const { broughtBack: before, ...rest } = record;
  rows.put({ ...rest, ...markOf({ broughtBack }) });
  touched.rowsOf.add(sheet);
  return [{ op: 'keep row', sheet, row, ...markOf({ broughtBack: before }) }];
}
