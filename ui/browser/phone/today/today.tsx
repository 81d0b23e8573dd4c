// The phone's first place: jobs due at each bed, done with one touch; a picking, a count or a sowing noted in three; a bed or planting
// found by its name.

import { type Signal, useSignal } from '@preact/signals';
import { useState } from 'preact/hooks';
import { message, settings } from '../../../../engine/index.ts';
import { ToQuestions } from '../../first-visit/to-questions.tsx';
import type { Job } from '../../glance/week-jobs.ts';
import { findPlaces } from '../../page/find-places.ts';
import { change, UNDO } from '../../store/change.ts';
import { dayWords } from '../../store/day-words.ts';
import { tell } from '../../store/notices.ts';
import { workbook } from '../../store/workbook.ts';
import { leaveNote, phonePlace } from '../places.ts';
import { SearchBox } from '../search-box.tsx';
import { FoundPlaces } from '../sheet-places.tsx';
import { canNote, dayOf, type JobsAt, tickCommands } from './day.ts';
import { JobDetails } from './job-details.tsx';
import { NoteDown } from './note-down.tsx';
import './today.css';

const FOUND = 30;
/** So many jobs stand in a list at first; a press shows as many more. */
const AT_ONCE = 60;

export function Today() {
  const wanted = useSignal('');
  const due = useSignal(AT_ONCE);
  const later = useSignal(AT_ONCE);
  const book = workbook();
  const { today } = settings(book);
  const typed = wanted.value.trim();
  // The jobs of a large farm take longer to put together than a place to find.
  const day = typed === '' ? dayOf(book, today, { due: due.value, later: later.value }) : undefined;
  return (
    <div class="today">
      <SearchBox label="Find a bed, planting or sheet" wanted={wanted} />
      {typed !== '' ? <FoundPlaces found={findPlaces(book, typed, FOUND)} /> : null}
      {typed === '' && canNote(book) ? <NoteDown /> : null}
      {typed === '' ? <ToQuestions /> : null}
      {day !== undefined ? (
        <>
          <h2>{dayWords(book, today)}</h2>
          {day.due.length === 0 ? (
            <p class="phone-nothing">
              Nothing is due today.
              {day.later.length === 0 && day.week.next !== undefined
                ? ` The next job comes on ${dayWords(book, day.week.next)}.`
                : ''}
            </p>
          ) : null}
          {day.due.map((place) => (
            <Place key={place.where} place={place} today={today} />
          ))}
          <ShowMore most={due} count={day.counts.due} what="due by today" />
          {day.later.length === 0 ? null : <h2>Later this week</h2>}
          {day.later.map((place) => (
            <Place key={place.where} place={place} today={today} />
          ))}
          <ShowMore most={later} count={day.counts.later} what="later this week" />
        </>
      ) : null}
    </div>
  );
}

interface ShowMoreProps {
  readonly most: Signal<number>;
  readonly count: number;
  /** When the jobs come: 'later this week'. */
  readonly what: string;
}

function ShowMore({ most, count, what }: ShowMoreProps) {
  const left = count - most.value;
  if (left <= 0) return null;
  return (
    <button
      type="button"
      class="phone-more"
      onClick={() => {
        most.value += AT_ONCE;
      }}
    >
      Show {Math.min(AT_ONCE, left)} more of {count} jobs {what}
    </button>
  );
}

function Place({ place: { where, jobs }, today }: { readonly place: JobsAt; readonly today: number }) {
  return (
    <section class="today-place">
      <h3>{where === '' ? 'Anywhere' : where}</h3>
      <ul>
        {jobs.map((job) => (
          <JobRow key={job.row} job={job} today={today} />
        ))}
      </ul>
    </section>
  );
}

function JobRow({ job, today }: { readonly job: Job; readonly today: number }) {
  const [opened, setOpened] = useState(false);
  // The job whose amount is being noted is open after a reload too.
  const place = phonePlace.value;
  const isNoted = place.at === 'today' && place.amountOf === job.row;
  const open = opened || isNoted;
  const turn = (): void => {
    if (isNoted) leaveNote();
    setOpened(!open);
  };
  const { what, planting, amount, hours, on, late, done } = job;
  const about = [planting, amount, hours].filter((part) => part !== '').join(', ');
  const when = late ? `late since ${dayWords(workbook(), on)}` : on === today ? '' : dayWords(workbook(), on);
  return (
    <li class={done ? 'is-done' : undefined}>
      <button
        type="button"
        class="today-tick"
        aria-pressed={done}
        aria-label={`${what}${planting === '' ? '' : `, ${planting}`}: done`}
        onClick={() => tick(job, today)}
      >
        <span aria-hidden="true">{done ? '\u2713' : ''}</span>
      </button>
      <button type="button" class="today-job" aria-expanded={open} onClick={turn}>
        <b>{what}</b>
        <span>{about}</span>
        {when === '' ? null : <span class={late ? 'level level-warning' : undefined}>{when}</span>}
      </button>
      {open ? <JobDetails row={job.row} on={on} /> : null}
    </li>
  );
}

function tick(job: Job, today: number): void {
  const entry = job.done ? 'not done' : 'done';
  const outcome = change(tickCommands(job, today), message('type cell', { column: job.what, entry }));
  if (!outcome.refused) tell(`${job.what}${job.planting === '' ? '' : `, ${job.planting}`}: ${entry}.`, 'done', UNDO);
}
