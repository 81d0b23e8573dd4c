// The stand: how many plants come up in a block, how many blocks to start, what is thinned, what a direct sowing gives.
// Called by the functions and the plantings sheet; calls the distributions.

import { binomialAtLeast, binomialPmf, MOST_TRIALS } from './binomial.ts';
import type { Limits } from './limits.ts';
import { standardNormalQuantile } from './normal.ts';
import type { ModelSource } from './source.ts';

export const STAND_LIMITS = {
  chance: { min: 0, max: 1, why: 'a chance is a share from 0 to 100 %' },
  confidence: { min: 0, max: 1, why: 'confidence is a share from 0 to 100 %' },
  seeds: { min: 0, max: 1000, why: 'a block takes from 0 to 1,000 seeds' },
  wanted: { min: 0, max: 1e9, why: 'a planting takes from 0 to 1,000,000,000 stations' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Plants per block',
    gives: 'share of blocks with 0, 1, 2 ... plants, mean plants of blocks that have any, thinnings',
    equation:
      'binomial: each seed gives a plant with the chance germination x survival; 3.5 seeds = half threes, half fours',
    range: 'seeds that germinate independently of each other',
    source: 'binomial distribution; Loader 2000 for its evaluation',
    standing: 'published',
  },
  {
    model: 'Blocks to start',
    gives: 'smallest number of blocks of which, with the confidence asked, enough stand',
    equation: 'smallest n with P(Binomial(n, chance) >= wanted) >= confidence',
    range: 'blocks that succeed independently of each other; a damped-off tray is not in it',
    source: 'binomial distribution; start from the Cornish-Fisher expansion of the negative binomial',
    standing: 'published',
  },
];

/** A comparison of two computed probabilities forgives this much of their size, so that 90 % of 90 % is reached. */
const DUST = 1e-12;

/**
 * Shares of blocks with 0, 1, 2 ... plants. `seedsPerBlock` may be a fraction: 3.5 is half threes and half fours.
 * `chance` is a seed's chance to give a plant that stands (germination x survival). Empty where an input is impossible.
 */
export function plantsPerBlockDistribution(seedsPerBlock: number, chance: number): readonly number[] {
  if (!isPossible(seedsPerBlock, chance)) return [];
  const more = Math.ceil(seedsPerBlock);
  const shares: number[] = [];
  for (let plants = 0; plants <= more; plants += 1) shares.push(shareOfPlants(plants, seedsPerBlock, chance));
  return shares;
}

/** Share of blocks with exactly so many plants: one of plantsPerBlockDistribution, without the others. No answer below no plant. */
export function blocksWithPlants(plants: number, seedsPerBlock: number, chance: number): number {
  if (!(plants >= 0) || !isPossible(seedsPerBlock, chance)) return Number.NaN;
  if (!Number.isInteger(plants) || plants > Math.ceil(seedsPerBlock)) return 0;
  return shareOfPlants(plants, seedsPerBlock, chance);
}

function isPossible(seedsPerBlock: number, chance: number): boolean {
  return seedsPerBlock >= 0 && Number.isFinite(seedsPerBlock) && chance >= 0 && chance <= 1;
}

function shareOfPlants(plants: number, seedsPerBlock: number, chance: number): number {
  const fewer = Math.floor(seedsPerBlock);
  const shareOfMore = seedsPerBlock - fewer;
  const ofFewer = binomialPmf(plants, fewer, chance);
  if (shareOfMore === 0) return ofFewer;
  return (1 - shareOfMore) * ofFewer + shareOfMore * binomialPmf(plants, Math.ceil(seedsPerBlock), chance);
}

/** Share of blocks without a plant, seeds per block and chance as plantsPerBlockDistribution. */
export function emptyShare(seedsPerBlock: number, chance: number): number {
  if (!(seedsPerBlock >= 0 && chance >= 0 && chance <= 1)) return Number.NaN;
  const fewer = Math.floor(seedsPerBlock);
  const shareOfMore = seedsPerBlock - fewer;
  return (1 - chance) ** fewer * (1 - shareOfMore * chance);
}

