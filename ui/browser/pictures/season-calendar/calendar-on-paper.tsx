// The season calendar on paper: so many beds a drawing as a page has room for, the months over each. The picture prints itself so, and
// so does the calendar among the pages for paper.

import type { ComponentChildren } from 'preact';
import type { Book } from '../../../../engine/index.ts';
import type { LegendItem } from '../kit/frame.tsx';
import type { PaperSize } from '../kit/paper-size.ts';
import './calendar.css';
import { CalendarDrawing } from './calendar-drawing.tsx';
import { calendarParts, layCalendar, namesWidth } from './calendar-layout.ts';
import type { SeasonCalendar } from './season-calendar.ts';

export const CALENDAR_LEGEND: readonly LegendItem[] = [
  { mark: 'mark-planting', words: 'dates typed' },
  { mark: 'mark-proposed', words: 'dates proposed' },
  { mark: 'mark-harvest', words: 'being picked' },
  { mark: 'mark-soft', words: 'bed free, from the earliest day to the latest' },
  { mark: 'mark-over', words: 'too full' },
];

/** A drawing a page. */
export function calendarOnPaper(
  book: Book,
  calendar: SeasonCalendar,
  { width, tall }: PaperSize,
): readonly ComponentChildren[] {
  const left = namesWidth(calendar, width);
  return calendarParts(calendar, tall).map((part) => (
    <CalendarDrawing
      key={part.lines[0]?.bed}
      book={book}
      calendar={part}
      laid={layCalendar(part, width, left)}
      width={width}
    />
  ));
}
