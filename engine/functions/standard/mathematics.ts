// Mathematics: sums and products, powers and roots, logarithms, counting. Quantities keep their dimensions: a root of an area is a
// length. Read by standard/index.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { powerUnit } from '../../units/arithmetic.ts';
import { isPlain } from '../../units/dimension.ts';
import { settled, tolerantFloor } from '../../values/tolerance.ts';
import { nameOfType, type ValueType } from '../../values/type.ts';
import {
  failure,
  finite,
  makers,
  many,
  needed,
  numbers,
  optional,
  or,
  plain,
  power,
  rule,
  takes,
  values,
  withLoop,
} from '../build.ts';
import { type FunctionDefinition, type Loop, rowOf } from '../definition.ts';
import { numberIn, PLAIN } from './types.ts';

const make = makers('mathematics');

const NO_ROOT = failure('number', 'A negative number has no square root: check what goes in.');
const NO_LOGARITHM = failure('number', 'Only a number above 0 has a logarithm: check what goes in.');
const NO_POWER = failure(
  'number',
  'This power has no answer, or is too large to hold: check the number and the exponent.',
);
const BY_ZERO = failure('divide', 'Divided by 0: check the divisor.');
const OUT_OF_RANGE = failure('number', 'Outside the numbers that have an answer here: check what goes in.');

const ONE_PLAIN = takes(needed('number', plain));

function plainFunction(
  name: string,
  doc: string,
  section: string,
  compute: (x: number) => number,
  undefinedMeans = OUT_OF_RANGE,
): FunctionDefinition {
  return make.numeric(name, doc, section, ONE_PLAIN, plain, compute, undefinedMeans);
}

export function sum(list: Float64Array, count: number): number {
  let total = 0;
  for (let index = 0; index < count; index += 1) total += list[index] ?? 0;
  return total;
}

export function product(list: Float64Array, count: number): number {
  if (count === 0) return 0;
  let total = 1;
  for (let index = 0; index < count; index += 1) total *= list[index] ?? 1;
  return finite(total);
}

function sumOfSquares(list: Float64Array, count: number): number {
  let total = 0;
  for (let index = 0; index < count; index += 1) total += (list[index] ?? 0) ** 2;
  return total;
}

function commonDivisor(a: number, b: number): number {
  let larger = a;
  let smaller = b;
  while (smaller > 0) {
    const rest = larger % smaller;
    larger = smaller;
    smaller = rest;
  }
  return larger;
}

/** Greatest common divisor of the whole parts; none for negative numbers. */
function greatestDivisor(list: Float64Array, count: number): number {
  let divisor = 0;
  for (let index = 0; index < count; index += 1) {
    const whole = tolerantFloor(list[index] ?? 0);
    if (whole < 0) return Number.NaN;
    divisor = commonDivisor(divisor, whole);
  }
  return divisor;
}

/** Least common multiple of the whole parts, 0 where one of them is 0; none for negative numbers, wherever they stand. */
function leastMultiple(list: Float64Array, count: number): number {
  let multiple = 1;
  for (let index = 0; index < count; index += 1) {
    const whole = tolerantFloor(list[index] ?? 0);
    if (whole < 0) return Number.NaN;
    multiple = multiple === 0 || whole === 0 ? 0 : (multiple / commonDivisor(multiple, whole)) * whole;
  }
  return finite(multiple);
}

/** The remainder with the divisor's sign: exact, however large the numbers; nought where they divide but for dust. */
export function modulo(a: number, b: number): number {
  if (b === 0) return Number.NaN;
  const whole = Number.isInteger(a) && Number.isInteger(b);
  if (!whole && Number.isInteger(settled(a / b))) return 0;
  const rest = a % b;
  return rest !== 0 && rest < 0 !== b < 0 ? rest + b : rest + 0;
}

function factorial(x: number): number {
  const whole = tolerantFloor(x);
  if (whole < 0 || whole > 170) return Number.NaN;
  let result = 1;
  for (let factor = 2; factor <= whole; factor += 1) result *= factor;
  return result;
}

/** Ways to choose `chosen` of `all`, order aside: exact while the numbers on the way stay below 2^53. */
function combinations(all: number, chosen: number): number {
  const n = tolerantFloor(all);
  const k = tolerantFloor(chosen);
  if (n < 0 || k < 0 || k > n) return Number.NaN;
  const fewer = Math.min(k, n - k);
  let result = 1;
  for (let step = 1; step <= fewer && result < Infinity; step += 1) result = (result * (n - fewer + step)) / step;
  return finite(result < Number.MAX_SAFE_INTEGER ? Math.round(result) : result);
}

function arrangements(all: number, chosen: number): number {
  const n = tolerantFloor(all);
  const k = tolerantFloor(chosen);
  if (n < 0 || k < 0 || k > n) return Number.NaN;
  let result = 1;
  for (let factor = n - k + 1; factor <= n && result < Infinity; factor += 1) result *= factor;
  return finite(result);
}

/** A power; odd roots of negative numbers are none, as the exponent is a mere double. */
export function raised(x: number, exponent: number): number {
  return x === 0 && exponent < 0 ? Number.NaN : finite(x ** exponent);
}

/** The logarithm to a base, a whole number where it is one but for dust: LOG(512; 8) is 3. */
function logarithm(x: number, base: number): number {
  if (!(x > 0) || !(base > 0) || base === 1) return Number.NaN;
  if (base === 10) return Math.log10(x);
  if (base === 2) return Math.log2(x);
  return settled(Math.log(x) / Math.log(base));
}