/** Mean number of plants of the blocks that have any; no answer where none has. */
export function meanPlants(seedsPerBlock: number, chance: number): number {
  const empty = emptyShare(seedsPerBlock, chance);
  return empty < 1 ? (seedsPerBlock * chance) / (1 - empty) : Number.NaN;
}

/** Chance that a block comes up with a plant and survives the nursery, from germination, seeds a block and survival. */
export function blockChance(germination: number, seedsPerBlock: number, nurserySurvival: number): number {
  return (1 - emptyShare(seedsPerBlock, germination)) * nurserySurvival;
}

// Smallest n to have `wanted` successes, by the Cornish-Fisher expansion of the negative binomial.
function blocksGuess(wanted: number, chance: number, confidence: number): number {
  const failure = 1 - chance;
  const z = standardNormalQuantile(confidence);
  const deviation = Math.sqrt(wanted * failure) / chance;
  const skew = (2 - chance) / Math.sqrt(wanted * failure);
  return wanted / chance + deviation * (z + (skew * (z * z - 1)) / 6);
}

/**
 * Smallest whole n with P(Binomial(n, chance) >= wanted) >= confidence; a shortfall of 1e-12 counts as reached, so that
 * 2 blocks at 70 % give 91 %. `wanted` is rounded up. No answer at chance 0, at confidence 100 % unless chance is, or where
 * some 5E11 blocks and more would be needed.
 */
export function blocksNeeded(wanted: number, chance: number, confidence: number): number {
  if (!(Number.isFinite(wanted) && chance > 0 && chance <= 1 && confidence >= 0 && confidence <= 1)) return Number.NaN;
  const successes = Math.ceil(wanted - DUST * Math.abs(wanted));
  if (successes <= 0 || confidence === 0) return 0;
  if (chance === 1) return successes;
  if (confidence === 1) return Number.NaN;
  const target = confidence * (1 - DUST);
  const guess = Math.round(blocksGuess(successes, chance, confidence));
  if (!(guess < MOST_TRIALS / 2)) return Number.NaN;
  let reached = Math.max(successes, guess);
  let short = reached;
  let step = 1;
  if (binomialAtLeast(successes, reached, chance) >= target) {
    do {
      reached = short;
      short -= step;
      step *= 2;
    } while (binomialAtLeast(successes, short, chance) >= target);
  } else {
    do {
      short = reached;
      reached += step;
      step *= 2;
    } while (binomialAtLeast(successes, reached, chance) < target);
  }
  while (reached - short > 1) {
    const middle = Math.floor((short + reached) / 2);
    if (binomialAtLeast(successes, middle, chance) >= target) reached = middle;
    else short = middle;
  }
  return reached;
}

export interface ThinnedBlocks {
  /** Shares of blocks with 0, 1 ... `most` plants after thinning. */
  readonly kept: readonly number[];
  /** Mean plants pulled from a block, empty ones counted. */
  readonly thinningsPerBlock: number;
}

/** What stays and what is pulled when no block may keep more than `most` plants (whole, 0 or more). */
export function thinToMost(distribution: readonly number[], most: number): ThinnedBlocks {
  const kept: number[] = [];
  let thinnings = 0;
  for (const [plants, share] of distribution.entries()) {
    const left = Math.min(plants, most);
    kept[left] = (kept[left] ?? 0) + share;
    thinnings += (plants - left) * share;
  }
  return { kept, thinningsPerBlock: thinnings };
}

/** Plants of a direct sowing, in the unit of the rate: seeds sown x germination x share of seedlings that come through. */
export function directSownStand(seedRate: number, germination: number, fieldSurvival: number): number {
  return seedRate * germination * fieldSurvival;
}

/** Seeds to sow direct for a stand of plants; no answer where none would come through. */
export function seedRateForStand(plants: number, germination: number, fieldSurvival: number): number {
  const chance = germination * fieldSurvival;
  return chance > 0 ? plants / chance : Number.NaN;
}

/** Share of a drilled row's places of `length` that hold no plant, at `plantsPerLength` on average and seed falling at random (Poisson). */
export function gapShare(plantsPerLength: number, length: number): number {
  const expected = plantsPerLength * length;
  return expected >= 0 ? Math.exp(-expected) : Number.NaN;
}
