// `tables` and `table`: what a workbook holds, and one table as text, CSV or JSON.

import { type ColumnView, exportCsv, type TableView, tableData, type Workbook } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { aligned } from './columns.ts';
import { findTable } from './places.ts';
import { openWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Every table with its columns, their types and units. */
export function listTables({ words: [file = ''] }: Given, world: World): number {
  const workbook = openWorkbook(file);
  const texts = workbook.tables().map((table) => {
    const columns = table.columns.map((column) => ['', column.name, typeInWords(column), column.unit, column.role]);
    return `${table.name} (${rowsInWords(workbook, table)})\n${aligned(columns, [])}`;
  });
  world.out(texts.join('\n'));
  return 0;
}

function rowsInWords(workbook: Workbook, { name, oneRow, key }: TableView): string {
  if (oneRow) return 'one row';
  const count = workbook.rows(name).length;
  const rows = count === 1 ? '1 row' : `${count} rows`;
  return key === undefined ? rows : `${rows}, named by ${key}`;
}

function typeInWords({ type }: ColumnView): string {
  if (type === undefined) return 'not known yet: its formula does not check';
  if (type.kind === 'link') return `link to ${type.table}`;
  if (type.kind === 'choice') return `choice of ${type.options.join(', ')}`;
  return type.kind === 'yesno' ? 'yes/no' : type.kind;
}

/** One table's rows. */
export function printTable({ words: [file = '', name = ''], flags }: Given, world: World): number {
  if (flags.has('csv') && flags.has('json')) refuse('Choose one of --csv and --json.');
  const workbook = openWorkbook(file);
  const table = findTable(workbook, file, name);
  if (flags.has('csv')) world.out(exportCsv(workbook, table.name));
  else if (flags.has('json')) world.out(asJson(workbook, table));
  else world.out(asText(workbook, table));
  return 0;
}

/** A line for each column and row, so that two tables can be compared line by line. */
function asJson(workbook: Workbook, { name }: TableView): string {
  const { columns, rows } = tableData(workbook, name) ?? { columns: [], rows: [] };
  const list = (items: readonly unknown[]): string => `[\n${items.map((item) => JSON.stringify(item)).join(',\n')}\n]`;
  return `{"columns":${list(columns)},\n"rows":${list(rows)}}\n`;
}

function asText(workbook: Workbook, { name, columns }: TableView): string {
  const header = columns.map((column) => (column.unit === '' ? column.name : `${column.name} (${column.unit})`));
  const rows = [...workbook.rows(name)].map((row) =>
    columns.map((column) => onOneLine(workbook.cell(name, row, column.name).text)),
  );
  const right = columns.flatMap(({ type }, at) =>
    type?.kind === 'number' || type?.kind === 'temperature' ? [at] : [],
  );
  return rows.length === 0 ? `${aligned([header], right)}No rows yet.\n` : aligned([header, ...rows], right);
}
