// Money by month: what comes in, what goes out, and what is in the till at each month's end. Figures in the workbook's money. Pure:
// from the engine's queries to a picture model.

import { type Book, settings, sheetView } from '../../../../engine/index.ts';
import { PLANTINGS } from '../../panels/columns.ts';
import { monthMarks } from '../../panels/read.ts';
import { monthWords } from '../../store/day-words.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRows, bareFigure, type Needs, sumOf } from '../kit/ask.ts';
import { type Line, type LinesModel, roundAxis, said, withSaidUnit } from '../kit/model.ts';

const SHEET = 'months';
const [MONTH, SALES, COSTS, TILL] = ['month', 'sales', 'costs', 'in-the-till'] as const;

/** What the season would take were all of its harvest sold. */
const ALL_SOLD = 'revenue-this-season';

export const MONEY_NEEDS: Needs = { [SHEET]: [MONTH, SALES, COSTS, TILL], [PLANTINGS]: [ALL_SOLD] };

/** How many times what outlets take the harvest is worth, from which on the difference is told. */
const WORTH_A_WORD = 1.05;

/** So many along the axis, about: a month's income is small beside an empty till. */
const MARKS = 7;

interface Month {
  readonly day: number;
  readonly sales: number;
  readonly costs: number;
  readonly till: number | undefined;
}

/** Undefined where there are fewer than two months, or nothing comes in, goes out or lies in the till in any of them. */
export function moneyByMonth(book: Book): LinesModel | undefined {
  const view = columnOf(sheetView(book, SHEET), SALES);
  const unit = view?.unit ?? '';
  const months = askRows(book, SHEET).flatMap((row): readonly Month[] => {
    const day = row.figure(MONTH);
    if (day === undefined) return [];
    const till = row.figure(TILL);
    return [
      {
        day,
        sales: bareFigure(view, row.figure(SALES) ?? 0),
        costs: bareFigure(view, row.figure(COSTS) ?? 0),
        till: till === undefined ? undefined : bareFigure(view, till),
      },
    ];
  });
  const [first, last] = [months[0], months.at(-1)];
  if (first === undefined || last === undefined || first === last) return undefined;
  if (months.every(({ sales, costs, till = 0 }) => sales === 0 && costs === 0 && till === 0)) return undefined;
  const { today, writing } = settings(book);
  const say = (figure: number): string => withSaidUnit(figure, unit, view?.decimals, writing);
  const bare = (figure: number): string => said(figure, view?.decimals, writing);
  const line = (name: string, mark: string, of: (month: Month) => number | undefined): Line => ({
    name,
    mark,
    points: months.flatMap((month) => {
      const y = of(month);
      return y === undefined ? [] : [{ x: month.day, y }];
    }),
  });
  const figures = months.flatMap(({ sales, costs, till = 0 }) => [sales, costs, till]);
  const words = (month: Month): string =>
    `${monthWords(book, month.day)}: ${say(month.sales)} in, ${say(month.costs)} out${month.till === undefined ? '' : `, ${say(month.till)} in the till at its end`}.`;
  return {
    kind: 'lines',
    title: `Money by month, ${unit}`,
    says: sentence(book, months, say),
    today,
    x: {
      label: 'month',
      from: first.day,
      to: last.day,
      marks: monthMarks({ first: first.day, last: last.day }, writing),
    },
    y: { label: unit, ...roundAxis(figures, MARKS, writing) },
    bands: [],
    lines: [
      line('in the till at the month’s end', 'line-accent', ({ till }) => till),
      line('comes in', 'line-plain', ({ sales }) => sales),
      line('goes out', 'line-dashed', ({ costs }) => costs),
    ],
    dots: [],
    readings: months.map((month) => ({ x: month.day, words: words(month) })),
    table: {
      head: ['Month', `In, ${unit}`, `Out, ${unit}`, `In the till, ${unit}`],
      rows: months.map((month) => [
        monthWords(book, month.day),
        bare(month.sales),
        bare(month.costs),
        month.till === undefined ? '' : bare(month.till),
      ]),
    },
  };
}

function sentence(book: Book, months: readonly Month[], say: (figure: number) => string): string {
  const income = months.reduce((sum, { sales }) => sum + sales, 0);
  const spent = months.reduce((sum, { costs }) => sum + costs, 0);
  const known = months.filter((month): month is Month & { readonly till: number } => month.till !== undefined);
  const lowest = known.reduce<(typeof known)[number] | undefined>(
    (least, month) => (least === undefined || month.till < least.till ? month : least),
    undefined,
  );
  const most = bareFigure(
    columnOf(sheetView(book, PLANTINGS), ALL_SOLD),
    sumOf(askRows(book, PLANTINGS), ALL_SOLD) ?? 0,
  );
  const unsold =
    most > income * WORTH_A_WORD
      ? ` Were all of the harvest sold, ${say(most)} would come in: the rest has no outlet yet, or fetches less there.`
      : '';
  const all = `${say(income)} come in from outlets and ${say(spent)} go out.${unsold}`;
  if (lowest === undefined) return all;
  return `${all} The till is emptiest at the end of ${monthWords(book, lowest.day)}: ${say(lowest.till)}.`;
}
