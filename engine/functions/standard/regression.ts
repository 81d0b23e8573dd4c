// A straight line through two columns, how well it fits, and sums over columns side by side. Rows in which either is blank are
// left out. Dimensions follow: the slope of yield over length is a mass per length. Read by standard/index.ts.

import type { ArgumentType, Result } from '../../language/signature.ts';
import { isError, type Scalar } from '../../values/error.ts';
import { tolerantRound } from '../../values/tolerance.ts';
import {
  alias,
  anything,
  column,
  columnsBody,
  failure,
  makers,
  needed,
  numbers,
  ordered,
  plain,
  power,
  rule,
  takes,
  thenRepeating,
} from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { type Given, isFault, listOf, numberOf, type Pairs, pairsOf } from './columns.ts';
import { mean } from './statistics.ts';
import { differenceUnit, numberIn, PLAIN, PRODUCT_OF_ALL, productOfDifferences, subject } from './types.ts';

const make = makers('statistics');

const TOO_FEW = failure('divide', 'Too few rows hold both values, or all of one column are alike.');

/** Means, and sums of squared and crossed distances from them. */
interface Moments {
  readonly count: number;
  readonly meanX: number;
  readonly meanY: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

const momentsOf = keptFor(({ xs, ys }: Pairs): Moments => {
  const count = xs.length;
  const meanX = mean(xs, count);
  const meanY = mean(ys, count);
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (let row = 0; row < count; row += 1) {
    const dx = (xs[row] ?? 0) - meanX;
    const dy = (ys[row] ?? 0) - meanY;
    xx += dx * dx;
    yy += dy * dy;
    xy += dx * dy;
  }
  return { count, meanX, meanY, xx, yy, xy };
});

/** An answer from the moments of x and y columns; none where there are fewer than `least` rows or the answer is no number. */
function fromMoments(
  yColumn: Given[number] | undefined,
  xColumn: Given[number] | undefined,
  least: number,
  answer: (moments: Moments) => number,
): Scalar {
  return fromPairs(yColumn, xColumn, least, (pairs) => answer(momentsOf(pairs)));
}

/** An answer from the rows themselves. */
function fromPairs(
  yColumn: Given[number] | undefined,
  xColumn: Given[number] | undefined,
  least: number,
  answer: (pairs: Pairs) => number,
): Scalar {
  const pairs = pairsOf(xColumn, yColumn);
  if (isFault(pairs)) return pairs;
  const value = pairs.xs.length < least ? Number.NaN : answer(pairs);
  return Number.isFinite(value) ? value : TOO_FEW;
}

function correlation({ xx, yy, xy }: Moments): number {
  return xx > 0 && yy > 0 ? Math.max(-1, Math.min(1, xy / Math.sqrt(xx * yy))) : Number.NaN;
}

function slope({ xx, xy }: Moments): number {
  return xx > 0 ? xy / xx : Number.NaN;
}

/** From what each row lies off the line, squared: exact where all lie on it, as a difference of the moments is not. */
function standardError(pairs: Pairs): number {
  const moments = momentsOf(pairs);
  const { count, meanX, meanY } = moments;
  const rise = slope(moments);
  let off = 0;
  for (let row = 0; row < count; row += 1) {
    off += ((pairs.ys[row] ?? 0) - meanY - rise * ((pairs.xs[row] ?? 0) - meanX)) ** 2;
  }
  return Math.sqrt(off / (count - 2));
}

function forecast([x, ys, xs]: Given): Scalar {
  return fromMoments(
    ys,
    xs,
    2,
    (moments) => moments.meanY + slope(moments) * ((numberOf(x) ?? Number.NaN) - moments.meanX),
  );
}

/** Rows side by side: blank or unlike rows left out. */
function sumOverPairs([one, other]: Given, term: (a: number, b: number) => number): Scalar {
  const pairs = pairsOf(one, other);
  if (isFault(pairs)) return pairs;
  let total = 0;
  for (let row = 0; row < pairs.xs.length; row += 1) total += term(pairs.xs[row] ?? 0, pairs.ys[row] ?? 0);
  return total;
}

/** The products of each row added; a row with a blank adds nothing. */
function sumOfProducts(args: Given): Scalar {
  const lists = args.map(listOf);
  const rows = lists[0]?.length ?? 0;
  let total = 0;
  for (let row = 0; row < rows; row += 1) {
    let product = 1;
    for (const list of lists) {
      const entry = list[row] ?? null;
      if (isError(entry)) return entry;
      product = typeof entry === 'number' ? product * entry : 0;
    }
    total += product;
  }
  return total;
}

/** How far estimates of the y column lie off: their difference. */
const Y_DIFFERENCE: Result = rule((args) => {
  const type = args[0]?.type ?? PLAIN;
  const unit = differenceUnit(type);
  return unit === undefined ? `${subject(type)} can't be estimated by a line.` : numberIn(unit);
});

const Y = needed('ys', column(ordered('Y')));
const X = needed('xs', column(ordered('X')));
const LINE = takes(Y, X);
const BOTH_ALIKE = takes(needed('one', column(numbers('A'))), needed('other', column(numbers('A'))));
const FORECAST_TAKES = takes(needed('x', ordered('X')), Y, X);

const CORREL = make.columns(
  'CORREL',
  'Correlation of two columns: 1 rising together, -1 one falling as the other rises, 0 neither.',
  '6.18.17',
  takes(needed('one', column(ordered('Y'))), needed('other', column(ordered('X')))),
  plain,
  ([one, other]) => fromMoments(one, other, 2, correlation),
);
const FORECAST = make.other(
  'FORECAST',
  'What the straight line through two columns gives at x.',
  '6.18.28',
  FORECAST_TAKES,
  ordered('Y'),
  {
    lane: 'by type',
    choose: (args: readonly ArgumentType[]) => {
      if (args[1]?.type?.kind !== 'date') return columnsBody(FORECAST_TAKES, forecast);
      return columnsBody(FORECAST_TAKES, (given) => {
        const value = forecast(given);
        return typeof value === 'number' ? tolerantRound(value) : value;
      });
    },
  },
);

const COVAR = make.columns(
  'COVAR',
  'Covariance of two columns, taken as all there are.',
  '6.18.18',
  LINE,
  productOfDifferences([1, 1]),
  ([ys, xs]) => fromMoments(ys, xs, 1, ({ xy, count }) => xy / count),
);

export const REGRESSION: readonly FunctionDefinition[] = [
  make.columns(
    'SLOPE',
    'How much y rises for each x on the straight line through two columns.',
    '6.18.69',
    LINE,
    productOfDifferences([1, -1]),
    ([ys, xs]) => fromMoments(ys, xs, 2, slope),
  ),
  make.columns(
    'INTERCEPT',
    'y where x is 0 on the straight line through two columns.',
    '6.18.38',
    takes(Y, needed('xs', column(numbers('X')))),
    ordered('Y'),
    ([ys, xs]) => fromMoments(ys, xs, 2, (moments) => moments.meanY - slope(moments) * moments.meanX),
  ),
  make.columns('RSQ', 'The share of the spread in y that the line explains.', '6.18.66', LINE, plain, ([ys, xs]) =>
    fromMoments(ys, xs, 2, (moments) => correlation(moments) ** 2),
  ),
  make.columns(
    'STEYX',
    'How far rows lie off the line: the standard error of its estimates.',
    '6.18.76',
    LINE,
    Y_DIFFERENCE,
    ([ys, xs]) => fromPairs(ys, xs, 3, standardError),
  ),
  FORECAST,
  alias('FORECAST.LINEAR', FORECAST),
  CORREL,
  alias('PEARSON', CORREL),
  COVAR,
  alias('COVARIANCE.P', COVAR),
  make.columns(
    'COVARIANCE.S',
    'Covariance of two columns, taken as a sample.',
    'common spreadsheet practice',
    LINE,
    productOfDifferences([1, 1]),
    ([ys, xs]) => fromMoments(ys, xs, 2, ({ xy, count }) => xy / (count - 1)),
  ),
  make.columns(
    'SUMPRODUCT',
    'Columns multiplied row by row and added: SUMPRODUCT(Plantings[Yield]; Plantings[Price]).',
    '6.16.64',
    thenRepeating(takes(), needed('column', column(anything))),
    PRODUCT_OF_ALL,
    sumOfProducts,
  ),
  make.columns(
    'SUMX2MY2',
    'x squared less y squared, added over the rows.',
    '6.16.66',
    BOTH_ALIKE,
    power('A', 2),
    (args) => sumOverPairs(args, (x, y) => x * x - y * y),
  ),
  make.columns(
    'SUMX2PY2',
    'x squared plus y squared, added over the rows.',
    '6.16.67',
    BOTH_ALIKE,
    power('A', 2),
    (args) => sumOverPairs(args, (x, y) => x * x + y * y),
  ),
  make.columns(
    'SUMXMY2',
    'The squared differences of x and y, added over the rows.',
    '6.16.68',
    BOTH_ALIKE,
    power('A', 2),
    (args) => sumOverPairs(args, (x, y) => (x - y) ** 2),
  ),
];
