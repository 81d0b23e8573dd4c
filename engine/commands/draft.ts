// What a command works on: the document as the commands before it left it, and the one way to change it. Operations are done
// as they are found, so that a later command sees the earlier ones; all are taken back where one is refused or fails.

import type { Document } from '../document/document.ts';
import type { Operation } from '../document/transaction.ts';
import { nearestName } from '../language/nearest.ts';
import type { Catalog } from '../language/typed.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import type { Schema } from '../schema/schema.ts';
import type { TemplateShelf } from '../schema/template.ts';
import type { Refused } from './refusal.ts';

export interface Draft {
  readonly document: Document;
  readonly templates: TemplateShelf;
  /** Does an operation at once. */
  perform(operation: Operation): void;
  /** An id that nothing has yet. */
  newId(): string;
  /** Brings sheets and columns in line with the operations so far. */
  settle(): void;
  /** The sheets as the operations so far make them, in line or not. */
  schema(): Schema;
  /** The names and types that formulas find in those. */
  catalog(): Catalog;
  /** Ids of rows inserted so far. */
  readonly inserted: string[];
}

export type Found<T> = { readonly ok: true; readonly found: T } | { readonly ok: false; readonly refused: Refused };

export function findSheet({ document }: Draft, id: string): Found<ProgramSheet> {
  return findAmong(document.program, id);
}

/** A sheet of the program, or of the schema that it is to become. */
export function findAmong<T extends { readonly name: string }>(
  among: { readonly sheets: readonly T[]; sheet(id: string): T | undefined },
  id: string,
): Found<T> {
  const sheet = among.sheet(id);
  if (sheet !== undefined) return { ok: true, found: sheet };
  const near = nearestName(
    id,
    among.sheets.map(({ name }) => name),
  );
  const why = `There is no sheet called ${id}${near === undefined ? '.' : `: did you mean ${near}?`}`;
  return { ok: false, refused: { sheet: id, why } };
}

export function findColumn(sheet: ProgramSheet, id: string): Found<ProgramColumn> {
  const column = sheet.column(id);
  if (column !== undefined) return { ok: true, found: column };
  const near = nearestName(
    id,
    sheet.columns.map(({ name }) => name),
  );
  const why = `${sheet.name} has no column called ${id}${near === undefined ? '.' : `: did you mean ${near}?`}`;
  return { ok: false, refused: { sheet: sheet.id, column: id, why } };
}

export function findRow({ document }: Draft, sheet: ProgramSheet, row: string): Found<number> {
  const slot = document.slotOf(sheet.id, row);
  if (slot !== undefined) return { ok: true, found: slot };
  return { ok: false, refused: { sheet: sheet.id, row, why: `${sheet.name} has no such row any more.` } };
}
