// The operations on one cell: what is typed in it, how far that may be off, and the note on it. Each is done to the document and gives its
// inverse. Called by changes.ts once the schema is settled; calls put-content.ts, and row-operations.ts for a row that comes back.

import { isMadeSheet } from '../schema/schema.ts';
import { isFiniteContent } from './content.ts';
import type { Document } from './document.ts';
import { putContent } from './put-content.ts';
import { bringBack } from './row-operations.ts';
import { type Arrival, BEFORE_ALL } from './stamps.ts';
import type { Touched } from './touched.ts';
import type { Operation, OperationOf } from './transaction.ts';

/** What is typed in a cell that has no place goes on the shelf. A number beyond every number is nothing. */
export function typeCell(
  document: Document,
  operation: OperationOf<'cell'>,
  arrival: Arrival,
  touched: Touched,
): readonly Operation[] {
  const { sheet: sheetId, row, column: columnId } = operation;
  const content = isFiniteContent(operation.content) ? operation.content : null;
  const before = document.contentOf(sheetId, row, columnId);
  const inverse: Operation = { ...operation, content: before };
  const sheet = document.program.sheet(sheetId);
  const column = sheet?.column(columnId);
  const slot = document.slotOf(sheetId, row);
  const hasPlace = sheet !== undefined && slot !== undefined && column !== undefined && column.role !== 'made';
  if (!hasPlace || isMadeSheet(sheet.schema)) document.shelf.put(sheetId, row, columnId, content);
  if (hasPlace) putContent(document, sheet, column, row, slot, content);
  else if (sheet !== undefined && slot === undefined && operation.aside !== true)
    bringBack(document, sheet, row, arrival, touched);
  return [inverse];
}

/** The cell reads otherwise although what it holds is the same. */
export function giveRange(document: Document, operation: OperationOf<'range'>): readonly Operation[] {
  const { sheet, row, column: columnId, range } = operation;
  const before = document.rangeOf(sheet, row, columnId) ?? null;
  if (before === range) return [];
  document.keepRange(operation, range);
  const column = document.program.sheet(sheet)?.column(columnId);
  const slot = document.slotOf(sheet, row);
  if (column !== undefined && slot !== undefined && column.role !== 'made') document.run.cellChanged(column.def, slot);
  return [{ ...operation, range: before }];
}

/** A note on a row that an improved template ships no more keeps the row, whoever heard of which first. */
export function writeNote(
  document: Document,
  operation: OperationOf<'note'>,
  arrival: Arrival,
  touched: Touched,
): readonly Operation[] {
  const { sheet: sheetId, row, column, note } = operation;
  const before = document.notes.content(sheetId, row, column);
  document.notes.put(sheetId, row, column, note);
  touched.looksOf.add(sheetId);
  const sheet = document.program.sheet(sheetId);
  const isDropped = document.rowsOf(sheetId).record(row)?.removed === BEFORE_ALL;
  if (sheet !== undefined && isDropped && note !== null) bringBack(document, sheet, row, arrival, touched);
  return [{ ...operation, note: before }];
}
