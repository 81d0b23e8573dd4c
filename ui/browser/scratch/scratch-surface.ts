// What the scratch paper on screen can do for the table of commands, and whether one is. The paper puts itself here while it
// stands; the table asks. Small, since the page has it from its start: the paper itself is fetched when it is first opened.

import { signal } from '@preact/signals';
import type { Copied } from '../grid/clipboard/copied.ts';

export interface ScratchSurface {
  copied(): Copied;
  cut(): Copied;
  paste(text: string, html: string): void;
  clear(): void;
  fill(way: 'down' | 'right'): void;
  selectAll(): void;
  /** Opens the question which sheet gets the formula in hand as a column. */
  turn(): void;
  /** Why the cell in hand can't become a column, in a sentence; undefined where it may. */
  turnRefusal(): string | undefined;
}

export const scratchOnScreen = signal<ScratchSurface | undefined>(undefined);
