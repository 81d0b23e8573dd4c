// Plantings, second part: how close the plants stand, what they weigh and yield, and the sizes of the bulbs. plantings.ts
// puts the parts together.

import {
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_UPPER,
  LEFT_WHEN_LATE,
  LOST_A_WEEK_LATE,
  WINTER_LEAF_LEAST,
} from '../engine/index.ts';
import {
  AREA,
  computed,
  DENSITY,
  group,
  MASS,
  PLAIN,
  PLANT_MASS,
  SHARE,
  SIZE,
  withDefault,
  YIELD,
} from './authoring.ts';

const CROP = '[Variety].[Crop]';

/** The end of the densities known for a crop, or so many times its usual one. */
function known(column: string, times: number): string {
  return `IF(ISBLANK(${CROP}.[${column}]); ${CROP}.[Usual density] * ${times}; ${CROP}.[${column}])`;
}

/**
 * Left out of the leaf that an onion grows once the days are long enough, while it is still too small to bulb: the best light goes by
 * meanwhile. Were all of it counted, seed in the bed lost nothing by a late sowing, where 6 to 7 % a week is published (Brewster 2008,
 * Table 4.2); so it is 2 to 5 % in April at 52 N (a judgement).
 */
const LATE_LEAF = '50%';
const LATE_GROWTH = `WARMTHBETWEEN(MAX([Up]; [Days long enough]); [Bulbing starts]; ${LEAF_GROWTH_BASE} degC; ${LEAF_GROWTH_UPPER} degC; Climate[Day]; Climate[Mean])`;

/**
 * What is left of an onion's yield by the weeks that it goes into the bed after the days are long enough, sown or set. Before that
 * the leaf it has when it bulbs says what a week is worth.
 */
const LATENESS = `MAX(${LEFT_WHEN_LATE}; 1 - ${LOST_A_WEEK_LATE} * MAX(0 days; [Planted out] - [Long days begin]) / 7 days)`;
const LOST_A_WEEK = `${(100 * LOST_A_WEEK_LATE).toFixed(1)}%`;

/** What one plant weighs at a density. */
export function massAt(density: string): string {
  return `PLANTMASS(${density}; [Variety].[Isolated plant mass]; [Variety].[Ceiling yield])
    * SQUARENESS([Rectangularity]; [Squareness loss]) * [Clump factor] * [Season factor]`;
}

/** The end of a band of sizes. */
export function limit(grade: string, end: 'From' | 'To'): string {
  return `XLOOKUP("${grade}"; 'Size grades'[Grade]; 'Size grades'[${end}])`;
}

function share(of: 'GRADESHARE' | 'GRADEMASSSHARE', grade: string): string {
  return `${of}([Mean diameter]; [Diameter spread]; ${limit(grade, 'From')}; ${limit(grade, 'To')})`;
}

function shareColumn(id: string, name: string, grade: string) {
  return computed(id, name, SHARE, share('GRADESHARE', grade), { decimals: 1 });
}

function massColumn(id: string, name: string, grade: string) {
  return computed(
    id,
    name,
    MASS,
    `IF([Share of saleable size] > 0; [Marketable yield] * ${share('GRADEMASSSHARE', grade)} / [Share of saleable size])`,
    { decimals: 1 },
  );
}

