// The parts of a loan's payments, and rates said by the year or by the period. Read by standard/index.ts.

import { settled, tolerantFloor } from '../../values/tolerance.ts';
import { failure, finite, makers, needed, optional, or, plain, takes } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { AMOUNT, annuity, payment, presentValue } from './finance.ts';

const make = makers('finance');

const NO_PERIOD = failure('number', 'Periods count from 1 to the number of periods: check them and the rate.');
const NO_PERIODS_A_YEAR = failure('number', 'The rate must be 0 or above and the periods a year 1 or more.');

/**
 * What one payment at the end of its period pays back: the same growing by the rate each period, all of them together the loan and
 * what is left of it. So it keeps its figures where it is a small part of the payment.
 */
function principal(rate: number, period: number, periods: number, present: number, future: number): number {
  return (-(present + future) / annuity(rate, periods, 0)) * (1 + rate) ** (period - 1);
}

/** The interest in one payment at the end of its period: on what the payments still to come are worth. */
function interest(rate: number, period: number, periods: number, present: number, future: number): number {
  const paid = payment(rate, periods, present, future, 0);
  return -presentValue(rate, periods - period + 1, paid, future, 0) * rate;
}

type PartOfLoan = (
  rate: number,
  period: number,
  periods: number,
  present: number,
  future?: number,
  due?: number,
) => number;

/** A part of one payment; payments at the start come a period's interest cheaper, and the first of them bears none. */
function part(of: typeof interest, first: (paid: number) => number): PartOfLoan {
  return (rate, period, periods, present, future, due) => {
    const [at, left] = [settled(period), or(future, 0)];
    if (!(at >= 1 && at <= settled(periods))) return Number.NaN;
    if (or(due, 0) === 0) return finite(of(rate, at, periods, present, left));
    if (at < 2) return finite(first(payment(rate, periods, present, left, 1)));
    return finite(of(rate, at, periods, present, left) / (1 + rate));
  };
}

const LOAN = takes(
  needed('rate', plain),
  needed('period', plain),
  needed('periods', plain),
  needed('present', AMOUNT),
  optional('future', AMOUNT),
  optional('at_start', plain),
);

function effective(rate: number, periods: number): number {
  const times = tolerantFloor(periods);
  return rate >= 0 && times >= 1 ? finite(Math.expm1(times * Math.log1p(rate / times))) : Number.NaN;
}

function nominal(rate: number, periods: number): number {
  const times = tolerantFloor(periods);
  return rate >= 0 && times >= 1 ? finite(times * Math.expm1(Math.log1p(rate) / times)) : Number.NaN;
}

const YEARLY = (name: string) => takes(needed(name, plain), needed('periods_a_year', plain));

export const LOANS: readonly FunctionDefinition[] = [
  make.numeric(
    'IPMT',
    'The interest in one payment of a loan: IPMT(rate; period; periods; loan).',
    '6.12.23',
    LOAN,
    AMOUNT,
    part(interest, () => 0),
    NO_PERIOD,
  ),
  make.numeric(
    'PPMT',
    'What one payment of a loan pays back, its interest taken off.',
    '6.12.37',
    LOAN,
    AMOUNT,
    part(principal, (paid) => paid),
    NO_PERIOD,
  ),
  make.numeric(
    'EFFECT',
    'The rate a year that a rate said by the year comes to when interest is added so many times.',
    '6.12.19',
    YEARLY('nominal_rate'),
    plain,
    effective,
    NO_PERIODS_A_YEAR,
  ),
  make.numeric(
    'NOMINAL',
    'The rate said by the year that comes to an effective one when interest is added so many times.',
    '6.12.28',
    YEARLY('effective_rate'),
    plain,
    nominal,
    NO_PERIODS_A_YEAR,
  ),
];
