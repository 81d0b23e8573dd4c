// The sheets of the farm's money: Months, what comes in and goes out month by month, and Budget, the season as a whole with low and
// high. Reads Deliveries, Seed order, Plantings, Inputs, Cover crops, Tasks, Own costs by month and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  entered,
  group,
  HOURS,
  MONEY,
  made,
  PLAIN,
  quantity,
  SHARE,
  TEXT,
  withDefault,
} from './authoring.ts';

/** No more than a year before the season and after it, whatever date slipped into a row. */
const EARLIEST = `MIN(Farm[Season starts]; Budget[Seed paid on]; MINIFS(Tasks[On]; Tasks[Of another season]; FALSE); MINIFS(Plantings[Sown]; Plantings[Carried from]; "="); MIN(Inputs[Given on]);
  MIN('Cover crops'[Sown]); MIN('Own costs'[First on]))`;
const FIRST = `MAX(Farm[Season starts] - 52 weeks; ${EARLIEST})`;
const LAST = 'MIN(Farm[Season ends] + 52 weeks; MAX(Farm[Season ends] + 26 weeks; MAX(Tasks[On])))';

/** Of a sheet's rows dated in the month. */
function inMonth(sheet: string, column: string, date: string): string {
  return `SUM(SUMIFS(${sheet}[${column}]; ${sheet}[${date}]; ">=" & [Month]; ${sheet}[${date}]; "<=" & [Ends]))`;
}

export const monthsSheet: SheetDeclaration = {
  id: 'months',
  name: 'Months',
  question: 'Money',
  about: 'What comes in and what goes out, month by month, and what is left in the till at the end of each.',
  rows: {
    from: 'span',
    first: `DATE(YEAR(${FIRST}); MONTH(${FIRST}); 1)`,
    last: LAST,
    step: 'month',
    as: made('month', 'Month'),
  },
  columns: [
    ...group(
      'Month',
      computed('ends', 'Ends', DATE, 'EDATE([Month]; 1) - 1 day'),
      computed('name', 'Name', TEXT, 'TEXT([Month]; "mmm yyyy")'),
    ),
    ...group(
      'Comes in',
      computed('sales', 'Sales', MONEY, inMonth('Deliveries', 'Sales', 'On'), {
        note: 'At the outlets, on the days of delivery.',
        decimals: 0,
      }),
    ),
    ...group(
      'Goes out',
      computed(
        'seed',
        'Seed',
        MONEY,
        `IF(AND(Budget[Seed paid on] >= [Month]; Budget[Seed paid on] <= [Ends]); Budget[Seed]; 0 money)`,
        { note: 'By Seed order, on the day of Budget.', decimals: 0 },
      ),
      computed(
        'sets-and-plants',
        'Sets and plants',
        MONEY,
        inMonth('Plantings', 'Cost of sets or plants', 'Planted out'),
        {
          note: 'Bought, when they go in.',
          decimals: 0,
        },
      ),
      computed('mix', 'Mix', MONEY, inMonth('Plantings', 'Mix cost', 'Sown'), { decimals: 0 }),
      computed(
        'inputs',
        'Inputs',
        MONEY,
        `${inMonth('Inputs', 'Cost', 'Given on')} + ${inMonth(`'Cover crops'`, 'Cost', 'Sown')}`,
        { note: 'Manure, compost, fertiliser, sprays, seed of cover crops.', decimals: 0 },
      ),
      computed('outlets', 'Outlets', MONEY, inMonth('Deliveries', 'Costs', 'On'), {
        note: 'What outlets keep and what going there costs.',
        decimals: 0,
      }),
      computed('hours', 'Hours', HOURS, inMonth('Tasks', 'Hours counted', 'On'), { decimals: 0 }),
      computed('labour', 'Labour', MONEY, 'SUM([Hours] * Farm[Wage])', { decimals: 0 }),
      computed(
        'own-costs',
        'Own costs',
        MONEY,
        `SUM(SUMIFS('Own costs by month'[Paid]; 'Own costs by month'[Month starts]; [Month]))`,
        { decimals: 0 },
      ),
      computed(
        'costs',
        'Costs',
        MONEY,
        'SUM([Seed]; [Sets and plants]; [Mix]; [Inputs]; [Outlets]; [Labour]; [Own costs])',
        { decimals: 0 },
      ),
    ),
    ...group(
      'Left',
      computed('cash', 'Cash', MONEY, '[Sales] - [Costs]', { note: 'Of the month.', decimals: 0 }),
      computed(
        'in-the-till',
        'In the till',
        MONEY,
        'SUM(Budget[Cash at the start]; SUMIFS(Months[Cash]; Months[Month]; "<=" & [Month]))',
        { note: 'At its end.', decimals: 0 },
      ),
    ),
  ],
  checks: [
    {
      id: 'till-runs-empty',
      name: 'Till runs empty',
      level: 'warning',
      column: 'in-the-till',
      says: 'IF(AND(NOT(ISBLANK(Budget[Cash at the start])); [In the till] < 0 money); "The till is empty by the end of " & [Name] & ": put off what can wait, sell earlier, or borrow in time.")',
    },
  ],
  cautions: [],
};

function inAll(column: string): string {
  return `SUM(Months[${column}])`;
}

/** Sales were the harvest as low, or as high, as it may be: by the plantings that have a low and a high. */
function salesAt(end: 'low' | 'high'): string {
  return `IF(SUM(Plantings[Revenue]) > 0 money; [Sales] * SUM(Plantings[Revenue ${end}]) / SUM(Plantings[Revenue]); [Sales])`;
}

function hoursAt(end: 'low' | 'high'): string {
  return `IF(SUM(Plantings[Hours]) > 0 h; [Hours] * SUM(Plantings[Hours ${end}]) / SUM(Plantings[Hours]); [Hours])`;
}

