// Sheets as a spreadsheet file has them: a name, a header, and cells that are numbers, dates, texts or yes and no; and back
// from such cells to the plain fields of a table. The faces turn it into XLSX bytes; knows no library.

import { type Book, columnOf as programColumnOf } from '../queries/book.ts';
import { cellValue, cellView, originOf } from '../queries/cells.ts';
import { rowName, rows } from '../queries/rows.ts';
import { type ColumnView, type SheetView, sheetView } from '../queries/sheets.ts';
import { shownNumber } from '../units/unit.ts';
import { civilDayOfIso, isoDate } from '../values/civil.ts';
import { isError } from '../values/error.ts';
import type { CsvRecord } from './csv.ts';
import { headerOf } from './fields.ts';

/** A date is a civil day, written at midnight UTC. */
export type SpreadsheetCell = number | string | boolean | { readonly date: string } | null;

export interface SpreadsheetColumn {
  readonly header: string;
  /** Figures to show behind the point; undefined where any. */
  readonly decimals: number | undefined;
  /** Letters that the widest cell has, within reason. */
  readonly width: number;
}

export interface SpreadsheetSheet {
  readonly name: string;
  readonly columns: readonly SpreadsheetColumn[];
  readonly rows: readonly (readonly SpreadsheetCell[])[];
}

export type Spreadsheet = readonly SpreadsheetSheet[];

/** A cell as a library reads it; a moment is milliseconds since 1970 in UTC. */
export type ReadCell = number | string | boolean | { readonly moment: number } | null;

export type SpreadsheetRead =
  | {
      readonly ok: true;
      /** Of all sheets in the file, also those that were not asked for. */
      readonly names: readonly string[];
      readonly sheets: readonly { readonly name: string; readonly rows: readonly (readonly ReadCell[])[] }[];
    }
  | { readonly ok: false; readonly why: string };

/** The longest text and the most rows and columns that a sheet of an XLSX file holds (ECMA-376 and its common readers). */
const LONGEST_TEXT = 32_767;
const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;
const LONGEST_NAME = 31;
const WIDEST = 60;

/** The sheets wanted, in this order, with what could not be held as it is. */
export function spreadsheetOf(
  book: Book,
  sheets: readonly string[],
): { readonly spreadsheet: Spreadsheet; readonly notes: readonly string[] } {
  const notes: string[] = [];
  const names = new Set<string>();
  const spreadsheet = sheets.flatMap((id): SpreadsheetSheet[] => {
    const view = sheetView(book, id);
    if (view === undefined) return [];
    if (view.columns.length > MOST_COLUMNS) {
      notes.push(`${view.name} has more columns than a spreadsheet holds; the last were left out.`);
    }
    const columns = view.columns.slice(0, MOST_COLUMNS);
    const all = rows(book, id);
    if (all.length >= MOST_ROWS) {
      notes.push(
        `${view.name} has more rows than a spreadsheet holds; the last ${all.length - MOST_ROWS + 1} were left out.`,
      );
    }
    let cut = 0;
    const held = Array.from(all.subarray(0, MOST_ROWS - 1), (row) =>
      columns.map((column) => {
        const cell = cellOf(book, view, row, column);
        if (typeof cell !== 'string' || cell.length <= LONGEST_TEXT) return cell;
        cut += 1;
        return cell.slice(0, LONGEST_TEXT);
      }),
    );
    if (cut > 0)
      notes.push(`${view.name}: ${cut === 1 ? 'a text was' : `${cut} texts were`} cut at ${LONGEST_TEXT} letters.`);
    const name = nameFor(view.name, names);
    names.add(name.toLowerCase());
    return [{ name, columns: columns.map((column, i) => columnOf(column, i, held)), rows: held }];
  });
  return { spreadsheet, notes };
}

function columnOf(column: ColumnView, i: number, cells: readonly (readonly SpreadsheetCell[])[]): SpreadsheetColumn {
  const header = headerOf(column);
  const isNumber = column.type?.kind === 'number' || column.type?.kind === 'temperature';
  const widest = cells.slice(0, 200).reduce((most, row) => {
    const cell = row[i];
    return Math.max(most, typeof cell === 'string' ? cell.length : typeof cell === 'object' && cell !== null ? 10 : 0);
  }, header.length);
  return { header, decimals: isNumber ? column.decimals : undefined, width: Math.min(WIDEST, widest + 2) };
}

function cellOf(book: Book, { id: sheet }: SheetView, row: number, column: ColumnView): SpreadsheetCell {
  const { type } = column;
  const value = cellValue(book, sheet, row, column.id);
  if (value === null) return null;
  if (type === undefined || isError(value)) return cellView(book, sheet, row, column.id).text;
  if (typeof value !== 'number') return value;
  switch (type.kind) {
    case 'date':
      return { date: isoDate(value) };
    case 'link':
      return rowName(book, type.table, value);
    case 'number':
    case 'temperature': {
      const number = shownNumber(type.unit, value);
      // The origin alone is asked: to show the cell too would cost most of what a large sheet's export does.
      const found = programColumnOf(book, sheet, column.id);
      const origin = found === undefined ? 'entered' : originOf(book, found, row);
      // Binary dust of what is worked out stays out of the file, as it does out of CSV.
      return origin === 'entered' || origin === 'override' ? number : Number(number.toPrecision(15));
    }
    default:
      return value;
  }
}

/** A name that spreadsheets take: none of : \ / ? * [ ], no apostrophe at its ends, at most 31 letters, none twice. */
function nameFor(name: string, taken: ReadonlySet<string>): string {
  const plain = name
    .replace(/[:\\/?*[\]]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[' ]+|[' ]+$/g, '');
  // 'History' is kept by spreadsheets for themselves.
  const base = plain === '' || plain.toLowerCase() === 'history' ? `Sheet ${plain}`.trim() : plain;
  for (let i = 1; ; i++) {
    const mark = i === 1 ? '' : ` ${i}`;
    const tried =
      Array.from(base)
        .slice(0, LONGEST_NAME - mark.length)
        .join('')
        .trim() + mark;
    if (!taken.has(tried.toLowerCase())) return tried;
  }
}

/** Rows of a sheet as records, empty ones left out: numbers with a point, dates as 2027-03-15, yes and no. */
export function recordsOf(rowsRead: readonly (readonly ReadCell[])[]): readonly CsvRecord[] {
  return rowsRead.flatMap((cells, i): CsvRecord[] => {
    const fields = cells.map(fieldOfCell);
    return fields.some((field) => field !== '') ? [{ line: i + 1, fields }] : [];
  });
}

const DAY = 86_400_000;

function fieldOfCell(cell: ReadCell): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return cell.trim();
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const day = Math.floor(cell.moment / DAY);
  const iso = isoDate(day);
  // Days before the first or past the last that a civil date has are shown as they came, to be refused in the cell.
  return civilDayOfIso(iso) === undefined ? String(cell.moment) : iso;
}
