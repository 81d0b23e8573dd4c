// Probability: normal, binomial and Poisson. The numbers come from agronomy/distributions.ts; here are only signatures and the
// corner cases of the standard. Read by standard/index.ts.

import {
  binomialCdf,
  binomialPmf,
  binomialQuantile,
  normalCdf,
  normalPdf,
  normalQuantile,
  poissonCdf,
  poissonPmf,
  standardNormalCdf,
  standardNormalPdf,
  standardNormalQuantile,
} from '../../agronomy/distributions.ts';
import type { ArgumentType } from '../../language/signature.ts';
import { powerUnit } from '../../units/arithmetic.ts';
import { isPlain, sameDimension } from '../../units/dimension.ts';
import { tolerantFloor, tolerantRound } from '../../values/tolerance.ts';
import { nameOfType, type ValueType } from '../../values/type.ts';
import {
  alias,
  failure,
  finite,
  makers,
  needed,
  numbers,
  optional,
  or,
  ordered,
  plain,
  rule,
  type Takes,
  takes,
  withLoop,
  yesno,
} from '../build.ts';
import { type Body, type FunctionDefinition, type Loop, rowOf } from '../definition.ts';
import { differenceUnit, numberIn, PLAIN, subject } from './types.ts';

const make = makers('statistics');

const NO_NORMAL = failure('number', 'The standard deviation must be above 0.');
const NO_QUANTILE = failure('number', 'The chance must lie between 0 and 1, and the standard deviation above 0.');
const NO_CHANCE = failure('number', 'The chance must lie between 0 and 1.');
const NO_BINOMIAL = failure(
  'number',
  'The chance must lie from 0 to 1, the trials from 0 to a million millions, the successes from 0 to the trials.',
);
const NO_POISSON = failure('number', 'The mean must lie from 0 to a million millions, the count at 0 or above.');

/** Why a standard deviation can't belong to such values; undefined where it can. */
function deviationObjection(value: ValueType, deviation: ValueType | undefined): string | undefined {
  const unit = differenceUnit(value);
  if (unit === undefined) return `${subject(value)} has no standard deviation.`;
  if (deviation?.kind !== 'number' || sameDimension(unit.dimension, deviation.dimension)) return undefined;
  return `The standard deviation is ${nameOfType(deviation)}; it should be ${nameOfType(numberIn(unit))}, as the values lie apart.`;
}

/** A share where cumulative; a density, which is per the values' unit, where not. */
function normalType(args: readonly ArgumentType[]): ValueType | string {
  const value = args[0]?.type ?? args[1]?.type ?? PLAIN;
  const objection = deviationObjection(value, args[2]?.type);
  if (objection !== undefined) return objection;
  const unit = differenceUnit(value);
  if (args[3]?.constant === true || args[3]?.type === undefined || unit === undefined) return PLAIN;
  if (args[3].constant === false) return isPlain(unit.dimension) ? PLAIN : numberIn(powerUnit(unit, -1));
  return isPlain(unit.dimension) ? PLAIN : 'Write TRUE (the share below) or FALSE (the density) as the last argument.';
}

function quantileType(args: readonly ArgumentType[]): ValueType | string {
  const mean = args[1]?.type ?? PLAIN;
  return deviationObjection(mean, args[2]?.type) ?? mean;
}

function normal(x: number, mean: number, deviation: number, cumulative?: number): number {
  return or(cumulative, 1) !== 0 ? normalCdf(x, mean, deviation) : normalPdf(x, mean, deviation);
}

function standardNormal(z: number, cumulative?: number): number {
  return or(cumulative, 1) !== 0 ? standardNormalCdf(z) : standardNormalPdf(z);
}

function binomial(successes: number, trials: number, chance: number, cumulative: number): number {
  const k = tolerantFloor(successes);
  const n = tolerantFloor(trials);
  if (k < 0 || k > n) return Number.NaN;
  return cumulative !== 0 ? binomialCdf(k, n, chance) : binomialPmf(k, n, chance);
}

const binomialLoop: Loop = (out, count, [k, n, p, cumulative]) => {
  if (k === undefined || n === undefined || p === undefined || cumulative === undefined) return;
  for (let i = 0; i < count; i++) out[i] = binomial(rowOf(k, i), rowOf(n, i), rowOf(p, i), rowOf(cumulative, i));
};

/** The chance of `from` to `to` successes, both included; of exactly `from` where `to` is left out. */
function binomialRange(trials: number, chance: number, from: number, to?: number): number {
  const n = tolerantFloor(trials);
  const low = tolerantFloor(from);
  const high = tolerantFloor(or(to, low));
  if (low < 0 || high > n || low > high) return Number.NaN;
  if (low === high) return binomialPmf(low, n, chance);
  return binomialCdf(high, n, chance) - (low === 0 ? 0 : binomialCdf(low - 1, n, chance));
}

function poisson(count: number, mean: number, cumulative?: number): number {
  const k = tolerantFloor(count);
  if (k < 0 || mean < 0) return Number.NaN;
  return or(cumulative, 1) !== 0 ? poissonCdf(k, mean) : poissonPmf(k, mean);
}

