// The Seed lots sheet: seed on hand, how it has aged, and whether to use, test or replace it. Reads Farm, Varieties, Crops
// and the sowing dates of Plantings.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  DAYS,
  entered,
  group,
  link,
  PLAIN,
  SEED_MASS,
  SHARE,
  TEMPERATURE,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

const VIABILITY = `SEEDVIABILITY([Germination when tested]; [Age at sowing]; [Moisture]; [Store temperature];
  [Variety].[Crop].[KE]; [Variety].[Crop].[CW]; [Variety].[Crop].[CH]; [Variety].[Crop].[CQ])`;

const STORAGE_LIFE = 'SEEDLIFE([Germination when tested]; [Age at sowing]; [Variety].[Crop].[Seed life])';

/** Germination at sowing if the store was worse or better than told. */
function ranged(end: 'low' | 'high'): string {
  const sign = end === 'low' ? '+' : '-';
  const times = end === 'low' ? '4/3' : '2/3';
  return `IF(ISBLANK([Ages from]); [Germination when tested]; IF([Method] = "viability equation";
    SEEDVIABILITY([Germination when tested]; [Age at sowing]; MAX(5%; MIN(25%; [Moisture] ${sign} 1%)); [Store temperature] ${sign} 3 Cdeg;
      [Variety].[Crop].[KE]; [Variety].[Crop].[CW]; [Variety].[Crop].[CH]; [Variety].[Crop].[CQ]);
    SEEDLIFE([Germination when tested]; [Age at sowing] * ${times}; [Variety].[Crop].[Seed life])))`;
}

