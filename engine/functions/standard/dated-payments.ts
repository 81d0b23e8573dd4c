// Payments on dates of their own, and a rate of return with interest on what comes in: XNPV, XIRR, MIRR. Read by standard/index.ts.

import type { Scalar } from '../../values/error.ts';
import { column, failure, makers, needed, optional, plain, takes } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { type Given, isFault, numberOf, numbersOf, type Pairs, pairsOf } from './columns.ts';
import { AMOUNT, NO_FINANCE, NO_RATE, netPresentValue, solvedRate } from './finance.ts';

const make = makers('finance');

const DAYS_A_YEAR = 365;
const TOO_EARLY = failure(
  'number',
  'No payment may come before the first one: its date is the day all are reckoned to.',
);

/** What payments on dates are worth on the first date; xs are civil days, ys amounts. */
function worthOnFirstDay(rate: number, { xs, ys }: Pairs): number {
  const first = xs[0] ?? 0;
  let worth = 0;
  for (let row = 0; row < xs.length; row += 1) {
    worth += (ys[row] ?? 0) * (1 + rate) ** (-((xs[row] ?? 0) - first) / DAYS_A_YEAR);
  }
  return worth;
}

function isInOrder({ xs }: Pairs): boolean {
  return xs.every((day) => day >= (xs[0] ?? day));
}

function xnpv([rate, payments, dates]: Given): Scalar {
  const pairs = pairsOf(dates, payments);
  if (isFault(pairs)) return pairs;
  if (!isInOrder(pairs)) return TOO_EARLY;
  const worth = worthOnFirstDay(numberOf(rate) ?? 0, pairs);
  return (numberOf(rate) ?? 0) > -1 && Number.isFinite(worth) ? worth : NO_FINANCE;
}

function xirr([payments, dates, guess]: Given): Scalar {
  const pairs = pairsOf(dates, payments);
  if (isFault(pairs)) return pairs;
  if (!isInOrder(pairs)) return TOO_EARLY;
  const { ys } = pairs;
  if (!ys.some((one) => one > 0) || !ys.some((one) => one < 0)) return NO_RATE;
  const rate = solvedRate((at) => worthOnFirstDay(at, pairs), numberOf(guess) ?? 0.1);
  return Number.isNaN(rate) ? NO_RATE : rate;
}

/** What is paid out costs one rate, what comes in earns another until the last period. */
function mirr([payments, outRate, inRate]: Given): Scalar {
  const list = numbersOf(payments);
  if (isFault(list)) return list;
  const [costs, earns] = [numberOf(outRate) ?? 0, numberOf(inRate) ?? 0];
  const received = netPresentValue(
    earns,
    list.map((one) => Math.max(0, one)),
  );
  const paid = netPresentValue(
    costs,
    list.map((one) => Math.min(0, one)),
  );
  if (!(received > 0 && paid < 0 && costs > -1 && earns > -1)) return NO_RATE;
  const grown = (-received * (1 + earns) ** list.length) / (paid * (1 + costs));
  const rate = grown ** (1 / (list.length - 1)) - 1;
  return Number.isFinite(rate) ? rate : NO_RATE;
}

const PAYMENTS = needed('payments', column(AMOUNT));
const DATES = needed('dates', column({ is: 'date' }));

export const DATED_PAYMENTS: readonly FunctionDefinition[] = [
  make.columns(
    'XNPV',
    'What a column of payments on dates is worth on the first of them, at a rate a year of 365 days.',
    '6.12.52',
    takes(needed('rate', plain), PAYMENTS, DATES),
    AMOUNT,
    xnpv,
  ),
  make.columns(
    'XIRR',
    'The rate a year at which a column of payments on dates, out and in, is worth nothing on the first of them.',
    '6.12.51',
    takes(PAYMENTS, DATES, optional('guess', plain)),
    plain,
    xirr,
  ),
  make.columns(
    'MIRR',
    'The rate a period that a column of payments, out and in, comes to where money owed costs one rate and money received earns another.',
    '6.12.27',
    takes(PAYMENTS, needed('cost_rate', plain), needed('earning_rate', plain)),
    plain,
    mirr,
  ),
];
