// Records of the trade's functions: named figures that are worked out together. A record says once what its figures are called
// and counted in and how each is had; functions in any lane answer with it, others take it whole.

import type { Parameter, ValuePattern } from '../../language/signature.ts';
import { canonicalUnit } from '../../units/arithmetic.ts';
import { isPlain } from '../../units/dimension.ts';
import { listed } from '../../units/table.ts';
import { toCanonical, type Unit } from '../../units/unit.ts';
import type { CellError, Scalar } from '../../values/error.ts';
import { Figures } from '../../values/figures.ts';
import type { RecordType, ValueType } from '../../values/type.ts';
import type { Answer, FunctionDefinition } from '../definition.ts';
import { overColumns, overMatching } from './build.ts';

/** A figure of a record: its name, what its values are counted in, and how it is had from what was worked out (canonical). */
export interface FigureOf<T> {
  readonly name: string;
  readonly gives: Unit | Exclude<ValuePattern, { readonly is: 'letter' }>;
  /** What US customary workbooks show it in. */
  readonly us?: Unit;
  readonly from: (worked: T) => Scalar;
}

/** A record type with the way from what was worked out to its figures. */
export interface RecordOf<T> {
  readonly type: RecordType;
  readonly figures: (worked: T) => Figures;
}

/** `name` stands in sentences: 'a yield curve'. Figures in a unit are worked out in it; shares as 0.05. */
export function recordOf<T>(id: string, name: string, figures: readonly FigureOf<T>[]): RecordOf<T> {
  const type: RecordType = {
    id,
    name,
    figures: figures.map((figure) => ({
      id: figure.name.toLowerCase().replace(/[^a-z0-9]+/g, '-'),
      name: figure.name,
      type: 'symbol' in figure.gives ? unitType(figure.gives) : plainType(figure.gives),
      ...(figure.us === undefined ? {} : { usUnit: figure.us }),
    })),
  };
  const measured = figures.map(({ gives, from }) => ({
    from,
    unit: 'symbol' in gives && !isPlain(gives.dimension) ? gives : undefined,
  }));
  return {
    type,
    figures: (worked) =>
      new Figures(
        measured.map(({ from, unit }) => {
          const value = from(worked);
          return typeof value === 'number' && unit !== undefined ? toCanonical(unit, value) : value;
        }),
      ),
  };
}

function unitType(unit: Unit): ValueType {
  return unit.offset === 0 ? { kind: 'number', dimension: unit.dimension, unit } : { kind: 'temperature', unit };
}

function plainType(pattern: Exclude<ValuePattern, { readonly is: 'letter' }>): ValueType {
  if (pattern.is !== 'quantity' && pattern.is !== 'temperature') return { kind: pattern.is };
  return pattern.is === 'quantity' ? unitType(canonicalUnit(pattern.dimension)) : unitType(listed('degC'));
}

/** A function of single values that answers with several figures: those it is given, or worked out from them; a blank argument makes a blank. */
export function scalarRecord<T>(
  signature: Omit<FunctionDefinition['signature'], 'repeating' | 'result'>,
  record: RecordOf<T>,
  compute: (args: readonly Scalar[]) => T | undefined,
  blanks: 'pass' | 'given' = 'pass',
): FunctionDefinition {
  return {
    signature: { ...signature, result: { is: 'record', record: record.type }, repeating: 0 },
    body: { lane: 'scalar', blanks, compute: (args) => answerOf(record, compute(args)) },
  };
}

function answerOf<T>({ figures }: RecordOf<T>, worked: T | undefined): Answer {
  return worked === undefined ? null : figures(worked);
}

/** As overColumns, with several figures for an answer; undefined makes a blank. */
export function columnsRecord<T>(
  signature: Omit<FunctionDefinition['signature'], 'repeating' | 'result'>,
  record: RecordOf<T>,
  compute: (args: readonly (Scalar | readonly Scalar[])[]) => T | undefined,
): FunctionDefinition {
  return overColumns({ ...signature, result: { is: 'record', record: record.type } }, (args) =>
    answerOf(record, compute(args)),
  );
}

/** As overMatching, with several figures for an answer; undefined makes a blank, an error is one. */
export function matchingRecord<T>(
  signature: Omit<FunctionDefinition['signature'], 'repeating' | 'result'>,
  values: readonly Parameter[],
  record: RecordOf<T>,
  compute: (scalars: readonly Scalar[], columns: readonly (readonly Scalar[])[]) => T | CellError | undefined,
): FunctionDefinition {
  return overMatching({ ...signature, result: { is: 'record', record: record.type } }, values, (scalars, columns) => {
    const worked = compute(scalars, columns);
    return isFault(worked) ? worked : answerOf(record, worked);
  });
}

function isFault<T>(worked: T | CellError | undefined): worked is CellError {
  return typeof worked === 'object' && worked !== null && 'error' in worked && 'why' in worked;
}

/** A parameter that takes the column in which a record was worked out. */
export function recordParameter(name: string, { type }: { readonly type: RecordType }): Parameter {
  return { name, pattern: { is: 'record', record: type } };
}
