// Statistics over values and whole columns: counts, means, extremes, spread, ranks. Of dates and temperatures the mean is a date and a
// temperature, the spread a difference. Read by standard/index.ts and conditional.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { equalNumbers, tolerantRound } from '../../values/tolerance.ts';
import type { ValueType } from '../../values/type.ts';
import { alias, anything, failure, finite, makers, many, numbers, ordered, plain, power, values } from '../build.ts';
import type { Body, Fold, FunctionDefinition } from '../definition.ts';
import { ADDED } from '../running.ts';
import { sum } from './mathematics.ts';
import { firstType, spread } from './types.ts';

const make = makers('statistics');

const NOTHING_TO_AVERAGE = failure('divide', 'There is nothing to average: every value is blank or left out.');
export const TOO_FEW = failure('divide', 'Too few values: at least two are needed to say how far they lie apart.');
const NO_REPEAT = failure('missing', 'No value occurs twice, so there is no most frequent one.');
const NOT_ABOVE_ZERO = failure('number', 'All values must be above 0 for this mean.');
const ALL_ALIKE = failure('divide', 'Too few values, or all of them are alike.');

function at(list: Float64Array, index: number): number {
  return list[index] ?? Number.NaN;
}

export function mean(list: Float64Array, count: number): number {
  return count === 0 ? Number.NaN : sum(list, count) / count;
}

export function smallest(list: Float64Array, count: number): number {
  if (count === 0) return Number.NaN;
  let least = at(list, 0);
  for (let index = 1; index < count; index += 1) if (at(list, index) < least) least = at(list, index);
  return least;
}

export function largest(list: Float64Array, count: number): number {
  if (count === 0) return Number.NaN;
  let most = at(list, 0);
  for (let index = 1; index < count; index += 1) if (at(list, index) > most) most = at(list, index);
  return most;
}

/** The values in rising order, the list itself left as it is. */
export function risingOrder(list: Float64Array, count: number): Float64Array {
  return list.slice(0, count).sort();
}

function median(list: Float64Array, count: number): number {
  if (count === 0) return Number.NaN;
  const rising = risingOrder(list, count);
  const middle = Math.floor(count / 2);
  return count % 2 === 1 ? at(rising, middle) : (at(rising, middle - 1) + at(rising, middle)) / 2;
}

/** The most frequent value, the smallest of several; none where no value occurs twice. */
function mode(list: Float64Array, count: number): number {
  const rising = risingOrder(list, count);
  let best = Number.NaN;
  let most = 1;
  let start = 0;
  for (let index = 1; index <= count; index += 1) {
    if (index < count && equalNumbers(at(rising, index), at(rising, start))) continue;
    if (index - start > most) {
      most = index - start;
      best = at(rising, start);
    }
    start = index;
  }
  return best;
}

/** The sum of squared distances from the mean, in two passes. */
export function squaredDeviations(list: Float64Array, count: number): number {
  const middle = mean(list, count);
  let total = 0;
  for (let index = 0; index < count; index += 1) total += (at(list, index) - middle) ** 2;
  return total;
}

function momentAboutMean(list: Float64Array, count: number, exponent: number): number {
  const middle = mean(list, count);
  let total = 0;
  for (let index = 0; index < count; index += 1) total += (at(list, index) - middle) ** exponent;
  return total;
}

export function sampleVariance(list: Float64Array, count: number): number {
  return count < 2 ? Number.NaN : squaredDeviations(list, count) / (count - 1);
}

export function wholeVariance(list: Float64Array, count: number): number {
  return count < 1 ? Number.NaN : squaredDeviations(list, count) / count;
}

function meanDeviation(list: Float64Array, count: number): number {
  if (count === 0) return Number.NaN;
  const middle = mean(list, count);
  let total = 0;
  for (let index = 0; index < count; index += 1) total += Math.abs(at(list, index) - middle);
  return total / count;
}

function geometricMean(list: Float64Array, count: number): number {
  let total = 0;
  for (let index = 0; index < count; index += 1) {
    if (!(at(list, index) > 0)) return Number.NaN;
    total += Math.log(at(list, index));
  }
  return count === 0 ? Number.NaN : Math.exp(total / count);
}

function harmonicMean(list: Float64Array, count: number): number {
  let total = 0;
  for (let index = 0; index < count; index += 1) {
    if (!(at(list, index) > 0)) return Number.NaN;
    total += 1 / at(list, index);
  }
  return count === 0 ? Number.NaN : count / total;
}

function skewness(list: Float64Array, count: number): number {
  const deviation = Math.sqrt(sampleVariance(list, count));
  if (count < 3 || !(deviation > 0)) return Number.NaN;
  return (momentAboutMean(list, count, 3) / deviation ** 3) * (count / ((count - 1) * (count - 2)));
}

function kurtosis(list: Float64Array, count: number): number {
  const variance = sampleVariance(list, count);
  if (count < 4 || !(variance > 0)) return Number.NaN;
  const n = count;
  const fourth = momentAboutMean(list, count, 4) / variance ** 2;
  return (n * (n + 1) * fourth) / ((n - 1) * (n - 2) * (n - 3)) - (3 * (n - 1) ** 2) / ((n - 2) * (n - 3));
}

type ValuesType = (args: readonly ArgumentType[]) => ValueType | undefined;

/** A body whose result is a whole day where the values are dates. */
function wholeDays(lane: 'fold' | 'conditional fold' | 'database', typeOfValues: ValuesType, fold: Fold): Body {
  const { running } = fold;
  const rounded: Fold = {
    ...fold,
    fold: (list, size) => tolerantRound(fold.fold(list, size)),
    ...(running && { running: { ...running, comesTo: (known, size) => tolerantRound(running.comesTo(known, size)) } }),
  };
  return {
    lane: 'by type',
    choose: (args) => ({ lane, fold: typeOfValues(args)?.kind === 'date' ? rounded : fold }),
  };
}

