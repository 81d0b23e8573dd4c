// Rounding functions. Digits for plain numbers and money; a step for any quantity: ROUND([Spacing]; 1 in). All go by the
// one rounding policy of values/tolerance.ts. Read by standard/index.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { settled, tolerantCeil, tolerantFloor, tolerantRound } from '../../values/tolerance.ts';
import { alias, failure, makers, needed, numbers, optional, or, plain, takes } from '../build.ts';
import { type FunctionDefinition, type Loop, type RunBody, rowOf } from '../definition.ts';
import { digitsOrStep, isStepOf, oneOf, ownDigitsOnly, stepGiven } from './types.ts';

const make = makers('rounding');

type Whole = (x: number) => number;

/** Largest whole number up to x in size, dust forgiven. */
function towardsZero(x: number): number {
  return x < 0 ? -tolerantFloor(-x) : tolerantFloor(x);
}

/** Smallest whole number from x on in size, dust forgiven. */
function awayFromZero(x: number): number {
  return x < 0 ? -tolerantCeil(-x) : tolerantCeil(x);
}

/** `whole` applied to the digits-th decimal of x; left of the decimal mark where digits are negative. */
export function atDigits(x: number, digits: number, whole: Whole): number {
  const places = Math.trunc(digits);
  if (places === 0) return Math.abs(x) < Number.MAX_SAFE_INTEGER ? whole(x) + 0 : x;
  if (places < -308) return 0;
  const scale = 10 ** Math.abs(places);
  if (places < 0) return whole(x / scale) * scale + 0;
  const scaled = x * scale;
  return Math.abs(scaled) < Number.MAX_SAFE_INTEGER ? whole(scaled) / scale + 0 : x;
}

/** `whole` applied to the number of steps in x, whatever the step's sign; 0 where the step is 0. */
function atStep(x: number, step: number, whole: Whole): number {
  if (step === 0) return 0;
  const size = Math.abs(step);
  return whole(x / size) * size + 0;
}

function digitsOrStepBody(whole: Whole, loop: Loop): (args: readonly ArgumentType[]) => RunBody {
  const digits = (x: number, places?: number): number => atDigits(x, or(places, 0), whole);
  const step = (x: number, of: number): number => atStep(x, of, whole);
  // Most formulas round to whole numbers and say so with a constant.
  const toWhole = (x: number): number => atDigits(x, 0, whole);
  return ([x, second]) => {
    const byStep = x?.type !== undefined && second?.type !== undefined && isStepOf(x.type, second.type);
    if (byStep) return { lane: 'numeric', compute: step, undefinedMeans: NO_STEP };
    if (second?.constant === 0) {
      return { lane: 'numeric', compute: toWhole, undefinedMeans: NO_STEP, loop };
    }
    return { lane: 'numeric', compute: digits, undefinedMeans: NO_STEP };
  };
}

// One loop each: in a loop that they shared, the rounding could not be compiled into it.
const upLoop: Loop = (out, count, [x]) => {
  if (x === undefined) return;
  for (let i = 0; i < count; i++) out[i] = awayFromZero(rowOf(x, i)) + 0;
};

const downLoop: Loop = (out, count, [x]) => {
  if (x === undefined) return;
  for (let i = 0; i < count; i++) out[i] = towardsZero(rowOf(x, i)) + 0;
};

const nearestLoop: Loop = (out, count, [x]) => {
  if (x === undefined) return;
  for (let i = 0; i < count; i++) out[i] = tolerantRound(rowOf(x, i)) + 0;
};

const NO_STEP = failure('number', 'There is nothing to round to: check the number and the digits or the step.');

const ROUNDED = takes(needed('number', numbers('A')), optional('digits_or_step', numbers('B')));

function rounding(name: string, doc: string, section: string, whole: Whole, loop: Loop): FunctionDefinition {
  return make.other(name, doc, section, ROUNDED, digitsOrStep(name), {
    lane: 'by type',
    choose: digitsOrStepBody(whole, loop),
  });
}

const TO_STEP = takes(needed('number', numbers('A')), optional('step', numbers('A')), optional('mode', plain));

/** CEILING and FLOOR: by `whole`, or by `ofSize` on the size alone where a mode other than 0 is given. */
function toStep(whole: Whole, ofSize: Whole): (x: number, step?: number, mode?: number) => number {
  return (x, step, mode) => atStep(x, or(step, 1), or(mode, 0) === 0 ? whole : ofSize);
}

function even(x: number): number {
  return 2 * awayFromZero(x / 2);
}

function odd(x: number): number {
  const size = Math.max(0, tolerantCeil((Math.abs(settled(x)) - 1) / 2));
  return (x < 0 ? -1 : 1) * (2 * size + 1);
}

const CEILING = make.numeric(
  'CEILING',
  'Up to the next multiple of the step (1 where left out): CEILING([Seeds]; 50). A mode other than 0 rounds away from nought.',
  '6.17.1',
  TO_STEP,
  stepGiven('CEILING'),
  toStep(tolerantCeil, awayFromZero),
);

const FLOOR = make.numeric(
  'FLOOR',
  'Down to the multiple of the step before (1 where left out): FLOOR([Length]; 6 in). A mode other than 0 rounds towards nought.',
  '6.17.3',
  TO_STEP,
  stepGiven('FLOOR'),
  toStep(tolerantFloor, towardsZero),
);

export const ROUNDING: readonly FunctionDefinition[] = [
  rounding(
    'ROUND',
    'The nearest number with so many digits, halves away from nought; or the nearest step: ROUND([Spacing]; 1 in).',
    '6.17.5',
    tolerantRound,
    nearestLoop,
  ),
  rounding(
    'ROUNDUP',
    'Away from nought to so many digits, or to the next step: ROUNDUP([Length]; 1 ft).',
    '6.17.7',
    awayFromZero,
    upLoop,
  ),
  rounding(
    'ROUNDDOWN',
    'Towards nought to so many digits, or to the step before: ROUNDDOWN([Length]; 1 ft).',
    '6.17.6',
    towardsZero,
    downLoop,
  ),
  CEILING,
  alias('CEILING.MATH', CEILING),
  FLOOR,
  alias('FLOOR.MATH', FLOOR),
  make.numeric(
    'MROUND',
    'The nearest multiple of the step.',
    '6.17.4',
    takes(needed('number', numbers('A')), needed('step', numbers('A'))),
    numbers('A'),
    (x, step) => atStep(x, step, tolerantRound),
  ),
  make.numeric(
    'INT',
    'The whole number at or below, of a plain number or money.',
    '6.17.2',
    takes(needed('number', numbers('A'))),
    ownDigitsOnly('INT', (type) => `FLOOR(...; ${oneOf(type)})`),
    tolerantFloor,
  ),
  make.numeric(
    'TRUNC',
    'Cut off after so many digits (none where left out), of a plain number or money.',
    '6.17.8',
    takes(needed('number', numbers('A')), optional('digits', plain)),
    ownDigitsOnly('TRUNC', (type) => `ROUNDDOWN(...; ${oneOf(type)})`),
    (x, digits?: number) => atDigits(x, or(digits, 0), towardsZero),
  ),
  make.numeric(
    'EVEN',
    'The next even number away from nought.',
    '6.16.30',
    takes(needed('number', plain)),
    plain,
    even,
  ),
  make.numeric('ODD', 'The next odd number away from nought.', '6.16.44', takes(needed('number', plain)), plain, odd),
];
