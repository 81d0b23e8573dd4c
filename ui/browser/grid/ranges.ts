// The geometry of a selection of cells, by position as displayed: which rectangle it covers, how keys move and stretch
// it, where a pasted block lands. Pure; the grid's range layer calls it.

export interface Corner {
  readonly row: number;
  readonly column: number;
}

/** From where the selection began (the cell with the focus ring) to where it was stretched. */
export interface Range {
  readonly anchor: Corner;
  readonly head: Corner;
}

/** All four inclusive. */
export interface Rectangle {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** How many rows and columns there are to walk in, and how many of the rows hold data: the empty one at the end doesn't. */
export interface Bounds {
  readonly rows: number;
  readonly columns: number;
  readonly filledRows: number;
}

export function rangeOfCell(cell: Corner): Range {
  return { anchor: cell, head: cell };
}

export function rectangleOf({ anchor, head }: Range): Rectangle {
  return {
    top: Math.min(anchor.row, head.row),
    bottom: Math.max(anchor.row, head.row),
    left: Math.min(anchor.column, head.column),
    right: Math.max(anchor.column, head.column),
  };
}

export function contains(area: Rectangle, { row, column }: Corner): boolean {
  return row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
}

export function cellCount(area: Rectangle): number {
  return (area.bottom - area.top + 1) * (area.right - area.left + 1);
}

/** Every corner of the rectangle, row by row. */
export function cellsOf(area: Rectangle): readonly Corner[] {
  const cells: Corner[] = [];
  for (let row = area.top; row <= area.bottom; row += 1) {
    for (let column = area.left; column <= area.right; column += 1) cells.push({ row, column });
  }
  return cells;
}

export function clampCorner({ row, column }: Corner, bounds: Bounds): Corner {
  return {
    row: Math.max(0, Math.min(row, bounds.rows - 1)),
    column: Math.max(0, Math.min(column, bounds.columns - 1)),
  };
}

export type Move = 'up' | 'down' | 'left' | 'right' | 'row start' | 'row end' | 'sheet start' | 'sheet end';

const STEPS: Readonly<Record<'up' | 'down' | 'left' | 'right', Corner>> = {
  up: { row: -1, column: 0 },
  down: { row: 1, column: 0 },
  left: { row: 0, column: -1 },
  right: { row: 0, column: 1 },
};

/** One step of a corner, or to an end of its row or of the data. */
export function moved(corner: Corner, move: Move, bounds: Bounds): Corner {
  const { row, column } = corner;
  switch (move) {
    case 'row start':
      return clampCorner({ row, column: 0 }, bounds);
    case 'row end':
      return clampCorner({ row, column: bounds.columns - 1 }, bounds);
    case 'sheet start':
      return clampCorner({ row: 0, column: 0 }, bounds);
    case 'sheet end':
      return clampCorner({ row: lastRow(bounds), column: bounds.columns - 1 }, bounds);
    default:
      return clampCorner({ row: row + STEPS[move].row, column: column + STEPS[move].column }, bounds);
  }
}

/** So many rows up or down: a page of them. */
export function paged(corner: Corner, by: number, bounds: Bounds): Corner {
  return clampCorner({ row: corner.row + by, column: corner.column }, bounds);
}

/**
 * As far as the data goes: to the end of the filled cells that it stands in, from the last of them to the next that is filled,
 * and where nothing more is filled to the last row or column that holds data.
 */
export function movedFar(
  corner: Corner,
  move: keyof typeof STEPS,
  bounds: Bounds,
  isFilled: (cell: Corner) => boolean,
): Corner {
  const step = STEPS[move];
  const next = (at: Corner): Corner => ({ row: at.row + step.row, column: at.column + step.column });
  const isThere = ({ row, column }: Corner): boolean =>
    row >= 0 && row <= lastRow(bounds) && column >= 0 && column < bounds.columns;
  let at = corner;
  if (!isThere(next(at))) return clampCorner(at, { ...bounds, rows: Math.max(bounds.filledRows, corner.row + 1) });
  const inRun = isThere(at) && isFilled(at) && isFilled(next(at));
  at = next(at);
  while (isThere(next(at)) && (inRun ? isFilled(next(at)) : !isFilled(at))) at = next(at);
  return at;
}

function lastRow({ rows, filledRows }: Bounds): number {
  return (filledRows === 0 ? rows : filledRows) - 1;
}

/** The rows from the first to the last that the selection touches, whole. */
export function wholeRows({ anchor, head }: Range, bounds: Bounds): Range {
  return { anchor: { row: anchor.row, column: 0 }, head: { row: head.row, column: bounds.columns - 1 } };
}

/** The columns from the first to the last that the selection touches, whole as far as the data goes. */
export function wholeColumns({ anchor, head }: Range, bounds: Bounds): Range {
  return { anchor: { row: 0, column: anchor.column }, head: { row: lastRow(bounds), column: head.column } };
}

/** Everything that holds data. */
export function wholeSheet(bounds: Bounds): Range {
  return { anchor: { row: 0, column: 0 }, head: { row: lastRow(bounds), column: bounds.columns - 1 } };
}

/** Whether a range is nothing but one cell. */
export function isOneCell({ anchor, head }: Range): boolean {
  return anchor.row === head.row && anchor.column === head.column;
}

/** Whole rows as they are selected by their handles. */
export function coversRows(range: Range, bounds: Bounds): boolean {
  const { left, right } = rectangleOf(range);
  return left === 0 && right === bounds.columns - 1;
}
