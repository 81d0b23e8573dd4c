// Drawn seasons as pictures: of a figure, how likely it is to be so much or more; of a figure by week, a fan. Pure: what was drawn in, a
// picture's model out.

import {
  type ColumnView,
  figureIn,
  type HangsOn,
  sayNumber,
  settings,
  sheetView,
  shownNumber,
  type ValueType,
  type Workbook,
  type Writing,
} from '../../../engine/index.ts';
import { roundMarks } from '../drawing/scale.ts';
import { monthMarks } from '../panels/read.ts';
import { decimalsOf, figureMarks, type LinesModel, said } from '../pictures/kit/model.ts';
import { dayWords } from '../store/day-words.ts';
import type { DrawnAnswer, LikelyFigure } from './drawn-answer.ts';

export function percent(share: number): string {
  return `${(share * 100).toFixed(share > 0 && share < 0.01 ? 1 : 0)}%`;
}

/** A figure in words, to three figures, which is more than chance leaves sure; `among`: the size beside which dust is nothing. */
export function sayRounded(
  book: Workbook,
  value: number,
  type: ValueType | undefined,
  among = Math.abs(value),
): string {
  if (type?.kind !== 'number') return sayNumber(book, value, type);
  const figure = Math.abs(value) <= 1e-12 * among ? 0 : value;
  return sayNumber(book, figure, type, decimalsOf(shownNumber(type.unit, figure)));
}

/** 'Yield to sell, lb' */
export function withUnit(book: Workbook, name: string, type: ValueType): string {
  const unit = sayNumber(book, 0, type, 0).replace(/^[\d\s]+/, '');
  return unit === '' || type.kind !== 'number' ? name : `${name}, ${unit}`;
}

/** A figure's axis: a little wider than what is on it, in round figures. */
export function axisOf(label: string, figures: readonly number[], writing: Writing | undefined): LinesModel['y'] {
  const [least, most] = [Math.min(...figures), Math.max(...figures)];
  const pad = (most - least || Math.abs(most) || 1) * 0.05;
  const marks = roundMarks(least - pad, most + pad, 4);
  const [from, to] = [Math.min(least - pad, marks[0] ?? least), Math.max(most + pad, marks.at(-1) ?? most)];
  return { label, from, to, marks: figureMarks(from, to, 4, writing) };
}

/** Figures of a type in the unit in which they are shown. */
export function inUnit(type: ValueType): (value: number) => number {
  return type.kind === 'number' || type.kind === 'temperature'
    ? (value) => shownNumber(type.unit, value)
    : (value) => value;
}

/** How likely a figure is to be so much or more; undefined where it has no spread or is no plain figure. */
export function curveOf(book: Workbook, { name, type, answer }: Asked): LinesModel | undefined {
  const { quantiles } = answer;
  const [least, most] = [quantiles[0]?.value, quantiles.at(-1)?.value];
  if (least === undefined || most === undefined || least === most || type.kind !== 'number') return undefined;
  const shown = inUnit(type);
  const rows = quantiles.map(({ share, value }) => ({
    x: shown(value),
    chance: 1 - share,
    words: sayRounded(book, value, type),
  }));
  const label = withUnit(book, name, type);
  return {
    kind: 'lines',
    title: `Chance of so much or more: ${label}`,
    says: `As likely as not ${sayRounded(book, answer.interval?.p50 ?? 0, type)} or more.`,
    today: undefined,
    x: axisOf(
      label,
      rows.map(({ x }) => x),
      settings(book).writing,
    ),
    y: { label: 'chance, %', from: 0, to: 100, marks: figureMarks(0, 100, 4, settings(book).writing) },
    bands: [],
    lines: [
      { name: 'so much or more', mark: 'line-accent', points: rows.map(({ x, chance }) => ({ x, y: chance * 100 })) },
    ],
    dots: [],
    readings: rows.map(({ x, chance, words }) => ({ x, words: `${words} or more: ${percent(chance)} of seasons.` })),
    table: { head: ['So much or more', 'Chance'], rows: rows.map(({ words, chance }) => [words, percent(chance)]) },
  };
}

interface Asked {
  readonly name: string;
  readonly type: ValueType;
  readonly answer: DrawnAnswer;
}

