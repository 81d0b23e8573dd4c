// The phone's day: jobs due by the place where they are done, and what can be noted of which planting. Pure: from the engine's queries;
// the phone's first place and the tests call it.

import { type Book, type Command, isoDate, readInput, rowName, rowWithId } from '../../../../engine/index.ts';
import { type Job, TASKS, TICK, type WeekJobs, weekJobs } from '../../glance/week-jobs.ts';
import { PLANTINGS } from '../../panels/columns.ts';
import { type AskedRow, askRow, hasColumns, type Needs } from '../../pictures/kit/ask.ts';
import { grouped } from '../../store/grouped.ts';

export interface JobsAt {
  /** The bed, or where else; '' for what has no place. */
  readonly where: string;
  readonly jobs: readonly Job[];
}

export interface Day {
  /** Late ones, and those due today, by place. */
  readonly due: readonly JobsAt[];
  /** Those of the rest of the week. */
  readonly later: readonly JobsAt[];
  /** How many there are of both, those left out among them. */
  readonly counts: { readonly due: number; readonly later: number };
  readonly week: WeekJobs;
}

/** How many jobs are wanted at most of those due and of those to come. */
export interface Most {
  readonly due: number;
  readonly later: number;
}

/**
 * Undefined where the workbook has no sheet of jobs. Where there are more than are wanted, those nearest to today stay: what has
 * been late longest is left out first.
 */
export function dayOf(book: Book, today: number, most: Most): Day | undefined {
  const week = weekJobs(book, today);
  if (week === undefined) return undefined;
  const due = week.jobs.filter(({ on }) => on <= today);
  const later = week.jobs.filter(({ on }) => on > today);
  return {
    due: byPlace(due.slice(Math.max(0, due.length - most.due))),
    later: byPlace(later.slice(0, most.later)),
    counts: { due: due.length, later: later.length },
    week,
  };
}

function byPlace(jobs: readonly Job[]): readonly JobsAt[] {
  return [...grouped(jobs, ({ where }) => where)]
    .map(([where, within]): JobsAt => ({ where, jobs: within }))
    .sort((a, b) => a.where.localeCompare(b.where, 'en', { numeric: true }));
}

/** What ticking a job off puts down: that it is done, and today; or takes both away. */
export function tickCommands({ row, done }: Job, today: number): readonly Command[] {
  const cell = (column: string, content: boolean | { readonly date: string } | null): Command => ({
    command: 'put cell',
    sheet: TASKS,
    row,
    column,
    content,
  });
  return [cell(TICK, done ? null : true), cell('done-on', done ? null : { date: isoDate(today) })];
}

export const RECORDS = 'records';

export const NOTE_NEEDS: Needs = { [RECORDS]: ['planting', 'on', 'what', 'amount', 'count', 'of'] };

/** As the sheet of records calls it. */
export type Kind = 'sown' | 'stood' | 'picked' | 'set out' | 'weighed cured';

/** Something that can be noted, and whether it is weighed rather than counted. */
export interface NoteKind {
  readonly kind: Kind;
  readonly words: string;
  readonly weighed: boolean;
}

export const PICKING: NoteKind = { kind: 'picked', words: 'A picking', weighed: true };
export const SOWING: NoteKind = { kind: 'sown', words: 'A sowing', weighed: false };

/** What can be noted in three touches: what, of which planting, how much. */
export const KINDS: readonly NoteKind[] = [PICKING, { kind: 'stood', words: 'A count', weighed: false }, SOWING];

export function canNote(book: Book): boolean {
  return hasColumns(book, NOTE_NEEDS) && hasColumns(book, { [PLANTINGS]: ['planting'] });
}

export interface Noted {
  readonly id: string;
  readonly name: string;
  readonly bed: string;
}

/** A planting as notes name it. */
export function notedOf(book: Book, row: AskedRow): Noted {
  return { id: row.id, name: rowName(book, PLANTINGS, row.slot), bed: row.text('bed') };
}

/** The planting of an id; undefined where there is none. */
export function notedWithId(book: Book, id: string): Noted | undefined {
  const slot = rowWithId(book, PLANTINGS, id);
  return slot === undefined ? undefined : notedOf(book, askRow(book, PLANTINGS, slot));
}

/** What is typed of a note: a figure by weight or by count, and out of how many it was counted. */
export interface Typed {
  readonly figure: string;
  readonly weighed: boolean;
  readonly of: string;
  /** The civil day. */
  readonly on: number;
}

/** Why a count can't stand: it is more than it was counted out of; undefined where it isn't, or either figure can't be read. */
export function countedTooMany(book: Book, { figure, of }: Pick<Typed, 'figure' | 'of'>): string | undefined {
  const read = (column: string, typed: string): number | undefined => {
    const input = readInput(book, { sheet: RECORDS, row: '', column }, typed);
    return input.ok ? input.values[0]?.value : undefined;
  };
  const [counted, outOf] = [read('count', figure), read('of', of)];
  if (counted === undefined || outOf === undefined || counted <= outOf) return undefined;
  return `${figure.trim()} are more than the ${of.trim()} they were counted out of: look at both.`;
}

/** The record of a note; blank figures are left out. */
export function noteCommand(planting: Noted, kind: Kind, { figure, weighed, of, on }: Typed): Command {
  return {
    command: 'insert row',
    sheet: RECORDS,
    entries: { planting: planting.name, on: isoDate(on), what: kind, [weighed ? 'amount' : 'count']: figure, of },
  };
}
