// Published tables that the crop library is held against, copied row by row in their own units and names, each with its
// source. Data only; library.test.ts reads them.

/** Least germination, %. Source: US 7 CFR 201.31 (59 FR 64491, 14 December 1994). */
export const FEDERAL_GERMINATION: readonly (readonly [kind: string, percent: number])[] = [
  ['Bean, garden', 70],
  ['Beet', 65],
  ['Broccoli', 75],
  ['Brussels sprouts', 70],
  ['Cabbage', 75],
  ['Carrot', 55],
  ['Cauliflower', 75],
  ['Celeriac', 55],
  ['Celery', 55],
  ['Chard, Swiss', 65],
  ['Chinese cabbage', 75],
  ['Collards', 80],
  ['Corn, sweet', 75],
  ['Cucumber', 80],
  ['Dill', 60],
  ['Eggplant', 60],
  ['Kale', 75],
  ['Kohlrabi', 75],
  ['Leek', 60],
  ['Lettuce', 80],
  ['Melon', 75],
  ['Okra', 50],
  ['Onion', 70],
  ['Onion, Welsh', 70],
  ['Pak-choi', 75],
  ['Parsley', 60],
  ['Parsnip', 60],
  ['Pea', 80],
  ['Pepper', 55],
  ['Radish', 75],
  ['Rutabaga', 75],
  ['Spinach', 60],
  ['Squash', 75],
  ['Tomato', 75],
  ['Turnip', 80],
  ['Watermelon', 70],
];

/** The kinds of 7 CFR 201.31 that the library names otherwise, or that stand for several of its crops. */
export const KIND_OF_CROP: Readonly<Record<string, string>> = {
  'Onion, bulb': 'Onion',
  'Onion, bunching': 'Onion, Welsh',
  'Lettuce, head': 'Lettuce',
  'Salad mix, baby leaf': 'Lettuce',
  Chard: 'Chard, Swiss',
  'Bok choy': 'Pak-choi',
  'Napa cabbage': 'Chinese cabbage',
  'Salad turnip': 'Turnip',
  'Storage radish': 'Radish',
  'Tomato, cherry': 'Tomato',
  'Pepper, sweet': 'Pepper',
  'Squash, summer': 'Squash',
  'Squash, winter': 'Squash',
  'Bean, snap bush': 'Bean, garden',
  'Bean, snap pole': 'Bean, garden',
  'Pea, snap': 'Pea',
  'Sweet corn': 'Corn, sweet',
};

/**
 * Years that seed keeps. Source: Maynard & Hochmuth 1997, Knott's Handbook for Vegetable Growers, 4th ed., as given by
 * Iowa State Univ. Extension.
 */
export const SEED_LIFE: Readonly<Record<string, number>> = {
  'Onion, bulb': 1,
  Leek: 2,
  Parsley: 1,
  Parsnip: 1,
  'Pepper, sweet': 2,
  'Sweet corn': 2,
  Okra: 2,
  'Bean, snap bush': 3,
  Broccoli: 3,
  Carrot: 3,
  Celery: 3,
  'Napa cabbage': 3,
  Kohlrabi: 3,
  'Pea, snap': 3,
  Spinach: 3,
  Beet: 4,
  'Brussels sprouts': 4,
  Cabbage: 4,
  Cauliflower: 4,
  Chard: 4,
  Eggplant: 4,
  'Fennel, bulb': 4,
  Kale: 4,
  Rutabaga: 4,
  'Squash, summer': 4,
  Tomato: 4,
  'Salad turnip': 4,
  Watermelon: 4,
  Collards: 5,
  Cucumber: 5,
  Melon: 5,
  Radish: 5,
  'Lettuce, head': 6,
};

