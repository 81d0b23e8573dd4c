// What was cut last, wherever in the workbook: it stays where it is, marked, until it is pasted; then it goes in the same step.
// An edit of any of it ends the cut, so that nothing goes that was typed since.

import { signal } from '@preact/signals';
import { type Book, type ChangeSet, cellRange, cellView, rowWithId } from '../../../../engine/index.ts';
import { tell } from '../../store/notices.ts';
import { followFrames, screens } from '../../store/workbook.ts';

export interface CutCell {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  /** What stood there when it was cut. */
  readonly held: string;
}

export interface Cut {
  readonly book: Book;
  /** As it was put on the clipboard. */
  readonly text: string;
  /** Line by line, as they were put there. */
  readonly lines: readonly (readonly CutCell[])[];
  readonly keys: ReadonlySet<string>;
}

/** What was cut and not yet pasted. */
export const cut = signal<Cut | undefined>(undefined);

export function cutKey(sheet: string, row: string, column: string): string {
  return `${sheet} ${row} ${column}`;
}

export function isCut(sheet: string, row: string, column: string): boolean {
  return cut.peek()?.keys.has(cutKey(sheet, row, column)) === true;
}

/** A cell that is being cut, with what it holds. */
export function cutCell(book: Book, sheet: string, row: string, column: string): CutCell {
  return { sheet, row, column, held: heldIn(book, sheet, row, column) };
}

let stop = (): void => undefined;

/** Marks cells as cut. */
export function beginCut(book: Book, text: string, lines: Cut['lines']): void {
  forgetCut();
  const cells = lines.flat();
  cut.value = { book, text, lines, keys: new Set(cells.map((cell) => cutKey(cell.sheet, cell.row, cell.column))) };
  const unfollow = followFrames((changed) => {
    if (cells.every((cell) => !touches(changed, cell.sheet) || holdsStill(book, cell))) return;
    forgetCut();
    tell('What was cut has changed since: it stays where it is, and what is pasted is a copy.');
  });
  const began = screens.peek();
  const leave = screens.subscribe((now) => {
    if (now !== began) forgetCut();
  });
  stop = () => {
    unfollow();
    leave();
  };
}

/** What was cut stays where it is. */
export function forgetCut(): void {
  stop();
  stop = () => undefined;
  cut.value = undefined;
}

/** Whether a cell still holds what was cut. */
export function holdsStill(book: Book, { sheet, row, column, held }: CutCell): boolean {
  return heldIn(book, sheet, row, column) === held;
}

function touches({ cells, rowsOf, columnsOf, settings }: ChangeSet, sheet: string): boolean {
  return (
    settings || rowsOf.includes(sheet) || columnsOf.includes(sheet) || cells.some((changed) => changed.sheet === sheet)
  );
}

/** What a person typed in a cell, the same in whatever units the workbook is shown; of a formula only that one stands there. */
function heldIn(book: Book, sheet: string, row: string, column: string): string {
  const slot = rowWithId(book, sheet, row);
  if (slot === undefined) return 'gone';
  const { origin, value, number, figure } = cellView(book, sheet, slot, column);
  if (origin !== 'entered' && origin !== 'override') return origin;
  const { low, high } = cellRange(book, sheet, slot, column) ?? {};
  return JSON.stringify([origin, number === undefined ? figure : value, low, high]);
}
