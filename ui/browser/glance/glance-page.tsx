// The season at a glance in the page: what a workbook opens on. Each part is a door to its sheet.

import { useState } from 'preact/hooks';
import { message, settings } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';
import { opensHalfWay } from '../first-visit/half-way.ts';
import { ToQuestions } from '../first-visit/to-questions.tsx';
import { later } from '../page/later.tsx';
import { PLANTINGS } from '../panels/columns.ts';
import { CalendarPicture } from '../pictures/season-calendar/calendar-picture.tsx';
import { change, UNDO } from '../store/change.ts';
import { dayWords } from '../store/day-words.ts';
import { findings } from '../store/findings.ts';
import { tell } from '../store/notices.ts';
import { goTo } from '../store/selection.ts';
import { view } from '../store/view.ts';
import { steps, workbook } from '../store/workbook.ts';
import { Attention } from './attention.tsx';
import './glance.css';
import { glanceOf } from './glance.ts';
import type { Total } from './totals.ts';
import { type Job, TASKS, TICK, type WeekJobs } from './week-jobs.ts';
import { YearStripPicture } from './year-strip-picture.tsx';

const JOBS_SHOWN = 9;

const FirstVisit = later(() => import('../first-visit/first-visit.tsx').then((part) => part.FirstVisit));

export function GlancePage() {
  const [isHalfWay] = useState(() => opensHalfWay(workbook()));
  return isHalfWay ? <FirstVisit /> : <Glance />;
}

function Glance() {
  const book = workbook();
  const { today, title } = settings(book);
  const { strip, jobs, attention, totals, calendar } = glanceOf(book, today, findings.value);
  return (
    <div class="glance">
      <header class="glance-head">
        <h2>The season at a glance</h2>
        <p>{[dayWords(book, today), strip?.says ?? title].join('. ')}</p>
        {steps().undo === undefined ? <CommandButton id="new season">Begin a season of your own</CommandButton> : null}
        <ToQuestions />
      </header>
      {strip === undefined ? null : <YearStripPicture strip={strip} />}
      <div class="glance-sides">
        <div class="glance-side">
          {jobs === undefined ? null : <Jobs jobs={jobs} />}
          <Attention groups={attention} />
        </div>
        <div class="glance-middle">
          {totals.length === 0 ? null : <Totals totals={totals} />}
          {calendar === undefined ? null : (
            <section class="glance-part">
              <CalendarPicture />
              <button type="button" class="quiet door" onClick={() => goTo(PLANTINGS)}>
                Open Plantings
              </button>
            </section>
          )}
        </div>
      </div>
    </div>
  );
}

function Jobs({ jobs: { jobs, hours, week, next } }: { readonly jobs: WeekJobs }) {
  const open = jobs.filter(({ done }) => !done).length;
  return (
    <section class="glance-part" aria-labelledby="glance-jobs">
      <h3 id="glance-jobs">This week</h3>
      <p class="glance-says">{jobsWords(open, hours, week, next)}</p>
      <ul class="glance-jobs">
        {jobs.slice(0, JOBS_SHOWN).map((job) => (
          <JobLine key={job.row} job={job} />
        ))}
      </ul>
      <p>
        <button type="button" class="quiet door" onClick={() => goTo(TASKS)}>
          {jobs.length > JOBS_SHOWN ? `All ${jobs.length} of this week, and the rest` : 'All jobs of the year'}
        </button>
        <button
          type="button"
          class="quiet door"
          onClick={() => {
            view.value = { at: 'paper', pages: 'week' };
          }}
        >
          The week on paper
        </button>
      </p>
    </section>
  );
}

function jobsWords(open: number, hours: string, week: string, next: number | undefined): string {
  const after = next === undefined ? '' : ` The next comes on ${dayWords(workbook(), next)}.`;
  if (open === 0) return `Week ${week.slice(-2)}: nothing is to be done.${after}`;
  return `Week ${week.slice(-2)}: ${open} ${open === 1 ? 'job' : 'jobs'} to do, about ${hours}.`;
}

function JobLine({ job }: { readonly job: Job }) {
  const { what, planting, where, amount, on, late, done } = job;
  const about = [planting, where === planting ? '' : where].filter((part) => part !== '').join(', ');
  return (
    <li class={done ? 'is-done' : undefined}>
      <label>
        <input type="checkbox" checked={done} onChange={() => tick(job)} />
        <span class="spoken">Done: </span>
        <b>{what}</b>
        <span class="job-about">{about}</span>
      </label>
      <button type="button" class="quiet job-when" onClick={() => goTo(TASKS, job.row)}>
        {late ? <span class="level level-warning">Late</span> : null}
        {[amount, dayWords(workbook(), on)].filter((part) => part !== '').join(', ')}
      </button>
    </li>
  );
}

/** Ticks a job off, or takes the tick away. */
function tick({ row, what, planting, done }: Job): void {
  const content = done ? null : true;
  const entry = done ? 'not done' : 'done';
  const outcome = change(
    [{ command: 'put cell', sheet: TASKS, row, column: TICK, content }],
    message('type cell', { column: what, entry }),
  );
  const about = planting === '' ? what : `${what}, ${planting}`;
  if (!outcome.refused) tell(`${about}: ${entry}.`, 'done', UNDO);
}

function Totals({ totals }: { readonly totals: readonly Total[] }) {
  return (
    <ul class="glance-totals" aria-label="The totals that matter">
      {totals.map(({ name, likely, ends, note, dateless, words, sheet, column }) => (
        <li key={name}>
          <button type="button" title={`${words}, ${note}`} onClick={() => goTo(sheet, undefined, column)}>
            <span class="total-name">{name}</span>
            <b class="total-likely">{likely}</b>
            <span class="total-ends">{[ends, note].filter((part) => part !== '').join(', ')}</span>
            {dateless === '' ? null : <span class="total-ends">{dateless}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}
