// What a picture of a row is to the page: which rows it shows, which columns it can't do without, and the component that draws
// it. list.ts lists them.

import type { ComponentType } from 'preact';
import { type Book, type SheetView, sheetView } from '../../../engine/index.ts';
import type { RowAt } from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';

export interface PanelProps {
  readonly sheet: SheetView;
  readonly row: RowAt;
}

export interface Panel {
  readonly name: string;
  /** The sheet whose rows it shows, by id. */
  readonly of: string;
  /** Columns it can't do without, by sheet, all by id. */
  readonly needs: Readonly<Record<string, readonly string[]>>;
  /** Its fields say what matters of a row: the panel doesn't list every column below it. */
  readonly inPlaceOfFields?: true;
  readonly Show: ComponentType<PanelProps>;
}

/** Whether a workbook has all that a picture needs. */
export function hasNeeds(book: Book, { needs }: Panel): boolean {
  return Object.entries(needs).every(([sheet, columns]) => {
    const view = sheetView(book, sheet);
    return columns.every((column) => columnOf(view, column) !== undefined);
  });
}
