// What the selected cells add up to, in words, for the bottom line. grid/summing.ts, which comes with the grid, works it out.

import { signal } from '@preact/signals';

export interface Part {
  readonly name: string;
  readonly value: string;
}

export const summed = signal<readonly Part[]>([]);
