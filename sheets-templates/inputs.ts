// The sheets of what is given to the beds: Input kinds, what is in each and how long before harvest it may be given, and Inputs,
// what was given where and when. Reads Beds and Plantings.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  DAYS,
  entered,
  group,
  HOURS,
  link,
  MASS,
  MONEY,
  PRICE_BY_WEIGHT,
  SHARE,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

/** Days between raw manure and harvest under the US organic rule. */
export const MANURE_DAYS_SOIL = 120;
export const MANURE_DAYS_CLEAR = 90;
const RULE = 'US organic rule, 7 CFR 205.203(c)(1); the rule of your place may differ';

export const inputKindsSheet: SheetDeclaration = {
  id: 'input-kinds',
  name: 'Input kinds',
  question: 'Ground',
  about:
    'Manures, composts, fertilisers and sprays: nitrogen, price, and the days that must lie between giving it and harvest. Add what you use, with the days its label says.',
  rows: { from: 'entry' },
  key: 'input',
  columns: [
    ...group(
      'Input',
      entered('input', 'Input', TEXT, { required: true }),
      entered('what', 'What', choice('raw manure', 'compost', 'fertiliser', 'mulch', 'spray')),
      entered('nitrogen', 'Nitrogen', SHARE, { note: 'Of its weight as spread.', decimals: 2, least: 0, most: 50 }),
      entered('serves-this-season', 'Serves this season', SHARE, {
        note: 'Of its nitrogen.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      withDefault(
        'days-to-harvest',
        'Days to harvest',
        DAYS,
        `IF([What] = "raw manure"; ${MANURE_DAYS_SOIL} days; IF([What] = "spray"; 1 day; 0 days))`,
        {
          note: `Least days before harvest: of sprays by the label. Raw manure ${MANURE_DAYS_SOIL} days where the part sold touches the soil (${RULE}).`,
          decimals: 0,
          least: 0,
        },
      ),
      withDefault(
        'days-clear-of-the-soil',
        'Days clear of the soil',
        DAYS,
        `IF([What] = "raw manure"; ${MANURE_DAYS_CLEAR} days; [Days to harvest])`,
        {
          note: `Where the part sold does not touch the soil: raw manure ${MANURE_DAYS_CLEAR} days.`,
          decimals: 0,
          least: 0,
        },
      ),
      entered('price', 'Price', PRICE_BY_WEIGHT, { decimals: 2, least: 0 }),
      entered('source', 'Source', TEXT),
    ),
  ],
  checks: [
    {
      id: 'days-of-the-label',
      name: 'Days of the label',
      level: 'note',
      column: 'days-to-harvest',
      says: 'IF(AND([What] = "spray"; [Days to harvest] <= 1 day); "Read the label: the days between spraying and harvest are law, and here stands only one.")',
    },
  ],
  cautions: ['Labels are law. Gloves, mask and clothing as they say; nothing drifts onto neighbours, water or bees.'],
};

const MEASURED =
  'Nitrogen: Sundermeier 2016, Ohio State University Extension ANR-34, table 1; what serves the season: memory';
const RECALLED = 'Memory';

export const INPUT_ROWS: readonly Readonly<Record<string, string>>[] = [
  {
    Input: 'Straw-pack beef manure, raw',
    What: 'raw manure',
    Nitrogen: '0.96%',
    'Serves this season': '35%',
    Source: MEASURED,
  },
  {
    Input: 'Compost of leaves and manure',
    What: 'compost',
    Nitrogen: '0.9%',
    'Serves this season': '15%',
    Source: MEASURED,
  },
  { Input: 'Poultry manure compost', What: 'compost', Nitrogen: '2%', 'Serves this season': '40%', Source: MEASURED },
  { Input: 'Feather meal', What: 'fertiliser', Nitrogen: '12%', 'Serves this season': '75%', Source: RECALLED },
  { Input: 'Alfalfa meal', What: 'fertiliser', Nitrogen: '2.5%', 'Serves this season': '60%', Source: RECALLED },
  { Input: 'Straw mulch', What: 'mulch', Nitrogen: '0.5%', 'Serves this season': '0%', Source: RECALLED },
];

/** The day of the first harvest on the bed from the day it is given: that very day where picking goes on. */
function firstHarvest(touching: 'TRUE' | 'FALSE'): string {
  const going = `COUNTIFS(Plantings[Bed]; [Bed]; Plantings[Touches soil]; ${touching}; Plantings[Harvest]; "<=" & [Given on]; Plantings[Harvest ends]; ">=" & [Given on])`;
  return `IF(${going} > 0; [Given on];
      MINIFS(Plantings[Harvest]; Plantings[Bed]; [Bed]; Plantings[Touches soil]; ${touching}; Plantings[Harvest]; ">" & [Given on]))`;
}

export const inputsSheet: SheetDeclaration = {
  id: 'inputs',
  name: 'Inputs',
  question: 'Ground',
  about:
    'What is given to the beds, planned and done: manure, compost, fertiliser, sprays. The days to the next harvest are counted against the rule or the label.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'What and where',
      entered('input', 'Input', link('input-kinds'), { required: true }),
      entered('bed', 'Bed', link('beds'), { required: true }),
      entered('given-on', 'Given on', DATE, { required: true }),
      entered('amount', 'Amount', MASS, { note: 'On the whole bed.', decimals: 1, least: 0 }),
      withDefault('hours', 'Hours', HOURS, '0 h', { decimals: 1, least: 0 }),
      withDefault('cost', 'Cost', MONEY, '[Amount] * [Input].[Price]', { decimals: 2, least: 0 }),
      entered('worked-in', 'Worked in', YES_OR_NO, { note: 'Raw manure must be.' }),
      entered('note', 'Note', TEXT),
    ),
    ...group(
      'Gives',
      computed('nitrogen', 'Nitrogen', MASS, '[Amount] * [Input].[Nitrogen] * [Input].[Serves this season]', {
        note: 'That serves this season.',
        decimals: 2,
      }),
    ),
    ...group(
      'Days to harvest',
      computed('first-harvest-on-the-soil', 'First harvest on the soil', DATE, firstHarvest('TRUE'), {
        note: 'Of what touches the soil.',
      }),
      computed('first-harvest-clear-of-it', 'First harvest clear of it', DATE, firstHarvest('FALSE')),
      computed('days-on-the-soil', 'Days on the soil', DAYS, '[First harvest on the soil] - [Given on]', {
        decimals: 0,
      }),
      computed('days-clear-of-it', 'Days clear of it', DAYS, '[First harvest clear of it] - [Given on]', {
        decimals: 0,
      }),
      computed(
        'too-soon',
        'Too soon',
        YES_OR_NO,
        `OR(IF(ISBLANK([Days on the soil]); FALSE; [Days on the soil] < [Input].[Days to harvest]);
          IF(ISBLANK([Days clear of it]); FALSE; [Days clear of it] < [Input].[Days clear of the soil]))`,
        { note: 'Fewer days to a harvest than must lie between.' },
      ),
      computed('harvest-allowed-from', 'Harvest allowed from', DATE, '[Given on] + [Input].[Days to harvest]', {
        note: 'Of what touches the soil.',
      }),
    ),
  ],
  checks: [
    {
      id: 'too-near-to-harvest',
      name: 'Too near to harvest',
      level: 'warning',
      column: 'given-on',
      says: `IF([Too soon]; "Too near to a harvest on this bed: " & TEXT(MIN([Days on the soil]; [Days clear of it]) / 1 day; "0") & " days, and " & TEXT([Input].[Days to harvest] / 1 day; "0")
        & IF([Input].[What] = "raw manure"; " are wanted where the part sold touches the soil, ${MANURE_DAYS_CLEAR} where it does not (${RULE}). "; " are wanted. ") & "Give it earlier, or harvest later.")`,
    },
    {
      id: 'not-worked-in',
      name: 'Not worked in',
      level: 'note',
      column: 'worked-in',
      says: 'IF(AND([Input].[What] = "raw manure"; IF(ISBLANK([Worked in]); TRUE; NOT([Worked in]))); "The rule counts the days only from when raw manure is worked into the soil: note here that it is.")',
    },
  ],
  cautions: [
    'Raw manure carries germs that make people ill: keep it off crops, tools and hands that pick, and away from wells and streams.',
    'Manure, compost and nitrogen are limited by local rules; those come first.',
    'Sprays: the label is law, for what you wear as for the days to harvest and to going in again.',
  ],
};
