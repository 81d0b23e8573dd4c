// Ranges of entries as they read, and how far each figure of a workbook may be off.

import { placeContent } from '../document/cells.ts';
import type { Content } from '../document/content.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import { FILLED } from '../values/column.ts';
import { entryText } from '../values/show.ts';
import { type Book, columnOf } from './book.ts';
import { scalarAt, typedUnit } from './shown.ts';

/** A figure that is not known for sure, canonical. */
export interface Uncertain {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** How far what is typed in a cell may be off; undefined where it is not said, or a row has gone. */
export function rangeAt(book: Book, column: ProgramColumn, slot: number): Uncertain | undefined {
  const { document } = book;
  const sheet = column.def.table.id;
  const row = document.rowIdOf(sheet, slot);
  const range = row === undefined ? undefined : document.rangeOf(sheet, row, column.id);
  if (range === undefined) return undefined;
  const [low, high] = [canonical(book, column, range.low), canonical(book, column, range.high)];
  const likely = scalarAt(book, column, slot);
  if (low === undefined || high === undefined || typeof likely !== 'number') return undefined;
  // Where two people changed a cell at once, one of them as a range, the range may have become another figure's.
  return low <= likely && likely <= high ? { low, likely, high } : undefined;
}

function canonical({ document }: Book, column: ProgramColumn, content: Content): number | undefined {
  const placed = placeContent(content, column, document.program, document);
  return placed.ok && placed.cell.state === FILLED ? placed.cell.value : undefined;
}

/** As it is typed: '80..90%', with what is likely where that is not the middle; '' where there is no range. */
export function rangeText(book: Book, column: ProgramColumn, slot: number): string {
  const range = rangeAt(book, column, slot);
  const { type } = column;
  if (range === undefined || type === undefined) return '';
  const { currency } = book.document.program;
  const unit = typedUnit(book, column, slot);
  const say = (value: number): string => entryText(value, type, { unit, currency });
  const { low, likely, high } = range;
  const middle = (low + high) / 2;
  const isMiddle =
    type.kind === 'date' ? likely === Math.round(middle) : Math.abs(likely - middle) <= 1e-9 * Math.abs(high - low);
  return [low, ...(isMiddle ? [] : [likely]), high].map(say).join('..');
}

/** By ids. */
export function cellRange(book: Book, sheet: string, slot: number, columnId: string): Uncertain | undefined {
  const column = columnOf(book, sheet, columnId);
  return column === undefined ? undefined : rangeAt(book, column, slot);
}
