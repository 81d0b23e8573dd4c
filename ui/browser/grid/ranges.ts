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

/** How many rows and columns there are. */
export interface Bounds {
  readonly rows: number;
  readonly columns: number;
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

/** One step of a corner, or with `far` all the way to the edge. */
export function moved(corner: Corner, move: Move, far: boolean, bounds: Bounds): Corner {
  const { row, column } = corner;
  const lastRow = bounds.rows - 1;
  const lastColumn = bounds.columns - 1;
  switch (move) {
    case 'up':
      return clampCorner({ row: far ? 0 : row - 1, column }, bounds);
    case 'down':
      return clampCorner({ row: far ? lastRow : row + 1, column }, bounds);
    case 'left':
      return clampCorner({ row, column: far ? 0 : column - 1 }, bounds);
    case 'right':
      return clampCorner({ row, column: far ? lastColumn : column + 1 }, bounds);
    case 'row start':
      return clampCorner({ row, column: 0 }, bounds);
    case 'row end':
      return clampCorner({ row, column: lastColumn }, bounds);
    case 'sheet start':
      return clampCorner({ row: 0, column: 0 }, bounds);
    case 'sheet end':
      return clampCorner({ row: lastRow, column: lastColumn }, bounds);
  }
}

/** The rows from the first to the last that the selection touches, whole. */
export function wholeRows({ anchor, head }: Range, bounds: Bounds): Range {
  return { anchor: { row: anchor.row, column: 0 }, head: { row: head.row, column: bounds.columns - 1 } };
}

/** The columns from the first to the last that the selection touches, whole. */
export function wholeColumns({ anchor, head }: Range, bounds: Bounds): Range {
  return { anchor: { row: 0, column: anchor.column }, head: { row: bounds.rows - 1, column: head.column } };
}

/** One cell to write: where, by position, and the text. A row at or past the last is one to add. */
export interface Write {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/**
 * Where a pasted block lands: from the selection's upper left corner, repeated where the selection is a whole multiple of
 * it, over columns that exist. Rows may run past the end (`row` counts on); short rows of the block write nothing there.
 */
export function pasteWrites(block: readonly (readonly string[])[], into: Rectangle, columns: number): readonly Write[] {
  const height = block.length;
  const width = Math.max(0, ...block.map((row) => row.length));
  if (height === 0 || width === 0) return [];
  const rows = into.bottom - into.top + 1;
  const across = into.right - into.left + 1;
  const down = rows % height === 0 ? rows : height;
  const over = across % width === 0 ? across : width;
  const writes: Write[] = [];
  for (let i = 0; i < down; i += 1) {
    for (let j = 0; j < over; j += 1) {
      const column = into.left + j;
      const text = block[i % height]?.[j % width];
      if (column < columns && text !== undefined) writes.push({ row: into.top + i, column, text });
    }
  }
  return writes;
}

/** Fill down: every row below the rectangle's first takes the first row's texts. */
export function fillDownWrites(area: Rectangle, textAt: (cell: Corner) => string): readonly Write[] {
  return cellsOf(area)
    .filter(({ row }) => row > area.top)
    .map(({ row, column }) => ({ row, column, text: textAt({ row: area.top, column }) }));
}
