// Makes sheets ready for work from their declarations: column types under the workbook's units, columns in the model,
// hidden columns for checks and row conditions. Says in sentences what of a declaration can't be used.

import type { Model } from '../recalculation/model.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../values/type.ts';
import type { ColumnDeclaration, SheetDeclaration, TypeDeclaration } from './declaration.ts';
import { checkColumn, FIRST, LAST, spanTable, WHERE } from './names.ts';
import type { Sheet, SheetColumn } from './sheet.ts';

/** The type of a declared column under the workbook's units; undefined where the unit is not known. */
export function typeOf(declared: TypeDeclaration, units: 'us' | 'si', vocabulary: Vocabulary): ValueType | undefined {
  switch (declared.type) {
    case 'number': {
      const unit = vocabulary.find(declared.unit[units]);
      return unit === undefined ? undefined : { kind: 'number', dimension: unit.dimension, unit };
    }
    case 'temperature': {
      const unit = vocabulary.find(units === 'us' ? 'degF' : 'degC');
      return unit === undefined ? undefined : { kind: 'temperature', unit };
    }
    case 'choice':
      return { kind: 'choice', options: declared.options };
    case 'link':
      return { kind: 'link', table: declared.table };
    default:
      return { kind: declared.type };
  }
}

/** Texts, choices and links are kept as whole numbers. */
export function isWhole(type: ValueType | undefined): boolean {
  return type?.kind === 'text' || type?.kind === 'choice' || type?.kind === 'link';
}

function made(name: string, type: TypeDeclaration): ColumnDeclaration {
  return { name, type, group: '', note: '', role: 'entered', formula: '' };
}

/** The columns that a sheet's row source fills. */
export function madeColumns(sheet: SheetDeclaration): readonly ColumnDeclaration[] {
  const { rows } = sheet;
  switch (rows.from) {
    case 'each':
      return [made(rows.as, { type: 'link', table: rows.table })];
    case 'span':
      return [made(rows.as, { type: 'date' })];
    case 'pairs':
      return [
        made(rows.as[0], { type: 'link', table: rows.tables[0] }),
        made(rows.as[1], { type: 'link', table: rows.tables[1] }),
      ];
    case 'events': {
      const abouts = new Map(rows.dates.map((date) => [date.about, date.table]));
      return [
        made(rows.as, { type: 'date' }),
        made(rows.event, { type: 'text' }),
        ...[...abouts].map(([about, table]) => made(about, { type: 'link', table })),
      ];
    }
    default:
      return [];
  }
}

export interface OpenContext {
  readonly model: Model;
  readonly vocabulary: Vocabulary;
  readonly units: 'us' | 'si';
}

/** A column in the model and its state, ready to be compiled. */
export function openColumn(
  table: string,
  declaration: ColumnDeclaration,
  role: SheetColumn['role'],
  type: ValueType | undefined,
  inferred: boolean,
  context: OpenContext,
): SheetColumn {
  return {
    declaration,
    role,
    data: context.model.table(table).addColumn(declaration.name, isWhole(type)),
    type,
    inferred,
    formula: declaration.formula,
    tree: undefined,
    typed: undefined,
    complaint: undefined,
    overrides: new Set(),
    typedUnits: undefined,
  };
}

/** A sheet in the model with all its columns; problems are sentences. The model's table must exist. */
export function openSheet(declaration: SheetDeclaration, context: OpenContext, problems: string[]): Sheet {
  const { name } = declaration;
  const data = context.model.table(name);
  const columns: SheetColumn[] = [];
  const seen = new Set<string>();
  const open = (column: ColumnDeclaration, role: SheetColumn['role']): void => {
    if (seen.has(column.name.toLowerCase()))
      problems.push(`${name} has two columns called ${column.name}: rename one.`);
    seen.add(column.name.toLowerCase());
    const type = typeOf(column.type, context.units, context.vocabulary);
    if (type === undefined)
      problems.push(`${name} / ${column.name}: its unit is not known; use one such as in, cm, lb or kg.`);
    columns.push(openColumn(name, column, role, type, column.own === true && role === 'computed', context));
  };
  for (const column of madeColumns(declaration)) open(column, 'made');
  for (const column of declaration.columns) open(column, column.role);
  if (declaration.key !== undefined && !seen.has(declaration.key.toLowerCase())) {
    problems.push(`${name}: its key column ${declaration.key} is not among its columns.`);
  }
  return {
    declaration,
    name,
    source: declaration.rows,
    data,
    columns,
    keys: declaration.key === undefined ? undefined : new Map(),
    hidden: openHidden(declaration, context),
  };
}

function openHidden(declaration: SheetDeclaration, context: OpenContext): SheetColumn[] {
  const { name, rows } = declaration;
  const hidden: SheetColumn[] = [];
  const open = (table: string, column: string, type: ValueType, formula: string): void => {
    const typeName = type.kind === 'date' ? 'date' : type.kind === 'yesno' ? 'yesno' : 'text';
    const declared: ColumnDeclaration = {
      name: column,
      type: { type: typeName },
      group: '',
      note: '',
      role: 'computed',
      formula,
    };
    hidden.push(openColumn(table, declared, 'computed', type, false, context));
  };
  declaration.checks.forEach((check, index) => {
    open(name, checkColumn(index), TEXT, check.says);
  });
  if ((rows.from === 'each' || rows.from === 'pairs') && rows.where !== '') {
    open(name, WHERE, YESNO, rows.where);
    const table = context.model.table(name);
    table.shown = table.column(WHERE);
  }
  if (rows.from === 'span') {
    const ends = spanTable(name);
    open(ends, FIRST, DATE, rows.first);
    open(ends, LAST, DATE, rows.last);
  }
  return hidden;
}
