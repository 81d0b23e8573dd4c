// Formulas for differences that random figures seldom meet, so that every listed reason is shown to hold.

import type { Expression } from './expression.ts';
import { constant, wholeColumn } from './generator.ts';
import type { Kind } from './kind.ts';

function call(kind: Kind, name: string, ...args: readonly Expression[]): Expression {
  return { is: 'call', kind, name, args };
}

const number = (value: number): Expression => constant('number', value);
const text = (value: string): Expression => constant('text', value);
const yes = constant('yesno', true);
const nothing = call('number', 'NA');
const sum: Expression = { is: 'binary', kind: 'number', operator: '+', args: [number(0.1), number(0.2)] };
const failing = call('yesno', 'NOT', { ...nothing, kind: 'yesno' });

/** 2030-01-30, as a serial. */
const start = constant('date', 47_513);

export const RARE: readonly Expression[] = [
  call('date', 'EDATE', start, number(25)),
  call('text', 'REPT', text('bed'), number(20_000)),
  call('number', 'BINOMDIST', number(4), number(16), number(24), { ...nothing, kind: 'yesno' }),
  call('number', 'STDEV', number(1e200), number(3), number(-4e200)),
  call('number', 'COMBIN', number(2000), number(2)),
  call(
    'number',
    'ROUNDUP',
    { is: 'binary', kind: 'number', operator: '*', args: [number(100), number(1.1)] },
    number(0),
  ),
  call('text', 'RIGHT', text('bed'), number(0.5)),
  call('number', 'SYD', number(900), number(50), number(8), number(0.5)),
  call('number', 'POISSON', number(400), number(9), yes),
  call('text', 'SUBSTITUTE', text('bed'), text(''), text('x')),
  call('span', 'TIMEVALUE', text('2027-03-15')),
  call('number', 'NORM.INV', number(1e-18), number(6), number(2)),
  call('number', 'FV', number(1e-300), number(21), number(139.75), number(517)),
  call(
    'number',
    'WEEKNUM',
    { is: 'binary', kind: 'date', operator: '-', args: [start, constant('span', 60_000)] },
    number(1),
  ),
  call('span', 'DAYS360', call('date', 'EDATE', start, number(1)), call('date', 'EOMONTH', start, number(0))),
  call('number', 'RATE', number(30), number(0), number(162), number(0)),
  call('number', 'RATE', number(4), number(-1.5856706453692986), number(733.06)),
  call('number', 'RATE', number(1), number(-32.1308), number(1e-9), number(7)),
  call('number', 'ISOWEEKNUM', constant('date', 47_847)),
  call('number', 'SECOND', constant('span', 48_642_359.08169)),
  call('number', 'PV', number(-1), number(3), number(5)),
  call('number', 'VALUE', text('1E3100')),
  call('number', 'SLN', number(900), number(50), number(0)),
  call('text', 'TEXT', number(1115.965), text('0.00')),
  call('number', 'IRR', wholeColumn('Paid'), number(-6)),
  call('number', 'POISSON', number(29), number(1e200), yes),
  call('text', 'CLEAN', call('text', 'UNICHAR', number(150))),
  call('number', 'DB', number(900), number(50), number(8), number(0.5)),
  call('number', 'LCM', number(1e15), number(43)),
  call('number', 'MIRR', wholeColumn('Paid'), number(-3), number(0.1)),
  call('number', 'BETA.INV', number(1e-12), number(6), number(2)),
  call('number', 'CHISQ.INV.RT', number(0), number(6)),
  call('number', 'BETA.INV', number(0.5), number(1e11), number(2)),
  call('number', 'PPMT', number(4), number(8), number(43), number(5080)),
  call('number', 'CONFIDENCE.T', number(0.1), number(2), number(1)),
  call('number', 'ROUND', number(0.5), number(759)),
  call('date', 'DATE', number(1991), number(-1e12), number(25)),
  call('number', 'IRR', wholeColumn('Paid'), number(1e15)),
  call('yesno', 'AND', constant('yesno', false), failing),
  call('yesno', 'IFS', yes, yes, failing, yes),
  call('number', 'ROUND', number(2.345), number(1.9)),
  call('number', 'CHOOSE', number(1.5), number(3), number(4)),
  call('number', 'INT', number(-2.5)),
  { is: 'binary', kind: 'yesno', operator: '=', args: [sum, number(0.3)] },
  {
    is: 'binary',
    kind: 'yesno',
    operator: '=',
    args: [{ is: 'binary', kind: 'number', operator: '-', args: [sum, number(0.3)] }, number(0)],
  },
  call('number', 'BINOM.DIST', number(0), number(1e13), number(0), yes),
  call('number', 'SEARCH', text('*'), text('red'), number(4)),
  call('number', 'EFFECT', number(1e-9), number(10)),
  call('number', 'GAMMA.INV', number(0.1), number(28_285_188_487), number(10.9719)),
  call('number', 'T.TEST', wholeColumn('Amount'), wholeColumn('Paid'), number(1.5), number(2)),
  call('number', 'IPMT', number(0.1), number(2.5), number(12), number(900)),
  call('number', 'CEILING.MATH', number(-3), number(14), number(2)),
  call('number', 'RATE', number(4), number(4e-7), number(-37)),
  call('number', 'FLOOR', number(-3), number(-0.7)),
  call('number', 'STDEV', number(0.1), number(0.1), number(0.1)),
  call('number', 'SKEW', number(0.1), number(0.3), number(0.2)),
];
