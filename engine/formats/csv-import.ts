// Rows of a CSV file as commands on a sheet: rows added, or updated where their key is known; all of them or none. A column
// left out of the file is left alone; an empty field empties its cell. Computed columns in the file are passed over, so
// that an exported table can be edited and imported again. Says in one sentence, with line and column, what can't be taken.

import { message } from '../commands/messages.ts';
import type { Workbook } from '../commands/workbook.ts';
import type { ChangeSet } from '../document/change-set.ts';
import type { Book } from '../queries/book.ts';
import { type SheetView, sheetView } from '../queries/sheets.ts';
import { isStationCsv } from './climate-csv.ts';
import { type CsvSplitter, type Delimiter, parseCsv } from './csv.ts';
import { delimiterOf, readHeaders } from './csv-headers.ts';
import { type CsvFailure, type CsvRows, RowReader } from './csv-rows.ts';
import { readStationRows, takesStation } from './station-import.ts';

export type { CsvFailure, CsvRows };

/** What a file's rows ask of a sheet, without doing it; do the commands as one transaction. */
export function readCsvRows(book: Book, sheet: string, text: string, split: CsvSplitter): CsvRows | CsvFailure {
  const view = sheetView(book, sheet);
  if (view === undefined) return { ok: false, why: `There is no sheet called ${sheet}.` };
  if (takesStation(book, sheet) && isStationCsv(text, split)) return readStationRows(book, sheet, text, split);
  const { delimiter, body, linesBefore } = withoutHint(text, view, split);
  const parsed = parseCsv(body, delimiter, split);
  if (!parsed.ok) return parsed;
  const [header, ...given] = parsed.records;
  if (header === undefined) return { ok: false, why: 'The file is empty: it needs a header and a row or more.' };
  const headers = readHeaders(header, view, book);
  if (!headers.ok) return { ...headers, line: header.line + linesBefore };
  const records = given.map((record) => ({ ...record, line: record.line + linesBefore }));
  return new RowReader(book, view, headers.columns, header.fields.findLastIndex((field) => field !== '') + 1).read(
    records,
    delimiter,
  );
}

/** A first line `sep=;` names the delimiter (a habit of spreadsheets). */
function withoutHint(
  text: string,
  view: SheetView,
  split: CsvSplitter,
): { readonly delimiter: Delimiter; readonly body: string; readonly linesBefore: number } {
  const hint = /^\uFEFF?sep=([,;\t])\r?\n/i.exec(text);
  if (hint === null) return { delimiter: delimiterOf(text, view, split), body: text, linesBefore: 0 };
  const delimiter = hint[1] === ';' || hint[1] === '\t' ? hint[1] : ',';
  return { delimiter, body: text.slice(hint[0].length), linesBefore: 1 };
}

export interface CsvImported extends Omit<CsvRows, 'commands' | 'lines'> {
  readonly change: ChangeSet;
}

/** Reads a file's rows into a sheet as one transaction and one step of undo; where one is refused, none is taken. */
export function importCsv(
  workbook: Workbook,
  sheet: string,
  text: string,
  split: CsvSplitter,
): CsvImported | CsvFailure {
  const read = readCsvRows(workbook, sheet, text, split);
  if (!read.ok) return read;
  const { commands, lines, ...counts } = read;
  const view = sheetView(workbook, sheet);
  const done = workbook.do(commands, message('import', { sheet: view?.name ?? sheet }), { source: 'import' });
  if (!done.refused) return { ...counts, change: done.change };
  const line = lines[done.index];
  const column = view?.columns.find(({ id }) => id === done.column)?.name ?? '';
  const where = [line === undefined ? '' : `line ${line}`, column].filter((part) => part !== '').join(', ');
  const why = where === '' ? done.why : `${where.charAt(0).toUpperCase()}${where.slice(1)}: ${done.why}`;
  return { ok: false, why, ...(line === undefined ? {} : { line }) };
}
