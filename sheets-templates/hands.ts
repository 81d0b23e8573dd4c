// The sheets of people's own input to the work: Hands, who works how many hours a week, and Own jobs, what no planting asks for, once
// or every so many weeks. Reads Farm, Plantings and Weeks; Tasks and Labour read it.

import type { SheetDeclaration } from '../engine/index.ts';
import { choice, computed, DATE, entered, group, HOURS, link, made, PLAIN, TEXT, withDefault } from './authoring.ts';

/** What hours are counted under, in the order of a season. */
export const JOB_KINDS = [
  'raising',
  'ground',
  'planting',
  'care',
  'water',
  'picking',
  'packing',
  'storing',
  'selling',
  'other',
] as const;

export const handsSheet: SheetDeclaration = {
  id: 'hands',
  name: 'Hands',
  question: 'Work',
  about:
    'Who works on the farm, how many hours a week and from when until when. Labour holds the hours of the jobs against them.',
  rows: { from: 'entry' },
  key: 'name',
  columns: [
    ...group(
      'Who',
      entered('name', 'Name', TEXT, { required: true }),
      entered('hours-a-week', 'Hours a week', HOURS, { decimals: 0, least: 0, most: 168 }),
      withDefault('from', 'From', DATE, 'Farm[Season starts]'),
      withDefault('until', 'Until', DATE, 'Farm[Season ends]'),
      entered('note', 'Note', TEXT),
    ),
    ...group(
      'Jobs',
      computed('open-jobs', 'Open jobs', PLAIN, 'COUNTIFS(Tasks[Who name]; [Name]; Tasks[Status]; "<>done")', {
        note: 'With this name, not done.',
        decimals: 0,
      }),
      computed('hours-taken', 'Hours taken', HOURS, 'SUM(SUMIFS(Tasks[Hours taken]; Tasks[Who name]; [Name]))', {
        decimals: 1,
      }),
    ),
  ],
  checks: [
    {
      id: 'ends-before-it-begins',
      name: 'Ends before it begins',
      level: 'error',
      column: 'until',
      says: 'IF([Until] < [From]; "Ends before it begins: look at both dates.")',
    },
  ],
  cautions: ['Heat, cold and long days wear people out: water, shade, breaks and rest come before the plan.'],
};

export const ownJobsSheet: SheetDeclaration = {
  id: 'own-jobs',
  name: 'Own jobs',
  question: 'Work',
  about:
    'Jobs that no planting asks for: mend the fence, order seed, mow every second week. They come up in Tasks like all others.',
  rows: { from: 'entry' },
  key: 'job',
  columns: [
    ...group(
      'Job',
      entered('job', 'Job', TEXT, { required: true }),
      entered('first-on', 'First on', DATE, { required: true }),
      entered('every', 'Every', PLAIN, { note: 'So many weeks; blank: once.', decimals: 0, least: 1, most: 53 }),
      withDefault('until', 'Until', DATE, 'IF(ISBLANK([Every]); [First on]; Farm[Season ends])', {
        note: 'Last day, where it comes again.',
      }),
      withDefault('kind', 'Kind', choice(...JOB_KINDS), '"other"'),
      withDefault('hours', 'Hours', HOURS, '0 h', { note: 'Each time.', decimals: 1, least: 0 }),
      entered('bed', 'Bed', link('beds')),
      entered('planting', 'Planting', link('plantings')),
      entered('who', 'Who', link('hands')),
      entered('note', 'Note', TEXT),
    ),
  ],
  checks: [
    {
      id: 'outside-the-weeks',
      name: 'Outside the weeks',
      level: 'warning',
      column: 'first-on',
      says: 'IF(OR([Until] < Farm[Season starts] - 6 days; [First on] > Farm[Season ends] + 26 weeks); "This lies outside the season, so it comes up in no week: look at its date.")',
    },
    {
      id: 'ends-before-it-begins',
      name: 'Ends before it begins',
      level: 'error',
      column: 'until',
      says: 'IF([Until] < [First on]; "Ends before it begins: look at both dates.")',
    },
  ],
  cautions: [],
};

const OWN = '[Own job]';

export const ownJobsByWeekSheet: SheetDeclaration = {
  id: 'own-jobs-by-week',
  name: 'Own jobs by week',
  question: 'Work',
  about: 'Each time an own job comes up.',
  rows: {
    from: 'pairs',
    sheets: ['own-jobs', 'weeks'],
    as: [made('own-job', 'Own job'), made('week', 'Week')],
    where: `AND([Week].[Ends] >= ${OWN}.[First on]; [Week].[Week] <= ${OWN}.[Until];
    IF(ISBLANK(${OWN}.[Every]); TRUE; MOD(ROUNDDOWN(([Week].[Ends] - ${OWN}.[First on]) / 7 days; 0); ${OWN}.[Every]) = 0);
    [Week].[Week] + (WEEKDAY(${OWN}.[First on]; 2) - 1) * 1 day <= ${OWN}.[Until])`,
  },
  columns: [
    ...group(
      'Job',
      computed('on', 'On', DATE, `[Week].[Week] + (WEEKDAY(${OWN}.[First on]; 2) - 1) * 1 day`),
      computed('name', 'Name', TEXT, `${OWN}.[Job]`),
      computed('hours', 'Hours', HOURS, `${OWN}.[Hours]`, { decimals: 1 }),
    ),
  ],
  checks: [],
  cautions: [],
};
