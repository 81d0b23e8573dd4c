// What a formula may call, as the checker sees it: parameters with type patterns, a result pattern, a doc line and a
// source. Bodies live beside the signatures in engine/functions; the checker never looks at them.

import type { Dimension } from '../units/dimension.ts';
import type { RecordType, ValueType } from '../values/type.ts';

/**
 * What an argument may be. Letters stand for a type to be found: every use of one letter in a signature must agree.
 * `among` narrows what a letter may stand for: 'numbers' = quantities of any dimension; 'ordered' = quantities,
 * temperatures and dates; 'anything' = every type.
 */
export type Pattern =
  | { readonly is: 'quantity'; readonly dimension: Dimension }
  | { readonly is: 'letter'; readonly letter: string; readonly among: 'numbers' | 'ordered' | 'anything' }
  | { readonly is: 'temperature' }
  | { readonly is: 'date' }
  | { readonly is: 'text' }
  | { readonly is: 'yesno' }
  | { readonly is: 'anything' }
  /** A column whose function works out several figures: the body gets them one after the other. */
  | { readonly is: 'record'; readonly record: RecordType }
  /** A whole column of a table; all column parameters of one call come from one table. */
  | { readonly is: 'column'; readonly of: Pattern }
  /** A value of this row or a whole column (SUM's arguments). */
  | { readonly is: 'values'; readonly of: Pattern }
  /** A condition on the column parameter just before it: a value, or text such as ">=5", or ">="&[Week]. */
  | { readonly is: 'condition' }
  | { readonly is: 'table' }
  /** A sheet by its name, taken as its first column: what VLOOKUP looks in. */
  | { readonly is: 'first column'; readonly of: Pattern }
  /** A column of the sheet named earlier in the call: its name in quotes, its number, or Table[Column]. */
  | { readonly is: 'field'; readonly of: Pattern }
  /** A sheet of conditions on the sheet named earlier: its rows are alternatives, the cells of a row must all hold. */
  | { readonly is: 'criteria' };

/** The type of one value, said outright or by a letter. */
export type ValuePattern = Extract<
  Pattern,
  { readonly is: 'quantity' | 'letter' | 'temperature' | 'date' | 'text' | 'yesno' }
>;

export interface Parameter {
  readonly name: string;
  readonly pattern: Pattern;
  /** May be left out at the end of the call, or left empty between separators. */
  readonly optional?: boolean;
  /** The numeric body wants this argument in this unit ('h', 'degC', 'day', 'cm'); canonical where absent. */
  readonly unit?: string;
  /** A plain number may stand here and is taken in `unit`: DAYLENGTHDATE(38; 14; 2027) reads 14 as hours. */
  readonly plain?: boolean;
  /** The range in which the model holds, in that unit; outside it the cell says so (error kind 'range'). */
  readonly limit?: { readonly min?: number; readonly max?: number; readonly why: string };
}

/** What came in for a parameter, for signatures whose result can't be said by a pattern. */
export interface ArgumentType {
  /** undefined: left out, or a bare blank. */
  readonly type: ValueType | undefined;
  /** The value where it is written out as a constant (POWER's exponent, ROUND's digits); canonical. */
  readonly constant: number | string | boolean | undefined;
}

export type Result =
  | ValuePattern
  /** The letter's dimension to a power: SQRT of an area is a length. */
  | { readonly is: 'power'; readonly letter: string; readonly exponent: number }
  /** The letters' dimensions multiplied, each to its power: SUMPRODUCT, SLOPE. */
  | { readonly is: 'product'; readonly powers: readonly { readonly letter: string; readonly exponent: number }[] }
  /** Several figures at once: the body answers with Figures. */
  | { readonly is: 'record'; readonly record: RecordType }
  /** A rule of its own; a string is the diagnostic, told at the whole call. */
  | { readonly is: 'rule'; readonly rule: (args: readonly ArgumentType[]) => ValueType | string };

export type FunctionGroup =
  | 'logic'
  | 'mathematics'
  | 'rounding'
  | 'statistics'
  | 'conditional totals'
  | 'database'
  | 'look-up'
  | 'text'
  | 'dates'
  | 'information'
  | 'finance'
  | 'light and climate'
  | 'seed'
  | 'stand'
  | 'space and yield'
  | 'after harvest'
  | 'soil and water'
  | 'records';

export interface Signature {
  /** Upper case, dots allowed: BINOM.DIST. */
  readonly name: string;
  readonly group: FunctionGroup;
  readonly parameters: readonly Parameter[];
  /** How many of the last parameters repeat as a group, any number of times: SUM 1, SUMIFS 2. 0: none. */
  readonly repeating: number;
  /** One more argument may stand after the repeating pairs, for all other cases: it fills the pair's second parameter (SWITCH). */
  readonly otherwise?: true;
  readonly result: Result;
  /** Kept for formulas of earlier templates: checked and run like any, never suggested. */
  readonly former?: true;
  /** One line: what it gives, in a grower's words. */
  readonly doc: string;
  /** 'OpenFormula 6.16.61' or the publication behind a model. */
  readonly source: string;
}
