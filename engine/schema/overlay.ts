// Lays what a person changed over a template: names, formulas and places of the template's columns, columns and sheets of
// their own. Total: what names something that the template no longer has is passed over and stays in the own changes, and
// what is called as something else is stands under another name.
// Called by lay-over.ts.

import type { CheckDeclaration, ColumnDeclaration, SheetDeclaration } from './declaration.ts';
import { distinctNames } from './distinct-names.ts';
import type { OwnColumn, OwnSchema, OwnSheet } from './own.ts';
import { inPlace, type Place } from './places.ts';
import { entry } from './records.ts';
import { type CheckSchema, type ColumnSchema, madeColumns, Schema, type SheetSchema } from './schema.ts';
import type { Template } from './template.ts';

/** The schema of a template, whose sheets are given with formulas as written or in kept form, with own changes. */
export function laidOver(template: Template, own: OwnSchema, sheets: readonly SheetDeclaration[]): Schema {
  const gone = new Map<string, string>();
  const ownSheets = Object.entries(own).flatMap(([id, sheet]): Placed<SheetSchema>[] => {
    const { declaration } = sheet;
    if (declaration === undefined) return [];
    if (sheet.removed === true) gone.set(id, sheet.name ?? declaration.name);
    if (sheet.removed === true || sheets.some((one) => one.id === id)) return [];
    return [{ thing: sheetOf(declaration, sheet, true, gone), id, after: sheet.after }];
  });
  const templateSheets = sheets.map((declaration): Placed<SheetSchema> => {
    const changes = entry(own, declaration.id) ?? {};
    return {
      thing: sheetOf(declaration, changes, false, gone),
      id: declaration.id,
      after: changes.after,
    };
  });
  const placed = inPlace([...templateSheets, ...ownSheets]).map(({ thing }) => thing);
  const named = distinctNames(placed, ({ id, own: isOwn }) => isOwn || entry(own, id)?.name !== undefined);
  return new Schema(template, own, named, gone);
}

function sheetOf(declaration: SheetDeclaration, own: OwnSheet, isOwn: boolean, gone: Map<string, string>): SheetSchema {
  const { id, rows, key, question, about, cautions } = declaration;
  const made = madeColumns(rows).map(({ id: columnId, name, type }): ColumnSchema => {
    const column: ColumnDeclaration = { id: columnId, name, type, group: '', note: '', role: 'entered', formula: '' };
    return {
      id: columnId,
      name: entry(own.columns, columnId)?.name ?? name,
      role: 'made',
      declaration: column,
      own: false,
      formula: '',
      templateFormula: undefined,
    };
  });
  return {
    id,
    name: own.name ?? declaration.name,
    own: isOwn,
    question,
    about,
    rows,
    key,
    columns: distinctNames(
      [...made, ...columnsOf(declaration, own, gone)],
      ({ id: columnId, own: isOwnColumn }) => isOwnColumn || entry(own.columns, columnId)?.name !== undefined,
    ),
    checks: checksOf(declaration.checks, own, isOwn),
    views: declaration.views ?? [],
    cautions,
  };
}

function columnsOf(
  { id: sheet, columns }: SheetDeclaration,
  own: OwnSheet,
  gone: Map<string, string>,
): readonly ColumnSchema[] {
  const placed = columns.map((declaration): Placed<ColumnSchema> => {
    const changes = entry(own.columns, declaration.id) ?? {};
    return { thing: columnOf(declaration, changes, false), id: declaration.id, after: changes.after };
  });
  for (const [id, changes] of Object.entries(own.columns ?? {})) {
    const { declaration } = changes;
    if (declaration === undefined || columns.some((column) => column.id === id)) continue;
    if (changes.removed === true) gone.set(`${sheet}/${id}`, changes.name ?? declaration.name);
    else placed.push({ thing: columnOf(declaration, changes, true), id, after: changes.after });
  }
  return inPlace(placed).map(({ thing }) => thing);
}

function columnOf(declaration: ColumnDeclaration, changes: OwnColumn, own: boolean): ColumnSchema {
  const { id, name, role, formula } = declaration;
  return {
    id,
    name: changes.name ?? name,
    role,
    declaration,
    own,
    formula: changes.formula ?? formula,
    templateFormula: own || changes.formula === undefined ? undefined : formula,
  };
}

function checksOf(checks: readonly CheckDeclaration[], own: OwnSheet, isOwn: boolean): readonly CheckSchema[] {
  const kept = checks.flatMap((check): CheckSchema[] => {
    const changed = entry(own.checks, check.id);
    if (changed === null) return [];
    return [{ ...(changed ?? check), own: isOwn || changed !== undefined }];
  });
  const added = Object.entries(own.checks ?? {}).flatMap(([id, check]): CheckSchema[] =>
    check === null || checks.some((one) => one.id === id) ? [] : [{ ...check, own: true }],
  );
  return [...kept, ...added];
}

interface Placed<T> extends Place {
  readonly thing: T;
}
