// How long vegetable seed keeps when stored cool and dry, in years, and the rule that makes germination of it where a
// crop has no viability constants. Called by the functions and the seed-lot sheet; calls the normal distribution.

import { standardNormalCdf, standardNormalQuantile } from './normal.ts';
import { germinationProbit } from './seed-viability.ts';
import type { ModelSource } from './source.ts';

/** What good new seed germinates, and what it has fallen to at the end of its storage life. */
export const STORAGE_LIFE_FROM = 0.9;
export const STORAGE_LIFE_TO = 0.7;

const DAYS_PER_YEAR = 365.25;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Seed storage life in years',
    gives: 'share still germinating, for crops without viability constants',
    equation:
      'probit(germination) falls in a straight line with age; seed of 90 % is down to 70 % at the end of its storage life',
    range: 'seed kept cool and dry; the tables behind it say in years what the rule reads in days',
    source:
      "years: Maynard & Hochmuth 1997, Knott's Handbook for Vegetable Growers, 4th ed.; the straight line in probits: Ellis & Roberts 1980; the levels 90 and 70 %: common practice",
    standing: 'common practice',
  },
];

/**
 * Share still germinating after `age` days of a seed whose kind keeps `lifeYears` years cool and dry. `germination` when
 * new or tested, 0 to 1; 100 % counts as 99.5 %. No answer for a negative age or a life of nought.
 */
export function germinationByStorageLife(germination: number, age: number, lifeYears: number): number {
  if (!(age >= 0 && lifeYears > 0)) return Number.NaN;
  const fallPerLife = standardNormalQuantile(STORAGE_LIFE_FROM) - standardNormalQuantile(STORAGE_LIFE_TO);
  return standardNormalCdf(germinationProbit(germination) - (fallPerLife * age) / (lifeYears * DAYS_PER_YEAR));
}

export interface StorageLife {
  readonly kind: string;
  /** Years in Knott's Handbook, 4th ed. 1997, as modified by Iowa State University; not a number where it lists none. */
  readonly handbook: number;
  /** Rounded mean of the lists of the Oregon, Colorado, Purdue and Virginia extension services. */
  readonly extension: number;
}

const NONE = Number.NaN;

/** Years by kind, two tables side by side because they differ. */
export const STORAGE_LIVES: readonly StorageLife[] = [
  { kind: 'Asparagus', handbook: 3, extension: 3 },
  { kind: 'Bean', handbook: 3, extension: 3 },
  { kind: 'Beet', handbook: 4, extension: 3 },
  { kind: 'Broccoli', handbook: 3, extension: 3 },
  { kind: 'Brussels sprouts', handbook: 4, extension: 4 },
  { kind: 'Cabbage', handbook: 4, extension: 4 },
  { kind: 'Carrot', handbook: 3, extension: 3 },
  { kind: 'Cauliflower', handbook: 4, extension: 4 },
  { kind: 'Celeriac', handbook: 3, extension: NONE },
  { kind: 'Celery', handbook: 3, extension: 3 },
  { kind: 'Chard, Swiss', handbook: 4, extension: 3 },
  { kind: 'Chicory', handbook: 4, extension: 4 },
  { kind: 'Chinese cabbage', handbook: 3, extension: 3 },
  { kind: 'Chives', handbook: NONE, extension: 2 },
  { kind: 'Collards', handbook: 5, extension: 4 },
  { kind: 'Corn, sweet', handbook: 2, extension: 2 },
  { kind: 'Cucumber', handbook: 5, extension: 5 },
  { kind: 'Eggplant', handbook: 4, extension: 4 },
  { kind: 'Endive', handbook: 5, extension: 5 },
  { kind: 'Fennel', handbook: 4, extension: 3 },
  { kind: 'Kale', handbook: 4, extension: 4 },
  { kind: 'Kohlrabi', handbook: 3, extension: 3 },
  { kind: 'Leek', handbook: 2, extension: 2 },
  { kind: 'Lettuce', handbook: 6, extension: 3 },
  { kind: 'Muskmelon', handbook: 5, extension: 5 },
  { kind: 'Mustard', handbook: 4, extension: NONE },
  { kind: 'New Zealand spinach', handbook: 3, extension: NONE },
  { kind: 'Okra', handbook: 2, extension: 2 },
  { kind: 'Onion', handbook: 1, extension: 1 },
  { kind: 'Parsley', handbook: 1, extension: 2 },
  { kind: 'Parsnip', handbook: 1, extension: 1 },
  { kind: 'Pea', handbook: 3, extension: 3 },
  { kind: 'Pepper', handbook: 2, extension: 2 },
  { kind: 'Pumpkin', handbook: 4, extension: NONE },
  { kind: 'Radish', handbook: 5, extension: 5 },
  { kind: 'Rutabaga', handbook: 4, extension: 4 },
  { kind: 'Salsify', handbook: 1, extension: 1 },
  { kind: 'Spinach', handbook: 3, extension: 3 },
  { kind: 'Squash', handbook: 4, extension: 4 },
  { kind: 'Tomato', handbook: 4, extension: 5 },
  { kind: 'Turnip', handbook: 4, extension: 4 },
  { kind: 'Watermelon', handbook: 4, extension: 4 },
];
