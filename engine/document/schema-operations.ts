// The operations that change what sheets and columns there are, how they are called and worked out: each a change of a
// person's own schema, with its inverse. Pure; reshaping.ts compiles what comes of them.

import type { ColumnDeclaration, SheetDeclaration } from '../schema/declaration.ts';
import { type OwnColumn, type OwnSchema, type OwnSheet, withCheck, withColumn, withSheet } from '../schema/own.ts';
import { entry, withField } from '../schema/records.ts';
import type { Template, TemplateShelf } from '../schema/template.ts';
import type { Operation } from './transaction.ts';

const KINDS = [
  'formula',
  'add column',
  'remove column',
  'rename column',
  'move column',
  'add sheet',
  'remove sheet',
  'rename sheet',
  'move sheet',
  'check',
  'template',
] as const;

export type SchemaOperation = Extract<Operation, { readonly op: (typeof KINDS)[number] }>;

export function isSchemaOperation(operation: Operation): operation is SchemaOperation {
  return KINDS.some((kind) => kind === operation.op);
}

export interface SchemaState {
  readonly own: OwnSchema;
  readonly template: Template;
}

export interface SchemaDone extends SchemaState {
  readonly inverse: readonly Operation[];
}

/**
 * What the schema becomes and what takes it back; undefined where the operation finds nothing to change. `isOfOthers` says of a
 * thing whether another than whoever does this changed it last.
 */
export function applySchema(
  operation: SchemaOperation,
  state: SchemaState,
  templates: TemplateShelf,
  isOfOthers: IsOfOthers,
): SchemaDone | undefined {
  const { own, template } = state;
  const done = (next: OwnSchema, ...inverse: readonly Operation[]): SchemaDone => ({ own: next, template, inverse });
  switch (operation.op) {
    case 'formula': {
      const { sheet, column, formula } = operation;
      const before = ownColumn(own, sheet, column)?.formula ?? null;
      const next = withColumn(own, sheet, column, (one) => withField(one, 'formula', formula ?? undefined));
      return done(next, { ...operation, formula: before });
    }
    case 'add column':
      return addColumn(operation, state, done);
    case 'remove column': {
      const { sheet, column } = operation;
      const before = ownColumn(own, sheet, column);
      if (before?.declaration === undefined) return undefined;
      // Its trace goes too where it was never there.
      if (before.removed === true && operation.sparesOthers !== true) return undefined;
      const { leaving = { ...before, removed: true } } = operation;
      const spared = operation.sparesOthers === true ? ofOthersInColumn(sheet, column, before, isOfOthers) : {};
      const next = withColumn(own, sheet, column, () => ({ ...leaving, ...spared }));
      if (before.removed === true) return done(next, ...columnAgain(sheet, column, before));
      const [added, ...changes] = addedAgain(sheet, before, before.declaration);
      return done(next, added, ...(operation.leaving === undefined ? [] : changes));
    }
    case 'rename column': {
      const { sheet, column, name } = operation;
      const before = ownColumn(own, sheet, column)?.name ?? null;
      const next = withColumn(own, sheet, column, (one) => withField(one, 'name', name ?? undefined));
      return done(next, { ...operation, name: before });
    }
    case 'move column': {
      const { sheet, column, after } = operation;
      const before = ownColumn(own, sheet, column)?.after;
      const next = withColumn(own, sheet, column, (one) => withField(one, 'after', after));
      return done(next, { op: 'move column', sheet, column, ...(before === undefined ? {} : { after: before }) });
    }
    case 'add sheet':
      return addSheet(operation, state, done);
    case 'remove sheet': {
      const before = entry(own, operation.sheet);
      if (before?.declaration === undefined) return undefined;
      if (before.removed === true && operation.sparesOthers !== true) return undefined;
      const { leaving = { ...before, removed: true } } = operation;
      const spared = operation.sparesOthers === true ? ofOthersInSheet(operation.sheet, before, isOfOthers) : {};
      const next = withSheet(own, operation.sheet, () => ({ ...leaving, ...spared }));
      const [added, ...changes] = sheetAgain(operation.sheet, before, before.declaration);
      if (before.removed === true) return done(next, added, ...changes, { ...operation, leaving: before });
      return done(next, added, ...(operation.leaving === undefined ? [] : changes));
    }
    case 'rename sheet': {
      const { sheet, name } = operation;
      const before = entry(own, sheet)?.name ?? null;
      return done(
        withSheet(own, sheet, (one) => withField(one, 'name', name ?? undefined)),
        { ...operation, name: before },
      );
    }
    case 'move sheet': {
      const { sheet, after } = operation;
      const before = entry(own, sheet)?.after;
      const next = withSheet(own, sheet, (one) => withField(one, 'after', after));
      return done(next, { op: 'move sheet', sheet, ...(before === undefined ? {} : { after: before }) });
    }
    case 'check': {
      const { sheet, check, declaration } = operation;
      const before = entry(entry(own, sheet)?.checks, check);
      const inverse: Operation = {
        op: 'check',
        sheet,
        check,
        ...(before === undefined ? {} : { declaration: before }),
      };
      return done(withCheck(own, sheet, check, declaration), inverse);
    }
    case 'template': {
      const wanted = templateOf(template.name, operation.version, templates);
      if (wanted === undefined || wanted === template) return undefined;
      return { own, template: wanted, inverse: [{ op: 'template', version: template.version, rows: 'stay' }] };
    }
  }
}

