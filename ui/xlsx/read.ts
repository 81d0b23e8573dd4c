// Reads an XLSX file's sheets as plain cells. Fetched when the first one is read; in the page it runs in a worker.

import { zipSync } from 'fflate';
import readXlsxFile from 'read-excel-file/universal';
import type { ReadCell, SpreadsheetRead } from '../../engine/index.ts';
import { type Parts, unpack } from './unpack.ts';

export async function readSpreadsheet(bytes: Uint8Array): Promise<SpreadsheetRead> {
  const unpacked = unpack(bytes);
  return unpacked.ok ? readParts(unpacked.parts) : unpacked;
}

/** The same of a file that is unpacked already. */
export async function readParts(parts: Parts): Promise<SpreadsheetRead> {
  try {
    // The library gets the parts that were counted and no others, and unpacked: it has nothing to inflate.
    const plain = zipSync(parts, { level: 0 });
    const sheets = await readXlsxFile(plain.slice().buffer, { trim: false });
    return {
      ok: true,
      sheets: sheets.map(({ sheet, data }) => ({ name: sheet, rows: data.map((row) => row.map(cellOf)) })),
    };
  } catch {
    return {
      ok: false,
      why: 'This XLSX file can’t be read: open it in a spreadsheet program and save it again, or save the sheet as CSV.',
    };
  }
}

function cellOf(cell: unknown): ReadCell {
  if (cell instanceof Date) return Number.isFinite(cell.getTime()) ? { moment: cell.getTime() } : null;
  if (typeof cell === 'number' || typeof cell === 'string' || typeof cell === 'boolean') return cell;
  return null;
}
