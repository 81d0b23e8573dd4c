// Rows written by the names that people read, turned into rows by ids: so the shipped rows, the demo and tests can be read as
// tables. Calls nothing; every list of rows in this folder goes through here once.

import type { Entries, Entry, SheetDeclaration, TemplateRow } from '../engine/index.ts';

/** Entries by column name. */
export type NamedRow = Readonly<Record<string, Entry>>;

/** A short word made of a name: 'Onion, bulb' gives 'onion-bulb'. */
export function wordOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** A row's entries by column id; throws where a sheet has no such column, which is a slip of whoever wrote the row. */
export function entriesOf(sheet: SheetDeclaration, row: NamedRow): Entries {
  const ids = idsOf(sheet);
  const entries: Record<string, Entry> = {};
  for (const [name, entry] of Object.entries(row)) {
    const id = ids.get(name);
    if (id === undefined) throw new Error(`${sheet.name} has no column called ${name}`);
    entries[id] = entry;
  }
  return entries;
}

const idsBySheet = new WeakMap<SheetDeclaration, ReadonlyMap<string, string>>();

/** The ids of a sheet's columns by their names; of equal names the first. */
function idsOf(sheet: SheetDeclaration): ReadonlyMap<string, string> {
  const known = idsBySheet.get(sheet);
  if (known !== undefined) return known;
  const ids = new Map(sheet.columns.toReversed().map(({ id, name }) => [name, id]));
  idsBySheet.set(sheet, ids);
  return ids;
}

/** Rows that a template ships; `idOf` gives each its id, which never changes, whatever it comes to be called. */
export function shippedRows(
  sheet: SheetDeclaration,
  rows: readonly NamedRow[],
  idOf: (row: NamedRow) => string,
): readonly TemplateRow[] {
  return rows.map((row) => ({ id: idOf(row), cells: entriesOf(sheet, row) }));
}

/** Rows by sheet name as rows by sheet id. */
export function rowsById(
  sheets: readonly SheetDeclaration[],
  rows: Readonly<Record<string, readonly NamedRow[]>>,
): Readonly<Record<string, readonly Entries[]>> {
  return Object.fromEntries(
    Object.entries(rows).map(([name, list]) => {
      const sheet = sheets.find((one) => one.name === name);
      if (sheet === undefined) throw new Error(`There is no sheet called ${name}`);
      return [sheet.id, list.map((row) => entriesOf(sheet, row))];
    }),
  );
}
