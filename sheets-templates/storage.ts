// The sheets of the store: Storage, a row a planting that keeps, and Store by week, what goes in, is lost, is taken and is
// left. Reads Plantings, Crops and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  DAYS,
  group,
  MASS,
  made,
  PLAIN,
  quantity,
  SHARE,
  TEMPERATURE,
  TEXT,
  withDefault,
} from './authoring.ts';

const CROP = '[Planting].[Variety].[Crop]';
const A_WEEK = quantity('lb/week', 'kg/week');
const LOTS = `Storage[Stored on]; Storage[Stored mass]; Storage[Monthly loss]; Storage[Taken each week]`;
const RIGHT = '"The store is at the temperature this crop keeps best at; the humidity is right."';

function leftAfter(months: number) {
  return computed(
    `left-after-${months}-${months === 1 ? 'month' : 'months'}`,
    `Left after ${months} month${months === 1 ? '' : 's'}`,
    MASS,
    `IF([Keeps] >= ${months} * 30.4 days; STOREDMASS([Stored mass]; [Monthly loss]; ${months} * 30.436875 days))`,
    { note: 'If none is sold; blank past its keeping life.', decimals: 1 },
  );
}

export const storageSheet: SheetDeclaration = {
  id: 'storage',
  name: 'Storage',
  question: 'Harvest',
  about:
    'Every planting that goes into store: whether the store suits it, how long it keeps, what is lost by the month, and in what order to sell. Crops that keep less than a month are left out.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: `AND(NOT(ISBLANK([Planting].[Sold weight])); NOT(ISBLANK([Planting].[Harvest ends])); [Planting].[Variety].[Storage life] >= 30 days)`,
  },
  columns: [
    ...group(
      'In',
      computed('lot', 'Lot', TEXT, '[Planting].[Planting]'),
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      withDefault(
        'stored-on',
        'Stored on',
        DATE,
        'IF(ISBLANK([Planting].[Cured yield]); [Planting].[Harvest ends]; [Planting].[Cured on])',
        { note: 'Cured crops once their necks are dry.' },
      ),
      withDefault('stored-mass', 'Stored mass', MASS, '[Planting].[Sold weight]', {
        note: 'Less where part is sold at once.',
        decimals: 1,
        least: 0,
      }),
    ),
    ...group(
      'Store',
      withDefault('store-temperature', 'Store temperature', TEMPERATURE, 'Farm[Cold store temperature]', {
        decimals: 1,
      }),
      withDefault('store-humidity', 'Store humidity', SHARE, 'Farm[Cold store humidity]', {
        decimals: 0,
        least: 0,
        most: 100,
      }),
      withDefault('best-from', 'Best from', TEMPERATURE, `${CROP}.[Storage temperature]`, { decimals: 1 }),
      withDefault(
        'best-to',
        'Best to',
        TEMPERATURE,
        `IF([Planting].[Variety].[Bulb crop]; MAX(${CROP}.[Storage temperature]; 4 degC); ${CROP}.[Storage temperature])`,
        { note: 'Onions: growers keep them at 3 to 4 degC (common practice); published best is 0 degC.', decimals: 1 },
      ),
      withDefault('best-humidity', 'Best humidity', SHARE, `${CROP}.[Storage humidity]`, {
        decimals: 0,
        least: 0,
        most: 100,
      }),
      computed(
        'store-suits',
        'Store suits',
        TEXT,
        'STOREVERDICT([Store temperature]; [Store humidity]; [Best from]; [Best to]; [Best humidity])',
      ),
    ),
    ...group(
      'Keeping',
      withDefault('keeps', 'Keeps', DAYS, '[Planting].[Variety].[Storage life]', {
        note: 'At its best temperature and humidity.',
        decimals: 0,
        least: 0,
      }),
      computed('keeps-until', 'Keeps until', DATE, 'KEEPSUNTIL([Stored on]; [Keeps])'),
      computed(
        'keeps-until-low',
        'Keeps until low',
        DATE,
        'KEEPSUNTIL([Stored on]; [Keeps] * [Planting].[Variety].[Storage life low] / [Planting].[Variety].[Storage life])',
        { note: 'By the shortest storage life printed for the crop.' },
      ),
      computed(
        'keeps-until-high',
        'Keeps until high',
        DATE,
        'KEEPSUNTIL([Stored on]; [Keeps] * [Planting].[Variety].[Storage life high] / [Planting].[Variety].[Storage life])',
        { note: 'By the longest.' },
      ),
      withDefault(
        'monthly-loss',
        'Monthly loss',
        SHARE,
        `IF(ISBLANK(${CROP}.[Monthly storage loss]); 0%; ${CROP}.[Monthly storage loss])`,
        {
          note: 'Of what is in store.',
          decimals: 1,
          least: 0,
          most: 100,
        },
      ),
      leftAfter(1),
      leftAfter(3),
      leftAfter(6),
    ),
    ...group(
      'Selling',
      withDefault('taken-each-week', 'Taken each week', A_WEEK, 'IF([Keeps] > 7 days; [Stored mass] / [Keeps])', {
        note: 'From the second week; even until it keeps no longer, unless you type otherwise.',
        decimals: 1,
        least: 0,
      }),
      computed(
        'sell-in-place',
        'Sell in place',
        PLAIN,
        'SELLRANK([Keeps until]; [Stored mass]; Storage[Keeps until]; Storage[Stored mass])',
        {
          note: '1 is sold first: the shortest time left.',
          decimals: 0,
        },
      ),
    ),
  ],
  checks: [
    {
      id: 'store-does-not-suit',
      name: 'Store does not suit',
      level: 'note',
      column: 'store-suits',
      says: `IF([Store suits] <> ${RIGHT}; [Store suits])`,
    },
  ],
  cautions: [
    'Sort every few weeks: one rotten bulb or root takes its neighbours. Rotten, slimy or mouldy produce is not sold.',
    'Breathable containers, off the floor, with air around them. Keep apples and other ripening fruit away.',
    'Close off no cold store with a person in it: the door must open from inside.',
    'Full crates are heavy: lift with a straight back, share the load, stack no higher than stands safely.',
  ],
};

