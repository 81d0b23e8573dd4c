// What a result's type is where a pattern can't say it: differences of dates and temperatures, products of dimensions,
// rounding to a step. Called by the files of this folder; knows types and units, no values.

import type { ArgumentType, Result } from '../../language/signature.ts';
import {
  canonicalUnit,
  divideUnits,
  multiplyUnits,
  ONE,
  powerUnit,
  differenceUnit as unitOfDifference,
} from '../../units/arithmetic.ts';
import { isPlain, MONEY, NONE, sameDimension, TIME } from '../../units/dimension.ts';
import { listed } from '../../units/table.ts';
import type { Unit } from '../../units/unit.ts';
import { nameOfType, type ValueType } from '../../values/type.ts';
import { rule } from '../build.ts';

export const PLAIN: ValueType = { kind: 'number', dimension: NONE, unit: ONE };

const DAY: Unit = canonicalUnit(TIME);

/** A time span shown in days. */
export const DAYS: ValueType = { kind: 'number', dimension: TIME, unit: DAY };

const HOUR: Unit = listed('h');

/** A time span shown in hours. */
export const HOURS: ValueType = { kind: 'number', dimension: TIME, unit: HOUR };

export function numberIn(unit: Unit): ValueType {
  return { kind: 'number', dimension: unit.dimension, unit };
}

/** 'A length', 'Text': a type at the start of a sentence. */
export function subject(type: ValueType): string {
  const name = nameOfType(type);
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The unit in which differences of such values are: of temperatures and dates their difference; undefined for text and the like. */
export function differenceUnit(type: ValueType): Unit | undefined {
  switch (type.kind) {
    case 'number':
      return type.unit;
    case 'temperature':
      return unitOfDifference(type.unit);
    case 'date':
      return DAY;
    default:
      return undefined;
  }
}

/** The type of the first argument that has one. */
export function firstType(args: readonly ArgumentType[]): ValueType | undefined {
  return args.find((arg) => arg.type !== undefined)?.type;
}

/** How far values lie apart, to a power: STDEV of temperatures is a difference, VAR of lengths an area. */
export function spread(
  exponent: number,
  typeOfValues: (args: readonly ArgumentType[]) => ValueType | undefined = firstType,
): Result {
  return rule((args) => {
    const type = typeOfValues(args);
    if (type === undefined) return PLAIN;
    const unit = differenceUnit(type);
    if (unit === undefined) return `${subject(type)} has no spread: pass numbers, dates or temperatures.`;
    return numberIn(exponent === 1 ? unit : powerUnit(unit, exponent));
  });
}

/** The differences of the arguments' values multiplied, each to its power: SLOPE divides the first by the second. */
export function productOfDifferences(powers: readonly number[]): Result {
  return rule((args) => {
    let unit = ONE;
    for (const [index, exponent] of powers.entries()) {
      const type = args[index]?.type;
      if (type === undefined) continue;
      const factor = differenceUnit(type);
      if (factor === undefined) return `${subject(type)} can't be reckoned with: pass numbers, dates or temperatures.`;
      unit =
        exponent < 0
          ? divideUnits(unit, powerUnit(factor, -exponent))
          : multiplyUnits(unit, powerUnit(factor, exponent));
    }
    return numberIn(unit);
  });
}

/** All arguments multiplied, whatever their dimensions. */
export const PRODUCT_OF_ALL: Result = rule((args) => {
  let unit = ONE;
  for (const { type } of args) {
    if (type === undefined) continue;
    if (type.kind !== 'number') return `${subject(type)} can't be multiplied: pass columns of numbers.`;
    unit = multiplyUnits(unit, type.unit);
  }
  return numberIn(unit);
});

/** A number or quantity whose digits mean something without saying in which unit: a plain number or money. */
export function hasOwnDigits(type: ValueType): boolean {
  return type.kind === 'number' && (isPlain(type.dimension) || sameDimension(type.dimension, MONEY));
}

/** Whether both are quantities of one dimension, and not plain. */
export function isStepOf(type: ValueType, step: ValueType): boolean {
  return (
    type.kind === 'number' &&
    step.kind === 'number' &&
    !isPlain(step.dimension) &&
    sameDimension(type.dimension, step.dimension)
  );
}

/** `1 in` for a length shown in inches: the step to propose. */
export function oneOf(type: ValueType): string {
  return type.kind === 'number' ? `1 ${type.unit.symbol || canonicalUnit(type.dimension).symbol}` : '1';
}

/** The first argument's type, where plain numbers and money alone make sense; `use` says what to write else. */
export function ownDigitsOnly(name: string, use: (type: ValueType) => string): Result {
  return rule((args) => {
    const type = args[0]?.type ?? PLAIN;
    if (hasOwnDigits(type)) return type;
    return `${name} works on plain numbers and money, and this is ${nameOfType(type)}: write ${use(type)}.`;
  });
}

/** ROUND and its kin: digits for plain numbers and money, a step of its own kind for any quantity. */
export function digitsOrStep(name: string): Result {
  return rule((args) => {
    const type = args[0]?.type ?? PLAIN;
    const second = args[1]?.type;
    if (type.kind !== 'number') return `${name} takes a number, and this is ${nameOfType(type)}.`;
    if (second === undefined || (second.kind === 'number' && isPlain(second.dimension))) {
      if (hasOwnDigits(type)) return type;
      return `${name} of ${nameOfType(type)} needs the step to go to: ${name}(...; ${oneOf(type)}).`;
    }
    if (isStepOf(type, second)) return type;
    return `${name} goes to a step of the same kind: this is ${nameOfType(type)}, the step is ${nameOfType(second)}.`;
  });
}

/** CEILING and FLOOR: the step may be left out of plain numbers and money alone. */
export function stepGiven(name: string): Result {
  return rule((args) => {
    const type = args[0]?.type ?? PLAIN;
    if (args[1]?.type !== undefined || hasOwnDigits(type)) return type;
    return `${name} of ${nameOfType(type)} needs the step to go to: ${name}(...; ${oneOf(type)}).`;
  });
}
