// Rows of a table file into a sheet: rows added, or changed where their key is known. A column left out of the file is left
// alone; an empty field empties its cell. Computed columns in the file are passed over, so that an exported table can be
// edited and imported again. What can't be taken is said row by row, with line and column.

import { message } from '../commands/messages.ts';
import type { Workbook } from '../commands/workbook.ts';
import type { ChangeSet } from '../document/change-set.ts';
import type { Book } from '../queries/book.ts';
import { type SheetView, sheetView } from '../queries/sheets.ts';
import type { Writing } from '../values/writing.ts';
import type { CsvRecord, CsvSplitter } from './csv.ts';
import { isNumeric } from './csv-export.ts';
import { readCsvTable } from './csv-table.ts';
import { type ByHand, decimalMark, type FileColumn, readHeaders, type Unplaced } from './headers.ts';
import { type CheckedRows, type RefusedRow, RowCheck } from './row-check.ts';
import { namingColumns } from './row-naming.ts';
import { readStationRows, type StationRows, stationTable } from './station-import.ts';
import type { TableFailure, TableFile } from './table-file.ts';
import { takesStation } from './takes-station.ts';

/** How a person wants the columns and numbers of a file understood, where they say so. */
export interface MatchingChoices {
  readonly byHand?: ByHand;
  readonly decimal?: 'point' | 'comma';
}

/** A column of the file as a person sees it before the rows are taken. */
export interface MatchedColumn {
  /** As the file has it. */
  readonly header: string;
  /** The id of the sheet's column; undefined where it has no place or is left out. */
  readonly column: string | undefined;
  /** Worked out in the sheet, so that the file's values are passed over. */
  readonly passedOver: boolean;
  /** Why it has no place, in a sentence; undefined where it has, or where a person left it out. */
  readonly why: string | undefined;
}

export interface RowsRead extends CheckedRows {
  readonly ok: true;
  readonly columns: readonly MatchedColumn[];
  readonly decimal: 'point' | 'comma';
  /** What was passed over, in a sentence each. */
  readonly notes: readonly string[];
}

/** The rows can't be understood as the file stands; with choices of a person's they may be. */
export interface RowsFailure extends TableFailure {
  readonly columns: readonly MatchedColumn[];
  /** The number that can be read in two ways, where that is what stands in the way. */
  readonly unclear?: string;
}

/** What reading rows needs from outside. */
export interface ReadingRows extends MatchingChoices {
  newId(): string;
  progress?(done: number, of: number): void;
  /** How figures and days are told of the rows; as the workbook has them where absent. */
  readonly writing?: Writing | undefined;
}

/** What a table's rows ask of a sheet, without doing it. */
export function readRows(book: Book, sheet: string, file: TableFile, reading: ReadingRows): RowsRead | RowsFailure {
  const view = sheetView(book, sheet);
  if (view === undefined) return { ok: false, why: `There is no sheet called ${sheet}.`, columns: [] };
  const { header, records } = file;
  const headers = readHeaders(header, view, book, reading.byHand);
  const columns = matched(header, headers.columns, headers.unplaced);
  if (records.length === 0) {
    return { ok: false, why: 'The file has a header and no rows below it: add a row.', columns };
  }
  const missing = missingColumn(view, headers.columns);
  if (missing !== undefined) return { ok: false, why: `Line ${header.line}: ${missing}`, line: header.line, columns };
  const mark = markOf(file, headers.columns, reading);
  if ('unclear' in mark) return unclear(mark.unclear, records, columns);
  const width = header.fields.findLastIndex((field) => field !== '') + 1;
  const check = new RowCheck(book, view, headers.columns, width, {
    comma: mark.comma,
    guarded: file.text !== undefined,
    newId: () => reading.newId(),
    progress: (done) => reading.progress?.(done, records.length),
    writing: reading.writing,
  });
  const placed = leavingOut(records, header, headers.columns);
  const checked = check.check(placed);
  return {
    ok: true,
    ...checked,
    columns,
    decimal: mark.comma ? 'comma' : 'point',
    notes: [...file.notes, ...notesOf(headers.columns, records)],
  };
}

function matched(
  { fields }: CsvRecord,
  columns: readonly FileColumn[],
  unplaced: readonly Unplaced[],
): readonly MatchedColumn[] {
  return fields.flatMap((header, at): MatchedColumn[] => {
    if (header === '') return [];
    const found = columns.find((one) => one.at === at)?.column;
    const why = unplaced.find((one) => one.at === at)?.why;
    return [{ header, column: found?.id, passedOver: found?.role === 'computed', why }];
  });
}

/** Why the rows can't be told apart or hold nothing to type; undefined where all is well. */
function missingColumn(view: SheetView, columns: readonly FileColumn[]): string | undefined {
  if (!view.oneRow) {
    const id = namingColumns(view).find((one) => columns.every(({ column }) => column.id !== one));
    const name = view.columns.find((column) => column.id === id)?.name;
    if (name !== undefined) return `the file has no column ${name}, which names each row of ${view.name}: add it.`;
  }
  const typed = columns.some(({ column: { role } }) => role === 'entered' || role === 'default');
  return typed ? undefined : `no column of the file is one that can be typed in ${view.name}.`;
}

function markOf(
  { text, records }: TableFile,
  columns: readonly FileColumn[],
  { decimal }: MatchingChoices,
): { readonly comma: boolean } | { readonly unclear: string } {
  if (decimal !== undefined) return { comma: decimal === 'comma' };
  if (text === undefined) return { comma: false };
  const numeric = columns.filter(({ column }) => isNumeric(column) && column.role !== 'computed');
  return decimalMark(text.delimiter, numbersOf(records, numeric));
}

