// How columns and cells stand in a CSV file: headers with their unit, and cells as plain fields. Export writes them; import
// finds columns by them and tells by them which cells a file leaves as they were.

import type { Book } from '../queries/book.ts';
import { cellValue, cellView } from '../queries/cells.ts';
import { rowName } from '../queries/rows.ts';
import type { ColumnView } from '../queries/sheets.ts';
import { shownNumber } from '../units/unit.ts';
import { isoDate } from '../values/civil.ts';
import { isError } from '../values/error.ts';

/** 'In-row spacing (in)'; the name alone where there is no unit. */
export function headerOf(column: ColumnView): string {
  return column.unit === '' ? column.name : `${column.name} (${column.unit})`;
}

/**
 * A cell as a field, unguarded: numbers in the column's unit with a point, typed ones exact and computed ones to 15
 * figures, dates 2027-03-15, yes and no, links by their row's name, blank as nothing, errors by their short words.
 */
export function fieldOf(book: Book, sheet: string, row: number, column: ColumnView): string {
  const { type } = column;
  const value = cellValue(book, sheet, row, column.id);
  if (value === null) return '';
  if (type === undefined || isError(value)) return cellView(book, sheet, row, column.id).text;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  switch (type.kind) {
    case 'date':
      return isoDate(value);
    case 'link':
      return rowName(book, type.table, value);
    case 'number':
    case 'temperature': {
      const number = shownNumber(type.unit, value);
      const { origin } = cellView(book, sheet, row, column.id);
      const typed = origin === 'entered' || origin === 'override';
      return String(typed ? number : Number(number.toPrecision(15)));
    }
    default:
      return String(value);
  }
}
