// Minimum germination of vegetable seed in United States commerce. Read by the crop library and the seed-lot sheet;
// calls nothing.

import type { ModelSource } from './source.ts';

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Germination standard',
    gives: 'lowest germination at which a kind of vegetable seed sells without a Below Standard label',
    equation: 'table by kind, hard seed counted as germinated',
    range: 'United States; other countries have their own',
    source: '7 CFR 201.31 (59 FR 64491, 14 December 1994); label of small packets 7 CFR 201.29',
    standing: 'published',
  },
];

/** Share (0 to 1) by kind, 68 kinds. Source: 7 CFR 201.31. */
export const GERMINATION_STANDARDS: Readonly<Record<string, number>> = {
  Artichoke: 0.6,
  Asparagus: 0.7,
  Asparagusbean: 0.75,
  'Bean, garden': 0.7,
  'Bean, lima': 0.7,
  'Bean, runner': 0.75,
  Beet: 0.65,
  Broadbean: 0.75,
  Broccoli: 0.75,
  'Brussels sprouts': 0.7,
  'Burdock, great': 0.6,
  Cabbage: 0.75,
  'Cabbage, tronchuda': 0.7,
  Cardoon: 0.6,
  Carrot: 0.55,
  Cauliflower: 0.75,
  Celeriac: 0.55,
  Celery: 0.55,
  'Chard, Swiss': 0.65,
  Chicory: 0.65,
  'Chinese cabbage': 0.75,
  Chives: 0.5,
  Citron: 0.65,
  Collards: 0.8,
  'Corn, sweet': 0.75,
  Cornsalad: 0.7,
  Cowpea: 0.75,
  'Cress, garden': 0.75,
  'Cress, upland': 0.6,
  'Cress, water': 0.4,
  Cucumber: 0.8,
  Dandelion: 0.6,
  Dill: 0.6,
  Eggplant: 0.6,
  Endive: 0.7,
  Kale: 0.75,
  'Kale, Chinese': 0.75,
  'Kale, Siberian': 0.75,
  Kohlrabi: 0.75,
  Leek: 0.6,
  Lettuce: 0.8,
  Melon: 0.75,
  'Mustard, India': 0.75,
  'Mustard, spinach': 0.75,
  Okra: 0.5,
  Onion: 0.7,
  'Onion, Welsh': 0.7,
  'Pak-choi': 0.75,
  Parsley: 0.6,
  Parsnip: 0.6,
  Pea: 0.8,
  Pepper: 0.55,
  Pumpkin: 0.75,
  Radish: 0.75,
  Rhubarb: 0.6,
  Rutabaga: 0.75,
  Sage: 0.6,
  Salsify: 0.75,
  'Savory, summer': 0.55,
  Sorrel: 0.65,
  Soybean: 0.75,
  Spinach: 0.6,
  'Spinach, New Zealand': 0.4,
  Squash: 0.75,
  Tomato: 0.75,
  'Tomato, husk': 0.5,
  Turnip: 0.8,
  Watermelon: 0.7,
};

/** The minimum germination (share) of a kind as the rule names it; no answer for a kind it does not list. */
export function germinationStandard(kind: string): number {
  return Object.hasOwn(GERMINATION_STANDARDS, kind) ? (GERMINATION_STANDARDS[kind] ?? Number.NaN) : Number.NaN;
}

/** Whether a lot's germination falls short of its standard (both shares); false where either is missing. */
export function isBelowStandard(germination: number, standard: number): boolean {
  return germination < standard;
}
