// A sheet at work: its declaration, its columns with types, formulas and overrides, and its rows in the model. Plain state
// with the questions asked of it; transaction.ts changes it, compile.ts fills in the formulas.

import type { Complaint, Tree } from '../language/tree.ts';
import type { Typed } from '../language/typed.ts';
import type { TableData } from '../recalculation/model.ts';
import type { Column } from '../values/column.ts';
import type { ValueType } from '../values/type.ts';
import type { ColumnDeclaration, RowSource, SheetDeclaration } from './declaration.ts';

export interface SheetColumn {
  /** Without the formula, which may have been changed since. */
  readonly declaration: ColumnDeclaration;
  readonly role: 'entered' | 'computed' | 'default' | 'made';
  readonly data: Column;
  /** The declared type, or the one the formula gives where none was declared; undefined while that doesn't check. */
  type: ValueType | undefined;
  /** The type follows the formula. */
  readonly inferred: boolean;
  /** As entered; printed once it parses. */
  formula: string;
  tree: Tree | undefined;
  typed: Typed | undefined;
  complaint: Complaint | undefined;
  /** Rows with a hand-typed value in a computed or default column. */
  readonly overrides: Set<number>;
  /** Numbers of the units that cells were typed in (Units of the workbook); 0 or absent: the column's own. */
  typedUnits: Uint8Array | undefined;
}

export interface Sheet {
  readonly declaration: SheetDeclaration;
  readonly name: string;
  readonly source: RowSource;
  readonly data: TableData;
  readonly columns: SheetColumn[];
  /** Rows by their key, ignoring case; undefined where the sheet has no key. */
  readonly keys: Map<string, number> | undefined;
  /** Formulas that stand behind the sheet: checks, the rows' condition, a span's ends. */
  readonly hidden: SheetColumn[];
}

export function findSheetColumn(sheet: Sheet, name: string): SheetColumn | undefined {
  return sheet.columns.find((column) => column.declaration.name === name);
}

export function isComputed(column: SheetColumn): boolean {
  return column.role === 'computed' || column.role === 'default';
}

/** Whether a cell holds what a person typed. */
export function isTyped(column: SheetColumn, row: number): boolean {
  return column.role === 'entered' || column.overrides.has(row);
}

/** Rows of an entered sheet can be added and removed by hand. */
export function isEnteredSheet(sheet: Sheet): boolean {
  return sheet.source.from === 'entry';
}
