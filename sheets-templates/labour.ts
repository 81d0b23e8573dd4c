// The Labour sheet: hours of all jobs week by week, by what they are spent on, against the hands there are. Reads Tasks and Hands.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, DATE, group, HOURS, made, mondayOf, PLAIN, SHARE, TEXT, type UngroupedColumn } from './authoring.ts';
import { JOB_KINDS } from './hands.ts';

/** No more than a year before the season, whatever date slipped into a job. */
const FIRST =
  'MAX(Farm[Season starts] - 52 weeks; MIN(Farm[Season starts]; MINIFS(Tasks[On]; Tasks[Of another season]; FALSE)))';
const LAST = 'MIN(Farm[Season ends] + 52 weeks; MAX(Farm[Season ends]; MAX(Tasks[On])))';

function ofKind(kind: string): UngroupedColumn {
  const name = `${kind.charAt(0).toUpperCase()}${kind.slice(1)}`;
  return computed(
    kind,
    name,
    HOURS,
    `SUM(SUMIFS(Tasks[Hours counted]; Tasks[Week starts]; [Monday]; Tasks[Kind]; "${kind}"))`,
    { decimals: 1 },
  );
}

export const labourSheet: SheetDeclaration = {
  id: 'labour',
  name: 'Labour',
  question: 'Work',
  about: 'Hours of work week by week, by what they are spent on, against the hours of the hands there are.',
  rows: { from: 'span', first: mondayOf(FIRST), last: LAST, step: 'week', as: made('week', 'Week') },
  columns: [
    ...group(
      'Week',
      computed('monday', 'Monday', DATE, '[Week]'),
      computed('name', 'Name', TEXT, 'TEXT(YEAR([Week] + 3 days); "0") & "-W" & TEXT(ISOWEEKNUM([Week]); "00")'),
      computed('jobs', 'Jobs', PLAIN, 'COUNTIFS(Tasks[Week starts]; [Monday])', { decimals: 0 }),
    ),
    ...group('Hours', ...JOB_KINDS.map(ofKind)),
    ...group(
      'Against hands',
      computed('hours', 'Hours', HOURS, 'SUM(SUMIFS(Tasks[Hours counted]; Tasks[Week starts]; [Monday]))', {
        note: 'Of all jobs of the week.',
        decimals: 1,
      }),
      computed('taken', 'Taken', HOURS, 'SUM(SUMIFS(Tasks[Hours taken]; Tasks[Week starts]; [Monday]))', {
        note: 'Noted so far.',
        decimals: 1,
      }),
      computed(
        'available',
        'Available',
        HOURS,
        `IF(COUNTIFS(Hands[Hours a week]; ">0 h") > 0; SUMIFS(Hands[Hours a week]; Hands[From]; "<=" & ([Monday] + 6 days); Hands[Until]; ">=" & [Monday]))`,
        { note: 'By Hands; blank while nobody is entered there.', decimals: 0 },
      ),
      computed('over', 'Over', HOURS, 'IF(NOT(ISBLANK([Available])); MAX(0 h; [Hours] - [Available]))', {
        note: 'More than the hands have.',
        decimals: 1,
      }),
      computed('busy', 'Busy', SHARE, 'IF([Available] > 0 h; [Hours] / [Available])', { decimals: 0 }),
      computed('late', 'Late', PLAIN, 'COUNTIFS(Tasks[Week starts]; [Monday]; Tasks[Status]; "late")', {
        note: 'Jobs of this week still open though it is over.',
        decimals: 0,
      }),
    ),
  ],
  checks: [
    {
      id: 'more-work-than-hands',
      name: 'More work than hands',
      level: 'warning',
      column: 'over',
      says: 'IF([Over] > MAX(0.5 h; 10% * [Available]); TEXT([Over] / 1 h; "0.0") & " hours more than there are hands for: move jobs, plant less, or find help for " & [Name] & ".")',
    },
  ],
  cautions: [
    'Rates leave out set-up, carrying and breaks: ten to twenty percent more is common.',
    'Hours of work, pay and rest are set by local law.',
  ],
};
