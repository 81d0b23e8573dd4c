// Where the name of a planting stands on the season calendar: on its bar and over what is free after it, or before it where there is
// more room. Pure; in pixels.

import { fitted, widthOfText } from '../kit/frame.tsx';
import { barPlace, type LaidCalendar, type LaidLine } from './calendar-layout.ts';
import type { CalendarBar } from './season-calendar.ts';

export interface NameOfBar {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
  /** Cut where there is no room; '' where not even its beginning fits. */
  readonly text: string;
}

/** No letters fit on a lower bar. */
const LOWEST = 12;
const APART = 4;

export function nameOfBar(laid: LaidCalendar, place: LaidLine, bar: CalendarBar): NameOfBar {
  const at = barPlace(laid, place, bar);
  const y = at.y + Math.min(at.height / 2 + 4.5, at.height - 2);
  const start = { x: at.x + APART, y, anchor: 'start' } as const;
  if (at.height < LOWEST) return { ...start, text: '' };
  const beside = place.line.bars
    .filter((other) => other !== bar)
    .map((other) => barPlace(laid, place, other))
    .filter((other) => other.y < at.y + at.height && at.y < other.y + other.height);
  const until = Math.min(laid.right, ...beside.flatMap(({ x }) => (x > at.x ? [x] : [])));
  const room = Math.max(at.width, until - at.x) - 2 * APART;
  const from = Math.max(laid.left, ...beside.flatMap(({ x, width }) => (x < at.x ? [x + width] : [])));
  const wide = widthOfText(bar.name);
  if (room < wide && at.x - from - 2 * APART >= wide) return { x: at.x - APART, y, anchor: 'end', text: bar.name };
  return { ...start, text: fitted(bar.name, room) };
}
