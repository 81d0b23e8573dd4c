// How columns and cells stand in a CSV file: headers with their unit, and cells as plain fields. Export writes them; import
// finds columns by them and tells by them which cells a file leaves as they were.

import { shownNumber } from '../units/unit.ts';
import { isoDate } from '../values/civil.ts';
import { isError } from '../values/error.ts';
import type { ColumnView, WorkbookFace } from '../workbook/face.ts';

/** 'In-row spacing (in)'; the name alone where there is no unit. */
export function headerOf(column: ColumnView): string {
  return column.unit === '' ? column.name : `${column.name} (${column.unit})`;
}

/**
 * A cell as a field, unguarded: numbers in the column's unit with a point, typed ones exact and computed ones to 15
 * figures, dates 2027-03-15, yes and no, links by their row's name, blank as nothing, errors by their short words.
 */
export function fieldOf(workbook: WorkbookFace, table: string, row: number, column: ColumnView): string {
  const { type } = column;
  const value = workbook.value(table, row, column.name);
  if (value === null) return '';
  if (type === undefined || isError(value)) return workbook.cell(table, row, column.name).text;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  switch (type.kind) {
    case 'date':
      return isoDate(value);
    case 'link':
      return workbook.rowName(type.table, value);
    case 'number':
    case 'temperature': {
      const number = shownNumber(type.unit, value);
      const { standing } = workbook.cell(table, row, column.name);
      const typed = standing === 'entered' || standing === 'override';
      return String(typed ? number : Number(number.toPrecision(15)));
    }
    default:
      return String(value);
  }
}