export const budgetSheet: SheetDeclaration = {
  id: 'budget',
  name: 'Budget',
  question: 'Money',
  about:
    'The season as a whole: what the outlets bring, what it all costs, what is left, and how far it may be off. Months has it by month.',
  rows: { from: 'single' },
  columns: [
    ...group(
      'Before the season',
      entered('cash-at-the-start', 'Cash at the start', MONEY, {
        note: 'In the till before the first month.',
        decimals: 0,
      }),
      withDefault('seed-paid-on', 'Seed paid on', DATE, 'Farm[Season starts]'),
    ),
    ...group(
      'Comes in',
      computed('sales', 'Sales', MONEY, inAll('Sales'), {
        range: { low: 'sales-low', high: 'sales-high' },
        note: 'By what the outlets take, in Demand.',
        decimals: 0,
      }),
      computed('sales-low', 'Sales low', MONEY, salesAt('low'), {
        note: 'Were every yield at the low end of its range.',
        decimals: 0,
      }),
      computed('sales-high', 'Sales high', MONEY, salesAt('high'), {
        note: 'Were every yield at the high end, and taken.',
        decimals: 0,
      }),
      computed('grown-worth', 'Grown worth', MONEY, 'SUM(Plantings[Revenue this season])', {
        note: 'Harvested this season, at the prices of Plantings, whoever takes it.',
        decimals: 0,
      }),
    ),
    ...group(
      'Goes out',
      computed('seed', 'Seed', MONEY, `SUM('Seed order'[Cost])`, { decimals: 0 }),
      computed('sets-and-plants', 'Sets and plants', MONEY, inAll('Sets and plants'), { decimals: 0 }),
      computed('mix', 'Mix', MONEY, inAll('Mix'), { decimals: 0 }),
      computed('inputs', 'Inputs', MONEY, inAll('Inputs'), { decimals: 0 }),
      computed('outlets', 'Outlets', MONEY, inAll('Outlets'), { decimals: 0 }),
      computed('hours', 'Hours', HOURS, inAll('Hours'), { note: 'Of all jobs.', decimals: 0 }),
      computed('labour', 'Labour', MONEY, inAll('Labour'), { note: 'At the wage of Farm.', decimals: 0 }),
      computed('own-costs', 'Own costs', MONEY, inAll('Own costs'), { decimals: 0 }),
      computed('costs', 'Costs', MONEY, inAll('Costs'), { decimals: 0 }),
    ),
    ...group(
      'Left',
      computed('margin', 'Margin', MONEY, '[Sales] - [Costs]', {
        range: { low: 'margin-low', high: 'margin-high' },
        note: 'Labour paid.',
        decimals: 0,
      }),
      computed(
        'margin-low',
        'Margin low',
        MONEY,
        `SUM([Sales low]; 0 - [Costs]; 0 - (${hoursAt('high')} - [Hours]) * Farm[Wage])`,
        { note: 'Low yields and slow work together.', decimals: 0 },
      ),
      computed(
        'margin-high',
        'Margin high',
        MONEY,
        `SUM([Sales high]; 0 - [Costs]; ([Hours] - ${hoursAt('low')}) * Farm[Wage])`,
        { note: 'High yields and quick work together.', decimals: 0 },
      ),
      computed('before-labour', 'Before labour', MONEY, '[Margin] + [Labour]', {
        note: 'What is left for everybody who works.',
        decimals: 0,
      }),
      computed(
        'an-hour-brings',
        'An hour brings',
        quantity('money/h'),
        'IF([Hours] > 0 h; [Before labour] / [Hours])',
        { decimals: 2 },
      ),
      computed('sales-to-break-even', 'Sales to break even', SHARE, 'IF([Sales] > 0 money; [Costs] / [Sales])', {
        note: 'Of what is planned.',
        decimals: 0,
      }),
      computed('lines-of-demand', 'Lines of demand', PLAIN, 'COUNTA(Demand[Outlet])', {
        note: 'What outlets are said to take, in Demand.',
        decimals: 0,
      }),
      computed('without-a-price', 'Without a price', PLAIN, 'COUNTBLANK(Demand[Price by weight])', {
        note: 'Lines of Demand that bring nothing until they have one.',
        decimals: 0,
      }),
    ),
  ],
  checks: [
    {
      id: 'wage-missing',
      name: 'Wage missing',
      level: 'note',
      column: 'labour',
      says: 'IF(AND([Hours] > 0 h; ISBLANK(Farm[Wage])); "No wage is entered on Farm, so labour counts as nothing here: enter what an hour costs the farm, your own hours too.")',
    },
    {
      id: 'prices-missing',
      name: 'Prices missing',
      level: 'note',
      column: 'without-a-price',
      says: 'IF([Without a price] > 0; TEXT([Without a price]; "0") & " lines of Demand have no price and count as nothing: enter one there or in Products.")',
    },
    {
      id: 'nothing-asked-for',
      name: 'Nothing asked for',
      level: 'note',
      column: 'sales',
      says: 'IF(AND([Lines of demand] = 0; [Grown worth] > 0 money); "Demand is empty, so sales count as nothing and the margin is of costs alone: enter what outlets take. At the prices of Plantings the harvest is worth " & TEXT([Grown worth] / 1 money; "#,##0") & " " & Farm[Currency] & ".")',
    },
    {
      id: 'costs-more-than-it-brings',
      name: 'Costs more than it brings',
      level: 'warning',
      column: 'margin',
      says: 'IF(AND([Sales] > 0 money; [Margin] < 0 money); "The season costs more than it brings: look for plantings and outlets with the least margin.")',
    },
  ],
  cautions: ['A plan, not accounts: taxes, loans and what the law wants paid to people are not in it.'],
};
