// Which cells are selected, by slot and column name, for what stands outside the grid: the bottom line adds them up.

import { signal } from '@preact/signals';

export interface SelectedCells {
  readonly table: string;
  /** Slots, the empty row left out. */
  readonly rows: readonly number[];
  readonly columns: readonly string[];
}

/** The selection of the sheet on screen; undefined where none is. */
export const selectedCells = signal<SelectedCells | undefined>(undefined);
