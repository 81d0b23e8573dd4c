// The stand as functions: plants in a block, empty blocks, blocks to start. Bodies stand in agronomy/stand.ts; read by
// trade/index.ts.

import {
  blocksNeeded,
  blocksWithPlants,
  emptyShare,
  meanPlants,
  plantsPerBlockDistribution,
  STAND_LIMITS,
  thinToMost,
} from '../../agronomy/stand.ts';
import { dear } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { numeric, PLAIN, plain } from './build.ts';

const BINOMIAL = 'Binomial distribution; Loader 2000, Fast and Accurate Computation of Binomial Probabilities';
const SEEDS = plain('seeds', { limit: STAND_LIMITS.seeds });
const CHANCE = plain('chance', { limit: STAND_LIMITS.chance });

function thinnedMean(seeds: number, chance: number, most: number): number {
  if (!(most >= 1)) return Number.NaN;
  const { kept } = thinToMost(plantsPerBlockDistribution(seeds, chance), Math.floor(most));
  const standing = 1 - (kept[0] ?? Number.NaN);
  const plants = kept.reduce((sum, share, count) => sum + share * count, 0);
  return standing > 0 ? plants / standing : Number.NaN;
}

function thinnings(seeds: number, chance: number, most: number): number {
  const distribution = plantsPerBlockDistribution(seeds, chance);
  return distribution.length > 0 && most >= 0
    ? thinToMost(distribution, Math.floor(most)).thinningsPerBlock
    : Number.NaN;
}

export const STAND: readonly FunctionDefinition[] = [
  dear(
    numeric(
      {
        name: 'BLOCKSNEEDED',
        group: 'stand',
        parameters: [
          plain('wanted', { limit: STAND_LIMITS.wanted }),
          CHANCE,
          plain('confidence', { limit: STAND_LIMITS.confidence }),
        ],
        gives: PLAIN,
        doc: 'Smallest number of blocks to start so that, with the confidence asked, at least so many stand.',
        source: 'Binomial distribution',
      },
      blocksNeeded,
    ),
  ),
  dear(
    numeric(
      {
        name: 'EMPTYSHARE',
        group: 'stand',
        parameters: [SEEDS, CHANCE],
        gives: PLAIN,
        doc: 'Share of blocks without a plant; 3.5 seeds a block is half threes and half fours.',
        source: BINOMIAL,
      },
      emptyShare,
    ),
  ),
  dear(
    numeric(
      {
        name: 'MEANPLANTS',
        group: 'stand',
        parameters: [SEEDS, CHANCE],
        gives: PLAIN,
        doc: 'Mean number of plants in the blocks that have any.',
        source: BINOMIAL,
      },
      meanPlants,
    ),
  ),
  dear(
    numeric(
      {
        name: 'PLANTSSHARE',
        group: 'stand',
        parameters: [plain('plants'), SEEDS, CHANCE],
        gives: PLAIN,
        doc: 'Share of blocks with exactly so many plants.',
        source: BINOMIAL,
      },
      blocksWithPlants,
    ),
  ),
  dear(
    numeric(
      {
        name: 'THINNEDMEAN',
        group: 'stand',
        parameters: [SEEDS, CHANCE, plain('most')],
        gives: PLAIN,
        doc: 'Mean number of plants in the blocks that have any, once none keeps more than `most`.',
        source: BINOMIAL,
      },
      thinnedMean,
    ),
  ),
  dear(
    numeric(
      {
        name: 'THINNINGS',
        group: 'stand',
        parameters: [SEEDS, CHANCE, plain('most')],
        gives: PLAIN,
        doc: 'Plants pulled per block when none may keep more than `most`, empty blocks counted.',
        source: BINOMIAL,
      },
      thinnings,
    ),
  ),
];
