// What a cell gives to go on from: a day, a figure with the unit it was typed in, a range with its ends, a text.

import { type Book, type ColumnView, cellRange, cellView, shownNumber } from '../../../../engine/index.ts';
import type { End, Source } from './series.ts';

/** `decimal`: the mark that figures are typed with here. */
export function sourceOf(book: Book, sheet: string, slot: number, column: ColumnView, decimal: string): Source {
  const { entry, value, number, range } = cellView(book, sheet, slot, column.id);
  if (entry === '') return { kind: 'blank' };
  if (range !== '') return rangeSource(book, sheet, slot, column, { range, decimal });
  if (column.type?.kind === 'date' && typeof value === 'number') return { kind: 'date', day: value };
  if (number !== undefined) return { kind: 'number', entry, own: number, typed: plainNumber(entry, decimal) };
  return { kind: 'text', text: entry };
}

interface TypedRange {
  readonly range: string;
  readonly decimal: string;
}

function rangeSource(
  book: Book,
  sheet: string,
  slot: number,
  { id, type }: ColumnView,
  { range, decimal }: TypedRange,
): Source {
  const parts = range.split('..');
  const known = cellRange(book, sheet, slot, id);
  if (known === undefined) return { kind: 'text', text: range };
  const { low, likely, high } = known;
  const values = parts.length === 3 ? [low, likely, high] : [low, high];
  const ends = parts.flatMap((entry, at): readonly End[] => {
    const value = values[at];
    if (value === undefined || type === undefined) return [];
    if (type.kind === 'date') return [{ kind: 'date', day: value }];
    if (type.kind !== 'number' && type.kind !== 'temperature') return [];
    return [{ kind: 'number', entry, own: shownNumber(type.unit, value), typed: plainNumber(entry, decimal) }];
  });
  return { kind: 'range', entry: range, ends };
}

/** '20 cm' is 20 and ' cm'; '2 ft 6 in' is no one number, and a bare figure is in the column's unit or a share of its own. */
function plainNumber(entry: string, decimal: string): { readonly number: number; readonly unit: string } | undefined {
  const match = /^([-\u2212]?\d+(?:[.,]\d+)?)(\D+)$/.exec(entry);
  if (match === null) return undefined;
  const [, digits = '', unit = ''] = match;
  const number = Number(digits.replace(decimal, '.').replace('\u2212', '-'));
  return Number.isFinite(number) ? { number, unit } : undefined;
}
