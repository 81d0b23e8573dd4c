// The typed tree: what the checker makes of a formula once every name is found, every type known and every unit turned
// into canonical numbers. Tables and columns stand in it by their ids. The calculation plans its kernels from this tree and
// never looks at text again.

import type { Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';
import type { Signature } from './signature.ts';
import type { BinaryOperator, Span } from './tree.ts';

export type Comparison = '=' | '<>' | '<' | '<=' | '>' | '>=';

export type Typed = Span & { readonly type: ValueType } & (
    | { readonly node: 'constant'; readonly value: Scalar }
    /** Nothing: IF without otherwise, an empty argument. Its type is the one it stands in for. */
    | { readonly node: 'blank' }
    /** TODAY(): an input of the workbook. */
    | { readonly node: 'today' }
    /** This row's cell; `links` are followed first, each a link column of the table reached so far. */
    | { readonly node: 'cell'; readonly links: readonly string[]; readonly table: string; readonly column: string }
    /** What a person typed in this row's cell; blank where its formula stands in. */
    | { readonly node: 'typed'; readonly table: string; readonly column: string }
    /** The one row of a one-row table. */
    | { readonly node: 'single'; readonly table: string; readonly column: string }
    /** A whole column; only as an argument of a function that takes one. */
    | { readonly node: 'column'; readonly table: string; readonly column: string }
    | { readonly node: 'table'; readonly table: string }
    | { readonly node: 'negate'; readonly operand: Typed }
    | { readonly node: 'binary'; readonly operator: BinaryOperator; readonly left: Typed; readonly right: Typed }
    /** The key text of a link, where a link meets text. */
    | { readonly node: 'key'; readonly operand: Typed }
    /** A condition on a column. */
    | { readonly node: 'condition'; readonly comparison: Comparison; readonly value: Typed }
    /** A sheet of conditions on the rows of the sheet `of`: each pair is a column looked at and the one with its conditions. */
    | {
        readonly node: 'criteria';
        readonly table: string;
        readonly of: string;
        readonly pairs: readonly CriteriaPair[];
      }
    /** `name` is the signature's; args are in parameter order, blank nodes where left out in the middle. */
    | { readonly node: 'call'; readonly signature: Signature; readonly args: readonly Typed[] }
  );

/** The parts that a part is directly made of. */
export function operandsOf(typed: Typed): readonly Typed[] {
  switch (typed.node) {
    case 'negate':
    case 'key':
      return [typed.operand];
    case 'condition':
      return [typed.value];
    case 'binary':
      return [typed.left, typed.right];
    case 'call':
      return typed.args;
    default:
      return [];
  }
}

/** Looks at a part and all that it is made of, from the outside in. */
export function walkTyped(typed: Typed, see: (part: Typed) => void, into = operandsOf): void {
  see(typed);
  for (const operand of into(typed)) walkTyped(operand, see, into);
}

export interface CriteriaPair {
  readonly looked: { readonly column: string; readonly type: ValueType };
  readonly given: { readonly column: string; readonly type: ValueType };
}

/** What the checker needs to know of the workbook. */
export interface Catalog {
  readonly tables: readonly TableShape[];
  /** The system whose units figures are shown in that have no column of their own; SI where absent. */
  readonly units?: 'us' | 'si';
}

export interface TableShape {
  /** Never changes; what the typed tree says. */
  readonly id: string;
  readonly name: string;
  readonly oneRow: boolean;
  /** The id of the column whose text names a row; links are typed and shown by it. */
  readonly key: string | undefined;
  readonly columns: readonly ColumnShape[];
}

export interface ColumnShape {
  /** Unlike any other in its table; what the typed tree says. */
  readonly id: string;
  readonly name: string;
  /** undefined while its own formula doesn't check: what uses it can't be checked either, and says which. */
  readonly type: ValueType | undefined;
}
