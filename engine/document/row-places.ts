// Gives the rows of an entered sheet their labels in the frame, after rows came in between others or moved: in the order of
// their places, ids deciding between rows at one place. While slots stand in that order themselves there are no labels.

import type { Document } from './document.ts';
import type { RowRecord } from './sheet-rows.ts';

export function orderRows(document: Document, sheetId: string): void {
  const sheet = document.program.sheet(sheetId);
  if (sheet === undefined) return;
  const rows = [...document.rowsOf(sheetId).records()].filter(({ slot }) => slot >= 0).sort(byPlace);
  const { store: frame } = document;
  const inSlots = rows.every(({ slot }, i) => i === 0 || (rows[i - 1]?.slot ?? -1) < slot);
  const table = frame.ownTable(sheet.table);
  if (inSlots) table.labels = undefined;
  else for (const [place, { slot }] of rows.entries()) table.setLabel(slot, place);
  table.reordered();
}

export function byPlace(a: RowRecord, b: RowRecord): number {
  if (a.at !== b.at) return a.at < b.at ? -1 : 1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
