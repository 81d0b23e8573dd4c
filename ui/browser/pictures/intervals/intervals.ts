// How sure: what each planting is likely to give, between the low and the high that can be expected, one under the other. Figures in
// the sheet's own units. Pure: from the engine's queries to a picture model.

import { type Book, rowName, settings, sheetView, type Writing } from '../../../../engine/index.ts';
import { PLANTINGS } from '../../panels/columns.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRows, bareFigure, hasColumns } from '../kit/ask.ts';
import { type Interval, intervalWords } from '../kit/interval-words.ts';
import type { PictureTable } from '../kit/model.ts';

export interface Guess {
  readonly name: string;
  readonly column: string;
  readonly low: string;
  readonly high: string;
}

const GUESSES: readonly Guess[] = [
  {
    name: 'Harvest that can be sold',
    column: 'marketable-yield',
    low: 'marketable-yield-low',
    high: 'marketable-yield-high',
  },
  { name: 'Takings', column: 'revenue', low: 'revenue-low', high: 'revenue-high' },
  { name: 'Hours of work', column: 'hours', low: 'hours-low', high: 'hours-high' },
];

/** Figures of plantings that come with a low and a high here. */
export function guessesOf(book: Book): readonly Guess[] {
  return GUESSES.filter(({ column, low, high }) => hasColumns(book, { [PLANTINGS]: [column, low, high] }));
}

export interface IntervalLine extends Interval {
  readonly row: string;
  readonly name: string;
  readonly words: string;
}

export interface Intervals {
  readonly writing: Writing | undefined;
  readonly title: string;
  readonly unit: string;
  readonly says: string;
  readonly lines: readonly IntervalLine[];
  readonly table: PictureTable;
}

/** The largest first. Undefined where no planting has such a figure. */
export function intervalsOf(book: Book, { name, column, low, high }: Guess): Intervals | undefined {
  const view = columnOf(sheetView(book, PLANTINGS), column);
  const unit = view?.unit ?? '';
  const { writing } = settings(book);
  const lines = askRows(book, PLANTINGS)
    .flatMap((row): readonly IntervalLine[] => {
      const [least, likely, most] = [low, column, high].map((id) => row.figure(id));
      if (least === undefined || likely === undefined || most === undefined) return [];
      const interval = { low: bareFigure(view, least), likely: bareFigure(view, likely), high: bareFigure(view, most) };
      return [
        {
          ...interval,
          row: row.id,
          name: rowName(book, PLANTINGS, row.slot),
          words: intervalWords(interval, unit, writing),
        },
      ];
    })
    .sort((a, b) => b.likely - a.likely);
  const [first] = lines;
  if (first === undefined) return undefined;
  const widest = lines.reduce((most, line) => (line.high - line.low > most.high - most.low ? line : most));
  return {
    writing,
    title: unit === '' ? `${name} by planting` : `${name} by planting, ${unit}`,
    unit,
    says:
      widest === first
        ? `Most, and least sure, from ${first.name}: ${first.words}.`
        : `Most from ${first.name}: ${first.words}. Least sure is ${widest.name}: ${widest.words}.`,
    lines,
    table: {
      head: ['Planting', 'Low', 'Likely', 'High'],
      rows: lines.map(({ name: called, low: least, likely, high: most }) => [
        called,
        ...[least, likely, most].map((figure) =>
          intervalWords({ low: figure, likely: figure, high: figure }, '', writing),
        ),
      ]),
    },
  };
}
