// Working formulas out in both engines: as computed columns of one typed table here, and as cells of one sheet there, row by row beside
// the same figures.

import { isError, type Scalar } from '../../engine/index.ts';
import { opened } from '../book.ts';
import { computed, entered, plain, sheet } from '../workbook/small.ts';
import { type Expression, HEADED, ownText, peerText, SERIAL_OF_CIVIL_0 } from './expression.ts';
import type { Kind } from './kind.ts';
import { askPeer, type PeerCell } from './peer.ts';
import {
  type Cell,
  COLUMNS,
  type ColumnName,
  columnsOf,
  lastRow,
  MAIN,
  OTHER,
  type Tables,
  WANTED,
  WANTED_COLUMNS,
} from './tables.ts';

/** null is a blank. Dates are serials, time spans days. */
export type Value = number | string | boolean | null | { readonly error: string };

/** What a formula gives in each row asked for. */
export type Results = readonly Value[];

const TYPES = {
  number: plain,
  text: { type: 'text' },
  yesno: { type: 'yesno' },
  date: { type: 'date' },
  span: { type: 'number', unit: { us: 'days', si: 'days' } },
} as const;

function entryOf(kind: Kind, cell: Cell): Cell {
  if (kind !== 'date' || typeof cell !== 'number') return cell;
  return new Date((cell - SERIAL_OF_CIVIL_0) * 86_400_000).toISOString().slice(0, 10);
}

function enteredSheet(name: string, formulas: readonly Expression[]): ReturnType<typeof sheet> {
  return sheet(name, {
    columns: [
      ...columnsOf(name).map((column) => entered(column, TYPES[COLUMNS[column].kind])),
      ...formulas.map((formula, at) => computed(`f${at}`, TYPES[formula.kind], ownText(formula))),
    ],
  });
}

function rowsOf(tables: Tables, name: string): readonly Readonly<Record<string, Cell>>[] {
  const columns = columnsOf(name);
  const [first] = columns;
  return Array.from({ length: first === undefined ? 0 : lastRow(first) }, (_, row) =>
    Object.fromEntries(
      columns.map((column) => [column, entryOf(COLUMNS[column].kind, tables.columns[column][row] ?? '')]),
    ),
  );
}

function ownValue(value: Scalar, kind: Kind): Value {
  if (isError(value)) return { error: value.error };
  return typeof value === 'number' && kind === 'date' ? value + SERIAL_OF_CIVIL_0 : value;
}

/** Our results; throws where a formula is refused, for every formula made here should check. */
export function ownResults(
  tables: Tables,
  formulas: readonly Expression[],
  rows: readonly number[],
): readonly Results[] {
  const workbook = opened({
    title: 'Differential',
    units: 'si',
    currency: 'EUR',
    today: 20_700,
    sheets: [
      enteredSheet(MAIN, formulas),
      enteredSheet(OTHER, []),
      sheet(WANTED, { columns: WANTED_COLUMNS.map((column) => entered(column, TYPES.text)) }),
    ],
    rows: {
      [MAIN]: rowsOf(tables, MAIN),
      [OTHER]: rowsOf(tables, OTHER),
      [WANTED]: tables.wanted.map((row) =>
        Object.fromEntries(WANTED_COLUMNS.map((column, at) => [column, row[at] ?? ''])),
      ),
    },
  });
  for (const { name, diagnostic, formula } of workbook.table(MAIN)?.columns ?? []) {
    if (diagnostic !== undefined) throw new Error(`refused, ${name}: ${formula}\n${diagnostic.why}`);
  }
  return formulas.map(({ kind }, at) => rows.map((row) => ownValue(workbook.value(MAIN, row, `f${at}`), kind)));
}

/** Text stays text, though it may look like a number. */
function peerCell(cell: Cell | undefined): PeerCell {
  return typeof cell === 'string' ? `'${cell}` : (cell ?? null);
}

function peerValue(value: unknown): Value {
  if (typeof value === 'number') return Number.isFinite(value) ? value : { error: 'not finite' };
  if (typeof value === 'string' || typeof value === 'boolean') return value;
  if (value === null || value === undefined) return null;
  return { error: typeof value === 'object' && 'type' in value ? String(value.type) : 'unknown' };
}

function peerData(tables: Tables, name: string): PeerCell[][] {
  const columns: readonly ColumnName[] = columnsOf(name);
  const [first] = columns;
  return Array.from({ length: first === undefined ? 0 : lastRow(first) }, (_, row) =>
    columns.map((column) => peerCell(tables.columns[column][row])),
  );
}

/** The peer's results, worked out in a thread of its own beside ours. */
export async function peerResults(
  tables: Tables,
  formulas: readonly Expression[],
  rows: readonly number[],
): Promise<readonly Results[]> {
  const main = peerData(tables, MAIN);
  const width = columnsOf(MAIN).length;
  for (const row of rows) main[row]?.push(...formulas.map((formula) => peerText(formula, row)));
  const sheets = {
    [MAIN]: main,
    [OTHER]: peerData(tables, OTHER),
    [HEADED]: [[...columnsOf(MAIN)], ...peerData(tables, MAIN)],
    [WANTED]: [
      [...WANTED_COLUMNS],
      ...tables.wanted.map((row) => row.map((cell) => (cell === '' ? null : `'${cell}`))),
    ],
  };
  const values = await askPeer(sheets, MAIN);
  return formulas.map((_, at) => rows.map((row) => peerValue(values[row]?.[width + at])));
}
