// Functions that templates of the past call and today's don't: kept, so that every workbook opens again to the same values,
// and left out of help and suggestions. A function that leaves a template moves here; none is ever taken away.

import type { FunctionDefinition } from '../definition.ts';
import { FORMER_BEST_SPACING } from './best-spacing.ts';
import { FORMER_BOLTING } from './bolting.ts';
import { FORMER_FITS } from './fits.ts';
import { FORMER_PACKS } from './packs.ts';
import { FORMER_STORE_LOTS } from './store-lots.ts';
import { FORMER_WATER } from './water.ts';

export const FORMER: readonly FunctionDefinition[] = [
  ...FORMER_BOLTING,
  ...FORMER_FITS,
  ...FORMER_BEST_SPACING,
  ...FORMER_PACKS,
  ...FORMER_STORE_LOTS,
  ...FORMER_WATER,
].map((definition) => ({ ...definition, signature: { ...definition.signature, former: true } }));
