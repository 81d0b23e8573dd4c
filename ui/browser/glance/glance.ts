// The season at a glance: what a workbook opens on. Puts together the strip of the year, this week's jobs, what needs attention,
// the totals and the calendar of beds. Pure; the page's glance and the tests call it.

import type { Book, Finding } from '../../../engine/index.ts';
import { hasColumns } from '../pictures/kit/ask.ts';
import { CALENDAR_NEEDS, type SeasonCalendar, seasonCalendar } from '../pictures/season-calendar/season-calendar.ts';
import { type FindingGroup, groupFindings } from '../store/finding-groups.ts';
import { seasonTotals, type Total } from './totals.ts';
import { type WeekJobs, weekJobs } from './week-jobs.ts';
import { type YearStrip, yearStrip } from './year-strip.ts';

export interface Glance {
  readonly strip: YearStrip | undefined;
  readonly jobs: WeekJobs | undefined;
  /** Errors and warnings; notes ask for nothing. */
  readonly attention: readonly FindingGroup[];
  readonly totals: readonly Total[];
  readonly calendar: SeasonCalendar | undefined;
}

export function glanceOf(book: Book, today: number, findings: readonly Finding[]): Glance {
  return {
    strip: yearStrip(book, today),
    jobs: weekJobs(book, today),
    attention: groupFindings(findings.filter(({ level }) => level !== 'note')),
    totals: seasonTotals(book),
    calendar: hasColumns(book, CALENDAR_NEEDS) ? seasonCalendar(book, today) : undefined,
  };
}
