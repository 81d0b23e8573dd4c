// What goes on paper, as data: tables under headings that repeat on every page, and labels in a grid. The makers beside this file fill
// it from a workbook, paper-tables.tsx and labels.tsx set it. Pure.

import { type Book, ONLY_ROW, rowWithId, settings } from '../../../engine/index.ts';
import { askRow, hasColumns } from '../pictures/kit/ask.ts';

export interface PaperColumn {
  readonly name: string;
  /** Figures stand to the right. */
  readonly figure: boolean;
  /** As style sheets write it, of a column that is to be so wide; undefined: as wide as what it holds needs. */
  readonly width?: string;
}

/** A text; several things to be ticked one by one, each with a box of its own; or a text with the mark that stands for its colour. */
export type PaperCell = string | readonly string[] | MarkedText;

export interface MarkedText {
  readonly mark: string;
  readonly text: string;
}

export interface PaperTable {
  /** '' where the title says it all. */
  readonly heading: string;
  readonly columns: readonly PaperColumn[];
  readonly rows: readonly (readonly PaperCell[])[];
  /** A box to tick stands before each row. */
  readonly boxes: boolean;
  /** What stands for each column under the rows: their sum, their mean. */
  readonly totals?: readonly string[];
  /** What stands above tables that are set as one. */
  readonly above?: string;
}

export interface PaperMark {
  readonly mark: string;
  readonly says: string;
}

export interface Paper {
  readonly title: string;
  /** The farm's name, or the workbook's title where it has none. */
  readonly farm: string;
  /** What stands above the first table. */
  readonly says: string;
  /** Marks in the tables and what each says. */
  readonly marks?: readonly PaperMark[];
  /** Its tables need the long side of the paper. */
  readonly wide?: boolean;
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
  return Object.entries(room).map(([name, share]) => ({ name, figure: false, width: `${share}%` }));
}

/** '1 line', '12 lines'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Stays on one line: a figure is read with its unit, a day with its year, and short lines make few pages. */
export function unbroken(text: string): string {
  return text.replaceAll(' ', '\u00a0');
}

const SHORT = 14;

/** A name stays on one line where it is a short one. */
export function unbrokenIfShort(name: string): string {
  return name.length > SHORT ? name : unbroken(name);
}
