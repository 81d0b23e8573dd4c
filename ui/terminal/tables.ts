// `tables` and `table`: what a workbook holds, and one table as text, CSV or JSON.

import {
  type Book,
  type ColumnView,
  cellView,
  exportCsv,
  rows,
  type SheetView,
  sheetViews,
  tableData,
} from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { aligned } from './columns.ts';
import { findTable } from './places.ts';
import { during } from './progress.ts';
import { openWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Every table with its columns, their types and units. */
export async function listTables({ words: [file = ''] }: Given, world: World): Promise<number> {
  const book = await openWorkbook(file, world);
  const texts = sheetViews(book).map((table) => {
    const columns = table.columns.map((column) => ['', column.name, typeInWords(column), column.unit, column.role]);
    return `${table.name} (${rowsInWords(book, table)})\n${aligned(columns, [])}`;
  });
  world.out(texts.join('\n'));
  return 0;
}

function rowsInWords(book: Book, { id, oneRow, key, columns }: SheetView): string {
  if (oneRow) return 'one row';
  const count = rows(book, id).length;
  const counted = count === 1 ? '1 row' : `${count} rows`;
  const naming = columns.find((column) => column.id === key);
  return naming === undefined ? counted : `${counted}, named by ${naming.name}`;
}

function typeInWords({ type }: ColumnView): string {
  if (type === undefined) return 'not known yet: its formula does not check';
  if (type.kind === 'link') return `link to ${type.called ?? type.table}`;
  if (type.kind === 'choice') return `choice of ${type.options.join(', ')}`;
  return type.kind === 'yesno' ? 'yes/no' : type.kind;
}

/** One table's rows. */
export async function printTable({ words: [file = '', name = ''], flags }: Given, world: World): Promise<number> {
  if (flags.has('csv') && flags.has('json')) refuse('Choose one of --csv and --json.');
  const book = await openWorkbook(file, world);
  const table = findTable(book, file, name);
  const written = flags.has('csv') ? asCsv : flags.has('json') ? asJson : asText;
  world.out(await during(world, `Working out ${table.name} ...`, () => written(book, table)));
  return 0;
}

function asCsv(book: Book, { id }: SheetView): string {
  return exportCsv(book, id);
}

/** A line for each column and row, so that two tables can be compared line by line. */
function asJson(book: Book, { id }: SheetView): string {
  const data = tableData(book, id) ?? { columns: [], rows: [] };
  const list = (items: readonly unknown[]): string => `[\n${items.map((item) => JSON.stringify(item)).join(',\n')}\n]`;
  return `{"columns":${list(data.columns)},\n"rows":${list(data.rows)}}\n`;
}

function asText(book: Book, { id, columns }: SheetView): string {
  const header = columns.map((column) => (column.unit === '' ? column.name : `${column.name} (${column.unit})`));
  const cells = Array.from(rows(book, id), (row) =>
    columns.map((column) => {
      const { text, ends } = cellView(book, id, row, column.id);
      return onOneLine(ends === '' ? text : `${text} (${ends})`);
    }),
  );
  const right = columns.flatMap(({ type }, at) =>
    type?.kind === 'number' || type?.kind === 'temperature' ? [at] : [],
  );
  return cells.length === 0 ? `${aligned([header], right)}No rows yet.\n` : aligned([header, ...cells], right);
}