type Done = (next: OwnSchema, ...inverse: readonly Operation[]) => SchemaDone;

function ownColumn(own: OwnSchema, sheet: string, column: string): OwnColumn | undefined {
  return entry(entry(own, sheet)?.columns, column);
}

/** A column that was taken out and is still known comes back as it is known, with what others changed of it meanwhile. */
function addColumn(
  { sheet, column, after }: Extract<SchemaOperation, { readonly op: 'add column' }>,
  { own, template }: SchemaState,
  done: Done,
): SchemaDone | undefined {
  const before = ownColumn(own, sheet, column.id);
  const ofTemplate = template.sheets.some(
    ({ id, columns }) => id === sheet && columns.some((one) => one.id === column.id),
  );
  if (ofTemplate || (before?.declaration !== undefined && before.removed !== true)) return undefined;
  if (before?.declaration !== undefined) {
    const next = withColumn(own, sheet, column.id, (one) => withField(one, 'removed', undefined));
    return done(next, { op: 'remove column', sheet, column: column.id });
  }
  const { formula } = column;
  // The formula stands beside the declaration, where it may change.
  const declaration = { ...column, formula: '' };
  // What others changed of it while it was not there.
  const added = { declaration, formula, ...(after === undefined ? {} : { after }), ...before };
  return done(
    withColumn(own, sheet, column.id, () => added),
    { op: 'remove column', sheet, column: column.id, leaving: before ?? null, sparesOthers: true },
  );
}

/** What brings a removed column back as it was. */
function addedAgain(
  sheet: string,
  own: OwnColumn,
  declaration: ColumnDeclaration,
): readonly [Operation, ...(readonly Operation[])] {
  const column = { ...declaration, formula: own.formula ?? declaration.formula };
  const after = own.after === undefined ? {} : { after: own.after };
  const added: Operation = { op: 'add column', sheet, column, ...after };
  if (own.name === undefined) return [added];
  return [added, { op: 'rename column', sheet, column: column.id, name: own.name }];
}

/** As a column. */
function addSheet(
  { sheet, after }: Extract<SchemaOperation, { readonly op: 'add sheet' }>,
  { own, template }: SchemaState,
  done: Done,
): SchemaDone | undefined {
  const before = entry(own, sheet.id);
  const isThere = before?.declaration !== undefined && before.removed !== true;
  if (isThere || template.sheets.some(({ id }) => id === sheet.id)) return undefined;
  if (before?.declaration !== undefined) {
    const next = withSheet(own, sheet.id, (one) => withField(one, 'removed', undefined));
    return done(next, { op: 'remove sheet', sheet: sheet.id });
  }
  const added = { declaration: sheet, ...(after === undefined ? {} : { after }), ...before };
  return done(
    withSheet(own, sheet.id, () => added),
    { op: 'remove sheet', sheet: sheet.id, leaving: before ?? null, sparesOthers: true },
  );
}

