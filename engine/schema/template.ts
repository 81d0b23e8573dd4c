// A template: the sheets and rows that workbooks of its kind start with, under a name and a version. A workbook keeps the
// name and version and what a person changed; when the template improves, so do the workbooks made from it.

import type { Entries, SheetDeclaration } from './declaration.ts';

/** A row that the template ships. Its id never changes, whatever its name becomes. */
export interface TemplateRow {
  readonly id: string;
  readonly cells: Entries;
}

export interface Template {
  readonly name: string;
  /** Rises with every change that reaches people. */
  readonly version: number;
  readonly sheets: readonly SheetDeclaration[];
  /** By sheet id, in the order in which they stand. */
  readonly rows: Readonly<Record<string, readonly TemplateRow[]>>;
  /**
   * The cell of a one-row sheet that says which year a date typed without one is in; today's year where absent. `starts` is its
   * column with the first day of the season, where that may be another than 1 January: the date is then in the twelve months from it.
   */
  readonly year?: { readonly sheet: string; readonly column: string; readonly starts?: string | undefined };
}

/** The templates a program knows, as they are today and, for comparing, as they were. */
export interface TemplateShelf {
  /** As it is today; undefined for a name it doesn't know. */
  today(name: string): Template | undefined;
  /** As it was in an earlier version; undefined where that one is not on record. */
  earlier(name: string, version: number): Template | undefined;
}
