// Where the season calendar's lines and bars stand on the screen, and which bar or bed is meant by a key or a place. Pure.

import { linearScale, type Scale } from '../../drawing/scale.ts';
import type { CalendarBar, CalendarLine, SeasonCalendar } from './season-calendar.ts';

/** A line's place, in pixels from the top. */
export interface LaidLine {
  readonly line: CalendarLine;
  readonly top: number;
  readonly height: number;
  /** On the line of what has no bed: the lane of each bar, from 0, by barKey. No bed's length says there how high a bar is. */
  readonly lanes: ReadonlyMap<string, number> | undefined;
  /** How many lanes there are; 0 where there are none. */
  readonly laneCount: number;
  /** Where the bars on it begin and end along the bed, and how far down the line that is. */
  readonly depths: readonly Depth[];
}

export interface Depth {
  readonly metres: number;
  readonly down: number;
}

export interface LaidCalendar {
  readonly x: Scale;
  readonly left: number;
  readonly right: number;
  readonly lines: readonly LaidLine[];
  readonly height: number;
}

export const HEAD = 24;
const FOOT = 2;
/** Free of bars above and below them in a line. */
const EDGE = 2;
const EDGES = 2 * EDGE;
const LEAST = 22;
const MOST = 64;
/** No line is taller, so that it has room on a page: more than some forty plantings side by side go without their names. */
const TALLEST = 600;
/** So that a name can stand in a bar, over the line of what is picked. */
const OF_A_BAR = 17;
/** The line along a bar's foot while it is picked. */
export const HARVEST = 3;
/** From then on the lanes of what has no bed become narrower. */
const MOST_LANES = 40;
const LETTER = 7;

/** Where the year begins, right of the beds' names. */
export function namesWidth({ lines }: SeasonCalendar, width: number): number {
  const names = Math.max(4, ...lines.map(({ name }) => name.length));
  return Math.min(names * LETTER + 12, width * 0.28);
}

/** `left` is where the year begins, where other beds than these are laid out in line with them. */
export function layCalendar(
  calendar: SeasonCalendar,
  width: number,
  left: number = namesWidth(calendar, width),
): LaidCalendar {
  const { lines, season } = calendar;
  const right = width - 2;
  let top = HEAD;
  const laid = lines.map((line): LaidLine => {
    const lanes = line.bed === '' ? lanesOf(line.bars) : undefined;
    const laneCount = lanes === undefined ? 0 : countLanes(lanes);
    const depths = depthsOf(line);
    const height = lanes === undefined ? heightOf(depths) : heightOfLanes(laneCount);
    const place = { line, top, height, lanes, laneCount, depths };
    top += height;
    return place;
  });
  return { x: linearScale(season.first, season.last + 1, left, right), left, right, lines: laid, height: top + FOOT };
}

/** The calendar in parts for paper, the months over each: as few as none is taller than `tall` when it is laid out, and those about alike. */
export function calendarParts(calendar: SeasonCalendar, tall: number): readonly SeasonCalendar[] {
  const lines = calendar.lines.map((line): TallLine => ({ line, height: heightOf(depthsOf(line)) }));
  const fewest = partsWithin(lines, tall);
  // The least height that takes no more parts leaves no last page with one bed.
  const whole = lines.reduce((sum, { height }) => sum + height, 0);
  let even = fewest;
  for (let most = HEAD + FOOT + whole / fewest.length; most < tall; most += LEAST) {
    even = partsWithin(lines, most);
    if (even.length <= fewest.length) break;
  }
  return (even.length <= fewest.length ? even : fewest).map((part) => ({ ...calendar, lines: part }));
}

interface TallLine {
  readonly line: CalendarLine;
  readonly height: number;
}

function partsWithin(lines: readonly TallLine[], tall: number): readonly (readonly CalendarLine[])[] {
  const parts: CalendarLine[][] = [];
  let height = tall;
  for (const { line, height: needed } of lines) {
    height += needed;
    if (height > tall) {
      parts.push([]);
      height = HEAD + FOOT + needed;
    }
    parts.at(-1)?.push(line);
  }
  return parts;
}

/** How far down its bed a line's bars reach, in metres: past the bed's end where it is too full. */
function depthOf({ bars, length }: CalendarLine): number {
  return Math.max(length, ...bars.map((bar) => bar.at + bar.length));
}

