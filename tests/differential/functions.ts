// What each function that both engines have takes and gives, as random arguments: one line a function. A function with
// several names is there under each of them.

import type { Expression, TableName } from './expression.ts';
import { type Call, constant, type Generator, wholeColumn } from './generator.ts';
import type { Kind } from './kind.ts';
import { COLUMNS, columnsOf, MAIN, OTHER, WANTED } from './tables.ts';

const ANY: readonly Kind[] = ['number', 'text', 'yesno', 'date'];
function sheet(table: TableName): Expression {
  return { is: 'table', kind: 'number', table };
}

type Args = (g: Generator) => readonly Expression[];

function gives(kind: Kind, args: Args): Call {
  return { gives: [kind], args };
}
const number = (args: Args): Call => gives('number', args);
const yesno = (args: Args): Call => gives('yesno', args);
const text = (args: Args): Call => gives('text', args);
const date = (args: Args): Call => gives('date', args);
const span = (args: Args): Call => gives('span', args);
/** Gives the type it takes. */
const any = (args: Call['args']): Call => ({ gives: ANY, args });
const ordered = (args: Call['args']): Call => ({ gives: ['number', 'number', 'date'], args });

const ofNumber = number((g) => [g.number()]);
const ofAngle = number((g) => [g.between(-7, 7)]);
const ofText = (give: (args: Args) => Call): Call => give((g) => [g.text()]);
const askAny = yesno((g) => [g.of(g.random.pick(ANY))]);
const spread: Call = {
  gives: ['number', 'number', 'span'],
  args: (g, kind) => g.values(kind === 'span' ? 'date' : 'number'),
};
const variance = number((g) => g.values('number'));
const pairOfColumns = number((g) => [g.column('number', MAIN), g.column('number', MAIN)]);
const place = ordered((g, kind) => [g.column(kind), g.whole(1, 9)]);
const quantile = ordered((g, kind) => [g.column(kind), g.share()]);
const quarter = ordered((g, kind) => [g.column(kind), g.whole(0, 4)]);
const rounding = number((g) => g.atMost(1, [g.number(), g.whole(-3, 5)]));
const step = number((g) => [g.number(), g.random.chance(0.5) ? g.between(0.05, 20) : g.whole(1, 25)]);
const normal = number((g) => [g.between(-5, 25), g.between(0, 20), g.between(0.05, 20), g.yesno()]);
const normalInverse = number((g) => [g.share(), g.between(-10, 20), g.between(0.05, 20)]);
const binomial = number((g) => [g.whole(0, 12), g.whole(6, 40), g.share(), g.yesno()]);
const binomialInverse = number((g) => [g.whole(1, 40), g.share(), g.share()]);
// Counts and working days stay small: the peer goes through them one by one, without end where they are large.
const poisson = number((g) => [constant('number', g.random.whole(0, 60)), g.between(0.05, 20), g.yesno()]);
/** Counts that the peer goes through one by one, without end where they are large. */
const few = (g: Generator, from: number, to: number): Expression => constant('number', g.random.whole(from, to));
const degrees = (g: Generator): Expression => few(g, 1, 40);
/** A size or scale as trials have it: of huge ones the peer's series have no end. */
const size = (g: Generator): Expression =>
  g.random.chance(0.4)
    ? { is: 'cell', kind: 'number', column: 'Rate' }
    : constant('number', Number((0.05 + g.random.next() * 20).toFixed(g.random.whole(1, 4))));
