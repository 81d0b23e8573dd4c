// Sheets as an XLSX file: numbers as numbers, dates as dates, units in the headers, what is worked out as its value. What writes
// and reads such files is fetched with the first.

import type { Format } from './format.ts';

export const XLSX: Format = {
  id: 'xlsx',
  name: 'XLSX',
  ending: 'xlsx',
  mediaType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  holds: 'sheets',
  kind: 'spreadsheet',
  write: async (book, sheets, { writeSpreadsheet }) => {
    const { spreadsheetOf } = await import('./spreadsheet.ts');
    const { spreadsheet, notes } = spreadsheetOf(book, sheets);
    return { content: await writeSpreadsheet(spreadsheet), notes };
  },
  readTable: async (bytes, view, { readSpreadsheet }, { table }) => {
    const { recordsOf } = await import('./spreadsheet.ts');
    const { EMPTY, withHeader } = await import('./csv-table.ts');
    const read = await readSpreadsheet(bytes);
    if (!read.ok) return read;
    const tables = read.sheets.map(({ name }) => name);
    const wanted = read.sheets.find(({ name }) => name === table) ?? likeliest(read.sheets, view.name);
    if (wanted === undefined) return EMPTY;
    const found = withHeader(recordsOf(wanted.rows), view);
    return found === undefined ? EMPTY : { ok: true, tables, table: wanted.name, ...found };
  },
};

/** The sheet called as the one it is meant for, else the first that holds anything. */
function likeliest<T extends { readonly name: string; readonly rows: readonly unknown[] }>(
  sheets: readonly T[],
  name: string,
): T | undefined {
  const lower = name.toLowerCase();
  return sheets.find((sheet) => sheet.name.toLowerCase() === lower) ?? sheets.find(({ rows }) => rows.length > 0);
}
