// Which cells are selected, by slot and column name, for what stands outside the grid, as the bottom line, which adds
// them up; and the wish for a new row, which comes from outside.

import { signal } from '@preact/signals';

export interface SelectedCells {
  readonly table: string;
  /** Slots, the empty row left out. */
  readonly rows: readonly number[];
  readonly columns: readonly string[];
}

/** The selection of the sheet on screen; undefined where none is. */
export const selectedCells = signal<SelectedCells | undefined>(undefined);

/** Raised to begin a new row: the grid opens the empty row at the end of the sheet on screen. */
export const newRowWish = signal(0);
