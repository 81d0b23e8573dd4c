// How a sheet is declared: plain data that someone who knows the trade can read top to bottom. Sheets come from
// sheets-templates/, from workbook files and from people; all end here. Sheets, columns and checks have ids that never
// change and are never shown; what names another sheet or column names it by its id. Formulas alone are written with names,
// those of the declarations around them. Says nothing of rows' contents.

import type { ViewDeclaration } from './views.ts';

/** A pair of units, one for workbooks in US customary units and one for SI. */
export interface UnitPair {
  readonly us: string;
  readonly si: string;
}

export type UnitSystem = keyof UnitPair;

export type TypeDeclaration =
  | { readonly type: 'number'; readonly unit: UnitPair }
  | { readonly type: 'temperature' }
  | { readonly type: 'date' }
  | { readonly type: 'text' }
  | { readonly type: 'yesno' }
  | { readonly type: 'choice'; readonly options: readonly string[] }
  /** A row of the sheet with that id. */
  | { readonly type: 'link'; readonly sheet: string }
  /** Figures that a function works out together, by the id of its record. */
  | { readonly type: 'record'; readonly record: string };

export interface ColumnDeclaration {
  readonly id: string;
  readonly name: string;
  readonly type: TypeDeclaration;
  /** The question this column belongs to within its sheet: 'Seed', 'Space', 'Harvest' ... Cards and panels group by it. */
  readonly group: string;
  /** A sentence under the header where the name alone isn't obvious; '' where it is. */
  readonly note: string;
  /**
   * 'entered': a person types it. 'computed': the formula gives it; a hand-typed override shows as one. 'default': a person
   * types it, and where they don't the formula stands in.
   */
  readonly role: 'entered' | 'computed' | 'default';
  /** The formula of a computed or default column; '' for an entered one. */
  readonly formula: string;
  /** The type follows the formula: so for computed columns of a person's own. `type` is what it gave last. */
  readonly inferred?: boolean;
  /** Digits after the decimal mark when shown; the figure itself keeps every digit. */
  readonly decimals?: number;
  /** Entered values must lie within (inclusive), in the SI unit of the pair. */
  readonly least?: number;
  readonly most?: number;
  /** Counts things one by one: whole numbers, and neither shares nor crates of nobody knows how many. */
  readonly whole?: boolean;
  /** Must be filled in a row. */
  readonly required?: boolean;
  /** The column of this sheet that takes an entry which this one can't: 5 g typed as a Quantity of seeds goes to Weight. */
  readonly orElse?: string;
  /** Other names that people know the row by, with commas between: who types one of them elsewhere is told the row's own. */
  readonly otherNames?: boolean;
  /** The columns of this sheet between which the figure lies: it is then shown rounded, with these ends beside it. */
  readonly range?: RangeColumns;
}

/** Ids of the columns that hold the ends of a figure. */
export interface RangeColumns {
  readonly low: string;
  readonly high: string;
}

/** A column that a row source fills. */
export interface MadeColumn {
  readonly id: string;
  readonly name: string;
}

/** A column of dates whose filled cells are events. */
export interface EventDate {
  readonly sheet: string;
  readonly column: string;
  /** What the event is called. */
  readonly event: string;
  /** The link column, on the sheet of events, that names the row; one a sheet. */
  readonly about: MadeColumn;
}

/** Where the rows of a sheet come from. */
export type RowSource =
  | { readonly from: 'entry' }
  /** Exactly one row. */
  | { readonly from: 'single' }
  /** One per row of `sheet` for which `where` (a yes/no formula on this sheet; '' = all) holds. `as` is the link column. */
  | { readonly from: 'each'; readonly sheet: string; readonly as: MadeColumn; readonly where: string }
  /** One per day, week (starting on `first`'s weekday) or month from `first` to `last` (formulas giving dates). `as` is the date column. */
  | {
      readonly from: 'span';
      readonly first: string;
      readonly last: string;
      readonly step: 'day' | 'week' | 'month';
      readonly as: MadeColumn;
    }
  /** One per pair of rows of two sheets. */
  | {
      readonly from: 'pairs';
      readonly sheets: readonly [string, string];
      readonly as: readonly [MadeColumn, MadeColumn];
      readonly where: string;
    }
  /** One per filled date among `dates`. `as` is the date column, `event` the text column that says which. */
  | {
      readonly from: 'events';
      readonly dates: readonly EventDate[];
      readonly as: MadeColumn;
      readonly event: MadeColumn;
    };

/** A thing to look at: where `says` (a text formula on the sheet) isn't blank, the sentence is a finding at `column`. */
export interface CheckDeclaration {
  readonly id: string;
  readonly name: string;
  readonly level: 'error' | 'warning' | 'note';
  readonly column: string;
  readonly says: string;
}

export interface SheetDeclaration {
  readonly id: string;
  readonly name: string;
  /** The grower's question this sheet answers: 'Where', 'What', 'Seed', 'Ground', 'Raising' ... */
  readonly question: string;
  /** What the sheet is for, in a sentence or two. */
  readonly about: string;
  readonly rows: RowSource;
  /** The column that names a row; undefined for one-row and made sheets. */
  readonly key?: string;
  readonly columns: readonly ColumnDeclaration[];
  readonly checks: readonly CheckDeclaration[];
  /** Ways of looking at it, each for a question; the view of all columns is there without being declared. */
  readonly views?: readonly ViewDeclaration[];
  /** The usual cautions, shown where they apply. */
  readonly cautions: readonly string[];
}

/**
 * What a template's or a new workbook's row holds in a cell: text as a person types it ('8 in', '15 Mar 2027', 'Amber
 * early'), a number in the unit the column shows under the workbook's units, or yes and no.
 */
export type Entry = string | number | boolean;

/** Entries by column id; columns left out are blank, computed ones given are overrides. */
export type Entries = Readonly<Record<string, Entry>>;
