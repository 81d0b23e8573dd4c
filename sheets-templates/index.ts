// The built-in workbooks by name. The terminal and the browser call this file alone.

import type { WorkbookDeclaration } from '../engine/index.ts';
import { type SeasonOptions, seasonTemplate } from './season.ts';

export type { SeasonOptions };
export { seasonTemplate };

export interface Template {
  readonly name: string;
  /** In a sentence. */
  readonly about: string;
  make(options: SeasonOptions): WorkbookDeclaration;
}

export const TEMPLATES: readonly Template[] = [
  {
    name: 'season',
    about: 'A season of a market garden: farm, crops, varieties, seed, beds, plantings and the seed order.',
    make: seasonTemplate,
  },
];
