// What a sheet without rows waits for. The desk and the cards say it.

import { type Book, type SheetView, sheetView } from '../../../engine/index.ts';
import { columnOf } from '../store/sheets.ts';

export function emptyWords(book: Book, sheet: SheetView): string {
  const { source, key, name } = sheet;
  const nameOf = (id: string): string => sheetView(book, id)?.name ?? id;
  switch (source.from) {
    case 'entry': {
      const named = columnOf(sheet, key)?.name;
      return `No rows yet. Type ${named === undefined ? 'in the first line' : `a name under ${named}`}, paste from a spreadsheet, or import a CSV file.`;
    }
    case 'single':
      return '';
    case 'each':
      return `A row appears here for every row of ${nameOf(source.sheet)} that needs one; none does yet.`;
    case 'pairs':
      return `A row appears here for every pair of ${nameOf(source.sheets[0])} and ${nameOf(source.sheets[1])} that needs one; none does yet.`;
    case 'events':
      return 'A row appears here for every date filled in on the other sheets; there is none yet.';
    case 'span':
      return `${name} has no days yet: its first and last day are not known.`;
  }
}
