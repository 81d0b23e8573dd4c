// A week's jobs on paper, with boxes to tick: late ones first, then day by day, and room to write what they took. What is done to
// the same things on the same day, as picking and then washing and packing them, shares a line. Pure.

import { type Book, mondayOf, settings } from '../../../engine/index.ts';
import { type Job, weekJobs } from '../glance/week-jobs.ts';
import { dayWords } from '../store/day-words.ts';
import { grouped } from '../store/grouped.ts';
import {
  counted,
  farmName,
  type Paper,
  type PaperCell,
  type PaperTable,
  toWrite,
  unbroken,
  unbrokenIfShort,
  words,
} from './paper.ts';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

const COLUMNS = [...words('Job', 'Planting', 'Where', 'How much', 'Hours'), ...toWrite({ Who: 8, Took: 8, Notes: 16 })];

/** Undefined where the workbook has no sheet of jobs. */
export function weekOnPaper(book: Book, day: number): Paper | undefined {
  const week = weekJobs(book, day);
  if (week === undefined) return undefined;
  // What is to be done before a week that is still to come is not late yet.
  const ahead = week.monday > mondayOf(settings(book).today);
  const open = week.jobs.filter(({ done, late }) => !done && !(late && ahead));
  // The days of the week as the dates beside them are written.
  const days = settings(book).writing?.weekdays ?? DAYS;
  const headingOf = ({ on, late }: Job): string =>
    late ? 'Late' : `${days[on - week.monday] ?? ''} ${dayWords(book, on)}`;
  const tables = [...grouped(open, headingOf)].map(
    ([heading, jobs]): PaperTable => ({
      heading,
      boxes: false,
      columns: COLUMNS,
      rows: [...grouped(jobs, lineOf).values()].map(rowOf),
    }),
  );
  const until = dayWords(book, week.monday + 6);
  return {
    title: `Jobs of week ${week.week.slice(-2)}, ${dayWords(book, week.monday)} to ${until}`,
    farm: farmName(book),
    says:
      open.length === 0
        ? 'Nothing is to be done this week.'
        : `${counted(open.length, 'job')}${ahead ? '' : `, about ${week.hours}`}.`,
    tables,
  };
}

/** Jobs with the same line are written on one; one that is about no planting has a line of its own. */
function lineOf({ row, planting, where, amount, who, on }: Job): string {
  return JSON.stringify(planting === '' ? row : [planting, where, amount, who, on]);
}

function rowOf(jobs: readonly Job[]): readonly PaperCell[] {
  const [{ planting = '', where = '', amount = '', who = '' } = {}] = jobs;
  // Hours stand under 'Hours', and need no unit there.
  const hours = jobs.flatMap((job) => (job.hours === '' ? [] : [job.hours.replace(/ h$/, '')])).join(' + ');
  const what = jobs.map((job) => job.what);
  const place = where === planting ? '' : where;
  return [what, unbrokenIfShort(planting), unbrokenIfShort(place), unbroken(amount), unbroken(hours), who, '', ''];
}
