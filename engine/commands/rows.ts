// Adding, removing and moving rows of entered sheets.

import { isFiniteContent } from '../document/content.ts';
import { positionsBetween } from '../document/positions.ts';
import { byPlace } from '../document/row-places.ts';
import type { RowRecord } from '../document/sheet-rows.ts';
import { typedLinksTo } from '../document/typed-links.ts';
import type { ProgramSheet } from '../schema/compile.ts';
import { ROW_ID } from '../schema/id.ts';
import { isEnteredSheet } from '../schema/schema.ts';
import { madeWhy, notFinite, readTyped, refuseName, typeInto } from './cells.ts';
import type { CommandOf } from './command.ts';
import { type Draft, findColumn, findRow, findSheet } from './draft.ts';
import type { Refused } from './refusal.ts';

export function insertRow(command: CommandOf<'insert row'>, draft: Draft): Refused {
  const { sheet: sheetId, entries, before, plain } = command;
  const found = findSheet(draft, sheetId);
  if (!found.ok) return found.refused;
  const sheet = found.found;
  if (!isEnteredSheet(sheet.schema)) return { sheet: sheetId, why: notByHand(sheet, 'added') };
  const { key } = sheet.schema;
  const column = key === undefined ? undefined : sheet.column(key);
  if (column !== undefined) {
    const read = readTyped(column, { entry: entries[column.id] ?? '' }, draft);
    const why = refuseName(sheet, undefined, read.ok ? read.content : null, draft);
    if (why !== undefined) return { sheet: sheetId, column: column.id, why };
  }
  const row = draft.newId();
  const [at = ''] = makePlacesBefore(sheet, before, 1, draft);
  draft.perform({ op: 'insert row', sheet: sheetId, row, at });
  for (const [name, entry] of Object.entries(entries)) {
    if (entry.trim() === '') continue;
    const into = findColumn(sheet, name);
    const refused = into.ok
      ? typeInto(sheet, row, into.found, plain === true ? { entry, plain } : { entry }, draft)
      : into.refused;
    if (refused !== undefined) return refused;
  }
  draft.inserted.push(row);
  return undefined;
}

/** Contents are put as they stand, but every row must have a name of its own. */
export function putRows({ sheet: sheetId, columns, rows }: CommandOf<'put rows'>, draft: Draft): Refused {
  const found = findSheet(draft, sheetId);
  if (!found.ok) return found.refused;
  const sheet = found.found;
  if (!isEnteredSheet(sheet.schema)) return { sheet: sheetId, why: notByHand(sheet, 'added') };
  for (const [i, id] of columns.entries()) {
    const column = findColumn(sheet, id);
    if (!column.ok) return column.refused;
    if (column.found.role === 'made') return { sheet: sheetId, column: id, why: madeWhy(sheet, column.found) };
    const odd = rows.find(({ cells }) => !isFiniteContent(cells[i] ?? null));
    if (odd !== undefined)
      return { sheet: sheetId, row: odd.row, column: id, why: notFinite(column.found, odd.cells[i] ?? null) };
  }
  const records = draft.document.rowsOf(sheetId);
  const there = rows.find(({ row }) => records.slotOf(row) !== undefined);
  if (there !== undefined) return { sheet: sheetId, row: there.row, why: `${sheet.name} already has this row.` };
  const odd = rows.find(({ row }) => !ROW_ID.test(row));
  if (odd !== undefined) return { sheet: sheetId, why: `“${odd.row}” can't be the id of a row.` };
  const unnamed = refuseNames(sheet, columns, rows, draft);
  if (unnamed !== undefined) return unnamed;
  const places = positionsBetween(records.lastAt, undefined, rows.length);
  // One that was taken out comes back with what it held, unless it is told otherwise.
  const known = rows.filter(({ row }) => records.record(row) !== undefined);
  draft.perform({
    op: 'insert rows',
    sheet: sheetId,
    columns,
    rows: rows.map(({ row, cells }, i) => ({ row, at: places[i] ?? '', cells })),
  });
  for (const { row, cells } of known) {
    for (const [i, column] of columns.entries())
      draft.perform({ op: 'cell', sheet: sheetId, row, column, content: cells[i] ?? null });
  }
  for (const { row } of rows) draft.inserted.push(row);
  return undefined;
}

function refuseNames(
  sheet: ProgramSheet,
  columns: readonly string[],
  rows: CommandOf<'put rows'>['rows'],
  draft: Draft,
): Refused {
  const { key } = sheet.schema;
  if (key === undefined) return undefined;
  const at = columns.indexOf(key);
  const seen = new Set<string>();
  for (const { row, cells } of rows) {
    const name = cells[at] ?? null;
    const twice = typeof name === 'string' && seen.has(name.toLowerCase());
    const why = twice ? `Two of the new rows are called “${name}”.` : refuseName(sheet, undefined, name, draft);
    if (why !== undefined) return { sheet: sheet.id, row, column: key, why };
    seen.add(String(name).toLowerCase());
  }
  return undefined;
}

