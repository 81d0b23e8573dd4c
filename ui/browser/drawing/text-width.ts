// How wide a text is on a picture before it is drawn; texts cut to a width, and the months that have room for their names. Measured
// with the page's own face on a canvas, counted by letters where there is no page; every picture in ui/browser calls it.

import type { Writing } from '../../../engine/index.ts';
import { type Month, monthsBetween, type Scale } from './scale.ts';

/** About the width of a letter at 13 px. */
const LETTER = 7;
/** Of a text that is cut. */
const LEAST_LETTERS = 3;

/** A text cut so that it fits a width, with an ellipsis; '' where not even three letters fit. */
export function fitted(text: string, width: number): string {
  if (widthOfText(text) <= width) return text;
  const letters = Array.from(text);
  for (let kept = letters.length - 1; kept >= LEAST_LETTERS; kept -= 1) {
    const cut = `${letters.slice(0, kept).join('').trimEnd()}\u2026`;
    if (widthOfText(cut) <= width) return cut;
  }
  return '';
}

let pen: CanvasRenderingContext2D | null | undefined;

/** Of a text as small as pictures write them, in pixels. */
export function widthOfText(text: string): number {
  if (pen === undefined && typeof document !== 'undefined') {
    pen = document.createElement('canvas').getContext('2d');
    const style = getComputedStyle(document.documentElement);
    if (pen !== null) pen.font = `${style.getPropertyValue('--size-small')} ${style.getPropertyValue('--sans')}`;
  }
  return pen?.measureText(text).width ?? text.length * LETTER;
}

/** Of a month's name: from its first day, and from the next name. */
const [BEHIND, APART] = [3, 12];

/** The months on a line of days whose names have room behind their first day: every one, every second, third or sixth. */
export function namedMonths(from: number, to: number, x: Scale, writing: Writing | undefined): readonly Month[] {
  const months = monthsBetween(from, to, writing);
  const longest = Math.max(...months.map(({ name }) => widthOfText(name)));
  const least = Math.min(...months.slice(1).map(({ day }, index) => x.at(day) - x.at(months[index]?.day ?? day)));
  const every = [1, 2, 3, 6].find((step) => step * least >= longest + APART) ?? 12;
  const end = x.at(x.to);
  return months.filter(({ day, name }, index) => index % every === 0 && x.at(day) + BEHIND + widthOfText(name) <= end);
}
