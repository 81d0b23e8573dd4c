// Days to emergence and share of normal seedlings at nine temperatures, for 24 vegetables: the table of Harrington and
// Minges. Read by the germination response; calls nothing.

export interface GerminationRow {
  readonly kind: string;
  /** Days to emergence from 1/2 inch deep at 0, 5 ... 40 C; not a number where nothing came up or none was given. */
  readonly days: readonly number[];
  /** Normal seedlings in %, at the same temperatures; not a number where the table's copies print an untested 0. */
  readonly percent: readonly number[];
}

/** C, the columns of the table. */
export const GERMINATION_TEMPERATURES: readonly number[] = [0, 5, 10, 15, 20, 25, 30, 35, 40];

const NONE = Number.NaN;

/**
 * Source: J. F. Harrington & P. A. Minges 1954, Vegetable Seed Germination, University of California Agricultural
 * Extension Mimeo; as in Knott's Handbook for Vegetable Growers. Seed in moist sand, kept at the temperature.
 */
export const GERMINATION_BY_TEMPERATURE: readonly GerminationRow[] = [
  { kind: 'Asparagus', days: [NONE, NONE, 53, 24, 15, 10, 12, 20, 28], percent: [0, 0, 61, 80, 88, 95, 79, 37, 0] },
  { kind: 'Bean, lima', days: [NONE, NONE, NONE, 31, 18, 7, 7, NONE, NONE], percent: [0, 0, 1, 52, 82, 90, 88, 2, 0] },
  { kind: 'Bean, snap', days: [NONE, NONE, NONE, 16, 11, 8, 6, 6, NONE], percent: [0, 0, 1, 97, 90, 97, 47, 39, 0] },
  { kind: 'Beet', days: [NONE, 42, 17, 10, 6, 5, 5, 5, NONE], percent: [0, 53, 72, 88, 90, 97, 89, 35, 0] },
  { kind: 'Cabbage', days: [NONE, NONE, 15, 9, 6, 5, 4, NONE, NONE], percent: [0, 27, 78, 93, NONE, 99, NONE, 0, 0] },
  { kind: 'Carrot', days: [NONE, 51, 17, 10, 7, 6, 6, 9, NONE], percent: [0, 48, 93, 95, 96, 96, 95, 74, 0] },
  { kind: 'Cauliflower', days: [NONE, NONE, 20, 10, 6, 5, 5, NONE, NONE], percent: [0, 0, 58, 60, NONE, 63, 45, 0, 0] },
  { kind: 'Celery', days: [NONE, 41, 16, 12, 7, NONE, NONE, NONE, NONE], percent: [0, 72, 70, 40, 97, 65, 0, 0, 0] },
  { kind: 'Corn, sweet', days: [NONE, NONE, 22, 12, 7, 4, 4, 3, NONE], percent: [0, 0, 47, 97, 97, 98, 91, 88, 10] },
  { kind: 'Cucumber', days: [NONE, NONE, NONE, 13, 6, 4, 3, 3, NONE], percent: [0, 0, 0, 95, 99, 99, 99, 99, 49] },
  { kind: 'Eggplant', days: [NONE, NONE, NONE, NONE, 13, 8, 5, NONE, NONE], percent: [0, 0, 0, 0, 21, 53, 60, 0, 0] },
  { kind: 'Lettuce', days: [49, 15, 7, 4, 3, 2, 3, NONE, NONE], percent: [98, 98, 98, 99, 99, 99, 12, 0, 0] },
  { kind: 'Muskmelon', days: [NONE, NONE, NONE, NONE, 8, 4, 3, NONE, NONE], percent: [0, 0, 0, 0, 38, 94, 90, 0, 0] },
  { kind: 'Okra', days: [NONE, NONE, NONE, 27, 17, 13, 7, 6, 7], percent: [0, 0, 0, 74, 89, 92, 88, 85, 35] },
  { kind: 'Onion', days: [136, 31, 13, 7, 5, 4, 4, 13, NONE], percent: [90, 98, 98, 98, 99, 97, 91, 73, 2] },
  { kind: 'Parsley', days: [NONE, NONE, 29, 17, 14, 13, 12, NONE, NONE], percent: [0, 0, 63, NONE, 69, 64, 50, 0, 0] },
  { kind: 'Parsnip', days: [172, 57, 27, 19, 14, 15, 32, NONE, NONE], percent: [82, 87, 79, 85, 89, 77, 51, 1, 0] },
  { kind: 'Pea', days: [NONE, 36, 14, 9, 8, 6, 6, NONE, NONE], percent: [0, 89, 94, 93, 93, 94, 86, 0, 0] },
  { kind: 'Pepper', days: [NONE, NONE, NONE, 25, 13, 8, 8, 9, NONE], percent: [0, 0, 1, 70, 96, 98, 95, 70, 0] },
  { kind: 'Radish', days: [NONE, 29, 11, 6, 4, 4, 3, NONE, NONE], percent: [0, 42, 76, 97, 95, 97, 95, 0, 0] },
  { kind: 'Spinach', days: [63, 23, 12, 7, 6, 5, 6, NONE, NONE], percent: [83, 96, 91, 82, 52, 28, 32, 0, 0] },
  { kind: 'Tomato', days: [NONE, NONE, 43, 14, 8, 6, 6, 9, NONE], percent: [0, 0, 82, 98, 98, 97, 83, 46, 0] },
  { kind: 'Turnip', days: [NONE, NONE, 5, 3, 2, 1, 1, 1, 3], percent: [1, 14, 79, 98, 99, 100, 99, 99, 88] },
  { kind: 'Watermelon', days: [NONE, NONE, NONE, NONE, 12, 5, 4, 3, NONE], percent: [0, 0, 0, 17, 94, 90, 92, 96, 0] },
];