export const SPACE_COLUMNS = [
  ...group(
    'Space and yield',
    computed(
      'plants-standing',
      'Plants standing',
      PLAIN,
      '[Stations] * [Plants per station] * [Field survival] * IF([Start] = "direct seed"; 1 - [Empty stations]; 1)',
      { note: 'At harvest, bulbs in clumps counted one by one.', decimals: 0 },
    ),
    computed('ground-area', 'Ground area', AREA, `[Bed area] * MAX(1; ${CROP}.[Beds across])`, {
      note: 'A crop that spreads over more than a bed takes the ground of all it covers.',
      decimals: 1,
    }),
    computed('plant-density', 'Plant density', DENSITY, '[Plants standing] / [Ground area]', {
      note: 'Of the ground it takes, paths left out.',
      decimals: 2,
    }),
    computed('least-known-density', 'Least known density', DENSITY, known('Density least', 0.5), {
      note: 'Of the trials behind the curve, or half the usual density.',
      decimals: 2,
    }),
    computed('most-known-density', 'Most known density', DENSITY, known('Density most', 2), {
      note: 'Of the trials behind the curve, or twice the usual density.',
      decimals: 2,
    }),
    computed('rectangularity', 'Rectangularity', PLAIN, 'RECTANGULARITY([Row spacing]; [In-row spacing])', {
      note: 'Longer spacing over shorter; 1 is square.',
      decimals: 2,
    }),
    withDefault(
      'squareness-loss',
      'Squareness loss',
      SHARE,
      'IF(ISBLANK([Variety].[Crop].[Squareness loss]); 0%; [Variety].[Crop].[Squareness loss])',
      {
        note: 'Yield lost where rows stand eight times as far apart as plants in them.',
        decimals: 1,
        least: 0,
        most: 100,
      },
    ),
    withDefault('clump-factor', 'Clump factor', SHARE, '100%', {
      note: 'Your own: what clumps weigh against singles at the same density.',
      decimals: 0,
      least: 1,
      most: 300,
    }),
    withDefault(
      'season-factor',
      'Season factor',
      SHARE,
      `IF(AND([Variety].[Bulb crop]; NOT(ISBLANK([Leaf growth at bulbing]))); BULBLIGHT([Leaf growth at bulbing] - ${LATE_LEAF} * ${LATE_GROWTH})
        * MAX(0%; MIN(100%; [Leaf growth at winter] / ${WINTER_LEAF_LEAST} degC day)) * ${LATENESS}; 100%)`,
      {
        note: `Onions: by the leaf they have when bulbs start, ${LATE_LEAF} of what grows after the days are long enough left out, and less as they are short of the size for winter (both a judgement); ${LOST_A_WEEK} a week after Long days begin. Other crops lose to the season by what finishes, not by size.`,
        decimals: 0,
        least: 0,
        most: 200,
      },
    ),
    computed('mean-plant-mass', 'Mean plant mass', PLANT_MASS, massAt('[Plant density]'), {
      note: '1/mass = 1/isolated mass + density/ceiling yield (Shinozaki & Kira), less for far from square and for a poor season.',
      decimals: 2,
    }),
    computed('total-yield', 'Total yield', MASS, 'IF([Finishes] > 0; [Plants standing] * [Mean plant mass])', {
      note: 'Blank where nothing comes to harvest: see No harvest because.',
      decimals: 1,
    }),
    withDefault('marketable-share', 'Marketable share', SHARE, '[Variety].[Crop].[Marketable share]', {
      decimals: 0,
      least: 0,
      most: 100,
    }),
    computed(
      'share-of-saleable-size',
      'Share of saleable size',
      SHARE,
      `IF(OR(ISBLANK([Mean diameter]); ISBLANK(${limit('small', 'From')})); 100%;
        1 - GRADEMASSSHARE([Mean diameter]; [Diameter spread]; ; ${limit('small', 'From')}))`,
      {
        note: 'By mass, of bulbs no smaller than the smallest grade: tight spacings lose by it. 100 % for other crops.',
        decimals: 0,
      },
    ),
    computed(
      'marketable-if-all-is-picked',
      'Marketable if all is picked',
      MASS,
      '[Total yield] * [Marketable share] * [Share of saleable size]',
      {
        note: 'Were the whole of it to finish and to be picked to the end.',
        decimals: 1,
      },
    ),
    computed(
      'marketable-yield',
      'Marketable yield',
      MASS,
      'IF([Finishes] > 0; [Marketable if all is picked] * [Finishes] * (1 - [Window lost]))',
      {
        range: { low: 'marketable-yield-low', high: 'marketable-yield-high' },
        note: 'What finishes and is picked before the cold; blank where none does: see No harvest because.',
        decimals: 1,
      },
    ),
    computed(
      'marketable-yield-low',
      'Marketable yield low',
      MASS,
      `[Marketable yield] * ${CROP}.[Yield low] / ${CROP}.[Yield] * IF([Finishes] < 1; [Finishes]; 1)`,
      { note: "By the crop's lowest yield; lower still where it barely finishes.", decimals: 1 },
    ),
    computed(
      'marketable-yield-high',
      'Marketable yield high',
      MASS,
      `[Marketable yield] * ${CROP}.[Yield high] / ${CROP}.[Yield]`,
      { note: "By the crop's highest yield.", decimals: 1 },
    ),
    computed(
      'pieces',
      'Pieces',
      PLAIN,
      `IF(ISBLANK(${CROP}.[Plants per harvest unit]); IF(OR(${CROP}.[Harvest unit] <> "weight"; NOT(ISBLANK([Price each]))); [Marketable yield] / ${CROP}.[Unit mass]);
        IF([Finishes] > 0; [Plants standing] * [Marketable share] * (1 - MAX(0%; [Share under size])) * [Finishes] * (1 - [Window lost])
          / IF(${CROP}.[Harvest unit] = "bunch"; ${CROP}.[Plants per harvest unit]; MAX(1; ${CROP}.[Plants per harvest unit]))))`,
      {
        note: 'Heads, bulbs, roots or bunches from the plants that stand and sell; fruit by its usual mass.',
        decimals: 0,
      },
    ),
    computed('mass-of-a-piece', 'Mass of a piece', PLANT_MASS, '[Marketable yield] / [Pieces]', {
      note: 'From the yield; side shoots of heads counted in.',
      decimals: 1,
    }),
    computed('yield-per-bed-area', 'Yield per bed area', YIELD, '[Total yield] / [Ground area]', {
      note: 'Of the ground it takes.',
      decimals: 2,
    }),
  ),
  ...group(
    'Bulb sizes',
    withDefault('diameter-spread', 'Diameter spread', SHARE, '[Variety].[Crop].[Diameter spread]', {
      note: 'Standard deviation over mean; 10 to 18 % in onions.',
      decimals: 0,
      least: 0,
      most: 30,
    }),
    computed(
      'mean-diameter',
      'Mean diameter',
      SIZE,
      'IF([Finishes] > 0; BULBDIAMETER([Mean plant mass]; [Diameter spread]; [Variety].[Shape factor]))',
      {
        decimals: 2,
      },
    ),
    computed(
      'share-under-size',
      'Share under size',
      SHARE,
      `IF(ISBLANK(${limit('small', 'From')}); 0%; GRADESHARE([Mean diameter]; [Diameter spread]; ; ${limit('small', 'From')}))`,
      {
        note: 'By number, below the small band.',
        decimals: 1,
      },
    ),
    shareColumn('share-small', 'Share small', 'small'),
    shareColumn('share-medium', 'Share medium', 'medium'),
    shareColumn('share-large', 'Share large', 'large'),
    shareColumn('share-extra-large', 'Share extra large', 'extra large'),
    massColumn('mass-small', 'Mass small', 'small'),
    massColumn('mass-medium', 'Mass medium', 'medium'),
    massColumn('mass-large', 'Mass large', 'large'),
    massColumn('mass-extra-large', 'Mass extra large', 'extra large'),
  ),
];
