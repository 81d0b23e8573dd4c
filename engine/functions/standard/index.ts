// All standard functions, a list per subject. functions/index.ts reads it; nothing else does.

import type { FunctionDefinition } from '../definition.ts';
import { CONDITIONAL } from './conditional.ts';
import { CONDITIONAL_VALUES } from './conditional-values.ts';
import { CONVERSION } from './convert.ts';
import { DATABASE } from './database.ts';
import { DATED_PAYMENTS } from './dated-payments.ts';
import { DATES } from './dates.ts';
import { DISTRIBUTIONS } from './distributions.ts';
import { DISTRIBUTIONS_OF_SAMPLES } from './distributions-of-samples.ts';
import { DISTRIBUTIONS_OF_SIZES } from './distributions-of-sizes.ts';
import { FINANCE } from './finance.ts';
import { INFORMATION } from './information.ts';
import { JOINING } from './joining.ts';
import { LOANS } from './loans.ts';
import { LOGIC } from './logic.ts';
import { LOOKUP } from './lookup.ts';
import { MATHEMATICS } from './mathematics.ts';
import { PIECES } from './pieces.ts';
import { RANKING } from './ranking.ts';
import { REGRESSION } from './regression.ts';
import { ROUNDING } from './rounding.ts';
import { STATISTICS } from './statistics.ts';
import { TEXTS } from './text.ts';
import { TEXT_FORMAT } from './text-format.ts';
import { TRIGONOMETRY } from './trigonometry.ts';
import { WORKDAYS } from './workdays.ts';
import { WRITING_OFF } from './writing-off.ts';

export const STANDARD: readonly FunctionDefinition[] = [
  ...LOGIC,
  ...MATHEMATICS,
  ...TRIGONOMETRY,
  ...CONVERSION,
  ...ROUNDING,
  ...STATISTICS,
  ...RANKING,
  ...REGRESSION,
  ...DISTRIBUTIONS,
  ...DISTRIBUTIONS_OF_SAMPLES,
  ...DISTRIBUTIONS_OF_SIZES,
  ...CONDITIONAL,
  ...CONDITIONAL_VALUES,
  ...DATABASE,
  ...LOOKUP,
  ...TEXTS,
  ...PIECES,
  ...TEXT_FORMAT,
  ...JOINING,
  ...DATES,
  ...WORKDAYS,
  ...INFORMATION,
  ...FINANCE,
  ...LOANS,
  ...DATED_PAYMENTS,
  ...WRITING_OFF,
];
