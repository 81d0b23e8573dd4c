// Weeks on a picture: the Mondays of a season, and figures that stand for days laid on weeks. Pure.

import { type Book, mondayOf } from '../../../../engine/index.ts';
import type { Season } from '../../panels/read.ts';
import { dayWords } from '../../store/day-words.ts';

export interface Week {
  readonly from: number;
  /** The day after its Sunday. */
  readonly until: number;
}

export function weeksOf({ first, last }: Season): readonly Week[] {
  const weeks: Week[] = [];
  for (let monday = mondayOf(first); monday <= last; monday += 7) weeks.push({ from: monday, until: monday + 7 });
  return weeks;
}

/** The number of the week that a day is in: the first before them all, the last after them. */
export function weekAt(weeks: readonly Week[], day: number): number {
  const found = weeks.findIndex(({ until }) => day < until);
  return found < 0 ? Math.max(0, weeks.length - 1) : found;
}

/** The day whose beds stand for a week: its Thursday, or the day of the season that is nearest to that. */
export function dayOfWeek({ from }: Pick<Week, 'from'>, { first, last }: Season): number {
  return Math.max(first, Math.min(last, from + 3));
}

/** Something that takes so much from one day until before another. */
export interface Span {
  readonly from: number;
  readonly until: number;
  readonly amount: number;
}

/** The most that stands together on any one day of a week. */
export function mostInWeek(spans: readonly Span[], { from, until }: Week): number {
  let most = 0;
  for (let day = from; day < until; day += 1) {
    let sum = 0;
    for (const span of spans) if (span.from <= day && day < span.until) sum += span.amount;
    most = Math.max(most, sum);
  }
  return most;
}

/** 'Week of 5 Jul 2027'. */
export function weekWords(book: Book, { from }: Pick<Week, 'from'>): string {
  return `Week of ${dayWords(book, from)}`;
}
