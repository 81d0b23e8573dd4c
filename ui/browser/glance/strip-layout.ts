// Where the strip of the year stands on the screen, in pixels from its top left: what is written above the weeks has a row of its own,
// so that neither hides the other. Pure.

import { linearScale, type Month, type Scale } from '../drawing/scale.ts';
import { namedMonths } from '../drawing/text-width.ts';
import type { YearStrip } from './year-strip.ts';

export interface LaidStrip {
  readonly x: Scale;
  readonly y: Scale;
  readonly height: number;
  /** The foot of the columns, above the names of the months. */
  readonly foot: number;
  /** The head of the columns and of the band. */
  readonly head: number;
  /** The line that the words of the frosts are written on; undefined where there are none or no room for them. */
  readonly frostLine: number | undefined;
  /** The line that 'today' is written on; undefined outside the season. */
  readonly todayLine: number | undefined;
  /** The months whose names have room. */
  readonly months: readonly Month[];
}

const COLUMNS = 34;
const MONTHS = 16;
const EDGE = 4;
/** A line of writing at 13 px, with what reaches under it. */
const LINE = 15;
const UNDER = 4;
/** What the words of the frosts take. */
const LEAST_WIDTH = 500;

export function layStrip({ season, today, frostFree, weeks, writing }: YearStrip, width: number): LaidStrip {
  const inSeason = today >= season.first && today <= season.last;
  const frostLine = frostFree !== undefined && width > LEAST_WIDTH ? LINE - UNDER : undefined;
  const above = frostLine === undefined ? 0 : LINE;
  const todayLine = inSeason ? above + LINE - UNDER : undefined;
  const head = above + (inSeason ? LINE : 0) + EDGE;
  const foot = head + COLUMNS;
  const most = Math.max(0, ...weeks.map(({ hours }) => hours));
  const x = linearScale(season.first, season.last + 1, 1, Math.max(2, width - 1));
  return {
    x,
    y: linearScale(0, most === 0 ? 1 : most, foot, head),
    height: foot + MONTHS,
    foot,
    head,
    frostLine,
    todayLine,
    months: namedMonths(season.first, season.last, x, writing),
  };
}
