// Amounts by week: a column summed over the rows of each week, for several books side by side.

import type { ValueType } from '../values/type.ts';
import { type Book, columnOf } from './book.ts';
import { dustOf } from './dust.ts';
import { rows } from './rows.ts';
import { scalarAt } from './shown.ts';

/** A column of amounts and the date column of the same sheet that says which week each row is in. */
export interface WeeklyFigure {
  readonly id: string;
  readonly name: string;
  readonly sheet: string;
  readonly date: string;
  readonly column: string;
}

export interface WeeksCompared {
  readonly id: string;
  readonly name: string;
  readonly type: ValueType;
  readonly weeks: readonly {
    /** Civil day of its Monday. */
    readonly week: number;
    /** Canonical, a book each; undefined where the book has nothing in that week. */
    readonly values: readonly (number | undefined)[];
  }[];
}

/** The weeks in which any book has anything; figures of which no book has any are left out. What a sheet would show as nothing is 0. */
export function compareWeeks(books: readonly Book[], figures: readonly WeeklyFigure[]): readonly WeeksCompared[] {
  return figures.flatMap((figure): WeeksCompared[] => {
    const [first] = books;
    const type = first === undefined ? undefined : columnOf(first, figure.sheet, figure.column)?.type;
    if (type === undefined) return [];
    const sums = books.map((book) => weeklySums(book, figure));
    const weeks = [...new Set(sums.flatMap((sum) => [...sum.keys()]))].sort((a, b) => a - b);
    if (weeks.length === 0) return [];
    const { id, name } = figure;
    const dust = first === undefined ? 0 : dustOf(first, figure);
    const settled = (sum: number | undefined): number | undefined => {
      return sum !== undefined && Math.abs(sum) < dust ? 0 : sum;
    };
    return [
      { id, name, type, weeks: weeks.map((week) => ({ week, values: sums.map((sum) => settled(sum.get(week))) })) },
    ];
  });
}

/** A column summed by week, to the last bit; by the civil day of the week's Monday. */
export function weeklySums(book: Book, { sheet, date, column }: WeeklyFigure): ReadonlyMap<number, number> {
  const [day, amount] = [columnOf(book, sheet, date), columnOf(book, sheet, column)];
  const sums = new Map<number, number>();
  if (day === undefined || amount === undefined) return sums;
  for (const row of rows(book, sheet)) {
    const [week, value] = [scalarAt(book, day, row), scalarAt(book, amount, row)];
    if (typeof week !== 'number' || typeof value !== 'number') continue;
    sums.set(week, (sums.get(week) ?? 0) + value);
  }
  return sums;
}
