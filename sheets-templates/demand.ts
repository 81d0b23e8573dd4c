// The sheets of demand: Demand, what an outlet takes over a span of weeks, Demand by week, and Supply against demand: what the
// field and the stores have for it, what is short and over. Reads Outlets, Products, Lots by week and Weeks.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  entered,
  group,
  link,
  MASS,
  MONEY,
  made,
  PLAIN,
  PRICE_BY_WEIGHT,
  SHARE,
  TEXT,
  withDefault,
} from './authoring.ts';

export const demandSheet: SheetDeclaration = {
  id: 'demand',
  name: 'Demand',
  question: 'Selling',
  about:
    'What each outlet takes of each product, from when until when. Type pieces or weight, each time; of share boxes what goes into one.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'Who and what',
      entered('outlet', 'Outlet', link('outlets'), { required: true }),
      entered('product', 'Product', link('products'), { required: true }),
      withDefault('from', 'From', DATE, '[Outlet].[From]'),
      withDefault('until', 'Until', DATE, '[Outlet].[Until]'),
    ),
    ...group(
      'How much',
      entered('in-each-box', 'In each box', PLAIN, {
        note: 'Pieces in one share box.',
        decimals: 1,
        least: 0,
        orElse: 'weight-in-each-box',
      }),
      entered('weight-in-each-box', 'Weight in each box', MASS, { decimals: 2, least: 0 }),
      withDefault('pieces', 'Pieces', PLAIN, '[In each box] * [Outlet].[Boxes]', {
        note: 'Each time, where it is sold by the piece.',
        decimals: 0,
        least: 0,
        orElse: 'weight',
      }),
      withDefault(
        'weight',
        'Weight',
        MASS,
        'IF(NOT(ISBLANK([Weight in each box])); [Weight in each box] * [Outlet].[Boxes]; [Pieces] * [Product].[Weight of one])',
        { note: 'Each time.', decimals: 1, least: 0 },
      ),
    ),
    ...group(
      'Price',
      withDefault('price', 'Price', PRICE_BY_WEIGHT, 'IF([Product].[Sold by] = "weight"; [Product].[Price])', {
        decimals: 2,
        least: 0,
      }),
      withDefault('price-each', 'Price each', MONEY, 'IF([Product].[Sold by] <> "weight"; [Product].[Price each])', {
        decimals: 2,
        least: 0,
      }),
      computed(
        'price-by-weight',
        'Price by weight',
        PRICE_BY_WEIGHT,
        'IF(ISBLANK([Price each]); [Price]; [Price each] / [Product].[Weight of one])',
        { decimals: 2 },
      ),
    ),
    ...group(
      'This season',
      computed(
        'weeks',
        'Weeks',
        PLAIN,
        `COUNTIFS('Demand by week'[Outlet]; [Outlet]; 'Demand by week'[Product]; [Product]; 'Demand by week'[Week starts]; ">=" & ([From] - 6 days); 'Demand by week'[Week starts]; "<=" & [Until])`,
        {
          note: 'In which it is asked for.',
          decimals: 0,
        },
      ),
      entered('note', 'Note', TEXT),
    ),
  ],
  checks: [
    {
      id: 'ends-before-it-begins',
      name: 'Ends before it begins',
      level: 'error',
      column: 'until',
      says: 'IF([Until] < [From]; "It ends before it begins: look at both dates.")',
    },
    {
      id: 'how-much',
      name: 'How much',
      level: 'note',
      column: 'weight',
      says: 'IF(ISBLANK([Weight]); "Enter how much: pieces, or weight, or what goes into each box.")',
    },
    {
      id: 'while-it-is-closed',
      name: 'While it is closed',
      level: 'note',
      column: 'from',
      says: 'IF(AND([From] <= [Until]; OR([From] > [Outlet].[Until]; [Until] < [Outlet].[From])); "The outlet takes nothing in these weeks: look at its dates and these.")',
    },
  ],
  cautions: [],
};

const DEMAND = '[Demand]';

/** Of the product in the week, by whoever is served before, or together with, this one. */
function asked(turn: '<' | '='): string {
  const which = turn === '<' ? '"<" & [Turn]' : '[Turn]';
  return `SUM(SUMIFS('Demand by week'[Weight]; 'Demand by week'[Product]; [Product]; 'Demand by week'[Week]; [Week]; 'Demand by week'[Turn]; ${which}))`;
}

