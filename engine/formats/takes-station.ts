// Whether a sheet takes a station's daily file. Apart from station-import.ts, which reads one, because menus ask it at once.

import type { Book } from '../queries/book.ts';
import { sheetView } from '../queries/sheets.ts';

/** The ids by which a day's readings are known, whatever they are called. */
export const [LOW, HIGH] = ['low', 'high'] as const;

/** Whether a sheet takes a station's file: a row a day, a low and a high. */
export function takesStation(book: Book, sheet: string): boolean {
  const view = sheetView(book, sheet);
  if (view?.source.from !== 'span' || view.source.step !== 'day') return false;
  return [LOW, HIGH].every((id) => view.columns.some((column) => column.id === id && column.role !== 'computed'));
}
