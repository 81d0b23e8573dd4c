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