/** Kc ini, mid, end. Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, Table 12. */
export const CROP_COEFFICIENTS: Readonly<Record<string, readonly [number, number, number]>> = {
  Broccoli: [0.7, 1.05, 0.95],
  'Brussels sprouts': [0.7, 1.05, 0.95],
  Cabbage: [0.7, 1.05, 0.95],
  Carrot: [0.7, 1.05, 0.95],
  Cauliflower: [0.7, 1.05, 0.95],
  Celery: [0.7, 1.05, 1],
  Garlic: [0.7, 1, 0.7],
  'Lettuce, head': [0.7, 1, 0.95],
  'Onion, bulb': [0.7, 1.05, 0.75],
  'Onion, bunching': [0.7, 1, 1],
  Spinach: [0.7, 1, 0.95],
  Radish: [0.7, 0.9, 0.85],
  Eggplant: [0.6, 1.05, 0.9],
  'Pepper, sweet': [0.6, 1.05, 0.9],
  Tomato: [0.6, 1.15, 0.8],
  Cucumber: [0.6, 1, 0.75],
  'Squash, winter': [0.5, 1, 0.8],
  'Squash, summer': [0.5, 0.95, 0.75],
  Melon: [0.5, 1.05, 0.75],
  Watermelon: [0.4, 1, 0.75],
  Beet: [0.5, 1.05, 0.95],
  Parsnip: [0.5, 1.05, 0.95],
  Potato: [0.5, 1.15, 0.75],
  'Sweet potato': [0.5, 1.15, 0.65],
  'Salad turnip': [0.5, 1.1, 0.95],
  Rutabaga: [0.5, 1.1, 0.95],
  'Bean, snap bush': [0.5, 1.05, 0.9],
  'Pea, snap': [0.5, 1.15, 1.1],
};

/** Printed totals of the stage lengths, days. Source: Allen et al. 1998, FAO-56, Table 11, the row of the season chosen. */
export const STAGE_TOTALS: Readonly<Record<string, number>> = {
  'Onion, bulb': 150,
  'Onion, bunching': 70,
  'Lettuce, head': 75,
  Spinach: 65,
  Radish: 35,
  Eggplant: 140,
  'Pepper, sweet': 125,
  Tomato: 145,
  Cucumber: 105,
  'Squash, winter': 120,
  'Squash, summer': 90,
  Melon: 120,
  Watermelon: 110,
  Beet: 70,
  Carrot: 100,
  Potato: 130,
  'Sweet potato': 150,
  'Bean, snap bush': 75,
  'Bean, snap pole': 90,
  'Pea, snap': 100,
  Celery: 125,
  Kale: 80,
  Cabbage: 95,
};

/**
 * Store temperature (degF) and relative humidity (%). Source: New England Vegetable Management Guide, Table 16, handling
 * produce (adapted from USDA Handbook 66).
 */
export const NEW_ENGLAND_STORE: Readonly<
  Record<string, { readonly degF: readonly [number, number]; readonly humidity: readonly [number, number] }>
> = {
  Basil: { degF: [46, 50], humidity: [90, 95] },
  Broccoli: { degF: [32, 32], humidity: [90, 95] },
  Celery: { degF: [32, 32], humidity: [90, 95] },
  Collards: { degF: [32, 32], humidity: [90, 95] },
  Kale: { degF: [32, 32], humidity: [90, 95] },
  Kohlrabi: { degF: [32, 32], humidity: [90, 95] },
  Melon: { degF: [36, 40], humidity: [85, 90] },
  'Napa cabbage': { degF: [32, 32], humidity: [90, 95] },
  'Onion, bulb': { degF: [32, 32], humidity: [65, 70] },
  Parsnip: { degF: [32, 32], humidity: [90, 95] },
  'Salad mix, baby leaf': { degF: [32, 36], humidity: [95, 95] },
  Cucumber: { degF: [50, 50], humidity: [90, 95] },
  Eggplant: { degF: [50, 50], humidity: [90, 95] },
};

/** Store temperature (degF), humidity (%) and life (weeks). Source: USDA Agriculture Handbook 66, 1954, table. */
export const HANDBOOK_66_STORE: Readonly<
  Record<
    string,
    {
      readonly degF: readonly [number, number];
      readonly humidity: readonly [number, number];
      readonly weeks: readonly [number, number];
    }
  >
