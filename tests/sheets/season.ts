// Season workbooks for the tests of the sheets: opened from a few rows, read by row name and column, in the column's unit.

import { civilDay, isError, type Scalar } from '../../engine/index.ts';
import { SEASON, type SeasonOptions, seasonStart } from '../../sheets-templates/season.ts';
import { type Book, started } from '../book.ts';

export type Rows = NonNullable<SeasonOptions['rows']>;

export const TODAY = civilDay(2026, 12, 1);

export interface Season {
  readonly book: Book;
  /** The number as shown in the column's unit; undefined where blank or no number. */
  number(sheet: string, row: string, column: string): number | undefined;
  /** The value as it is kept: text, yes/no, a civil day; null where blank. */
  value(sheet: string, row: string, column: string): Scalar;
  /** As shown: '15 Mar 2027', '8.00'. */
  shown(sheet: string, row: string, column: string): string;
  /** Types into a cell; throws what a refusal says. */
  type(sheet: string, row: string, column: string, entry: string): void;
  /** Sentences of the attention list at a row. */
  says(sheet: string, row: string): readonly string[];
}

export function seasonOf(
  rows: Rows,
  farm: Readonly<Record<string, string>> = {},
  more: Partial<SeasonOptions> = {},
): Season {
  const start = seasonStart({ season: 2027, today: TODAY, farm: { Latitude: '44', ...farm }, rows, ...more });
  const opened = started(SEASON, start);
  if (!opened.ok) throw new Error(opened.problems.join('\n'));
  return reading(opened.workbook);
}

export function reading(book: Book): Season {
  const slot = (sheet: string, row: string): number => {
    for (const one of book.rows(sheet)) if (row === '' || book.rowName(sheet, one) === row) return one;
    throw new Error(`${sheet} has no row ${row}`);
  };
  return {
    book,
    number: (sheet, row, column) => book.cell(sheet, slot(sheet, row), column).number,
    value: (sheet, row, column) => book.value(sheet, slot(sheet, row), column),
    shown: (sheet, row, column) => book.cell(sheet, slot(sheet, row), column).text,
    type: (sheet, row, column, entry) => {
      const done = book.edit(
        [{ edit: 'cell', table: sheet, row: slot(sheet, row), column, entry }],
        `Change ${column}`,
      );
      if (done.refused) throw new Error(done.why);
    },
    says: (sheet, row) =>
      book
        .attention()
        .filter((one) => one.table === sheet && one.rowName === row)
        .map((one) => one.says),
  };
}

/** Every cell that holds an error: where, and what it says. */
export function errorsOf(book: Book): readonly string[] {
  return book.tables().flatMap((table) =>
    table.columns.flatMap((column) =>
      [...book.rows(table.name)].flatMap((row) => {
        const value = book.value(table.name, row, column.name);
        return isError(value) ? [`${table.name}, ${book.rowName(table.name, row)}, ${column.name}: ${value.why}`] : [];
      }),
    ),
  );
}
