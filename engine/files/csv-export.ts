// A table as CSV for spreadsheets and for import again: RFC 4180, units in the header, nothing rounded for show. The
// browser's download and the terminal's export both come from here.

import type { ColumnView, WorkbookFace } from '../workbook/face.ts';
import { guarded, writeCsv } from './csv.ts';
import { fieldOf, headerOf } from './csv-fields.ts';

export interface CsvExportOptions {
  /** For spreadsheets set to a decimal comma: semicolons between fields, commas in numbers. */
  readonly decimalComma?: boolean;
}

/** All rows and columns of a table in their order, the header first; '' for a table that is not there. */
export function exportCsv(workbook: WorkbookFace, table: string, options: CsvExportOptions = {}): string {
  const view = workbook.table(table);
  if (view === undefined) return '';
  const { decimalComma = false } = options;
  const header = view.columns.map((column) => guarded(headerOf(column)));
  const records = [...workbook.rows(table)].map((row) =>
    view.columns.map((column) => {
      const field = fieldOf(workbook, table, row, column);
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
