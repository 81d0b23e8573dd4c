// Of which planting something is noted: those first of which it is due. Pure: from the engine's queries; the phone's note and the tests
// call it.

import type { Book } from '../../../../engine/index.ts';
import { TASKS } from '../../glance/week-jobs.ts';
import { PLANTINGS } from '../../panels/columns.ts';
import { type AskedRow, askRows, hasColumns } from '../../pictures/kit/ask.ts';
import { type Kind, type Noted, notedOf, RECORDS } from './day.ts';
import { noteOfJob } from './job-amount.ts';

/** A job that was due longer ago was done and not ticked off, or given up. */
const DUE_DAYS = 7;

interface Likely {
  readonly noted: Noted;
  /** Days since it was due and not done, since its time or until then, and since it was last noted; without end where there is none. */
  readonly by: readonly number[];
}

/**
 * All plantings: those first of which a job of this kind is due, then those in their time for it (in harvest, standing, near their
 * sowing), what was noted last in front, then those near to it.
 */
export function plantingsFor(book: Book, kind: Kind, today: number): readonly Noted[] {
  const due = lastDays(book, TASKS, today, (row) => !row.yes('is-done') && noteOfJob(row)?.kind === kind);
  const last = lastDays(book, RECORDS, today, (row) => row.text('what') === kind);
  return askRows(book, PLANTINGS)
    .map((row): Likely => {
      const sinceDue = today - (due.get(row.slot) ?? Number.NEGATIVE_INFINITY);
      const sinceLast = today - (last.get(row.slot) ?? Number.NEGATIVE_INFINITY);
      return {
        noted: notedOf(book, row),
        by: [sinceDue < DUE_DAYS ? sinceDue : Number.POSITIVE_INFINITY, apartFrom(row, kind, today), sinceLast],
      };
    })
    .sort((a, b) => {
      const at = a.by.findIndex((days, i) => days !== b.by[i]);
      if (at < 0) return a.noted.name.localeCompare(b.noted.name, 'en', { numeric: true });
      return (a.by[at] ?? 0) < (b.by[at] ?? 0) ? -1 : 1;
    })
    .map(({ noted }) => noted);
}

/** The last day up to today on which each planting has such a row, by the slots of plantings. */
function lastDays(
  book: Book,
  sheet: string,
  today: number,
  counts: (row: AskedRow) => boolean,
): ReadonlyMap<number, number> {
  const days = new Map<number, number>();
  if (!hasColumns(book, { [sheet]: ['planting', 'on'] })) return days;
  for (const row of askRows(book, sheet)) {
    const [planting, on] = [row.figure('planting'), row.figure('on')];
    if (
      planting === undefined ||
      on === undefined ||
      on > today ||
      on <= (days.get(planting) ?? Number.NEGATIVE_INFINITY)
    )
      continue;
    if (counts(row)) days.set(planting, on);
  }
  return days;
}

/** Days from the time in which something is noted of a planting; none within it. */
function apartFrom(row: AskedRow, kind: Kind, today: number): number {
  const day = (column: string): number => row.figure(column) ?? Number.NaN;
  const from = kind === 'picked' ? day('harvest') : kind === 'stood' ? day('planted-out') : day('sown') - 14;
  const until = kind === 'picked' ? day('harvest-ends') + 7 : kind === 'stood' ? day('bed-free') : day('sown') + 21;
  const apart = today < from ? from - today : today > until ? today - until : 0;
  return Number.isFinite(apart) ? apart : Number.POSITIVE_INFINITY;
}