const deviate = (g: Generator): Expression => constant('number', Number((g.random.next() * 10 - 5).toFixed(2)));
const tInverse = number((g) => [g.share(), degrees(g)]);
const chiSquared = number((g) => [size(g), degrees(g)]);
const snedecor = number((g) => [size(g), degrees(g), degrees(g)]);
const snedecorInverse = number((g) => [g.share(), degrees(g), degrees(g)]);
const interval = number((g) => [g.share(), size(g), few(g, 1, 60)]);
const sized = number((g) => [g.random.chance(0.1) ? deviate(g) : size(g), size(g), size(g), g.yesno()]);
const sizedInverse = number((g) => [g.share(), size(g), size(g)]);
const wait = number((g) => [size(g), size(g), g.yesno()]);
const betaInverse = number((g) => [g.share(), size(g), size(g)]);
const sample = number((g) => [few(g, 0, 6), few(g, 1, 12), few(g, 1, 12), few(g, 12, 30), g.yesno()]);
const samples = number((g) => [g.column('number', MAIN), g.column('number', MAIN), g.whole(1, 2), g.whole(1, 3)]);
const toStep = number((g) =>
  g.atMost(1, [g.number(), g.random.chance(0.5) ? g.between(0.05, 20) : g.whole(1, 25), g.whole(0, 1)]),
);
const conditional = ordered((g, kind) => [g.column(kind, MAIN), ...conditions(g)]);
const seek = number((g) => g.atMost(2, [g.oneOf('a', 'e', 'r', 'te', ' ', 'b'), g.text(), g.whole(1, 4)]));
const parts = text((g) => g.atMost(1, [g.text(), g.whole(0, 6)]));
const month = date((g) => [g.date(), g.whole(-30, 30)]);
const clock = number((g) => [g.span()]);

const database = number((g) => databaseArgs(g, 'number'));
const databaseOrdered = ordered((g, kind) => databaseArgs(g, kind));

/** A sheet, one of its columns by name, a sheet of criteria. */
function databaseArgs(g: Generator, kind: Kind): readonly Expression[] {
  const names = columnsOf(MAIN).filter((name) => COLUMNS[name].kind === kind);
  return [sheet(MAIN), constant('text', g.random.pick(names)), sheet(WANTED)];
}

/** Price and label stand in columns 2 and 3 beside the steps. */
function stepArgs(g: Generator, kind: Kind): readonly Expression[] {
  const place = constant('number', kind === 'number' ? 2 : 3);
  return g.atMost(3, [g.whole(-1, 45), sheet(OTHER), place, constant('yesno', g.random.chance(0.5))]);
}

function conditions(g: Generator): readonly Expression[] {
  return Array.from({ length: g.random.whole(1, 2) }, () => g.conditioned()).flat();
}

/** Rate, periods and two amounts, with the last left out now and then, and payments at the start or end. */
function annuity(g: Generator, periods: (g: Generator) => Expression): readonly Expression[] {
  const amount = (): Expression => g.between(-500, 900);
  const atStart = constant('number', g.random.whole(0, 1));
  return g.atMost(3, [g.between(0.001, 0.2), periods(g), amount(), amount(), atStart]);
}

/** Rate, one of the periods, periods and a loan, then what may be left out. */
function loanPart(g: Generator): readonly Expression[] {
  const [rate, atStart] = [g.random.whole(1, 200) / 1000, g.random.whole(0, 1)];
  const loan = [few(g, 12, 60), size(g), g.between(-90, 90), constant('number', atStart)];
  return g.atMost(4, [constant('number', rate), g.whole(1, 12), ...loan]);
}

