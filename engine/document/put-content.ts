// Puts what is typed into a cell of a row that is there, or on the shelf where its column can't hold it, and wakes what reads
// the cell. Called by the operations on cells and rows, and for links that waited; writes through document.ts.

import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isComputed, isMadeSheet } from '../schema/schema.ts';
import { EMPTY_CELL, placeContent } from './cells.ts';
import type { Content } from './content.ts';
import { type Document, storeCell } from './document.ts';

export function putContent(
  document: Document,
  sheet: ProgramSheet,
  column: ProgramColumn,
  row: string,
  slot: number,
  content: Content,
): void {
  const placed = placeContent(content, column, document.program, document);
  const isName = sheet.schema.key === column.id;
  if (isName) forgetName(document, sheet, column, slot);
  if (!isMadeSheet(sheet.schema)) document.shelf.put(sheet.id, row, column.id, placed.ok ? null : content);
  // A cell that goes back to its formula keeps what it held till then: whoever reads it hears only of what differs from that.
  if (isComputed(column) && (content === null || !placed.ok)) giveBack(document, column, slot);
  else {
    storeCell(document, column, slot, placed.ok ? placed.cell : EMPTY_CELL);
    document.run.cellChanged(column.def, slot);
  }
  if (isName) noteName(document, sheet, column, slot);
}

/** A computed cell goes back to its formula. */
function giveBack(document: Document, column: ProgramColumn, slot: number): void {
  const { store: frame } = document;
  if (frame.typed[column.def.number]?.isMarked(slot) === true) frame.ownTyped(column.def).forget(slot);
  document.run.demand(column.def, slot);
}

function noteName(document: Document, sheet: ProgramSheet, column: ProgramColumn, slot: number): void {
  const name = document.typedAt(column, slot);
  if (typeof name === 'string') document.ownNamesOf(sheet.id).add(name, slot);
}

/** The row is no longer found by the name that stands in its key column. */
export function forgetName(document: Document, sheet: ProgramSheet, column: ProgramColumn, slot: number): void {
  const name = document.typedAt(column, slot);
  if (typeof name === 'string') document.ownNamesOf(sheet.id).remove(name, slot);
}
