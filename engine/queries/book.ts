// What queries ask of: anything that holds a document. Queries never change it.

import type { Document } from '../document/document.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';

export interface Book {
  readonly document: Document;
}

export function sheetOf({ document }: Book, id: string): ProgramSheet | undefined {
  return document.program.sheet(id);
}

export function columnOf(book: Book, sheet: string, column: string): ProgramColumn | undefined {
  return sheetOf(book, sheet)?.column(column);
}
