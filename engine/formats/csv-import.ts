// The bytes of a CSV file as a table for a sheet, with what is in doubt about its letters. csv-format.ts fetches it with the first
// such file.

import type { SheetView } from '../queries/sheets.ts';
import type { CsvSplitter } from './csv.ts';
import { readCsvTable } from './csv-table.ts';
import type { ReadingChoices, TableRead } from './table-file.ts';
import { decodeText, ENCODING_NAMES, garbledIn } from './text-encoding.ts';

/** The table in a file; an encoding and a delimiter that a person chose go before what the bytes tell. */
export function importCsv(
  bytes: Uint8Array,
  view: SheetView,
  split: CsvSplitter,
  { encoding, delimiter }: ReadingChoices,
): TableRead {
  const decoded = decodeText(bytes, encoding);
  if (!decoded.ok) return decoded;
  const read = readCsvTable(decoded.text, view, split, delimiter);
  if (!read.ok) return read;
  const text = { ...read.text, encoding: decoded.encoding, sure: decoded.sure };
  return { ...read, text, notes: [...read.notes, ...doubts(decoded, encoding !== undefined)] };
}

function doubts(decoded: Extract<ReturnType<typeof decodeText>, { readonly ok: true }>, asked: boolean): string[] {
  const { encoding, sure, text } = decoded;
  const garbled = garbledIn(text);
  return [
    ...(sure || asked
      ? []
      : [`The file doesn't say how its letters are encoded; it is read as ${ENCODING_NAMES[encoding]}.`]),
    ...(garbled === undefined
      ? []
      : [`“${garbled}” stands in the file: it was perhaps saved with the wrong encoding before.`]),
  ];
}