export const CALLS: ReadonlyMap<string, Call> = new Map<string, Call>([
  ['IF', any((g, kind) => g.atMost(2, [g.yesno(), g.of(kind), g.of(kind)]))],
  ['IFS', any((g, kind) => [g.yesno(), g.of(kind), g.yesno(), g.of(kind)])],
  ['SWITCH', any((g, kind) => switchArgs(g, kind))],
  ['CHOOSE', any((g, kind) => [g.whole(1, 3), g.of(kind), g.of(kind), g.of(kind)])],
  ['IFERROR', any((g, kind) => [g.of(kind), g.of(kind)])],
  ['IFNA', any((g, kind) => [g.of(kind), g.of(kind)])],
  ['AND', yesno((g) => yesnos(g))],
  ['OR', yesno((g) => yesnos(g))],
  ['XOR', yesno((g) => yesnos(g))],
  ['NOT', yesno((g) => [g.yesno()])],
  ['TRUE', yesno(() => [])],
  ['FALSE', yesno(() => [])],
  ['SUM', number((g) => g.values('number'))],
  ['PRODUCT', number((g) => g.values('number'))],
  ['SUMSQ', number((g) => g.values('number'))],
  ['ABS', ofNumber],
  ['SIGN', ofNumber],
  ['SQRT', ofNumber],
  ['POWER', number((g) => [g.number(), g.between(-3, 4)])],
  ['MOD', step],
  ['QUOTIENT', step],
  ['GCD', number((g) => [wholeColumn('Count'), g.whole(0, 60), g.whole(0, 60)])],
  ['LCM', number((g) => [g.whole(0, 60), g.whole(0, 60), g.whole(1, 60)])],
  ['FACT', number((g) => [g.whole(0, 20)])],
  ['COMBIN', number((g) => [g.whole(5, 30), g.whole(0, 12)])],
  ['EXP', number((g) => [g.between(-20, 20)])],
  ['LN', ofNumber],
  ['LOG10', ofNumber],
  ['LOG', number((g) => g.atMost(1, [g.number(), g.between(0.05, 20)]))],
  ['PI', number(() => [])],
  ['SQRTPI', ofNumber],
  ['DEGREES', ofAngle],
  ['RADIANS', ofNumber],
  ['SIN', ofAngle],
  ['COS', ofAngle],
  ['TAN', ofAngle],
  ['COT', ofAngle],
  ['ASIN', number((g) => [g.between(-1, 1)])],
  ['ACOS', number((g) => [g.between(-1, 1)])],
  ['ATAN', ofNumber],
  ['ACOT', ofNumber],
  ['ATAN2', number((g) => [g.number(), g.number()])],
  ['SINH', ofAngle],
  ['COSH', ofAngle],
  ['TANH', ofAngle],
  ['COTH', ofAngle],
  ['ASINH', ofNumber],
  ['ACOSH', ofNumber],
  ['ATANH', number((g) => [g.between(-1, 1)])],
  ['ACOTH', ofNumber],
  ['ROUND', rounding],
  ['ROUNDUP', rounding],
  ['ROUNDDOWN', rounding],
  ['CEILING', number((g) => g.atMost(1, [g.number(), g.between(0.05, 20)]))],
  ['FLOOR', number((g) => g.atMost(1, [g.number(), g.between(0.05, 20)]))],
  ['CEILING.MATH', toStep],
  ['FLOOR.MATH', toStep],
  ['MROUND', step],
  ['INT', ofNumber],
  ['TRUNC', rounding],
  ['EVEN', ofNumber],
  ['ODD', ofNumber],
  ['COUNT', number((g) => g.values('number'))],
  ['COUNTA', number((g) => g.values(g.random.pick(ANY)))],
  ['COUNTBLANK', number((g) => [g.column(g.random.pick(ANY))])],
  ['MIN', ordered((g, kind) => g.values(kind))],
  ['MAX', ordered((g, kind) => g.values(kind))],
  ['AVERAGE', ordered((g, kind) => g.values(kind))],
  ['MEDIAN', ordered((g, kind) => g.values(kind))],
  ['STDEV', spread],
  ['STDEV.S', spread],
  ['STDEVP', spread],
  ['STDEV.P', spread],
  ['VAR', variance],
  ['VAR.S', variance],
  ['VARP', variance],
  ['VAR.P', variance],
  ['AVEDEV', spread],
  ['DEVSQ', variance],
  ['GEOMEAN', number((g) => [wholeColumn('Rate'), g.between(0.05, 20)])],
  ['HARMEAN', number((g) => [wholeColumn('Rate'), g.between(0.05, 20)])],
  ['SKEW', variance],
  ['LARGE', place],
  ['SMALL', place],
  ['PERCENTILE', quantile],
  ['PERCENTILE.INC', quantile],
  ['PERCENTILE.EXC', quantile],
  ['QUARTILE', quarter],
  ['QUARTILE.EXC', quarter],
  ['QUARTILE.INC', quarter],
  ['SLOPE', pairOfColumns],
  ['RSQ', pairOfColumns],
  ['STEYX', pairOfColumns],
  ['CORREL', pairOfColumns],
  ['PEARSON', pairOfColumns],
  ['COVAR', pairOfColumns],
  ['COVARIANCE.P', pairOfColumns],
  ['COVARIANCE.S', pairOfColumns],
  ['SUMPRODUCT', pairOfColumns],
  ['SUMX2MY2', pairOfColumns],
  ['SUMX2PY2', pairOfColumns],
  ['SUMXMY2', pairOfColumns],
  ['NORM.DIST', normal],
  ['NORMDIST', normal],
  ['NORM.INV', normalInverse],
  ['NORMINV', normalInverse],
  ['NORM.S.DIST', number((g) => [g.between(-5, 5), g.yesno()])],
  ['NORM.S.INV', number((g) => [g.share()])],
  ['PHI', number((g) => [g.between(-5, 5)])],
  ['GAUSS', number((g) => [g.between(-5, 5)])],
  ['STANDARDIZE', number((g) => [g.number(), g.number(), g.between(0.05, 20)])],
  ['BINOM.DIST', binomial],
  ['BINOMDIST', binomial],
  ['BINOM.INV', binomialInverse],
  ['CRITBINOM', binomialInverse],
  ['POISSON.DIST', poisson],
  ['POISSON', poisson],
  ['T.DIST', number((g) => [deviate(g), degrees(g), g.yesno()])],
  ['T.DIST.RT', number((g) => [deviate(g), degrees(g)])],
  ['T.DIST.2T', number((g) => [size(g), degrees(g)])],
  ['T.INV', tInverse],
  ['T.INV.2T', tInverse],
  ['TINV', tInverse],
  ['CHISQ.DIST', number((g) => [g.random.chance(0.1) ? deviate(g) : size(g), degrees(g), g.yesno()])],
  ['CHISQ.DIST.RT', chiSquared],
  ['CHISQ.INV', tInverse],
  ['CHISQ.INV.RT', tInverse],
  ['F.DIST', number((g) => [size(g), degrees(g), degrees(g), g.yesno()])],
  ['FDIST', snedecor],
  ['F.DIST.RT', snedecor],
  ['F.INV', snedecorInverse],
  ['FINV', snedecorInverse],
  ['F.INV.RT', snedecorInverse],
  ['CONFIDENCE', interval],
  ['CONFIDENCE.NORM', interval],
  ['CONFIDENCE.T', interval],
  ['T.TEST', samples],
  ['TTEST', samples],
  ['GAMMA.DIST', sized],
  ['GAMMADIST', sized],
  ['GAMMA.INV', sizedInverse],
  ['GAMMAINV', sizedInverse],
  ['WEIBULL.DIST', sized],
  ['WEIBULL', sized],
  ['EXPON.DIST', wait],
  ['EXPONDIST', wait],
  ['BETA.DIST', number((g) => [g.share(), size(g), size(g), g.yesno()])],
  ['BETADIST', number((g) => g.atMost(3, [g.share(), size(g), size(g), g.whole(-1, 0), g.whole(1, 2)]))],
  ['BETA.INV', betaInverse],
  ['BETAINV', betaInverse],
  ['HYPGEOM.DIST', sample],
  ['HYPGEOMDIST', sample],
  ['SUMIFS', number((g) => [g.column('number', MAIN), ...conditions(g)])],
  ['COUNTIFS', number(conditions)],
  ['MINIFS', conditional],
  ['MAXIFS', conditional],
  ['SUMIF', number((g) => [...g.conditioned(), g.column('number', MAIN)])],
  ['COUNTIF', number((g) => g.conditioned())],
  ['AVERAGEIF', ordered((g, kind) => [...g.conditioned(), g.column(kind, MAIN)])],
  ['XLOOKUP', any((g, kind) => lookUp(g, kind))],
  ['MATCH', number((g) => matchArgs(g))],
  ['INDEX', any((g, kind) => [g.column(kind), g.whole(1, 10)])],
  ['ROWS', number(() => [sheet(OTHER)])],
  ['COLUMNS', number(() => [sheet(OTHER)])],
  ['VLOOKUP', { gives: ['number', 'text'], args: (g, kind) => stepArgs(g, kind) }],
  ['DSUM', database],
  ['DCOUNT', database],
  ['DCOUNTA', number((g) => databaseArgs(g, g.random.pick(ANY)))],
  ['DAVERAGE', databaseOrdered],
  ['DMIN', databaseOrdered],
  ['DMAX', databaseOrdered],
  ['DPRODUCT', database],
  ['DSTDEV', database],
  ['DSTDEVP', database],
  ['DVAR', database],
  ['DVARP', database],
  ['DGET', any((g, kind) => databaseArgs(g, kind))],
  ['LEFT', parts],
  ['RIGHT', parts],
  ['MID', text((g) => [g.text(), g.whole(1, 5), g.whole(0, 6)])],
  ['LEN', ofText(number)],
  ['TRIM', ofText(text)],
  ['CLEAN', ofText(text)],
  ['UPPER', ofText(text)],
  ['LOWER', ofText(text)],
  ['PROPER', ofText(text)],
  ['REPLACE', text((g) => [g.text(), g.whole(1, 5), g.whole(0, 6), g.text()])],
  ['REPT', text((g) => [g.text(), g.whole(0, 5)])],
  ['SUBSTITUTE', text((g) => g.atMost(3, [g.text(), g.oneOf('a', 'e', 'te', ' '), g.text(), g.whole(1, 3)]))],
  ['FIND', seek],
  ['SEARCH', seek],
  ['EXACT', yesno((g) => [g.text(), g.text()])],
  ['CODE', ofText(number)],
  ['UNICODE', ofText(number)],
  ['CHAR', text((g) => [few(g, 32, 126)])],
  ['UNICHAR', text((g) => [g.whole(32, 900)])],
  ['T', text((g) => [g.of(g.random.pick<Kind>(['text', 'number', 'yesno']))])],
  ['TEXT', text((g) => textArgs(g))],
  ['CONCATENATE', text((g) => [g.text(), g.text(), g.text()])],
  ['TEXTJOIN', text((g) => [g.oneOf(', ', '', '-'), constant('yesno', g.random.chance(0.5)), ...g.values('text')])],
  ['DATE', date((g) => [g.whole(1990, 2040), g.whole(-3, 16), g.whole(-3, 40)])],
  ['YEAR', number((g) => [g.date()])],
  ['MONTH', number((g) => [g.date()])],
  ['DAY', number((g) => [g.date()])],
  ['WEEKDAY', number((g) => g.atMost(1, [g.date(), constant('number', g.random.pick([1, 2, 3, 11, 12, 14, 17]))]))],
  ['WEEKNUM', number((g) => g.atMost(1, [g.date(), constant('number', g.random.pick([1, 2, 11, 12, 14, 17, 21]))]))],
  ['ISOWEEKNUM', number((g) => [g.date()])],
  ['EDATE', month],
  ['EOMONTH', month],
  ['DAYS', span((g) => [g.date(), g.date()])],
  ['DAYS360', span((g) => g.atMost(2, [g.date(), g.date(), g.yesno()]))],
  ['DATEDIF', number((g) => [g.date(), g.date(), g.oneOf('y', 'm', 'd', 'ym', 'md', 'yd', 'Y', 'D')])],
  ['YEARFRAC', number((g) => g.atMost(2, [g.date(), g.date(), g.whole(0, 4)]))],
  ['TIME', span((g) => [g.whole(0, 23), g.whole(0, 59), g.whole(0, 59)])],
  ['HOUR', clock],
  ['MINUTE', clock],
  ['SECOND', clock],
  ['NETWORKDAYS', number((g) => g.atMost(2, [g.date(), g.date(), g.column('date', MAIN)]))],
  [
    'WORKDAY',
    date((g) => g.atMost(2, [g.date(), constant('number', g.random.whole(-300, 300)), g.column('date', MAIN)])),
  ],
  ['ISBLANK', askAny],
  ['ISERROR', askAny],
  ['ISERR', askAny],
  ['ISNA', askAny],
  ['ISNUMBER', askAny],
  ['ISTEXT', askAny],
  ['ISNONTEXT', askAny],
  ['ISLOGICAL', askAny],
  ['ISEVEN', yesno((g) => [g.number()])],
  ['ISODD', yesno((g) => [g.number()])],
  ['N', number((g) => [g.of(g.random.pick<Kind>(['number', 'yesno', 'text']))])],
  ['NA', number(() => [])],
  ['VALUE', number((g) => [g.random.chance(0.6) ? { is: 'cell', kind: 'text', column: 'Digits' } : g.text()])],
  ['DATEVALUE', date((g) => [g.oneOf('2027-03-15', '2026-12-31', '2024-02-29', '2027-02-30', 'soon')])],
  ['TIMEVALUE', span((g) => [g.oneOf('6:30', '18:05:20', '00:00', '23:59:59', 'noon')])],
  ['FV', number((g) => annuity(g, (h) => h.whole(1, 60)))],
  ['PV', number((g) => annuity(g, (h) => h.whole(1, 60)))],
  ['PMT', number((g) => annuity(g, (h) => h.whole(1, 60)))],
  ['NPER', number((g) => annuity(g, (h) => h.between(-500, -20)))],
  ['RATE', number((g) => g.atMost(3, [g.whole(1, 60), g.between(-200, -20), g.between(100, 900), g.whole(0, 100)]))],
  ['IPMT', number((g) => loanPart(g))],
  ['PPMT', number((g) => loanPart(g))],
  ['EFFECT', number((g) => [g.between(0.001, 0.4), few(g, 1, 12)])],
  ['NOMINAL', number((g) => [g.between(0.001, 0.4), few(g, 1, 12)])],
  ['XNPV', number((g) => [g.between(0.001, 0.4), wholeColumn('Paid'), wholeColumn('Due')])],
  ['XIRR', number((g) => g.atMost(2, [wholeColumn('Paid'), wholeColumn('Due'), g.between(0.01, 0.3)]))],
  ['MIRR', number((g) => [wholeColumn('Paid'), g.between(0.01, 0.3), g.between(0.01, 0.3)])],
  [
    'DB',
    number((g) => g.atMost(4, [g.between(100, 9000), g.between(0, 90), few(g, 5, 12), few(g, 1, 5), few(g, 1, 12)])),
  ],
  ['NPV', number((g) => [g.between(0.001, 0.2), ...g.values('number')])],
  ['IRR', number((g) => g.atMost(1, [wholeColumn('Paid'), g.between(0.01, 0.3)]))],
  ['SLN', number((g) => [g.between(100, 9000), g.between(0, 90), g.whole(1, 12)])],
  ['SYD', number((g) => [g.between(100, 9000), g.between(0, 90), g.whole(5, 12), g.whole(1, 5)])],
  [
    'DDB',
    number((g) => g.atMost(4, [g.between(100, 9000), g.between(0, 90), g.whole(5, 12), g.whole(1, 5), g.whole(1, 3)])),
  ],
]);

