// Writing off: what a tunnel, a tiller or a cold room costs each period of its life. Read by standard/index.ts.

import { settled } from '../../values/tolerance.ts';
import { failure, makers, needed, optional, or, plain, takes, yesno } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { AMOUNT } from './finance.ts';

const make = makers('finance');

/** Periods that are gone through one by one. */
const MOST_PERIODS = 10_000;

const NO_SUCH_PERIOD = failure('number', 'Periods count from 1 to the life; life and periods must be above 0.');
const NO_SPAN = failure(
  'number',
  `The span must lie within the life, which is at most ${MOST_PERIODS} periods; amounts must be 0 or above.`,
);

function straightLine(cost: number, salvage: number, life: number): number {
  return life === 0 ? Number.NaN : (cost - salvage) / life;
}

function sumOfYears(cost: number, salvage: number, life: number, period: number): number {
  if (!(life > 0) || period < 1 || period > life) return Number.NaN;
  return ((cost - salvage) * (life + 1 - period) * 2) / ((life + 1) * life);
}

/** Declining balance by `factor` / life of what is left, never below the salvage. */
function decliningBalance(cost: number, salvage: number, life: number, period: number, factor: number): number {
  if (!(life > 0) || period < 1 || period > life || !(factor > 0) || cost < 0 || salvage < 0) return Number.NaN;
  const share = Math.min(1, factor / life);
  const before = cost * (1 - share) ** (period - 1);
  const after = cost * (1 - share) ** period;
  return Math.max(0, before - Math.max(after, salvage));
}

/** Declining balance by a rate rounded to three decimals, the first period of so many months, the last of the rest. */
function fixedDecliningBalance(cost: number, salvage: number, life: number, period: number, months: number): number {
  const [years, at, first] = [settled(life), Math.trunc(settled(period)), Math.trunc(settled(months))];
  if (!(years > 0 && years <= MOST_PERIODS) || cost < 0 || salvage < 0 || first < 1 || first > 12) return Number.NaN;
  if (at < 1 || at > years + 1 || (at > years && first === 12)) return Number.NaN;
  if (cost <= salvage) return 0;
  const rate = Math.round((1 - (salvage / cost) ** (1 / years)) * 1000) / 1000;
  let amount = (cost * rate * first) / 12;
  let written = 0;
  for (let year = 2; year <= at; year += 1) {
    written += amount;
    amount = (cost - written) * rate;
  }
  return at > years ? (amount * (12 - first)) / 12 : amount;
}

/** What is written off until a time, whole periods and the part of the last one. */
function writtenOff(cost: number, salvage: number, life: number, until: number, factor: number, stay: boolean): number {
  let book = cost;
  for (let period = 1; period - 1 < until; period += 1) {
    const left = Math.max(0, book - salvage);
    const declining = Math.min(left, book * Math.min(1, factor / life));
    const even = Math.min(left, left / Math.max(1, life - period + 1));
    const amount = stay ? declining : Math.max(declining, even);
    book -= amount * Math.min(1, until - (period - 1));
  }
  return cost - book;
}

function variableDecliningBalance(
  cost: number,
  salvage: number,
  life: number,
  from: number,
  to: number,
  factor: number,
  stay: number,
): number {
  const [start, end] = [settled(from), settled(to)];
  if (!(life > 0 && life <= MOST_PERIODS) || start < 0 || end < start || end > life) return Number.NaN;
  if (cost < 0 || salvage < 0 || factor < 0) return Number.NaN;
  const until = (time: number): number => writtenOff(cost, salvage, life, time, factor, stay !== 0);
  return until(end) - until(start);
}

const COST = needed('cost', AMOUNT);
const SALVAGE = needed('salvage', AMOUNT);
const LIFE = needed('life', plain);
const PERIOD = needed('period', plain);

export const WRITING_OFF: readonly FunctionDefinition[] = [
  make.numeric(
    'SLN',
    'Writing off in equal parts: the amount a period.',
    '6.12.45',
    takes(COST, SALVAGE, LIFE),
    AMOUNT,
    straightLine,
    NO_SUCH_PERIOD,
  ),
  make.numeric(
    'SYD',
    'Writing off by the sum of years, more at first: the amount of one period.',
    '6.12.46',
    takes(COST, SALVAGE, LIFE, PERIOD),
    AMOUNT,
    sumOfYears,
    NO_SUCH_PERIOD,
  ),
  make.numeric(
    'DDB',
    'Writing off by twice the share of what is left (or another factor): the amount of one period.',
    '6.12.14',
    takes(COST, SALVAGE, LIFE, PERIOD, optional('factor', plain)),
    AMOUNT,
    (cost, salvage, life, period, factor?: number) => decliningBalance(cost, salvage, life, period, or(factor, 2)),
    NO_SUCH_PERIOD,
  ),
  make.numeric(
    'DB',
    'Writing off by a fixed share of what is left: the amount of one period; the first may have fewer than 12 months.',
    '6.12.13',
    takes(COST, SALVAGE, LIFE, PERIOD, optional('months', plain)),
    AMOUNT,
    (cost, salvage, life, period, months?: number) =>
      fixedDecliningBalance(cost, salvage, life, period, or(months, 12)),
    NO_SUCH_PERIOD,
  ),
  make.numeric(
    'VDB',
    'What is written off from one time to another by twice the share of what is left (or another factor), going over to equal parts where those are more, unless the last is yes.',
    '6.12.50',
    takes(
      COST,
      SALVAGE,
      LIFE,
      needed('from', plain),
      needed('to', plain),
      optional('factor', plain),
      optional('no_equal_parts', yesno),
    ),
    AMOUNT,
    (cost, salvage, life, from, to, factor?: number, stay?: number) =>
      variableDecliningBalance(cost, salvage, life, from, to, or(factor, 2), or(stay, 0)),
    NO_SPAN,
  ),
];
