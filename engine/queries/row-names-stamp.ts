// When rows of a sheet may be named otherwise than before: for those who keep sentences with names of rows in them.

import type { ProgramSheet } from '../schema/compile.ts';
import type { Book } from './book.ts';
import { namingColumns } from './shown.ts';

/**
 * Another whenever rows of a sheet came, went or moved, or may be named otherwise, for as long as the book's program and way of
 * writing stay. Names that are numbers say nothing: they read as they were typed, in whichever unit.
 */
export function rowNamesStamp(book: Book, sheet: ProgramSheet): string | undefined {
  const { frame, program } = book.document;
  let stamp = frame.rowsStamp(sheet.table);
  for (const name of namingColumns(sheet)) {
    const column = sheet.column(name);
    if (column === undefined || column.type?.kind === 'number') return undefined;
    stamp += ` ${frame.column(column.def).stamp}`;
    const to = column.type?.kind === 'link' ? program.sheet(column.type.table) : undefined;
    if (to === undefined) continue;
    const named = rowNamesStamp(book, to);
    if (named === undefined) return undefined;
    stamp += ` ${named}`;
  }
  return stamp;
}
