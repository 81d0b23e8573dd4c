// Two books held against each other: places of columns in words, the rows that both have, values that mean the same in either.

import { storedFormula } from '../language/stored.ts';
import { checkText } from '../schema/check.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isError, type Scalar } from '../values/error.ts';
import type { Book } from './book.ts';
import { rowId, rows } from './rows.ts';
import { scalarAt } from './shown.ts';

/** A column, by ids and as people call it; '' for the column where the whole sheet is meant. */
export interface ColumnPlace {
  readonly sheet: string;
  readonly sheetName: string;
  readonly column: string;
  readonly columnName: string;
}

export function placeOf(sheet: ProgramSheet, column: ProgramColumn | undefined): ColumnPlace {
  return { sheet: sheet.id, sheetName: sheet.name, column: column?.id ?? '', columnName: column?.name ?? '' };
}

/** Slots of the rows that are there before and after. */
export function matchRows(
  before: Book,
  after: Book,
  sheet: string,
): readonly (readonly [before: number, after: number])[] {
  const there = new Map(Array.from(rows(after, sheet), (slot) => [rowId(after, sheet, slot), slot] as const));
  return Array.from(rows(before, sheet)).flatMap((slot) => {
    const same = there.get(rowId(before, sheet, slot));
    return same === undefined ? [] : [[slot, same] as const];
  });
}

/** A value that can be held against one of another book: a row by its id, an error by what it says. */
export function lasting(book: Book, column: ProgramColumn, row: number): Exclude<Scalar, object> | string {
  const value = scalarAt(book, column, row);
  if (isError(value)) return `${value.error} ${value.why}`;
  return column.type?.kind === 'link' && typeof value === 'number' ? rowId(book, column.type.table, value) : value;
}

/** With ids in place of names: a formula in which only a name changed is the same. */
export function keptForm({ document }: Book, table: string, text: string): string {
  const { catalog, vocabulary } = document.program;
  return storedFormula(text, checkText(text, { table }, catalog, vocabulary).found);
}
