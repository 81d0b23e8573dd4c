// Whether a workbook has the columns that a picture needs. Pure; apart from the other questions, since it is asked before any picture
// is fetched.

import { type Book, sheetView } from '../../../../engine/index.ts';
import { columnOf } from '../../store/sheets.ts';

/** Columns that something can't do without, by sheet, all by id. */
export type Needs = Readonly<Record<string, readonly string[]>>;

export function hasColumns(book: Book, needs: Needs): boolean {
  return Object.entries(needs).every(([sheet, columns]) => {
    const view = sheetView(book, sheet);
    return view !== undefined && columns.every((column) => columnOf(view, column) !== undefined);
  });
}
