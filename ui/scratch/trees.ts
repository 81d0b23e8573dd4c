// Calls put together inside hyperformula: what a function of ours asks one of hyperformula's to do. Used by the files whose functions
// stand inside it.

import { CellError, type FunctionPlugin, SimpleRangeValue } from 'hyperformula';

export type Tree = Parameters<FunctionPlugin['evaluateAst']>[0];
export type State = Parameters<FunctionPlugin['evaluateAst']>[1];
export type Value = ReturnType<FunctionPlugin['evaluateAst']>;
export type Single = Exclude<Value, SimpleRangeValue>;

export interface Call {
  readonly procedureName: string;
  readonly args: Tree[];
}

/** hyperformula does not hand out the names of its kinds of node, which are the texts that stand here. */
function node(parts: object): Tree {
  return parts as Tree;
}

export function callTree(procedureName: string, ...args: readonly Tree[]): Tree {
  return node({ type: 'FUNCTION_CALL', procedureName, args: [...args] });
}

export function over(dividend: Tree, divisor: Tree): Tree {
  return node({ type: 'DIV_OP', left: dividend, right: divisor });
}

export function times(left: Tree, right: Tree): Tree {
  return node({ type: 'TIMES_OP', left, right });
}

/** A value as it would be written in a formula. */
export function constant(value: Single): Tree {
  if (typeof value === 'number') return node({ type: 'NUMBER', value });
  if (typeof value === 'string') return node({ type: 'STRING', value });
  if (typeof value === 'boolean') return callTree(value ? 'TRUE' : 'FALSE');
  if (value instanceof CellError) return node({ type: 'ERROR', error: value });
  return typeof value === 'object' ? node({ type: 'NUMBER', value: value.val }) : node({ type: 'EMPTY' });
}

/** One column of values as it would be written in braces. */
export function columnTree(values: readonly Single[]): Tree {
  return node({ type: 'ARRAY', args: values.map((value) => [constant(value)]) });
}

/** The values by rows and columns; one value is a row of one. */
export function gridOf(value: Value): readonly (readonly Single[])[] {
  return value instanceof SimpleRangeValue ? value.data : [[value]];
}
