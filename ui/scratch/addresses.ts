// Places on a scratch paper: 'B12' and the numbers behind it, counted from 0. Everything in this folder and the page's papers
// call it.

import { columnOfLetters } from '../../engine/index.ts';

export interface At {
  readonly row: number;
  readonly column: number;
}

/** A block of cells, both corners within. */
export interface Block {
  readonly from: At;
  readonly to: At;
}

/** 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26))
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  return letters;
}

/** 'A' is 0; small letters count too. */
export function columnAt(letters: string): number {
  return columnOfLetters(letters) - 1;
}

export function cellName({ row, column }: At): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** undefined for what names no cell. */
export function cellNamed(name: string): At | undefined {
  const found = /^([A-Za-z]{1,3})([1-9][0-9]{0,6})$/.exec(name);
  const [, letters, digits] = found ?? [];
  return letters === undefined ? undefined : { row: Number(digits) - 1, column: columnAt(letters) };
}

/** 'B2', or 'B2:C4' of more than one cell. */
export function blockName({ from, to }: Block): string {
  return from.row === to.row && from.column === to.column ? cellName(from) : `${cellName(from)}:${cellName(to)}`;
}

/** The block between two cells, whichever comes first. */
export function blockOf(a: At, b: At): Block {
  return {
    from: { row: Math.min(a.row, b.row), column: Math.min(a.column, b.column) },
    to: { row: Math.max(a.row, b.row), column: Math.max(a.column, b.column) },
  };
}

/** The cells of a block, row by row. */
export function cellsOf({ from, to }: Block): readonly At[] {
  const cells: At[] = [];
  for (let row = from.row; row <= to.row; row++)
    for (let column = from.column; column <= to.column; column++) cells.push({ row, column });
  return cells;
}
