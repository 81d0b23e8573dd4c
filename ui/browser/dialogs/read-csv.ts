// Reading a CSV file for a sheet; fetched when the first one is imported.

import { type Book, type CsvFailure, type CsvRows, readCsvRows } from '../../../engine/index.ts';
import { splitCsv } from '../../csv-splitter.ts';

/** What a file's rows ask of a sheet. */
export function readCsv(book: Book, sheet: string, text: string): CsvRows | CsvFailure {
  return readCsvRows(book, sheet, text, splitCsv);
}
