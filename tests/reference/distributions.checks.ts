// Probability distributions and the number of blocks to start: against printed tables and two statistics libraries.
import betaCdfOfLibrary from '@stdlib/stats-base-dists-beta-cdf';
import betaQuantileOfLibrary from '@stdlib/stats-base-dists-beta-quantile';
import binomialCdfOfLibrary from '@stdlib/stats-base-dists-binomial-cdf';
import binomialQuantileOfLibrary from '@stdlib/stats-base-dists-binomial-quantile';
import chiSquaredCdfOfLibrary from '@stdlib/stats-base-dists-chisquare-cdf';
import chiSquaredQuantileOfLibrary from '@stdlib/stats-base-dists-chisquare-quantile';
import exponentialCdfOfLibrary from '@stdlib/stats-base-dists-exponential-cdf';
import fCdfOfLibrary from '@stdlib/stats-base-dists-f-cdf';
import fQuantileOfLibrary from '@stdlib/stats-base-dists-f-quantile';
import gammaCdfOfLibrary from '@stdlib/stats-base-dists-gamma-cdf';
import gammaQuantileOfLibrary from '@stdlib/stats-base-dists-gamma-quantile';
import hypergeometricCdfOfLibrary from '@stdlib/stats-base-dists-hypergeometric-cdf';
import normalCdfOfLibrary from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantileOfLibrary from '@stdlib/stats-base-dists-normal-quantile';
import poissonCdfOfLibrary from '@stdlib/stats-base-dists-poisson-cdf';
import tCdfOfLibrary from '@stdlib/stats-base-dists-t-cdf';
import tQuantileOfLibrary from '@stdlib/stats-base-dists-t-quantile';
import weibullCdfOfLibrary from '@stdlib/stats-base-dists-weibull-cdf';
import { HyperFormula } from 'hyperformula';
import {
  betaCdf,
  betaQuantile,
  binomialCdf,
  binomialPmf,
  binomialQuantile,
  exponentialCdf,
  fCdf,
  fQuantile,
  gammaCdf,
  gammaQuantile,
  hypergeometricCdf,
  logGamma,
  normalCdf,
  normalPdf,
  normalQuantile,
  poissonCdf,
  poissonPmf,
  tCdf,
  tQuantile,
  tWithBeyond,
  weibullCdf,
} from '../../engine/agronomy/distributions.ts';
import { blocksNeeded, emptyShare } from '../../engine/agronomy/stand.ts';
import type { ByLibrary, Fact, Point, Program, Publication } from './check.ts';
import { NIST_HANDBOOK } from './publications.ts';

const STDLIB = (call: string): Program => ({ name: '@stdlib/stats-base-dists', version: '0.2 to 0.3', call });
const SPREADSHEET = (call: string): Program => ({ name: 'HyperFormula', version: '3.5.0', call });

const SOONG: Publication = {
  author: 'Soong, T. T.',
  year: 2004,
  title: 'Fundamentals of Probability and Statistics for Engineers',
  publisher: 'Wiley, Chichester',
};

const sheet = HyperFormula.buildFromArray([[0]], { licenseKey: 'gpl-v3' });

function spreadsheet(formula: string): number {
  const answer = sheet.calculateFormula(formula, 0);
  if (typeof answer !== 'number') throw new Error(`the library gave no number for ${formula}`);
  return answer;
}

/** The statistics library works in double precision; the spreadsheet gives about ten digits. */
function close(what: string, given: number, computed: () => number, relative = 1e-12): Point {
  return { what, given, computed, tolerance: Math.abs(given) * relative };
}

function byLibrary(fact: string, call: string, points: readonly Point[], unit = ''): ByLibrary {
  return { kind: 'library', fact, unit, program: STDLIB(call), points };
}

function bySpreadsheet(fact: string, call: string, points: readonly Point[]): ByLibrary {
  return { kind: 'library', fact, unit: '', program: SPREADSHEET(call), points };
}

/** Counts up from the number wanted, by the library's distribution. */
function blocksByLibrary(wanted: number, chance: number, confidence: number): number {
  let blocks = wanted;
  while (1 - binomialCdfOfLibrary(wanted - 1, blocks, chance) < confidence) blocks += 1;
  return blocks;
}

