// The folds that what is known of parts of a list tells of the whole: for functions that fold, and for plans that look for a first or last.

import type { Running } from './definition.ts';

/** What is known of a list is its sum. */
export const ADDED: Running = { none: 0, join: (a, b) => a + b, comesTo: (known) => known };

export const LEAST: Running = { none: Number.POSITIVE_INFINITY, join: Math.min, comesTo: (known) => known };

export const MOST: Running = { none: Number.NEGATIVE_INFINITY, join: Math.max, comesTo: (known) => known };

/** How many there are, of which nothing need be known. */
export const COUNT: Running = { none: 0, join: () => 0, comesTo: (_, count) => count };
