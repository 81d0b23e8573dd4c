// What a person can do to cells besides typing: clear them, take them back to their formulas, take a sheet's own formula back.
// Each is one step of undo. The table of commands, fields and the formula line call these.

import { type Book, type Command, cellView, message, sheetView } from '../../../engine/index.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import type { CellAt } from '../store/selection.ts';
import { columnAt } from '../store/sheets.ts';
import { workbookNow } from '../store/workbook.ts';

/** A cell as commands name it. */
function placeOf({ sheet, row, column }: CellAt) {
  return { sheet, row: row.id, column };
}

/** What clearing a cell means: an entry goes, an override goes back to its formula; undefined where there is nothing to clear. */
function clearing(book: Book, cell: CellAt): Command | undefined {
  if (canTakeBack(book, cell)) return { command: 'take back', ...placeOf(cell) };
  const { origin, entry } = cellView(book, cell.sheet, cell.row.slot, cell.column);
  return origin === 'entered' && entry !== '' ? { command: 'set cell', ...placeOf(cell), entry: '' } : undefined;
}

/** Clears cells as one step; what can't be empty is left, and said. */
export function clearCells(cells: readonly CellAt[]): void {
  const book = workbookNow();
  if (book === undefined) return;
  const needed = new Set<string>();
  const cleared = cells.flatMap((cell) => {
    const command = clearing(book, cell);
    const column = columnAt(book, cell);
    if (command === undefined || column === undefined) return [];
    const stays = command.command === 'set cell' && (column.required || sheetView(book, cell.sheet)?.key === column.id);
    if (stays) needed.add(column.name);
    return stays ? [] : [{ column, command }];
  });
  const left = [...needed].join(', ');
  const [first] = cleared;
  if (first === undefined) {
    if (left !== '') tell(`${left} can’t be empty: remove the row, or type another.`, 'refusal');
    return;
  }
  const count = cleared.length;
  const said = count === 1 ? message('clear cell', { column: first.column.name }) : message('clear cells', { count });
  const done = change(
    cleared.map(({ command }) => command),
    said,
  );
  if (!done.refused && left !== '') {
    tell(`Cleared ${count === 1 ? 'a cell' : `${count} cells`}. ${left} can’t be empty and stays.`, 'done', UNDO);
  }
}

/** Whether something was typed over the cell's formula. */
export function canTakeBack(book: Book, cell: CellAt): boolean {
  const { origin } = cellView(book, cell.sheet, cell.row.slot, cell.column);
  return origin === 'override' || (origin === 'entered' && columnAt(book, cell)?.role === 'default');
}

/** Takes typed-over cells back to their formulas, as one step. */
export function takeBack(cells: readonly CellAt[]): void {
  const book = workbookNow();
  if (book === undefined) return;
  const over = cells.filter((cell) => canTakeBack(book, cell));
  const [first] = over;
  if (first === undefined) return;
  const said =
    over.length === 1
      ? message('take back', { column: columnAt(book, first)?.name ?? '' })
      : message('take back cells', { count: over.length });
  change(
    over.map((cell): Command => ({ command: 'take back', ...placeOf(cell) })),
    said,
  );
}

/** Gives a column the formula back that its sheet came with. */
export function takeTemplateFormula(sheet: string, column: string): void {
  const book = workbookNow();
  const found = book === undefined ? undefined : columnAt(book, { sheet, column });
  if (found?.templateFormula === undefined) return;
  change(
    [{ command: 'set formula', sheet, column, formula: null }],
    message('template formula', { column: found.name }),
  );
}
