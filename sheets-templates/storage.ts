// The sheets of storing: Stored lots, a row a planting that keeps, in the store that suits it best; Stores by week and Storage,
// what goes in, is lost, sold and left, in each store and in all. Reads Plantings, Crops, Stores and Lots by week.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  DAYS,
  group,
  link,
  MASS,
  made,
  mondayOf,
  PLAIN,
  SHARE,
  TEMPERATURE,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';
import { BEST_TO } from './stores.ts';

const CROP = '[Planting].[Variety].[Crop]';
const RIGHT = '"The store is at the temperature this crop keeps best at; the humidity is right."';

/** Names of the lots in the same store at the same time that do something to this one. */
function neighbours(what: string): string {
  return `NAMESIFS('Stored lots'[${what}]; 'Stored lots'[Store]; [Store]; 'Stored lots'[Stored on]; "<=" & [Keeps until];
      'Stored lots'[Keeps until]; ">=" & [Stored on])`;
}

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
  name: 'Stored lots',
  question: 'Storing',
  about:
    'Every planting that goes into store: which store suits it best, how long it keeps, what is lost by the month, what it must not stand with. Crops that keep less than a month are left out.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: '[Planting].[Goes into store]',
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
        note: 'All of it; what outlets take before it goes into store is in Lots by week.',
        decimals: 1,
        least: 0,
      }),
    ),
    ...group(
      'Store',
      computed(
        'fewest-points',
        'Fewest points',
        PLAIN,
        `MINIFS('Lots and stores'[Points]; 'Lots and stores'[Planting]; [Planting])`,
        { note: 'Of the stores against its best temperature and humidity.', decimals: 1 },
      ),
      withDefault(
        'store',
        'Store',
        link('stores'),
        `FIRSTIFS('Lots and stores'[Store]; 'Lots and stores'[Planting]; [Planting]; 'Lots and stores'[Points]; [Fewest points])`,
        { note: 'The one that suits it best.' },
      ),
      withDefault('store-temperature', 'Store temperature', TEMPERATURE, '[Store].[Temperature]', {
        decimals: 1,
      }),
      withDefault('store-humidity', 'Store humidity', SHARE, '[Store].[Humidity]', {
        decimals: 0,
        least: 0,
        most: 100,
      }),
      withDefault('best-from', 'Best from', TEMPERATURE, `${CROP}.[Storage temperature]`, { decimals: 1 }),
      withDefault('best-to', 'Best to', TEMPERATURE, BEST_TO, {
        note: 'Onions: growers keep them at 3 to 4 degC (common practice); published best is 0 degC.',
        decimals: 1,
      }),
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
      computed('keeps-until', 'Keeps until', DATE, 'KEEPSUNTIL([Stored on]; [Keeps])', {
        range: { low: 'keeps-until-low', high: 'keeps-until-high' },
      }),
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
      'With the others',
      computed('gives-off-gas', 'Gives off gas', TEXT, `IF(${CROP}.[Ripening gas] = "gives off"; [Crop])`),
      computed('harmed-by-gas', 'Harmed by gas', YES_OR_NO, `${CROP}.[Ripening gas] = "harmed by"`),
      computed('gives-off-smell', 'Gives off smell', TEXT, `IF(${CROP}.[Smell] = "gives off"; [Crop])`),
      computed('takes-on-smell', 'Takes on smell', YES_OR_NO, `${CROP}.[Smell] = "takes on"`),
      computed('harmed-here-by', 'Harmed here by', TEXT, `IF([Harmed by gas]; ${neighbours('Gives off gas')})`, {
        note: 'What ripens beside it in the same store at the same time.',
      }),
      computed('smells-here-of', 'Smells here of', TEXT, `IF([Takes on smell]; ${neighbours('Gives off smell')})`, {
        note: 'What it would take the smell of.',
      }),
    ),
    ...group(
      'Selling',
      computed(
        'sell-in-place',
        'Sell in place',
        PLAIN,
        `1 + COUNTIFS('Stored lots'[Keeps until]; "<" & [Keeps until])`,
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
    {
      id: 'ripens-beside-it',
      name: 'Ripens beside it',
      level: 'warning',
      column: 'store',
      says: 'IF(NOT(ISBLANK([Harmed here by])); "It stands with " & [Harmed here by] & ", whose ripening gas spoils it: keep them in different stores.")',
    },
    {
      id: 'takes-on-a-smell',
      name: 'Takes on a smell',
      level: 'note',
      column: 'store',
      says: 'IF(NOT(ISBLANK([Smells here of])); "It stands with " & [Smells here of] & " and takes on the smell: keep them apart if they stay for more than some days.")',
    },
    {
      id: 'does-not-keep-so-long',
      name: 'Does not keep so long',
      level: 'note',
      column: 'keeps-until',
      says: `IF(AND(Budget[Lines of demand] > 0; SUMIFS(Lots[Lost]; Lots[Planting]; [Planting]) > 25% * [Stored mass]); "A quarter or more of it is lost unsold or past its life: sell it earlier, find another outlet, or grow less.")`,
    },
  ],
  cautions: [
    'Sort every few weeks: one rotten bulb or root takes its neighbours. Rotten, slimy or mouldy produce is not sold.',
    'Breathable containers, off the floor, with air around them. Keep apples and other ripening fruit away.',
    'Close off no cold store with a person in it: the door must open from inside.',
    'Full crates are heavy: lift with a straight back, share the load, stack no higher than stands safely.',
  ],
};

