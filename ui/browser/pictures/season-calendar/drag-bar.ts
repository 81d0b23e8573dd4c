// A bar of the season calendar under a pressed pointer: taken in hand where it stays still, carried where it moves, within the season and past the edge
// of what is in sight.

import { type LaidCalendar, lineAt } from './calendar-layout.ts';
import { withinSeason } from './moving.ts';
import { scrollAlong } from './scroll-along.ts';
import type { CalendarBar } from './season-calendar.ts';

/** So many pixels a press may stir and is still a press. */
const STILL = 4;

export interface Hand {
  readonly bar: CalendarBar;
  readonly days: number;
  /** The bed it is held over. */
  readonly bed: string;
}

export interface Dragged {
  readonly held: (hand: Hand) => void;
  readonly taken: () => void;
  readonly set: (hand: Hand) => void;
  readonly leave: () => void;
}

/** Follows a pressed pointer until it is let go: a press that stays still takes the bar in hand, one that moves carries it. */
export function dragBar(
  bar: SVGElement,
  press: PointerEvent,
  laid: LaidCalendar,
  of: CalendarBar,
  tellOf: Dragged,
): void {
  const svg = bar.ownerSVGElement;
  if (svg === null) return;
  const season = { first: laid.x.from, last: laid.x.to - 1 };
  const perDay = (laid.right - laid.left) / (laid.x.to - laid.x.from);
  const leave = new AbortController();
  const { signal } = leave;
  let hand: Hand | undefined;
  let at = { x: press.clientX, y: press.clientY };
  const carry = (): void => {
    const [dx, dy] = [at.x - press.clientX, at.y - press.clientY];
    if (hand === undefined && Math.hypot(dx, dy) < STILL) return;
    const line = lineAt(laid, at.y - svg.getBoundingClientRect().top);
    const bed = line === undefined || line.bed === '' ? of.bed : line.bed;
    const next = { bar: of, days: withinSeason(of, Math.round(dx / perDay), season), bed };
    if (hand !== undefined && hand.days === next.days && hand.bed === next.bed) return;
    hand = next;
    tellOf.held(next);
  };
  const scroll = scrollAlong(svg, carry, signal);
  const onMove = (event: PointerEvent): void => {
    at = { x: event.clientX, y: event.clientY };
    carry();
    if (hand !== undefined) scroll(at.y);
  };
  window.addEventListener('pointermove', onMove, { signal });
  window.addEventListener(
    'pointerup',
    () => {
      leave.abort();
      if (hand === undefined) tellOf.taken();
      else tellOf.set(hand);
    },
    { signal },
  );
  const stop = (): void => {
    leave.abort();
    tellOf.leave();
  };
  window.addEventListener('pointercancel', stop, { signal });
  window.addEventListener('keydown', (event) => (event.key === 'Escape' ? stop() : undefined), {
    signal,
    capture: true,
  });
}
