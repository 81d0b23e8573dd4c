// Selected cells as other programs take them: tab-separated text and an HTML table, with or without a line of headers. Figures
// go out bare and at full length, with the decimal mark of the place; days as 2027-03-15; the rest as shown.

import { type Book, type CellView, type ColumnView, cellView, isoDate, settings } from '../../../../engine/index.ts';
import type { RowAt } from '../../store/selection.ts';
import { FROM_COLUMNS, FROM_SHEET } from './block.ts';
import { toTabSeparated } from './tab-separated.ts';

export interface Copied {
  readonly text: string;
  readonly html: string;
}

export interface CopyArea {
  readonly rows: readonly RowAt[];
  readonly columns: readonly ColumnView[];
}

export function copyOf(book: Book, sheet: string, { rows, columns }: CopyArea, withHeaders: boolean): Copied {
  const decimal = settings(book).writing?.decimal ?? '.';
  const lines = rows.map(({ slot }) =>
    columns.map((column) => copyText(cellView(book, sheet, slot, column.id), column, decimal)),
  );
  const headers = columns.map(headerText);
  const all = withHeaders ? [headers, ...lines] : lines;
  return { text: toTabSeparated(all), html: table(sheet, columns, withHeaders ? headers : undefined, lines) };
}

/** 'Length (ft)'. */
function headerText({ name, unit }: ColumnView): string {
  return unit === '' ? name : `${name} (${unit})`;
}

function copyText(cell: CellView, { type, unit }: ColumnView, decimal: string): string {
  if (type?.kind === 'date' && typeof cell.value === 'number') return isoDate(cell.value);
  const inColumnUnit = cell.unit === '' && cell.fullUnit === unit;
  if (cell.number === undefined || !inColumnUnit) return cell.text;
  return String(Number(cell.number.toPrecision(15))).replace('.', decimal);
}

function table(
  sheet: string,
  columns: readonly ColumnView[],
  headers: readonly string[] | undefined,
  lines: readonly (readonly string[])[],
): string {
  const from = `${FROM_SHEET}="${escaped(sheet)}" ${FROM_COLUMNS}="${escaped(columns.map(({ id }) => id).join(' '))}"`;
  const row = (cells: readonly string[], tag: 'td' | 'th'): string =>
    `<tr>${cells.map((cell) => `<${tag}>${escaped(cell)}</${tag}>`).join('')}</tr>`;
  const body = lines.map((cells) => row(cells, 'td')).join('');
  return `<table ${from}>${headers === undefined ? '' : row(headers, 'th')}${body}</table>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
