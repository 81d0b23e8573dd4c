// The Share boxes sheet: what is in a box each week and what it is worth against what was promised; and Sales by month, what each
// outlet brings. Reads Outlets, Demand by week, Deliveries, Weeks and Months.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, DATE, group, MASS, MONEY, made, PLAIN, TEXT } from './authoring.ts';
import { OPEN } from './outlets.ts';

function inBoxes(column: string): string {
  return `SUM(SUMIFS('Demand by week'[${column}]; 'Demand by week'[Outlet]; [Outlet]; 'Demand by week'[Week]; [Week]))`;
}

export const shareBoxesSheet: SheetDeclaration = {
  id: 'share-boxes',
  name: 'Share boxes',
  question: 'Selling',
  about: 'What goes into a share box week by week, and what it is worth against what was promised.',
  rows: {
    from: 'pairs',
    sheets: ['outlets', 'weeks'],
    as: [made('outlet', 'Outlet'), made('week', 'Week')],
    where: `AND(${OPEN}; [Outlet].[Kind] = "share boxes"; [Outlet].[Boxes] > 0)`,
  },
  columns: [
    ...group(
      'Box',
      computed('on', 'On', DATE, '[Week].[Week] + [Outlet].[Days after Monday] * 1 day'),
      computed('boxes', 'Boxes', PLAIN, '[Outlet].[Boxes]', { decimals: 0 }),
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
      computed(
        'missing',
        'Missing',
        TEXT,
        `NAMESIFS('Demand by week'[Product name]; 'Demand by week'[Outlet]; [Outlet]; 'Demand by week'[Week]; [Week]; 'Demand by week'[Short]; ">0.01 kg")`,
        { note: 'Asked for and not, or not all, there.' },
      ),
      computed('weight', 'Weight', MASS, `${inBoxes('Gets')} / [Boxes]`, { note: 'Of one box.', decimals: 1 }),
      computed('worth', 'Worth', MONEY, `${inBoxes('Money')} / [Boxes]`, {
        note: 'Of one box, at the prices of Demand.',
        decimals: 2,
      }),
      computed('against-promised', 'Against promised', MONEY, '[Worth] - [Outlet].[Promised worth]', { decimals: 2 }),
    ),
  ],
  checks: [
    {
      id: 'less-than-promised',
      name: 'Less than promised',
      level: 'warning',
      column: 'worth',
      says: 'IF([Worth] < 90% * [Outlet].[Promised worth]; "The box of this week is worth " & TEXT([Worth] / [Outlet].[Promised worth]; "0%") & " of what was promised: add something, or make up for it in another week.")',
    },
  ],
  cautions: [],
};
