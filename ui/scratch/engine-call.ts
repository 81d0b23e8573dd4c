// Calls a function of the engine with a scratch paper's plain figures, whatever lane its body runs in: the same body as in the
// sheets, so the same answers. Knows nothing of who works the paper out.

import {
  type ArgumentType,
  type CellError,
  Figures,
  type FunctionDefinition,
  fromCanonical,
  isError,
  type Parameter,
  parameterAt,
  type RunBody,
  type Scalar,
  sameDimension,
  toCanonical,
} from '../../engine/index.ts';
import { type Measures, measureOf, measureOfAnswer, measuresOfFigures, typeSeen } from './call-measures.ts';
import { AS_IS, canonicalFigure, type Measure, plainFigure } from './figures.ts';

/** A plain argument: one figure, or the figures of several cells with what they count in where that is known. */
export type PlainArgument = Scalar | { readonly cells: readonly Scalar[]; readonly measure?: Measure };

/** A plain answer; several figures stand side by side. */
export type PlainAnswer = Scalar | readonly Scalar[];

/** Lanes whose bodies take figures as they are; the others are the planner's own or look for rows of sheets. */
export function canBeCalled({ body, signature }: FunctionDefinition): boolean {
  if (signature.name === 'TYPED') return false;
  return ['numeric', 'scalar', 'columns', 'fold', 'by type', 'matching rows'].includes(body.lane);
}

/** `given` has undefined for what is left out between separators. */
export function callPlainly(
  definition: FunctionDefinition,
  given: readonly (PlainArgument | undefined)[],
  measures: Measures,
): PlainAnswer {
  const { signature } = definition;
  const wrong = wrongCount(definition, given.length);
  if (wrong !== undefined) return wrong;
  const args: Argument[] = [];
  for (const [i, argument] of given.entries()) {
    const parameter = parameterAt(signature, i, given.length);
    if (parameter === undefined) continue;
    const read = readArgument(argument, parameter, definition, measures);
    if (isFault(read)) return read;
    args.push(read);
  }
  for (let i = given.length; signature.repeating === 0 && i < signature.parameters.length; i++) {
    const parameter = signature.parameters[i];
    if (parameter !== undefined) args.push(leftOut(parameter, measures));
  }
  const types = args.map(({ parameter, measure, leftOut, value }): ArgumentType => {
    const constant = typeof value === 'number' || typeof value === 'string' ? value : undefined;
    return { type: leftOut ? undefined : typeSeen(parameter, measure), constant };
  });
  const measure = measureOfAnswer(signature, types, measures);
  if (typeof measure === 'string') return valueFault(measure);
  const body = definition.body.lane === 'by type' ? definition.body.choose(types) : definition.body;
  const answer = run(body, args, definition, measures);
  if (signature.result.is === 'yesno' && typeof answer === 'number') return answer !== 0;
  if (!(answer instanceof Figures)) return plainFigure(answer, measure);
  const each = signature.result.is === 'record' ? measuresOfFigures(signature.result.record, measures) : [];
  return answer.values.map((value, i) => plainFigure(value, each[i] ?? AS_IS));
}

interface Argument {
  readonly parameter: Parameter;
  readonly leftOut: boolean;
  /** In the unit that the body wants, a list for a column; figures of a record one after the other. */
  readonly value: Scalar | readonly Scalar[];
  readonly measure: Measure;
  /** As it stood, for conditions. */
  readonly plain?: readonly Scalar[];
}

function wrongCount({ signature }: FunctionDefinition, count: number): CellError | undefined {
  const { name, parameters, repeating } = signature;
  const least = parameters.filter(({ optional }) => optional !== true).length;
  const said = parameters.map((one) => (one.optional === true ? `[${one.name}]` : one.name)).join(', ');
  if (count < least) return valueFault(`${name} wants ${said}: one of them is missing.`);
  const tooMany = repeating === 0 ? count > parameters.length : (count - parameters.length) % repeating !== 0;
  return tooMany ? valueFault(`${name} wants ${said}, and no more.`) : undefined;
}

/** Of a record every figure is left out. */
function leftOut(parameter: Parameter, measures: Measures): Argument {
  const { pattern } = parameter;
  const value = pattern.is === 'record' ? pattern.record.figures.map(() => null) : null;
  return { parameter, leftOut: true, value, measure: measureOf(parameter, measures) };
}

