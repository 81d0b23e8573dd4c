// Short makers for the trade's functions: parameters with their units and limits, results with the unit they are shown
// in, and the lanes. Called by the files of this folder; says nothing of any model.

import type { ArgumentType, Parameter, Pattern, Result, Signature } from '../../language/signature.ts';
import { CELSIUS_DAY, canonicalUnit, divideUnits, ONE, PERCENT, powerUnit } from '../../units/arithmetic.ts';
import {
  AREA,
  type Dimension,
  dimension,
  isPlain,
  LENGTH,
  MASS,
  MONEY,
  NONE,
  TIME,
  VOLUME,
  WARMTH,
} from '../../units/dimension.ts';
import { listed } from '../../units/table.ts';
import type { Unit } from '../../units/unit.ts';
import { isError, type Scalar } from '../../values/error.ts';
import type { ValueType } from '../../values/type.ts';
import type { Answer, FunctionDefinition, OverNumbers } from '../definition.ts';

export const DEGREE_DAYS: Dimension = dimension({ temperature: 1, time: 1 });
export const MASS_PER_AREA: Dimension = dimension({ mass: 1, length: -2 });
export const MASS_PER_VOLUME: Dimension = dimension({ mass: 1, length: -3 });

export const HOUR: Unit = listed('h');
export const DAY: Unit = listed('day');
export const PLAIN: Unit = ONE;
export const SHARE: Unit = PERCENT;
export const CENTIMETRE: Unit = listed('cm');
export const MONEY_UNIT: Unit = canonicalUnit(MONEY);
export const PER_SQUARE_METRE: Unit = canonicalUnit(dimension({ length: -2 }));
export const DEGREE_DAY: Unit = CELSIUS_DAY;
export const INCH: Unit = listed('in');
export const FOOT: Unit = listed('ft');
export const POUND: Unit = listed('lb');
export const OUNCE: Unit = listed('oz');
export const POUNDS_PER_SQUARE_FOOT: Unit = divideUnits(listed('lb'), powerUnit(listed('ft'), 2));
export const GRAM: Unit = listed('g');
export const KILOGRAM: Unit = canonicalUnit(MASS);
export const SQUARE_METRE: Unit = canonicalUnit(AREA);
export const SQUARE_CENTIMETRE: Unit = powerUnit(listed('cm'), 2);
export const CUBIC_METRE: Unit = canonicalUnit(VOLUME);
export const MILLIMETRE: Unit = listed('mm');
export const KILOGRAMS_PER_SQUARE_METRE: Unit = canonicalUnit(MASS_PER_AREA);

type Details = Omit<Parameter, 'name' | 'pattern'>;

function parameter(name: string, pattern: Pattern, details: Details): Parameter {
  return { name, pattern, ...details };
}

/** A quantity of one dimension. */
export function quantity(name: string, of: Dimension, details: Details = {}): Parameter {
  return parameter(name, { is: 'quantity', dimension: of }, details);
}

export function mass(name: string, details: Details = {}): Parameter {
  return quantity(name, MASS, details);
}

export function length(name: string, details: Details = {}): Parameter {
  return quantity(name, LENGTH, details);
}

export function area(name: string, details: Details = {}): Parameter {
  return quantity(name, AREA, details);
}

/** A plain number: a count, a share, a degree of latitude, a coefficient. */
export function plain(name: string, details: Details = {}): Parameter {
  return quantity(name, NONE, details);
}

/** Hours; a plain number is taken as hours. */
export function hours(name: string, details: Details = {}): Parameter {
  return quantity(name, TIME, { unit: 'h', plain: true, ...details });
}

/** A time in days; a plain number is taken as days. */
export function days(name: string, details: Details = {}): Parameter {
  return quantity(name, TIME, { unit: 'day', plain: true, ...details });
}

/** A time in weeks; a plain number is taken as weeks. */
export function weeks(name: string, details: Details = {}): Parameter {
  return quantity(name, TIME, { unit: 'week', plain: true, ...details });
}

/** A temperature in degC; a plain number is taken as degC. */
export function temperature(name: string, details: Details = {}): Parameter {
  return parameter(name, { is: 'temperature' }, { unit: 'degC', plain: true, ...details });
}

/** Degree-days in degC day; a plain number is taken so. */
export function degreeDays(name: string, details: Details = {}): Parameter {
  return quantity(name, DEGREE_DAYS, { unit: 'degC day', plain: true, ...details });
}

export function date(name: string, details: Details = {}): Parameter {
  return parameter(name, { is: 'date' }, details);
}

export function text(name: string, details: Details = {}): Parameter {
  return parameter(name, { is: 'text' }, details);
}

export function yesNo(name: string, details: Details = {}): Parameter {
  return parameter(name, { is: 'yesno' }, details);
}

/** A quantity of any dimension; parameters of one letter agree in theirs. */
export function alike(name: string, letter: string, details: Details = {}): Parameter {
  return parameter(name, { is: 'letter', letter, among: 'numbers' }, details);
}

/** A whole column of quantities of one dimension. */
export function columnOf(name: string, of: Dimension): Parameter {
  return parameter(name, { is: 'column', of: { is: 'quantity', dimension: of } }, {});
}

