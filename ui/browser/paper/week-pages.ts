// A week's jobs on paper, with boxes to tick: late ones first, then day by day, and room to write what they took. Pure.

import { type Book, mondayOf, settings, showDate } from '../../../engine/index.ts';
import { type Job, weekJobs } from '../glance/week-jobs.ts';
import { farmName, grouped, type Paper, type PaperTable, words } from './paper.ts';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** Undefined where the workbook has no sheet of jobs. */
export function weekOnPaper(book: Book, day: number): Paper | undefined {
  const week = weekJobs(book, day);
  if (week === undefined) return undefined;
  // What is to be done before a week that is still to come is not late yet.
  const ahead = week.monday > mondayOf(settings(book).today);
  const open = week.jobs.filter(({ done, late }) => !done && !(late && ahead));
  const headingOf = ({ on, late }: Job): string => (late ? 'Late' : `${DAYS[on - week.monday] ?? ''} ${showDate(on)}`);
  const tables = [...grouped(open, headingOf)].map(
    ([heading, jobs]): PaperTable => ({
      heading,
      boxes: true,
      columns: words('Job', 'Planting', 'Where', 'How much', 'Hours', 'Who', 'Took', 'Notes'),
      rows: jobs.map(({ what, planting, where, amount, hours, who }) => [
        what,
        planting,
        where === planting ? '' : where,
        amount,
        hours,
        who,
        '',
        '',
      ]),
    }),
  );
  const until = showDate(week.monday + 6);
  return {
    title: `Jobs of week ${week.week.slice(-2)}, ${showDate(week.monday)} to ${until}`,
    farm: farmName(book),
    says:
      open.length === 0
        ? 'Nothing is to be done this week.'
        : `${open.length} ${open.length === 1 ? 'job' : 'jobs'}${ahead ? '' : `, about ${week.hours}`}.`,
    tables,
  };
}
