// What the figures of a call count in on a scratch paper, where numbers carry no unit: each parameter has a unit, said to
// whoever writes the call, and so has the answer. A whole column of the workbook brings its own.

import {
  type ArgumentType,
  isPlain,
  NONE,
  ONE,
  type Parameter,
  type RecordType,
  type Signature,
  sameDimension,
  TIME,
  type Unit,
  type UnitSystem,
  type ValueType,
  type Vocabulary,
} from '../../engine/index.ts';
import { AS_IS, type Measure } from './figures.ts';

/** What people measure in, by the dimension's canonical unit: US customary, metric. */
const USUAL: readonly (readonly [us: string, si: string])[] = [
  ['in', 'cm'],
  ['lb', 'kg'],
  ['ft2', 'm2'],
  ['ft3', 'm3'],
  ['lb/ft2', 'kg/m2'],
  ['lb/ft3', 'kg/m3'],
  ['1/ft2', '1/m2'],
  ['1/day', '1/day'],
  ['money/lb', 'money/kg'],
  ['Fdeg', 'Cdeg'],
  ['in/day', 'mm/day'],
  ['degC day', 'degC day'],
  // Times without a unit of their own are lengths of days.
  ['h', 'h'],
  ['money', 'money'],
];

/** Wind is told so everywhere, though a depth of water in a day has the same dimension. */
const WIND = 'm/s';

export interface Measures {
  readonly units: UnitSystem;
  readonly vocabulary: Vocabulary;
}

type Pattern = Parameter['pattern'];

/**
 * What a parameter's numbers count in: lengths, masses and all else in the workbook's usual unit, but where the language takes
 * a plain number in a unit of the parameter's own (hours, degC), in that one.
 */
export function measureOf({ pattern, unit, plain }: Parameter, measures: Measures): Measure {
  const usual = plain === true || unit === WIND ? AS_IS : measureOfPattern(pattern, measures);
  return usual.is === 'as is' && unit !== undefined ? numbersIn(unit, measures) : usual;
}

function measureOfPattern(pattern: Pattern, measures: Measures): Measure {
  switch (pattern.is) {
    case 'date':
      return { is: 'date' };
    case 'temperature':
      return numbersIn(measures.units === 'us' ? 'degF' : 'degC', measures);
    case 'quantity':
      return usualOf(pattern.dimension, measures);
    case 'column':
    case 'values':
      return measureOfPattern(pattern.of, measures);
    default:
      return AS_IS;
  }
}

function numbersIn(symbol: string, { vocabulary }: Measures): Measure {
  const unit = vocabulary.find(symbol);
  return unit === undefined ? AS_IS : { is: 'number', unit };
}

function usualOf(dimension: Unit['dimension'], measures: Measures): Measure {
  for (const [us, si] of USUAL) {
    const unit = measures.vocabulary.find(measures.units === 'us' ? us : si);
    if (unit !== undefined && sameDimension(unit.dimension, dimension)) return { is: 'number', unit };
  }
  return AS_IS;
}

/** Says in its arguments what its answer counts in. */
const NAMES_ITS_UNIT = 'CONVERT';

/** What the answer counts in, or why there is none. */
export function measureOfAnswer(
  { name, result }: Signature,
  args: readonly ArgumentType[],
  measures: Measures,
): Measure | string {
  if (result.is === 'rule') {
    const type = result.rule(args);
    if (typeof type === 'string') return type;
    const isNamed = name === NAMES_ITS_UNIT && (type.kind === 'number' || type.kind === 'temperature');
    return isNamed ? { is: 'number', unit: type.unit } : measureOfType(type, measures);
  }
  if (result.is === 'record' || result.is === 'power' || result.is === 'product') return AS_IS;
  return measureOfPattern(result, measures);
}

/** Shares are parts of one in calls, as in other spreadsheets: 0.2 is 20%. Times keep their hours and days. */
function measureOfType(type: ValueType, measures: Measures): Measure {
  if (type.kind === 'date') return { is: 'date' };
  if (type.kind === 'temperature') return measureOfPattern({ is: 'temperature' }, measures);
  if (type.kind !== 'number' || isPlain(type.unit.dimension)) return AS_IS;
  const usual = sameDimension(type.unit.dimension, TIME) ? AS_IS : usualOf(type.dimension, measures);
  return usual.is === 'as is' ? { is: 'number', unit: type.unit } : usual;
}

/** What each figure of a record counts in. */
export function measuresOfFigures({ figures }: RecordType, measures: Measures): readonly Measure[] {
  return figures.map(({ type }) => measureOfType(type, measures));
}

/** The type that the signature's rule sees for an argument. */
export function typeSeen({ pattern }: Parameter, measure: Measure): ValueType {
  const of = pattern.is === 'column' || pattern.is === 'values' ? pattern.of : pattern;
  if (of.is === 'date') return { kind: 'date' };
  if (of.is === 'text') return { kind: 'text' };
  if (of.is === 'yesno') return { kind: 'yesno' };
  if (measure.is !== 'number') return PLAIN;
  return of.is === 'temperature'
    ? { kind: 'temperature', unit: measure.unit }
    : { kind: 'number', dimension: measure.unit.dimension, unit: measure.unit };
}

/** A plain number. */
export const PLAIN: ValueType = { kind: 'number', dimension: NONE, unit: ONE };
