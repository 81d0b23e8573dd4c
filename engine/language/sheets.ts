// Sheets as arguments of a call: by their bare name, by one of their columns, and as a sheet of criteria whose columns are
// named like those of the sheet looked at. Everything about their types is settled here, before anything runs. Called by
// arguments.ts.

import { fits, nameOfType, type ValueType, YESNO } from '../values/type.ts';
import { type CheckContext, findColumn } from './context.ts';
import { columnOf, columnReference, type FoundColumn, tableNamed } from './names.ts';
import { nearestName } from './nearest.ts';
import { PLAIN } from './operators.ts';
import { bracketed, quoted, tableName } from './printer.ts';
import { refuse } from './refuse.ts';
import type { Parameter, Signature } from './signature.ts';
import { isWords } from './standing.ts';
import type { Span, Tree } from './tree.ts';
import type { CriteriaPair, TableShape, Typed } from './typed.ts';
import { amountText, typeInWords } from './wording.ts';

/** The sheet that an argument names. */
export function sheetNamed(given: Tree, parameter: Parameter, signature: Signature, context: CheckContext): TableShape {
  if (given.tree === 'table') return tableNamed(given.table, context);
  const wants = `${signature.name} wants the name of a sheet for ${parameter.name}`;
  if (given.tree === 'column') {
    const fix = tableName(tableNamed(given.table, context).name);
    return refuse(given, `${wants}, and this is one of its columns: write ${fix}.`, fix);
  }
  return refuse(given, `${wants}, as in ${exampleOf(signature)}.`);
}

function exampleOf({ name, parameters }: Signature): string {
  const parts = parameters.flatMap(({ name: part, pattern, optional }) => {
    if (optional === true && pattern.is !== 'field') return [];
    if (pattern.is === 'table' || pattern.is === 'first column') return ['Beds'];
    if (pattern.is === 'criteria') return ['Wanted'];
    return [pattern.is === 'field' ? '"Length"' : part];
  });
  return `${name}(${parts.join('; ')})`;
}

export function tableNode(given: Span, table: TableShape): Typed {
  return { node: 'table', table: table.id, type: PLAIN, from: given.from, to: given.to };
}

/** A column as if it had been written out as Table[Column] at this place. */
export function columnAs({ table, column }: FoundColumn, { from, to }: Span): Tree {
  return { tree: 'column', table: { text: table.name, from, to }, column: { text: column, from, to }, from, to };
}

export function firstColumn(given: Tree, table: TableShape, context: CheckContext): FoundColumn {
  const [first] = table.columns;
  if (first === undefined) return refuse(given, `${table.name} has no columns yet.`);
  return columnOf(table, { text: first.name, from: given.from, to: given.to }, given, context);
}

/** The column of `table` that is written out as its name, its number from 1, or Table[Column]. */
export function fieldNamed(
  given: Tree,
  table: TableShape,
  parameter: Parameter,
  signature: Signature,
  context: CheckContext,
): FoundColumn {
  const byName = (text: string): FoundColumn =>
    columnOf(table, { text, from: given.from, to: given.to }, given, context);
  if (given.tree === 'text') {
    const found = byName(given.value);
    context.found?.(given, columnReference(found));
    return found;
  }
  if (given.tree === 'number') {
    const column = table.columns[given.value - 1];
    if (column !== undefined) return byName(column.name);
    const count = table.columns.length;
    return refuse(given, `${table.name} has ${count} columns: give a number from 1 to ${count}, or a name in quotes.`);
  }
  if (given.tree === 'column') {
    const other = tableNamed(given.table, context);
    if (other === table) {
      const found = byName(given.column.text);
      context.found?.(given.column, columnReference(found));
      return found;
    }
    return refuse(given, `${signature.name} looks in ${table.name}, and this is a column of ${other.name}.`);
  }
  const written = given.tree === 'cell' && given.path.length === 1 ? given.path[0] : undefined;
  const bare = given.tree === 'table' ? given.table : written;
  const column = bare === undefined ? undefined : findColumn(table, bare.text);
  const wants = `${signature.name} wants the name of a column of ${table.name} for ${parameter.name}`;
  if (column !== undefined) {
    const fix = quoted(column.name);
    return refuse(given, `${wants}, in quotes: write ${fix}.`, fix);
  }
  const example = table.columns.at(-1)?.name ?? 'Length';
  return refuse(given, `${wants}, written out as in ${quoted(example)}: its type must be known beforehand.`);
}

/** A sheet of criteria, each of its columns paired with the one of the same name in the sheet looked at. */
export function criteriaNode(given: Span, criteria: TableShape, of: TableShape, context: CheckContext): Typed {
  if (criteria === of) {
    return refuse(given, `${of.name} is the sheet looked in: the criteria stand in a sheet of their own.`);
  }
  const pairs = criteria.columns.map((column): CriteriaPair => {
    const own = { text: column.name, from: given.from, to: given.to };
    const conditions = columnOf(criteria, own, given, context);
    if (findColumn(of, column.name) === undefined) return refuseNoNamesake(given, conditions, of);
    const looked = columnOf(of, own, given, context);
    if (!comparable(looked.type, conditions.type)) return refuseUnlikeCriteria(given, conditions, looked);
    return {
      looked: { column: looked.id, type: looked.type },
      given: { column: conditions.id, type: conditions.type },
    };
  });
  return { node: 'criteria', table: criteria.id, of: of.id, pairs, type: YESNO, from: given.from, to: given.to };
}

/** Text holds conditions on any column; everything else holds values to equal. */
function comparable(looked: ValueType, given: ValueType): boolean {
  if (given.kind === 'text' || given.kind === 'choice') return true;
  if (given.kind === 'link') return looked.kind === 'link' ? looked.table === given.table : isWords(looked);
  return fits(looked, given);
}

function named({ table, column }: FoundColumn): string {
  return tableName(table.name) + bracketed(column);
}

function refuseNoNamesake(given: Span, conditions: FoundColumn, of: TableShape): never {
  const near = nearestName(
    conditions.column,
    of.columns.map(({ name }) => name),
  );
  const advice = near === undefined ? '' : `; the nearest name is ${near}`;
  return refuse(
    given,
    `${named(conditions)} has no namesake in ${of.name}${advice}: name the columns of a sheet of criteria like those they look at.`,
  );
}

function refuseUnlikeCriteria(given: Span, conditions: FoundColumn, looked: FoundColumn): never {
  const types = `${named(looked)} is ${typeInWords(looked.type)}, ${named(conditions)} is ${typeInWords(conditions.type)}`;
  const values = looked.type.kind === 'text' ? '' : `${nameOfType(looked.type)}, for values to equal, or `;
  return refuse(given, `${types}: make it ${values}text, for conditions such as ${exampleCondition(looked.type)}.`);
}

/** A condition on values of the type as a cell of criteria holds it: >8 ft, >2027-03-15, <>early. */
export function exampleCondition(type: ValueType): string {
  switch (type.kind) {
    case 'number':
    case 'temperature':
      return `>${amountText(type.kind === 'number' ? '8' : '45', type.unit) ?? '8'}`;
    case 'date':
      return '>2027-03-15';
    case 'yesno':
      return 'yes';
    default:
      return '<>early';
  }
}
