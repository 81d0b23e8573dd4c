// Money over time: loans, savings, worth of later payments. Money paid out is negative, money received positive. Amounts may be
// money or plain numbers, alike within a call; rates are per period. Read by standard/index.ts; the parts of a loan's payments
// stand in loans.ts, payments on dates in dated-payments.ts, writing off in writing-off.ts.

import type { Scalar } from '../../values/error.ts';
import {
  column,
  failure,
  finite,
  makers,
  needed,
  numbers,
  optional,
  or,
  plain,
  takes,
  thenRepeating,
  values,
} from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { type Given, isFault, listOf, numberOf, numbersOf } from './columns.ts';

const make = makers('finance');

export const NO_RATE = failure(
  'number',
  'No rate fits these payments: some must be paid out (negative) and some received (positive).',
);
const NO_PERIODS = failure('number', 'These payments never pay it off: check their signs and the rate.');
export const NO_FINANCE = failure(
  'number',
  'These amounts and this rate have no answer: check the rate and the number of periods.',
);

/** How much 1 grows to over the periods, and how much payments of 1 a period add up to then. */
function growth(rate: number, periods: number): number {
  return (1 + rate) ** periods;
}

export function annuity(rate: number, periods: number, dueAtStart: number): number {
  if (rate === 0) return periods;
  // A loss of more than everything a period has no logarithm, yet whole periods have an answer.
  const gained = rate > -1 ? Math.expm1(periods * Math.log1p(rate)) : growth(rate, periods) - 1;
  const grown = gained / rate;
  return dueAtStart !== 0 ? grown * (1 + rate) : grown;
}

function futureValue(rate: number, periods: number, payment: number, present: number, due: number): number {
  return -(present * growth(rate, periods) + payment * annuity(rate, periods, due)) + 0;
}

/** What payments to come and a last amount are worth so many periods before. */
export function presentValue(rate: number, periods: number, payment: number, future: number, due: number): number {
  return -(future + payment * annuity(rate, periods, due)) / growth(rate, periods) + 0;
}

/** The payment a period that brings a first amount to a last one. */
export function payment(rate: number, periods: number, present: number, future: number, due: number): number {
  return -(future + present * growth(rate, periods)) / annuity(rate, periods, due) + 0;
}

function numberOfPeriods(rate: number, paid: number, present: number, future: number, due: number): number {
  if (rate === 0) return -(present + future) / paid;
  const perPeriod = due !== 0 ? (paid * (1 + rate)) / rate : paid / rate;
  return Math.log1p(-(future + present) / (perPeriod + present)) / Math.log1p(rate);
}

const MOST_STEPS = 100;

/** A rate above -1 at which `worth` is 0: Newton's steps from a guess, then halving of an interval that brackets it. */
export function solvedRate(worth: (rate: number) => number, guess: number): number {
  let rate = guess;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const here = worth(rate);
    const width = 1e-6 * (1 + Math.abs(rate));
    const slope = (worth(rate + width) - worth(rate - width)) / (2 * width);
    const next = rate - here / slope;
    if (!(next > -1) || !Number.isFinite(next)) break;
    if (Math.abs(next - rate) <= 1e-14 * (1 + Math.abs(next))) return next;
    rate = next;
  }
  return bracketedRate(worth);
}

const BRACKETS = [-0.9999, -0.9, -0.5, -0.2, -0.05, 0, 0.05, 0.2, 0.5, 1, 2, 5, 10, 100, 1000];

function bracketedRate(worth: (rate: number) => number): number {
  for (let index = 1; index < BRACKETS.length; index += 1) {
    let low = BRACKETS[index - 1] ?? 0;
    let high = BRACKETS[index] ?? 0;
    const atLow = worth(low);
    if (!(atLow * worth(high) <= 0)) continue;
    for (let step = 0; step < 200 && high - low > 1e-15 * (1 + Math.abs(low)); step += 1) {
      const middle = (low + high) / 2;
      if (atLow * worth(middle) <= 0) high = middle;
      else low = middle;
    }
    return (low + high) / 2;
  }
  return Number.NaN;
}

function rateOfAnnuity(
  periods: number,
  paid: number,
  present: number,
  future: number,
  due: number,
  guess: number,
): number {
  if (!(periods > 0)) return Number.NaN;
  return solvedRate((rate) => futureValue(rate, periods, paid, present, due) - future, guess);
}