const ONE_SIDED = [0.1, 0.05, 0.025, 0.01, 0.005] as const;
/** Degrees of freedom, then the values with 10, 5, 2.5, 1 and 0.5 % above them. */
const T_TABLE: readonly (readonly [degrees: number, values: readonly number[]])[] = [
  [1, [3.078, 6.314, 12.706, 31.821, 63.657]],
  [2, [1.886, 2.92, 4.303, 6.965, 9.925]],
  [3, [1.638, 2.353, 3.182, 4.541, 5.841]],
  [5, [1.476, 2.015, 2.571, 3.365, 4.032]],
  [8, [1.397, 1.86, 2.306, 2.896, 3.355]],
  [12, [1.356, 1.782, 2.179, 2.681, 3.055]],
  [20, [1.325, 1.725, 2.086, 2.528, 2.845]],
];

const LOWER = [0.1, 0.05, 0.025, 0.01, 0.001] as const;
/** Degrees of freedom, then the values with 10, 5, 2.5, 1 and 0.1 % below them. */
const CHI_SQUARED_TABLE: readonly (readonly [degrees: number, values: readonly number[]])[] = [
  [1, [0.016, 0.004, 0.001, 0, 0]],
  [5, [1.61, 1.145, 0.831, 0.554, 0.21]],
  [10, [4.865, 3.94, 3.247, 2.558, 1.479]],
  [20, [12.443, 10.851, 9.591, 8.26, 5.921]],
  [30, [20.599, 18.493, 16.791, 14.953, 11.588]],
  [60, [46.459, 43.188, 40.482, 37.485, 31.738]],
  [100, [82.358, 77.929, 74.222, 70.065, 61.918]],
];

/** Degrees of freedom and the t that three checks at 5 % together leave. */
const T_OF_THREE = [
  [1, 37.544],
  [2, 7.582],
  [3, 4.826],
  [5, 3.518],
  [10, 2.86],
  [20, 2.605],
  [30, 2.528],
  [61, 2.455],
  [90, 2.433],
] as const;

