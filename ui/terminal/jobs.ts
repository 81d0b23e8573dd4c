// `jobs` and `calendar`: what is to be done in a week as a sheet to print, and all jobs as a calendar file.

import { isoDate, mondayOf, mondayOfWeek, showDate, weekName } from '../../engine/index.ts';
import { calendarOf, handsIn, hoursOfJob, type Job, jobsOf } from '../../sheets-templates/jobs.ts';
import type { Given } from './arguments.ts';
import { aligned } from './columns.ts';
import { during } from './progress.ts';
import { openWorkbook, writeOut } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** A week's sheet: what is late, then day by day, then the hours. */
export async function printJobs({ words: [file = ''], values }: Given, world: World): Promise<number> {
  const monday = mondayAsked(values.get('week'), world.today);
  const book = await openWorkbook(file, world);
  const isShown = (on: number, status: string): boolean => on < monday + 7 && (on >= monday || status === 'late');
  const jobs =
    (await workedOut(world, () => jobsOf(book, isShown))) ??
    refuse(`${file} has no list of jobs: only season workbooks do.`);
  const week = jobs.filter(({ on }) => on >= monday);
  const late = jobs.filter(({ on }) => on < monday);
  world.out(`Jobs of ${weekName(monday)}, ${showDate(monday)} to ${showDate(monday + 6)}\n`);
  if (late.length > 0)
    world.out(
      `\nLate\n${aligned(
        late.map((job) => [isoDate(job.on), ...cellsOf(job)]),
        [4],
      )}`,
    );
  WEEKDAYS.forEach((day, at) => {
    const today = week.filter(({ on }) => on === monday + at);
    if (today.length > 0) world.out(`\n${day} ${showDate(monday + at)}\n${aligned(today.map(cellsOf), [3])}`);
  });
  if (week.length === 0) world.out('\nNothing falls due this week.\n');
  world.out(`\n${hoursInWords([...late, ...week], handsIn(book, monday))}\n`);
  return 0;
}

function workedOut<T>(world: World, work: () => T): Promise<T> {
  return during(world, 'Working out the jobs ...', work);
}

function mondayAsked(week: string | undefined, today: number): number {
  if (week === undefined) return mondayOf(today);
  return mondayOfWeek(week) ?? refuse(`--week takes a week such as ${weekName(today)}, and “${week}” is none.`);
}

/** The job, where, how much, hours, who, whether it is done, the note. */
function cellsOf({ what, planting, where, amounts, hours, who, status, note }: Job): readonly string[] {
  const place = [planting, where].filter((part) => part !== '').join(', ');
  return [
    `[${status === 'done' ? 'x' : ' '}] ${what}`,
    place,
    amounts.join(', '),
    hoursOfJob(hours),
    [who, note].filter((part) => part !== '').join('; '),
  ].map(onOneLine);
}

function hoursInWords(jobs: readonly Job[], available: number | undefined): string {
  const open = jobs.filter(({ status }) => status !== 'done');
  const hours = open.reduce((sum, job) => sum + (job.hours ?? 0), 0);
  const count = `${open.length} ${open.length === 1 ? 'job' : 'jobs'} to do, ${hours.toFixed(1)} h`;
  return available === undefined ? `${count}.` : `${count}; the hands have ${available.toFixed(0)} h.`;
}

/** Writes the jobs as an iCalendar file. */
export async function saveCalendar(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  const out = given.values.get('out');
  if (out === undefined) return refuse(`Say which file to write: calendar ${file} --out jobs.ics.`);
  const book = await openWorkbook(file, world);
  const jobs =
    (await workedOut(world, () => jobsOf(book))) ?? refuse(`${file} has no list of jobs: only season workbooks do.`);
  const calendar = await during(world, `Writing ${out} ...`, () => calendarOf(book, jobs, world.today));
  writeOut(out, calendar, given, world);
  world.out(`Wrote ${out}: ${jobs.length} jobs.\n`);
  return 0;
}
