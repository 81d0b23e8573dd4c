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
    const read = await readSpreadsheet(bytes, (names) => chosen(names, table, view.name));
    if (!read.ok) return read;
    const name = chosen(read.names, table, view.name);
    // Where none is called so, it is the first that holds anything.
    const wanted = read.sheets.find((sheet) => (name === undefined ? sheet.rows.length > 0 : sheet.name === name));
    if (wanted === undefined) return EMPTY;
    const found = withHeader(recordsOf(wanted.rows), view);
    return found === undefined ? EMPTY : { ok: true, tables: read.names, table: wanted.name, ...found };
  },
};

/** The sheet asked for, else the one called as the sheet it is meant for; undefined where there is neither. */
function chosen(names: readonly string[], asked: string | undefined, meantFor: string): string | undefined {
  const lower = meantFor.toLowerCase();
  return names.find((name) => name === asked) ?? names.find((name) => name.toLowerCase() === lower);
}
