// What a function answers that works out several figures at once: one value for each figure of its record type, in order. It
// lives from the function to the column that keeps the figures, never in a cell.

import type { Scalar } from './error.ts';

export class Figures {
  readonly values: readonly Scalar[];

  constructor(values: readonly Scalar[]) {
    this.values = values;
  }
}

/** The column behind a sheet that keeps one figure of a record column. */
export function figureColumn(column: string, figure: string): string {
  return `${column}·${figure}`;
}

/** The record column whose figure a column keeps; the column itself where it keeps none. */
export function recordColumn(column: string): string {
  const at = column.indexOf('·');
  return at <= 0 ? column : column.slice(0, at);
}
