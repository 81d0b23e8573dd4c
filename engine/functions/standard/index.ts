// All standard functions, a list per subject. functions/index.ts reads it; nothing else does.

import type { FunctionDefinition } from '../definition.ts';
import { CONDITIONAL } from './conditional.ts';
import { DATES } from './dates.ts';
import { LOGIC } from './logic.ts';
import { MATHEMATICS } from './mathematics.ts';
import { ROUNDING } from './rounding.ts';
import { STATISTICS } from './statistics.ts';
import { TEXTS } from './text.ts';

export const STANDARD: readonly FunctionDefinition[] = [
  ...LOGIC,
  ...MATHEMATICS,
  ...ROUNDING,
  ...STATISTICS,
  ...CONDITIONAL,
  ...TEXTS,
  ...DATES,
];
