// Everything a workbook shows, as plain data: rows by name, numbers by their bits, errors by kind and sentence. Two
// workbooks with equal snapshots hold the same figures to the last bit, whatever their slots.

import { isError } from '../../engine/index.ts';
import type { Book } from '../book.ts';

const bits = new DataView(new ArrayBuffer(8));

function exact(value: number): string {
  bits.setFloat64(0, value);
  return bits.getBigUint64(0).toString(16);
}

function cell(workbook: Book, table: string, row: number, column: string, link: string | undefined): string {
  const value = workbook.value(table, row, column);
  const { origin } = workbook.cell(table, row, column);
  if (value === null) return `${origin}:`;
  if (isError(value)) return `${origin}:!${value.error} ${value.why} ${value.at?.sheet} ${value.at?.column}`;
  if (typeof value === 'number')
    return `${origin}:${link === undefined ? exact(value) : workbook.rowName(link, value)}`;
  return `${origin}:${typeof value} ${value}`;
}

/** Sheet by sheet, row by row, column by column. */
export function snapshot(workbook: Book): Record<string, Record<string, string>[]> {
  const sheets: Record<string, Record<string, string>[]> = {};
  for (const table of workbook.tables()) {
    sheets[table.name] = Array.from(workbook.rows(table.name), (row) => {
      const cells: Record<string, string> = { '': workbook.rowName(table.name, row) };
      for (const { name, type, diagnostic } of table.columns) {
        const link = type?.kind === 'link' ? (type.called ?? type.table) : undefined;
        cells[name] =
          diagnostic === undefined ? cell(workbook, table.name, row, name, link) : `diagnostic: ${diagnostic.why}`;
      }
      return cells;
    });
  }
  return sheets;
}
