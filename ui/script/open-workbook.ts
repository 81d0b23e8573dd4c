// What a script holds of a workbook, and the plain values that go in and out. Imports nothing, so that the package's declarations
// are this file and the way in.

/** A number in the unit of its column, a text, yes and no, a date as 2027-03-15, a row by its name, null for a blank. */
export type Value = number | string | boolean | null | Fault;

/** A cell or formula that could not be worked out. */
export interface Fault {
  readonly error: string;
  readonly why: string;
}

export interface Answer {
  readonly value: Value;
  /** The symbol of the unit that a number is in; null where there is none. */
  readonly unit: string | null;
  /** As a person reads it: '12.4 lb'. */
  readonly shown: string;
}

export interface Column {
  readonly name: string;
  readonly type: string | null;
  readonly unit: string | null;
  readonly formula?: string;
}

export interface Found {
  readonly level: 'error' | 'warning' | 'note';
  readonly table: string;
  readonly row: string;
  readonly column: string;
  readonly says: string;
}

export interface OpenWorkbook {
  readonly title: string;
  /** What was not as it should be in the file, a sentence each. */
  readonly notes: readonly string[];
  tables(): readonly string[];
  columns(table: string): readonly Column[];
  /** Rows in their order, by column name. */
  rows(table: string): readonly Readonly<Record<string, Value>>[];
  /** One cell; any row name will do in a one-row table. */
  read(table: string, row: string, column: string): Answer;
  /** What a formula gives: 'SUM(Beds[Length])'. */
  ask(formula: string): Answer;
  /** Types into a cell as a person would: '6 in', '85%', '2027-03-15'; '' clears it. */
  set(table: string, row: string, column: string, entry: string | number | boolean): void;
  /** A new row with entries by column name. */
  add(table: string, entries: Readonly<Record<string, string | number | boolean>>): void;
  remove(table: string, row: string): void;
  /** Takes the last change back; false where there is none. */
  undo(): boolean;
  /** What needs attention. */
  findings(): readonly Found[];
  /** A workbook that holds the same and changes by itself from here on; it is saved under another name. */
  branch(): OpenWorkbook;
  /** Writes the file that was opened, one that was written from here before, or a new one; whole or not at all. */
  save(path?: string, saving?: Saving): void;
}

export interface Saving {
  /** Any other file that is there already is written over too, as when a script is run again. */
  readonly over?: boolean;
}