/** Of a store in a week, over its lots. */
function inStore(column: string): string {
  return `SUM(SUMIFS('Lots by week'[${column}]; 'Lots by week'[Store]; [Store]; 'Lots by week'[Week]; [Week]))`;
}

export const storesByWeekSheet: SheetDeclaration = {
  id: 'stores-by-week',
  name: 'Stores by week',
  question: 'Storing',
  about: 'Each store week by week: what comes in, what is lost, sold and left, how full it is and what must go first.',
  rows: {
    from: 'pairs',
    sheets: ['stores', 'weeks'],
    as: [made('store', 'Store'), made('week', 'Week')],
    where: `COUNTIFS('Lots by week'[Store]; [Store]; 'Lots by week'[Week]; [Week]) > 0`,
  },
  columns: [
    ...group(
      'Store',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('from-before', 'From before', MASS, inStore('From before'), { decimals: 0 }),
      computed('in', 'In', MASS, inStore('In'), { decimals: 0 }),
      computed('sold', 'Sold', MASS, inStore('Sold'), { decimals: 0 }),
      computed('lost', 'Lost', MASS, inStore('Lost'), { decimals: 1 }),
      computed('left', 'Left', MASS, inStore('Left'), { note: 'At the end of the week.', decimals: 0 }),
      computed('room', 'Room', MASS, '[Store].[Room]', { decimals: 0 }),
      computed('full', 'Full', SHARE, '([From before] + [In]) / [Room]', { decimals: 0 }),
      computed(
        'first-to-go',
        'First to go',
        DATE,
        `MINIFS('Lots by week'[Keeps until]; 'Lots by week'[Store]; [Store]; 'Lots by week'[Week]; [Week]; 'Lots by week'[Left]; ">0 kg")`,
        { note: 'Of what is left, the one with the shortest time: it keeps until then.' },
      ),
      computed(
        'goes-first',
        'Goes first',
        TEXT,
        `FIRSTIFS('Lots by week'[Lot name]; 'Lots by week'[Store]; [Store]; 'Lots by week'[Week]; [Week]; 'Lots by week'[Keeps until]; [First to go])`,
      ),
      computed(
        'look-through-on',
        'Look through on',
        DATE,
        `IF(AND([Left] > 0 kg; MOD(ROUND(([Week starts] - Farm[Season starts]) / 7 days; 0); 4) = 0); [Week starts] + 2 days)`,
        { note: 'Every fourth week while anything is in it.' },
      ),
    ),
  ],
  checks: [
    {
      id: 'store-full',
      name: 'Store full',
      level: 'warning',
      column: 'full',
      says: 'IF([From before] + [In] > [Room]; "More is in this store this week than it holds: sell earlier, or find more room.")',
    },
  ],
  cautions: [],
};

/** Of a week, over all stores. */
function inAllStores(column: string): string {
  return `SUM(SUMIFS('Stores by week'[${column}]; 'Stores by week'[Week starts]; [Monday]))`;
}

export const storeByWeekSheet: SheetDeclaration = {
  id: 'store-by-week',
  name: 'Storage',
  question: 'Storing',
  about: 'All stores together week by week: what comes in, what is lost, sold and left, and what must be sold first.',
  rows: {
    from: 'span',
    first: mondayOf('Farm[Season starts]'),
    last: 'Farm[Weeks until]',
    step: 'week',
    as: made('week', 'Week'),
  },
  columns: [
    ...group(
      'Store',
      computed('monday', 'Monday', DATE, '[Week]'),
      computed('in', 'In', MASS, inAllStores('In'), { decimals: 0 }),
      computed('sold', 'Sold', MASS, inAllStores('Sold'), { decimals: 0 }),
      computed('left', 'Left', MASS, inAllStores('Left'), {
        note: 'At the end of the week.',
        decimals: 0,
      }),
      computed('lost', 'Lost', MASS, inAllStores('Lost'), { decimals: 1 }),
      computed('capacity', 'Capacity', MASS, `SUMIFS(Stores[Room]; Stores[For]; "keeping")`, { decimals: 0 }),
      computed('capacity-used', 'Capacity used', SHARE, 'IF([Capacity] > 0 kg; [Left] / [Capacity])', { decimals: 0 }),
      computed(
        'first-to-go',
        'First to go',
        DATE,
        `MINIFS('Stores by week'[First to go]; 'Stores by week'[Week starts]; [Monday])`,
        { note: 'It keeps until then.' },
      ),
      computed(
        'sell-first',
        'Sell first',
        TEXT,
        `FIRSTIFS('Stores by week'[Goes first]; 'Stores by week'[Week starts]; [Monday]; 'Stores by week'[First to go]; [First to go])`,
        { note: 'Of the lots in store, the one with the shortest time left.' },
      ),
    ),
  ],
  checks: [],
  cautions: [],
};
