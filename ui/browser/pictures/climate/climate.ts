// The climate of the year: lows and highs by day with the mean between, and beside them the warmth a crop likes best and the least and
// most it grows in. Pure: from the engine's queries to a picture model.

import { type Book, rowName, rows, settings, sheetView } from '../../../../engine/index.ts';
import { monthMarks } from '../../panels/read.ts';
import { dayWords } from '../../store/day-words.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRow, askRows, bareFigure, hasColumns, type Needs } from '../kit/ask.ts';
import { type Band, figureMarks, type Line, type LinesModel, said } from '../kit/model.ts';

const CLIMATE = 'climate';
const CROPS = 'crops';

export const CLIMATE_NEEDS: Needs = { [CLIMATE]: ['day', 'low', 'high', 'mean'] };

const CROP_NEEDS: Needs = { [CROPS]: ['growth-best-from', 'growth-best-to', 'growth-minimum', 'growth-maximum'] };

export interface CropName {
  readonly slot: number;
  readonly name: string;
}

/** Crops that are grown this season first, then the others. */
export function cropsOf(book: Book): readonly CropName[] {
  if (!hasColumns(book, CROP_NEEDS)) return [];
  const grown = new Set(askRows(book, 'plantings').map((row) => row.text('crop')));
  const all = Array.from(rows(book, CROPS), (slot) => ({ slot, name: rowName(book, CROPS, slot) }));
  return [...all.filter(({ name }) => grown.has(name)), ...all.filter(({ name }) => !grown.has(name))];
}

interface Day {
  readonly day: number;
  readonly low: number;
  readonly high: number;
  readonly mean: number;
}

/** Undefined where the farm has no temperatures. */
export function climateOfYear(book: Book, crop: CropName | undefined): LinesModel | undefined {
  const view = columnOf(sheetView(book, CLIMATE), 'mean');
  const unit = view?.unit ?? '';
  const { today, writing } = settings(book);
  const say = (figure: number): string => said(figure, view?.decimals, writing);
  const days = askRows(book, CLIMATE).flatMap((row): readonly Day[] => {
    const day = row.figure('day');
    const [low, high, mean] = ['low', 'high', 'mean'].map((column) => row.figure(column));
    if (day === undefined || low === undefined || high === undefined || mean === undefined) return [];
    return [{ day, low: bareFigure(view, low), high: bareFigure(view, high), mean: bareFigure(view, mean) }];
  });
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const warmth = crop === undefined ? undefined : warmthOf(book, crop);
  const ends = [first.day, last.day];
  const figures = [...days.flatMap(({ low, high }) => [low, high]), ...(warmth === undefined ? [] : warmth.all)];
  const from = Math.floor(Math.min(...figures) / 10) * 10;
  const to = Math.ceil(Math.max(...figures) / 10) * 10;
  const bands: Band[] = [
    {
      name: 'low to high of the day',
      mark: 'band-plain',
      points: days.map(({ day, low, high }) => ({ x: day, low, high })),
    },
  ];
  const lines: Line[] = [
    { name: 'mean of the day', mark: 'line-plain', points: days.map(({ day, mean }) => ({ x: day, y: mean })) },
  ];
  if (warmth?.best !== undefined) {
    const { low, high } = warmth.best;
    bands.push({
      name: `what ${warmth.name} likes best`,
      mark: 'band-likes',
      points: ends.map((x) => ({ x, low, high })),
    });
  }
  for (const { name, mark, at } of warmth?.limits ?? []) {
    lines.push({ name, mark, points: ends.map((x) => ({ x, y: at })) });
  }
  return {
    kind: 'lines',
    title: `The climate of the year, ${unit}`,
    says: sentence(book, days, warmth, say, unit),
    today,
    x: {
      label: 'day',
      from: first.day,
      to: last.day,
      marks: monthMarks({ first: first.day, last: last.day }, writing),
    },
    y: { label: unit, from, to, marks: figureMarks(from, to, 6, writing) },
    bands,
    lines,
    dots: [],
    readings: days.map((day) => ({
      x: day.day,
      words: `${dayWords(book, day.day)}: ${say(day.low)} to ${say(day.high)} ${unit}, mean ${say(day.mean)}.`,
    })),
    table: {
      head: ['Day', `Low, ${unit}`, `Mean, ${unit}`, `High, ${unit}`],
      rows: days
        .filter((_, index) => index % 7 === 0)
        .map(({ day, low, mean, high }) => [dayWords(book, day), say(low), say(mean), say(high)]),
    },
  };
}

interface Warmth {
  readonly name: string;
  readonly best: { readonly low: number; readonly high: number } | undefined;
  readonly limits: readonly { readonly name: string; readonly mark: string; readonly at: number }[];
  readonly all: readonly number[];
}

function warmthOf(book: Book, { slot, name }: CropName): Warmth {
  const row = askRow(book, CROPS, slot);
  const sheet = sheetView(book, CROPS);
  const figure = (column: string): number | undefined => {
    const value = row.figure(column);
    return value === undefined ? undefined : bareFigure(columnOf(sheet, column), value);
  };
  const [low, high] = [figure('growth-best-from'), figure('growth-best-to')];
  const best = low === undefined || high === undefined ? undefined : { low, high };
  const limits = [
    { name: `least that ${name} grows in`, mark: 'line-dashed', at: figure('growth-minimum') },
    { name: `most that ${name} grows in`, mark: 'line-dotted', at: figure('growth-maximum') },
  ].flatMap(({ at, ...limit }) => (at === undefined ? [] : [{ ...limit, at }]));
  const all = [...(best === undefined ? [] : [best.low, best.high]), ...limits.map(({ at }) => at)];
  return { name, best, limits, all };
}

function sentence(
  book: Book,
  days: readonly Day[],
  warmth: Warmth | undefined,
  bare: (figure: number) => string,
  unit: string,
): string {
  const say = (figure: number): string => `${bare(figure)} ${unit}`;
  const coldest = days.reduce((least, day) => (day.mean < least.mean ? day : least));
  const warmest = days.reduce((most, day) => (day.mean > most.mean ? day : most));
  const year = `Coldest about ${dayWords(book, coldest.day)}, mean ${say(coldest.mean)}; warmest about ${dayWords(book, warmest.day)}, ${say(warmest.mean)}.`;
  const best = warmth?.best;
  if (warmth === undefined) return year;
  if (best === undefined) return `${year} What ${warmth.name} likes best is not known here.`;
  const fit = days.filter(({ mean }) => mean >= best.low && mean <= best.high);
  const [first, last] = [fit[0], fit.at(-1)];
  if (first === undefined || last === undefined) {
    return `${year} The mean is never within ${bare(best.low)} to ${say(best.high)}, which ${warmth.name} likes best.`;
  }
  return `${year} ${warmth.name} likes ${bare(best.low)} to ${say(best.high)} best: ${fit.length} days, the first on ${dayWords(book, first.day)}, the last on ${dayWords(book, last.day)}.`;
}