const MEAN: Fold = {
  fold: mean,
  takes: 'numbers',
  undefinedMeans: NOTHING_TO_AVERAGE,
  running: { ...ADDED, comesTo: (known, size) => (size === 0 ? Number.NaN : known / size) },
};

/** The mean over the rows that meet conditions, a whole day of dates; `typeOfValues` finds the column of values. */
export function conditionalMean(typeOfValues: ValuesType): Body {
  return wholeDays('conditional fold', typeOfValues, MEAN);
}

/** The mean over the rows that meet a sheet of criteria; the field comes second. */
export const DATABASE_MEAN: Body = wholeDays('database', (args) => args[1]?.type, MEAN);

const MEASURED = many('values', values(ordered('A')));
const QUANTITIES = many('values', values(numbers('A')));
const ANYTHING = many('values', values(anything));

export function count(_: Float64Array, howMany: number): number {
  return howMany;
}

const STDEV = make.fold(
  'STDEV',
  'Standard deviation of a sample: how far values lie from their mean.',
  '6.18.72',
  MEASURED,
  spread(1),
  (list, size) => Math.sqrt(sampleVariance(list, size)),
  TOO_FEW,
);
const STDEVP = make.fold(
  'STDEVP',
  'Standard deviation where the values are all there are, not a sample.',
  '6.18.74',
  MEASURED,
  spread(1),
  (list, size) => Math.sqrt(wholeVariance(list, size)),
  TOO_FEW,
);
const VAR = make.fold('VAR', 'Variance of a sample.', '6.18.82', MEASURED, spread(2), sampleVariance, TOO_FEW);
const VARP = make.fold(
  'VARP',
  'Variance where the values are all there are, not a sample.',
  '6.18.84',
  MEASURED,
  spread(2),
  wholeVariance,
  TOO_FEW,
);
const MODE = make.fold(
  'MODE',
  'The most frequent value, the smallest where there are several.',
  '6.18.50',
  MEASURED,
  ordered('A'),
  mode,
  NO_REPEAT,
);

export const STATISTICS: readonly FunctionDefinition[] = [
  make.other(
    'COUNT',
    'How many values are filled in with numbers or dates; blanks and errors are not counted.',
    '6.13.6',
    MEASURED,
    plain,
    {
      lane: 'fold',
      fold: { fold: count, takes: 'numbers only', undefinedMeans: 'blank' },
    },
  ),
  make.other('COUNTA', 'How many values are not blank, whatever they are.', '6.13.7', ANYTHING, plain, {
    lane: 'fold',
    fold: { fold: count, takes: 'filled', undefinedMeans: 'blank' },
  }),
  make.other('COUNTBLANK', 'How many values are blank.', '6.13.8', ANYTHING, plain, {
    lane: 'fold',
    fold: { fold: count, takes: 'blanks', undefinedMeans: 'blank' },
  }),
  make.other('MIN', 'The smallest value; of dates the earliest.', '6.18.48', MEASURED, ordered('A'), {
    lane: 'fold',
    fold: { fold: smallest, takes: 'numbers', picks: 'least', undefinedMeans: 'blank' },
  }),
  make.other('MAX', 'The largest value; of dates the latest.', '6.18.45', MEASURED, ordered('A'), {
    lane: 'fold',
    fold: { fold: largest, takes: 'numbers', picks: 'most', undefinedMeans: 'blank' },
  }),
  make.other(
    'AVERAGE',
    'The mean; blanks are skipped. Of dates the nearest whole day.',
    '6.18.3',
    MEASURED,
    ordered('A'),
    wholeDays('fold', firstType, MEAN),
  ),
  make.other(
    'MEDIAN',
    'The middle value: half are below, half above.',
    '6.18.47',
    MEASURED,
    ordered('A'),
    wholeDays('fold', firstType, { fold: median, takes: 'numbers', undefinedMeans: NOTHING_TO_AVERAGE }),
  ),
  MODE,
  alias('MODE.SNGL', MODE),
  STDEV,
  alias('STDEV.S', STDEV),
  STDEVP,
  alias('STDEV.P', STDEVP),
  VAR,
  alias('VAR.S', VAR),
  VARP,
  alias('VAR.P', VARP),
  make.fold(
    'AVEDEV',
    'Mean distance of the values from their mean.',
    '6.18.2',
    MEASURED,
    spread(1),
    meanDeviation,
    NOTHING_TO_AVERAGE,
  ),
  make.fold(
    'DEVSQ',
    'The squared distances from the mean added.',
    '6.18.20',
    MEASURED,
    spread(2),
    (list, size) => (size === 0 ? Number.NaN : squaredDeviations(list, size)),
    NOTHING_TO_AVERAGE,
  ),
  make.fold(
    'GEOMEAN',
    'Geometric mean: the mean of growth factors.',
    '6.18.34',
    QUANTITIES,
    power('A', 1),
    (list, size) => finite(geometricMean(list, size)),
    NOT_ABOVE_ZERO,
  ),
  make.fold(
    'HARMEAN',
    'Harmonic mean: the mean of rates.',
    '6.18.36',
    QUANTITIES,
    power('A', 1),
    harmonicMean,
    NOT_ABOVE_ZERO,
  ),
  make.fold('SKEW', 'How lopsided the values lie around their mean.', '6.18.67', MEASURED, plain, skewness, ALL_ALIKE),
  make.fold(
    'KURT',
    'How heavy the tails are beside a normal distribution.',
    '6.18.39',
    MEASURED,
    plain,
    kurtosis,
    ALL_ALIKE,
  ),
];
