// Typed links whose rows went or have not come yet: they wait on the shelf until the row is there. Called by changes.ts before
// anything is worked out; calls put-content.ts, which shelves a link whose row is not there and places one whose row is.

import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { FILLED } from '../values/column.ts';
import { isLinkContent } from './content.ts';
import type { Document } from './document.ts';
import { putContent } from './put-content.ts';
import type { Touched } from './touched.ts';

/** Links to rows that went go on the shelf, and those that waited for rows that came go into their cells. */
export function settleLinks(document: Document, { came, went }: Touched): void {
  if (went.size > 0) shelveLost(document, went);
  if (came.size > 0 && !document.shelf.isEmpty) placeWaiting(document, came);
}

function shelveLost(document: Document, went: Touched['went']): void {
  for (const sheet of document.program.sheets) {
    for (const column of sheet.columns) {
      const target = column.type?.kind === 'link' && column.role !== 'made' ? column.type.table : '';
      const gone = went.get(target);
      if (gone !== undefined) shelveLinks(document, sheet, column, gone);
    }
  }
}

function shelveLinks(
  document: Document,
  sheet: ProgramSheet,
  column: ProgramColumn,
  gone: ReadonlyMap<number, string>,
): void {
  const { live, length } = document.store.table(sheet.table);
  for (let slot = 0; slot < length; slot++) {
    const { values, states } = document.store.column(column.def);
    const target = states[slot] === FILLED ? gone.get(values[slot] ?? -1) : undefined;
    if (target === undefined || live[slot] !== 1 || !document.isTyped(column, slot)) continue;
    const row = document.rowIdOf(sheet.id, slot);
    if (row === undefined) continue;
    putContent(document, sheet, column, row, slot, { row: target });
  }
}

function placeWaiting(document: Document, came: Touched['came']): void {
  for (const sheetId of document.shelf.sheets()) {
    const sheet = document.program.sheet(sheetId);
    if (sheet?.columns.some(({ type }) => type?.kind === 'link' && came.has(type.table)) === true) {
      for (const row of document.shelf.rows(sheetId)) placeLinksOf(document, sheet, row, came);
    }
  }
}

function placeLinksOf(document: Document, sheet: ProgramSheet, row: string, came: Touched['came']): void {
  const slot = document.slotOf(sheet.id, row);
  if (slot === undefined) return;
  for (const [columnId, content] of [...document.shelf.cells(sheet.id, row)]) {
    const column = sheet.column(columnId);
    if (column?.type?.kind !== 'link' || !isLinkContent(content)) continue;
    if (came.get(column.type.table)?.has(content.row) === true) {
      putContent(document, sheet, column, row, slot, content);
    }
  }
}
