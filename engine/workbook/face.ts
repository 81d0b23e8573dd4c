// What the faces (browser, terminal) see of a workbook: edits in, change sets out, cells as shown, explanations and the
// attention list. Types only; workbook.ts keeps the promise.

import type { Complaint } from '../language/tree.ts';
import type { CellAddress, Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';
import type { RowSource, TypeDeclaration } from './declaration.ts';

/** One wish. Entries are text as a person types it; '' clears. `row` is a slot. */
export type Edit =
  | {
      readonly edit: 'cell';
      readonly table: string;
      readonly row: number;
      readonly column: string;
      readonly entry: string;
    }
  /** Takes an override (or an own value in a 'default' column) back to the formula. */
  | { readonly edit: 'take back'; readonly table: string; readonly row: number; readonly column: string }
  | { readonly edit: 'insert row'; readonly table: string; readonly entries: Readonly<Record<string, string>> }
  | { readonly edit: 'remove row'; readonly table: string; readonly row: number }
  /** Replaces the formula of a computed or default column, or adds a computed column whose type the formula gives. */
  | { readonly edit: 'formula'; readonly table: string; readonly column: string; readonly formula: string }
  | { readonly edit: 'add column'; readonly table: string; readonly column: string; readonly type: TypeDeclaration }
  | { readonly edit: 'remove column'; readonly table: string; readonly column: string }
  | { readonly edit: 'units'; readonly units: 'us' | 'si' }
  | { readonly edit: 'today'; readonly today: number };

/** Why an edit could not be done; nothing of the transaction was. */
export interface Refusal {
  readonly refused: true;
  /** Which edit of the transaction, from 0. */
  readonly index: number;
  readonly table?: string;
  readonly row?: number;
  readonly column?: string;
  readonly why: string;
  /** For a formula: the marked part. */
  readonly complaint?: Complaint;
}

export interface ChangeSet {
  readonly refused: false;
  readonly label: string;
  /** Rows whose value, state or text changed, by table and column; 'all' where most did. */
  readonly cells: readonly { readonly table: string; readonly column: string; readonly rows: Int32Array | 'all' }[];
  /** Tables whose set of rows changed. */
  readonly rowsOf: readonly string[];
  /** Tables whose columns, formulas or units changed. */
  readonly columnsOf: readonly string[];
  /** Slots of the rows inserted by this transaction, in the order of its edits. */
  readonly inserted: readonly number[];
}

export interface TableView {
  readonly name: string;
  readonly question: string;
  readonly about: string;
  readonly source: RowSource;
  readonly oneRow: boolean;
  /** Rows can be added and removed by hand. */
  readonly entered: boolean;
  readonly key: string | undefined;
  readonly columns: readonly ColumnView[];
  readonly cautions: readonly string[];
}

export interface ColumnView {
  readonly name: string;
  /** undefined only where a formula without declared type doesn't check. */
  readonly type: ValueType | undefined;
  /** Unit as shown in the header: 'in', 'lb', 'EUR', '' for none. */
  readonly unit: string;
  readonly role: 'entered' | 'computed' | 'default' | 'made';
  /** As printed; '' for entered and made columns. */
  readonly formula: string;
  /** What is wrong with the formula, if anything. */
  readonly complaint: Complaint | undefined;
  readonly group: string;
  readonly note: string;
  readonly decimals: number | undefined;
  readonly required: boolean;
}

export type Standing =
  /** Typed by a person. */
  | 'entered'
  /** From the formula. */
  | 'computed'
  /** Typed over a computed cell; can be taken back. */
  | 'override'
  /** The formula stands in where nothing was typed. */
  | 'default';

export interface CellView {
  /** Canonical: dates civil days, links slots, money and quantities in canonical units. */
  readonly value: Scalar;
  /** Number in the column's display unit for quantities; else undefined. */
  readonly number: number | undefined;
  /** As shown, without the column's own unit; with its unit where the cell was typed in another: '20 cm'. */
  readonly text: string;
  /** What an editor opens with. */
  readonly entry: string;
  readonly standing: Standing;
}

export interface Attention {
  readonly level: 'error' | 'warning' | 'note';
  readonly table: string;
  readonly row: number | undefined;
  readonly rowName: string;
  readonly column: string;
  readonly says: string;
}

/** A cell's reasons, down to its inputs. */
export interface Explanation {
  readonly table: string;
  readonly row: number;
  readonly rowName: string;
  readonly column: string;
  /** With its unit: '12.4 lb'. */
  readonly shown: string;
  readonly standing: Standing;
  /** The formula as printed, and with this row's values in place of the names; '' for entered cells. */
  readonly formula: string;
  readonly inValues: string;
  /** Where blank or an error: why, naming the cell it began at. */
  readonly why: string;
  /** The cells it reads, each with its own explanation one level down; deeper levels are asked for when opened. */
  readonly rests: readonly Explanation[];
}

export interface UndoState {
  /** Label of what undo would take back; undefined where there is nothing. */
  readonly undo: string | undefined;
  readonly redo: string | undefined;
}

export interface WorkbookFace {
  readonly title: string;
  readonly units: 'us' | 'si';
  readonly currency: string;
  readonly today: number;
  tables(): readonly TableView[];
  table(name: string): TableView | undefined;
  /** Slots of the rows that exist, in order. */
  rows(table: string): Int32Array;
  /** The row whose key reads so; undefined where none does. */
  rowOf(table: string, key: string): number | undefined;
  /** How a row is named: its key, its date, its pair. */
  rowName(table: string, row: number): string;
  cell(table: string, row: number, column: string): CellView;
  /** The canonical value alone; cheaper than cell(). */
  value(table: string, row: number, column: string): Scalar;
  /**
   * All or nothing; one transaction, one undo step. With `joined`, an edit right after one of the same label becomes one
   * undo step with it: a drag is many edits and one step back.
   */
  edit(edits: readonly Edit[], label: string, joined?: 'joined'): ChangeSet | Refusal;
  /**
   * What cells would hold after each of several sets of edits, each tried on the workbook as it is now and taken back:
   * nothing is kept, told or put in the journal. A set that would be refused gives undefined.
   */
  whatIf(
    trials: readonly (readonly Edit[])[],
    cells: readonly CellAddress[],
  ): readonly (readonly Scalar[] | undefined)[];
  undo(): ChangeSet | undefined;
  redo(): ChangeSet | undefined;
  undoState(): UndoState;
  /** Called after each transaction, undo and redo; gives back the way to stop. */
  subscribe(listener: (change: ChangeSet) => void): () => void;
  /** What an entry would mean in this column, without doing it: the value or the sentence that refuses it. */
  tryEntry(
    table: string,
    column: string,
    entry: string,
  ): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string };
  /** Checks a formula for a column without doing anything; `inferred` is its type in words, with unit. */
  tryFormula(
    table: string,
    column: string,
    formula: string,
  ): { readonly ok: true; readonly inferred: string } | { readonly ok: false; readonly complaint: Complaint };
  explain(table: string, row: number, column: string): Explanation;
  attention(): readonly Attention[];
  /** A copy that shares nothing with the original: a what-if. */
  branch(): WorkbookFace;
}