/** The normal quantile, a whole day where the mean is a date. */
const QUANTILE: Body = {
  lane: 'by type',
  choose: (args) => {
    const dated = args[1]?.type?.kind === 'date';
    return {
      lane: 'numeric',
      compute: dated
        ? (share, mean, deviation) => tolerantRound(normalQuantile(share, mean, deviation))
        : normalQuantile,
      undefinedMeans: NO_QUANTILE,
    };
  },
};

const VALUES = [
  needed('value', ordered('A')),
  needed('mean', ordered('A')),
  needed('deviation', numbers('D')),
] as const;
const CUMULATIVE = needed('cumulative', yesno);
const MAY_BE_CUMULATIVE = optional('cumulative', yesno);
const INVERSE: Takes = takes(needed('chance', plain), needed('mean', ordered('A')), needed('deviation', numbers('D')));

const NORM_DIST = make.numeric(
  'NORM.DIST',
  'Normal distribution: the share at or below a value where the last is TRUE, the density where FALSE.',
  '6.18.52',
  takes(...VALUES, CUMULATIVE),
  rule(normalType),
  normal,
  NO_NORMAL,
);
const NORM_INV = make.other(
  'NORM.INV',
  'Normal distribution: the value with such a share at or below it.',
  '6.18.53',
  INVERSE,
  rule(quantileType),
  QUANTILE,
);
const NORM_S_INV = make.numeric(
  'NORM.S.INV',
  'Standard normal distribution: the value with such a share at or below it.',
  '6.18.55',
  takes(needed('chance', plain)),
  plain,
  (share) => finite(standardNormalQuantile(share)),
  NO_CHANCE,
);
const BINOM_DIST = withLoop(
  make.numeric(
    'BINOM.DIST',
    'Binomial distribution: the chance of at most so many successes where the last is TRUE, of exactly so many where FALSE.',
    '6.18.10',
    takes(needed('successes', plain), needed('trials', plain), needed('chance', plain), CUMULATIVE),
    plain,
    binomial,
    NO_BINOMIAL,
  ),
  binomialLoop,
);
const BINOM_INV = make.numeric(
  'BINOM.INV',
  'The smallest number of successes whose cumulative chance reaches a share: BINOM.INV(trials; chance; share).',
  '6.18.19',
  takes(needed('trials', plain), needed('chance', plain), needed('share', plain)),
  plain,
  (trials, chance, share) => binomialQuantile(share, tolerantFloor(trials), chance),
  NO_BINOMIAL,
);
const BINOM_RANGE = make.numeric(
  'BINOM.DIST.RANGE',
  'The chance of exactly so many successes, or of any number from one to another.',
  '6.18.9',
  takes(needed('trials', plain), needed('chance', plain), needed('from', plain), optional('to', plain)),
  plain,
  binomialRange,
  NO_BINOMIAL,
);
const POISSON_DIST = make.numeric(
  'POISSON.DIST',
  'Poisson distribution: the chance of at most so many where the last is TRUE, of exactly so many where FALSE.',
  '6.18.62',
  takes(needed('count', plain), needed('mean', plain), MAY_BE_CUMULATIVE),
  plain,
  poisson,
  NO_POISSON,
);

export const DISTRIBUTIONS: readonly FunctionDefinition[] = [
  NORM_DIST,
  make.numeric(
    'NORMDIST',
    'Normal distribution as NORM.DIST; the share at or below where the last is left out.',
    '6.18.52',
    takes(...VALUES, MAY_BE_CUMULATIVE),
    rule(normalType),
    normal,
    NO_NORMAL,
  ),
  NORM_INV,
  alias('NORMINV', NORM_INV),
  make.numeric(
    'NORM.S.DIST',
    'Standard normal distribution: the share at or below where the last is TRUE, the density where FALSE.',
    '6.18.54',
    takes(needed('z', plain), CUMULATIVE),
    plain,
    standardNormal,
  ),
  make.numeric(
    'LEGACY.NORMSDIST',
    'Standard normal distribution: the share at or below.',
    '6.18.54',
    takes(needed('z', plain)),
    plain,
    standardNormalCdf,
  ),
  NORM_S_INV,
  alias('LEGACY.NORMSINV', NORM_S_INV),
  make.numeric(
    'PHI',
    'Density of the standard normal distribution.',
    '6.18.61',
    takes(needed('z', plain)),
    plain,
    standardNormalPdf,
  ),
  make.numeric(
    'GAUSS',
    'Share of the standard normal distribution between 0 and a value.',
    '6.18.33',
    takes(needed('z', plain)),
    plain,
    (z) => standardNormalCdf(z) - 0.5,
  ),
  make.numeric(
    'STANDARDIZE',
    'How many standard deviations a value lies above the mean.',
    '6.18.71',
    takes(...VALUES),
    rule((args) => deviationObjection(args[0]?.type ?? PLAIN, args[2]?.type) ?? PLAIN),
    (value, mean, deviation) => (deviation > 0 ? (value - mean) / deviation : Number.NaN),
    NO_NORMAL,
  ),
  BINOM_DIST,
  alias('BINOMDIST', BINOM_DIST),
  BINOM_INV,
  alias('CRITBINOM', BINOM_INV),
  BINOM_RANGE,
  alias('B', BINOM_RANGE),
  POISSON_DIST,
  alias('POISSON', POISSON_DIST),
];
