// What of a figure is nothing: wanted less sold leaves 1e-14 lb where all is sold, which the sheet shows as 0.0 lb, and so is it in words.

import { toCanonical } from '../units/unit.ts';
import { type Book, columnOf } from './book.ts';

/** So small a part of the last place that a column shows is no figure of it. */
const PART = 1e-3;

/** Canonical; a figure of the column below it is nothing. 0 where the column shows as many places as a figure takes, or is none. */
export function dustOf(book: Book, { sheet, column }: { readonly sheet: string; readonly column: string }): number {
  const found = columnOf(book, sheet, column);
  const decimals = found?.declaration.decimals;
  if (found?.type?.kind !== 'number' || decimals === undefined) return 0;
  return toCanonical(found.type.unit, PART * 10 ** -decimals);
}
