// The sheets of the farm's own fixed costs: Own costs, what is paid whatever is grown, once or again and again, and Own costs by
// month. Reads Farm and Months; Months and Budget read it.

import type { SheetDeclaration } from '../engine/index.ts';
import { choice, computed, DATE, entered, group, MONEY, made, PLAIN, TEXT, withDefault } from './authoring.ts';

const COST = '[Own cost]';

export const ownCostsSheet: SheetDeclaration = {
  id: 'own-costs',
  name: 'Own costs',
  question: 'Money',
  about: 'What is paid whatever is grown: rent, insurance, fuel, tools, repairs, fees. Once, or again and again.',
  rows: { from: 'entry' },
  key: 'cost',
  columns: [
    ...group(
      'Cost',
      entered('cost', 'Cost', TEXT, { required: true }),
      withDefault(
        'kind',
        'Kind',
        choice('land', 'buildings', 'tools', 'fuel', 'insurance', 'fees', 'repairs', 'packaging', 'other'),
        '"other"',
      ),
      entered('amount', 'Amount', MONEY, { note: 'Each time.', decimals: 2, least: 0 }),
      withDefault('first-on', 'First on', DATE, 'Farm[Season starts]'),
      withDefault('every', 'Every', choice('once', 'week', 'month', 'quarter', 'year'), '"once"'),
      withDefault('until', 'Until', DATE, 'IF([Every] = "once"; [First on]; Farm[Season ends])', {
        note: 'Last day, where it comes again.',
      }),
      entered('note', 'Note', TEXT),
    ),
    ...group(
      'This season',
      computed(
        'in-all',
        'In all',
        MONEY,
        `SUM(SUMIFS('Own costs by month'[Paid]; 'Own costs by month'[Name]; [Cost]))`,
        {
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
      says: 'IF([Until] < [First on]; "Ends before it begins: look at both dates.")',
    },
    {
      id: 'outside-the-months',
      name: 'Outside the months',
      level: 'warning',
      column: 'first-on',
      says: 'IF(AND([Amount] > 0 money; SUM([In all]) = 0 money); "This is paid in none of the months of the season, so the budget leaves it out: look at its dates.")',
    },
    {
      id: 'how-much',
      name: 'How much',
      level: 'note',
      column: 'amount',
      says: 'IF(ISBLANK([Amount]); "Enter what it costs: until then the budget counts it as nothing.")',
    },
  ],
  cautions: [],
};

/** Days on which it is paid within the month, every seventh from the first. */
const WEEKLY = `ROUNDDOWN((MIN(${COST}.[Until]; [Month].[Ends]) - ${COST}.[First on]) / 7 days; 0)
    - ROUNDUP((MAX(${COST}.[First on]; [Month].[Month]) - ${COST}.[First on]) / 7 days; 0) + 1`;

export const ownCostsByMonthSheet: SheetDeclaration = {
  id: 'own-costs-by-month',
  name: 'Own costs by month',
  question: 'Money',
  about: 'Each own cost in the months in which it is paid.',
  rows: {
    from: 'pairs',
    sheets: ['own-costs', 'months'],
    as: [made('own-cost', 'Own cost'), made('month', 'Month')],
    where: `AND([Month].[Ends] >= ${COST}.[First on]; [Month].[Month] <= ${COST}.[Until])`,
  },
  columns: [
    ...group(
      'Paid',
      computed('month-starts', 'Month starts', DATE, '[Month].[Month]'),
      computed('name', 'Name', TEXT, `${COST}.[Cost]`),
      computed(
        'months-on',
        'Months on',
        PLAIN,
        `(YEAR([Month starts]) - YEAR(${COST}.[First on])) * 12 + MONTH([Month starts]) - MONTH(${COST}.[First on])`,
        { note: 'Since it was first paid.', decimals: 0 },
      ),
      computed(
        'times',
        'Times',
        PLAIN,
        `IF(${COST}.[Every] = "week"; ${WEEKLY}; IF(EDATE(${COST}.[First on]; [Months on]) > ${COST}.[Until]; 0;
          IF(MOD([Months on]; SWITCH(${COST}.[Every]; "month"; 1; "quarter"; 3; "year"; 12; 1000)) = 0; 1; 0)))`,
        { note: 'It is paid in the month.', decimals: 0 },
      ),
      computed('paid', 'Paid', MONEY, `SUM([Times] * ${COST}.[Amount])`, { decimals: 2 }),
    ),
  ],
  checks: [],
  cautions: [],
};
