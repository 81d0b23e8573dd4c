// What the checker is told of the place a formula stands in, and how its tables and columns are found by name: exactly
// first, then ignoring case. Used by the checker's files and by assist.ts.

import type { Vocabulary } from '../units/vocabulary.ts';
import type { ValueType } from '../values/type.ts';
import type { Signature } from './signature.ts';
import type { Span } from './tree.ts';
import type { Catalog, ColumnShape, TableShape, Typed } from './typed.ts';

export interface CheckContext {
  readonly catalog: Catalog;
  /** The id of the sheet the formula stands in; undefined for one that stands in none. */
  readonly table: string | undefined;
  /** By upper-case name. */
  readonly functions: ReadonlyMap<string, Signature>;
  readonly vocabulary: Vocabulary;
  /** Of a function that other spreadsheets have and this one leaves out: why, and what to use. */
  readonly leftOut?: (name: string) => { readonly why: string; readonly use: string } | undefined;
  /** The type the whole formula must give; any where absent. */
  readonly wanted?: ValueType;
  /** The column the formula is for, named in the sentence when it gives the wrong type. */
  readonly column?: string;
  /** Values that the LETs round a part have given names, by the name in small letters. */
  readonly given?: ReadonlyMap<string, Typed>;
  /** Hears what each name of a table or column in the text was found to be, by its id. */
  readonly found?: (name: Span, id: string) => void;
}

function byName<T extends { readonly name: string }>(items: readonly T[], name: string): T | undefined {
  const lower = name.toLowerCase();
  return items.find((item) => item.name === name) ?? items.find((item) => item.name.toLowerCase() === lower);
}

export function findTable(catalog: Catalog, name: string): TableShape | undefined {
  return byName(catalog.tables, name);
}

export function findColumn(table: TableShape, name: string): ColumnShape | undefined {
  return byName(table.columns, name);
}

export function tableOfId(catalog: Catalog, table: string): TableShape | undefined {
  return catalog.tables.find(({ id }) => id === table);
}

/** The sheet the formula stands in. */
export function ownTable(context: CheckContext): TableShape | undefined {
  return context.catalog.tables.find(({ id }) => id === context.table);
}

/** Link columns of a table with the tables they lead to. */
export function linksOf(table: TableShape, catalog: Catalog): readonly { link: string; to: TableShape }[] {
  return table.columns.flatMap((column) => {
    const to = column.type?.kind === 'link' ? tableOfId(catalog, column.type.table) : undefined;
    return to === undefined ? [] : [{ link: column.name, to }];
  });
}
