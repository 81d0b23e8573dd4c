// What the columns, the headers and the cells of a grid ask of the sheet on screen while they are drawn. sheet-grid.ts answers.

import type { Book, ColumnView, SheetView, View } from '../../../engine/index.ts';
import type { BegunEntry } from './cell-editor.ts';
import type { CellMarks } from './cell-words.ts';
import type { Room } from './figures.ts';
import type { RowHandle } from './row-handle.ts';

/** What cells and headers ask while they are drawn; the sheet grid keeps it current. */
export interface Drawing {
  readonly book: Book;
  readonly sheet: SheetView;
  readonly view: View;
  /** Questions folded to their first column. */
  readonly folded: readonly string[];
  /** As a person drew it; undefined: as wide as it needs to be. */
  width(column: string): number | undefined;
  room(column: string): Room;
  /** What is to be told of a cell besides its text. */
  marks(row: RowHandle, column: string): CellMarks;
  /** What stands for a column under a group. */
  total(row: RowHandle, column: string): string;
  /** Its number among the rows; undefined for heads of groups and the empty row. */
  numberOf(row: RowHandle): number | undefined;
  /** Marks a cell that comes into view as the selection wants it. */
  dressRange(cell: HTMLElement, rowIndex: number, column: string): void;
  /** Writes what was typed; whether it was taken. */
  write(row: RowHandle, column: ColumnView, entry: string): boolean;
  /** What an entry begins with, where its cell isn't opened as it stands. */
  begunWith(): BegunEntry | undefined;
}
