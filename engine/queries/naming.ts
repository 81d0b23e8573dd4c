// Which rows name others: asked before rows are left out, to tell what would lose what it names.

import { typedLinksTo } from '../document/typed-links.ts';
import { type Book, sheetOf } from './book.ts';
import { rowId, rowName } from './rows.ts';

/** A cell in which a person named a row. */
export interface Naming {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  /** What people call the row named. */
  readonly named: string;
}

/** The cells in which rows that are not among some of a sheet name one of them. */
export function namingOf(book: Book, sheetId: string, ids: readonly string[]): readonly Naming[] {
  const sheet = sheetOf(book, sheetId);
  const slots = new Set(ids.flatMap((id) => book.document.slotOf(sheetId, id) ?? []));
  if (sheet === undefined || slots.size === 0) return [];
  const links = typedLinksTo(book.document, sheet, (slot) => slots.has(slot));
  return Array.from(links, ({ sheet: { id }, column, slot, named }) => ({
    sheet: id,
    row: rowId(book, id, slot),
    column: column.id,
    named: rowName(book, sheetId, named),
  }));
}
