// The engine's functions inside hyperformula, by the same names: those of the trade, and what the engine has of general functions
// that hyperformula has not. Each calls the engine's own body.

import {
  ArraySize,
  CellError,
  CellValueDetailedType,
  EmptyValue,
  ErrorType,
  FunctionPlugin,
  HyperFormula,
  type ImplementedFunctions,
  SimpleRangeValue,
} from 'hyperformula';
import { type ErrorKind, FUNCTIONS, isError, type Scalar } from '../../engine/index.ts';
import type { Measures } from './call-measures.ts';
import { callPlainly, canBeCalled, type PlainArgument } from './engine-call.ts';
import type { Measure } from './figures.ts';

/** What the functions need to know of the workbook: hyperformula hands it to them as its context. */
export class WorkbookContext {
  readonly measures: Measures;
  /** What a column counts in, by the name it has on papers; undefined for any other name. */
  readonly measureNamed: (name: string) => Measure | undefined;

  constructor(measures: Measures, measureNamed: (name: string) => Measure | undefined) {
    this.measures = measures;
    this.measureNamed = measureNamed;
  }
}

/** Before a sentence of the engine's, to tell it from hyperformula's own messages; no letter that is seen. */
export const SAID_BY_ENGINE = '\u2060';

type Tree = Parameters<FunctionPlugin['evaluateAst']>[0];
type State = Parameters<FunctionPlugin['evaluateAst']>[1];
type Value = ReturnType<FunctionPlugin['evaluateAst']>;

interface Call {
  readonly procedureName: string;
  readonly args: Tree[];
}

const KINDS: Readonly<Record<ErrorKind, ErrorType>> = {
  formula: ErrorType.ERROR,
  circle: ErrorType.CYCLE,
  divide: ErrorType.DIV_BY_ZERO,
  number: ErrorType.NUM,
  range: ErrorType.VALUE,
  missing: ErrorType.NA,
  value: ErrorType.VALUE,
  reference: ErrorType.REF,
};

class EngineFunctions extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = {};

  /** One method for all: the call says which function is meant. */
  call(call: Call, state: State): Value {
    const definition = FUNCTIONS.get(nameOutside(call.procedureName));
    const { context } = this.config;
    if (definition === undefined || !(context instanceof WorkbookContext)) return new CellError(ErrorType.NAME);
    const args: (PlainArgument | undefined)[] = [];
    for (const tree of call.args) args.push(this.argument(tree, state, context));
    const answer = callPlainly(definition, args, context.measures);
    if (Array.isArray(answer)) return SimpleRangeValue.onlyValues([answer.map(cellOf)]);
    const isDate = definition.signature.result.is === 'date' && typeof answer === 'number';
    return isDate ? this.returnNumberWrapper(answer, CellValueDetailedType.NUMBER_DATE) : cellOf(answer as Scalar);
  }

  /** Several figures stand side by side. */
  size(call: Call): ArraySize {
    const result = FUNCTIONS.get(nameOutside(call.procedureName))?.signature.result;
    return result?.is === 'record' ? new ArraySize(result.record.figures.length, 1) : ArraySize.scalar();
  }

  argument(tree: Tree, state: State, context: WorkbookContext): PlainArgument | undefined {
    if (tree.type === 'EMPTY') return undefined;
    const value = this.evaluateAst(tree, state);
    if (!(value instanceof SimpleRangeValue)) return scalarOf(value);
    const cells = value.valuesFromTopLeftCorner().map(scalarOf);
    const measure = tree.type === 'NAMED_EXPRESSION' ? context.measureNamed(tree.expressionName) : undefined;
    return measure === undefined ? { cells } : { cells, measure };
  }
}

function scalarOf(value: Exclude<Value, SimpleRangeValue>): Scalar {
  if (value instanceof CellError)
    return { error: kindOf(value.type), why: (value.message ?? '').replace(SAID_BY_ENGINE, '') };
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  return typeof value === 'object' ? value.val : null;
}

function kindOf(type: ErrorType): ErrorKind {
  const found = Object.entries(KINDS).find(([, one]) => one === type)?.[0];
  return found === undefined || !Object.hasOwn(KINDS, found) ? 'value' : (found as ErrorKind);
}

function cellOf(value: Scalar): number | string | boolean | typeof EmptyValue | CellError {
  if (value === null) return EmptyValue;
  return isError(value) ? new CellError(KINDS[value.error], SAID_BY_ENGINE + value.why) : value;
}

/** Names of the engine's functions that papers have of it. */
export const FROM_ENGINE: readonly string[] = (() => {
  const there = new Set(HyperFormula.getRegisteredFunctionNames('enGB'));
  return [...FUNCTIONS.values()]
    .filter((definition) => canBeCalled(definition) && !there.has(definition.signature.name))
    .map(({ signature }) => signature.name);
})();

/** hyperformula takes any name that begins so for its own OFFSET, so those have another name inside it. */
const TAKEN = /^OFFSET(?=.)/;

/** The name that a function has inside hyperformula. */
export function nameInside(name: string): string {
  const upper = name.toUpperCase();
  return TAKEN.test(upper) && FUNCTIONS.has(upper) ? `DIBBLE.${upper}` : name;
}

function nameOutside(name: string): string {
  return name.replace(/^DIBBLE\./, '');
}

for (const name of FROM_ENGINE) {
  const isRecord = FUNCTIONS.get(name)?.signature.result.is === 'record';
  EngineFunctions.implementedFunctions[nameInside(name)] = {
    method: 'call',
    ...(isRecord ? { sizeOfResultArrayMethod: 'size', vectorizationForbidden: true } : {}),
  };
}
HyperFormula.registerFunctionPlugin(EngineFunctions, {
  enGB: Object.fromEntries(FROM_ENGINE.map((name) => [nameInside(name), nameInside(name)])),
});
