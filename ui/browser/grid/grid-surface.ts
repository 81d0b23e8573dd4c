// What the grid on screen can do for the table of commands, and which grid that is. The grid puts itself here while it
// stands; the table asks.

import { signal } from '@preact/signals';
import type { Copied } from './clipboard/copied.ts';
import type { TakenTo } from './grid-entry.ts';
import type { How } from './range-layer.ts';
import type { Move } from './ranges.ts';

export interface GridSurface {
  /** Opens the cell in hand, with a text typed already where there is one. */
  startEditing(typed?: string): void;
  /** An entry is open. */
  isEditing(): boolean;
  /** An entry is open that began with a key, and has no list to walk: arrows take it. */
  isQuickEntry(): boolean;
  /** Takes the entry that is open and goes on from there. */
  takeEntry(to: TakenTo): void;
  takeIntoAll(): void;
  leaveEntry(): void;
  /** Types a text into every selected cell at once; `unit`: what its bare figures are in, where that isn't the unit of each column. */
  typeIn(entry: string, unit?: string): void;
  /** Opens the empty row at the sheet's end. */
  startNewRow(): void;
  putRowIn(where: 'above' | 'below'): void;
  moveRows(by: 1 | -1): void;
  /** Moves the cell in hand; with `stretch` the other end of the selection, with `far` to the end of the data. */
  move(to: Move, how?: How): void;
  page(by: 1 | -1, stretch: boolean): void;
  /** Whether there is a next cell for Tab, which else leads out of the grid. */
  canTab(by: 1 | -1): boolean;
  /** To the next cell, row after row. */
  tab(by: 1 | -1): void;
  selectRows(): void;
  selectColumns(): void;
  selectAll(): void;
  /** More than one cell is selected. */
  isWide(): boolean;
  /** Back to the cell in hand alone. */
  shrink(): void;
  hasCut(): boolean;
  forgetCut(): void;
  /** The selection for the clipboard; undefined where it can't be copied as one block. */
  copied(withHeaders: boolean): Copied | undefined;
  cut(): Copied | undefined;
  /** `keepFormulas`: never over a formula. */
  paste(text: string, html: string, keepFormulas: boolean): void;
  fillDown(): void;
  fillRight(): void;
  /** As wide as its longest text. */
  fitColumn(column: string): void;
  /** The ids of a sheet's rows that no filter keeps back, folded away or not; undefined where another sheet is on screen. */
  rowsOf(sheet: string): ReadonlySet<string> | undefined;
  /** The columns of a sheet that are drawn: those in sight and next to it; undefined where another sheet is on screen. */
  columnsDrawn(sheet: string): readonly string[] | undefined;
  /** Puts every row where the view wants it now. */
  arrangeAgain(): void;
  foldGroups(): void;
  /** Puts the focus back on the cell in hand. */
  focus(): void;
}

export const gridOnScreen = signal<GridSurface | undefined>(undefined);

/** How the rows on screen stand to the view: how many it keeps back, and whether arranging them anew would move any. */
export interface RowsOnScreen {
  readonly shown: number;
  readonly left: number;
  readonly old: boolean;
  readonly grouped: boolean;
}

export const rowsOnScreen = signal<RowsOnScreen>({ shown: 0, left: 0, old: false, grouped: false });