function notByHand({ name }: ProgramSheet, what: string): string {
  return `Rows of ${name} follow from other sheets; none can be ${what} by hand.`;
}

/**
 * Places for so many rows before one of a sheet, or after all of them. Rows may stand at one place, where two people put one in at
 * once or an improved template ships one: the later of them then move on a little, since there is no place between.
 */
function makePlacesBefore(
  sheet: ProgramSheet,
  before: string | undefined,
  count: number,
  draft: Draft,
  moving: ReadonlySet<string> = new Set(),
): readonly string[] {
  const rows = draft.document.rowsOf(sheet.id);
  const record = before === undefined ? undefined : rows.record(before);
  if (record === undefined) return positionsBetween(rows.lastAt, undefined, count);
  const there = [...rows.records()].filter(({ slot, id }) => slot >= 0 && !moving.has(id)).sort(byPlace);
  const at = there.findIndex(({ id }) => id === before);
  const last = there[at - 1]?.at ?? '';
  if (last !== record.at) return positionsBetween(last, record.at, count);
  const together = there.slice(at).filter((one) => one.at === last);
  const places = positionsBetween(last, there[at + together.length]?.at, count + together.length);
  together.forEach(({ id }, i) => {
    draft.perform({ op: 'move row', sheet: sheet.id, row: id, at: places[count + i] ?? '' });
  });
  return places.slice(0, count);
}

/** A row that another names stays, unless such links may wait aside. */
export function removeRows({ sheet: sheetId, rows, linksAside }: CommandOf<'remove rows'>, draft: Draft): Refused {
  const found = findSheet(draft, sheetId);
  if (!found.ok) return found.refused;
  const sheet = found.found;
  if (!isEnteredSheet(sheet.schema)) return { sheet: sheetId, why: notByHand(sheet, 'removed') };
  const slots = new Map<number, string>();
  for (const row of rows) {
    const slot = findRow(draft, sheet, row);
    if (!slot.ok) return slot.refused;
    slots.set(slot.found, row);
  }
  if (linksAside !== true) {
    const [user] = typedLinksTo(draft.document, sheet, (slot) => slots.has(slot));
    if (user !== undefined) {
      const { document } = draft;
      const where = `${user.sheet.name} / ${nameOf(user.sheet, user.slot, document)} / ${user.column.name}`;
      const why = `${nameOf(sheet, user.named, document)} is still named in ${where}: change that first, then remove it.`;
      return { sheet: sheetId, row: slots.get(user.named) ?? '', why };
    }
  }
  if (rows.length > 1) draft.perform({ op: 'remove rows', sheet: sheetId, rows: [...slots.values()] });
  else for (const row of rows) draft.perform({ op: 'remove row', sheet: sheetId, row });
  return undefined;
}

function nameOf(sheet: ProgramSheet, slot: number, document: Draft['document']): string {
  const key = sheet.schema.key === undefined ? undefined : sheet.column(sheet.schema.key);
  const name = key === undefined ? undefined : document.typedAt(key, slot);
  return typeof name === 'string' ? name : `row ${document.frame.rows(sheet.table).indexOf(slot) + 1}`;
}

export function moveRows({ sheet: sheetId, rows, before }: CommandOf<'move rows'>, draft: Draft): Refused {
  const found = findSheet(draft, sheetId);
  if (!found.ok) return found.refused;
  const sheet = found.found;
  if (!isEnteredSheet(sheet.schema)) return { sheet: sheetId, why: notByHand(sheet, 'moved') };
  if (before !== undefined && rows.includes(before)) return undefined;
  const records: RowRecord[] = [];
  for (const row of rows) {
    const slot = findRow(draft, sheet, row);
    if (!slot.ok) return slot.refused;
    const record = draft.document.rowsOf(sheetId).record(row);
    if (record !== undefined) records.push(record);
  }
  const places = makePlacesBefore(sheet, before, records.length, draft, new Set(rows));
  records.sort(byPlace).forEach(({ id }, i) => {
    draft.perform({ op: 'move row', sheet: sheetId, row: id, at: places[i] ?? '' });
  });
  return undefined;
}

export function keepRow({ sheet, row }: CommandOf<'keep row'>, draft: Draft): Refused {
  // Of a row that is not marked there is nothing to say, which another who takes it out would hear as a wish to keep it.
  if (draft.document.rowsOf(sheet).record(row)?.broughtBack === true) draft.perform({ op: 'keep row', sheet, row });
  return undefined;
}
