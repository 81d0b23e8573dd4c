// Rows of a CSV file as edits of a table: rows added, or updated where their key is known; all of them or none. A column
// left out of the file is left alone; an empty field empties its cell. Computed columns in the file are passed over, so
// that an exported table can be edited and imported again. Says in one sentence, with line and column, what can't be taken.

import type { ChangeSet, TableView, WorkbookFace } from '../workbook/face.ts';
import { isStationCsv } from './climate-csv.ts';
import { type CsvSplitter, type Delimiter, parseCsv } from './csv.ts';
import { delimiterOf, readHeaders } from './csv-headers.ts';
import { type CsvFailure, type CsvRows, RowReader } from './csv-rows.ts';
import { readStationRows, takesStation } from './station-import.ts';

export type { CsvFailure, CsvRows };

/** What a file's rows ask of a table, without doing it; apply the edits as one transaction. */
export function readCsvRows(
  workbook: WorkbookFace,
  table: string,
  text: string,
  split: CsvSplitter,
): CsvRows | CsvFailure {
  const view = workbook.table(table);
  if (view === undefined) return { ok: false, why: `There is no sheet called ${table}.` };
  if (takesStation(workbook, table) && isStationCsv(text, split)) return readStationRows(workbook, table, text, split);
  const { delimiter, body, linesBefore } = withoutHint(text, view, split);
  const parsed = parseCsv(body, delimiter, split);
  if (!parsed.ok) return parsed;
  const [header, ...given] = parsed.records;
  if (header === undefined) return { ok: false, why: 'The file is empty: it needs a header and a row or more.' };
  const headers = readHeaders(header, view, workbook);
  if (!headers.ok) return { ...headers, line: header.line + linesBefore };
  const records = given.map((record) => ({ ...record, line: record.line + linesBefore }));
  return new RowReader(workbook, view, headers.columns, header.fields.findLastIndex((field) => field !== '') + 1).read(
    records,
    delimiter,
  );
}

/** A first line `sep=;` names the delimiter (a habit of spreadsheets). */
function withoutHint(
  text: string,
  view: TableView,
  split: CsvSplitter,
): { readonly delimiter: Delimiter; readonly body: string; readonly linesBefore: number } {
  const hint = /^\uFEFF?sep=([,;\t])\r?\n/i.exec(text);
  if (hint === null) return { delimiter: delimiterOf(text, view, split), body: text, linesBefore: 0 };
  const delimiter = hint[1] === ';' || hint[1] === '\t' ? hint[1] : ',';
  return { delimiter, body: text.slice(hint[0].length), linesBefore: 1 };
}

export interface CsvImported extends Omit<CsvRows, 'edits' | 'lines'> {
  readonly change: ChangeSet;
}

/** Reads a file's rows into a table as one transaction and one step of undo; where one is refused, none is taken. */
export function importCsv(
  workbook: WorkbookFace,
  table: string,
  text: string,
  split: CsvSplitter,
): CsvImported | CsvFailure {
  const read = readCsvRows(workbook, table, text, split);
  if (!read.ok) return read;
  const { edits, lines, ...counts } = read;
  const change = workbook.edit(edits, `Import into ${table}`);
  if (!change.refused) return { ...counts, change };
  const line = lines[change.index];
  const where = [line === undefined ? '' : `line ${line}`, change.column ?? '']
    .filter((part) => part !== '')
    .join(', ');
  const why = where === '' ? change.why : `${where.charAt(0).toUpperCase()}${where.slice(1)}: ${change.why}`;
  return { ok: false, why, ...(line === undefined ? {} : { line }) };
}
