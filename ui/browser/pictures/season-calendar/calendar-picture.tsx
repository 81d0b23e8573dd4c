// The season calendar in the page: bars are walked with the arrows, taken in hand with Enter or a press, moved with the arrows or
// by dragging, and what follows is shown while they move. What is let go changes nothing; what is set is one step that undo takes back.
// For paper it is drawn in parts.

import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type Book, message, rowName, rowWithId, settings } from '../../../../engine/index.ts';
import { PLANTINGS } from '../../panels/columns.ts';
import { change, UNDO } from '../../store/change.ts';
import { announce, tell } from '../../store/notices.ts';
import { goTo } from '../../store/selection.ts';
import { workbook } from '../../store/workbook.ts';
import { Frame, type LegendItem } from '../kit/frame.tsx';
import type { PaperSize } from '../kit/paper-size.ts';
import './calendar.css';
import { CalendarDrawing } from './calendar-drawing.tsx';
import {
  calendarParts,
  isSame,
  type LaidCalendar,
  layCalendar,
  namesWidth,
  type Step,
  stepTo,
} from './calendar-layout.ts';
import { dragBar, type Hand } from './drag-bar.ts';
import { Follows } from './follows.tsx';
import { type Move, moveCommands, moveWords, type WhatFollows, whatFollows, withinSeason } from './moving.ts';
import { type CalendarBar, calendarTable, NO_BEDS, type SeasonCalendar, seasonCalendar } from './season-calendar.ts';

export const CALENDAR_LEGEND: readonly LegendItem[] = [
  { mark: 'mark-planting', words: 'dates typed' },
  { mark: 'mark-proposed', words: 'dates proposed' },
  { mark: 'mark-harvest', words: 'being picked' },
  { mark: 'mark-soft', words: 'bed free, from the earliest day to the latest' },
  { mark: 'mark-over', words: 'too full' },
];

const STEPS: Readonly<Record<string, Step>> = {
  ArrowLeft: 'before',
  ArrowRight: 'after',
  ArrowUp: 'above',
  ArrowDown: 'below',
  Home: 'first',
  End: 'last',
};

