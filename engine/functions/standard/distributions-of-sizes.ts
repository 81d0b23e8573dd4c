// Distributions of sizes, waits and samples: gamma, beta, Weibull, exponential, hypergeometric. A value and its scale may be
// quantities of one kind; a density is then per their unit. Read by standard/index.ts.

import {
  betaCdf,
  betaPdf,
  betaQuantile,
  exponentialCdf,
  exponentialPdf,
  gammaCdf,
  gammaPdf,
  gammaQuantile,
  hypergeometricCdf,
  hypergeometricPmf,
  weibullCdf,
  weibullPdf,
} from '../../agronomy/distributions.ts';
import type { ArgumentType, Result } from '../../language/signature.ts';
import { powerUnit } from '../../units/arithmetic.ts';
import { isPlain } from '../../units/dimension.ts';
import { tolerantFloor } from '../../values/tolerance.ts';
import {
  alias,
  failure,
  finite,
  makers,
  needed,
  numbers,
  optional,
  or,
  plain,
  power,
  rule,
  takes,
  yesno,
} from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { numberIn, PLAIN } from './types.ts';

const make = makers('statistics');

const NO_SHAPE = failure(
  'number',
  'Shape, scale and rate must be above 0; where a shape is below 1 the density at the start has no bound.',
);
const NO_QUANTILE = failure('number', 'The chance must lie between 0 and 1, shape and scale above 0.');
const NO_BETA = failure(
  'number',
  'Both exponents must lie from 0.000001 to 10,000,000,000, and the first bound below the second.',
);
const NO_SAMPLE = failure(
  'number',
  'Counts must be 0 or above; the sample, and those of the one kind, are at most as many as all together.',
);

const CUMULATIVE = needed('cumulative', yesno);
const MAY_BE_CUMULATIVE = optional('cumulative', yesno);
const VALUE = needed('value', numbers('A'));
const SHAPE = needed('shape', plain);
const SCALE = needed('scale', numbers('A'));
const CHANCE = needed('chance', plain);

/** A share where cumulative; a density, which is per the values' unit, where not. The argument at `place` says which. */
function shareOrDensity(place: number): Result {
  return rule((args: readonly ArgumentType[]) => {
    const type = args[0]?.type ?? PLAIN;
    const cumulative = args[place]?.type === undefined ? true : args[place]?.constant;
    if (cumulative === true || type.kind !== 'number' || isPlain(type.dimension)) return PLAIN;
    if (cumulative === false) return numberIn(powerUnit(type.unit, -1));
    return 'Write TRUE (the share below) or FALSE (the density) as the last argument.';
  });
}

function gamma(value: number, shape: number, scale: number, cumulative?: number): number {
  return finite(or(cumulative, 1) !== 0 ? gammaCdf(value, shape, scale) : gammaPdf(value, shape, scale));
}

function weibull(value: number, shape: number, scale: number, cumulative: number): number {
  return finite(cumulative !== 0 ? weibullCdf(value, shape, scale) : weibullPdf(value, shape, scale));
}

function exponential(value: number, rate: number, cumulative?: number): number {
  return finite(or(cumulative, 1) !== 0 ? exponentialCdf(value, rate) : exponentialPdf(value, rate));
}

/** Beta between two bounds, 0 and 1 where they are left out; the density is per unit of the value. */
function beta(value: number, a: number, b: number, cumulative: number, from?: number, to?: number): number {
  const [low, high] = [or(from, 0), or(to, 1)];
  if (!(low < high)) return Number.NaN;
  const x = (value - low) / (high - low);
  if (cumulative !== 0) return finite(betaCdf(Math.min(1, Math.max(0, x)), a, b));
  return finite(betaPdf(x, a, b) / (high - low));
}

function betaInverse(chance: number, a: number, b: number, from?: number, to?: number): number {
  const [low, high] = [or(from, 0), or(to, 1)];
  if (!(low < high) || !(chance >= 0 && chance <= 1)) return Number.NaN;
  return finite(low + betaQuantile(chance, 1 - chance, a, b) * (high - low));
}

function hypergeometric(found: number, drawn: number, kind: number, all: number, cumulative?: number): number {
  const [k, n, m, whole] = [tolerantFloor(found), tolerantFloor(drawn), tolerantFloor(kind), tolerantFloor(all)];
  if (k < 0) return Number.NaN;
  return or(cumulative, 0) !== 0 ? hypergeometricCdf(k, n, m, whole) : hypergeometricPmf(k, n, m, whole);
}