function heightOf(depths: readonly Depth[]): number {
  return Math.round(EDGES + (depths.at(-1)?.down ?? 0));
}

/**
 * To scale where every bar has room for its name so. Where a line would grow too tall for that, the stretches of the bed that short
 * plantings stand on are drawn longer than the others.
 */
function depthsOf(line: CalendarLine): readonly Depth[] {
  const depth = depthOf(line);
  const tight = Math.min(1, ...line.bars.map((bar) => (depth > 0 ? bar.length / depth : 1)));
  const wanted = OF_A_BAR / Math.max(tight, 0.05);
  const whole = Math.min(MOST, Math.max(LEAST, wanted + EDGES)) - EDGES;
  const ends = line.bars.flatMap(({ at, length }) => [at, at + length]);
  const metres = [...new Set([0, ...ends, depth])].sort((a, b) => a - b);
  const tall = metres.slice(1).map((end, index) => (depth > 0 ? ((end - (metres[index] ?? 0)) / depth) * whole : 0));
  for (const { at, length } of line.bars.toSorted((a, b) => a.at + a.length - b.at - b.length)) {
    const [from, until] = [metres.indexOf(at), metres.indexOf(at + length)];
    const has = tall.slice(from, until).reduce((sum, each) => sum + each, 0);
    if (has <= 0 || has >= OF_A_BAR) continue;
    for (let each = from; each < until; each += 1) tall[each] = ((tall[each] ?? 0) * OF_A_BAR) / has;
  }
  const all = tall.reduce((sum, each) => sum + each, 0);
  const fits = Math.min(1, (TALLEST - EDGES) / Math.max(all, 1));
  let down = 0;
  return metres.map((end, index) => {
    down += index === 0 ? 0 : (tall[index - 1] ?? 0) * fits;
    return { metres: end, down };
  });
}

/** Each bar in the first lane that is free by then. */
function lanesOf(bars: readonly CalendarBar[]): ReadonlyMap<string, number> {
  const free: number[] = [];
  const lanes = new Map<string, number>();
  for (const bar of [...bars].sort((a, b) => a.from - b.from)) {
    const found = free.findIndex((from) => from <= bar.from);
    const lane = found < 0 ? free.length : found;
    free[lane] = bar.until;
    lanes.set(barKey(bar), lane);
  }
  return lanes;
}

function countLanes(lanes: ReadonlyMap<string, number>): number {
  return 1 + Math.max(0, ...lanes.values());
}

function heightOfLanes(count: number): number {
  return Math.max(LEAST, Math.min(MOST_LANES, count) * (OF_A_BAR + 1) + 4);
}

/** Where a place along the bed stands within its line. */
export function depthAt({ top, depths }: LaidLine, metres: number): number {
  const next = depths.findIndex((depth) => depth.metres >= metres);
  const [before, after] = [depths[next - 1], next < 0 ? depths.at(-1) : depths[next]];
  if (after === undefined) return top + EDGE;
  if (before === undefined || after.metres <= metres) return top + EDGE + after.down;
  const share = (metres - before.metres) / (after.metres - before.metres);
  return top + EDGE + before.down + share * (after.down - before.down);
}

export interface BarPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The rectangle of a bar within its line. */
export function barPlace({ x, left, right }: LaidCalendar, place: LaidLine, bar: CalendarBar): BarPlace {
  const foot = place.top + place.height - 2;
  const from = Math.max(left, x.at(bar.from));
  const until = Math.min(right, x.at(bar.until));
  const width = Math.max(2, until - from);
  const { lanes, laneCount } = place;
  if (lanes !== undefined) {
    const each = (place.height - 4) / laneCount;
    return { x: from, y: place.top + 2 + each * (lanes.get(barKey(bar)) ?? 0), width, height: Math.max(2, each - 1) };
  }
  const y = Math.min(depthAt(place, bar.at), foot - 6);
  const tall = Math.min(depthAt(place, bar.at + bar.length), foot) - y;
  return { x: from, y, width, height: Math.max(6, tall - 1) };
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
  return barKey(a) === barKey(b);
}

export function barKey({ planting, spreading }: CalendarBar): string {
  return `${planting} ${spreading}`;
}
