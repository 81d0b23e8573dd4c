// The Outlets by month sheet: what each outlet brings and costs month by month. Reads Deliveries and Months.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, group, HOURS, MASS, MONEY, made, PLAIN, quantity, TEXT } from './authoring.ts';

/** Deliveries to the outlet in the month. */
const THERE = `Deliveries[Outlet]; [Outlet]; Deliveries[On]; ">=" & [Month].[Month]; Deliveries[On]; "<=" & [Month].[Ends]`;

function sumOf(column: string): string {
  return `SUM(SUMIFS(Deliveries[${column}]; ${THERE}))`;
}

export const outletMonthsSheet: SheetDeclaration = {
  id: 'outlet-months',
  name: 'Outlets by month',
  question: 'Money',
  about:
    'Money by outlet and month: what each brings, what it keeps and what going there costs, and the hours it takes.',
  rows: {
    from: 'pairs',
    sheets: ['outlets', 'months'],
    as: [made('outlet', 'Outlet'), made('month', 'Month')],
    where: `COUNTIFS(${THERE}) > 0`,
  },
  columns: group(
    'Money',
    computed('outlet-name', 'Outlet name', TEXT, '[Outlet].[Outlet]'),
    computed('month-name', 'Month name', TEXT, '[Month].[Name]'),
    computed('deliveries', 'Deliveries', PLAIN, `COUNTIFS(${THERE})`, { decimals: 0 }),
    computed('load', 'Load', MASS, sumOf('Load'), { decimals: 0 }),
    computed('sales', 'Sales', MONEY, sumOf('Sales'), { decimals: 0 }),
    computed('costs', 'Costs', MONEY, sumOf('Costs'), {
      note: 'What the outlet keeps and what going there costs.',
      decimals: 0,
    }),
    computed('left', 'Left', MONEY, '[Sales] - [Costs]', { note: 'Before growing it.', decimals: 0 }),
    computed('hours', 'Hours', HOURS, sumOf('Hours'), { note: 'Of going there.', decimals: 1 }),
    computed('left-an-hour', 'Left an hour', quantity('money/h'), 'IF([Hours] > 0 h; [Left] / [Hours])', {
      note: 'Of going there.',
      decimals: 2,
    }),
  ),
  checks: [],
  cautions: [],
};
