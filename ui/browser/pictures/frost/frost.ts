// Chances of frost through the year, with this year's plantings on them: how likely a frost is still to come in spring on the day a
// planting goes in, or has come by then in autumn, and which of them stand it. Pure: from the engine's queries to a picture model.

import { type Book, rowName, settings } from '../../../../engine/index.ts';
import { PLANTING, PLANTINGS } from '../../panels/columns.ts';
import { monthMarks } from '../../panels/read.ts';
import { dayWords } from '../../store/day-words.ts';
import { askRows, hasColumns, type Needs } from '../kit/ask.ts';
import { type Dot, figureMarks, type LinesModel, said } from '../kit/model.ts';

const CLIMATE = 'climate';
const SPRING = 'spring-frost-to-come';
const AUTUMN = 'autumn-frost-come';
const HARD_SPRING = 'hard-spring-frost-to-come';
const HARD_AUTUMN = 'hard-autumn-frost-come';
const CROPS = 'crops';
const CROP = 'crop';
const HARDINESS = 'hardiness';
/** Killed by frosts that a mild night brings; the hardier two stand those. */
const NOT_HARDY: readonly string[] = ['tender', 'half-hardy'];

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
  const { today, writing } = settings(book);
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
  const hard = days.some(({ hardSpring, hardAutumn }) => hardSpring !== undefined || hardAutumn !== undefined);
  const planted = plantedOn(book, days);
  return {
    kind: 'lines',
    title: 'Chances of frost, %',
    says: sentence(book, days, planted),
    today,
    x: {
      label: 'day',
      from: first.day,
      to: last.day,
      marks: monthMarks({ first: first.day, last: last.day }, writing),
    },
    y: { label: 'chance, %', from: 0, to: 100, marks: figureMarks(0, 100, 4, writing) },
    bands: [],
    lines,
    dots: planted,
    dotsAre: 'a planting, on the day it goes in',
    readings: days.map((day) => ({ x: day.day, words: wordsOf(book, day, planted) })),
    table: {
      head: [
        'Day',
        'Frost still to come in spring',
        'Frost come in autumn',
        ...(hard ? ['Hard frost still to come', 'Hard frost come'] : []),
        'Planted that day',
      ],
      rows: days
        .filter(({ day }, index) => index % 7 === 0 || planted.some(({ x }) => x === day))
        .map(({ day, spring, autumn, hardSpring, hardAutumn }) => [
          dayWords(book, day),
          shareWords(spring),
          shareWords(autumn),
          ...(hard ? [shareWords(hardSpring), shareWords(hardAutumn)] : []),
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

interface Planted extends Dot {
  /** As the library calls it; '' where it is not known. */
  readonly hardiness: string;
}

/** Plantings on the day they go into the bed, at the chance that a frost is still to come or has come by then. */
function plantedOn(book: Book, days: readonly Day[]): readonly Planted[] {
  if (!hasColumns(book, { [PLANTINGS]: [PLANTING.plantedOut] })) return [];
  const byDay = new Map(days.map((day) => [day.day, day]));
  const hardiness = hardinessOf(book);
  return askRows(book, PLANTINGS)
    .flatMap((row): readonly Planted[] => {
      const x = row.figure(PLANTING.plantedOut);
      const day = x === undefined ? undefined : byDay.get(x);
      if (x === undefined || day === undefined) return [];
      const chance = Math.max(day.spring ?? 0, day.autumn ?? 0);
      const hardy = hardiness.get(row.text(CROP)) ?? '';
      return [{ name: rowName(book, PLANTINGS, row.slot), x, y: chance * 100, hardiness: hardy }];
    })
    .sort((a, b) => a.x - b.x);
}

/** By the name of the crop; empty where the workbook doesn't say. */
function hardinessOf(book: Book): ReadonlyMap<string, string> {
  if (!hasColumns(book, { [CROPS]: [HARDINESS], [PLANTINGS]: [CROP] })) return new Map();
  return new Map(askRows(book, CROPS).map((row) => [rowName(book, CROPS, row.slot), row.text(HARDINESS)]));
}

function shareWords(share: number | undefined): string {
  return share === undefined ? '' : `${said(Math.round(share * 100))}%`;
}

function wordsOf(book: Book, { day, spring, autumn }: Day, planted: readonly Planted[]): string {
  const names = planted.filter(({ x }) => x === day).map(({ name }) => name);
  const parts = [
    spring === undefined ? '' : `${shareWords(spring)} for a frost still to come in spring`,
    autumn === undefined ? '' : `${shareWords(autumn)} for one to have come in autumn`,
    names.length === 0 ? '' : `goes in: ${names.join(', ')}`,
  ].filter((part) => part !== '');
  return `${dayWords(book, day)}: ${parts.join('; ')}.`;
}

function sentence(book: Book, days: readonly Day[], planted: readonly Planted[]): string {
  const middle = days.find(({ spring }) => spring !== undefined && spring <= 0.5);
  const safe = days.find(({ spring }) => spring !== undefined && spring <= 0.1);
  const autumn = days.find(({ autumn: come }) => come !== undefined && come >= 0.5);
  const parts = [
    middle === undefined || safe === undefined
      ? ''
      : `Half of the years have no frost after ${dayWords(book, middle.day)}, nine in ten after ${dayWords(book, safe.day)}.`,
    autumn === undefined ? '' : `Half have had one by ${dayWords(book, autumn.day)}.`,
    plantedWords(planted),
  ];
  return parts.filter((part) => part !== '').join(' ');
}

/** At most so many plantings are named. */
const NAMED = 4;

function plantedWords(planted: readonly Planted[]): string {
  if (planted.length === 0) return '';
  const risky = planted.filter(({ y }) => y >= 50);
  const go = `${risky.length} of ${planted.length} plantings ${risky.length === 1 ? 'goes' : 'go'} in while a frost is more likely than not`;
  if (risky.length === 0) return `${go}.`;
  const notHardy = risky.filter(({ hardiness }) => NOT_HARDY.includes(hardiness));
  const unknown = risky.filter(({ hardiness }) => hardiness === '').length;
  if (unknown === risky.length) return `${go}; hardy ones may.`;
  const more = notHardy.length > NAMED ? ` and ${notHardy.length - NAMED} more` : '';
  const names = notHardy.slice(0, NAMED).map(({ name }) => name);
  const parts = [
    go,
    notHardy.length === 0 && unknown === 0 ? (risky.length === 1 ? 'it is hardy' : 'all of them are hardy') : '',
    notHardy.length === 0 ? '' : `not hardy among them: ${names.join(', ')}${more}`,
    unknown === 0
      ? ''
      : `how hardy ${unknown === 1 ? 'one' : unknown} of them ${unknown === 1 ? 'is' : 'are'} is not known`,
  ];
  return `${parts.filter((part) => part !== '').join('; ')}.`;
}
