// What goes on paper, as data: tables under headings that repeat on every page, and labels in a grid. The makers beside this file fill
// it from a workbook, paper-tables.tsx and labels.tsx set it. Pure.

import { type Book, ONLY_ROW, rowWithId, settings } from '../../../engine/index.ts';
import { askRow, hasColumns } from '../pictures/kit/ask.ts';

export interface PaperColumn {
  readonly name: string;
  /** Figures stand to the right. */
  readonly figure: boolean;
  /** So much of the line's width is kept for it, in percent, since a person writes in it; undefined: as much as it holds needs. */
  readonly room?: number;
}

/** A text; or several things to be ticked one by one, each with a box of its own. */
export type PaperCell = string | readonly string[];

export interface PaperTable {
  readonly heading: string;
  readonly columns: readonly PaperColumn[];
  readonly rows: readonly (readonly PaperCell[])[];
  /** A box to tick stands before each row. */
  readonly boxes: boolean;
}

export interface Paper {
  readonly title: string;
  /** The farm's name, or the workbook's title where it has none. */
  readonly farm: string;
  /** What stands above the first table. */
  readonly says: string;
  /** Those that follow one another with the very same columns are set as one, so that its head is there once a page. */
  readonly tables: readonly PaperTable[];
}

export function farmName(book: Book): string {
  const slot = hasColumns(book, { farm: ['farm-name'] }) ? rowWithId(book, 'farm', ONLY_ROW) : undefined;
  const name = slot === undefined ? '' : askRow(book, 'farm', slot).text('farm-name');
  return name === '' ? settings(book).title : name;
}

export function words(...names: readonly string[]): readonly PaperColumn[] {
  return names.map((name) => ({ name, figure: false }));
}

export function figures(...names: readonly string[]): readonly PaperColumn[] {
  return names.map((name) => ({ name, figure: true }));
}

/** Columns to be written in by hand, each with so much of the line's width, in percent. */
export function toWrite(room: Readonly<Record<string, number>>): readonly PaperColumn[] {
  return Object.entries(room).map(([name, share]) => ({ name, figure: false, room: share }));
}

/** '1 line', '12 lines'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
