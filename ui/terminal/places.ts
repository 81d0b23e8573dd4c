// Finds the table, column and row that a person names in a command: exactly, else ignoring case, else refused with the
// nearest name. Says places in one way everywhere.

import {
  type Book,
  type ColumnView,
  nearestName,
  rowName,
  rowNamed,
  rows,
  type SheetView,
  sheetViews,
} from '../../engine/index.ts';
import { refuse } from './world.ts';

function named<T extends { readonly name: string }>(items: readonly T[], name: string): T | undefined {
  const lower = name.trim().toLowerCase();
  return items.find((item) => item.name === name) ?? items.find((item) => item.name.toLowerCase() === lower);
}

function orNearest(name: string, names: Iterable<string>, elsewhere: string): string {
  const near = nearestName(name, names);
  return near === undefined ? elsewhere : `did you mean “${near}”?`;
}

export function findTable(book: Book, file: string, name: string): SheetView {
  const tables = sheetViews(book);
  const found = named(tables, name);
  if (found !== undefined) return found;
  const names = tables.map((table) => table.name);
  return refuse(
    `${file}: there is no table called “${name}”: ${orNearest(name, names, `it has ${names.join(', ')}.`)}`,
  );
}

/** Says where the columns or rows of a table are listed. */
export interface Listed {
  columns(table: string): string;
  rows(table: string): string;
}

function listedBy(file: string): Listed {
  return {
    columns: () => `“tables ${file}” lists its columns.`,
    rows: (table) => `“table ${file} "${table}"” lists its rows.`,
  };
}

export function findColumn(table: SheetView, file: string, name: string, listed = listedBy(file)): ColumnView {
  const found = named(table.columns, name);
  if (found !== undefined) return found;
  const names = table.columns.map((column) => column.name);
  const advice = orNearest(name, names, listed.columns(table.name));
  return refuse(`${file}: ${table.name} has no column called “${name}”: ${advice}`);
}

/** The row that a key names; rows without names of their own are 'row 1', 'row 2' ... In a one-row table any key will do. */
export function findRow(book: Book, table: SheetView, file: string, key: string, listed = listedBy(file)): number {
  const row = rowNamed(book, table.id, key) ?? (/^\d+$/.test(key) ? rowNamed(book, table.id, `row ${key}`) : undefined);
  if (row !== undefined) return row;
  const names = Array.from(rows(book, table.id), (slot) => rowName(book, table.id, slot));
  const otherwise = names.length === 0 ? 'it has no rows yet.' : listed.rows(table.name);
  return refuse(`${file}: ${table.name} has no row called “${key}”: ${orNearest(key, names, otherwise)}`);
}

/** 'Beds / North 1 / Length', and 'Farm / Latitude' in a one-row table. */
export function placeInWords(table: SheetView | undefined, row: string, column: string): string {
  const named = table?.oneRow === true || row === '' ? [] : [row];
  return [table?.name ?? '', ...named, column].filter((part) => part !== '').join(' / ');
}
