// Finds what the names of a formula mean: this row's cells through links, columns and tables; and says what is near
// where a name is not found. Called by checker.ts and arguments.ts.

import { figureColumn } from '../values/figures.ts';
import type { RecordFigure, RecordType, ValueType } from '../values/type.ts';
import { type CheckContext, findColumn, findTable, linksOf, ownTable, tableOfId } from './context.ts';
import { nearestName } from './nearest.ts';
import { bracketed, tableName } from './printer.ts';
import { refuse } from './refuse.ts';
import type { Name, Span, Tree } from './tree.ts';
import type { ColumnShape, TableShape, Typed } from './typed.ts';

type TreeOf<K extends Tree['tree']> = Extract<Tree, { readonly tree: K }>;

/** A column with its type known. */
export interface FoundColumn {
  readonly table: TableShape;
  /** Its name; `id` is what the typed tree says. */
  readonly column: string;
  readonly id: string;
  readonly type: ValueType;
}

/** This row's cell. */
export function cellNode(tree: TreeOf<'cell'>, context: CheckContext): Typed {
  const [first, ...rest] = tree.path;
  const own = ownTable(context);
  if (own === undefined) {
    const said = bracketed(first.text);
    return refuse(tree, `${said} names a column of this row, and this formula stands in no sheet: write Table${said}.`);
  }
  let found = named(first, columnOf(own, first, first, context), context);
  let link = first;
  const links: string[] = [];
  for (const [i, name] of rest.entries()) {
    if (found.type.kind === 'record') {
      const figure = figureNamed(found.type.record, found.column, name, rest[i + 1]);
      const { id } = figure;
      const type = shownType(figure, context);
      const column = figureColumn(found.id, id);
      return { node: 'cell', links, table: found.table.id, column, type, from: tree.from, to: tree.to };
    }
    links.push(found.id);
    found = named(name, columnOf(linkedTable(found, link, name, context), name, name, context), context);
    link = name;
  }
  const { table, id, type } = found;
  return { node: 'cell', links, table: table.id, column: id, type, from: tree.from, to: tree.to };
}

/** Tells who asked that this name means this column. */
function named(name: Span, found: FoundColumn, { found: tell }: CheckContext): FoundColumn {
  tell?.(name, columnReference(found));
  return found;
}

/** A figure of a record column by its name. */
function figureNamed({ figures }: RecordType, column: string, name: Name, next: Name | undefined): RecordFigure {
  const figure = figures.find((one) => one.name.toLowerCase() === name.text.toLowerCase());
  if (figure !== undefined && next === undefined) return figure;
  if (next !== undefined) return refuse(next, `${bracketed(name.text)} is a figure: nothing can follow it.`);
  const names = figures.map((one) => one.name);
  const near = nearestName(name.text, names);
  const lacks = `${bracketed(column)} has no figure ${name.text}`;
  if (near !== undefined) return refuse(name, `${lacks}; the nearest is ${bracketed(near)}.`, bracketed(near));
  return refuse(name, `${lacks}: it has ${names.map(bracketed).join(', ')}.`);
}

/** The figure's type in the unit of the workbook's own system. */
function shownType({ type, usUnit }: RecordFigure, { catalog }: CheckContext): ValueType {
  if (catalog.units !== 'us' || usUnit === undefined || type.kind !== 'number') return type;
  return { ...type, unit: usUnit };
}

/** A column's id in the whole workbook. */
export function columnReference({ table, id }: FoundColumn): string {
  return `${table.id}/${id}`;
}

function linkedTable(found: FoundColumn, link: Name, next: Name, context: CheckContext): TableShape {
  if (found.type.kind !== 'link') {
    return refuse(
      { from: link.from, to: next.to },
      `${bracketed(found.column)} is not a link to another sheet, so ${bracketed(next.text)} can't follow it.`,
    );
  }
  const to = tableOfId(context.catalog, found.type.table);
  return to ?? refuse(link, `${bracketed(found.column)} leads to a sheet that isn't there.`);
}

/** Table[Column]; its type is that of one of its values. */
export function columnNamed(tree: TreeOf<'column'>, context: CheckContext): FoundColumn {
  return named(tree.column, columnOf(tableNamed(tree.table, context), tree.column, tree, context), context);
}

/** The column of that name; `at` is what a fix would replace. */
export function columnOf(table: TableShape, name: Name, at: Span, context: CheckContext): FoundColumn {
  const column = findColumn(table, name.text);
  if (column === undefined) return refuseUnknownColumn(table, name, at, context);
  if (column.type === undefined) return refuse(name, `${unchecked(table, column, context)}; put that right first.`);
  return { table, column: column.name, id: column.id, type: column.type };
}

function unchecked(table: TableShape, column: ColumnShape, context: CheckContext): string {
  const own = table === ownTable(context);
  return `The formula of ${own ? '' : tableName(table.name)}${bracketed(column.name)} does not check yet`;
}

