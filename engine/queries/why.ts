// Why a cell is blank or an error: where that began.

import { isComputed } from '../schema/schema.ts';
import { isError } from '../values/error.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import { type Place, readsOf } from './cell-reads.ts';
import { rowName, scalarAt } from './shown.ts';

/** In a sentence; '' for a cell that holds a value, and where there is no such cell. */
export function whyNone(book: Book, sheetId: string, row: number, columnId: string): string {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (sheet === undefined || column === undefined) return '';
  return whyOf(book, { sheet, row, column });
}

/** As whyNone; `reads` are the cells that it reads, where they are known. */
export function whyOf(book: Book, place: Place, reads?: readonly Place[]): string {
  const { sheet, row, column } = place;
  if (column.diagnostic !== undefined) return column.diagnostic.why;
  const value = scalarAt(book, column, row);
  if (isError(value)) {
    const { at } = value;
    if (at === undefined || (at.sheet === sheet.id && at.row === row && at.column === column.id)) return value.why;
    const origin = sheetOf(book, at.sheet);
    const name = book.document.program.schema.nameOf(`${at.sheet}/${at.column}`) ?? at.column;
    const named =
      origin === undefined || at.row < 0 ? (origin?.name ?? '') : `${origin.name} / ${rowName(book, at.sheet, at.row)}`;
    return `${value.why} It began at ${named === '' ? name : `${named} / ${name}`}.`;
  }
  if (value !== null) return '';
  const blanks = (reads ?? readsOf(book, place)).filter((read) => scalarAt(book, read.column, read.row) === null);
  const [first] = blanks;
  if (first !== undefined) {
    const names = [...new Set(blanks.map((read) => read.column.name))];
    return `Blank, because ${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} blank.`;
  }
  return isComputed(column) ? 'Blank: the formula has no answer here.' : 'Nothing has been entered.';
}
