// A CSV text as a table: its delimiter guessed from the sheet it is meant for, its header found, its records with their lines.

import type { SheetView } from '../queries/sheets.ts';
import { type CsvRecord, type CsvSplitter, type Delimiter, parseCsv } from './csv.ts';
import { delimiterOf, namedIn } from './headers.ts';
import type { TableFailure, TableFile } from './table-file.ts';

/** Lines of a title that may stand above the header. */
const MOST_ABOVE = 12;

/** The table of a text, for a sheet; a delimiter that a person chose goes before what the text tells. */
export function readCsvTable(
  text: string,
  view: SheetView,
  split: CsvSplitter,
  chosen?: Delimiter,
): (TableFile & { readonly text: NonNullable<TableFile['text']> }) | TableFailure {
  const { delimiter, body, linesBefore } = withoutHint(text, view, split);
  const used = chosen ?? delimiter;
  const parsed = parseCsv(body, used, split);
  if (!parsed.ok) return parsed;
  const records =
    linesBefore === 0
      ? parsed.records
      : parsed.records.map(({ line, fields }) => ({ line: line + linesBefore, fields }));
  const found = withHeader(records, view);
  if (found === undefined) return EMPTY;
  return {
    ok: true,
    tables: [''],
    table: '',
    ...found,
    text: { encoding: 'utf-8', sure: true, delimiter: used },
  };
}

export const EMPTY: TableFailure = { ok: false, why: 'The file is empty: it needs a header and a row or more.' };

/** The header among the first records: the first, unless it names nothing of the sheet and one further down does. */
export function withHeader(
  records: readonly CsvRecord[],
  view: SheetView,
): Pick<TableFile, 'header' | 'records' | 'notes'> | undefined {
  const [first] = records;
  if (first === undefined) return undefined;
  const named = records.slice(0, MOST_ABOVE).map(({ fields }) => namedIn(fields, view));
  const most = Math.max(...named);
  const at = named[0] === 0 && most >= 2 ? named.indexOf(most) : 0;
  const header = records[at] ?? first;
  const notes = at === 0 ? [] : [`The header was found in line ${header.line}; what stands above it was passed over.`];
  return { header, records: records.slice(at + 1), notes };
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
