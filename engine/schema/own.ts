// What a person changed of the sheets themselves: names, formulas, places, columns and sheets of their own. Plain data by
// id, kept in the workbook file beside the rows and laid over the template (overlay.ts). Formulas are kept with ids in place
// of names (language/stored.ts).

import type { CheckDeclaration, ColumnDeclaration, SheetDeclaration } from './declaration.ts';
import { type ById, entry, withEntry, withField } from './records.ts';

/** A thing's place: right after another, or first of all. */
export type After = string | null;

export interface OwnColumn {
  readonly name?: string;
  readonly formula?: string;
  readonly after?: After;
  /** A column of a person's own, whole. Its name, formula and place stand in the fields beside this one. */
  readonly declaration?: ColumnDeclaration;
  /** An own column that was taken out: its name is known to formulas that still read it. */
  readonly removed?: true;
}

export interface OwnSheet {
  readonly name?: string;
  readonly after?: After;
  /** A sheet of a person's own, whole. */
  readonly declaration?: SheetDeclaration;
  readonly removed?: true;
  readonly columns?: ById<OwnColumn>;
  /** Checks of a person's own and template checks changed; null for one that is switched off. */
  readonly checks?: ById<CheckDeclaration | null>;
}

/** By sheet id. */
export type OwnSchema = ById<OwnSheet>;

export const NOTHING_OWN: OwnSchema = {};

/** The same with one sheet changed; a sheet with nothing own left is no entry. */
export function withSheet(own: OwnSchema, id: string, change: (sheet: OwnSheet) => OwnSheet): OwnSchema {
  return withEntry(own, id, unlessEmpty(change(entry(own, id) ?? {})));
}

export function withColumn(
  own: OwnSchema,
  sheet: string,
  id: string,
  change: (column: OwnColumn) => OwnColumn,
): OwnSchema {
  return withSheet(own, sheet, (before) => {
    const columns = withEntry(before.columns, id, unlessEmpty(change(entry(before.columns, id) ?? {})));
    return withField(before, 'columns', unlessEmpty(columns));
  });
}

/** A check changed; undefined gives the template's back, null switches it off. */
export function withCheck(
  own: OwnSchema,
  sheet: string,
  id: string,
  check: CheckDeclaration | null | undefined,
): OwnSchema {
  return withSheet(own, sheet, (before) =>
    withField(before, 'checks', unlessEmpty(withEntry(before.checks, id, check))),
  );
}

function unlessEmpty<T extends object>(record: T): T | undefined {
  return Object.keys(record).length === 0 ? undefined : record;
}

/** The same, its parts in the order of their ids, so that equal changes are written alike. */
export function inOrder(own: OwnSchema): OwnSchema {
  return sorted(own, (sheet) => ({
    ...sheet,
    ...(sheet.columns === undefined ? {} : { columns: sorted(sheet.columns, (column) => column) }),
    ...(sheet.checks === undefined ? {} : { checks: sorted(sheet.checks, (check) => check) }),
  }));
}

function sorted<T>(record: ById<T>, change: (value: T) => T): ById<T> {
  const entries = Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([id, value]) => [id, change(value)]));
}
