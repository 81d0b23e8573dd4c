// Writes sheets as an XLSX file. Every text is written as a text, so that none is taken for a formula. Fetched when the first
// one is written; in the page it runs in a worker.

import writeXlsxFile, { type Cell } from 'write-excel-file/universal';
import type { Spreadsheet, SpreadsheetCell, SpreadsheetColumn } from '../../engine/index.ts';

export async function writeSpreadsheet(spreadsheet: Spreadsheet): Promise<Uint8Array> {
  const sheets = spreadsheet.map(({ name, columns, rows }) => ({
    sheet: name,
    data: [
      columns.map(({ header }): Cell => ({ value: escaped(header), type: String, fontWeight: 'bold' })),
      ...rows.map((row) => row.map((cell, i) => cellOf(cell, columns[i]))),
    ],
    columns: columns.map(({ width }) => ({ width })),
    stickyRowsCount: 1,
  }));
  const blob = await writeXlsxFile(sheets).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

function cellOf(cell: SpreadsheetCell, column: SpreadsheetColumn | undefined): Cell {
  if (cell === null || cell === '') return null;
  if (typeof cell === 'string') return { value: escaped(cell), type: String };
  if (typeof cell === 'boolean') return { value: cell, type: Boolean };
  if (typeof cell === 'number') {
    const decimals = column?.decimals;
    const format = decimals === undefined ? {} : { format: decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}` };
    return { value: cell, type: Number, ...format };
  }
  // Days before 1900 have no number in a spreadsheet; they stand as texts.
  const moment = Date.parse(`${cell.date}T00:00:00Z`);
  if (!(moment >= FIRST_DAY)) return { value: cell.date, type: String };
  return { value: new Date(moment), type: Date, format: 'yyyy-mm-dd' };
}

/** 1 March 1900: before it the spreadsheets' calendar has a day that never was. */
const FIRST_DAY = Date.UTC(1900, 2, 1);

/** What XML can't hold, and what would read as such an escape, is escaped as ECMA-376 part 1, section 22.9.2.19 has it. */
function escaped(text: string): string {
  return text.replace(/_x([0-9a-fA-F]{4})_/g, '_x005F_x$1_').replace(
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that XML can't hold
    /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g,
    (letter) => `_x${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`,
  );
}
