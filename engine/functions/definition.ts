// A function that formulas may call: its signature (language/signature.ts) with a body. The body says in which lane it
// runs; the recalculation makes kernels of it. Bodies are pure: no clock, no random, no table is seen.

import type { ArgumentType, Signature } from '../language/signature.ts';
import type { Typed } from '../language/typed.ts';
import type { CellError, Scalar } from '../values/error.ts';
import type { Figures } from '../values/figures.ts';

/** One value, or several figures at once where the signature's result is a record. */
export type Answer = Scalar | Figures;

/** What a not-a-number result of a numeric body stands for. */
export type Undefined = 'blank' | CellError;

/** Numbers of one column, blanks and errors already dealt with: `values[0..count)`. */
export type FoldNumbers = (values: Float64Array, count: number) => number;

/** One argument's numbers over many rows: row i's at `at + i`, or at `at` for every row where `uniform`. */
export interface Run {
  readonly values: Float64Array;
  readonly at: number;
  readonly uniform: boolean;
}

/**
 * A body over many rows at once: out[i] is what the body gives for row i of each argument. A function called alone gets
 * and gives its numbers boxed, which costs more than rounding them; functions that every season calls row by row have a loop.
 */
export type Loop = (out: Float64Array, count: number, args: readonly Run[]) => void;

/** Row i's number. */
export function rowOf({ values, at, uniform }: Run, i: number): number {
  return values[uniform ? at : at + i] as number;
}

/** A fold that what is known of two lists tells of both, one after the other. Of one value alone the value itself is known. */
export interface Running {
  /** What is known of no values. */
  readonly none: number;
  readonly join: (known: number, other: number) => number;
  /** The fold of so many values; no number where it has none. */
  readonly comesTo: (known: number, count: number) => number;
}

/** Which of several numbers. */
export type Picks = 'least' | 'most';

export interface Fold {
  readonly fold: FoldNumbers;
  /** Adds one number to the last, from 0 on: the totals of longer and longer lists are what it passes on its way. */
  readonly addsUp?: true;
  /** It is the least or the most of its numbers: what the others are is nothing to it. */
  readonly picks?: Picks;
  /** How lists are folded that are known in parts; absent where the parts don't tell. */
  readonly running?: Running;
  /**
   * What is counted in: 'numbers' skips blanks (SUM), 'filled' counts every value that isn't blank whatever its type,
   * errors too (COUNTA), 'blanks' counts blanks (COUNTBLANK), 'numbers only' skips blanks and errors (COUNT).
   */
  readonly takes: 'numbers' | 'filled' | 'blanks' | 'numbers only';
  /** What a not-a-number result means (MIN of nothing is blank; AVERAGE of nothing divides by zero). */
  readonly undefinedMeans: Undefined;
}

/** From columns, whole or of matching rows, to what answers one row's scalars, in numbers: not-a-number stands for what is none, and for no answer. */
export type OverNumbers = (columns: readonly Float64Array[]) => (scalars: Float64Array) => number;

