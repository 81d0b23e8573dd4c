// Where the cells of a table stand when some reach over several columns or rows. Pure; the block reads HTML tables with it.

export interface Spanning<T> {
  readonly cell: T;
  /** Columns that it reaches over, its own among them. */
  readonly across: number;
  /** Rows that it reaches over, its own among them; 0: all that follow. */
  readonly down: number;
}

/** Line by line what stands in each column: a cell where it begins, `empty` wherever else it reaches. */
export function spreadOut<T>(rows: readonly (readonly Spanning<T>[])[], empty: T): readonly (readonly T[])[] {
  /** For each column, how many rows more a cell above reaches over. */
  let covered: readonly number[] = [];
  return rows.map((cells, at) => {
    const line: T[] = [];
    const below = covered.map((rest) => Math.max(0, rest - 1));
    for (const { cell, across, down } of cells) {
      while ((covered[line.length] ?? 0) > 0) line.push(empty);
      const reach = down === 0 ? rows.length - at : down;
      for (let over = 0; over < across; over += 1) {
        below[line.length] = Math.max(below[line.length] ?? 0, reach - 1);
        line.push(over === 0 ? cell : empty);
      }
    }
    const last = covered.findLastIndex((rest) => rest > 0);
    while (line.length <= last) line.push(empty);
    covered = below;
    return line;
  });
}