export const seedLotsSheet: SheetDeclaration = {
  id: 'seed-lots',
  name: 'Seed lots',
  question: 'Seed',
  about:
    'Seed left from earlier years. Ageing is reckoned to the first sowing that names the lot; a germination test of your own beats any reckoning.',
  rows: { from: 'entry' },
  key: 'lot',
  columns: [
    ...group(
      'Lot',
      entered('lot', 'Lot', TEXT, { required: true }),
      entered('variety', 'Variety', link('varieties'), { required: true }),
      entered('quantity', 'Quantity', PLAIN, {
        note: 'Seeds; a weight typed here goes to Weight.',
        decimals: 0,
        least: 0,
        orElse: 'weight',
      }),
      entered('weight', 'Weight', SEED_MASS, { least: 0 }),
      computed(
        'seeds-in-lot',
        'Seeds in lot',
        PLAIN,
        'IF(ISBLANK([Quantity]); ROUNDDOWN([Weight] * [Variety].[Crop].[Seeds per gram]; 0); [Quantity])',
        {
          note: "By weight: from the crop's seeds per gram.",
          decimals: 0,
        },
      ),
    ),
    ...group(
      'Test',
      withDefault('germination-when-tested', 'Germination when tested', SHARE, '[Variety].[Germination]', {
        note: 'As the label or your own test says.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      entered('tested-on', 'Tested on', DATE),
      withDefault('packed-on', 'Packed on', DATE, '[Tested on]', { note: 'When the seed was harvested or packed.' }),
    ),
    ...group(
      'Store',
      withDefault('store-temperature', 'Store temperature', TEMPERATURE, 'Farm[Seed store temperature]'),
      withDefault('store-humidity', 'Store humidity', SHARE, 'Farm[Seed store humidity]', {
        decimals: 0,
        least: 0,
        most: 100,
      }),
      entered('moisture-content', 'Moisture content', SHARE, {
        note: 'Measured, of fresh weight; blank is reckoned.',
        least: 0,
        most: 100,
      }),
      computed(
        'moisture-at-equilibrium',
        'Moisture at equilibrium',
        SHARE,
        'SEEDMOISTURE([Store humidity]; [Store temperature]; [Variety].[Crop].[Seed oil])',
        {
          note: 'What the seed settles at in the air of its store.',
          decimals: 1,
        },
      ),
      computed(
        'moisture',
        'Moisture',
        SHARE,
        'IF(ISBLANK([Moisture content]); [Moisture at equilibrium]; [Moisture content])',
        {
          note: 'The figure used.',
          decimals: 1,
        },
      ),
    ),
    ...group(
      'At sowing',
      withDefault(
        'sowing-date',
        'Sowing date',
        DATE,
        `IF(COUNTIFS(Plantings[Seed lot]; [Lot]) > 0; MINIFS(Plantings[Sown]; Plantings[Seed lot]; [Lot]);
          IF(AND(NOT(ISBLANK(Farm[Latitude])); Farm[Latitude] < 0); DATE(Farm[Season]; 9; 1); DATE(Farm[Season]; 3; 1)))`,
        { note: 'First sowing that names this lot, else early spring.' },
      ),
      computed('ages-from', 'Ages from', DATE, 'IF(ISBLANK([Tested on]); [Packed on]; [Tested on])', {
        note: 'The test, or where nothing was tested the packing.',
      }),
      computed('age-at-sowing', 'Age at sowing', DAYS, 'MAX(0 days; [Sowing date] - [Ages from])', {
        note: 'Since the test or the packing.',
        decimals: 0,
      }),
      computed('by-viability-equation', 'By viability equation', SHARE, VIABILITY, {
        note: 'Where the crop has constants.',
        decimals: 0,
      }),
      computed('by-storage-life', 'By storage life', SHARE, STORAGE_LIFE, { note: 'The rule of years.', decimals: 0 }),
      computed(
        'method',
        'Method',
        TEXT,
        `IF(ISBLANK([Ages from]); "as tested, age unknown";
          IF(ISBLANK([Variety].[Crop].[KE]); "storage life";
            IF(ISERROR([By viability equation]); "storage life: the store is outside the range of the viability equation";
              IF(ISBLANK([By viability equation]); "storage life: moisture unknown"; "viability equation"))))`,
      ),
      computed(
        'germination-at-sowing',
        'Germination at sowing',
        SHARE,
        `IF(ISBLANK([Ages from]); [Germination when tested];
          IF([Method] = "viability equation"; [By viability equation]; [By storage life]))`,
        { range: { low: 'germination-at-sowing-low', high: 'germination-at-sowing-high' }, decimals: 0 },
      ),
      computed('germination-at-sowing-low', 'Germination at sowing low', SHARE, ranged('low'), {
        note: 'In a store three degrees warmer and a point damper than told, or of seed that keeps a third shorter (a judgement).',
        decimals: 0,
      }),
      computed('germination-at-sowing-high', 'Germination at sowing high', SHARE, ranged('high'), {
        note: 'In a store cooler and drier by as much, or of seed that keeps a third longer.',
        decimals: 0,
      }),
      computed(
        'old-onion-seed',
        'Old onion seed',
        YES_OR_NO,
        'AND([Variety].[Crop].[Family] = "Amaryllidaceae"; OR(ISBLANK([Packed on]); [Sowing date] - [Packed on] > 365 days))',
        { note: 'Onion family, older than a year by the sowing or of unknown age.' },
      ),
      computed(
        'standard',
        'Standard',
        SHARE,
        'IF(ISBLANK([Variety].[Crop].[Germination standard]); 60%; [Variety].[Crop].[Germination standard])',
        {
          note: 'Least germination for seed sold in the United States; 60 % where none is set.',
          decimals: 0,
        },
      ),
      computed(
        'advice',
        'Advice',
        choice('use', 'use first', 'retest', 'replace'),
        `IF(ISBLANK([Germination at sowing]); "retest";
          IF([Germination at sowing] < [Standard] - 20%; "replace";
            IF([Germination at sowing] < [Standard]; IF([Old onion seed]; "replace"; "retest");
              IF([Old onion seed]; IF(AND(NOT(ISBLANK([Tested on])); [Age at sowing] <= 183 days); "use first"; "retest");
                IF(OR(ISBLANK([Packed on]); [Sowing date] - [Packed on] > 365 days); "use first"; "use")))))`,
      ),
      computed('flagged', 'Flagged', YES_OR_NO, 'OR([Advice] = "replace"; [Advice] = "retest")', {
        note: 'Old, poor or of unknown age: left out of the count until you say otherwise.',
      }),
      withDefault('count-it', 'Count it', YES_OR_NO, 'NOT([Flagged])', {
        note: 'Say yes to count a flagged lot as on hand, no to leave a sound one out.',
      }),
      computed('usable-seeds', 'Usable seeds', PLAIN, 'IF([Count it]; [Seeds in lot]; 0)', {
        note: 'Counted as on hand in Seed order.',
        decimals: 0,
      }),
      computed(
        'seeds-spoken-for',
        'Seeds spoken for',
        PLAIN,
        'SUMIFS(Plantings[Seeds needed]; Plantings[Seed lot]; [Lot])',
        {
          note: 'By the plantings that name this lot.',
          decimals: 0,
        },
      ),
    ),
  ],
  checks: [
    {
      id: 'old-onion-seed',
      name: 'Old onion seed',
      level: 'warning',
      column: 'packed-on',
      says: 'IF([Old onion seed]; "Onion-family seed older than a year by the sowing date: whatever the reckoning says, test it on damp paper or buy new.")',
    },
    {
      id: 'below-standard',
      name: 'Below standard',
      level: 'warning',
      column: 'germination-at-sowing',
      says: 'IF([Germination at sowing] < [Standard]; "Below the least germination for seed sold in the United States (7 CFR 201.31): test it, sow thicker, or replace it.")',
    },
    {
      id: 'age-unknown',
      name: 'Age unknown',
      level: 'note',
      column: 'tested-on',
      says: 'IF(ISBLANK([Ages from]); "Enter when it was tested or packed: its ageing is not reckoned without the date.")',
    },
    {
      id: 'too-little-for-its-plantings',
      name: 'Too little for its plantings',
      level: 'warning',
      column: 'seeds-spoken-for',
      says: 'IF([Seeds spoken for] > [Seeds in lot]; "The plantings that name this lot need more seeds than it holds.")',
    },
    {
      id: 'on-hand-but-not-planned',
      name: 'On hand but not planned',
      level: 'note',
      column: 'seeds-spoken-for',
      says: 'IF(AND([Usable seeds] > 0; [Seeds spoken for] = 0); "Counted as on hand, but no planting names it: name it in Plantings so that its germination is reckoned with.")',
    },
  ],
  cautions: ['Old seed can carry treatments that are no longer allowed: read the label, and never feed it.'],
};