const GAMMA_INV = make.numeric(
  'GAMMA.INV',
  'Gamma distribution: the value with such a share at or below it.',
  '6.18.32',
  takes(CHANCE, SHAPE, SCALE),
  power('A', 1),
  (chance, shape, scale) =>
    chance >= 0 && chance < 1 ? finite(gammaQuantile(chance, 1 - chance, shape, scale)) : Number.NaN,
  NO_QUANTILE,
);
const WEIBULL_DIST = make.numeric(
  'WEIBULL.DIST',
  'Weibull distribution: the share at or below a value where the last is TRUE, the density where FALSE.',
  '6.18.86',
  takes(VALUE, SHAPE, SCALE, CUMULATIVE),
  shareOrDensity(3),
  weibull,
  NO_SHAPE,
);
const EXPONENTS = [needed('a', plain), needed('b', plain)] as const;
const BOUNDS = [optional('from', plain), optional('to', plain)] as const;
const BETA_INV = make.numeric(
  'BETA.INV',
  'Beta distribution: the value with such a share at or below it, between 0 and 1 or the bounds given.',
  '6.18.8',
  takes(CHANCE, ...EXPONENTS, ...BOUNDS),
  plain,
  betaInverse,
  NO_BETA,
);
const SAMPLE = [
  needed('found', plain),
  needed('drawn', plain),
  needed('of_kind', plain),
  needed('all', plain),
] as const;

export const DISTRIBUTIONS_OF_SIZES: readonly FunctionDefinition[] = [
  make.numeric(
    'GAMMA.DIST',
    'Gamma distribution: the share at or below a value where the last is TRUE, the density where FALSE.',
    '6.18.31',
    takes(VALUE, SHAPE, SCALE, CUMULATIVE),
    shareOrDensity(3),
    gamma,
    NO_SHAPE,
  ),
  make.numeric(
    'GAMMADIST',
    'Gamma distribution as GAMMA.DIST; the share at or below where the last is left out.',
    '6.18.31',
    takes(VALUE, SHAPE, SCALE, MAY_BE_CUMULATIVE),
    shareOrDensity(3),
    gamma,
    NO_SHAPE,
  ),
  GAMMA_INV,
  alias('GAMMAINV', GAMMA_INV),
  WEIBULL_DIST,
  alias('WEIBULL', WEIBULL_DIST),
  make.numeric(
    'EXPON.DIST',
    'Exponential distribution with so many events a unit: the share at or below a value where the last is TRUE, the density where FALSE.',
    '6.18.21',
    takes(needed('value', plain), needed('rate', plain), CUMULATIVE),
    plain,
    exponential,
    NO_SHAPE,
  ),
  make.numeric(
    'EXPONDIST',
    'Exponential distribution as EXPON.DIST; the share at or below where the last is left out.',
    '6.18.21',
    takes(needed('value', plain), needed('rate', plain), MAY_BE_CUMULATIVE),
    plain,
    exponential,
    NO_SHAPE,
  ),
  make.numeric(
    'BETA.DIST',
    'Beta distribution between 0 and 1 or the bounds given: the share at or below a value where the fourth is TRUE, the density where FALSE.',
    '6.18.7',
    takes(needed('value', plain), ...EXPONENTS, CUMULATIVE, ...BOUNDS),
    plain,
    beta,
    NO_BETA,
  ),
  make.numeric(
    'BETADIST',
    'Beta distribution as BETA.DIST, the bounds before the last; the share at or below where that is left out.',
    '6.18.7',
    takes(needed('value', plain), ...EXPONENTS, ...BOUNDS, MAY_BE_CUMULATIVE),
    plain,
    (value, a, b, from?: number, to?: number, cumulative?: number) => beta(value, a, b, or(cumulative, 1), from, to),
    NO_BETA,
  ),
  BETA_INV,
  alias('BETAINV', BETA_INV),
  make.numeric(
    'HYPGEOM.DIST',
    'Chance that a sample holds at most (TRUE) or exactly (FALSE) so many of one kind: found, drawn, those of the kind, all.',
    '6.18.37',
    takes(...SAMPLE, CUMULATIVE),
    plain,
    hypergeometric,
    NO_SAMPLE,
  ),
  make.numeric(
    'HYPGEOMDIST',
    'As HYPGEOM.DIST; exactly so many where the last is left out.',
    '6.18.37',
    takes(...SAMPLE, MAY_BE_CUMULATIVE),
    plain,
    hypergeometric,
    NO_SAMPLE,
  ),
];
