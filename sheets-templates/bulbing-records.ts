// The Bulbing records sheet: when bulbs started and tops fell on the farm, and the warmth between, which refits the tops-down
// date of a variety. Reads Climate and Varieties.

import { BULBING_BASE, BULBING_UPPER, type SheetDeclaration } from '../engine/index.ts';
import { computed, DATE, DAYS, DEGREE_DAYS, entered, group, link, PLAIN, TEXT } from './authoring.ts';

export const bulbingRecordsSheet: SheetDeclaration = {
  id: 'bulbing-records',
  name: 'Bulbing records',
  question: 'Records',
  about:
    'Dates seen in own onions: the first plants twice as thick at the bulb as at the neck, and half the tops down. Their warmth, in the average year of Climate, makes the harvest dates of a variety your own.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'Seen',
      entered('variety', 'Variety', link('varieties'), { required: true }),
      entered('bulbs-started', 'Bulbs started', DATE, { note: 'Bulb twice as thick as the neck.' }),
      entered('tops-down', 'Tops down', DATE, { note: 'Half of them.' }),
      entered('notes', 'Notes', TEXT),
    ),
    ...group(
      'Warmth between',
      computed(
        'thermal-time',
        'Thermal time',
        DEGREE_DAYS,
        `WARMTHBETWEEN([Bulbs started]; [Tops down] + 1 day; ${BULBING_BASE} degC; ${BULBING_UPPER} degC; Climate[Day]; Climate[Mean])`,
        { note: 'Above 5 degC, warmth above 25 degC not counted.', decimals: 0 },
      ),
      computed('days', 'Days', DAYS, '[Tops down] - [Bulbs started]', { decimals: 0 }),
    ),
    ...group(
      'Variety',
      computed(
        'seasons',
        'Seasons',
        PLAIN,
        `COUNTIFS('Bulbing records'[Variety]; [Variety]; 'Bulbing records'[Days]; ">0")`,
        {
          decimals: 0,
        },
      ),
      computed(
        'mean-thermal-time',
        'Mean thermal time',
        DEGREE_DAYS,
        `AVERAGEIFS('Bulbing records'[Thermal time]; 'Bulbing records'[Variety]; [Variety])`,
        { note: 'Of the variety.', decimals: 0 },
      ),
      computed(
        'mean-days',
        'Mean days',
        DAYS,
        `AVERAGEIFS('Bulbing records'[Days]; 'Bulbing records'[Variety]; [Variety])`,
        {
          note: 'Of the variety; used where Climate is empty.',
          decimals: 0,
        },
      ),
    ),
  ],
  checks: [
    {
      id: 'dates-in-order',
      name: 'Dates in order',
      level: 'error',
      column: 'tops-down',
      says: 'IF([Tops down] < [Bulbs started]; "The tops fell before the bulbs started: look at both dates.")',
    },
    {
      id: 'offer',
      name: 'Offer',
      level: 'note',
      column: 'mean-thermal-time',
      says: 'IF(ABS([Mean thermal time] / [Variety].[Thermal time to tops down] - 1) > 5%; "Your dates give another thermal time than the one in use: to plan by them, enter it as Thermal time to tops down in Varieties.")',
    },
  ],
  cautions: [],
};
