// Reads an XLSX file's sheets as plain cells. Fetched when the first one is read; in the page it runs in a worker.

import { zipSync } from 'fflate';
import readXlsxFile from 'read-excel-file/universal';
import type { ReadCell, SpreadsheetRead } from '../../engine/index.ts';
import { sheetPaths } from './formulas.ts';
import { type Parts, unpack } from './unpack.ts';

/** The sheet that `pick` chooses of the names, the others left packed; all of them where it chooses none. */
export async function readSpreadsheet(
  bytes: Uint8Array,
  pick: (names: readonly string[]) => string | undefined,
): Promise<SpreadsheetRead> {
  const contents = unpack(bytes, (name) => CONTENTS.has(name.toLowerCase()));
  if (!contents.ok) return contents;
  const paths = sheetPaths(contents.parts);
  const names = [...paths.keys()];
  const picked = pick(names);
  const only = picked === undefined ? undefined : paths.get(picked)?.toLowerCase();
  if (picked === undefined || only === undefined) {
    const unpacked = unpack(bytes);
    return unpacked.ok ? readParts(unpacked.parts) : unpacked;
  }
  const others = new Set([...paths.values()].map((path) => path.toLowerCase()).filter((path) => path !== only));
  const unpacked = unpack(bytes, (name) => !others.has(name.toLowerCase()));
  if (!unpacked.ok) return unpacked;
  const read = await readParts(unpacked.parts, [picked]);
  return read.ok ? { ...read, names } : read;
}

/** The parts that say which sheets there are, and where. */
const CONTENTS: ReadonlySet<string> = new Set(['xl/workbook.xml', 'xl/_rels/workbook.xml.rels']);

/** The same of a file that is unpacked already; the sheets of these names, or all. */
export async function readParts(parts: Parts, names?: string[]): Promise<SpreadsheetRead> {
  try {
    // The library gets the parts that were counted and no others, and unpacked: it has nothing to inflate.
    const plain = zipSync(parts, { level: 0 });
    const options = names === undefined ? { trim: false } : { trim: false, sheets: names };
    const sheets = await readXlsxFile(plain.slice().buffer, options);
    return {
      ok: true,
      names: sheets.map(({ sheet }) => sheet),
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
