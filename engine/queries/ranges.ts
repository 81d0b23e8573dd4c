// Ranges of entries as they read, and how far each figure of a workbook may be off.

import { placeContent } from '../document/cells.ts';
import type { Content } from '../document/content.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import { ONE } from '../units/table.ts';
import { FILLED } from '../values/column.ts';
import { entryText } from '../values/show.ts';
import { equalNumbers } from '../values/tolerance.ts';
import type { ValueType } from '../values/type.ts';
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

/**
 * As it is typed in the workbook's locale: '80..90%', with what is likely where that is not the middle; '' where there is no
 * range. Read again it gives the very same three figures and unit.
 */
export function rangeText(book: Book, column: ProgramColumn, slot: number): string {
  const range = rangeAt(book, column, slot);
  const { type } = column;
  if (range === undefined || type === undefined) return '';
  const { program, writing } = book.document;
  const unit = typedUnit(book, column, slot);
  const say = (value: number): string => entryText(value, type, { unit, currency: program.currency, writing });
  const { low, likely, high } = range;
  const figures = isMiddle(range, type) ? [low, high] : [low, likely, high];
  const texts = figures.map(say);
  // A share that no per cent gives exactly stands without the sign, and would take it from the last: then none has it.
  const signed = texts.filter((text) => text.endsWith('%')).length;
  const noneSigned = signed > 0 && signed < texts.length && texts.at(-1)?.endsWith('%') === true;
  if (!noneSigned || type.kind !== 'number') return texts.join('..');
  const bare = { ...type, unit: ONE };
  return figures.map((share) => entryText(share, bare, { currency: program.currency, writing })).join('..');
}

/** Whether the likely figure is what the ends alone would give, but for the dust of halving. */
function isMiddle({ low, likely, high }: Uncertain, type: ValueType): boolean {
  const middle = (low + high) / 2;
  return type.kind === 'date' ? likely === Math.round(middle) : equalNumbers(likely, middle);
}

/** By ids. */
export function cellRange(book: Book, sheet: string, slot: number, columnId: string): Uncertain | undefined {
  const column = columnOf(book, sheet, columnId);
  return column === undefined ? undefined : rangeAt(book, column, slot);
}
