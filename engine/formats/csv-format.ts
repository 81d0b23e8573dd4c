// One sheet as CSV, RFC 4180. A text with letters beyond ASCII (ft², °F) begins with a mark, by which spreadsheets know UTF-8.
// What writes and reads such files is fetched with the first.

import type { Format } from './format.ts';

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
  readTable: async (bytes, view, { splitCsv }, choices) => {
    const { importCsv } = await import('./csv-import.ts');
    return importCsv(bytes, view, splitCsv, choices);
  },
};

function isAscii(text: string): boolean {
  for (let i = 0; i < text.length; i++) if (text.charCodeAt(i) > 0x7f) return false;
  return true;
}
