// What a view does with the rows of a sheet, as the head of its pages says it. Pure.

import type { Arrangement, Book, SheetView, View } from '../../../engine/index.ts';
import { filterWords } from '../store/condition-words.ts';
import { orderWords } from '../store/looks.ts';
import { columnOf } from '../store/sheets.ts';

/** '12 of 115 rows: Bed is Barn 1. Sorted by Harvest (Latest first). Grouped by Crop.'; '' for all rows as they were entered. */
export function lookSays(
  book: Book,
  sheet: SheetView,
  { filters = [], sort = [], groupBy }: View,
  { rows, left }: Arrangement,
): string {
  const kept = filters.map((filter) =>
    filterWords(book, filter, filter.by === 'cell' ? columnOf(sheet, filter.column) : undefined),
  );
  const order = sort.map(({ column, descending = false }) => {
    const sorted = columnOf(sheet, column);
    return `${sorted?.name ?? 'a column that went'} (${orderWords(sorted, descending)})`;
  });
  const grouped = columnOf(sheet, groupBy);
  return [
    kept.length === 0 ? '' : `${rows.length} of ${rows.length + left} rows: ${kept.join('; ')}.`,
    order.length === 0 ? '' : `Sorted by ${order.join(', then ')}.`,
    grouped === undefined ? '' : `Grouped by ${grouped.name}.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