export function columnOfText(name: string): Parameter {
  return parameter(name, { is: 'column', of: { is: 'text' } }, {});
}

export function columnOfDates(name: string): Parameter {
  return parameter(name, { is: 'column', of: { is: 'date' } }, {});
}

export function columnOfTemperatures(name: string): Parameter {
  return parameter(name, { is: 'column', of: { is: 'temperature' } }, {});
}

/** A whole column of temperatures or of quantities of any one dimension. */
export function columnOfMeasures(name: string, letter: string): Parameter {
  return parameter(name, { is: 'column', of: { is: 'letter', letter, among: 'ordered' } }, {});
}

/** A difference of temperatures. */
export function warmth(name: string, details: Details = {}): Parameter {
  return quantity(name, WARMTH, details);
}

/** The last two parameters of a function over matching rows, repeating as a pair. */
export const MATCHING: readonly Parameter[] = [
  parameter('column', { is: 'column', of: { is: 'anything' } }, {}),
  parameter('condition', { is: 'condition' }, {}),
];

/** A quantity shown in this unit; the body answers in canonical units, as every lane but `numeric` does. */
export function inUnit(shown: Unit): InUnit {
  const type: ValueType = { kind: 'number', dimension: shown.dimension, unit: shown };
  return { is: 'rule', rule: () => type, shown };
}

type InUnit = Extract<Result, { readonly is: 'rule' }> & { readonly shown: Unit };

/** The type of an argument that came in as a quantity; undefined for what was left out. */
export function quantityOf(argument: ArgumentType | undefined): (ValueType & { readonly kind: 'number' }) | undefined {
  return argument?.type?.kind === 'number' ? argument.type : undefined;
}

/** A signature of a function of numbers: of what it gives only the unit is said, or a type that has none of its own. */
interface Numeric extends Omit<Signature, 'repeating' | 'result'> {
  /**
   * The unit that `compute` answers in and that the answer is shown in, so that the two can't part. Shares and counts have
   * no unit to turn into: `compute` answers 0.05 where SHARE shows 5%.
   */
  readonly gives: Unit | (Result & { readonly shown?: never });
}

/** A function whose arguments and answer are numbers; no number means blank. */
export function numeric({ gives, ...rest }: Numeric, compute: (...args: number[]) => number): FunctionDefinition {
  const result = 'symbol' in gives ? inUnit(gives) : gives;
  const definition: FunctionDefinition = {
    signature: { ...rest, result, repeating: 0 },
    body: { lane: 'numeric', compute, undefinedMeans: 'blank' },
  };
  return 'symbol' in gives && !isPlain(gives.dimension) ? { ...definition, resultUnit: gives.symbol } : definition;
}

/** A function of single values that may be texts, or that answers with one; a blank argument makes a blank. */
export function scalar(
  signature: Omit<FunctionDefinition['signature'], 'repeating'>,
  compute: (args: readonly Scalar[]) => Scalar,
  blanks: 'pass' | 'given' = 'pass',
): FunctionDefinition {
  return { signature: { ...signature, repeating: 0 }, body: { lane: 'scalar', blanks, compute } };
}

/** What comes in for a parameter of a function over columns; undefined past the end of the call. */
export type Argument = Scalar | readonly Scalar[] | undefined;

export function isList(argument: Argument): argument is readonly Scalar[] {
  return Array.isArray(argument);
}

/** A function of whole columns and single values; an error among the single values passes on. */
export function overColumns(
  signature: Omit<FunctionDefinition['signature'], 'repeating'>,
  compute: (args: readonly (Scalar | readonly Scalar[])[]) => Answer,
): FunctionDefinition {
  return {
    signature: { ...signature, repeating: 0 },
    body: {
      lane: 'columns',
      compute: (args) => {
        for (const argument of args) if (!isList(argument) && isError(argument)) return argument;
        return compute(args);
      },
    },
  };
}

/** A function over the rows of a sheet that meet conditions: single values, then `values` columns, then pairs. */
export function overMatching(
  signature: Omit<FunctionDefinition['signature'], 'repeating'>,
  values: readonly Parameter[],
  compute: (scalars: readonly Scalar[], columns: readonly (readonly Scalar[])[]) => Answer,
): FunctionDefinition {
  return {
    signature: {
      ...signature,
      parameters: [...signature.parameters, ...values, ...MATCHING],
      repeating: MATCHING.length,
    },
    body: { lane: 'matching rows', valueColumns: values.length, compute },
  };
}

/** The same where all columns hold numbers and many rows read the same matching rows. */
export function overMatchingNumbers(
  signature: Omit<FunctionDefinition['signature'], 'repeating'>,
  values: readonly Parameter[],
  overNumbers: OverNumbers,
): FunctionDefinition {
  const asNumbers = (list: readonly Scalar[]): Float64Array =>
    Float64Array.from(list, (value) => (typeof value === 'number' ? value : Number.NaN));
  const one = overMatching(signature, values, (scalars, columns) => {
    const answer = overNumbers(columns.map(asNumbers))(asNumbers(scalars));
    return Number.isNaN(answer) ? null : answer;
  });
  return one.body.lane === 'matching rows' ? { ...one, body: { ...one.body, overNumbers } } : one;
}
