// Columns and kernels in a line of text each, for tests of kernels: a number, '-' for a blank, '!3' for the fault of that number.

import { loadKernel } from '../../engine/calculation/load-kernels.ts';
import { constantKernel, type Kernel } from '../../engine/calculation/vector.ts';
import { BLANK, Column, FAULT, FILLED } from '../../engine/values/column.ts';

type Cell = readonly [value: number, state: number];

function cellOf(word: string): Cell {
  if (word === '-') return [0, BLANK];
  if (word.startsWith('!')) return [Number(word.slice(1)), FAULT];
  return [Number(word), FILLED];
}

/** A column of these cells; `whole` holds links or texts rather than doubles. */
export function columnOf(line: string, whole = false): Column {
  const column = new Column(whole);
  const cells = line.split(' ').map(cellOf);
  column.grow(cells.length);
  cells.forEach(([value, state], row) => {
    column.write(row, value, state);
  });
  return column;
}

/** Reads a column of these cells. */
export function rows(line: string): Kernel {
  return loadKernel(columnOf(line));
}

/** Gives one cell for every row. */
export function always(word: string): Kernel {
  const [value, state] = cellOf(word);
  return constantKernel(value, state);
}

function told(kernel: Kernel, batch: { rows: Int32Array | undefined; from: number; count: number }): string {
  const { values, states, at, clean, uniform } = kernel(batch);
  return Array.from({ length: batch.count }, (_, i) => {
    const index = at + (uniform ? 0 : i);
    const state = clean ? FILLED : states[index];
    return state === FILLED ? `${values[index]}` : state === BLANK ? '-' : `!${values[index]}`;
  }).join(' ');
}

/** What a kernel gives for `count` rows from `from` on. */
export function given(kernel: Kernel, count: number, from = 0): string {
  return told(kernel, { rows: undefined, from, count });
}

/** What a kernel gives for rows that are listed. */
export function givenFor(kernel: Kernel, listed: readonly number[]): string {
  return told(kernel, { rows: Int32Array.from(listed), from: 0, count: listed.length });
}

/** What a kernel says of a batch of `count` rows: whether all are filled, and whether one value stands for all. */
export function said(kernel: Kernel, count: number): { clean: boolean; uniform: boolean } {
  const { clean, uniform } = kernel({ rows: undefined, from: 0, count });
  return { clean, uniform };
}
