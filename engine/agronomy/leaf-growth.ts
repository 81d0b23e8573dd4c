// How large an onion is when it starts to bulb: leaf area and dry weight by degree-days since emergence. Called by the
// bulbing sheet; calls degree-days.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';
import { sumDegreeDays } from './thermal-time.ts';

/** Onion leaves grow by the degrees between these (C). */
export const LEAF_GROWTH_BASE = 6;
export const LEAF_GROWTH_UPPER = 20;

export const LEAF_GROWTH_LIMITS = {
  degreeDays: {
    min: 0,
    max: 600,
    why: 'Brewster 2008 eq 4.17 is for seedlings that do not shade one another: beyond about 600 degree-days neighbours meet',
  },
} satisfies Limits;

/**
 * Degree-days (6 to 20 C) of leaf growth from emergence to the onset of winter between which an onion neither dies in a hard
 * winter nor bolts: those of sowings in mid-August and early September at 52 N, of early September and October at 32 N.
 */
export const WINTER_LEAF_LEAST = 400;
export const WINTER_LEAF_MOST = 670;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Onion leaf growth before bulbing',
    gives: 'leaf area (cm2) and dry weight (g) of a plant by degree-days since emergence',
    equation: 'ln area = ln 0.5 + 0.0108 D; ln weight = -6.086 + 0.0111 D; D in degree-days between 6 and 20 C',
    range: 'widely spaced seedlings, up to about 600 degree-days',
    source: 'Brewster 2008, Onions and Other Vegetable Alliums, eq 4.17a and 4.17b',
    standing: 'published',
  },
  {
    model: 'Onions over winter',
    gives: 'whether an onion sown in autumn is of the size that neither dies nor bolts',
    equation: `leaf growth from emergence to the onset of winter, right from ${WINTER_LEAF_LEAST} to ${WINTER_LEAF_MOST} degree-days between 6 and 20 C`,
    range:
      'winter begins when the mean falls to 6 C or at the end of November; uncovered not where it gets colder than -11 C',
    source:
      'windows of sowing: Brewster 2008, Onions and Other Vegetable Alliums, p. 289-290 and Fig 6.9 (52 N), and Corgan & Kedar 1990 in it (New Mexico, 32 N), put through emergence and the degree-days',
    standing: 'common practice',
  },
];

/** Degree-days between 6 and 20 C from index `from` up to but not including `to` in an array of daily means (C). */
export function leafGrowthDegreeDays(means: ArrayLike<number>, from: number, to: number): number {
  return sumDegreeDays(means, from, to, LEAF_GROWTH_BASE, LEAF_GROWTH_UPPER);
}

/** Leaf area of an onion plant, cm2, by degree-days between 6 and 20 C since emergence. */
export function onionLeafArea(degreeDays: number): number {
  return 0.5 * Math.exp(0.0108 * degreeDays);
}

/** Dry weight of an onion plant, g, by degree-days between 6 and 20 C since emergence. */
export function onionDryWeight(degreeDays: number): number {
  return Math.exp(-6.086 + 0.0111 * degreeDays);
}