function readArgument(
  argument: PlainArgument | undefined,
  parameter: Parameter,
  { signature, body }: FunctionDefinition,
  measures: Measures,
): Argument | CellError {
  const { pattern } = parameter;
  const measure = measureOf(parameter, measures);
  if (argument === undefined) return leftOut(parameter, measures);
  const isList = typeof argument === 'object' && argument !== null && 'cells' in argument;
  if (pattern.is === 'record') {
    if (!isList)
      return valueFault(`${signature.name}: ${said(parameter)} is what another function gives side by side.`);
    const each = measuresOfFigures(pattern.record, measures);
    return {
      parameter,
      leftOut: false,
      value: argument.cells.map((cell, i) => canonicalFigure(cell, each[i] ?? AS_IS)),
      measure,
    };
  }
  if (pattern.is === 'column' || pattern.is === 'values' || body.lane === 'fold') {
    const cells = isList ? argument.cells : [argument];
    const own = isList ? ownMeasure(argument.measure, pattern, measure) : measure;
    if (own === undefined)
      return valueFault(`${signature.name}: ${said(parameter)} does not count in the unit of this column.`);
    return { parameter, leftOut: false, value: cells.map((cell) => canonicalFigure(cell, own)), measure, plain: cells };
  }
  if (isList) return valueFault(`${signature.name}: ${said(parameter)} is one figure, not many.`);
  if (typeof argument === 'string' && pattern.is !== 'text' && pattern.is !== 'condition' && !takesAnything(pattern))
    return valueFault(`${signature.name}: ${said(parameter)} is a number, and “${argument.slice(0, 40)}” is a text.`);
  const canonical = canonicalFigure(argument, measure);
  // A body takes a number in its parameter's unit, where one is named.
  const wanted = parameter.unit === undefined ? undefined : measures.vocabulary.find(parameter.unit);
  const asGiven = wanted === undefined || typeof canonical !== 'number';
  const value = asGiven
    ? canonical
    : measure.is === 'number' && measure.unit.symbol === wanted.symbol
      ? argument
      : fromCanonical(wanted, canonical);
  const fault = typeof value === 'number' ? outside(value, parameter, signature.name) : undefined;
  if (fault !== undefined) return fault;
  return { parameter, leftOut: false, value, measure, plain: [argument] };
}

/** A column of the workbook counts in its own unit, where that is one of what is wanted; undefined where it is none. */
function ownMeasure(own: Measure | undefined, pattern: Parameter['pattern'], wanted: Measure): Measure | undefined {
  const of = pattern.is === 'column' || pattern.is === 'values' ? pattern.of : pattern;
  if (own?.is !== 'number' || (of.is !== 'quantity' && of.is !== 'temperature')) return wanted;
  const dimension = of.is === 'quantity' ? of.dimension : wanted.is === 'number' ? wanted.unit.dimension : undefined;
  return dimension !== undefined && sameDimension(own.unit.dimension, dimension) ? own : undefined;
}

/** Outside the range in which a model holds. */
function outside(value: number, parameter: Parameter, name: string): CellError | undefined {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY, why = '' } = parameter.limit ?? {};
  if (value >= min && value <= max) return undefined;
  return {
    error: 'range',
    why: `${name}: ${said(parameter)} is outside the range in which this holds (${why}). Give a value inside it.`,
  };
}

function said({ name }: Parameter): string {
  return name.replaceAll('_', ' ');
}

function takesAnything(pattern: Parameter['pattern']): boolean {
  return pattern.is === 'anything' || (pattern.is === 'letter' && pattern.among === 'anything');
}

