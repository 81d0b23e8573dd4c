// Columns and kernels in a line of text each, for tests of kernels: a number, '-' for a blank, '!3' for the fault of that number.

import { Frame } from '../../engine/calculation/frame.ts';
import { loadKernel } from '../../engine/calculation/kernels/load-kernels.ts';
import { type Batch, constantKernel, type Kernel, type Vector } from '../../engine/calculation/kernels/vector.ts';
import { type ColumnDef, Layout } from '../../engine/calculation/layout.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { emptyFrame } from './frames.ts';

type Cell = readonly [value: number, state: number];

function cellOf(word: string): Cell {
  if (word === '-') return [0, BLANK];
  if (word.startsWith('!')) return [Number(word.slice(1)), FAULT];
  return [Number(word), FILLED];
}

const layout = new Layout();
let frame = emptyFrame(layout);

/** A column without rows, in a table of its own; `whole` holds links or texts rather than doubles. */
export function emptyColumn(whole = false): ColumnDef {
  const column = layout.addColumn(layout.addTable(`t${layout.tables.length}`), 'c', whole);
  frame = Frame.beside(frame, layout, 0);
  return column;
}

/** A column of these cells. */
export function columnOf(line: string, whole = false): ColumnDef {
  const column = emptyColumn(whole);
  const cells = line.split(' ');
  frame.addRows(column.table, cells.length);
  cells.forEach((word, row) => {
    put(column, row, word);
  });
  return column;
}

/** Writes one cell of a column. */
export function put(column: ColumnDef, row: number, word: string): void {
  frame.write(column, row, ...cellOf(word));
}

/** What a kernel gives for a batch of the rows there are. */
export function run(kernel: Kernel, batch: Omit<Batch, 'frame'>): Vector {
  return kernel({ frame, ...batch });
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

function told(kernel: Kernel, batch: Omit<Batch, 'frame'>): string {
  const { values, states, at, clean, uniform } = run(kernel, batch);
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
  const { clean, uniform } = run(kernel, { rows: undefined, from: 0, count });
  return { clean, uniform };
}
