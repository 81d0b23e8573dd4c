// The sheets of a workbook as they stand now: the template's with what a person changed laid over them. Immutable: every
// change of names, formulas, columns or sheets makes another (overlay.ts), and whatever was compiled for one holds for it.

import type { CheckDeclaration, ColumnDeclaration, MadeColumn, RowSource, TypeDeclaration } from './declaration.ts';
import type { OwnSchema } from './own.ts';
import type { Template } from './template.ts';
import type { ViewDeclaration } from './views.ts';

export type ColumnRole = ColumnDeclaration['role'] | 'made';

export interface ColumnSchema {
  readonly id: string;
  readonly name: string;
  readonly role: ColumnRole;
  /** As the template or the person declared it; name, formula and role stand beside it as they are now. */
  readonly declaration: ColumnDeclaration;
  /** A person's own. */
  readonly own: boolean;
  /** As kept, with names or with ids in their place; '' where there is none. */
  readonly formula: string;
  /** The template's formula, where the person's stands in its place. */
  readonly templateFormula: string | undefined;
}

export interface CheckSchema extends CheckDeclaration {
  readonly own: boolean;
}

export interface SheetSchema {
  readonly id: string;
  readonly name: string;
  readonly own: boolean;
  readonly question: string;
  readonly about: string;
  readonly rows: RowSource;
  readonly key: string | undefined;
  /** Those that the row source fills come first. */
  readonly columns: readonly ColumnSchema[];
  readonly checks: readonly CheckSchema[];
  /** As the sheet came with them; looks.ts says how they stand. */
  readonly views: readonly ViewDeclaration[];
  readonly cautions: readonly string[];
}

export class Schema {
  readonly template: Template;
  readonly own: OwnSchema;
  readonly sheets: readonly SheetSchema[];
  readonly #sheets: ReadonlyMap<string, SheetSchema>;
  readonly #columns: ReadonlyMap<string, ReadonlyMap<string, ColumnSchema>>;
  /** Names that things had which are no more, by id: formulas that still read them say so with their name. */
  readonly #gone: ReadonlyMap<string, string>;

  constructor(template: Template, own: OwnSchema, sheets: readonly SheetSchema[], gone: ReadonlyMap<string, string>) {
    this.template = template;
    this.own = own;
    this.sheets = sheets;
    this.#gone = gone;
    this.#sheets = new Map(sheets.map((sheet) => [sheet.id, sheet]));
    this.#columns = new Map(
      sheets.map(({ id, columns }) => [id, new Map(columns.map((column) => [column.id, column]))]),
    );
  }

  sheet(id: string): SheetSchema | undefined {
    return this.#sheets.get(id);
  }

  column(sheet: string, id: string): ColumnSchema | undefined {
    return this.#columns.get(sheet)?.get(id);
  }

  /** The name of a sheet ('beds') or column ('beds/length'), of one that is gone too; undefined for what never was. */
  nameOf(reference: string): string | undefined {
    const stroke = reference.indexOf('/');
    const now =
      stroke < 0
        ? this.sheet(reference)?.name
        : this.column(reference.slice(0, stroke), reference.slice(stroke + 1))?.name;
    return now ?? this.#gone.get(reference);
  }
}

/** The columns that a sheet's row source fills, with their types. */
export function madeColumns(rows: RowSource): readonly (MadeColumn & { readonly type: TypeDeclaration })[] {
  switch (rows.from) {
    case 'each':
      return [{ ...rows.as, type: { type: 'link', sheet: rows.sheet } }];
    case 'span':
      return [{ ...rows.as, type: { type: 'date' } }];
    case 'pairs':
      return [
        { ...rows.as[0], type: { type: 'link', sheet: rows.sheets[0] } },
        { ...rows.as[1], type: { type: 'link', sheet: rows.sheets[1] } },
      ];
    case 'events': {
      const abouts = new Map(rows.dates.map(({ about, sheet }) => [about.id, { ...about, sheet }]));
      return [
        { ...rows.as, type: { type: 'date' } },
        { ...rows.event, type: { type: 'text' } },
        ...[...abouts.values()].map(({ sheet, ...about }) => ({ ...about, type: { type: 'link', sheet } as const })),
      ];
    }
    default:
      return [];
  }
}

export function isEnteredSheet({ rows }: SheetSchema): boolean {
  return rows.from === 'entry';
}

export function isOneRow({ rows }: SheetSchema): boolean {
  return rows.from === 'single';
}

/** Rows of a made sheet follow from other sheets. */
export function isMadeSheet(sheet: SheetSchema): boolean {
  return !isEnteredSheet(sheet) && !isOneRow(sheet);
}

export function isComputed({ role }: ColumnSchema): boolean {
  return role === 'computed' || role === 'default';
}
