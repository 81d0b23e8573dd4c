// All functions of the trade, in the order a grower meets them. functions/index.ts reads this list; nothing else does.

import type { FunctionDefinition } from '../definition.ts';
import { AFTER_HARVEST } from './after-harvest.ts';
import { BEST_SPACING } from './best-spacing.ts';
import { BULBING } from './bulbing.ts';
import { CLIMATE } from './climate.ts';
import { COLD } from './cold.ts';
import { COURSE } from './course.ts';
import { FROST } from './frost.ts';
import { GERMINATION } from './germination.ts';
import { HARVEST } from './harvest.ts';
import { LEARNING } from './learning.ts';
import { LIGHT } from './light.ts';
import { NUTRIENTS } from './nutrients.ts';
import { PACKS } from './packs.ts';
import { SEED } from './seed.ts';
import { SELLING } from './selling.ts';
import { SPACE } from './space.ts';
import { STAND } from './stand.ts';
import { STORAGE } from './storage.ts';
import { SUITS } from './suits.ts';
import { TRIALS } from './trials.ts';
import { TYPED } from './typed.ts';
import { WATER } from './water.ts';

export const TRADE: readonly FunctionDefinition[] = [
  ...LIGHT,
  ...CLIMATE,
  ...COURSE,
  ...COLD,
  ...FROST,
  ...BULBING,
  ...SUITS,
  ...SEED,
  ...GERMINATION,
  ...PACKS,
  ...STAND,
  ...SPACE,
  ...TRIALS,
  ...BEST_SPACING,
  ...HARVEST,
  ...AFTER_HARVEST,
  ...STORAGE,
  ...SELLING,
  ...WATER,
  ...NUTRIENTS,
  ...TYPED,
  ...LEARNING,
];