/** What payments at the end of each period are worth at the start. */
export function netPresentValue(rate: number, payments: Float64Array): number {
  let worth = 0;
  let factor = 1;
  for (const one of payments) {
    factor /= 1 + rate;
    worth += one * factor;
  }
  return finite(worth);
}

function npv(args: Given): Scalar {
  const rate = numberOf(args[0]) ?? 0;
  const payments: number[] = [];
  for (const arg of args.slice(1)) {
    const list = numbersOf(arg);
    if (isFault(list)) return list;
    for (const one of list) payments.push(one);
  }
  if (rate === -1) return NO_FINANCE;
  return netPresentValue(rate, Float64Array.from(payments));
}

function irr([payments, guess]: Given): Scalar {
  const list = numbersOf(payments);
  if (isFault(list)) return list;
  if (!list.some((one) => one > 0) || !list.some((one) => one < 0)) return NO_RATE;
  const rate = solvedRate((at) => netPresentValue(at, list) * (1 + at), numberOf(listOf(guess)[0]) ?? 0.1);
  return Number.isNaN(rate) ? NO_RATE : rate;
}

export const AMOUNT = numbers('M');
const due = optional('at_start', plain);

export const FINANCE: readonly FunctionDefinition[] = [
  make.numeric(
    'FV',
    'What payments and a first amount grow to: FV(rate; periods; payment; present; 1 where paid at the start).',
    '6.12.20',
    takes(needed('rate', plain), needed('periods', plain), needed('payment', AMOUNT), optional('present', AMOUNT), due),
    AMOUNT,
    (rate, periods, paid, present?: number, start?: number) =>
      finite(futureValue(rate, periods, paid, or(present, 0), or(start, 0))),
    NO_FINANCE,
  ),
  make.numeric(
    'PV',
    'What later payments and a last amount are worth now.',
    '6.12.41',
    takes(needed('rate', plain), needed('periods', plain), needed('payment', AMOUNT), optional('future', AMOUNT), due),
    AMOUNT,
    (rate, periods, paid, future?: number, start?: number) =>
      finite(presentValue(rate, periods, paid, or(future, 0), or(start, 0))),
    NO_FINANCE,
  ),
  make.numeric(
    'PMT',
    'The payment a period that pays off a loan: PMT(rate; periods; loan).',
    '6.12.36',
    takes(needed('rate', plain), needed('periods', plain), needed('present', AMOUNT), optional('future', AMOUNT), due),
    AMOUNT,
    (rate, periods, present, future?: number, start?: number) =>
      finite(payment(rate, periods, present, or(future, 0), or(start, 0))),
    NO_FINANCE,
  ),
  make.numeric(
    'NPER',
    'How many payments it takes.',
    '6.12.29',
    takes(needed('rate', plain), needed('payment', AMOUNT), needed('present', AMOUNT), optional('future', AMOUNT), due),
    plain,
    (rate, paid, present, future?: number, start?: number) =>
      finite(numberOfPeriods(rate, paid, present, or(future, 0), or(start, 0))),
    NO_PERIODS,
  ),
  make.numeric(
    'RATE',
    'The rate a period at which payments pay off a loan.',
    '6.12.42',
    takes(
      needed('periods', plain),
      needed('payment', AMOUNT),
      needed('present', AMOUNT),
      optional('future', AMOUNT),
      due,
      optional('guess', plain),
    ),
    plain,
    (periods, paid, present, future?: number, start?: number, guess?: number) =>
      finite(rateOfAnnuity(periods, paid, present, or(future, 0), or(start, 0), or(guess, 0.1))),
    NO_RATE,
  ),
  make.columns(
    'NPV',
    'What payments at the end of each period are worth at the start.',
    '6.12.30',
    thenRepeating(takes(needed('rate', plain)), needed('payments', values(AMOUNT))),
    AMOUNT,
    npv,
  ),
  make.columns(
    'IRR',
    'The rate at which a column of payments, out and in, is worth nothing now.',
    '6.12.24',
    takes(needed('payments', column(AMOUNT)), optional('guess', plain)),
    plain,
    irr,
  ),
];