/** A figure week by week, from its 10 to its 90 % value; undefined where there is no week. */
export function fanOf(book: Workbook, { name, type, answer }: Asked): LinesModel | undefined {
  const { weeks, goal } = answer;
  const [first, last] = [weeks[0]?.week, weeks.at(-1)?.week];
  if (first === undefined || last === undefined) return undefined;
  const shown = inUnit(type);
  const most = weeks.reduce((size, { interval: { p10, p90 } }) => Math.max(size, Math.abs(p10), Math.abs(p90)), 0);
  const say = (value: number): string => sayRounded(book, value, type, most);
  const label = withUnit(book, name, type);
  const known = weeks.map(({ week, interval: { p10, p50, p90 } }): WeekPoint => {
    return { x: week, low: shown(p10), middle: shown(p50), high: shown(p90) };
  });
  const isSum = answer.figure.by === 'week' && (answer.figure.weekly.fold ?? 'sum') === 'sum';
  const points = isSum ? withEmptyWeeks(known) : known;
  const chanceHead = goal === undefined ? undefined : (goal.missed ?? 'Goal reached');
  const chanceWords = (week: DrawnAnswer['weeks'][number]): readonly string[] => {
    if (goal === undefined || week.chance === undefined) return [];
    return [percent(goal.missed === undefined ? week.chance.chance : 1 - week.chance.chance)];
  };
  return {
    kind: 'lines',
    title: `${label}, week by week`,
    says: fanWords(book, answer, say),
    today: book.document.frame.today,
    x: { label: 'week', from: first, to: last + 1, marks: monthMarks({ first, last }, settings(book).writing) },
    y: axisOf(
      label,
      points.flatMap(({ low, high }) => [low, high]),
      settings(book).writing,
    ),
    bands: [
      {
        name: 'eight seasons of ten',
        mark: 'band-accent',
        points: points.map(({ x, low, high }) => ({ x, low, high })),
      },
    ],
    lines: [
      {
        name: 'half above, half below',
        mark: 'line-accent',
        points: points.map(({ x, middle }) => ({ x, y: middle })),
      },
    ],
    dots: [],
    readings: weeks.map((week) => {
      const { p10, p50, p90 } = week.interval;
      const [chance] = chanceWords(week);
      const also = chance === undefined ? '' : `; ${(chanceHead ?? '').toLowerCase()} in ${chance} of seasons`;
      return {
        x: week.week,
        words: `Week of ${dayWords(book, week.week)}: ${say(p10)} to ${say(p90)}, likely ${say(p50)}${also}.`,
      };
    }),
    table: {
      head: ['Week of', '10%', '50%', '90%', ...(chanceHead === undefined ? [] : [chanceHead])],
      rows: weeks.map((week) => {
        const { p10, p50, p90 } = week.interval;
        return [dayWords(book, week.week), say(p10), say(p50), say(p90), ...chanceWords(week)];
      }),
    },
  };
}

interface WeekPoint {
  readonly x: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** A sum over rows is nothing in the weeks that have none: the fan comes down after one week and goes up before another. */
function withEmptyWeeks(points: readonly WeekPoint[]): readonly WeekPoint[] {
  return points.flatMap((point, at) => {
    const next = points[at + 1];
    if (next === undefined || next.x - point.x <= 7) return [point];
    const none = { low: 0, middle: 0, high: 0 };
    return [point, { x: point.x + 7, ...none }, { x: next.x - 7, ...none }];
  });
}

function fanWords(book: Workbook, { weeks, goal }: DrawnAnswer, say: (value: number) => string): string {
  const widest = weeks.reduce<DrawnAnswer['weeks'][number] | undefined>((most, week) => {
    const spread = ({ interval: { p90, p10 } }: DrawnAnswer['weeks'][number]): number => p90 - p10;
    return most === undefined || spread(week) > spread(most) ? week : most;
  }, undefined);
  const { missed } = goal ?? {};
  const worst = weeks.reduce<DrawnAnswer['weeks'][number] | undefined>((most, week) => {
    return most === undefined || (week.chance?.chance ?? 1) < (most.chance?.chance ?? 1) ? week : most;
  }, undefined);
  const parts = [
    widest === undefined
      ? ''
      : widest.interval.p90 === widest.interval.p10
        ? 'In eight seasons of ten every week is the same.'
        : `Least sure in the week of ${dayWords(book, widest.week)}: ${say(widest.interval.p10)} to ${say(widest.interval.p90)} in eight seasons of ten.`,
    missed === undefined || worst?.chance === undefined
      ? ''
      : worst.chance.chance === 1
        ? `${missed} in none of the seasons.`
        : `${missed} most often in the week of ${dayWords(book, worst.week)}, in ${percent(1 - worst.chance.chance)} of seasons.`,
  ];
  return parts.filter((part) => part !== '').join(' ');
}

export function columnAt(book: Workbook, sheet: string, column: string): ColumnView | undefined {
  return sheetView(book, sheet)?.columns.find(({ id }) => id === column);
}

export function nameOf(figure: LikelyFigure): string {
  return figure.by === 'season' ? figure.named.name : figure.name;
}

export function typeOf(book: Workbook, figure: LikelyFigure): ValueType | undefined {
  return figure.by === 'season'
    ? figureIn(book, figure.named.figure).type
    : columnAt(book, figure.weekly.sheet, figure.weekly.column)?.type;
}

/** What was drawn in one sentence; undefined where no season gave a number. */
export function answerInWords(book: Workbook, answer: DrawnAnswer): string | undefined {
  const { figure, interval, chance, goal } = answer;
  if (interval === undefined) return undefined;
  const type = typeOf(book, figure);
  const say = (value: number): string => sayRounded(book, value, type, Math.abs(interval.p90));
  const ofWeeks = figure.by === 'week' ? ', all weeks together' : '';
  const reached =
    chance === undefined || goal === undefined
      ? ''
      : ` ${goal.side === 'at least' ? 'At least' : 'At most'} ${say(goal.value)} in ${chanceWords(chance)}.`;
  return `${nameOf(figure)}${ofWeeks}: ${say(interval.p10)} to ${say(interval.p90)} in eight seasons of ten, as likely as not ${say(interval.p50)} or more.${reached}`;
}

/** Which inputs are not named among those that a figure hangs on, and why. */
export function leftOutWords({ named, more, least }: HangsOn, seasons: number): string {
  if (named.length === 0) return `${seasons} seasons can’t tell what it hangs on from chance: draw more of them.`;
  const others = more === 0 ? '' : ` ${more} more ${more === 1 ? 'has' : 'have'} a smaller part.`;
  return `Left out is what goes with less than ${percent(least)} of the spread: ${seasons} seasons can’t tell it from chance.${others}`;
}

/** The words of a chance: how often, give or take what drawing so few seasons leaves open. */
export function chanceWords({ chance, error }: { readonly chance: number; readonly error: number }): string {
  return `${percent(chance)} of seasons, give or take ${said(error * 100)}%`;
}
