// Whether a cell is as a filter or a colour wants it, and by what key its value is told from others.

import type { ProgramColumn } from '../schema/compile.ts';
import { isComputed } from '../schema/schema.ts';
import type { Condition } from '../schema/views.ts';
import { isoDate } from '../values/civil.ts';
import { isError } from '../values/error.ts';
import { type Book, columnOf } from './book.ts';
import { scalarAt, shownCell } from './shown.ts';

/** A value told from others: a link by its row's id, a number as it is kept, a day as 2027-03-15; '' for a blank. */
export function valueKey(book: Book, sheet: string, row: number, column: string): string {
  const found = columnOf(book, sheet, column);
  return found === undefined ? '' : keyOf(book, found, row);
}

function keyOf(book: Book, column: ProgramColumn, row: number): string {
  const value = scalarAt(book, column, row);
  if (value === null) return '';
  if (isError(value)) return `error: ${value.error}`;
  if (typeof value !== 'number') return String(value);
  const { type } = column;
  if (type?.kind === 'date') return isoDate(value);
  return type?.kind === 'link' ? (book.document.rowIdOf(type.table, value) ?? '') : String(value);
}

/** Asks it of one row after another. A column that is not there meets nothing. */
export function meeting(book: Book, sheet: string, columnId: string, condition: Condition): (row: number) => boolean {
  const column = columnOf(book, sheet, columnId);
  if (column === undefined) return () => false;
  switch (condition.is) {
    case 'one of': {
      const values = new Set(condition.values);
      return (row) => values.has(keyOf(book, column, row));
    }
    case 'none of': {
      const values = new Set(condition.values);
      return (row) => !values.has(keyOf(book, column, row));
    }
    case 'at least':
      return amount(book, column, (value) => value >= condition.least);
    case 'at most':
      return amount(book, column, (value) => value <= condition.most);
    case 'between':
      return amount(book, column, (value) => value >= condition.least && value <= condition.most);
    case 'holding':
      return (row) => reads(book, column, row).includes(condition.text.toLowerCase());
    case 'not holding':
      return (row) => !reads(book, column, row).includes(condition.text.toLowerCase());
    case 'blank':
      return (row) => scalarAt(book, column, row) === null;
    case 'filled':
      return (row) => scalarAt(book, column, row) !== null;
    case 'typed over':
      return (row) => isComputed(column) && book.document.isTyped(column, row);
  }
}

function amount(book: Book, column: ProgramColumn, holds: (value: number) => boolean): (row: number) => boolean {
  if (column.type?.kind === 'link') return () => false;
  return (row) => {
    const value = scalarAt(book, column, row);
    return typeof value === 'number' && holds(value);
  };
}

/** In small letters, with the unit that the cell brings along. */
function reads(book: Book, column: ProgramColumn, row: number): string {
  const { figure, unit } = shownCell(book, column, row);
  return (unit === '' ? figure : `${figure} ${unit}`).toLowerCase();
}
