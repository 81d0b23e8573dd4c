// Chances of frost through the year, with this year's plantings on them: how likely a frost is still to come in spring on the day a
// planting goes in, or has come by the day its bed is to be free in autumn. Pure: from the engine's queries to a picture model.

import { type Book, rowName, settings, showDate } from '../../../../engine/index.ts';
import { PLANTING, PLANTINGS } from '../../panels/columns.ts';
import { monthMarks } from '../../panels/read.ts';
import { askRows, hasColumns, type Needs } from '../kit/ask.ts';
import { type Dot, figureMarks, type LinesModel, said } from '../kit/model.ts';

const CLIMATE = 'climate';
const SPRING = 'spring-frost-to-come';
const AUTUMN = 'autumn-frost-come';
const HARD_SPRING = 'hard-spring-frost-to-come';
const HARD_AUTUMN = 'hard-autumn-frost-come';

export const FROST_NEEDS: Needs = { [CLIMATE]: ['day', SPRING, AUTUMN] };

interface Day {
  readonly day: number;
  readonly spring: number | undefined;
  readonly autumn: number | undefined;
  readonly hardSpring: number | undefined;
  readonly hardAutumn: number | undefined;
}

/** Undefined where the farm has no frost dates. */
export function frostChances(book: Book): LinesModel | undefined {
  const days = daysOf(book);
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const percent = (share: number): number => share * 100;
  const line = (name: string, mark: string, of: (day: Day) => number | undefined) => ({
    name,
    mark,
    points: days.flatMap((day) => {
      const chance = of(day);
      return chance === undefined ? [] : [{ x: day.day, y: percent(chance) }];
    }),
  });
  const lines = [
    line('a frost still to come in spring', 'line-accent', ({ spring }) => spring),
    line('a frost come in autumn', 'line-plain', ({ autumn }) => autumn),
    line('a hard frost still to come', 'line-dashed', ({ hardSpring }) => hardSpring),
    line('a hard frost come', 'line-dotted', ({ hardAutumn }) => hardAutumn),
  ].filter(({ points }) => points.length > 0);
  const planted = plantedOn(book, days);
  return {
    kind: 'lines',
    title: 'Chances of frost, %',
    says: sentence(days, planted),
    today: settings(book).today,
    x: { label: 'day', from: first.day, to: last.day, marks: monthMarks({ first: first.day, last: last.day }) },
    y: { label: 'chance, %', from: 0, to: 100, marks: figureMarks(0, 100, 4) },
    bands: [],
    lines,
    dots: planted,
    readings: days.map((day) => ({ x: day.day, words: dayWords(day, planted) })),
    table: {
      head: ['Day', 'Frost still to come in spring', 'Frost come in autumn', 'Planted that day'],
      rows: days
        .filter(({ day }, index) => index % 7 === 0 || planted.some(({ x }) => x === day))
        .map(({ day, spring, autumn }) => [
          showDate(day),
          shareWords(spring),
          shareWords(autumn),
          planted
            .filter(({ x }) => x === day)
            .map(({ name }) => name)
            .join(', '),
        ]),
    },
  };
}

function daysOf(book: Book): readonly Day[] {
  const hard = hasColumns(book, { [CLIMATE]: [HARD_SPRING, HARD_AUTUMN] });
  return askRows(book, CLIMATE).flatMap((row): readonly Day[] => {
    const day = row.figure('day');
    const [spring, autumn] = [row.figure(SPRING), row.figure(AUTUMN)];
    if (day === undefined || (spring === undefined && autumn === undefined)) return [];
    const figure = (column: string): number | undefined => (hard ? row.figure(column) : undefined);
    return [{ day, spring, autumn, hardSpring: figure(HARD_SPRING), hardAutumn: figure(HARD_AUTUMN) }];
  });
}

/** Plantings on the day they go into the bed, at the chance of a frost after it. */
function plantedOn(book: Book, days: readonly Day[]): readonly Dot[] {
  if (!hasColumns(book, { [PLANTINGS]: [PLANTING.plantedOut] })) return [];
  const byDay = new Map(days.map((day) => [day.day, day]));
  return askRows(book, PLANTINGS)
    .flatMap((row): readonly Dot[] => {
      const x = row.figure(PLANTING.plantedOut);
      const chance = x === undefined ? undefined : byDay.get(x)?.spring;
      return x === undefined || chance === undefined
        ? []
        : [{ name: rowName(book, PLANTINGS, row.slot), x, y: chance * 100 }];
    })
    .sort((a, b) => a.x - b.x);
}

function shareWords(share: number | undefined): string {
  return share === undefined ? '' : `${said(Math.round(share * 100))}%`;
}

function dayWords({ day, spring, autumn }: Day, planted: readonly Dot[]): string {
  const names = planted.filter(({ x }) => x === day).map(({ name }) => name);
  const parts = [
    spring === undefined ? '' : `${shareWords(spring)} for a frost still to come in spring`,
    autumn === undefined ? '' : `${shareWords(autumn)} for one to have come in autumn`,
    names.length === 0 ? '' : `goes in: ${names.join(', ')}`,
  ].filter((part) => part !== '');
  return `${showDate(day)}: ${parts.join('; ')}.`;
}

function sentence(days: readonly Day[], planted: readonly Dot[]): string {
  const middle = days.find(({ spring }) => spring !== undefined && spring <= 0.5);
  const safe = days.find(({ spring }) => spring !== undefined && spring <= 0.1);
  const autumn = days.find(({ autumn: come }) => come !== undefined && come >= 0.5);
  const risky = planted.filter(({ y }) => y >= 50).length;
  const parts = [
    middle === undefined || safe === undefined
      ? ''
      : `Half of the years have no frost after ${showDate(middle.day)}, nine in ten after ${showDate(safe.day)}.`,
    autumn === undefined ? '' : `Half have had one by ${showDate(autumn.day)}.`,
    planted.length === 0
      ? ''
      : `${risky} of ${planted.length} plantings go in while a frost is more likely than not; hardy ones may.`,
  ];
  return parts.filter((part) => part !== '').join(' ');
}
