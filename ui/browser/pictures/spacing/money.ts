// What is left over of a planting against its spacing, out of the study of its curve. Pure.

import type { Writing } from '../../../../engine/index.ts';
import { figureMarks, type LinesModel, roundAxis, withSaidUnit } from '../kit/model.ts';

export interface MoneyStudy {
  /** Spacing and margin, each in its column's unit, by growing spacing. */
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly spacingUnit: string;
  /** As it is planted now; undefined where its spacing or its margin isn't known. */
  readonly today: { readonly x: number; readonly y: number } | undefined;
  readonly money: string;
  readonly writing?: Writing | undefined;
}

/** Undefined where fewer than two spacings have a margin. */
export function moneyAgainstSpacing({
  points,
  today,
  spacingUnit,
  money,
  writing,
}: MoneyStudy): LinesModel | undefined {
  const known = points.filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined || first === last) return undefined;
  const best = known.reduce((most, point) => (point.y > most.y ? point : most));
  const say = (figure: number, unit: string): string => withSaidUnit(figure, unit, undefined, writing);
  const words = ({ x, y }: { readonly x: number; readonly y: number }): string =>
    `${say(x, spacingUnit)}: ${say(y, money)}`;
  return {
    kind: 'lines',
    title: `Margin of this planting against spacing, ${money}`,
    says: `Most is left over at ${words(best)}.${today === undefined ? '' : ` Now, ${words(today)}.`}`,
    today: undefined,
    x: {
      label: `in-row spacing, ${spacingUnit}`,
      from: first.x,
      to: last.x,
      marks: figureMarks(first.x, last.x, 6, writing),
    },
    y: {
      label: money,
      ...roundAxis(
        [...known, ...(today === undefined ? [] : [today])].map(({ y }) => y),
        4,
        writing,
      ),
    },
    bands: [],
    lines: [{ name: 'left over', mark: 'line-accent', points: known }],
    dots: today === undefined ? [] : [{ name: words(today), ...today }],
    dotsAre: 'as it is now',
    readings: known.map((point) => ({ x: point.x, words: `${words(point)}.` })),
    table: {
      head: [`In-row spacing, ${spacingUnit}`, `Margin, ${money}`],
      rows: known.map(({ x, y }) => [say(x, ''), say(y, '')]),
    },
  };
}
