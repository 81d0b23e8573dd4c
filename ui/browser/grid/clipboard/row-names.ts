// Blocks that put the names of rows in another order, as a table comes back that was sorted elsewhere: which row each line names, and
// how names go from row to row without two of them ever being the same. Changes nothing.

import { type Book, type Command, rowId, rowNamed, type SheetView } from '../../../../engine/index.ts';
import type { LandingRow, PastePlan, PlannedCell } from './paste-plan.ts';

/**
 * For each line the row that it names, where the lines name every row they lie on, in another order; those that name none take the
 * new rows in turn. undefined where they don't.
 */
export function rowsAsNamed(
  book: Book,
  sheet: SheetView,
  names: readonly string[],
  rows: readonly LandingRow[],
): readonly LandingRow[] | undefined {
  if (names.length !== rows.length) return undefined;
  const there = new Map(rows.flatMap((into) => ('row' in into ? [[into.row.slot, into] as const] : [])));
  const fresh = rows.filter((into) => 'fresh' in into);
  const slots = names.map((name) => (name === '' ? undefined : rowNamed(book, sheet.id, name)));
  const named = slots.map((slot) => (slot === undefined ? undefined : there.get(slot)));
  const found = named.filter((into) => into !== undefined);
  if (found.length !== there.size || new Set(found).size !== there.size) return undefined;
  if (named.every((into, line) => into === undefined || into === rows[line])) return undefined;
  return named.flatMap((into) => into ?? fresh.shift() ?? []);
}

/** The cells that give a row the name which another row has now, and which it loses by the block. */
export function passedNames(book: Book, { landing, cells }: PastePlan): readonly PlannedCell[] {
  const { sheet } = landing;
  return cells.filter(({ column, state, entry, into }) => {
    if (column.id !== sheet.key || state !== 'fits' || entry.trim() === '') return false;
    const slot = rowNamed(book, sheet.id, entry);
    return slot !== undefined && !('row' in into && into.row.slot === slot);
  });
}

/**
 * Commands that take names from rows before others are given them: each row goes by its id, until it is given its own new name with
 * the rest. `taken`: the cells that are pasted.
 */
export function freeNames(book: Book, plan: PastePlan, taken: readonly PlannedCell[]): readonly Command[] {
  const { sheet } = plan.landing;
  const { key } = sheet;
  if (key === undefined) return [];
  const renamed = new Set(
    taken.flatMap(({ column, into }) => (column.id === key && 'row' in into ? [into.row.slot] : [])),
  );
  return passedNames(book, { ...plan, cells: taken }).flatMap((cell): Command[] => {
    const slot = rowNamed(book, sheet.id, cell.entry);
    if (slot === undefined || !renamed.has(slot)) return [];
    const row = rowId(book, sheet.id, slot);
    return [{ command: 'set cell', sheet: sheet.id, row, column: key, entry: row }];
  });
}
