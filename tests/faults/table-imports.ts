// What must hold when bytes that claim to be a table go into a sheet, whatever they are. Trials of CSV and XLSX call it.

import {
  type FormatTools,
  type ImportChoices,
  importTable,
  type ReadingChoices,
  readTableFile,
  sheetView,
} from '../../engine/index.ts';
import type { Book } from '../book.ts';
import { isSentence } from './trial.ts';

export interface TableImport {
  readonly sheet: string;
  readonly bytes: Uint8Array;
  readonly tools: FormatTools;
  readonly reading: ReadingChoices;
  readonly choices: ImportChoices;
}

/** What is wrong with how a table was taken; undefined where all is well: refused in a sentence and nothing changed, or every row counted, to be taken back whole, and the same when it goes out and comes in again. */
export async function importFault(book: Book, given: TableImport): Promise<string | undefined> {
  const { sheet, bytes, tools, reading, choices } = given;
  const view = sheetView(book.workbook, sheet);
  if (view === undefined) return `no sheet ${sheet}`;
  const read = await readTableFile(bytes, view, tools, reading);
  if (!read.ok) return isSentence(read.why) ? undefined : `refused without a sentence: ${read.why}`;
  const before = book.file();
  const imported = importTable(book.workbook, sheet, read, choices);
  if (!imported.ok) {
    if (book.file() !== before) return 'refused, and yet something changed';
    return isSentence(imported.why) ? undefined : `refused without a sentence: ${imported.why}`;
  }
  const { added, updated, unchanged, refused, faults } = imported;
  if (added + updated + unchanged + refused !== read.records.length) {
    return `${read.records.length} rows, of which ${added} added, ${updated} updated, ${unchanged} unchanged, ${refused} refused`;
  }
  const dumb = faults.find(({ why }) => !isSentence(why));
  if (dumb !== undefined) return `refused without a sentence: ${dumb.why}`;
  const after = book.file();
  const reopened = book.reopened().file();
  if (reopened !== after) return 'saved, opened and saved again it is another file';
  const out = book.csv(view.name);
  const open = openFields(out, tools);
  if (open !== undefined) return `its CSV holds a field that a spreadsheet would calculate: ${open}`;
  const again = book.importCsv(view.name, out);
  // A sheet without rows has nothing to come in again.
  if (!again.ok && book.rows(view.name).length > 0) return `its own CSV is refused: ${again.why}`;
  if (again.ok && again.added + again.updated > 0)
    return `its own CSV adds ${again.added} rows, updates ${again.updated}`;
  if (book.file() !== after) return 'its own CSV changes the file';
  if (added + updated === 0) return undefined;
  book.undo();
  return book.file() === before ? undefined : 'taken back, it is not as it was';
}

/** A field that spreadsheets take for a formula: it begins with one of their signs and is no number. */
function openFields(text: string, { splitCsv }: FormatTools): string | undefined {
  const { records } = splitCsv(text.replace(/^\uFEFF/, '').replaceAll('\r\n', '\n'), ',');
  return records.flat().find((field) => /^[=+\-@\t\r＝＋－＠]/.test(field) && !/^-?[\d.]+(?:e[+-]?\d+)?$/i.test(field));
}