function refuseUnknownColumn(table: TableShape, name: Name, at: Span, context: CheckContext): never {
  const lacks = `${table.name} has no column ${name.text}`;
  const whole = at !== name;
  const prefix = whole ? tableName(table.name) : '';
  const elsewhere = whole || table !== ownTable(context) ? undefined : reachable(table, name.text, context);
  if (elsewhere !== undefined) refuse(at, `${lacks}; ${elsewhere.where} has: write ${elsewhere.text}.`, elsewhere.text);
  const near = nearestName(
    name.text,
    table.columns.map((column) => column.name),
  );
  if (near !== undefined) {
    const fix = prefix + bracketed(near);
    refuse(at, `${lacks}; the nearest name is ${fix}.`, fix);
  }
  const other = context.catalog.tables.find((candidate) => findColumn(candidate, name.text) !== undefined);
  if (other !== undefined) {
    refuse(
      at,
      `${lacks}; ${other.name} has: a link to it, or a function over ${tableName(other.name)}${bracketed(name.text)}, brings it here.`,
    );
  }
  return refuse(at, `${lacks}. Pick one of its columns, or add this one first.`);
}

/** A column of that very name through one link of this sheet, or in a one-row sheet. */
function reachable(
  table: TableShape,
  name: string,
  context: CheckContext,
): { text: string; where: string } | undefined {
  for (const { link, to } of linksOf(table, context.catalog)) {
    const column = findColumn(to, name);
    if (column !== undefined) return { text: `${bracketed(link)}.${bracketed(column.name)}`, where: to.name };
  }
  for (const single of context.catalog.tables) {
    const column = single.oneRow ? findColumn(single, name) : undefined;
    if (column !== undefined) return { text: tableName(single.name) + bracketed(column.name), where: single.name };
  }
  return undefined;
}

export function tableNamed(name: Name, context: CheckContext): TableShape {
  const table = findTable(context.catalog, name.text);
  if (table !== undefined) {
    context.found?.(name, table.id);
    return table;
  }
  const near = nearestName(
    name.text,
    context.catalog.tables.map((candidate) => candidate.name),
  );
  if (near === undefined) return refuse(name, `There is no sheet ${name.text} in this workbook.`);
  return refuse(name, `There is no sheet ${name.text}; the nearest name is ${near}.`, tableName(near));
}

/** A whole column stands where one value is wanted: says how a single value is had. */
export function refuseWholeColumn(
  tree: TreeOf<'column'>,
  { table, column }: FoundColumn,
  context: CheckContext,
): never {
  const text = tableName(table.name) + bracketed(column);
  const own = ownTable(context);
  if (own === table) {
    const fix = bracketed(column);
    return refuse(tree, `${text} is the whole column; this row's value is ${fix}.`, fix);
  }
  const link = own === undefined ? undefined : linksOf(own, context.catalog).find(({ to }) => to === table);
  if (link !== undefined) {
    const fix = `${bracketed(link.link)}.${bracketed(column)}`;
    return refuse(tree, `${text} is the whole column; the value this row is linked to is ${fix}.`, fix);
  }
  return refuse(
    tree,
    `${text} is a whole column, and one value is wanted here: total it, as in SUM(${text}), or look one up.`,
  );
}

/** A bare word stands where a value is wanted: a column without brackets, a function without parentheses, or nothing known. */
export function refuseBareWord(tree: TreeOf<'table'>, context: CheckContext): never {
  const { text } = tree.table;
  const own = ownTable(context);
  const column = own === undefined ? undefined : findColumn(own, text);
  if (column !== undefined) {
    const fix = bracketed(column.name);
    return refuse(tree, `Columns stand in brackets: write ${fix}.`, fix);
  }
  const call = context.functions.get(text.toUpperCase());
  if (call !== undefined) {
    const fix = call.parameters.length === 0 ? `${call.name}()` : undefined;
    return refuse(tree, `${call.name} is a function: write ${call.name}(...) with its parts.`, fix);
  }
  if (/^\$?[a-z]{1,3}\$?\d+$/i.test(text)) {
    return refuse(tree, `Cells have no addresses such as ${text} here: name the column in brackets, as in [Length].`);
  }
  const table = findTable(context.catalog, text);
  if (table !== undefined) {
    return refuse(tree, `${text} is a sheet; name one of its columns, as in ${tableName(table.name)}[Column].`);
  }
  const near =
    own === undefined
      ? undefined
      : nearestName(
          text,
          own.columns.map((candidate) => candidate.name),
        );
  if (near !== undefined) {
    return refuse(tree, `There is no ${text} here; the nearest name is ${bracketed(near)}.`, bracketed(near));
  }
  return refuse(tree, `There is no ${text} here. Columns stand in brackets, text in double quotes.`);
}
