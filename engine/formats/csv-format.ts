// One sheet as CSV, RFC 4180. A text with letters beyond ASCII (ft², °F) begins with a mark, by which spreadsheets know UTF-8.
// What writes and reads such files is fetched with the first.

import type { Format } from './format.ts';
import { decodeText, ENCODING_NAMES, garbledIn } from './text-encoding.ts';

const MARK = '\uFEFF';

export const CSV: Format = {
  id: 'csv',
  name: 'CSV',
  ending: 'csv',
  mediaType: 'text/csv;charset=utf-8',
  holds: 'sheet',
  kind: 'table',
  write: async (book, [sheet = '']) => {
    const { exportCsv } = await import('./csv-export.ts');
    const text = exportCsv(book, sheet);
    return { content: isAscii(text) ? text : MARK + text, notes: [] };
  },
  readTable: async (bytes, view, { splitCsv }, { encoding, delimiter }) => {
    const decoded = decodeText(bytes, encoding);
    if (!decoded.ok) return decoded;
    const { readCsvTable } = await import('./csv-table.ts');
    const read = readCsvTable(decoded.text, view, splitCsv, delimiter);
    if (!read.ok) return read;
    const text = { ...read.text, encoding: decoded.encoding, sure: decoded.sure };
    return { ...read, text, notes: [...read.notes, ...doubts(decoded, encoding !== undefined)] };
  },
};

function isAscii(text: string): boolean {
  for (let i = 0; i < text.length; i++) if (text.charCodeAt(i) > 0x7f) return false;
  return true;
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
