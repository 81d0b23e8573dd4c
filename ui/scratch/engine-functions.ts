// The engine's functions inside hyperformula, by the same names: those of the trade, what the engine has of general functions that
// hyperformula has not, and those in which the engine goes before it (engine-first.ts). Each calls the engine's own body, cell by
// cell where one figure is wanted and many are given, as spreadsheets do today.

import {
  ArraySize,
  CellError,
  CellValueDetailedType,
  EmptyValue,
  ErrorType,
  FunctionArgumentType,
  FunctionPlugin,
  HyperFormula,
  type ImplementedFunctions,
  SimpleRangeValue,
} from 'hyperformula';
import {
  type ErrorKind,
  FUNCTIONS,
  type FunctionDefinition,
  isError,
  type Parameter,
  parameterAt,
  type Scalar,
} from '../../engine/index.ts';
import { callPlainly, canBeCalled, type PlainArgument } from './engine-call.ts';
import { ENGINE_FIRST } from './engine-first.ts';
import { inGrid } from './grids.ts';
import { nameBeside, nameOutside, PASTED, SAID_HERE, saidHere, WorkbookContext } from './inside.ts';
import { writtenAs } from './text-formats.ts';
import { type Call, callTree, constant, type Single, type State, type Tree, type Value } from './trees.ts';

interface Given {
  readonly tree: Tree;
  /** undefined: left out. */
  readonly value: Value | undefined;
  readonly parameter: Parameter | undefined;
  readonly isOne: boolean;
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
    const count = call.args.length;
    const given = call.args.map((tree, i): Given => {
      const parameter = parameterAt(definition.signature, i, count);
      const isOne = parameter !== undefined && wantsOne(parameter, definition);
      return { tree, value: tree.type === 'EMPTY' ? undefined : this.evaluateAst(tree, state), parameter, isOne };
    });
    const many = given.flatMap(({ value, isOne }) => (isOne && value instanceof SimpleRangeValue ? [value] : []));
    if (many.length === 0 || definition.signature.result.is === 'record')
      return this.single(definition, given, context, state);
    const [height, width] = [many.map((one) => one.height()), many.map((one) => one.width())].map((of) =>
      Math.max(...of),
    );
    const cells = Array.from({ length: height ?? 0 }, (_, row) =>
      Array.from({ length: width ?? 0 }, (_, column) => {
        const answer = this.single(
          definition,
          given.map((one) => (one.isOne ? { ...one, value: cellIn(one.value, row, column) } : one)),
          context,
          state,
        );
        return answer instanceof SimpleRangeValue ? new CellError(ErrorType.VALUE) : answer;
      }),
    );
    return SimpleRangeValue.onlyValues(cells);
  }

  /** Figures of a record stand side by side; what wants one figure and gets many gives as many. */
  size(call: Call, state: State): ArraySize {
    const definition = FUNCTIONS.get(nameOutside(call.procedureName));
    if (definition === undefined) return ArraySize.scalar();
    const { result } = definition.signature;
    if (result.is === 'record') return new ArraySize(result.record.figures.length, 1);
    let [width, height] = [1, 1];
    for (const [i, tree] of call.args.entries()) {
      const parameter = parameterAt(definition.signature, i, call.args.length);
      if (parameter === undefined || !wantsOne(parameter, definition)) continue;
      const size = this.arraySizeForAst(tree, state);
      [width, height] = [Math.max(width, size.width), Math.max(height, size.height)];
    }
    return new ArraySize(width, height);
  }

  /** The answer to figures that are one where one is wanted. */
  single(definition: FunctionDefinition, given: readonly Given[], context: WorkbookContext, state: State): Value {
    const args = given.map((one) => this.argument(one, definition, context, state));
    if (definition.signature.name === 'TEXT') {
      const [value = null, format = null, more] = args;
      const isPlain = more === undefined && !isMany(value) && typeof format === 'string';
      if (isPlain) return cellOf(writtenAs(value, format));
    }
    const answer = callPlainly(definition, args, context.measures);
    // Days as this place writes them in figures alone, 3/15/2027, are hyperformula's to read.
    if (definition.signature.name === 'DATEVALUE' && typeof args[0] === 'string' && isError(answer as Scalar))
      return this.evaluateAst(callTree('DATEVALUE', constant(args[0])), state);
    if (Array.isArray(answer)) return SimpleRangeValue.onlyValues([answer.map(cellOf)]);
    const isDate = definition.signature.result.is === 'date' && typeof answer === 'number';
    return isDate ? this.returnNumberWrapper(answer, CellValueDetailedType.NUMBER_DATE) : cellOf(answer as Scalar);
  }

  argument(
    { tree, value, parameter, isOne }: Given,
    { signature }: FunctionDefinition,
    context: WorkbookContext,
    state: State,
  ): PlainArgument | undefined {
    if (value === undefined) return undefined;
    if (!(value instanceof SimpleRangeValue)) {
      const type = isOne && ENGINE_FIRST.has(signature.name) ? readAs(parameter) : undefined;
      return type === undefined ? scalarOf(value) : this.coerced(value, type, state);
    }
    const cells = value.valuesFromTopLeftCorner().map(scalarOf);
    const measure = tree.type === 'CELL_RANGE' ? context.measureOn(tree.start.sheet ?? -1) : undefined;
    return measure === undefined ? { cells } : { cells, measure };
  }

  /** As other spreadsheets read what stands in a cell: a blank as 0 or no letters, "5" as 5, 5 as "5". */
  coerced(value: Single, argumentType: FunctionArgumentType, state: State): Scalar {
    const read = this.coerceToType(value, { argumentType, passSubtype: true }, state);
    const isNone = read === undefined || Array.isArray(read) || read instanceof SimpleRangeValue;
    return scalarOf(isNone ? value : read);
  }
}