function naturalLogarithm(x: number): number {
  return x > 0 ? Math.log(x) : Number.NaN;
}

const logarithmLoop: Loop = (out, count, [x]) => {
  if (x === undefined) return;
  for (let i = 0; i < count; i++) out[i] = naturalLogarithm(rowOf(x, i));
};

function powerType(args: readonly ArgumentType[]): ValueType | string {
  const base = args[0]?.type ?? PLAIN;
  const exponent = args[1]?.constant;
  if (base.kind !== 'number') return `POWER takes a number, and this is ${nameOfType(base)}.`;
  if (isPlain(base.dimension)) return PLAIN;
  if (typeof exponent !== 'number') {
    return `The exponent decides what becomes of ${nameOfType(base)}: write it as a number, as in POWER(...; 2).`;
  }
  return numberIn(powerUnit(base.unit, exponent));
}

const PAIR = takes(needed('number', numbers('A')), needed('divisor', numbers('A')));

/** Says of a fold that it adds one number to the last. */
function addingUp(definition: FunctionDefinition): FunctionDefinition {
  const { body } = definition;
  return body.lane === 'fold' ? { ...definition, body: { ...body, fold: { ...body.fold, addsUp: true } } } : definition;
}

export const MATHEMATICS: readonly FunctionDefinition[] = [
  addingUp(
    make.fold(
      'SUM',
      'All values added; blanks are skipped.',
      '6.16.61',
      many('values', values(numbers('A'))),
      numbers('A'),
      sum,
    ),
  ),
  make.fold(
    'PRODUCT',
    'All plain numbers multiplied; blanks are skipped, 0 where there are none. Multiply quantities with *.',
    '6.16.47',
    many('values', values(plain)),
    plain,
    product,
    NO_POWER,
  ),
  make.fold(
    'SUMSQ',
    'The squares of all values added.',
    '6.16.65',
    many('values', values(numbers('A'))),
    power('A', 2),
    sumOfSquares,
  ),
  make.numeric(
    'ABS',
    'The size without its sign.',
    '6.16.2',
    takes(needed('number', numbers('A'))),
    numbers('A'),
    Math.abs,
  ),
  make.numeric(
    'SIGN',
    '1 for more than nought, 0 for nought, -1 for less.',
    '6.16.54',
    takes(needed('number', numbers('A'))),
    plain,
    Math.sign,
  ),
  make.numeric(
    'SQRT',
    'The square root; of an area a length.',
    '6.16.58',
    takes(needed('number', numbers('A'))),
    power('A', 0.5),
    (x) => (x < 0 ? Number.NaN : Math.sqrt(x)),
    NO_ROOT,
  ),
  make.numeric(
    'POWER',
    'The first raised to the second.',
    '6.16.46',
    takes(needed('number', numbers('A')), needed('exponent', plain)),
    rule(powerType),
    raised,
    NO_POWER,
  ),
  make.numeric(
    'MOD',
    'What is left after dividing as often as it goes; it has the sign of the divisor.',
    '6.16.42',
    PAIR,
    numbers('A'),
    modulo,
    BY_ZERO,
  ),
  make.numeric(
    'QUOTIENT',
    'How often the second goes into the first, whole times.',
    '6.16.48',
    PAIR,
    plain,
    (a, b) => (b === 0 ? Number.NaN : Math.trunc(settled(a / b)) + 0),
    BY_ZERO,
  ),
  make.fold(
    'GCD',
    'The largest whole number that divides all.',
    '6.16.36',
    many('values', values(plain)),
    plain,
    greatestDivisor,
    OUT_OF_RANGE,
  ),
  make.fold(
    'LCM',
    'The smallest whole number that all divide.',
    '6.16.38',
    many('values', values(plain)),
    plain,
    leastMultiple,
    OUT_OF_RANGE,
  ),
  plainFunction('FACT', 'The factorial: 1 x 2 x ... x n, up to 170.', '6.16.32', factorial),
  make.numeric(
    'COMBIN',
    'Ways to choose so many out of so many, order aside.',
    '6.16.16',
    takes(needed('all', plain), needed('chosen', plain)),
    plain,
    combinations,
    OUT_OF_RANGE,
  ),
  make.numeric(
    'PERMUT',
    'Ways to choose so many out of so many, in order.',
    '6.18.59',
    takes(needed('all', plain), needed('chosen', plain)),
    plain,
    arrangements,
    OUT_OF_RANGE,
  ),
  plainFunction('EXP', 'e raised to a number.', '6.16.31', (x) => finite(Math.exp(x)), NO_POWER),
  withLoop(plainFunction('LN', 'The natural logarithm.', '6.16.39', naturalLogarithm, NO_LOGARITHM), logarithmLoop),
  plainFunction(
    'LOG10',
    'The logarithm to base 10.',
    '6.16.41',
    (x) => (x > 0 ? Math.log10(x) : Number.NaN),
    NO_LOGARITHM,
  ),
  make.numeric(
    'LOG',
    'The logarithm to a base, 10 where left out.',
    '6.16.40',
    takes(needed('number', plain), optional('base', plain)),
    plain,
    (x, base?: number) => logarithm(x, or(base, 10)),
    NO_LOGARITHM,
  ),
  make.numeric('PI', 'The ratio of a circle to its diameter, 3.14159...', '6.16.45', takes(), plain, () => Math.PI),
  plainFunction(
    'SQRTPI',
    'The square root of a number times pi.',
    '6.16.59',
    (x) => (x < 0 ? Number.NaN : Math.sqrt(x * Math.PI)),
    NO_ROOT,
  ),
];
