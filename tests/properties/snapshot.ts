// Everything a workbook shows, as plain data: rows by name, numbers by their bits, errors by kind and sentence. Two
// workbooks with equal snapshots hold the same figures to the last bit, whatever their slots.

import { cellValue, isError, rowName } from '../../engine/index.ts';
import { originOf } from '../../engine/queries/cells.ts';
import type { ProgramColumn, ProgramSheet } from '../../engine/schema/compile.ts';
import type { Book } from '../book.ts';

const bits = new DataView(new ArrayBuffer(8));

function exact(value: number): string {
  bits.setFloat64(0, value);
  return bits.getBigUint64(0).toString(16);
}

function cell({ workbook }: Book, sheet: ProgramSheet, column: ProgramColumn, row: number): string {
  const value = cellValue(workbook, sheet.id, row, column.id);
  const origin = originOf(workbook, column, row);
  if (value === null) return `${origin}:`;
  if (isError(value)) return `${origin}:!${value.error} ${value.why} ${value.at?.sheet} ${value.at?.column}`;
  if (typeof value !== 'number') return `${origin}:${typeof value} ${value}`;
  const { type } = column;
  return `${origin}:${type?.kind === 'link' ? rowName(workbook, type.table, value) : exact(value)}`;
}

/** Sheet by sheet, row by row, column by column. */
export function snapshot(book: Book): Record<string, Record<string, string>[]> {
  const sheets: Record<string, Record<string, string>[]> = {};
  const { program } = book.workbook.document;
  for (const { id, name, columns } of book.tables()) {
    const sheet = program.sheet(id);
    if (sheet === undefined) continue;
    sheets[name] = Array.from(book.rows(name), (row) => {
      const cells: Record<string, string> = { '': rowName(book.workbook, id, row) };
      for (const view of columns) {
        const column = sheet.column(view.id);
        cells[view.name] =
          view.diagnostic !== undefined || column === undefined
            ? `diagnostic: ${view.diagnostic?.why}`
            : cell(book, sheet, column, row);
      }
      return cells;
    });
  }
  return sheets;
}
