// The Weeks sheet: the weeks of the season and of the store after it, Monday to Sunday, under the names that calendars give
// them, and the hours of tending in each. Sheets that go by the week are made of its rows. Reads Farm and Plantings.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, DATE, group, HOURS, made, mondayOf, TEXT, YES_OR_NO } from './authoring.ts';

/** Hours of tending from the start of the season up to a day, by the plantings put in, or cleared, before it. */
function tended(day: string, date: string, from: string): string {
  const before = `Plantings[${date}]; "<" & ${day}`;
  return `SUM(SUMIFS(Plantings[Tending a day]; ${before})) * (${day} - Farm[Season starts]) - SUM(SUMIFS(Plantings[${from}]; ${before}))`;
}

/** What plantings put in before a day ask for up to it, less what they would have asked for since they were cleared. */
function tendedUntil(day: string): string {
  return `${tended(day, 'Planted out', 'Tending not yet')} - (${tended(day, 'Bed free', 'Tending no more')})`;
}

/** Differences of sums are off by less: so a week that another planting's hours pass by stays as it was. */
const DUST = '0.0000001 min';

export const weeksSheet: SheetDeclaration = {
  id: 'weeks',
  name: 'Weeks',
  question: 'Where',
  about:
    'The weeks of the season, Monday to Sunday, and half a year more for what is in store, or until the last harvest of what was planted in it.',
  rows: {
    from: 'span',
    first: mondayOf('Farm[Season starts]'),
    last: 'Farm[Weeks until]',
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
      computed('next', 'Next', DATE, '[Week] + 7 days', { note: 'The Monday after.' }),
      computed('in-season', 'In season', YES_OR_NO, '[Week] <= Farm[Season ends]'),
    ),
    ...group(
      'Tending',
      computed('tending-until-it', 'Tending until it', HOURS, tendedUntil('[Week]'), {
        note: 'Hours of watering, feeding and looking plantings over, from the start of the season.',
        decimals: 1,
      }),
      computed('tending', 'Tending', HOURS, `ROUND(MAX(0 h; ${tendedUntil('[Next]')} - [Tending until it]); ${DUST})`, {
        note: 'This week, of all plantings in the ground.',
        decimals: 1,
      }),
      computed('tend-on', 'Tend on', DATE, 'IF([Tending] > 0 h; [Week] + 1 day)'),
    ),
  ],
  checks: [],
  cautions: [],
};