export const demandByWeekSheet: SheetDeclaration = {
  id: 'demand-by-week',
  name: 'Demand by week',
  question: 'Selling',
  about:
    'Who gets what in each week: what is asked for and, where there is less, what is left after those whose turn comes first.',
  rows: {
    from: 'pairs',
    sheets: ['demand', 'weeks'],
    as: [made('demand', 'Demand'), made('week', 'Week')],
    where: `AND([Week].[Ends] >= ${DEMAND}.[From]; [Week].[Week] <= ${DEMAND}.[Until];
    [Week].[Ends] >= ${DEMAND}.[Outlet].[From]; [Week].[Week] <= ${DEMAND}.[Outlet].[Until]; ${DEMAND}.[Weight] > 0 kg;
    MOD(ROUNDDOWN(([Week].[Ends] - ${DEMAND}.[Outlet].[From]) / 7 days; 0); ${DEMAND}.[Outlet].[Weeks between]) = 0)`,
  },
  columns: [
    ...group(
      'Asked for',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('outlet', 'Outlet', link('outlets'), `${DEMAND}.[Outlet]`),
      computed('outlet-name', 'Outlet name', TEXT, '[Outlet].[Outlet]'),
      computed('product', 'Product', link('products'), `${DEMAND}.[Product]`),
      computed('product-name', 'Product name', TEXT, '[Product].[Product]'),
      computed('on', 'On', DATE, '[Week starts] + [Outlet].[Days after Monday] * 1 day'),
      computed('turn', 'Turn', PLAIN, '[Outlet].[Turn]', { decimals: 0 }),
      computed('weight', 'Weight', MASS, `${DEMAND}.[Weight]`, { decimals: 1 }),
      computed('pieces', 'Pieces', PLAIN, `${DEMAND}.[Pieces]`, { decimals: 0 }),
      computed('worth-wanted', 'Worth wanted', MONEY, `[Weight] * ${DEMAND}.[Price by weight]`, { decimals: 2 }),
    ),
    ...group(
      'What it gets',
      computed(
        'there-is',
        'There is',
        MASS,
        `SUM(SUMIFS('Lots by week'[Sold]; 'Lots by week'[Product]; [Product]; 'Lots by week'[Week]; [Week]))`,
        { note: 'Of the product, for all who ask.', decimals: 1 },
      ),
      computed('before-its-turn', 'Before its turn', MASS, asked('<'), { decimals: 1 }),
      computed('in-its-turn', 'In its turn', MASS, asked('='), { decimals: 1 }),
      computed(
        'gets',
        'Gets',
        MASS,
        'MAX(0 kg; MIN([In its turn]; [There is] - [Before its turn])) * [Weight] / [In its turn]',
        {
          decimals: 1,
        },
      ),
      computed('gets-pieces', 'Gets pieces', PLAIN, '[Gets] / [Product].[Weight of one]', { decimals: 0 }),
      computed('short', 'Short', MASS, 'MAX(0 kg; [Weight] - [Gets])', { decimals: 1 }),
      computed('money', 'Money', MONEY, `[Gets] * ${DEMAND}.[Price by weight]`, { decimals: 2 }),
    ),
  ],
  checks: [],
  cautions: [],
};

function ofLots(column: string): string {
  return `SUM(SUMIFS('Lots by week'[${column}]; 'Lots by week'[Product]; [Product]; 'Lots by week'[Week]; [Week]))`;
}

export const supplyAgainstDemandSheet: SheetDeclaration = {
  id: 'supply-against-demand',
  name: 'Supply against demand',
  question: 'Selling',
  about:
    'Each product week by week: what comes from the field and from store, what outlets ask for, what is short and what is over.',
  rows: {
    from: 'pairs',
    sheets: ['products', 'weeks'],
    as: [made('product', 'Product'), made('week', 'Week')],
    where: `COUNTIFS('Lots by week'[Product]; [Product]; 'Lots by week'[Week]; [Week])
    + COUNTIFS('Demand by week'[Product]; [Product]; 'Demand by week'[Week]; [Week]) > 0`,
  },
  columns: [
    ...group(
      'Supply',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('product-name', 'Product name', TEXT, '[Product].[Product]'),
      computed('from-the-field', 'From the field', MASS, ofLots('In'), { decimals: 1 }),
      computed('from-store', 'From store', MASS, ofLots('From before'), {
        note: 'There when the week begins.',
        decimals: 1,
      }),
      computed('supply', 'Supply', MASS, '[From the field] + [From store]', { decimals: 1 }),
    ),
    ...group(
      'Demand',
      computed(
        'wanted',
        'Wanted',
        MASS,
        `SUM(SUMIFS('Demand by week'[Weight]; 'Demand by week'[Product]; [Product]; 'Demand by week'[Week]; [Week]))`,
        { decimals: 1 },
      ),
      computed(
        'share-taken',
        'Share taken',
        SHARE,
        'IF([From the field] > 0 kg; MIN(1; [Wanted] / [From the field]); 0%)',
        { note: 'Of what comes from the field, where it is sold in the week it is picked.', decimals: 0 },
      ),
      computed('sold', 'Sold', MASS, ofLots('Sold'), { decimals: 1 }),
      computed('short', 'Short', MASS, 'MAX(0 kg; [Wanted] - [Sold])', {
        note: 'Asked for and not there.',
        decimals: 1,
      }),
      computed('short-pieces', 'Short pieces', PLAIN, '[Short] / [Product].[Weight of one]', { decimals: 0 }),
      computed('over', 'Over', MASS, 'MAX(0 kg; [Supply] - [Sold])', { note: 'There and not asked for.', decimals: 1 }),
    ),
    ...group(
      'What becomes of the rest',
      computed('left', 'Left', MASS, ofLots('Left'), { note: 'In store for later weeks.', decimals: 1 }),
      computed('lost', 'Lost', MASS, ofLots('Lost'), { decimals: 1 }),
      computed('met', 'Met', SHARE, 'IF([Wanted] > 0 kg; [Sold] / [Wanted])', {
        note: 'Of what was asked for.',
        decimals: 0,
      }),
    ),
  ],
  checks: [],
  cautions: [],
};
