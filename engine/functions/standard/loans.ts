// The parts of a loan's payments, and rates said by the year or by the period. Read by standard/index.ts.

import { settled, tolerantFloor } from '../../values/tolerance.ts';
import { failure, finite, makers, needed, optional, or, plain, takes } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { AMOUNT, futureValue, payment } from './finance.ts';

const make = makers('finance');

const NO_PERIOD = failure('number', 'Periods count from 1 to the number of periods: check them and the rate.');
const NO_PERIODS_A_YEAR = failure('number', 'The rate must be above 0 and the periods a year 1 or more.');

/** The interest in one payment: on what is left after those before it; none in the first of payments at the start. */
function interest(rate: number, period: number, periods: number, present: number, future: number, due: number): number {
  const at = settled(period);
  if (!(at >= 1 && at <= settled(periods))) return Number.NaN;
  const paid = payment(rate, periods, present, future, due);
  if (due === 0) return futureValue(rate, at - 1, paid, present, 0) * rate;
  return at < 2 ? 0 : (futureValue(rate, at - 2, paid, present, 1) - paid) * rate;
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
  return rate > 0 && times >= 1 ? finite(Math.expm1(times * Math.log1p(rate / times))) : Number.NaN;
}

function nominal(rate: number, periods: number): number {
  const times = tolerantFloor(periods);
  return rate > 0 && times >= 1 ? finite(times * Math.expm1(Math.log1p(rate) / times)) : Number.NaN;
}

const YEARLY = (name: string) => takes(needed(name, plain), needed('periods_a_year', plain));

export const LOANS: readonly FunctionDefinition[] = [
  make.numeric(
    'IPMT',
    'The interest in one payment of a loan: IPMT(rate; period; periods; loan).',
    '6.12.23',
    LOAN,
    AMOUNT,
    (rate, period, periods, present, future?: number, due?: number) =>
      finite(interest(rate, period, periods, present, or(future, 0), or(due, 0))),
    NO_PERIOD,
  ),
  make.numeric(
    'PPMT',
    'What one payment of a loan pays back, its interest taken off.',
    '6.12.37',
    LOAN,
    AMOUNT,
    (rate, period, periods, present, future?: number, due?: number) => {
      const [last, start] = [or(future, 0), or(due, 0)];
      return finite(
        payment(rate, periods, present, last, start) - interest(rate, period, periods, present, last, start),
      );
    },
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
