// A table as plain data for other programs: columns with type, unit and formula, and rows of plain values. Numbers keep full
// precision and stand in the column's unit.

import type { Book } from '../queries/book.ts';
import { cellValue } from '../queries/cells.ts';
import { rowName, rows as rowsOf } from '../queries/rows.ts';
import { sheetView } from '../queries/sheets.ts';
import { shownNumber, type Unit } from '../units/unit.ts';
import { isoDate } from '../values/civil.ts';
import { type ErrorKind, isError, type Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';

export interface ErrorData {
  readonly error: ErrorKind;
  readonly why: string;
}

/** A number in the unit shown, a text, yes and no as true and false, a date as 2027-03-15, a link as its row's name, blank as null. */
export type CellData = number | string | boolean | null | ErrorData;

export interface ColumnData {
  readonly name: string;
  /** 'number', 'temperature', 'date', 'text', 'yesno', 'choice' or 'link'; null while its formula doesn't check. */
  readonly type: ValueType['kind'] | null;
  /** The unit's symbol ('in', 'lb/ft2', 'degF'); null where there is none. */
  readonly unit: string | null;
  /** Of computed columns, and of those whose formula stands in where nothing is typed. */
  readonly formula?: string;
}

export interface TableData {
  readonly columns: readonly ColumnData[];
  readonly rows: readonly (readonly CellData[])[];
}

/** undefined where there is no such sheet. */
export function tableData(book: Book, sheet: string): TableData | undefined {
  const view = sheetView(book, sheet);
  if (view === undefined) return undefined;
  const columns = view.columns.map(
    ({ name, type, formula }): ColumnData => ({
      name,
      type: type?.kind ?? null,
      unit: type === undefined ? null : unitSymbol(type),
      ...(formula === '' ? {} : { formula }),
    }),
  );
  const rows = Array.from(rowsOf(book, sheet), (row) =>
    view.columns.map(({ id, type }) => cellData(book, cellValue(book, sheet, row, id), type)),
  );
  return { columns, rows };
}

/** A canonical value of a type as plain data. */
export function cellData(book: Book, value: Scalar, type: ValueType | undefined): CellData {
  if (isError(value)) return { error: value.error, why: value.why };
  if (typeof value !== 'number' || type === undefined) return value;
  switch (type.kind) {
    case 'number':
    case 'temperature':
      return plainNumber(type.unit, value);
    case 'date':
      return isoDate(value);
    case 'link':
      return rowName(book, type.table, value);
    default:
      return value;
  }
}

/** The symbol of the unit that numbers of a type are shown in. */
export function unitSymbol(type: ValueType): string | null {
  const symbol = type.kind === 'number' || type.kind === 'temperature' ? type.unit.symbol : '';
  return symbol === '' ? null : symbol;
}

/** Three times 8 in is 24 in: where binary dust alone parts a number from a short decimal, the decimal is meant. */
function plainNumber(unit: Unit, canonical: number): number {
  const number = shownNumber(unit, canonical);
  const short = Number(number.toPrecision(12));
  return Math.abs(number - short) <= 1e-15 * Math.abs(number) ? short : number;
}
