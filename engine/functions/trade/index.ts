// All functions of the trade, in the order a grower meets them. functions/index.ts reads this list; nothing else does.

import type { FunctionDefinition } from '../definition.ts';
import { CLIMATE } from './climate.ts';
import { LIGHT } from './light.ts';
import { PACKS } from './packs.ts';
import { SEED } from './seed.ts';
import { SPACE } from './space.ts';
import { STAND } from './stand.ts';
import { SUITS } from './suits.ts';

export const TRADE: readonly FunctionDefinition[] = [
  ...LIGHT,
  ...CLIMATE,
  ...SUITS,
  ...SEED,
  ...PACKS,
  ...STAND,
  ...SPACE,
];