/** Whether one figure stands there: no column, no list, no record. */
function wantsOne({ pattern }: Parameter, { body }: FunctionDefinition): boolean {
  return body.lane !== 'fold' && pattern.is !== 'column' && pattern.is !== 'values' && pattern.is !== 'record';
}

function readAs(parameter: Parameter | undefined): FunctionArgumentType | undefined {
  switch (parameter?.pattern.is) {
    case 'text':
      return FunctionArgumentType.STRING;
    case 'yesno':
      return FunctionArgumentType.BOOLEAN;
    case 'quantity':
    case 'date':
      return FunctionArgumentType.NUMBER;
    case 'letter':
      return parameter.pattern.among === 'anything' ? undefined : FunctionArgumentType.NUMBER;
    default:
      return undefined;
  }
}

/** What stands in a row and column of many; of one row, one column or one figure the same for all. */
function cellIn(value: Value | undefined, row: number, column: number): Value | undefined {
  return value instanceof SimpleRangeValue ? inGrid(value.data, row, column) : value;
}

function isMany(argument: PlainArgument): argument is Extract<PlainArgument, { readonly cells: readonly Scalar[] }> {
  return typeof argument === 'object' && argument !== null && 'cells' in argument;
}

function scalarOf(value: Single): Scalar {
  if (value instanceof CellError) return { error: kindOf(value.type), why: saidHere(value.message) ?? '' };
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  return typeof value === 'object' ? value.val : null;
}

function kindOf(type: ErrorType): ErrorKind {
  const found = Object.entries(KINDS).find(([, one]) => one === type)?.[0];
  return found === undefined || !Object.hasOwn(KINDS, found) ? 'value' : (found as ErrorKind);
}

function cellOf(value: Scalar): number | string | boolean | typeof EmptyValue | CellError {
  if (value === null) return EmptyValue;
  return isError(value) ? new CellError(KINDS[value.error], SAID_HERE + value.why) : value;
}

/** Names of the engine's functions that papers have of it alone. */
export const FROM_ENGINE: readonly string[] = (() => {
  const there = new Set(HyperFormula.getRegisteredFunctionNames('enGB'));
  return [...FUNCTIONS.values()]
    .filter((definition) => canBeCalled(definition) && !there.has(definition.signature.name))
    .filter(({ signature }) => !PASTED.has(signature.name))
    .map(({ signature }) => signature.name);
})();

const CALLED = [...FROM_ENGINE, ...ENGINE_FIRST];
for (const name of CALLED) {
  const isRecord = FUNCTIONS.get(name)?.signature.result.is === 'record';
  EngineFunctions.implementedFunctions[nameBeside(name)] = {
    method: 'call',
    sizeOfResultArrayMethod: 'size',
    ...(isRecord ? { vectorizationForbidden: true } : {}),
  };
}
HyperFormula.registerFunctionPlugin(EngineFunctions, {
  enGB: Object.fromEntries(CALLED.map((name) => [nameBeside(name), nameBeside(name)])),
});
