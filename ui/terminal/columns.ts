// Lays cells out under each other for a screen of fixed-width letters.

/** Rows of cells as lines, two blanks between columns; columns named in `right` stand to the right, as numbers do. */
export function aligned(rows: readonly (readonly string[])[], right: readonly number[]): string {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [at, cell] of row.entries()) widths[at] = Math.max(widths[at] ?? 0, lettersOf(cell));
  }
  return rows
    .map((row) => {
      const cells = row.map((cell, at) => {
        const room = ' '.repeat((widths[at] ?? 0) - lettersOf(cell));
        return right.includes(at) ? room + cell : cell + room;
      });
      return `${cells.join('  ').trimEnd()}\n`;
    })
    .join('');
}

function lettersOf(text: string): number {
  return [...text].length;
}
