// Probability distributions and the number of blocks to start, against two statistics libraries.
import binomialCdfOfLibrary from '@stdlib/stats-base-dists-binomial-cdf';
import binomialQuantileOfLibrary from '@stdlib/stats-base-dists-binomial-quantile';
import normalCdfOfLibrary from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantileOfLibrary from '@stdlib/stats-base-dists-normal-quantile';
import poissonCdfOfLibrary from '@stdlib/stats-base-dists-poisson-cdf';
import { HyperFormula } from 'hyperformula';
import {
  binomialCdf,
  binomialPmf,
  binomialQuantile,
  logGamma,
  normalCdf,
  normalPdf,
  normalQuantile,
  poissonCdf,
  poissonPmf,
} from '../../engine/agronomy/distributions.ts';
import { blocksNeeded, emptyShare } from '../../engine/agronomy/stand.ts';
import type { Check } from './check.ts';

const STDLIB = '@stdlib/stats-base-dists 0.2 to 0.3';
const SPREADSHEET = 'HyperFormula 3 statistical functions';

const sheet = HyperFormula.buildFromArray([[0]], { licenseKey: 'gpl-v3' });

function spreadsheet(formula: string): number {
  const answer = sheet.calculateFormula(formula, 0);
  if (typeof answer !== 'number') throw new Error(`the library gave no number for ${formula}`);
  return answer;
}

// The statistics library works in double precision; the spreadsheet gives about twelve digits.
const digitsOf = (source: string): number => (source === SPREADSHEET ? 1e-10 : 1e-12);

function close(
  source: string,
  what: string,
  published: number,
  computed: () => number,
  relative = digitsOf(source),
): Check {
  return {
    source,
    what,
    unit: '',
    published,
    computed,
    tolerance: Math.abs(published) * relative,
    standing: 'library',
  };
}

const normal = [
  ...[-8, -3, -1.5, -0.2, 0.4, 1.2816, 2.5].map((z) =>
    close(STDLIB, `normal share below ${z}`, normalCdfOfLibrary(z, 0, 1), () => normalCdf(z, 0, 1)),
  ),
  ...[0.001, 0.1, 0.45, 0.9, 0.975, 0.9999].map((share) =>
    close(STDLIB, `normal value with ${share} below`, normalQuantileOfLibrary(share, 60, 9), () =>
      normalQuantile(share, 60, 9),
    ),
  ),
  close(SPREADSHEET, 'NORM.DIST(62, 70, 12), density', spreadsheet('=NORM.DIST(62,70,12,FALSE())'), () =>
    normalPdf(62, 70, 12),
  ),
];

const BINOMIAL_CASES: readonly (readonly [number, number, number])[] = [
  [3, 10, 0.3],
  [0, 12, 0.2],
  [50, 100, 0.5],
  [480, 540, 0.88],
  [870, 1000, 0.9],
  [2200, 2242, 0.97],
  [18_050, 20_000, 0.9],
  [100, 1_000_000, 0.0001],
];

const binomial = [
  ...BINOMIAL_CASES.map(([successes, trials, chance]) =>
    close(
      STDLIB,
      `at most ${successes} of ${trials} at ${chance}`,
      binomialCdfOfLibrary(successes, trials, chance),
      () => binomialCdf(successes, trials, chance),
    ),
  ),
  ...(
    [
      [0.1, 20, 0.85],
      [0.9, 500, 0.9],
      [0.975, 2000, 0.35],
    ] as const
  ).map(([share, trials, chance]) =>
    close(
      STDLIB,
      `least number with ${share} of ${trials} at ${chance}`,
      binomialQuantileOfLibrary(share, trials, chance),
      () => binomialQuantile(share, trials, chance),
      0,
    ),
  ),
  close(
    SPREADSHEET,
    'BINOM.INV(100, 0.4, 0.9)',
    spreadsheet('=BINOM.INV(100,0.4,0.9)'),
    () => binomialQuantile(0.9, 100, 0.4),
    0,
  ),
  close(SPREADSHEET, 'BINOM.DIST(7, 20, 0.3), exactly 7', spreadsheet('=BINOM.DIST(7,20,0.3,FALSE())'), () =>
    binomialPmf(7, 20, 0.3),
  ),
];

const poisson = [
  ...(
    [
      [0, 2],
      [3, 2.5],
      [110, 120],
      [30, 12],
    ] as const
  ).map(([count, mean]) =>
    close(STDLIB, `at most ${count} where ${mean} are expected`, poissonCdfOfLibrary(count, mean), () =>
      poissonCdf(count, mean),
    ),
  ),
  close(SPREADSHEET, 'POISSON.DIST(4, 6), exactly 4', spreadsheet('=POISSON.DIST(4,6,FALSE())'), () =>
    poissonPmf(4, 6),
  ),
];

const gamma = [0.5, 4.5, 30, 250.25].map((x) =>
  close(SPREADSHEET, `GAMMALN(${x})`, spreadsheet(`=GAMMALN(${x})`), () => logGamma(x), 1e-10),
);

// Counts up from the number wanted, by the library's distribution.
function blocksByLibrary(wanted: number, chance: number, confidence: number): number {
  let blocks = wanted;
  while (1 - binomialCdfOfLibrary(wanted - 1, blocks, chance) < confidence) blocks += 1;
  return blocks;
}

const BLOCK_CASES: readonly (readonly [number, number, number])[] = [
  [1, 0.6, 0.95],
  [24, 0.8, 0.9],
  [180, 0.9215, 0.9],
  [600, 0.93, 0.99],
  [2250, 0.95, 0.9],
];

const blocks = BLOCK_CASES.map(
  ([wanted, chance, confidence]): Check => ({
    source: STDLIB,
    what: `blocks to start for ${wanted} at ${chance} each, confidence ${confidence}`,
    unit: 'blocks',
    published: blocksByLibrary(wanted, chance, confidence),
    computed: () => blocksNeeded(wanted, chance, confidence),
    tolerance: 0,
    standing: 'library',
  }),
);

const empty: readonly Check[] = [2, 3, 4].map((seeds) =>
  close(
    STDLIB,
    `share of blocks with ${seeds} seeds of 85 % that stay empty`,
    binomialCdfOfLibrary(0, seeds, 0.85),
    () => emptyShare(seeds, 0.85),
  ),
);

export const checks: readonly Check[] = [...normal, ...binomial, ...poisson, ...gamma, ...blocks, ...empty];
