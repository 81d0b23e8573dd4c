// Which columns of a file say which row of a sheet a record is about. Called by rows-import.ts and row-check.ts.

import type { SheetView } from '../queries/sheets.ts';

/** The columns that say which row a record is about. */
export function namingColumns({ key, source }: SheetView): readonly string[] {
  if (key !== undefined) return [key];
  switch (source.from) {
    case 'each':
    case 'span':
      return [source.as.id];
    case 'pairs':
      return source.as.map(({ id }) => id);
    case 'events':
      return [source.as.id, source.event.id];
    default:
      return [];
  }
}

/** The columns that say what an event is about: many events of one name may fall on one day. */
export function aboutColumns({ source }: SheetView): readonly string[] {
  return source.from === 'events' ? source.dates.map(({ about }) => about.id) : [];
}

/** A name that tells a row from all others of its sheet, case aside, as far as the file says what it is about. */
export function nameInFull(name: string, abouts: readonly string[]): string {
  return [name, ...abouts].join('\n').toLowerCase();
}