> = {
  Radish: { degF: [32, 32], humidity: [90, 95], weeks: [1, 2] },
  'Storage radish': { degF: [32, 32], humidity: [90, 95], weeks: [8, 16] },
  Rutabaga: { degF: [32, 32], humidity: [90, 95], weeks: [8, 16] },
  'Squash, summer': { degF: [45, 50], humidity: [85, 95], weeks: [0.5, 1] },
  Tomato: { degF: [45, 55], humidity: [85, 90], weeks: [1, 2] },
  Watermelon: { degF: [50, 55], humidity: [85, 90], weeks: [1, 4] },
};

/**
 * N, P, K of the edible part, kg per tonne fresh: protein / 6.25, phosphorus and potassium. Source: USDA National Nutrient
 * Database for Standard Reference (NDB numbers 11124, 11080, 11109, 11529, 11090, 11352, 11215, 11246).
 */
export const NUTRIENTS: Readonly<Record<string, readonly [number, number, number]>> = {
  Carrot: [1.49, 0.35, 3.2],
  Beet: [2.58, 0.4, 3.25],
  Cabbage: [2.05, 0.26, 1.7],
  Tomato: [1.41, 0.24, 2.37],
  Broccoli: [4.51, 0.66, 3.16],
  Potato: [3.28, 0.57, 4.25],
  Garlic: [10.18, 1.53, 4.01],
  Leek: [2.4, 0.35, 1.8],
};

/**
 * Weeks from sowing to planting out. Source: Ernest, Univ. of Delaware, after Mid-Atlantic Commercial Vegetable Production
 * Recommendations, Table A-4.
 */
export const TRANSPLANT_WEEKS: Readonly<Record<string, readonly [number, number]>> = {
  Broccoli: [4, 7],
  Cabbage: [6, 7],
  Cauliflower: [6, 8],
  Cucumber: [2, 4],
  Eggplant: [6, 9],
  'Lettuce, head': [4, 6],
  Melon: [2, 4],
  'Onion, bulb': [9, 12],
  'Pepper, sweet': [7, 9],
  'Squash, summer': [2, 4],
  Tomato: [5, 6],
  Watermelon: [3, 4],
};

/**
 * Days to emergence by soil temperature (degC) at 1/2 in deep, to 25 C. Source: Harrington & Minges 1954, Vegetable seed
 * germination, Calif. Agric. Extension.
 */
export const EMERGENCE_DAYS: Readonly<Record<string, readonly (readonly [degC: number, days: number])[]>> = {
  'Onion, bulb': [
    [0, 136],
    [5, 31],
    [10, 13],
    [15, 7],
    [20, 5],
    [25, 4],
  ],
  'Lettuce, head': [
    [0, 49],
    [5, 15],
    [10, 7],
    [15, 4],
    [20, 3],
    [25, 2],
  ],
  Carrot: [
    [5, 51],
    [10, 17],
    [15, 10],
    [20, 7],
    [25, 6],
  ],
  Beet: [
    [5, 42],
    [10, 17],
    [15, 10],
    [20, 6],
    [25, 5],
  ],
  Spinach: [
    [0, 63],
    [5, 23],
    [10, 12],
    [15, 7],
    [20, 6],
    [25, 5],
  ],
  Tomato: [
    [10, 43],
    [15, 14],
    [20, 8],
    [25, 6],
  ],
  Cucumber: [
    [15, 13],
    [20, 6],
    [25, 4],
  ],
  'Pepper, sweet': [
    [15, 25],
    [20, 13],
    [25, 8],
  ],
};

/** Density (plants per m2) and mean mass (g) of Purnong onions. Source: Ratkowsky 1983, Nonlinear Regression Modeling, p. 58. */
export const PURNONG_ONIONS: readonly (readonly [density: number, grams: number])[] = [
  [23.48, 223.02],
  [26.22, 234.24],
  [42.66, 168.12],
  [62.63, 125.3],
  [101.38, 97.2],
  [184.75, 54.68],
];
