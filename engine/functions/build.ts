// Short makers with which the standard functions are written: patterns, parameters, results and lanes, so that an entry
// reads in a few lines. Called by standard/*.ts only; says nothing of any function.

import type {
  ArgumentType,
  FunctionGroup,
  Parameter,
  Pattern,
  Result,
  Signature,
  ValuePattern,
} from '../language/signature.ts';
import { parameterIndex } from '../language/standing.ts';
import { NONE } from '../units/dimension.ts';
import { type CellError, type ErrorKind, isError, type Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';
import type { Body, Fold, FoldNumbers, Form, FunctionDefinition, Loop, RunBody, Undefined } from './definition.ts';

export const plain: ValuePattern = { is: 'quantity', dimension: NONE };
export const date: ValuePattern = { is: 'date' };
export const text: ValuePattern = { is: 'text' };
export const yesno: ValuePattern = { is: 'yesno' };
export const anything: Pattern = { is: 'anything' };
export const condition: Pattern = { is: 'condition' };
export const table: Pattern = { is: 'table' };
export const criteria: Pattern = { is: 'criteria' };

/** Quantities of any dimension; one letter agrees throughout a call. */
export function numbers(letter: string): ValuePattern {
  return { is: 'letter', letter, among: 'numbers' };
}

/** Quantities, temperatures or dates. */
export function ordered(letter: string): ValuePattern {
  return { is: 'letter', letter, among: 'ordered' };
}

/** Any type; one letter agrees throughout a call. */
export function every(letter: string): ValuePattern {
  return { is: 'letter', letter, among: 'anything' };
}

export function column(of: Pattern): Pattern {
  return { is: 'column', of };
}

/** A sheet by its name, taken as its first column. */
export function firstColumn(of: Pattern): Pattern {
  return { is: 'first column', of };
}

/** A column of the sheet named before: its name in quotes, its number, or Table[Column]. */
export function field(of: Pattern): Pattern {
  return { is: 'field', of };
}

/** Values of this row or whole columns. */
export function values(of: Pattern): Pattern {
  return { is: 'values', of };
}

export function needed(name: string, pattern: Pattern): Parameter {
  return { name, pattern };
}

export function optional(name: string, pattern: Pattern): Parameter {
  return { name, pattern, optional: true };
}

/** The letter's dimension to a power. */
export function power(letter: string, exponent: number): Result {
  return { is: 'power', letter, exponent };
}

/** The result's type found from the arguments' types; a string is the diagnostic. */
export function rule(find: (args: readonly ArgumentType[]) => ValueType | string): Result {
  return { is: 'rule', rule: find };
}

/** What a formula passes: fixed parameters, then a group of parameters any number of times. */
export interface Takes {
  readonly parameters: readonly Parameter[];
  readonly repeating: number;
  readonly otherwise?: true;
}

export function takes(...parameters: readonly Parameter[]): Takes {
  return { parameters, repeating: 0 };
}

/** The same, followed by `group` once or more. */
export function thenRepeating(first: Takes, ...group: readonly Parameter[]): Takes {
  return { parameters: [...first.parameters, ...group], repeating: group.length };
}

/** The same, with one more argument allowed at the end for all other cases: SWITCH's last result. */
export function orElse(shape: Takes): Takes {
  return { ...shape, otherwise: true };
}

/** Whatever is passed, once or more: SUM's arguments. */
export function many(name: string, pattern: Pattern): Takes {
  return { parameters: [needed(name, pattern)], repeating: 1 };
}

export function failure(error: ErrorKind, why: string): CellError {
  return { error, why };
}

const NO_ANSWER = failure('number', 'These numbers have no answer here: check what goes in.');

/** x where it is a finite number, else not-a-number: an overflow is no answer. */
export function finite(x: number): number {
  return Number.isFinite(x) ? x : Number.NaN;
}

/** An optional argument of a numeric body, or what stands in where it is left out. */
export function or(x: number | undefined, otherwise: number): number {
  return x === undefined || Number.isNaN(x) ? otherwise : x;
}

type Values = readonly (Scalar | readonly Scalar[])[];

/** Whether an argument came as a whole column. */
export function isList(arg: Scalar | readonly Scalar[] | undefined): arg is readonly Scalar[] {
  return Array.isArray(arg);
}

/** Blank where a scalar that must be there is blank; the scalar's error where it is one; else undefined. */
function withheld(shape: Takes, args: Values): Scalar | undefined {
  for (let index = 0; index < args.length; index += 1) {
    const arg = args[index];
    if (arg === undefined || isList(arg)) continue;
    if (isError(arg)) return arg;
    if (arg === null && shape.parameters[parameterIndex(shape, index)]?.optional !== true) return null;
  }
  return undefined;
}

export interface Makers {
  /** `undefinedMeans` says what a not-a-number result stands for. */
  numeric(
    name: string,
    doc: string,
    section: string,
    shape: Takes,
    result: Result,
    compute: (...args: number[]) => number,
    undefinedMeans?: Undefined,
  ): FunctionDefinition;
  /** Blank arguments make blank. */
  scalar(
    name: string,
    doc: string,
    section: string,
    shape: Takes,
    result: Result,
    compute: (args: readonly Scalar[]) => Scalar,
  ): FunctionDefinition;
  fold(
    name: string,
    doc: string,
    section: string,
    shape: Takes,
    result: Result,
    fold: FoldNumbers,
    undefinedMeans?: Undefined,
  ): FunctionDefinition;
  /** Whole columns; a blank scalar that must be there makes blank, an error among scalars or entries passes on. */
  columns(
    name: string,
    doc: string,
    section: string,
    shape: Takes,
    result: Result,
    compute: (args: Values) => Scalar,
  ): FunctionDefinition;
  /** Made by the planner as `form` says. */
  form(name: string, form: Form, doc: string, section: string, shape: Takes, result: Result): FunctionDefinition;
  /** Any other body. */
  other(name: string, doc: string, section: string, shape: Takes, result: Result, body: Body): FunctionDefinition;
}

/** 'OpenFormula 6.16.2' of a section number; any other text as it stands. */
function sourceOf(section: string): string {
  return /^\d/.test(section) ? `OpenFormula ${section}` : section;
}

/** Makers for one group of functions. Sections are those of OASIS ODF 1.3 part 4. */
export function makers(group: FunctionGroup): Makers {
  const other: Makers['other'] = (name, doc, section, shape, result, body) => {
    const signature: Signature = { name, group, ...shape, result, doc, source: sourceOf(section) };
    return { signature, body };
  };
  return {
    other,
    numeric: (name, doc, section, shape, result, compute, undefinedMeans = NO_ANSWER) =>
      other(name, doc, section, shape, result, { lane: 'numeric', compute, undefinedMeans }),
    scalar: (name, doc, section, shape, result, compute) =>
      other(name, doc, section, shape, result, { lane: 'scalar', compute, blanks: 'pass' }),
    fold: (name, doc, section, shape, result, fold, undefinedMeans = NO_ANSWER) =>
      other(name, doc, section, shape, result, { lane: 'fold', fold: { fold, takes: 'numbers', undefinedMeans } }),
    columns: (name, doc, section, shape, result, compute) =>
      other(name, doc, section, shape, result, columnsBody(shape, compute)),
    form: (name, form, doc, section, shape, result) => other(name, doc, section, shape, result, { lane: 'form', form }),
  };
}

/** A body over whole columns: blanks among its needed scalars make blank, errors pass on. */
export function columnsBody(shape: Takes, compute: (args: Values) => Scalar): RunBody {
  return {
    lane: 'columns',
    compute: (args) => {
      const kept = withheld(shape, args);
      return kept === undefined ? compute(args) : kept;
    },
  };
}

/** A fold over numbers, for bodies chosen by type. */
export function foldBody(lane: 'fold' | 'conditional fold', fold: Fold): RunBody {
  return { lane, fold };
}

/** The same numeric function with a loop for many rows; a body of another lane has none. */
export function withLoop(definition: FunctionDefinition, loop: Loop): FunctionDefinition {
  const { body } = definition;
  if (body.lane === 'numeric') return { ...definition, body: { ...body, loop } };
  throw new Error(`${definition.signature.name} runs in a lane without loops`);
}

/** The same function, which costs so much that its answers are remembered. */
export function dear(definition: FunctionDefinition): FunctionDefinition {
  const { body } = definition;
  if (body.lane === 'numeric') return { ...definition, body: { ...body, isDear: true } };
  throw new Error(`${definition.signature.name} runs in a lane in which no numbers are remembered`);
}

/** The same function under another name. */
export function alias(name: string, definition: FunctionDefinition, doc?: string): FunctionDefinition {
  const { signature } = definition;
  return {
    ...definition,
    signature: { ...signature, name, doc: doc ?? `${signature.doc} The same as ${signature.name}.` },
  };
}