export type Body =
  /**
   * All arguments numbers in their parameter's unit (dates as civil days, yes/no as 1/0); any blank makes blank, any error
   * passes on, before the body is called. Left-out optional arguments come as NaN. The fast lane: keep it free of allocation.
   */
  | {
      readonly lane: 'numeric';
      readonly compute: (...args: number[]) => number;
      readonly undefinedMeans: Undefined;
      readonly loop?: Loop;
      /** It costs far more than finding what it gave for the same numbers before, which are remembered; without a loop, of up to four. */
      readonly isDear?: true;
    }
  /**
   * One row's values. `blanks: 'pass'`: any blank argument (not one left out) makes blank before the call. 'given': blanks
   * come as null. Errors pass on unless `errors: 'given'` (ISERROR, IFERROR). Left-out arguments come as null.
   */
  | {
      readonly lane: 'scalar';
      readonly compute: (args: readonly Scalar[]) => Answer;
      readonly blanks: 'pass' | 'given';
      readonly errors?: 'given';
      /** All it says is whether its one argument is blank, for which no value need be looked at. */
      readonly isBlankness?: true;
    }
  /** SUM, MAX: every argument's values, whole columns included, blanks skipped, folded to one. */
  | { readonly lane: 'fold'; readonly fold: Fold }
  /** SUMIF and SUMIFS: a fold over the rows that meet conditions. The planner finds the roles by the parameter patterns. */
  | { readonly lane: 'conditional fold'; readonly fold: Fold }
  /**
   * Whole columns as lists and scalars as they are: MATCH, PERCENTILE, SUMPRODUCT, FORECAST. A column argument comes as an
   * array of Scalars with one entry per row, in row order, blanks as null, canonical. Values that are no column come in their
   * parameter's unit, errors and blanks as they are.
   */
  | {
      readonly lane: 'columns';
      readonly compute: (args: readonly (Scalar | readonly Scalar[])[]) => Answer;
      /**
       * The same, where all is numbers and scalars come first: columns are looked at once for as long as they stay, and what that
       * gives answers row by row. An error among the scalars passes on before.
       */
      readonly overNumbers?: OverNumbers;
    }
  /**
   * Rows of another table that meet conditions, with their columns: COVER(needed; Packs[Seeds]; Packs[Price];
   * Packs[Variety]; [Variety]). Scalars first, then value columns, then pairs of (column, condition): `valueColumns` says
   * how many of the column parameters are values. `columns[k][i]` is value column k of the i-th matching row, canonical.
   * Scalars come in their parameter's unit; an error among them passes on before the call.
   */
  | {
      readonly lane: 'matching rows';
      readonly valueColumns: number;
      readonly compute: (scalars: readonly Scalar[], columns: readonly (readonly Scalar[])[]) => Answer;
      /**
       * The same, where all is numbers, for many rows that read the same matching rows: `columns` as numbers, not-a-number
       * where a cell holds none, are looked at once, and what it gives answers row by row.
       */
      readonly overNumbers?: OverNumbers;
      /** All that it gives is the first value of its one column that is not blank. */
      readonly takesFirst?: true;
    }
  /** DSUM(Plantings; "Seeds"; Wanted): a fold over the rows that meet a sheet of criteria; over the rows themselves without a field. */
  | { readonly lane: 'database'; readonly fold: Fold }
  /** DGET: the field of the one row that meets a sheet of criteria, whatever its type. */
  | { readonly lane: 'database row'; readonly none: CellError; readonly several: CellError }
  /**
   * A body that depends on what the arguments are: ROUND to digits or to a step, TEXT of a date or of a number. Chosen
   * once per formula by bodyFor(), never per row.
   */
  | { readonly lane: 'by type'; readonly choose: (args: readonly ArgumentType[]) => RunBody }
  /** Made by the planner itself, because only some of its arguments count, or rows rather than values. */
  | { readonly lane: 'form'; readonly form: Form };

/** What the planner makes of a call in the lane 'form'; one way of looking up may stand under several names. */
export type Form =
  | 'if'
  | 'ifs'
  | 'switch'
  | 'choose'
  | 'and'
  | 'or'
  | 'not'
  | 'iferror'
  | 'ifna'
  | 'rows'
  | 'columns'
  /** XLOOKUP: the wanted key, the column of keys, the column of results, what stands in where there is none. */
  | 'lookup'
  /** VLOOKUP of an equal key: the wanted key, the first column, the column of results; what comes after is not looked at. */
  | 'lookup first column'
  | 'today';

/** A body that can run as it stands. */
export type RunBody = Exclude<Body, { readonly lane: 'by type' }>;

/** Numeric results come back in this unit ('h', 'g', ...); canonical where absent. */
export interface FunctionDefinition {
  readonly signature: Signature;
  readonly body: Body;
  readonly resultUnit?: string;
}

function argumentType(node: Typed): ArgumentType {
  if (node.node === 'blank') return { type: undefined, constant: undefined };
  const constant = node.node === 'constant' ? node.value : undefined;
  const written = typeof constant === 'object' ? undefined : constant;
  if (node.node === 'negate' && node.operand.node === 'constant' && typeof node.operand.value === 'number') {
    return { type: node.type, constant: -node.operand.value };
  }
  return { type: node.type, constant: written };
}

/** The body that runs for a call with these arguments. */
export function bodyFor(definition: FunctionDefinition, args: readonly Typed[]): RunBody {
  const { body } = definition;
  return body.lane === 'by type' ? body.choose(args.map(argumentType)) : body;
}
