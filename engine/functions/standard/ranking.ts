// Places within a column: the k-th largest, percentiles, ranks. Of dates the percentile is the nearest whole day. Read by
// standard/index.ts.

import type { Scalar } from '../../values/error.ts';
import { settled, tolerantFloor, tolerantRound } from '../../values/tolerance.ts';
import {
  alias,
  column,
  columnsBody,
  failure,
  makers,
  needed,
  optional,
  ordered,
  plain,
  type Takes,
  takes,
} from '../build.ts';
import type { Body, FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { equalPlaces, firstWhere, type Given, isFault, numberOf, numbersOf } from './columns.ts';
import { mean, risingOrder } from './statistics.ts';

const make = makers('statistics');

const COMMON = 'common spreadsheet practice';

const NO_SUCH_PLACE = failure('number', 'The column has no such place: count from 1 to the number of its values.');
const NO_SHARE = failure('number', 'The share must lie from 0 to 1 (0% to 100%), and the column must hold a value.');
const NO_QUARTER = failure('number', 'Quarters are 0 (the smallest), 1, 2 (the median), 3 and 4 (the largest).');
const NO_INNER_SHARE = failure(
  'number',
  'The share must lie between those of the smallest and the largest of the column: from 1 / (n + 1) to n / (n + 1) of n values.',
);
const NO_INNER_QUARTER = failure('number', 'Quarters are 1, 2 (the median) and 3, and the column needs enough values.');
const NO_TRIM = failure('number', 'The share left out must lie from 0 to below 1, and the column must hold a value.');
const NOT_AMONG = failure('missing', 'The value is not in the column, so it has no rank there.');

const risingOf = keptFor((list: Float64Array) => risingOrder(list, list.length));

/** The k-th value from the bottom (or the top), k from 1. */
function kth(args: Given, fromTop: boolean): Scalar {
  const list = numbersOf(args[0]);
  if (isFault(list)) return list;
  const place = Math.trunc(settled(numberOf(args[1]) ?? 0));
  if (place < 1 || place > list.length) return NO_SUCH_PLACE;
  return risingOf(list)[fromTop ? list.length - place : place - 1] ?? null;
}

/** The value below which a share of the column lies, straight between neighbours. */
function quantile(list: Float64Array, share: number): number {
  const rising = risingOf(list);
  const place = settled(share * (list.length - 1));
  const below = Math.floor(place);
  const low = rising[below] ?? Number.NaN;
  const high = rising[Math.min(below + 1, list.length - 1)] ?? low;
  return low + (place - below) * (high - low);
}

/** As quantile, with nothing below the share of 1 / (n + 1) nor above that of n / (n + 1). */
function exclusiveQuantile(list: Float64Array, share: number): number {
  const place = settled(share * (list.length + 1));
  if (!(place >= 1 && place <= list.length)) return Number.NaN;
  return quantile(list, list.length === 1 ? 0 : (place - 1) / (list.length - 1));
}

function percentileExclusive([values, share]: Given): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const value = exclusiveQuantile(list, numberOf(share) ?? Number.NaN);
  return Number.isNaN(value) ? NO_INNER_SHARE : value;
}

function quartileExclusive([values, quarter]: Given): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const value = exclusiveQuantile(list, Math.trunc(settled(numberOf(quarter) ?? -1)) / 4);
  return Number.isNaN(value) ? NO_INNER_QUARTER : value;
}

/** The mean without a share of the values, half of it from either end, whole values only. */
function trimmedMean([values, share]: Given): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const cut = numberOf(share) ?? Number.NaN;
  if (!(cut >= 0 && cut < 1) || list.length === 0) return NO_TRIM;
  const each = tolerantFloor((cut * list.length) / 2);
  const kept = risingOf(list).subarray(each, list.length - each);
  return mean(kept, kept.length);
}

function percentile([values, share]: Given): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const wanted = numberOf(share) ?? Number.NaN;
  return list.length > 0 && wanted >= 0 && wanted <= 1 ? quantile(list, wanted) : NO_SHARE;
}

function quartile([values, quarter]: Given): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const wanted = Math.trunc(numberOf(quarter) ?? -1);
  return list.length > 0 && wanted >= 0 && wanted <= 4 ? quantile(list, wanted / 4) : NO_QUARTER;
}

/** 1 and how many values lie above (or below, in rising order); equal values share the first of their ranks, or the mean. */
function rank([value, values, order]: Given, shared: 'first' | 'mean'): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const [from, to] = equalPlaces(risingOf(list), numberOf(value) ?? Number.NaN);
  const equal = to - from;
  const smallestFirst = (numberOf(order) ?? 0) !== 0;
  const ahead = smallestFirst ? from : list.length - to;
  if (equal === 0) return NOT_AMONG;
  return shared === 'first' ? ahead + 1 : ahead + (equal + 1) / 2;
}

