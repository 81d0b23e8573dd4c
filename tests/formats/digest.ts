// A short digest of every column of a workbook: one number for all its values to nine figures, in row order. Two workbooks with
// equal digests hold the same figures; where one column differs, its name says which.

import { type CellData, sheetViews, tableData, type Workbook } from '../../engine/index.ts';

export type Digest = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** FNV-1a, 32 bits. */
function hash(text: string): string {
  let state = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) state = Math.imul(state ^ text.charCodeAt(i), 0x01000193);
  return (state >>> 0).toString(16).padStart(8, '0');
}

function said(value: CellData | undefined): string {
  if (typeof value === 'number') return String(Number(value.toPrecision(9)));
  return typeof value === 'object' && value !== null ? `error ${value.error}` : String(value);
}

/** By the names of sheets and columns. */
export function digestOf(workbook: Workbook): Digest {
  return Object.fromEntries(
    sheetViews(workbook).map(({ id, name }) => {
      const table = tableData(workbook, id);
      const columns = (table?.columns ?? []).map((column, at): [string, string] => [
        column.name,
        hash((table?.rows ?? []).map((row) => said(row[at])).join('\n')),
      ]);
      return [name, Object.fromEntries(columns)];
    }),
  );
}