export function CalendarPicture() {
  const book = workbook();
  const { today } = settings(book);
  const now = seasonCalendar(book, today);
  const [current, setCurrent] = useState<CalendarBar | undefined>(undefined);
  const [hand, setHand] = useState<Hand | undefined>(undefined);
  const [carried, setCarried] = useState(false);
  const [follows, setFollows] = useState<WhatFollows | undefined>(undefined);
  const laidNow = useRef<LaidCalendar | undefined>(undefined);
  const box = useRef<HTMLDivElement>(null);
  const move = hand === undefined ? undefined : moveOf(hand);
  const key = move === undefined ? '' : `${move.planting} ${move.days} ${move.bed ?? ''}`;

  // Worked out after the bar has been drawn where the hand is, so that the hand is never waited for.
  useEffect(() => {
    if (move === undefined) return setFollows(undefined);
    const later = setTimeout(() => setFollows(whatFollows(book, move)), 16);
    return () => clearTimeout(later);
  }, [key, book]);

  // A bar that comes to stand on another bed is drawn anew there: it keeps the focus.
  const held = useRef<CalendarBar | undefined>(undefined);
  if (hand !== undefined) held.current = hand.bar;
  useLayoutEffect(() => {
    if (held.current !== undefined && document.activeElement === document.body) focusBar(box.current, held.current);
    if (hand === undefined && document.activeElement !== document.body) held.current = undefined;
  });

  // What is moved by keys or buttons comes out from under what is said of it; what a pointer carries stays under the pointer.
  const isStill = hand !== undefined && !carried;
  useEffect(() => {
    if (isStill) intoSight(box.current);
  }, [isStill, key, follows]);

  if (now === undefined) return <p class="no-picture">{NO_BEDS}</p>;
  const { season } = now;
  const moved = hand !== undefined && follows !== undefined ? seasonCalendar(follows.after, today) : undefined;
  // What is in hand is drawn, and keeps the focus, even where it would leave the season.
  const shown = moved !== undefined && hasBar(moved, hand?.bar.planting) ? moved : now;
  const bars = now.lines.flatMap((line) => line.bars);
  const stop = bars.find((bar) => current !== undefined && isSame(bar, current)) ?? bars[0];

  const focus = (bar: CalendarBar | undefined): void => {
    if (bar === undefined) return;
    setCurrent(bar);
    focusBar(box.current, bar);
  };
  const take = (bar: CalendarBar): void => {
    setHand({ bar, days: 0, bed: bar.bed });
    announce(`${bar.name} is in hand. Arrows move it a week or to another bed, Enter sets it, Escape leaves it.`);
  };
  const carry = (next: Hand): void => {
    const days = withinSeason(next.bar, next.days, season);
    const there = { ...next, days };
    setHand(there);
    announce(`${moveWords(book, moveOf(there))}${days === next.days ? '' : ' The season ends there.'}`);
  };
  const leave = (): void => {
    setHand(undefined);
    announce('Nothing was moved.');
  };
  const set = (held: Hand): void => {
    setHand(undefined);
    const commands = moveCommands(book, moveOf(held));
    if (commands.length === 0) return;
    const done = change(commands, message('move planting', { planting: held.bar.name }));
    if (!done.refused) tell(moveWords(book, moveOf(held)), 'done', UNDO);
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    const step = STEPS[event.key];
    const { target } = event;
    const at = target instanceof Element ? target.closest('[data-planting]')?.getAttribute('data-planting') : undefined;
    // Keys on another bar walk on, or take that one in hand; those of buttons and lists are theirs.
    if (hand === undefined || (at !== hand.bar.planting && event.key !== 'Escape')) {
      if (step === undefined || at === undefined || at === null) return;
      event.preventDefault();
      focus(stepTo(now.lines, stop, step));
      return;
    }
    if (event.key === 'Escape') leave();
    else if (event.key === 'Enter' || event.key === ' ') set(hand);
    else if (step === 'before' || step === 'after') {
      const by = (step === 'after' ? 1 : -1) * (event.shiftKey ? 1 : 7);
      carry({ ...hand, days: hand.days + by });
    } else if (step === 'above' || step === 'below') {
      carry({ ...hand, bed: neighbour(now, hand.bed, step === 'below' ? 1 : -1) });
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const onPress = (bar: CalendarBar, event: PointerEvent): void => {
    const laid = laidNow.current;
    if (event.button !== 0 || bar.spreading || laid === undefined) return;
    const { currentTarget } = event;
    if (!(currentTarget instanceof SVGElement)) return;
    dragBar(currentTarget, event, laid, bar, {
      held: (held) => {
        setCarried(true);
        setHand(held);
      },
      taken: () => take(bar),
      set: (held) => {
        setCarried(false);
        set(held);
      },
      leave: () => {
        setCarried(false);
        leave();
      },
    });
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys of the bars within, which take the focus
    <div
      class="calendar-box"
      ref={box}
      onKeyDownCapture={hand === undefined ? undefined : onKeyDown}
      onKeyDown={hand === undefined ? onKeyDown : undefined}
    >
      <Frame
        title="The beds through the season"
        says={now.says}
        table={calendarTable(book, now)}
        legend={CALENDAR_LEGEND}
        draw={(width) => {
          const laid = layCalendar(shown, width);
          laidNow.current = laid;
          return (
            <CalendarDrawing
              book={shown === moved && follows !== undefined ? follows.after : book}
              calendar={shown}
              laid={laid}
              width={width}
              acts={{
                current: stop,
                hand:
                  hand === undefined
                    ? undefined
                    : { planting: hand.bar.planting, outline: outlineOf(hand), bed: hand.bed },
                onPress,
                onTake: take,
                onFocus: setCurrent,
              }}
            />
          );
        }}
        drawOnPaper={(size) => calendarOnPaper(book, now, size)}
        below={
          hand === undefined ? (
            <p class="calendar-hint">
              Drag a planting, or press it and use the arrows, to move it to another week or bed.
            </p>
          ) : (
            <Follows
              name={nameOf(hand)}
              says={moveWords(book, moveOf(hand))}
              beds={now.lines.flatMap(({ bed, name }) => (bed === '' ? [] : [{ id: bed, name }]))}
              bed={hand.bed}
              carried={carried}
              follows={follows}
              onDays={(days) => carry({ ...hand, days: hand.days + days })}
              onBed={(bed) => carry({ ...hand, bed })}
              onSet={() => set(hand)}
              onLeave={leave}
              onOpen={() => goTo(PLANTINGS, hand.bar.planting)}
            />
          )
        }
      />
    </div>
  );

  function nameOf(held: Hand): string {
    const slot = rowWithId(book, PLANTINGS, held.bar.planting);
    return slot === undefined ? held.bar.name : rowName(book, PLANTINGS, slot);
  }
}

/** A drawing a page, so many beds each as it has room for, the months over each. */
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

function hasBar({ lines }: SeasonCalendar, planting: string | undefined): boolean {
  return lines.some(({ bars }) => bars.some((bar) => bar.planting === planting));
}

function focusBar(box: HTMLElement | null, { planting, spreading }: CalendarBar): void {
  const which = spreading ? '[data-spreading]' : ':not([data-spreading])';
  box?.querySelector<SVGElement>(`[data-planting="${planting}"]${which}`)?.focus();
}

/** Between the bar in hand and what is said of it. */
const APART = 8;

/** Brings the bar in hand into sight, above what follows. */
function intoSight(box: HTMLElement | null): void {
  const bar = box?.querySelector<SVGElement>('.bar.is-in-hand');
  const follows = box?.querySelector('.follows')?.getBoundingClientRect();
  if (bar === null || bar === undefined || follows === undefined) return;
  if (bar.getBoundingClientRect().bottom + APART <= follows.top) return;
  const foot = Math.min(innerHeight, bar.closest('main')?.getBoundingClientRect().bottom ?? innerHeight);
  bar.style.scrollMarginBottom = `${Math.ceil(foot - follows.top) + APART}px`;
  bar.scrollIntoView({ block: 'nearest' });
  bar.style.scrollMarginBottom = '';
}

function moveOf({ bar, days, bed }: Hand): Move {
  return { planting: bar.planting, days, bed: bed === bar.bed ? undefined : bed };
}

function outlineOf({ bar, days }: Hand): CalendarBar {
  return { ...bar, from: bar.from + days, until: bar.until + days };
}

/** The bed so many lines down; the same where there is none. */
function neighbour({ lines }: SeasonCalendar, bed: string, by: number): string {
  const beds = lines.filter((line) => line.bed !== '');
  const index = beds.findIndex((line) => line.bed === bed);
  return beds[Math.max(0, Math.min(beds.length - 1, index + by))]?.bed ?? bed;
}
