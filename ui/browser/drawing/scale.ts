// From figures to places on a picture and back: linear scales, the round figures that an axis is marked with, months on a
// line of days, the length of a scale bar, and paths. Pure; every picture in ui/browser calls it.

import { civilDay, type Writing, yearMonthDay } from '../../../engine/index.ts';

export interface Scale {
  readonly from: number;
  readonly to: number;
  /** Where a figure stands. */
  at(figure: number): number;
  /** Which figure stands there. */
  figure(place: number): number;
}

/** Figures `from` to `to` laid over places `start` to `end`; a scale of one single figure puts everything at its start. */
export function linearScale(from: number, to: number, start: number, end: number): Scale {
  const perFigure = to === from ? 0 : (end - start) / (to - from);
  return {
    from,
    to,
    at: (figure) => start + (figure - from) * perFigure,
    figure: (place) => (perFigure === 0 ? from : from + (place - start) / perFigure),
  };
}

/** The smallest of 1, 2, 2.5 and 5 x a power of ten that is at least `least`. */
export function roundStep(least: number): number {
  if (!(least > 0) || !Number.isFinite(least)) return 1;
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = [1, 2, 2.5, 5, 10].find((one) => one * power >= least * (1 - 1e-12)) ?? 10;
  return factor * power;
}

/** Round figures between two ends, both included where they are round, at most about `count` of them. */
export function roundMarks(from: number, to: number, count: number): readonly number[] {
  if (!(to > from) || count < 1) return [];
  const step = roundStep((to - from) / count);
  const marks: number[] = [];
  // Counted in steps, so that the marks carry no dust: 3 steps of 0.1 are 0.3.
  const digits = Math.max(0, -Math.floor(Math.log10(step)) + 1);
  for (let index = Math.ceil(from / step - 1e-9); index * step <= to + step * 1e-9; index += 1) {
    marks.push(Number((index * step).toFixed(digits)));
  }
  return marks;
}

/** The round figure at or above the greatest of some, for the upper end of an axis that begins at 0. */
export function roundTop(figures: readonly number[], count = 4): number {
  const greatest = Math.max(0, ...figures.filter(Number.isFinite));
  if (greatest === 0) return 1;
  const step = roundStep(greatest / count);
  return Math.ceil(greatest / step - 1e-9) * step;
}

export interface Month {
  /** Its first day. */
  readonly day: number;
  /** Short, as where it stands without a day: 'Mar'. */
  readonly name: string;
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The months that begin from one civil day to another, both included. */
export function monthsBetween(from: number, to: number, writing?: Writing): readonly Month[] {
  const months: Month[] = [];
  const names = writing?.monthsAlone ?? MONTHS;
  if (!Number.isFinite(from) || !Number.isFinite(to)) return months;
  const start = yearMonthDay(from);
  for (let index = start.month - 1; ; index += 1) {
    const day = civilDay(start.year + Math.floor(index / 12), (index % 12) + 1, 1);
    if (day > to) return months;
    if (day >= from) months.push({ day, name: names[index % 12] ?? '' });
  }
}

export interface ScaleBar {
  /** In metres. */
  readonly length: number;
  /** '1 ft', '50 cm'. */
  readonly label: string;
}

const INCH = 0.0254;
const FOOT = 0.3048;
const BARS: Readonly<Record<'us' | 'si', readonly ScaleBar[]>> = {
  us: [
    ...[1, 2, 3, 6].map((inches) => ({ length: inches * INCH, label: `${inches} in` })),
    ...[1, 2, 5, 10, 20, 50, 100].map((feet) => ({ length: feet * FOOT, label: `${feet} ft` })),
  ],
  si: [
    ...[1, 2, 5, 10, 20, 50].map((centimetres) => ({ length: centimetres / 100, label: `${centimetres} cm` })),
    ...[1, 2, 5, 10, 20, 50].map((metres) => ({ length: metres, label: `${metres} m` })),
  ],
};

/** The longest round length that takes at most `share` of a picture so many metres across. */
export function scaleBar(across: number, units: 'us' | 'si', share = 0.3): ScaleBar | undefined {
  return BARS[units].findLast((bar) => bar.length <= across * share);
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

const place = (value: number): string => String(Math.round(value * 100) / 100);

/** A line through points, in strokes broken where a point has no figure. */
export function linePath(points: readonly Point[]): string {
  let pen = 'M';
  let path = '';
  for (const { x, y } of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      pen = 'M';
      continue;
    }
    path += `${pen}${place(x)} ${place(y)}`;
    pen = 'L';
  }
  return path;
}
