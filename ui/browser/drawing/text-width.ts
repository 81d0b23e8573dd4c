// How wide a text is on a picture, about, before it is drawn; texts cut to a width, and the months that have room for their names.
// Pure; every picture in ui/browser calls it.

import type { Writing } from '../../../engine/index.ts';
import { type Month, monthsBetween, type Scale } from './scale.ts';

/** About the width of a letter at 13 px. */
const LETTER = 7;

/** A text cut so that it fits a width, with an ellipsis; '' where not even three letters fit. */
export function fitted(text: string, width: number): string {
  const letters = Math.floor(width / LETTER);
  if (text.length <= letters) return text;
  return letters < 4 ? '' : `${text.slice(0, letters - 1).trimEnd()}\u2026`;
}

export function widthOfText(text: string): number {
  return text.length * LETTER;
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