function run(
  body: RunBody,
  args: readonly Argument[],
  { signature, resultUnit }: FunctionDefinition,
  measures: Measures,
): Scalar | Figures {
  const singles = args.flatMap(({ value }) => (isList(value) ? [] : [value]));
  switch (body.lane) {
    case 'numeric': {
      const fault = singles.find(isError);
      if (fault !== undefined) return fault;
      if (args.some(({ value, leftOut }) => value === null && !leftOut)) return null;
      const answer = body.compute(...expanded(args).map((value) => (value === null ? Number.NaN : Number(value))));
      if (Number.isNaN(answer)) return body.undefinedMeans === 'blank' ? null : body.undefinedMeans;
      const unit = resultUnit === undefined ? undefined : measures.vocabulary.find(resultUnit);
      return finite(unit === undefined ? answer : toCanonical(unit, answer));
    }
    case 'scalar': {
      const fault = singles.find(isError);
      if (fault !== undefined && body.errors !== 'given') return fault;
      if (body.blanks === 'pass' && args.some(({ value, leftOut }) => value === null && !leftOut)) return null;
      return settled(body.compute(expanded(args)));
    }
    case 'columns': {
      const values: (Scalar | readonly Scalar[])[] = [];
      for (const { value, parameter } of args) {
        if (parameter.pattern.is === 'record' && isList(value)) values.push(...value);
        else values.push(value);
      }
      return settled(body.compute(values));
    }
    case 'fold': {
      const cells = args.flatMap(({ value }) => (isList(value) ? value : [value]));
      const fault = cells.find(isError);
      if (fault !== undefined) return fault;
      const numbers = Float64Array.from(cells.filter((cell) => typeof cell === 'number'));
      const answer = body.fold.fold(numbers, numbers.length);
      if (!Number.isNaN(answer)) return finite(answer);
      return body.fold.undefinedMeans === 'blank' ? null : body.fold.undefinedMeans;
    }
    case 'matching rows': {
      const first = args.findIndex(({ parameter }) => parameter.pattern.is === 'column');
      const scalars = args.slice(0, first);
      const fault = scalars.map(({ value }) => value).find((value) => !isList(value) && isError(value));
      if (fault !== undefined && !isList(fault)) return fault;
      const columns = args.slice(first, first + body.valueColumns);
      const rows = matchingRows(args.slice(first + body.valueColumns), lengthOf(columns));
      const values = columns.map(({ value }) => rows.map((row) => (isList(value) ? (value[row] ?? null) : value)));
      return settled(body.compute(expanded(scalars), values));
    }
    default:
      return valueFault(`${signature.name} belongs in a sheet of the workbook.`);
  }
}

/** Values of an argument that is a record stand one after the other. */
function expanded(args: readonly Argument[]): readonly Scalar[] {
  return args.flatMap(({ value }): readonly Scalar[] => (isList(value) ? value : [value]));
}

function lengthOf(columns: readonly Argument[]): number {
  return Math.max(0, ...columns.map(({ value }) => (isList(value) ? value.length : 1)));
}

/** The rows that meet pairs of a column and a condition, compared as the figures stand on the paper. */
function matchingRows(pairs: readonly Argument[], count: number): readonly number[] {
  const rows = Array.from({ length: count }, (_, row) => row);
  const tests: ((row: number) => boolean)[] = [];
  for (let i = 0; i + 1 < pairs.length; i += 2) {
    const cells = pairs[i]?.plain ?? [];
    const [condition = null] = pairs[i + 1]?.plain ?? [];
    tests.push((row) => meets(cells[row] ?? null, condition));
  }
  return rows.filter((row) => tests.every((test) => test(row)));
}

function meets(cell: Scalar, condition: Scalar): boolean {
  if (cell === null || condition === null) return false;
  const [, sign = '=', text = ''] =
    typeof condition === 'string' ? (/^(<=|>=|<>|<|>|=)?(.*)$/s.exec(condition) ?? []) : [];
  const wanted =
    typeof condition !== 'string' ? condition : text !== '' && Number.isFinite(Number(text)) ? Number(text) : text;
  if (typeof cell !== typeof wanted) return sign === '<>';
  const [a, b] = [comparable(cell), comparable(wanted)];
  switch (sign) {
    case '<':
      return a < b;
    case '<=':
      return a <= b;
    case '>':
      return a > b;
    case '>=':
      return a >= b;
    case '<>':
      return a !== b;
    default:
      return a === b;
  }
}

function comparable(value: Scalar): number | string {
  return typeof value === 'string' ? value.toLowerCase() : Number(value);
}

function isList(value: Scalar | readonly Scalar[]): value is readonly Scalar[] {
  return Array.isArray(value);
}

function isFault(value: Argument | CellError): value is CellError {
  return 'error' in value;
}

function valueFault(why: string): CellError {
  return { error: 'value', why };
}

function settled(answer: Scalar | Figures): Scalar | Figures {
  return typeof answer === 'number' ? finite(answer) : answer;
}

function finite(answer: number): Scalar {
  if (Number.isNaN(answer)) return null;
  return Number.isFinite(answer)
    ? answer
    : { error: 'number', why: 'The result is too large to be a number: look at the values it is made of.' };
}

/** What the argument of a call counts in, and what it gives, for help beside the formula. */
export function unitsSaid(definition: FunctionDefinition, measures: Measures): readonly string[] {
  return definition.signature.parameters.map((parameter) => {
    const measure = measureOf(parameter, measures);
    return measure.is === 'number' && measure.unit.symbol !== ''
      ? `${parameter.name} in ${measure.unit.symbol}`
      : parameter.name;
  });
}
