// What a format is: how files of it are called, what one file holds, and the functions that write it and read rows from it.
// Terminal and page work from the list of formats (list.ts) alone. A new one is a file with its Format and a line in that list.

import type { Book } from '../queries/book.ts';
import type { SheetView } from '../queries/sheets.ts';
import type { CsvSplitter } from './csv.ts';
import type { FileKind } from './file-kind.ts';
import type { Spreadsheet, SpreadsheetRead } from './spreadsheet.ts';
import type { ReadingChoices, TableRead } from './table-file.ts';

/** What formats need from outside, handed in by the face, so that the engine needs no library for them. */
export interface FormatTools {
  readonly splitCsv: CsvSplitter;
  readonly writeSpreadsheet: (spreadsheet: Spreadsheet) => Promise<Uint8Array>;
  /**
   * Counts what is packed while it unpacks, and refuses what is too large. Of all names of sheets `pick` chooses the one to be
   * unpacked and read; where it gives none, all are.
   */
  readonly readSpreadsheet: (
    bytes: Uint8Array,
    pick: (names: readonly string[]) => string | undefined,
  ) => Promise<SpreadsheetRead>;
}

export interface Written {
  readonly content: string | Uint8Array;
  /** What the format can't hold as it is, a sentence each. */
  readonly notes: readonly string[];
}

export interface Format {
  /** A short word that never changes; the terminal's --format takes it. */
  readonly id: string;
  /** As people call it, within a sentence: 'CSV'. */
  readonly name: string;
  /** Without the point. */
  readonly ending: string;
  readonly mediaType: string;
  /** What one file holds: the workbook as it is, to be opened again; one sheet; or as many sheets as are wanted. */
  readonly holds: 'workbook' | 'sheet' | 'sheets';
  /** What its files are told by; absent where they are only written. */
  readonly kind?: FileKind['kind'];
  /** Writes the sheets wanted, by id; a workbook is always written whole. */
  write(book: Book, sheets: readonly string[], tools: FormatTools): Promise<Written>;
  /** The table in a file's bytes, for a sheet; absent where rows can't be read from such files. */
  readTable?(bytes: Uint8Array, view: SheetView, tools: FormatTools, choices: ReadingChoices): Promise<TableRead>;
}
