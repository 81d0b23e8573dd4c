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
  /** It is the formula of a check, which gives a sentence where there is something to say. */
  readonly saysSomething?: boolean;
  /** Values that the LETs round a part have given names, by the name in small letters. */
  readonly given?: ReadonlyMap<string, Typed>;
  /** Hears what each name of a table or column in the text was found to be, by its id. */
  readonly found?: (name: Span, id: string) => void;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

interface Names<T> {
  readonly exact: ReadonlyMap<string, T>;
  readonly inSmallLetters: ReadonlyMap<string, T>;
  readonly byId: ReadonlyMap<string, T>;
}

/** A catalog is asked for thousands of names: its lists are looked through once. */
const known = new WeakMap<readonly Named[], Names<Named>>();

function namesOf<T extends Named>(items: readonly T[]): Names<T> {
  // Only this place puts the names of a list under it, so they are those of its own items.
  const kept = known.get(items) as Names<T> | undefined;
  if (kept !== undefined) return kept;
  const [exact, inSmallLetters, byId] = [new Map<string, T>(), new Map<string, T>(), new Map<string, T>()];
  for (const item of items) {
    addFirst(exact, item.name, item);
    addFirst(inSmallLetters, item.name.toLowerCase(), item);
    addFirst(byId, item.id, item);
  }
  const names = { exact, inSmallLetters, byId };
  known.set(items, names);
  return names;
}

/** The first of several with one name is the one meant. */
function addFirst<T>(map: Map<string, T>, name: string, item: T): void {
  if (!map.has(name)) map.set(name, item);
}

function byName<T extends Named>(items: readonly T[], name: string): T | undefined {
  const { exact, inSmallLetters } = namesOf(items);
  return exact.get(name) ?? inSmallLetters.get(name.toLowerCase());
}

export function findTable(catalog: Catalog, name: string): TableShape | undefined {
  return byName(catalog.tables, name);
}

export function findColumn(table: TableShape, name: string): ColumnShape | undefined {
  return byName(table.columns, name);
}

export function tableOfId(catalog: Catalog, table: string): TableShape | undefined {
  return namesOf(catalog.tables).byId.get(table);
}

/** The sheet the formula stands in. */
export function ownTable({ catalog, table }: CheckContext): TableShape | undefined {
  return table === undefined ? undefined : tableOfId(catalog, table);
}

/** Link columns of a table with the tables they lead to. */
export function linksOf(table: TableShape, catalog: Catalog): readonly { link: string; to: TableShape }[] {
  return table.columns.flatMap((column) => {
    const to = column.type?.kind === 'link' ? tableOfId(catalog, column.type.table) : undefined;
    return to === undefined ? [] : [{ link: column.name, to }];
  });
}
