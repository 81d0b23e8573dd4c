// Values by rows and columns, as functions inside hyperformula take and give them. Called by pasted-functions.ts.

import { CellError, ErrorType, SimpleRangeValue } from 'hyperformula';
import type { Single, Tree, Value } from './trees.ts';

export type Grid = readonly (readonly Single[])[];

export function asValue(grid: Grid | CellError): Value {
  if (grid instanceof CellError) return grid;
  const [only] = grid.length === 1 && grid[0]?.length === 1 ? grid[0] : [];
  return only ?? SimpleRangeValue.onlyValues(grid.map((line) => [...line]));
}

/** A whole row or column is asked for: nothing, or 0. */
export function isAll(tree: Tree | undefined): boolean {
  return tree === undefined || tree.type === 'EMPTY' || (tree.type === 'NUMBER' && tree.value === 0);
}

/** What stands in a row and column; of one row, one column or one value the same for all. */
export function inGrid(grid: Grid, row: number, column: number): Single {
  const line = grid[grid.length === 1 ? 0 : row];
  return line?.[line.length === 1 ? 0 : column] ?? new CellError(ErrorType.NA);
}

export function numberIn(value: Single | undefined): number | undefined {
  if (typeof value === 'number') return value;
  return typeof value === 'object' && !(value instanceof CellError) ? value.val : undefined;
}

export function wholeOf(value: Single): number {
  return Math.trunc(numberIn(value) ?? Number.NaN);
}

/** 1, 2, 3 and so on in the shape of what is given. */
export function asLine(grid: Grid): Grid {
  const width = grid[0]?.length ?? 0;
  return grid.map((line, row) => line.map((_, column) => row * width + column + 1));
}

/** The line of least squares, as a function of x. */
export function straightLine(points: readonly (readonly [number, number])[]): (x: number) => number {
  const mean = (of: 0 | 1): number => points.reduce((sum, point) => sum + point[of], 0) / points.length;
  const [meanX, meanY] = [mean(0), mean(1)];
  const spread = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  const shared = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  const slope = spread === 0 ? 0 : shared / spread;
  return (x) => meanY + slope * (x - meanX);
}

/** What stands in these rows and columns of a block, counted from 1; all of them where none are said. */
export function inBlock(cells: Grid, rows: Grid | undefined, columns: Grid | undefined): Value {
  const pick = (row: Single, column: Single): Single => {
    if (row instanceof CellError) return row;
    if (column instanceof CellError) return column;
    return cells[wholeOf(row) - 1]?.[wholeOf(column) - 1] ?? new CellError(ErrorType.REF);
  };
  const down = rows ?? cells.map((_, row) => [row + 1]);
  const along = columns ?? [(cells[0] ?? []).map((_, column) => column + 1)];
  const height = Math.max(down.length, along.length);
  const width = Math.max(down[0]?.length ?? 0, along[0]?.length ?? 0);
  return asValue(
    Array.from({ length: height }, (_, i) =>
      Array.from({ length: width }, (_, j) => pick(inGrid(down, i, j), inGrid(along, i, j))),
    ),
  );
}
