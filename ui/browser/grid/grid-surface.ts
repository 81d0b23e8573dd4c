// What the grid on screen can do for the table of commands, and which grid that is. The grid puts itself here while it
// stands; the table asks.

import { signal } from '@preact/signals';
import type { Move } from './ranges.ts';

export interface GridSurface {
  /** Opens the cell in hand for typing. */
  startEditing(): void;
  /** Opens the empty row at the sheet's end. */
  startNewRow(): void;
  /** Moves the cell in hand; with `stretch` the other end of the selection, with `far` all the way. */
  move(to: Move, how?: { readonly stretch?: boolean; readonly far?: boolean }): void;
  selectRows(): void;
  selectColumns(): void;
  selectAll(): void;
  /** More than one cell is selected. */
  isWide(): boolean;
  /** Back to the cell in hand alone. */
  shrink(): void;
  /** The selection as text for the clipboard; undefined where nothing is selected. */
  copied(): string | undefined;
  paste(text: string): void;
  fillDown(): void;
  /** Sorts by a column; null: in the order entered. */
  sort(column: string, order: 'asc' | 'desc' | null): void;
}

export const gridOnScreen = signal<GridSurface | undefined>(undefined);
