// The rows of a sheet: which there are, in order, their ids, and how people name them. A row is asked about by its slot, which
// is good until rows of its sheet come or go; what lasts is its id.

import type { ProgramSheet } from '../schema/compile.ts';
import { type Book, sheetOf } from './book.ts';
import { rowName } from './shown.ts';

export { rowName };

/** Slots of the rows that exist, in order. */
export function rows(book: Book, sheet: string): Int32Array {
  const found = sheetOf(book, sheet);
  return found === undefined ? new Int32Array(0) : book.document.frame.rows(found.table);
}

export function rowId({ document }: Book, sheet: string, row: number): string {
  return document.rowIdOf(sheet, row) ?? '';
}

/** The slot of the row with this id; undefined where it is not there. */
export function rowWithId({ document }: Book, sheet: string, id: string): number | undefined {
  return document.slotOf(sheet, id);
}

/** The row that people call so, case aside; of several the first. */
export function rowNamed(book: Book, sheetId: string, name: string): number | undefined {
  const sheet = sheetOf(book, sheetId);
  if (sheet === undefined) return undefined;
  const { rows: source, key } = sheet.schema;
  if (source.from === 'single') return 0;
  const wanted = name.trim();
  if (key !== undefined) return firstInOrder(book, sheet, book.document.namesOf(sheetId).find(wanted));
  const lower = wanted.toLowerCase();
  return rows(book, sheetId).find((row) => rowName(book, sheetId, row).toLowerCase() === lower);
}

function firstInOrder({ document }: Book, { table }: ProgramSheet, slots: readonly number[]): number | undefined {
  if (slots.length < 2) return slots[0];
  return document.frame.rows(table).find((slot) => slots.includes(slot));
}
