// Where the season calendar's lines and bars stand on the screen, and which bar or bed is meant by a key or a place. Pure.

import { linearScale, type Scale } from '../../drawing/scale.ts';
import type { CalendarBar, CalendarLine, SeasonCalendar } from './season-calendar.ts';

/** A line's place, in pixels from the top. */
export interface LaidLine {
  readonly line: CalendarLine;
  readonly top: number;
  readonly height: number;
}

export interface LaidCalendar {
  readonly x: Scale;
  readonly left: number;
  readonly right: number;
  readonly lines: readonly LaidLine[];
  readonly height: number;
}

export const HEAD = 24;
const LEAST = 22;
const MOST = 64;
/** So that a name can stand in a bar. */
const OF_A_BAR = 15;
const LETTER = 7;

export function layCalendar({ lines, season }: SeasonCalendar, width: number): LaidCalendar {
  const names = Math.max(4, ...lines.map(({ name }) => name.length));
  const left = Math.min(names * LETTER + 12, width * 0.28);
  const right = width - 2;
  let top = HEAD;
  const laid = lines.map((line): LaidLine => {
    const height = heightOf(line);
    const place = { line, top, height };
    top += height;
    return place;
  });
  return { x: linearScale(season.first, season.last + 1, left, right), left, right, lines: laid, height: top + 2 };
}

/** How far down its bed a line's bars reach, in metres: past the bed's end where it is too full. */
export function depthOf({ bars, length }: CalendarLine): number {
  return Math.max(length, ...bars.map((bar) => bar.at + bar.length));
}

function heightOf(line: CalendarLine): number {
  const depth = depthOf(line);
  const tight = Math.min(1, ...line.bars.map((bar) => (depth > 0 ? bar.length / depth : 1)));
  const wanted = OF_A_BAR / Math.max(tight, 0.05) + 4;
  return Math.round(Math.min(line.bed === '' ? MOST * 2 : MOST, Math.max(LEAST, wanted)));
}

/** Where a place along the bed stands within its line. */
export function depthAt({ line, top, height }: LaidLine, metres: number): number {
  const depth = depthOf(line);
  return top + 2 + (depth > 0 ? (metres / depth) * (height - 4) : 0);
}

/** The rectangle of a bar within its line. */
export function barPlace(
  { x, left, right }: LaidCalendar,
  place: LaidLine,
  bar: CalendarBar,
): { readonly x: number; readonly y: number; readonly width: number; readonly height: number } {
  const foot = place.top + place.height - 2;
  const y = Math.min(depthAt(place, bar.at), foot - 6);
  const from = Math.max(left, x.at(bar.from));
  const until = Math.min(right, x.at(bar.until));
  const tall = Math.min(depthAt(place, bar.at + bar.length), foot) - y;
  return { x: from, y, width: Math.max(2, until - from), height: Math.max(6, tall - 1) };
}

/** The line at a height; undefined above the first and below the last. */
export function lineAt({ lines }: LaidCalendar, y: number): CalendarLine | undefined {
  return lines.find(({ top, height }) => y >= top && y < top + height)?.line;
}

export type Step = 'before' | 'after' | 'above' | 'below' | 'first' | 'last';

/** A bar by the key: which one a step leads to; the same where there is none that way. */
export function stepTo(
  lines: readonly CalendarLine[],
  at: CalendarBar | undefined,
  step: Step,
): CalendarBar | undefined {
  const inOrder = lines.flatMap(({ bars }) => [...bars].sort((a, b) => a.from - b.from));
  if (step === 'first' || at === undefined) return inOrder[0];
  if (step === 'last') return inOrder.at(-1);
  const index = inOrder.findIndex((bar) => isSame(bar, at));
  if (step === 'before') return inOrder[Math.max(0, index - 1)];
  if (step === 'after') return inOrder[Math.min(inOrder.length - 1, index + 1)];
  const planted = lines.filter(({ bars }) => bars.length > 0);
  const here = planted.findIndex(({ bars }) => bars.some((bar) => isSame(bar, at)));
  const there = planted[here + (step === 'below' ? 1 : -1)];
  if (there === undefined) return at;
  return there.bars.reduce((nearest, bar) => (apart(bar, at) < apart(nearest, at) ? bar : nearest));
}

function apart(a: CalendarBar, b: CalendarBar): number {
  return Math.abs((a.from + a.until) / 2 - (b.from + b.until) / 2);
}

/** A planting that spreads over two beds has a bar on each. */
export function isSame(a: CalendarBar, b: CalendarBar): boolean {
  return a.planting === b.planting && a.spreading === b.spreading;
}
