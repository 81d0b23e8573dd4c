// The Beds sheet: the permanent beds, what stood on them in the last four years, and how much of each is taken this
// season. Reads Farm and Plantings.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  choice,
  computed,
  DATE,
  entered,
  group,
  LENGTH,
  MONEY,
  PLAIN,
  quantity,
  SPACING,
  TEXT,
  withDefault,
} from './authoring.ts';

/** Which way the length of a bed runs. */
export const LIES = ['west to east', 'north to south'] as const;

export const bedsSheet: SheetDeclaration = {
  id: 'beds',
  name: 'Beds',
  question: 'Ground',
  about:
    'Every bed with its measures and its past. Families as botany names them (Amaryllidaceae, Brassicaceae), as in Crops.',
  rows: { from: 'entry' },
  key: 'bed',
  columns: [
    ...group(
      'Bed',
      entered('bed', 'Bed', TEXT, { required: true }),
      entered('field', 'Field', TEXT),
      withDefault('length', 'Length', LENGTH, 'Farm[Bed length]', { least: 0 }),
      withDefault('width', 'Width', SPACING, 'Farm[Bed width]', { least: 0 }),
      computed('area', 'Area', AREA, '[Length] * [Width]', { decimals: 0 }),
      entered('soil-cover', 'Soil cover', choice('bare', 'straw', 'leaves', 'compost', 'sheet', 'green manure')),
      entered('east', 'East', LENGTH, {
        note: 'Of its west end, from any one point of the farm. Blank: the map lays it out by field.',
        decimals: 1,
      }),
      entered('north', 'North', LENGTH, {
        note: 'Of its middle, from the same point; south of it below zero. Of a bed that lies north to south, of its north end.',
        decimals: 1,
      }),
      entered('lies', 'Lies', choice(...LIES), {
        note: 'Which way its length runs on the map. Blank: west to east. North to south its place is that of the middle of its north end.',
      }),
    ),
    ...group(
      'Past',
      entered('family-last-year', 'Family last year', TEXT),
      entered('family-two-years-ago', 'Family two years ago', TEXT),
      entered('family-three-years-ago', 'Family three years ago', TEXT),
      entered('family-four-years-ago', 'Family four years ago', TEXT),
    ),
    ...group(
      'This season',
      computed(
        'length-in-use',
        'Length in use',
        LENGTH,
        `MAX(0 m; MAXIFS(Plantings[Bed in use]; Plantings[Bed]; [Bed]); MAXIFS(Plantings[Bed length used]; Plantings[Spreads over]; [Bed]))`,
        {
          note: 'At the fullest time.',
          decimals: 1,
        },
      ),
      computed('free-length', 'Free length', LENGTH, 'MAX(0 m; [Length] - [Length in use])', {
        note: 'Never planted this season.',
        decimals: 1,
      }),
      computed('next-free-date', 'Next free date', DATE, 'MAXIFS(Plantings[Bed free]; Plantings[Bed]; [Bed])', {
        note: 'After the last planting of the season; blank where there is none.',
      }),
      computed(
        'families-this-season',
        'Families this season',
        TEXT,
        'NAMESIFS(Plantings[Family]; Plantings[Bed]; [Bed])',
        {
          note: 'What next year must know.',
        },
      ),
      computed('margin', 'Margin', MONEY, 'SUM(SUMIFS(Plantings[Margin this season]; Plantings[Bed]; [Bed]))', {
        note: 'Of its plantings, this season.',
        decimals: 0,
      }),
      computed('margin-per-length', 'Margin per length', quantity('money/ft', 'money/m'), '[Margin] / [Length]', {
        decimals: 2,
      }),
      computed(
        'families-too-soon',
        'Families too soon',
        PLAIN,
        'COUNTIFS(Plantings[Bed]; [Bed]; Plantings[Back too soon]; TRUE)',
        {
          note: 'Plantings whose family comes back too soon.',
          decimals: 0,
        },
      ),
      computed(
        'rotation-warning',
        'Rotation warning',
        TEXT,
        'IF([Families too soon] > 0; "A family comes back too soon after it stood here: see the plantings on this bed.")',
      ),
    ),
  ],
  checks: [
    { id: 'rotation', name: 'Rotation', level: 'warning', column: 'rotation-warning', says: '[Rotation warning]' },
    {
      id: 'too-full',
      name: 'Too full',
      level: 'warning',
      column: 'length-in-use',
      says: 'IF([Length in use] > [Length]; "More is planted here at one time than the bed is long: see the plantings on this bed.")',
    },
  ],
  cautions: [
    'Manure and raw compost need months between spreading and harvest, and nitrogen is limited in many places: follow local rules.',
  ],
};
