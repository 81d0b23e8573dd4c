// What a person can do to rows of a sheet besides typing: add, duplicate, remove. Each is one step of undo. The table of
// commands and the cards call these.

import {
  type Book,
  type Command,
  cellView,
  message,
  rowName,
  rowNamed,
  rowWithId,
  type SheetView,
  sheetView,
} from '../../../engine/index.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { goTo, type RowAt, rowAt } from '../store/selection.ts';
import { workbookNow } from '../store/workbook.ts';

/** Adds a row with these entries by column and goes to it; a refusal is told and gives undefined. */
export function addRow(sheet: SheetView, entries: Readonly<Record<string, string>>): string | undefined {
  const done = change([{ command: 'insert row', sheet: sheet.id, entries }], addedWords(sheet, entries));
  const row = done.refused ? undefined : done.inserted[0];
  if (row !== undefined) goTo(sheet.id, row);
  return row;
}

export function addedWords({ name: sheet }: SheetView, entries: Readonly<Record<string, string>>) {
  const [row = ''] = Object.values(entries);
  return row === '' ? message('add unnamed row', { sheet }) : message('add row', { row, sheet });
}

/** A row like this one under a name that is still free, and goes to it. Computed cells follow by themselves. */
export function duplicateRow(sheetId: string, id: string): void {
  const book = workbookNow();
  const sheet = book === undefined ? undefined : sheetView(book, sheetId);
  const row = book === undefined ? undefined : rowAt(book, sheetId, id);
  if (book === undefined || sheet === undefined || row === undefined) return;
  const name = rowName(book, sheetId, row.slot);
  const command: Command = { command: 'insert row', sheet: sheetId, entries: copied(book, sheet, row) };
  const done = change([command], message('duplicate row', { row: name }));
  const added = done.refused ? undefined : done.inserted[0];
  if (added !== undefined) goTo(sheetId, added, sheet.key);
}

/** What was typed in a row, as typed, with a name of its own. */
function copied(book: Book, sheet: SheetView, { slot }: RowAt): Readonly<Record<string, string>> {
  const entries: Record<string, string> = {};
  for (const { id, role } of sheet.columns) {
    const { origin, entry } = cellView(book, sheet.id, slot, id);
    const typed = origin === 'entered' || origin === 'override';
    if (role !== 'made' && typed && entry !== '') entries[id] = entry;
  }
  if (sheet.key !== undefined) entries[sheet.key] = freeName(book, sheet.id, rowName(book, sheet.id, slot));
  return entries;
}

/** 'Bed 3' taken gives 'Bed 4', or the next number that no row has; 'Amber' gives 'Amber 2'. */
function freeName(book: Book, sheet: string, name: string): string {
  const numbered = /^(.*?)(\d+)$/.exec(name);
  const stem = numbered?.[1] ?? `${name} `;
  let number = numbered === null ? 2 : Number(numbered[2]) + 1;
  while (rowNamed(book, sheet, `${stem}${number}`) !== undefined) number += 1;
  return `${stem}${number}`;
}

/** Removes rows as one step and offers the way back. */
export function removeRows(sheet: SheetView, ids: readonly string[]): void {
  const book = workbookNow();
  const [first] = ids;
  if (book === undefined || first === undefined) return;
  const slot = rowWithId(book, sheet.id, first);
  const row = slot === undefined ? '' : rowName(book, sheet.id, slot);
  const one = ids.length === 1;
  const said = one
    ? message('remove row', { row, sheet: sheet.name })
    : message('remove rows', { count: ids.length, sheet: sheet.name });
  const done = change([{ command: 'remove rows', sheet: sheet.id, rows: ids }], said);
  if (!done.refused) tell(`Removed ${one ? row : `${ids.length} rows`} from ${sheet.name}.`, 'done', UNDO);
}
