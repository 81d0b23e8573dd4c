// Places within a column: the k-th largest, percentiles, ranks. Of dates the percentile is the nearest whole day. Read by
// standard/index.ts.

import type { Scalar } from '../../values/error.ts';
import { equalNumbers, settled, tolerantRound } from '../../values/tolerance.ts';
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
import { type Given, isFault, numberOf, numbersOf } from './columns.ts';
import { risingOrder } from './statistics.ts';

const make = makers('statistics');

const NO_SUCH_PLACE = failure('number', 'The column has no such place: count from 1 to the number of its values.');
const NO_SHARE = failure('number', 'The share must lie from 0 to 1 (0% to 100%), and the column must hold a value.');
const NO_QUARTER = failure('number', 'Quarters are 0 (the smallest), 1, 2 (the median), 3 and 4 (the largest).');
const NOT_AMONG = failure('missing', 'The value is not in the column, so it has no rank there.');

/** The k-th value from the bottom (or the top), k from 1. */
function kth(args: Given, fromTop: boolean): Scalar {
  const list = numbersOf(args[0]);
  if (isFault(list)) return list;
  const place = Math.trunc(settled(numberOf(args[1]) ?? 0));
  if (place < 1 || place > list.length) return NO_SUCH_PLACE;
  return risingOrder(list, list.length)[fromTop ? list.length - place : place - 1] ?? null;
}

/** The value below which a share of the column lies, straight between neighbours. */
function quantile(list: Float64Array, share: number): number {
  const rising = risingOrder(list, list.length);
  const place = settled(share * (list.length - 1));
  const below = Math.floor(place);
  const low = rising[below] ?? Number.NaN;
  const high = rising[Math.min(below + 1, list.length - 1)] ?? low;
  return low + (place - below) * (high - low);
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

/** 1 and how many values lie above (or below, in rising order); equal values share a rank. */
function rank([value, values, order]: Given): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const wanted = numberOf(value) ?? Number.NaN;
  const rising = (numberOf(order) ?? 0) !== 0;
  let ahead = 0;
  let among = false;
  for (const one of list) {
    if (equalNumbers(one, wanted)) among = true;
    else if (rising ? one < wanted : one > wanted) ahead += 1;
  }
  return among ? ahead + 1 : NOT_AMONG;
}

/** The share of the other values that lie below, straight between neighbours where the value is not among them. */
function percentRank([values, value]: Given): Scalar {
  const list = numbersOf(values);
  if (isFault(list)) return list;
  const wanted = numberOf(value) ?? Number.NaN;
  const rising = risingOrder(list, list.length);
  const last = rising.length - 1;
  const at = (index: number): number => rising[index] ?? Number.NaN;
  if (last < 1 || wanted < at(0) || wanted > at(last)) return NOT_AMONG;
  const equal = rising.findIndex((one) => equalNumbers(one, wanted));
  if (equal >= 0) return equal / last;
  const above = rising.findIndex((one) => one > wanted);
  return (above - 1 + (wanted - at(above - 1)) / (at(above) - at(above - 1))) / last;
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
  rank,
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
    'PERCENTRANK',
    'The share of a column that lies below a value.',
    '6.18.58',
    takes(needed('column', column(ordered('A'))), needed('value', ordered('A'))),
    plain,
    percentRank,
  ),
];
