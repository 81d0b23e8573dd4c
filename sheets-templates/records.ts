// The Records sheet: what was seen and weighed, a line each time: sown, came up, stood, was picked, by whom in how many hours. Typed
// on a phone at the bed. Reads Plantings; Planting results and Learned read it.

import type { SheetDeclaration } from '../engine/index.ts';
import { choice, computed, DATE, entered, group, HOURS, link, MASS, PLAIN, TEXT, withDefault } from './authoring.ts';

export const NOTES = [
  'sown',
  'came up',
  'set out',
  'stood',
  'picked',
  'sorted out',
  'weighed cured',
  'lost in store',
  'cleared',
] as const;

/** Until a planting is in the bed nothing of it stands, is picked or lost. */
const IN_THE_BED =
  'OR([What] = "stood"; [What] = "picked"; [What] = "sorted out"; [What] = "weighed cured"; [What] = "cleared")';

/** The most that can have been counted; blank where it is not known. */
const THERE_WERE = 'IF(AND([What] = "stood"; ISBLANK([Of])); [Planting].[Stations]; [Of])';

export const recordsSheet: SheetDeclaration = {
  id: 'records',
  name: 'Records',
  question: 'Records',
  about:
    'What happened, a line each time: sown, came up, stood, picked with weight, grade and hours. Planting results holds it against the plan, Learned makes figures of it.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'What happened',
      entered('planting', 'Planting', link('plantings'), { required: true }),
      entered('on', 'On', DATE, { required: true }),
      withDefault('what', 'What', choice(...NOTES), '"picked"'),
      entered('amount', 'Amount', MASS, {
        note: 'Weighed; 40 bunches or 60 heads go to Count.',
        decimals: 1,
        least: 0,
        orElse: 'count',
      }),
      entered('count', 'Count', PLAIN, {
        note: 'Plants, bunches or heads, one by one.',
        decimals: 0,
        least: 0,
        whole: true,
      }),
      entered('of', 'Of', PLAIN, {
        note: 'Out of how many: seeds sown for those that came up, plants set out for those that stood. Blank: of the whole planting, a clump as one; no part of survival.',
        decimals: 0,
        least: 0,
        whole: true,
      }),
      entered('grade', 'Grade', choice('first', 'second', 'small')),
      entered('hours', 'Hours', HOURS, { note: 'It took.', decimals: 1, least: 0 }),
      entered('who', 'Who', link('hands')),
      entered('note', 'Note', TEXT),
    ),
    ...group(
      'As reckoned',
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      computed('weight', 'Weight', MASS, 'IF(ISBLANK([Amount]); [Count] * [Planting].[Mass of a piece]; [Amount])', {
        note: 'Counted pieces at the weight planned for one.',
        decimals: 1,
      }),
      computed(
        'in-doubt-because',
        'In doubt because',
        TEXT,
        `IF(AND(${IN_THE_BED}; [On] < [Planting].[Planted out]); "This is before the planting goes into the bed (" & TEXT([Planting].[Planted out]; "d mmm yyyy") & "): look at the day, the planting, or its dates.";
          IF(AND(OR([What] = "came up"; [What] = "set out"); [On] < [Planting].[Sown]); "This is before it is sown (" & TEXT([Planting].[Sown]; "d mmm yyyy") & "): look at the day, the planting, or its dates."))`,
      ),
      computed(
        'counts-for',
        'Counts for',
        link('plantings'),
        `IF(AND(ISBLANK([In doubt because]); IF(ISBLANK(${THERE_WERE}); TRUE; N([Count]) <= ${THERE_WERE})); [Planting])`,
        { note: 'The planting; of a line in which an error is found none, until it is put right.' },
      ),
      computed('timed', 'Timed', MASS, 'IF([Hours] > 0 h; [Weight])', {
        note: 'Weight whose hours were noted.',
        decimals: 1,
      }),
    ),
  ],
  checks: [
    {
      id: 'before-it-was-there',
      name: 'Before it was there',
      level: 'error',
      column: 'on',
      says: '[In doubt because]',
    },
    {
      id: 'still-to-come',
      name: 'Still to come',
      level: 'warning',
      column: 'on',
      says: 'IF([On] > TODAY(); "This day is still to come: look at the date.")',
    },
    {
      id: 'more-than-there-were',
      name: 'More than there were',
      level: 'error',
      column: 'count',
      says: `IF([Count] > ${THERE_WERE}; "More than there were (" & TEXT(${THERE_WERE}; "0") & "): look at Count, Of and the planting.")`,
    },
    {
      id: 'how-much',
      name: 'How much',
      level: 'note',
      column: 'amount',
      says: 'IF(AND(OR([What] = "picked"; [What] = "sorted out"); ISBLANK([Amount]); ISBLANK([Count])); "Enter the weight, or how many pieces.")',
    },
  ],
  cautions: ['Clean hands, clean crates, clean water: pick nothing that an animal has fouled.'],
};
