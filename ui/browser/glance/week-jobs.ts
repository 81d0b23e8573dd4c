// This week's jobs, out of the sheet of jobs: what is late, what is due from Monday to Sunday, and when the next comes where
// there is none. Pure; the season at a glance, the phone's day and the week's sheet on paper call it.

import { type Book, mondayOf, weekName } from '../../../engine/index.ts';
import { oneOf } from '../../../sheets-templates/jobs.ts';
import { type AskedRow, askRows, hasColumns, inUnit, type Needs } from '../pictures/kit/ask.ts';

export const TASKS = 'tasks';

const ON = 'on';
const DONE = 'is-done';
const HOURS = 'hours-counted';
/** Three minutes, in days: less would be said as no time at all. */
const HARDLY_ANY = 3 / 60 / 24;
/** The column in which a person ticks a job off. */
export const TICK = 'done';

export const JOB_NEEDS: Needs = { [TASKS]: [ON, 'what', TICK, DONE, HOURS] };

export interface Job {
  /** The row of the sheet of jobs. */
  readonly row: string;
  readonly what: string;
  readonly planting: string;
  readonly crop: string;
  readonly where: string;
  readonly kind: string;
  /** '300 pieces, 7 trays, 50 ft': what there is to do of it, in the sheet's own units. */
  readonly amount: string;
  /** '1.2 h'; '' where none are reckoned. */
  readonly hours: string;
  readonly on: number;
  readonly late: boolean;
  readonly done: boolean;
  readonly who: string;
}

export interface WeekJobs {
  readonly monday: number;
  /** '2027-W15'. */
  readonly week: string;
  /** Late ones first, then by day. */
  readonly jobs: readonly Job[];
  /** Of those not done yet, in words: '12 h'. */
  readonly hours: string;
  /** The day of the first job after this week. */
  readonly next: number | undefined;
}

/** Undefined where the workbook has no sheet of jobs. `day` is any day of the week. */
export function weekJobs(book: Book, day: number): WeekJobs | undefined {
  if (!hasColumns(book, JOB_NEEDS)) return undefined;
  const monday = mondayOf(day);
  const jobs: Job[] = [];
  let hours = 0;
  let next: number | undefined;
  for (const row of askRows(book, TASKS)) {
    const on = row.figure(ON);
    if (on === undefined) continue;
    const done = row.yes(DONE);
    if (on >= monday + 7) {
      if (!done && (next === undefined || on < next)) next = on;
    } else if (on >= monday || !done) {
      jobs.push(jobOf(row, on, done, monday));
      if (!done) hours += row.figure(HOURS) ?? 0;
    }
  }
  jobs.sort((a, b) => a.on - b.on || a.where.localeCompare(b.where));
  return { monday, week: weekName(monday), jobs, hours: inUnit(book, TASKS, HOURS, hours, 1), next };
}

function jobOf(row: AskedRow, on: number, done: boolean, monday: number): Job {
  return {
    row: row.id,
    what: row.text('what'),
    planting: row.text('planting'),
    crop: row.text('crop'),
    where: row.text('where'),
    kind: row.text('kind'),
    amount: amountOf(row),
    hours: (row.figure(HOURS) ?? 0) < HARDLY_ANY ? '' : row.full(HOURS),
    on,
    late: !done && on < monday,
    done,
    who: row.text('who-name'),
  };
}

const PIECES = 'pieces';
/** What they are: 'blocks', 'bunches'. */
const PIECES_ARE = 'pieces-are';

const AMOUNTS: readonly (readonly [string, string])[] = [
  [PIECES, 'pieces'],
  ['trays', 'trays'],
  ['weight', ''],
  ['length', ''],
];

function amountOf(row: AskedRow): string {
  return AMOUNTS.flatMap(([column, unit]) => {
    // The last of a harvest may be less than its figures show: it is passed over.
    return /[1-9]/.test(row.text(column)) ? [wordsOf(row, column, unit)] : [];
  }).join(', ');
}

function wordsOf(row: AskedRow, column: string, unit: string): string {
  const text = row.full(column);
  if (unit === '') return text;
  const many = (column === PIECES && row.text(PIECES_ARE)) || unit;
  return `${text} ${text === '1' ? oneOf(many) : many}`;
}
