// From what a person changed of the sheets now to what they had changed at another time, as operations. Pure; restoring a
// version does them.

import type { ColumnDeclaration } from '../schema/declaration.ts';
import type { OwnColumn, OwnSchema, OwnSheet } from '../schema/own.ts';
import { entry, sameData } from '../schema/records.ts';
import { columnAgain, sheetAgain } from './schema-operations.ts';
import type { Operation } from './transaction.ts';

/** What makes `from` `to`, in the order to be done. */
export function schemaDifferences(from: OwnSchema, to: OwnSchema): readonly Operation[] {
  return idsOf(from, to).flatMap((id) => {
    const [before, after] = [entry(from, id) ?? {}, entry(to, id) ?? {}];
    return sameData(before, after) ? [] : ofSheet(id, before, after);
  });
}

function ofSheet(id: string, before: OwnSheet, after: OwnSheet): readonly Operation[] {
  const { declaration } = after;
  if (declaration !== undefined) {
    const leaving: Operation = { op: 'remove sheet', sheet: id, leaving: after };
    const built = after.removed === true ? [leaving] : sheetAgain(id, after, declaration);
    // One that is there, or of which a trace is left, goes without one first.
    if (before.declaration === undefined) return after.removed === true ? [addSheet(after), ...built] : built;
    const live = before.removed === true ? [addSheet(before)] : [];
    return after.removed === true
      ? [...live, leaving]
      : [...live, { op: 'remove sheet', sheet: id, leaving: null }, ...built];
  }
  if (before.declaration !== undefined) {
    const live = before.removed === true ? [addSheet(before)] : [];
    return [...live, { op: 'remove sheet', sheet: id, leaving: null }];
  }
  return [...ofNameAndPlace(id, before, after), ...ofColumns(id, before, after), ...ofChecks(id, before, after)];
}

function addSheet({ declaration }: OwnSheet): Operation {
  if (declaration === undefined) throw new Error('A sheet of the template is not added.');
  return { op: 'add sheet', sheet: declaration };
}

function ofNameAndPlace(sheet: string, before: OwnSheet, after: OwnSheet): readonly Operation[] {
  const operations: Operation[] = [];
  if (before.name !== after.name) operations.push({ op: 'rename sheet', sheet, name: after.name ?? null });
  if (before.after !== after.after) operations.push({ op: 'move sheet', sheet, after: after.after });
  return operations;
}

function ofChecks(sheet: string, before: OwnSheet, after: OwnSheet): readonly Operation[] {
  return idsOf(before.checks, after.checks).flatMap((check): Operation[] => {
    const declaration = entry(after.checks, check);
    return sameData(entry(before.checks, check), declaration) ? [] : [{ op: 'check', sheet, check, declaration }];
  });
}

function ofColumns(sheet: string, before: OwnSheet, after: OwnSheet): readonly Operation[] {
  return idsOf(before.columns, after.columns).flatMap((column) => {
    const [was, is] = [entry(before.columns, column) ?? {}, entry(after.columns, column) ?? {}];
    return sameData(was, is) ? [] : ofColumn(sheet, column, was, is);
  });
}

function ofColumn(sheet: string, column: string, before: OwnColumn, after: OwnColumn): readonly Operation[] {
  const gone: Operation = { op: 'remove column', sheet, column, leaving: null };
  const { declaration } = after;
  if (declaration !== undefined) {
    const leaving: Operation = { ...gone, leaving: after };
    const live = before.declaration === undefined || before.removed === true ? [addColumn(sheet, declaration)] : [];
    if (after.removed === true) return [...live, leaving];
    return [...live, gone, ...columnAgain(sheet, column, after)];
  }
  if (before.declaration !== undefined) {
    return before.removed === true ? [addColumn(sheet, before.declaration), gone] : [gone];
  }
  const operations: Operation[] = [];
  if (before.formula !== after.formula)
    operations.push({ op: 'formula', sheet, column, formula: after.formula ?? null });
  if (before.name !== after.name) operations.push({ op: 'rename column', sheet, column, name: after.name ?? null });
  if (before.after !== after.after) operations.push({ op: 'move column', sheet, column, after: after.after });
  return operations;
}

function addColumn(sheet: string, column: ColumnDeclaration): Operation {
  return { op: 'add column', sheet, column };
}

function idsOf(a: object | undefined, b: object | undefined): readonly string[] {
  return [...new Set([...Object.keys(a ?? {}), ...Object.keys(b ?? {})])];
}