function yesnos(g: Generator): readonly Expression[] {
  return Array.from({ length: g.random.whole(1, 4) }, () => g.yesno());
}

function switchArgs(g: Generator, kind: Kind): readonly Expression[] {
  const key = g.random.pick<Kind>(['number', 'text', 'date']);
  const pairs = Array.from({ length: g.random.whole(1, 3) }, () => [g.leaf(key), g.of(kind)]).flat();
  return [g.of(key), ...pairs, ...(g.random.chance(0.6) ? [g.of(kind)] : [])];
}

function lookUp(g: Generator, kind: Kind): readonly Expression[] {
  const key = g.random.pick<Kind>(['number', 'text', 'date']);
  return g.atMost(3, [g.of(key), g.column(key, MAIN), g.column(kind, MAIN), g.of(kind)]);
}

/** A sorted column where the kind of match wants one. */
function matchArgs(g: Generator): readonly Expression[] {
  const how = g.random.whole(-1, 1);
  if (how === 0) {
    const key = g.random.pick<Kind>(['number', 'text', 'date', 'yesno']);
    return [g.of(key), g.column(key, MAIN), constant('number', 0)];
  }
  const sorted = wholeColumn(how > 0 ? 'Rising' : 'Falling');
  return [g.between(-12, 32), sorted, ...(how > 0 && g.random.chance(0.5) ? [] : [constant('number', how)])];
}

function textArgs(g: Generator): readonly Expression[] {
  const format = g.random.pick(['0', '0.00', '#,##0.0', '0%', '#.##', '0.0E+00']);
  if (g.random.chance(0.7)) return [g.number(), constant('text', format)];
  return [g.date(), constant('text', g.random.pick(['yyyy-mm-dd', 'dd/mm/yyyy', 'd mmm yyyy', 'mm/yy']))];
}
