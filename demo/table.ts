// Rows written as a small table: a line of column names, then a line a row, cells parted by bars, as a person would type
// them. Empty cells are left out. The demo's files call it.

export type Row = Readonly<Record<string, string>>;

const cellsOf = (line: string): string[] => line.split('|').map((cell) => cell.trim());

export function table(head: string, ...lines: readonly string[]): readonly Row[] {
  const names = cellsOf(head);
  return lines.map((line) => {
    const cells = cellsOf(line);
    return Object.fromEntries(names.map((name, index) => [name, cells[index] ?? '']).filter(([, cell]) => cell !== ''));
  });
}
