// The Weeks sheet: the weeks of the season and of the store after it, Monday to Sunday, under the names that calendars give
// them. Sheets that go by the week are made of its rows. Reads Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, DATE, group, made, mondayOf, TEXT, YES_OR_NO } from './authoring.ts';

export const weeksSheet: SheetDeclaration = {
  id: 'weeks',
  name: 'Weeks',
  question: 'Where',
  about: 'The weeks of the season, Monday to Sunday, and half a year more for what is in store.',
  rows: {
    from: 'span',
    first: mondayOf('Farm[Season starts]'),
    last: 'Farm[Season ends] + 26 weeks',
    step: 'week',
    as: made('week', 'Week'),
  },
  columns: [
    ...group(
      'Week',
      computed('ends', 'Ends', DATE, '[Week] + 6 days'),
      computed('name', 'Name', TEXT, 'TEXT(YEAR([Week] + 3 days); "0") & "-W" & TEXT(ISOWEEKNUM([Week]); "00")', {
        note: 'As ISO 8601 counts weeks: the first has the first Thursday of the year.',
      }),
      computed('in-season', 'In season', YES_OR_NO, '[Week] <= Farm[Season ends]'),
    ),
  ],
  checks: [],
  cautions: [],
};