export const storeByWeekSheet: SheetDeclaration = {
  id: 'store-by-week',
  name: 'Store by week',
  question: 'Harvest',
  about: 'The store week by week: what comes in, what is lost, taken and left, and what must be sold first.',
  rows: {
    from: 'span',
    first: 'Farm[Season starts]',
    last: 'Farm[Season ends] + 26 weeks',
    step: 'week',
    as: made('week', 'Week'),
  },
  columns: [
    ...group(
      'Store',
      computed(
        'in',
        'In',
        MASS,
        'SUMIFS(Storage[Stored mass]; Storage[Stored on]; ">=" & [Week]; Storage[Stored on]; "<" & ([Week] + 7 days))',
        {
          decimals: 0,
        },
      ),
      computed(
        'taken',
        'Taken',
        MASS,
        `TAKENFROMSTORE([Week] + 6 days; ${LOTS}) - TAKENFROMSTORE([Week] - 1 day; ${LOTS})`,
        {
          decimals: 0,
        },
      ),
      computed('left', 'Left', MASS, `INSTORE([Week] + 6 days; ${LOTS})`, {
        note: 'At the end of the week.',
        decimals: 0,
      }),
      computed('lost', 'Lost', MASS, `MAX(0 kg; INSTORE([Week] - 1 day; ${LOTS}) + [In] - [Taken] - [Left])`, {
        decimals: 1,
      }),
      computed('capacity-used', 'Capacity used', SHARE, '[Left] / Farm[Cold store capacity]', { decimals: 0 }),
      computed(
        'sell-first',
        'Sell first',
        TEXT,
        `SELLFIRST(Storage[Lot]; Storage[Keeps until]; Storage[Stored mass]; Storage[Stored on]; "<=" & ([Week] + 6 days); Storage[Keeps until]; ">=" & [Week])`,
        { note: 'Of the lots in store, the one with the shortest time left.' },
      ),
    ),
  ],
  checks: [
    {
      id: 'store-full',
      name: 'Store full',
      level: 'warning',
      column: 'left',
      says: 'IF([Left] > Farm[Cold store capacity]; "More is in store this week than it holds: sell earlier, or find more room.")',
    },
  ],
  cautions: [],
};
