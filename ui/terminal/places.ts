// Finds the table, column and row that a person names in a command: exactly, else ignoring case, else refused with the
// nearest name. Says places in one way everywhere.

import { type ColumnView, nearestName, type TableView, type Workbook } from '../../engine/index.ts';
import { refuse } from './world.ts';

function named<T extends { readonly name: string }>(items: readonly T[], name: string): T | undefined {
  const lower = name.trim().toLowerCase();
  return items.find((item) => item.name === name) ?? items.find((item) => item.name.toLowerCase() === lower);
}

function orNearest(name: string, names: Iterable<string>, elsewhere: string): string {
  const near = nearestName(name, names);
  return near === undefined ? elsewhere : `did you mean “${near}”?`;
}

export function findTable(workbook: Workbook, file: string, name: string): TableView {
  const tables = workbook.tables();
  const found = named(tables, name);
  if (found !== undefined) return found;
  const names = tables.map((table) => table.name);
  return refuse(
    `${file}: there is no table called “${name}”: ${orNearest(name, names, `it has ${names.join(', ')}.`)}`,
  );
}

export function findColumn(table: TableView, file: string, name: string): ColumnView {
  const found = named(table.columns, name);
  if (found !== undefined) return found;
  const names = table.columns.map((column) => column.name);
  const advice = orNearest(name, names, `“tables ${file}” lists its columns.`);
  return refuse(`${file}: ${table.name} has no column called “${name}”: ${advice}`);
}

/** The row that a key names; rows without names of their own are 'row 1', 'row 2' ... In a one-row table any key will do. */
export function findRow(workbook: Workbook, table: TableView, file: string, key: string): number {
  const row =
    workbook.rowOf(table.name, key) ?? (/^\d+$/.test(key) ? workbook.rowOf(table.name, `row ${key}`) : undefined);
  if (row !== undefined) return row;
  const names = [...workbook.rows(table.name)].map((slot) => workbook.rowName(table.name, slot));
  const otherwise = names.length === 0 ? 'it has no rows yet.' : `“table ${file} "${table.name}"” lists its rows.`;
  return refuse(`${file}: ${table.name} has no row called “${key}”: ${orNearest(key, names, otherwise)}`);
}

/** 'Beds / North 1 / Length', and 'Farm / Latitude' in a one-row table. */
export function placeInWords(table: TableView | undefined, rowName: string, column: string): string {
  const row = table?.oneRow === true || rowName === '' ? [] : [rowName];
  return [table?.name ?? '', ...row, column].filter((part) => part !== '').join(' / ');
}