type IsOfOthers = (thing: string) => boolean;

/** The fields that others changed last, each with the kind of thing that it is. */
function fieldsOfOthers<T extends object>(
  own: T,
  kinds: readonly (readonly [field: keyof T, kind: string])[],
  ids: readonly string[],
  isOfOthers: IsOfOthers,
): Partial<T> {
  const spared: Partial<T> = {};
  for (const [field, kind] of kinds)
    if (own[field] !== undefined && isOfOthers(JSON.stringify([kind, ...ids]))) spared[field] = own[field];
  return spared;
}

/** What others changed last of a column: its formula, name and place. */
function ofOthersInColumn(sheet: string, column: string, own: OwnColumn, isOfOthers: IsOfOthers): OwnColumn {
  const kinds = [
    ['formula', 'formula'],
    ['name', 'column name'],
    ['after', 'column place'],
  ] as const;
  return fieldsOfOthers(own, kinds, [sheet, column], isOfOthers);
}

/** What others changed last of a sheet: its name and place, its columns and checks. */
function ofOthersInSheet(sheet: string, own: OwnSheet, isOfOthers: IsOfOthers): OwnSheet {
  const of = (kind: string, id: string): boolean => isOfOthers(JSON.stringify([kind, sheet, id]));
  let spared: OwnSchema = {
    [sheet]: fieldsOfOthers(
      own,
      [
        ['name', 'sheet name'],
        ['after', 'sheet place'],
      ],
      [sheet],
      isOfOthers,
    ),
  };
  for (const [id, column] of Object.entries(own.columns ?? {})) {
    const left = of('column', id) ? column : ofOthersInColumn(sheet, id, column, isOfOthers);
    spared = withColumn(spared, sheet, id, () => left);
  }
  for (const [id, check] of Object.entries(own.checks ?? {}))
    if (of('check', id)) spared = withCheck(spared, sheet, id, check);
  return entry(spared, sheet) ?? {};
}

/** What brings a removed sheet back as it was, with all that was changed of it. */
export function sheetAgain(
  id: string,
  own: OwnSheet,
  declaration: SheetDeclaration,
): readonly [Operation, ...(readonly Operation[])] {
  const after = own.after === undefined ? {} : { after: own.after };
  const operations: [Operation, ...Operation[]] = [{ op: 'add sheet', sheet: declaration, ...after }];
  if (own.name !== undefined) operations.push({ op: 'rename sheet', sheet: id, name: own.name });
  for (const [column, changes] of Object.entries(own.columns ?? {}))
    operations.push(...columnAgain(id, column, changes));
  for (const [check, changed] of Object.entries(own.checks ?? {}))
    operations.push({ op: 'check', sheet: id, check, declaration: changed });
  return operations;
}

/** What gives a column what a person changed of it; of one of their own, the column itself. */
export function columnAgain(sheet: string, column: string, own: OwnColumn): readonly Operation[] {
  const { declaration, removed, ...changes } = own;
  if (declaration !== undefined) {
    const added = addedAgain(sheet, own, declaration);
    return removed === true ? [...added, { op: 'remove column', sheet, column, leaving: own }] : added;
  }
  const operations: Operation[] = [];
  if (changes.formula !== undefined) operations.push({ op: 'formula', sheet, column, formula: changes.formula });
  if (changes.name !== undefined) operations.push({ op: 'rename column', sheet, column, name: changes.name });
  if (changes.after !== undefined) operations.push({ op: 'move column', sheet, column, after: changes.after });
  return operations;
}

/** A version of a template by its name. */
export function templateOf(name: string, version: number, templates: TemplateShelf): Template | undefined {
  const today = templates.today(name);
  return today?.version === version ? today : templates.earlier(name, version);
}
