// Short makers for the trade's functions: parameters with their units and limits, results with the unit they are shown
// in, and the lanes. Called by the files of this folder; says nothing of any model.

import type { ArgumentType, Parameter, Pattern, Result } from '../../language/signature.ts';
import { CELSIUS_DAY, canonicalUnit, ONE, PERCENT } from '../../units/arithmetic.ts';
import { type Dimension, dimension, MONEY, NONE, TIME, WARMTH } from '../../units/dimension.ts';
import { listed } from '../../units/table.ts';
import type { Unit } from '../../units/unit.ts';
import type { ValueType } from '../../values/type.ts';
import type { FunctionDefinition } from '../definition.ts';

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

type Details = Omit<Parameter, 'name' | 'pattern'>;

function parameter(name: string, pattern: Pattern, details: Details): Parameter {
  return { name, pattern, ...details };
}

/** A quantity of one dimension. */
export function quantity(name: string, of: Dimension, details: Details = {}): Parameter {
  return parameter(name, { is: 'quantity', dimension: of }, details);
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

/** A difference of temperatures. */
export function warmth(name: string, details: Details = {}): Parameter {
  return quantity(name, WARMTH, details);
}

/** The last two parameters of a function over matching rows, repeating as a pair. */
export const MATCHING: readonly Parameter[] = [
  parameter('column', { is: 'column', of: { is: 'anything' } }, {}),
  parameter('condition', { is: 'condition' }, {}),
];

/** A quantity shown in this unit. */
export function inUnit(shown: Unit): Result {
  const type: ValueType = { kind: 'number', dimension: shown.dimension, unit: shown };
  return { is: 'rule', rule: () => type };
}

/** The type of an argument that came in as a quantity; undefined for what was left out. */
export function quantityOf(argument: ArgumentType | undefined): (ValueType & { readonly kind: 'number' }) | undefined {
  return argument?.type?.kind === 'number' ? argument.type : undefined;
}

/** A function whose arguments and answer are numbers; no number means blank. */
export function numeric(
  signature: Omit<FunctionDefinition['signature'], 'repeating'>,
  compute: (...args: number[]) => number,
  resultUnit?: string,
): FunctionDefinition {
  const definition: FunctionDefinition = {
    signature: { ...signature, repeating: 0 },
    body: { lane: 'numeric', compute, undefinedMeans: 'blank' },
  };
  return resultUnit === undefined ? definition : { ...definition, resultUnit };
}
