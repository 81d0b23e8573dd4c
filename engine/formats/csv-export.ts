// A table as CSV for spreadsheets and for import again: RFC 4180, units in the header, nothing rounded for show. The
// browser's download and the terminal's export both come from here.

import type { Book } from '../queries/book.ts';
import { rows } from '../queries/rows.ts';
import { type ColumnView, sheetView } from '../queries/sheets.ts';
import { guarded, writeCsv } from './csv.ts';
import { fieldOf, headerOf } from './fields.ts';

export interface CsvExportOptions {
  /** For spreadsheets set to a decimal comma: semicolons between fields, commas in numbers. */
  readonly decimalComma?: boolean;
}

/** All rows and columns of a sheet in their order, the header first; '' for a sheet that is not there. */
export function exportCsv(book: Book, sheet: string, options: CsvExportOptions = {}): string {
  const view = sheetView(book, sheet);
  if (view === undefined) return '';
  const { decimalComma = false } = options;
  const header = view.columns.map((column) => guarded(headerOf(column)));
  const records = Array.from(rows(book, sheet), (row) =>
    view.columns.map((column) => {
      const field = fieldOf(book, sheet, row, column);
      if (!isNumeric(column)) return guarded(field);
      return decimalComma ? field.replace('.', ',') : field;
    }),
  );
  return writeCsv([header, ...records], decimalComma ? ';' : ',');
}

/** A minus in front of a number is a minus: numbers are never guarded. */
export function isNumeric({ type }: ColumnView): boolean {
  return type?.kind === 'number' || type?.kind === 'temperature';
}
