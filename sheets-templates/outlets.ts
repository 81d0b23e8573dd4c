// The Outlets sheet: who takes the harvest, on which day, who is served first when something is short, and what selling there
// costs; and Deliveries, each time something goes there. Reads Farm, Demand by week and Weeks.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  entered,
  group,
  HOURS,
  MASS,
  MONEY,
  made,
  PLAIN,
  SHARE,
  TEXT,
  withDefault,
} from './authoring.ts';

export const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** Days after Monday: where the day stands among the first three letters of all. */
const DAY_OF_WEEK = `(FIND(LEFT([Day]; 3); "${WEEKDAYS.map((day) => day.slice(0, 3)).join('')}") - 1) / 3`;

function ofOutlet(column: string): string {
  return `SUM(SUMIFS(Deliveries[${column}]; Deliveries[Outlet name]; [Outlet]))`;
}

export const outletsSheet: SheetDeclaration = {
  id: 'outlets',
  name: 'Outlets',
  question: 'Selling',
  about:
    'Markets, kitchens, share boxes, a stand: who takes what you grow, when, and in what order they are served when something is short.',
  rows: { from: 'entry' },
  key: 'outlet',
  columns: [
    ...group(
      'Outlet',
      entered('outlet', 'Outlet', TEXT, { required: true }),
      withDefault('kind', 'Kind', choice('market', 'kitchen', 'share boxes', 'stand', 'shop'), '"market"'),
      withDefault('day', 'Day', choice(...WEEKDAYS), 'IF([Kind] = "market"; "Saturday"; "Thursday")'),
      withDefault('from', 'From', DATE, 'Farm[Season starts]', { note: 'First day it takes anything.' }),
      withDefault('until', 'Until', DATE, 'Farm[Season ends] + 26 weeks', { note: 'Last day.' }),
      withDefault('weeks-between', 'Weeks between', PLAIN, '1', {
        note: '1 every week, 2 every second.',
        decimals: 0,
        least: 1,
        most: 53,
      }),
      withDefault('turn', 'Turn', PLAIN, 'IF([Kind] = "share boxes"; 1; IF([Kind] = "kitchen"; 2; 3))', {
        note: 'Who is served first when something is short: 1 before 2. Those of one turn share.',
        decimals: 0,
        least: 1,
        most: 99,
      }),
    ),
    ...group(
      'Share boxes',
      entered('boxes', 'Boxes', PLAIN, { note: 'A week.', decimals: 0, least: 0 }),
      entered('promised-worth', 'Promised worth', MONEY, { note: 'Of a box.', decimals: 2, least: 0 }),
    ),
    ...group(
      'What it costs',
      withDefault('kept-by-the-outlet', 'Kept by the outlet', SHARE, '0%', {
        note: 'Of what is sold there.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      withDefault('cost-each-time', 'Cost each time', MONEY, '0 money', {
        note: 'Stall, fuel, cards.',
        decimals: 2,
        least: 0,
      }),
      withDefault('hours-each-time', 'Hours each time', HOURS, '0 h', {
        note: 'Loading, driving, selling.',
        decimals: 1,
        least: 0,
      }),
      entered('note', 'Note', TEXT),
      computed('days-after-monday', 'Days after Monday', PLAIN, DAY_OF_WEEK, { decimals: 0 }),
    ),
    ...group(
      'This season',
      computed('deliveries', 'Deliveries', PLAIN, 'COUNTIFS(Deliveries[Outlet name]; [Outlet])', { decimals: 0 }),
      computed(
        'wanted',
        'Wanted',
        MONEY,
        `SUM(SUMIFS('Demand by week'[Worth wanted]; 'Demand by week'[Outlet name]; [Outlet]))`,
        {
          note: 'Were everything there.',
          decimals: 0,
        },
      ),
      computed('sales', 'Sales', MONEY, ofOutlet('Sales'), { decimals: 0 }),
      computed('costs', 'Costs', MONEY, ofOutlet('Costs'), {
        note: 'What the outlet keeps and what going there costs; hours apart.',
        decimals: 0,
      }),
      computed('hours', 'Hours', HOURS, ofOutlet('Hours'), { decimals: 0 }),
      computed(
        'a-selling-hour',
        'A selling hour',
        { type: 'number', unit: { us: 'money/h', si: 'money/h' } },
        'IF([Hours] > 0 h; ([Sales] - [Costs]) / [Hours])',
        {
          note: 'What an hour of going there brings.',
          decimals: 2,
        },
      ),
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
      id: 'boxes-missing',
      name: 'Boxes missing',
      level: 'note',
      column: 'boxes',
      says: 'IF(AND([Kind] = "share boxes"; ISBLANK([Boxes])); "Enter how many boxes go out a week: what is in each is worked out from it.")',
    },
  ],
  cautions: ['Crates are heavy and vans are loaded in a hurry: share the load, and secure it.'],
};

/** Of the outlet and the week. */
function delivered(column: string): string {
  return `SUM(SUMIFS('Demand by week'[${column}]; 'Demand by week'[Outlet]; [Outlet]; 'Demand by week'[Week]; [Week]))`;
}

/** Whether the outlet takes anything in this week. */
export const OPEN = `AND([Week].[Ends] >= [Outlet].[From]; [Week].[Week] <= [Outlet].[Until];
    MOD(ROUNDDOWN(([Week].[Ends] - [Outlet].[From]) / 7 days; 0); [Outlet].[Weeks between]) = 0)`;

export const deliveriesSheet: SheetDeclaration = {
  id: 'deliveries',
  name: 'Deliveries',
  question: 'Selling',
  about:
    'Each time something goes to an outlet: what it weighs, what it brings and costs, and the hours of going there.',
  rows: {
    from: 'pairs',
    sheets: ['outlets', 'weeks'],
    as: [made('outlet', 'Outlet'), made('week', 'Week')],
    where: `AND(${OPEN};
    COUNTIFS('Demand by week'[Outlet]; [Outlet]; 'Demand by week'[Week]; [Week]; 'Demand by week'[Gets]; ">0 kg") > 0)`,
  },
  columns: [
    ...group(
      'Delivery',
      computed('on', 'On', DATE, '[Week].[Week] + [Outlet].[Days after Monday] * 1 day'),
      computed('outlet-name', 'Outlet name', TEXT, '[Outlet].[Outlet]'),
      computed('load', 'Load', MASS, delivered('Gets'), { decimals: 0 }),
      computed(
        'items',
        'Items',
        PLAIN,
        `COUNTIFS('Demand by week'[Outlet]; [Outlet]; 'Demand by week'[Week]; [Week]; 'Demand by week'[Gets]; ">0 kg")`,
        { decimals: 0 },
      ),
      computed(
        'what',
        'What',
        TEXT,
        `NAMESIFS('Demand by week'[Product name]; 'Demand by week'[Outlet]; [Outlet]; 'Demand by week'[Week]; [Week]; 'Demand by week'[Gets]; ">0 kg")`,
      ),
      computed('sales', 'Sales', MONEY, delivered('Money'), { decimals: 2 }),
      computed('costs', 'Costs', MONEY, '[Sales] * [Outlet].[Kept by the outlet] + [Outlet].[Cost each time]', {
        decimals: 2,
      }),
      computed('hours', 'Hours', HOURS, '[Outlet].[Hours each time]', { decimals: 1 }),
    ),
  ],
  checks: [],
  cautions: [],
};
