// Typing into a cell, clearing it, taking it back to its formula.

import { contentInWords } from '../document/cells.ts';
import { type Content, isFiniteContent } from '../document/content.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isComputed } from '../schema/schema.ts';
import type { CommandOf } from './command.ts';
import { type Draft, findColumn, findRow, findSheet } from './draft.ts';
import { rangeParts, readRange } from './ranges.ts';
import { readTyped, type TypedEntry } from './read-typed.ts';
import type { Refused } from './refusal.ts';

export { readTyped };

export function setCell(command: CommandOf<'set cell'>, draft: Draft): Refused {
  const sheet = findSheet(draft, command.sheet);
  if (!sheet.ok) return sheet.refused;
  const column = findColumn(sheet.found, command.column);
  if (!column.ok) return column.refused;
  const row = findRow(draft, sheet.found, command.row);
  if (!row.ok) return row.refused;
  return typeInto(sheet.found, command.row, column.found, command, draft);
}

/** Types into a cell of a row that is there. */
export function typeInto(
  sheet: ProgramSheet,
  row: string,
  column: ProgramColumn,
  typed: TypedEntry,
  draft: Draft,
): Refused {
  const { entry } = typed;
  const place = { sheet: sheet.id, row, column: column.id };
  if (column.role === 'made') return { ...place, why: madeWhy(sheet, column) };
  if (entry.trim() === '' && isComputed(column)) {
    put(place, null, draft);
    return undefined;
  }
  const parts = rangeParts(column, typed.entry);
  if (parts !== undefined) return typeRange(sheet, row, column, parts, typed, draft);
  const read = readTyped(column, typed, draft);
  if (!read.ok) {
    const other = otherColumnFor(sheet, column, typed, draft);
    if (other === undefined) return { ...place, why: read.why };
    put(place, null, draft);
    return typeInto(sheet, row, other, typed, draft);
  }
  const refused = sheet.schema.key === column.id ? refuseName(sheet, row, read.content, draft) : undefined;
  if (refused !== undefined) return { ...place, why: refused };
  put(place, read.content, draft);
  return undefined;
}

/** Types what is likely and how far it may be off. */
function typeRange(
  sheet: ProgramSheet,
  row: string,
  column: ProgramColumn,
  parts: readonly string[],
  typed: TypedEntry,
  draft: Draft,
): Refused {
  const place = { sheet: sheet.id, row, column: column.id };
  const read = readRange(column, parts, draft, typed);
  if (!read.ok) return { ...place, why: read.why };
  draft.perform({ op: 'cell', ...place, content: read.likely });
  draft.perform({ op: 'range', ...place, range: read.range });
  return undefined;
}

/** What is typed anew, or taken out, is known for sure, until it is typed as a range. */
function put(place: { sheet: string; row: string; column: string }, content: Content, draft: Draft): void {
  draft.perform({ op: 'cell', ...place, content });
  if (draft.document.rangeOf(place.sheet, place.row, place.column) !== undefined)
    draft.perform({ op: 'range', ...place, range: null });
}

export function madeWhy(sheet: ProgramSheet, { name }: ProgramColumn): string {
  return `${name} follows from the rows of ${sheet.name} and isn't typed: change what the rows are made from.`;
}

/** The column that takes an entry which this one can't; undefined where there is none, or it can't either. */
export function otherColumnFor(
  sheet: ProgramSheet,
  column: ProgramColumn,
  typed: TypedEntry,
  draft: Pick<Draft, 'document'>,
): ProgramColumn | undefined {
  const { orElse } = column.declaration;
  const other = orElse === undefined ? undefined : sheet.column(orElse);
  return other !== undefined && other !== column && readTyped(other, typed, draft).ok ? other : undefined;
}

/** Why a row can't be called so: it must have a name, and one of its own. */
export function refuseName(
  sheet: ProgramSheet,
  row: string | undefined,
  content: Content,
  { document }: Draft,
): string | undefined {
  const key = sheet.schema.key === undefined ? undefined : sheet.column(sheet.schema.key);
  if (key === undefined) return undefined;
  if (typeof content !== 'string' || content === '')
    return `${key.name} names the row, so it can't be empty: write a name.`;
  const taken = document.namesOf(sheet.id).find(content);
  const own = row === undefined ? undefined : document.slotOf(sheet.id, row);
  return taken.some((slot) => slot !== own)
    ? `${sheet.name} already has a row called “${content}”: choose another name.`
    : undefined;
}

export function putCell(command: CommandOf<'put cell'>, draft: Draft): Refused {
  const { command: _, ...cell } = command;
  const sheet = findSheet(draft, cell.sheet);
  if (!sheet.ok) return sheet.refused;
  const column = findColumn(sheet.found, cell.column);
  if (!column.ok) return column.refused;
  const row = findRow(draft, sheet.found, cell.row);
  if (!row.ok) return row.refused;
  if (column.found.role === 'made') return { ...place(cell), why: madeWhy(sheet.found, column.found) };
  const isName = sheet.found.schema.key === column.found.id;
  const why = isName ? refuseName(sheet.found, cell.row, cell.content, draft) : undefined;
  if (why !== undefined) return { ...place(cell), why };
  if (!isFiniteContent(cell.content)) return { ...place(cell), why: notFinite(column.found, cell.content) };
  put(place(cell), cell.content, draft);
  return undefined;
}

/** Why a content that is no finite number can't be put in a column. */
export function notFinite({ name }: ProgramColumn, content: Content): string {
  return `${contentInWords(content)} is no number that ${name} can hold.`;
}

function place({ sheet, row, column }: { sheet: string; row: string; column: string }) {
  return { sheet, row, column };
}

export function takeBack({ sheet, row, column }: CommandOf<'take back'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const of = findColumn(found.found, column);
  if (!of.ok) return of.refused;
  if (!isComputed(of.found)) return undefined;
  put({ sheet, row, column }, null, draft);
  return undefined;
}
