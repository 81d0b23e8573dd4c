// The strip of the year: today on it, the days between the frosts, and how many hours each week wants. Pure; the season at a glance
// calls it.

import { type Book, settings, type Writing } from '../../../engine/index.ts';
import { FARM, FARM_COLUMN } from '../panels/columns.ts';
import { farmFigure, type Season, seasonOf } from '../panels/read.ts';
import { askRows, hasColumns, inUnit } from '../pictures/kit/ask.ts';
import { dayWords } from '../store/day-words.ts';

export interface YearStrip {
  /** With the weeks before it in which there is work for it. */
  readonly season: Season;
  readonly today: number;
  /** The average last and first frost; undefined where the farm doesn't know them. */
  readonly frostFree: { readonly from: number; readonly until: number } | undefined;
  /** Hours by week, in canonical units, from the sheet of hours; empty where there is none. */
  readonly weeks: readonly {
    readonly monday: number;
    readonly hours: number;
    readonly available: number | undefined;
  }[];
  readonly says: string;
  /** 'between the average frosts, 5 Apr to 3 Nov'; '' where they are not known. */
  readonly frostWords: string;
  /** How its months are written. */
  readonly writing: Writing | undefined;
}

const LABOUR = 'labour';

export function yearStrip(book: Book, today: number): YearStrip | undefined {
  if (!hasColumns(book, { [FARM]: [FARM_COLUMN.starts, FARM_COLUMN.ends] })) return undefined;
  const { first, last } = seasonOf(book);
  const from = farmFigure(book, 'average-last-frost');
  const until = farmFigure(book, 'average-first-frost');
  const frostFree = from === undefined || until === undefined || until <= from ? undefined : { from, until };
  const all = hasColumns(book, { [LABOUR]: ['monday', 'hours'] })
    ? askRows(book, LABOUR).flatMap((row) => {
        const monday = row.figure('monday');
        if (monday === undefined || monday > last) return [];
        return [{ monday, hours: row.figure('hours') ?? 0, available: row.figure('available') }];
      })
    : [];
  // What is sown for the season before its first day is work too.
  const begins = Math.min(first, ...all.flatMap(({ monday, hours }) => (hours > 0 ? [monday] : [])));
  const weeks = all.filter(({ monday }) => monday + 6 >= begins);
  const season = { first: begins, last };
  return {
    season,
    today,
    frostFree,
    weeks,
    says: sentence(book, today, frostFree, weeks),
    frostWords:
      frostFree === undefined
        ? ''
        : `between the average frosts, ${dayWords(book, frostFree.from)} to ${dayWords(book, frostFree.until)}`,
    writing: settings(book).writing,
  };
}

function sentence(book: Book, today: number, frostFree: YearStrip['frostFree'], weeks: YearStrip['weeks']): string {
  const parts: string[] = [];
  if (frostFree !== undefined) {
    const { from, until } = frostFree;
    if (today < from) parts.push(`${weeksWords(from - today)} to the average last frost, ${dayWords(book, from)}.`);
    else if (today < until)
      parts.push(`${weeksWords(until - today)} to the average first frost, ${dayWords(book, until)}.`);
    else parts.push(`The average first frost was ${dayWords(book, until)}.`);
  }
  const busiest = weeks.reduce<(typeof weeks)[number] | undefined>(
    (most, week) => (week.hours > (most?.hours ?? 0) ? week : most),
    undefined,
  );
  if (busiest !== undefined) {
    const hours = inUnit(book, LABOUR, 'hours', busiest.hours);
    parts.push(`The busiest week begins ${dayWords(book, busiest.monday)}: about ${hours} of work.`);
  }
  return parts.join(' ');
}

function weeksWords(days: number): string {
  if (days < 14) return `${days} ${days === 1 ? 'day' : 'days'}`;
  return `${Math.round(days / 7)} weeks`;
}
