// How much was done of a job: a line of the records, where results and what is learned read it, of the job's planting and day. Pure:
// from the engine's queries; a job opened on the phone and the tests call it.

import type { Book } from '../../../../engine/index.ts';
import { TASKS } from '../../glance/week-jobs.ts';
import { PLANTINGS } from '../../panels/columns.ts';
import { type AskedRow, askRow, askRows } from '../../pictures/kit/ask.ts';
import { canNote, type Noted, type NoteKind, notedOf, PICKING, RECORDS, SOWING } from './day.ts';

/** What the amount is noted as, by the job. */
const OF_JOBS: Readonly<Record<string, NoteKind>> = {
  Sow: SOWING,
  'Sow in bed': SOWING,
  'Set out': { kind: 'set out', words: 'A setting out', weighed: false },
  Pick: PICKING,
  'Lift and cure': PICKING,
  'Clean and store': { kind: 'weighed cured', words: 'A weighing', weighed: true },
};

/** What is noted when a job is done; undefined where nothing is. */
export function noteOfJob(job: AskedRow): NoteKind | undefined {
  return OF_JOBS[job.text('job')];
}

/** The column of the records in which a line says how much. */
type AmountColumn = 'amount' | 'count';

export interface JobAmount {
  readonly note: NoteKind;
  readonly planting: Noted;
  /** The civil day it was done, or today. */
  readonly on: number;
  /** The lines that say it already: rows of the records by id. */
  readonly noted: readonly { readonly row: string; readonly column: AmountColumn }[];
}

/** Of the job in a slot of the sheet of jobs; undefined where it has no planting, or no amount is noted of such a job. */
export function jobAmount(book: Book, slot: number, today: number): JobAmount | undefined {
  const job = askRow(book, TASKS, slot);
  const note = noteOfJob(job);
  const planting = job.figure('planting');
  if (note === undefined || planting === undefined || !canNote(book)) return undefined;
  const on = job.figure('done-on') ?? today;
  const noted = askRows(book, RECORDS).flatMap((row) =>
    row.figure('planting') === planting && row.figure('on') === on && row.text('what') === note.kind
      ? [{ row: row.id, column: columnOf(row, note) }]
      : [],
  );
  return { note, planting: notedOf(book, askRow(book, PLANTINGS, planting)), on, noted };
}

/** The one that is filled, else the one that such a line is usually in. */
function columnOf(row: AskedRow, { weighed }: NoteKind): AmountColumn {
  if (row.figure('amount') !== undefined) return 'amount';
  return row.figure('count') !== undefined || !weighed ? 'count' : 'amount';
}
