// Figures for --json, as all verbs give them: numbers in the unit that stands beside them, days by the calendar.

import { type Book, type CellData, cellData, type ValueType } from '../../engine/index.ts';

/** A canonical number of a type; what lies between two days, as the middle of drawn dates may, is the nearer one. */
export function plainData(book: Book, value: number, type: ValueType | undefined): CellData {
  return cellData(book, type?.kind === 'date' ? Math.round(value) : value, type);
}
