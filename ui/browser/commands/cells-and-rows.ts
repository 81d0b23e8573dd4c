// What a person can do to rows and cells of a sheet besides typing: add, duplicate and remove rows, clear cells, take
// overrides back. Each is one step of undo. Menus, keys and the cards call these; they call state.ts.

import type { ColumnView, Edit, TableView } from '../../engine/index.ts';
import { tell } from './messages.ts';
import { edit, goTo, undo, workbookNow } from './state.ts';

export interface CellPlace {
  readonly table: string;
  readonly row: number;
  readonly column: string;
}

/** Adds a row with these entries and goes to it; a refusal is told and gives undefined. */
export function addRow(table: string, entries: Readonly<Record<string, string>>, column?: string): number | undefined {
  const named = Object.values(entries)[0] ?? '';
  const done = edit([{ edit: 'insert row', table, entries }], `Add ${named === '' ? 'a row' : named} to ${table}`);
  if (done.refused) return undefined;
  const row = done.inserted[0];
  if (row !== undefined) goTo(table, row, column);
  return row;
}

/** A row like this one under a name that is still free, and goes to it. Computed cells follow by themselves. */
export function duplicateRow(table: string, row: number): number | undefined {
  const workbook = workbookNow();
  const view = workbook?.table(table);
  if (workbook === undefined || view === undefined) return undefined;
  const entries: Record<string, string> = {};
  for (const column of view.columns) {
    const cell = workbook.cell(table, row, column.name);
    const own = cell.standing === 'entered' || cell.standing === 'override';
    if (column.role !== 'made' && own && cell.entry !== '') entries[column.name] = cell.entry;
  }
  if (view.key !== undefined) entries[view.key] = freeName(table, workbook.rowName(table, row));
  const done = edit([{ edit: 'insert row', table, entries }], `Duplicate ${workbook.rowName(table, row)}`);
  if (done.refused) return undefined;
  const added = done.inserted[0];
  if (added !== undefined) goTo(table, added, view.key);
  return added;
}

/** 'Bed 3' taken gives 'Bed 4', or the next number that no row has; 'Amber' gives 'Amber 2'. */
function freeName(table: string, name: string): string {
  const workbook = workbookNow();
  const numbered = /^(.*?)(\d+)$/.exec(name);
  const stem = numbered?.[1] ?? `${name} `;
  let number = numbered === null ? 2 : Number(numbered[2]) + 1;
  while (workbook?.rowOf(table, `${stem}${number}`) !== undefined) number += 1;
  return `${stem}${number}`;
}

/** Removes rows as one step and offers the way back. */
export function removeRows(table: string, rows: readonly number[]): void {
  const workbook = workbookNow();
  if (workbook === undefined || rows.length === 0) return;
  const first = rows[0];
  const what = rows.length === 1 && first !== undefined ? workbook.rowName(table, first) : `${rows.length} rows`;
  const done = edit(
    rows.map((row): Edit => ({ edit: 'remove row', table, row })),
    `Remove ${what} from ${table}`,
  );
  if (!done.refused) tell(`Removed ${what} from ${table}.`, 'done', { label: 'Undo', run: undo });
}

/** What clearing a cell means: an entry goes, an override goes back to its formula; undefined where there is nothing to clear. */
export function clearing(place: CellPlace, column: ColumnView): Edit | undefined {
  const cell = workbookNow()?.cell(place.table, place.row, place.column);
  if (cell === undefined || column.role === 'made') return undefined;
  if (cell.standing === 'override') return { edit: 'take back', ...place };
  if (cell.standing !== 'entered') return undefined;
  if (column.role === 'default') return { edit: 'take back', ...place };
  return cell.entry === '' ? undefined : { edit: 'cell', ...place, entry: '' };
}

/** Clears cells as one step. */
export function clearCells(view: TableView, places: readonly CellPlace[]): void {
  const byName = new Map(view.columns.map((column) => [column.name, column]));
  const edits = places.flatMap((place) => {
    const column = byName.get(place.column);
    const clear = column === undefined ? undefined : clearing(place, column);
    return clear === undefined ? [] : [clear];
  });
  if (edits.length === 0) return;
  edit(
    edits,
    edits.length === 1
      ? `Clear ${edits[0]?.edit === 'cell' ? edits[0].column : 'a cell'}`
      : `Clear ${edits.length} cells`,
  );
}

/** Whether something was typed over the cell's formula. */
export function canTakeBack(place: CellPlace): boolean {
  const workbook = workbookNow();
  const column = workbook?.table(place.table)?.columns.find(({ name }) => name === place.column);
  if (workbook === undefined || column === undefined) return false;
  const { standing } = workbook.cell(place.table, place.row, place.column);
  return standing === 'override' || (column.role === 'default' && standing === 'entered');
}

/** Takes typed-over cells back to their formulas, as one step. */
export function takeBack(places: readonly CellPlace[]): void {
  const over = places.filter(canTakeBack);
  if (over.length === 0) return;
  const label =
    over.length === 1 ? `Take ${over[0]?.column ?? ''} back to its formula` : `Take ${over.length} cells back`;
  edit(
    over.map((place): Edit => ({ edit: 'take back', ...place })),
    label,
  );
}