function* numbersOf(records: readonly CsvRecord[], columns: readonly FileColumn[]): Iterable<string> {
  for (const { fields } of records) for (const { at } of columns) yield fields[at] ?? '';
}

function unclear(number: string, records: readonly CsvRecord[], columns: readonly MatchedColumn[]): RowsFailure {
  const line = records.find(({ fields }) => fields.includes(number))?.line ?? 1;
  const why = `Line ${line}: “${number}” can be read in two ways here: write ${number.replace('.', '')}, or ${number.replace('.', ',')} with a decimal comma.`;
  return { ok: false, why, line, columns, unclear: number };
}

/** Fields without a header that stand among the others may only be empty, unless their column is left out. */
function leavingOut(
  records: readonly CsvRecord[],
  { fields: header }: CsvRecord,
  columns: readonly FileColumn[],
): readonly CsvRecord[] {
  const nameless = header.flatMap((field, at) => (field === '' ? [at] : []));
  if (nameless.length === 0 || columns.length === 0) return records;
  // The check of rows refuses what stands past the header, so a field without one is moved there.
  return records.map(({ line, fields }) => {
    const stray = nameless.find((at) => (fields[at] ?? '') !== '');
    return stray === undefined ? { line, fields } : { line, fields: [...fields, fields[stray] ?? ''] };
  });
}

function notesOf(columns: readonly FileColumn[], records: readonly CsvRecord[]): readonly string[] {
  const passed = columns
    .filter(({ column, at }) => column.role === 'computed' && records.some(({ fields }) => (fields[at] ?? '') !== ''))
    .map(({ column }) => column.name);
  const shares = columns.filter((column) => looksLikeShares(column, records)).map(({ column }) => column.name);
  return [
    ...(passed.length === 0 ? [] : [`Worked out here, so the file's values were passed over: ${few(passed)}.`]),
    ...(shares.length === 0
      ? []
      : [`No figure is above 1 under a header that says %, so 0.85 is taken as 0.85%: ${few(shares)}.`]),
  ];
}

function few(names: readonly string[]): string {
  const all = names.length <= 4;
  return (all ? names : names.slice(0, 3)).join(', ') + (all ? '' : ` and ${names.length - 3} more`);
}

/** A column of shares that another program showed as per cent, and wrote as parts of one. */
function looksLikeShares({ column, unitNamed, at }: FileColumn, records: readonly CsvRecord[]): boolean {
  if (column.unit !== '%' || !unitNamed || column.role === 'computed') return false;
  const numbers = records.map(({ fields }) => Number(fields[at] || 0));
  return numbers.every((number) => number >= 0 && number <= 1) && numbers.some((number) => number > 0 && number < 1);
}

/** 'Line 3, Length: ...' */
export function refusalInWords({ line, column, why }: RefusedRow): string {
  return `Line ${line}${column === undefined ? '' : `, ${column}`}: ${why}`;
}

export interface RowsImported {
  readonly ok: true;
  readonly added: number;
  readonly updated: number;
  readonly unchanged: number;
  readonly refused: number;
  readonly faults: readonly RefusedRow[];
  readonly notes: readonly string[];
  readonly change: ChangeSet;
}

export interface ImportChoices extends MatchingChoices {
  /** Takes the rows that can be taken; else one that can't keeps all of them out. */
  readonly goodOnes?: boolean;
}

/** Brings a table's rows into a sheet as one transaction and one step of undo. */
export function importTable(
  workbook: Workbook,
  sheet: string,
  file: TableFile,
  choices: ImportChoices = {},
): RowsImported | TableFailure {
  const read = readRowsOrStation(workbook, sheet, file, { ...choices, newId: () => workbook.newId() });
  if (!read.ok) return { ok: false, why: read.why, ...(read.line === undefined ? {} : { line: read.line }) };
  const unplaced = read.columns.find(({ why }) => why !== undefined);
  if (unplaced?.why !== undefined) return { ok: false, why: unplaced.why, line: file.header.line };
  const [fault] = read.faults;
  if (fault !== undefined && choices.goodOnes !== true) {
    return { ok: false, why: refusalInWords(fault), line: fault.line };
  }
  const { commands, columns: _, decimal: __, taken: ___, ...counts } = read;
  const view = sheetView(workbook, sheet);
  const done = workbook.do(commands, message('import', { sheet: view?.name ?? sheet }), { source: 'import' });
  return done.refused ? { ok: false, why: done.why } : { ...counts, change: done.change };
}

/** What a file asks of a sheet; a weather station's file of the sheet of days is known as one by itself. */
export function readRowsOrStation(
  book: Book,
  sheet: string,
  file: TableFile,
  reading: ReadingRows,
): RowsRead | RowsFailure {
  if (!takesStation(book, sheet) || stationTable(file) === undefined) return readRows(book, sheet, file, reading);
  const read: StationRows | TableFailure = readStationRows(book, sheet, file);
  if (!read.ok) return { ...read, columns: [] };
  return { ...read, columns: [], decimal: 'point', refused: 0, faults: [], taken: [] };
}

/** A CSV text into a sheet, as the bytes of a file would be. */
export function importCsv(
  workbook: Workbook,
  sheet: string,
  text: string,
  split: CsvSplitter,
  choices: ImportChoices = {},
): RowsImported | TableFailure {
  const view = sheetView(workbook, sheet);
  if (view === undefined) return { ok: false, why: `There is no sheet called ${sheet}.` };
  const read = readCsvTable(text, view, split);
  return read.ok ? importTable(workbook, sheet, read, choices) : read;
}
