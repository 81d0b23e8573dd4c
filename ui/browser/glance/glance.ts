// The season at a glance: what a workbook opens on. Puts together the strip of the year, this week's jobs, what needs attention,
// the totals and the calendar of beds. Pure; the page's glance and the tests call it.

import { type Book, FINDING_LEVELS, type Finding } from '../../../engine/index.ts';
import { PLANTINGS } from '../panels/columns.ts';
import { hasColumns } from '../pictures/kit/ask.ts';
import { CALENDAR_NEEDS, type SeasonCalendar, seasonCalendar } from '../pictures/season-calendar/season-calendar.ts';
import { type FindingGroup, groupFindings } from '../store/finding-groups.ts';
import { seasonTotals, type Total } from './totals.ts';
import { type WeekJobs, weekJobs } from './week-jobs.ts';
import { type YearStrip, yearStrip } from './year-strip.ts';

export interface Glance {
  readonly strip: YearStrip | undefined;
  readonly jobs: WeekJobs | undefined;
  /** Errors and warnings, and plantings without a date; other notes ask for nothing. */
  readonly attention: readonly FindingGroup[];
  readonly totals: readonly Total[];
  readonly calendar: SeasonCalendar | undefined;
}

/** Of such a planting neither job, bench nor bed is known: the whole page is silent about it. */
function isWithoutDate({ sheet, check }: Finding): boolean {
  return sheet === PLANTINGS && check === 'no-date';
}

/** Of one level what concerns the whole season, as that it costs more than it brings, before what concerns some rows. */
function weightiestFirst(groups: readonly FindingGroup[]): readonly FindingGroup[] {
  const weight = ({ first, rows }: FindingGroup): number =>
    FINDING_LEVELS.indexOf(first.level) * 2 + (rows.length === 0 ? 0 : 1);
  return groups.toSorted((a, b) => weight(a) - weight(b));
}

export function glanceOf(book: Book, today: number, findings: readonly Finding[]): Glance {
  return {
    strip: yearStrip(book, today),
    jobs: weekJobs(book, today),
    attention: weightiestFirst(
      groupFindings(findings.filter((finding) => finding.level !== 'note' || isWithoutDate(finding))),
    ),
    totals: seasonTotals(book),
    calendar: hasColumns(book, CALENDAR_NEEDS) ? seasonCalendar(book, today) : undefined,
  };
}
