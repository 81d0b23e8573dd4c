// How workbooks of file version 1 were declared: sheets and columns by their names, every built-in sheet in every file. Only
// version-1.ts reads it, to turn such a file into one of today's.
/** A pair of units, one for workbooks in US customary units and one for SI. */
export interface UnitPair {
  readonly us: string;
  readonly si: string;
}

export type TypeDeclaration =
  | { readonly type: 'number'; readonly unit: UnitPair }
  | { readonly type: 'temperature' }
  | { readonly type: 'date' }
  | { readonly type: 'text' }
  | { readonly type: 'yesno' }
  | { readonly type: 'choice'; readonly options: readonly string[] }
  | { readonly type: 'link'; readonly table: string };

export interface ColumnDeclaration {
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
  /** Digits after the decimal mark when shown; the figure itself keeps every digit. */
  readonly decimals?: number;
  /** Entered values must lie within (inclusive), in the SI unit of the pair. */
  readonly least?: number;
  readonly most?: number;
  /** Must be filled in a row. */
  readonly required?: boolean;
  /** Added by a person: it can be removed again, and a computed one has whatever type its formula gives. */
  readonly own?: boolean;
  /** The column of this sheet that takes an entry which this one can't: 5 g typed as a Quantity of seeds goes to Weight. */
  readonly orElse?: string;
}

/** Where the rows of a sheet come from. */
export type RowSource =
  | { readonly from: 'entry' }
  /** Exactly one row. */
  | { readonly from: 'single' }
  /** One per row of `table` for which `where` (a yes/no formula on this sheet; '' = all) holds. `as` names the link column. */
  | { readonly from: 'each'; readonly table: string; readonly as: string; readonly where: string }
  /** One per day, week (starting on `first`'s weekday) or month from `first` to `last` (formulas giving dates). `as` names the date column. */
  | {
      readonly from: 'span';
      readonly first: string;
      readonly last: string;
      readonly step: 'day' | 'week' | 'month';
      readonly as: string;
    }
  /** One per pair of rows of two tables. */
  | {
      readonly from: 'pairs';
      readonly tables: readonly [string, string];
      readonly as: readonly [string, string];
      readonly where: string;
    }
  /** One per filled date among `dates`. `as` names the date column, `event` the text column that says which, `about` a link column per table. */
  | {
      readonly from: 'events';
      readonly dates: readonly {
        readonly table: string;
        readonly column: string;
        readonly event: string;
        readonly about: string;
      }[];
      readonly as: string;
      readonly event: string;
    };

/** A thing to look at: where `says` (a text formula on the sheet) isn't blank, the sentence stands in the attention list at `column`. */
export interface CheckDeclaration {
  readonly name: string;
  readonly level: 'error' | 'warning' | 'note';
  readonly column: string;
  readonly says: string;
}

export interface SheetDeclaration {
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
  /** The usual cautions, shown where they apply. */
  readonly cautions: readonly string[];
}

/**
 * What stands in a cell of a declared row: text as a person types it ('8 in', '15 Mar 2027', 'Amber early'), a number in
 * the unit the column shows under the workbook's units, or yes and no.
 */
export type Entry = string | number | boolean;

/** A row as declared: entries by column; columns left out are blank, computed ones given are overrides. */
export type RowEntries = Readonly<Record<string, Entry>>;

/** A whole workbook as declared, with its rows by sheet. Rows of made sheets name theirs by the made columns. */
export interface WorkbookDeclaration {
  readonly title: string;
  readonly units: 'us' | 'si';
  /** ISO 4217 code. */
  readonly currency: string;
  /** Civil day that TODAY() gives. */
  readonly today: number;
  /** The cell of a one-row sheet that says which year a date typed without one is in; today's year where absent. */
  readonly year?: { readonly sheet: string; readonly column: string };
  readonly sheets: readonly SheetDeclaration[];
  readonly rows: Readonly<Record<string, readonly RowEntries[]>>;
}
