// An error is a value: a kind, the cell where it began and a sentence that says what to do. It travels to what depends
// on it and stops nothing else. Kinds follow OpenFormula's error types, plus those that typed sheets add.

/** Sheet and column by their ids, the row by its slot: good until rows of the sheet come or go. */
export interface CellAddress {
  readonly sheet: string;
  readonly row: number;
  readonly column: string;
}

export type ErrorKind =
  /** The formula itself doesn't check; its text is kept. */
  | 'formula'
  /** The column is part of a circle of formulas. */
  | 'circle'
  /** Division by zero (OpenFormula #DIV/0!). */
  | 'divide'
  /** No such number: a root of a negative, an overflow (#NUM!). */
  | 'number'
  /** Outside the range in which a published model holds. */
  | 'range'
  /** Nothing found (#N/A). */
  | 'missing'
  /** A value of the wrong sort reached a function (#VALUE!). */
  | 'value'
  /** A link names a row that doesn't exist (#REF!). */
  | 'reference';

export interface CellError {
  readonly error: ErrorKind;
  /** A plain sentence: what is wrong and what to do. */
  readonly why: string;
  /** Where it began; absent while it is still being made or outside a table. */
  readonly at?: CellAddress;
}

/** What a cell can hold as seen one at a time: dates are civil days, links are row slots, null is blank. */
export type Scalar = number | string | boolean | null | CellError;

export function isError(value: Scalar): value is CellError {
  return typeof value === 'object' && value !== null;
}
