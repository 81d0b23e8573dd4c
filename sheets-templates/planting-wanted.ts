// Plantings, what is wanted of it: from which date and how much, and the plants, places and length of bed that gives it, as
// surely as the farm's confidence. Reckoned from the spacing alone, so that the bed length can follow from it.
// planting-stand.ts puts the part in its place.

import {
  computed,
  DATE,
  DENSITY,
  entered,
  group,
  LENGTH,
  link,
  MASS,
  PLAIN,
  PLANT_MASS,
  SHARE,
  SIZE,
  TEXT,
} from './authoring.ts';
import { limit, massAt } from './planting-space.ts';

const CROP = '[Variety].[Crop]';

export const WANTED_COLUMNS = group(
  'Wanted',
  entered('wanted-from', 'Wanted from', DATE, {
    note: 'First day it is to be for sale; the dates follow where you type none.',
  }),
  entered('wanted', 'Wanted', MASS, {
    note: 'For sale in all, cured where it is cured; 60 heads or 40 bunches go to Wanted pieces.',
    decimals: 1,
    least: 0,
    orElse: 'wanted-pieces',
  }),
  entered('wanted-pieces', 'Wanted pieces', PLAIN, { note: 'Heads, bunches, bulbs or fruit.', decimals: 0, least: 0 }),
  entered('succession', 'Succession', link('successions'), { note: 'The succession it was laid for.' }),
  entered('as-laid', 'As laid', TEXT, {
    note: 'What was typed here when the succession was laid. Clear it, or change anything typed, and the planting stays as it is.',
  }),
  computed('expected', 'Expected', MASS, 'IF(ISBLANK([Cured yield]); [Marketable yield]; [Cured yield])', {
    note: 'For sale.',
    range: { low: 'expected-low', high: 'expected-high' },
    decimals: 1,
  }),
  computed('expected-low', 'Expected low', MASS, '[Expected] * [Marketable yield low] / [Marketable yield]', {
    decimals: 1,
  }),
  computed('expected-high', 'Expected high', MASS, '[Expected] * [Marketable yield high] / [Marketable yield]', {
    decimals: 1,
  }),
  computed('expected-pieces', 'Expected pieces', PLAIN, '[Pieces]', { decimals: 0 }),
);

export const WANTED_LENGTH_COLUMNS = group(
  'For the amount wanted',
  computed(
    'density-by-spacing',
    'Density by spacing',
    DENSITY,
    `[Plants per station] * [Field survival] * IF([Start] = "direct seed"; 1 - [Empty stations]; 1)
      / ([Row spacing] * [In-row spacing] * MAX(1; ${CROP}.[Beds across]))`,
    { note: 'Plants at harvest, whatever the length.', decimals: 2 },
  ),
  computed('plant-mass-by-spacing', 'Plant mass by spacing', PLANT_MASS, massAt('[Density by spacing]'), {
    decimals: 2,
  }),
  computed(
    'diameter-by-spacing',
    'Diameter by spacing',
    SIZE,
    'BULBDIAMETER([Plant mass by spacing]; [Diameter spread]; [Variety].[Shape factor])',
    { note: 'Of bulbs and roots whose size counts.', decimals: 2 },
  ),
  computed(
    'under-size-by-spacing',
    'Under size by spacing',
    SHARE,
    `IF(OR(ISBLANK([Diameter by spacing]); ISBLANK(${limit('small', 'From')})); 0%; GRADESHARE([Diameter by spacing]; [Diameter spread]; ; ${limit('small', 'From')}))`,
    { note: 'By number, below the small band.', decimals: 1 },
  ),
  computed(
    'saleable-by-spacing',
    'Saleable by spacing',
    SHARE,
    `IF(OR(ISBLANK([Diameter by spacing]); ISBLANK(${limit('small', 'From')})); 100%; 1 - GRADEMASSSHARE([Diameter by spacing]; [Diameter spread]; ; ${limit('small', 'From')}))`,
    { note: 'By mass, no smaller than the small band.', decimals: 1 },
  ),
  computed(
    'sold-share',
    'Sold share',
    SHARE,
    'IF([Finishes] > 0; [Marketable share] * [Finishes] * (1 - [Window lost]))',
    { note: 'Of the plants that stand.', decimals: 0 },
  ),
  computed(
    'sold-a-plant',
    'Sold a plant',
    PLANT_MASS,
    `[Plant mass by spacing] * [Sold share] * [Saleable by spacing] * IF(ISBLANK(${CROP}.[Curing days]); 1; 1 - ${CROP}.[Curing loss])`,
    { note: 'What one plant that stands gives for sale, on average.', decimals: 2 },
  ),
  computed(
    'plants-wanted',
    'Plants wanted',
    PLAIN,
    `IF(ISBLANK([Wanted pieces]); [Wanted] / [Sold a plant]; IF(ISBLANK(${CROP}.[Plants per harvest unit]); [Wanted pieces] * ${CROP}.[Unit mass] / [Sold a plant];
      [Wanted pieces] * IF(${CROP}.[Harvest unit] = "bunch"; ${CROP}.[Plants per harvest unit]; MAX(1; ${CROP}.[Plants per harvest unit])) / ([Sold share] * (1 - [Under size by spacing]))))`,
    { note: 'To stand at harvest.', decimals: 0 },
  ),
  computed(
    'places-wanted',
    'Places wanted',
    PLAIN,
    `ROUNDUP(BLOCKSNEEDED([Plants wanted]; [Field survival]; Farm[Confidence])
      / ([Plants per station] * IF([Start] = "direct seed"; 1 - [Empty stations]; 1)); 0)`,
    { note: "So that, as surely as the farm's confidence, as many plants stand.", decimals: 0 },
  ),
  computed(
    'length-wanted',
    'Length wanted',
    LENGTH,
    `ROUNDUP(([Places wanted] + IF([Pattern] = "offset"; ROUNDDOWN([Rows] / 2; 0); 0)) / [Rows]; 0) * [In-row spacing]`,
    { note: 'Of bed.', decimals: 1 },
  ),
);
