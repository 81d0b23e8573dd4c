// Where the name of a planting stands on the season calendar: on its bar and over what is free after it, or before it where there is
// more room. Pure; in pixels.

import { fitted, widthOfText } from '../../drawing/text-width.ts';
import { type BarPlace, barPlace, HARVEST, type LaidCalendar, type LaidLine } from './calendar-layout.ts';
import type { CalendarBar } from './season-calendar.ts';

export interface NameOfBar {
  readonly bar: CalendarBar;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
  /** Cut where there is no room; '' where not even its beginning fits. */
  readonly text: string;
}

/** No letters fit on a lower bar. */
const LOWEST = 12;
const APART = 4;
/** Of a line of letters: what they reach over it, and what is kept free under it. */
const [TALL, UNDER] = [9.5, 2];

/** Of all bars of a line. */
export function namesOfBars(laid: LaidCalendar, place: LaidLine): readonly NameOfBar[] {
  const { bars } = place.line;
  const places = bars.map((bar) => barPlace(laid, place, bar));
  return bars.map((bar, index) => nameOfBar(laid, bar, places, index));
}

function nameOfBar(laid: LaidCalendar, bar: CalendarBar, places: readonly BarPlace[], index: number): NameOfBar {
  const at = places[index] ?? { x: 0, y: 0, width: 0, height: 0 };
  const under = bar.harvest === undefined ? UNDER : UNDER + HARVEST;
  const y = at.y + Math.max(TALL, Math.min(at.height / 2 + 4.5, at.height - under));
  const start = { bar, x: at.x + APART, y, anchor: 'start' } as const;
  if (at.height < LOWEST) return { ...start, text: '' };
  const beside = places.filter((other) => other !== at && other.y < at.y + at.height && at.y < other.y + other.height);
  const until = Math.min(laid.right, ...beside.flatMap(({ x }) => (x > at.x ? [x] : [])));
  const room = Math.max(at.width, until - at.x) - 2 * APART;
  const from = Math.max(laid.left, ...beside.flatMap(({ x, width }) => (x < at.x ? [x + width] : [])));
  const wide = widthOfText(bar.name);
  if (room < wide && at.x - from - 2 * APART >= wide) return { bar, x: at.x - APART, y, anchor: 'end', text: bar.name };
  return { ...start, text: fitted(bar.name, room) };
}