/**
 * The share of the values that lie below, straight between neighbours where the value is not among them: of the others, so that
 * the largest has 1, or of one more, so that none has.
 */
function percentRank([values, value]: Given, of: 'others' | 'one more'): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const wanted = numberOf(value) ?? Number.NaN;
  const rising = risingOf(list);
  const last = rising.length - 1;
  const at = (index: number): number => rising[index] ?? Number.NaN;
  if (last < 1 || wanted < at(0) || wanted > at(last)) return NOT_AMONG;
  const [equal, beyond] = equalPlaces(rising, wanted);
  const shareAt = (place: number): number => (of === 'others' ? place / last : (place + 1) / (last + 2));
  if (equal < beyond) return shareAt(equal);
  const above = firstWhere(rising, (one) => one > wanted);
  return shareAt(above - 1 + (wanted - at(above - 1)) / (at(above) - at(above - 1)));
}

/** A result that is a whole day where the column holds dates. */
function wholeDays(shape: Takes, compute: (args: Given) => Scalar): Body {
  return {
    lane: 'by type',
    choose: ([first]) => {
      if (first?.type?.kind !== 'date') return columnsBody(shape, compute);
      return columnsBody(shape, (args) => {
        const value = compute(args);
        return typeof value === 'number' ? tolerantRound(value) : value;
      });
    },
  };
}

const PLACE = takes(needed('column', column(ordered('A'))), needed('place', plain));
const SHARE = takes(needed('column', column(ordered('A'))), needed('share', plain));
const QUARTER = takes(needed('column', column(ordered('A'))), needed('quarter', plain));

const PERCENTILE = make.other(
  'PERCENTILE',
  'The value of a column below which a share of its values lies: PERCENTILE(Records[Weight]; 90%).',
  '6.18.57',
  SHARE,
  ordered('A'),
  wholeDays(SHARE, percentile),
);
const QUARTILE = make.other(
  'QUARTILE',
  'The value below which so many quarters of a column lie: 0 the smallest, 2 the median, 4 the largest.',
  '6.18.64',
  QUARTER,
  ordered('A'),
  wholeDays(QUARTER, quartile),
);
const RANK = make.columns(
  'RANK',
  'The rank of a value in a column, the largest first; the smallest first where the last is 1.',
  '6.18.65',
  takes(needed('value', ordered('A')), needed('column', column(ordered('A'))), optional('order', plain)),
  plain,
  (args) => rank(args, 'first'),
);
const PERCENTRANK = make.columns(
  'PERCENTRANK',
  'The share of a column that lies below a value.',
  '6.18.58',
  takes(needed('column', column(ordered('A'))), needed('value', ordered('A'))),
  plain,
  (args) => percentRank(args, 'others'),
);

export const RANKING: readonly FunctionDefinition[] = [
  make.columns('LARGE', 'The k-th largest value of a column.', '6.18.40', PLACE, ordered('A'), (args) =>
    kth(args, true),
  ),
  make.columns('SMALL', 'The k-th smallest value of a column.', '6.18.70', PLACE, ordered('A'), (args) =>
    kth(args, false),
  ),
  PERCENTILE,
  alias('PERCENTILE.INC', PERCENTILE),
  QUARTILE,
  alias('QUARTILE.INC', QUARTILE),
  RANK,
  alias('RANK.EQ', RANK),
  make.columns(
    'RANK.AVG',
    'The rank of a value in a column as RANK; equal values share the mean of their ranks.',
    COMMON,
    takes(needed('value', ordered('A')), needed('column', column(ordered('A'))), optional('order', plain)),
    plain,
    (args) => rank(args, 'mean'),
  ),
  PERCENTRANK,
  alias('PERCENTRANK.INC', PERCENTRANK),
  make.columns(
    'PERCENTRANK.EXC',
    'The share of a column that lies below a value, where nothing has none or all of it below.',
    COMMON,
    takes(needed('column', column(ordered('A'))), needed('value', ordered('A'))),
    plain,
    (args) => percentRank(args, 'one more'),
  ),
  make.other(
    'PERCENTILE.EXC',
    'The value below which a share of a column lies, as PERCENTILE, for a column that is a sample: the ends lie beyond its values.',
    COMMON,
    SHARE,
    ordered('A'),
    wholeDays(SHARE, percentileExclusive),
  ),
  make.other(
    'QUARTILE.EXC',
    'The value below which so many quarters of a column lie, as QUARTILE, for a column that is a sample: 1, 2 or 3.',
    COMMON,
    QUARTER,
    ordered('A'),
    wholeDays(QUARTER, quartileExclusive),
  ),
  make.other(
    'TRIMMEAN',
    'The mean without a share of the values, half of it the smallest and half the largest: TRIMMEAN(Records[Weight]; 20%).',
    '6.18.80',
    SHARE,
    ordered('A'),
    wholeDays(SHARE, trimmedMean),
  ),
];
