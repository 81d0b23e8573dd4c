// What can be picked in a cell: the words of a choice, yes or no, or the rows of the sheet that a link points to. The
// entry box lists them; nothing here is drawn.

import { type Book, type ColumnView, rowName, rows } from '../../../engine/index.ts';

/** The texts to pick from, in order; undefined where the cell is typed freely. */
export function optionsFor(book: Book, column: ColumnView): readonly string[] | undefined {
  const type = column.type;
  switch (type?.kind) {
    case 'choice':
      return type.options;
    case 'yesno':
      return ['yes', 'no'];
    case 'link':
      return Array.from(rows(book, type.table), (row) => rowName(book, type.table, row)).filter((name) => name !== '');
    default:
      return undefined;
  }
}

/** Those that hold the typed text: the same first, then those that begin with it, then the others, each in its order. */
export function matching(options: readonly string[], typed: string): readonly string[] {
  const wanted = typed.trim().toLowerCase();
  if (wanted === '') return options;
  const rank = (option: string): number => {
    const text = option.toLowerCase();
    if (text === wanted) return 0;
    if (text.startsWith(wanted)) return 1;
    if (text.split(/\s+/).some((word) => word.startsWith(wanted))) return 2;
    return text.includes(wanted) ? 3 : 4;
  };
  return options
    .map((option, index) => ({ option, index, rank: rank(option) }))
    .filter((item) => item.rank < 4)
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map((item) => item.option);
}