const shares = [0.001, 0.05, 0.4, 0.9, 0.999];

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'values of Student’s t with a share above them',
    unit: '',
    source: SOONG,
    at: 'Table A.4, page 370',
    points: T_TABLE.flatMap(([degrees, values]) =>
      values.map((given, i) => ({
        what: `${degrees} degrees of freedom, ${(ONE_SIDED[i] ?? 0) * 100} %`,
        given,
        computed: () => tWithBeyond(ONE_SIDED[i] ?? Number.NaN, degrees),
        tolerance: 0.00051,
      })),
    ),
  },
  {
    kind: 'published',
    fact: 'values of chi-squared with a share below them',
    unit: '',
    source: NIST_HANDBOOK,
    at: 'section 1.3.6.7.4, lower-tail critical values',
    points: CHI_SQUARED_TABLE.flatMap(([degrees, values]) =>
      values.map((given, i) => ({
        what: `${degrees} degrees of freedom, ${(LOWER[i] ?? 0) * 100} %`,
        given,
        computed: () => gammaQuantile(LOWER[i] ?? Number.NaN, 1 - (LOWER[i] ?? 0), degrees / 2, 2),
        tolerance: 0.00051,
      })),
    ),
  },
  {
    kind: 'published',
    fact: 'values of t that one of three checks passes once in twenty times',
    unit: '',
    source: NIST_HANDBOOK,
    at: 'section 1.3.6.7.5, critical values of the t* distribution (eda3675.htm)',
    points: T_OF_THREE.map(([degrees, given]) => ({
      what: `${degrees} degrees of freedom`,
      given,
      computed: () => tWithBeyond((1 - 0.95 ** (1 / 3)) / 2, degrees),
      tolerance: 0.00051,
    })),
  },
  byLibrary(
    'share of a normal distribution below a value',
    'normal cdf',
    [-8, -3, -1.5, -0.2, 0.4, 1.2816, 2.5].map((z) =>
      close(`${z} deviations`, normalCdfOfLibrary(z, 0, 1), () => normalCdf(z, 0, 1)),
    ),
  ),
  byLibrary(
    'value of a normal distribution with a share below',
    'normal quantile',
    [0.001, 0.1, 0.45, 0.9, 0.975, 0.9999].map((share) =>
      close(`${share}, mean 60, deviation 9`, normalQuantileOfLibrary(share, 60, 9), () =>
        normalQuantile(share, 60, 9),
      ),
    ),
  ),
  byLibrary(
    'chance of at most so many successes',
    'binomial cdf',
    (
      [
        [3, 10, 0.3],
        [0, 12, 0.2],
        [50, 100, 0.5],
        [480, 540, 0.88],
        [870, 1000, 0.9],
        [2200, 2242, 0.97],
        [18_050, 20_000, 0.9],
        [100, 1_000_000, 0.0001],
      ] as const
    ).map(([successes, trials, chance]) =>
      close(`${successes} of ${trials} at ${chance}`, binomialCdfOfLibrary(successes, trials, chance), () =>
        binomialCdf(successes, trials, chance),
      ),
    ),
  ),
  byLibrary(
    'least number of successes that reaches a share',
    'binomial quantile',
    (
      [
        [0.1, 20, 0.85],
        [0.9, 500, 0.9],
        [0.975, 2000, 0.35],
      ] as const
    ).map(([share, trials, chance]) =>
      close(
        `${share} of ${trials} at ${chance}`,
        binomialQuantileOfLibrary(share, trials, chance),
        () => binomialQuantile(share, trials, chance),
        0,
      ),
    ),
  ),
  byLibrary(
    'chance of at most so many where some are expected',
    'poisson cdf',
    (
      [
        [0, 2],
        [3, 2.5],
        [110, 120],
        [30, 12],
      ] as const
    ).map(([count, mean]) =>
      close(`${count} where ${mean} are expected`, poissonCdfOfLibrary(count, mean), () => poissonCdf(count, mean)),
    ),
  ),
  byLibrary(
    'share of Student’s t below a value',
    't cdf',
    [1, 4, 25, 300].flatMap((degrees) =>
      [-9, -2.2, -0.3, 1.7].map((t) =>
        close(`${t}, ${degrees} degrees`, tCdfOfLibrary(t, degrees), () => tCdf(t, degrees)),
      ),
    ),
  ),
  byLibrary(
    'value of Student’s t with a share below',
    't quantile',
    [1, 4, 25, 300].flatMap((degrees) =>
      shares.map((share) =>
        close(`${share}, ${degrees} degrees`, tQuantileOfLibrary(share, degrees), () => tQuantile(share, degrees)),
      ),
    ),
  ),
  byLibrary(
    'share of chi-squared below a value',
    'chisquare cdf',
    [1, 4, 25, 300].flatMap((degrees) =>
      [0.2, 0.9, 1.4].map((times) =>
        close(`${times} of its ${degrees} degrees`, chiSquaredCdfOfLibrary(times * degrees, degrees), () =>
          gammaCdf(times * degrees, degrees / 2, 2),
        ),
      ),
    ),
  ),
  byLibrary(
    'value of chi-squared with a share below',
    'chisquare quantile',
    [1, 4, 25, 300].flatMap((degrees) =>
      shares.map((share) =>
        close(`${share}, ${degrees} degrees`, chiSquaredQuantileOfLibrary(share, degrees), () =>
          gammaQuantile(share, 1 - share, degrees / 2, 2),
        ),
      ),
    ),
  ),
  byLibrary(
    'share of F below a value',
    'f cdf',
    (
      [
        [1, 8],
        [3, 40],
        [12, 5],
        [60, 90],
      ] as const
    ).flatMap(([above, below]) =>
      [0.3, 1, 4].map((x) =>
        close(
          `${x}, ${above} and ${below} degrees`,
          fCdfOfLibrary(x, above, below),
          () => fCdf(x, above, below),
          1e-9, // the library loses digits for many degrees of freedom
        ),
      ),
    ),
  ),
  byLibrary(
    'value of F with a share below',
    'f quantile',
    (
      [
        [1, 8],
        [3, 40],
        [12, 5],
      ] as const
    ).flatMap(([above, below]) =>
      shares.map((share) =>
        close(
          `${share}, ${above} and ${below} degrees`,
          fQuantileOfLibrary(share, above, below),
          () => fQuantile(share, 1 - share, above, below),
          1e-9,
        ),
      ),
    ),
  ),
  byLibrary(
    'share of a gamma distribution below a value',
    'gamma cdf',
    [0.3, 1, 7.5, 120].flatMap((shape) =>
      [0.1, 0.8, 1.6].map((times) =>
        // The library takes a rate where Dibble takes a scale.
        close(`shape ${shape}, scale 3, ${times} of the mean`, gammaCdfOfLibrary(times * shape * 3, shape, 1 / 3), () =>
          gammaCdf(times * shape * 3, shape, 3),
        ),
      ),
    ),
  ),
  byLibrary(
    'value of a gamma distribution with a share below',
    'gamma quantile',
    [0.3, 1, 7.5, 120].flatMap((shape) =>
      shares.map((share) =>
        close(`${share}, shape ${shape}, scale 3`, gammaQuantileOfLibrary(share, shape, 1 / 3), () =>
          gammaQuantile(share, 1 - share, shape, 3),
        ),
      ),
    ),
  ),
  byLibrary(
    'share of a beta distribution below a value',
    'beta cdf',
    (
      [
        [0.4, 3],
        [2, 2],
        [60, 9],
      ] as const
    ).flatMap(([a, b]) =>
      [0.02, 0.5, 0.95].map((x) => close(`${x}, ${a} and ${b}`, betaCdfOfLibrary(x, a, b), () => betaCdf(x, a, b))),
    ),
  ),
  byLibrary(
    'value of a beta distribution with a share below',
    'beta quantile',
    (
      [
        [0.4, 3],
        [2, 2],
        [60, 9],
      ] as const
    ).flatMap(([a, b]) =>
      shares.map((share) =>
        close(`${share}, ${a} and ${b}`, betaQuantileOfLibrary(share, a, b), () =>
          betaQuantile(share, 1 - share, a, b),
        ),
      ),
    ),
  ),
  byLibrary(
    'share of a Weibull distribution below a value',
    'weibull cdf',
    [0.01, 2, 5].map((x) =>
      close(`${x}, shape 1.7, scale 3`, weibullCdfOfLibrary(x, 1.7, 3), () => weibullCdf(x, 1.7, 3)),
    ),
  ),
  byLibrary(
    'share of an exponential distribution below a value',
    'exponential cdf',
    [0.01, 0.4, 9].map((x) =>
      close(`${x} at 0.7 a unit`, exponentialCdfOfLibrary(x, 0.7), () => exponentialCdf(x, 0.7)),
    ),
  ),
  byLibrary(
    'chance of at most so many of one kind in a sample',
    'hypergeometric cdf',
    (
      [
        [1, 4, 8, 20],
        [30, 100, 250, 1000],
        [3, 12, 5, 40],
      ] as const
    ).map(([found, drawn, kind, all]) =>
      close(
        `${found} in ${drawn} drawn of ${all} with ${kind}`,
        hypergeometricCdfOfLibrary(found, all, kind, drawn),
        () => hypergeometricCdf(found, drawn, kind, all),
        1e-11, // the library adds logarithms of factorials
      ),
    ),
  ),
  bySpreadsheet('densities and exact chances', 'NORM.DIST, BINOM.DIST, POISSON.DIST', [
    close('NORM.DIST(62, 70, 12)', spreadsheet('=NORM.DIST(62,70,12,FALSE())'), () => normalPdf(62, 70, 12), 1e-10),
    close('BINOM.DIST(7, 20, 0.3)', spreadsheet('=BINOM.DIST(7,20,0.3,FALSE())'), () => binomialPmf(7, 20, 0.3), 1e-10),
    close('POISSON.DIST(4, 6)', spreadsheet('=POISSON.DIST(4,6,FALSE())'), () => poissonPmf(4, 6), 1e-10),
  ]),
  bySpreadsheet(
    'logarithm of the gamma function',
    'GAMMALN',
    [0.5, 4.5, 30, 250.25].map((x) => close(`${x}`, spreadsheet(`=GAMMALN(${x})`), () => logGamma(x), 1e-10)),
  ),
  byLibrary(
    'blocks to start for a stand',
    'binomial cdf, counted up',
    (
      [
        [1, 0.6, 0.95],
        [24, 0.8, 0.9],
        [180, 0.9215, 0.9],
        [600, 0.93, 0.99],
        [2250, 0.95, 0.9],
      ] as const
    ).map(([wanted, chance, confidence]) => ({
      what: `${wanted} at ${chance} each, confidence ${confidence}`,
      given: blocksByLibrary(wanted, chance, confidence),
      computed: () => blocksNeeded(wanted, chance, confidence),
      tolerance: 0,
    })),
    'blocks',
  ),
  byLibrary(
    'share of blocks that stay empty',
    'binomial cdf',
    [2, 3, 4].map((seeds) =>
      close(`${seeds} seeds of 85 %`, binomialCdfOfLibrary(0, seeds, 0.85), () => emptyShare(seeds, 0.85)),
    ),
  ),
];
