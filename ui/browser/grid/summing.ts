// Sums up the selected cells for the bottom line; comes with the grid, where cells are selected. A few cells are summed at once; many
// while the page has nothing else to do, so that a large paste or selection isn't held up by its sum; and what changes is summed
// again when it has come to rest.

import { effect } from '@preact/signals';
import { cellView, settings, sheetView, showDate, type Workbook, type Writing } from '../../../engine/index.ts';
import { inSlice } from '../store/idle.ts';
import { type CellAt, cellsIn, type SelectedCells, selectedCells } from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';
import { type Part, summed } from '../store/summed.ts';
import { rests, screens, workbookNow } from '../store/workbook.ts';
import { type Summary, type SummedCell, summarize, summaryNumber } from './summary.ts';

const NOTHING: readonly Part[] = [];

/** So many cells are summed at once, and beyond so many not at all. */
const [AT_ONCE, SUMMED] = [200, 60_000];
/** Milliseconds after which a slice is done though the page is busy. */
const LATEST = 400;

/** Another for every sum begun, so that one overtaken goes no further. */
let turn = 0;

effect(() => {
  const selected = selectedCells.value;
  rests.value;
  screens.value;
  turn += 1;
  const book = workbookNow();
  const count = selected?.areas.reduce((sum, { rows, columns }) => sum + rows.length * columns.length, 0) ?? 0;
  if (selected === undefined || book === undefined || count < 2) summed.value = NOTHING;
  else if (count > SUMMED) summed.value = [{ name: 'Cells', value: summaryNumber(count, 0, settings(book).writing) }];
  else sum(book, selected, count <= AT_ONCE);
});

function sum(book: Workbook, selected: SelectedCells, atOnce: boolean): void {
  const mine = turn;
  const sheet = sheetView(book, selected.sheet);
  const { writing } = settings(book);
  let cells: readonly CellAt[] | undefined;
  const read: SummedCell[] = [];
  let next = 0;
  const some = (goOn: () => boolean): void => {
    if (mine !== turn) return;
    cells ??= cellsIn(selected);
    do {
      const at = cells[next];
      const column = columnOf(sheet, at?.column);
      next += 1;
      if (at === undefined || column === undefined) continue;
      read.push({ column, cell: cellView(book, selected.sheet, at.row.slot, at.column) });
    } while (next < cells.length && (next % 50 > 0 || goOn()));
    if (next < cells.length) inSlice(some, LATEST);
    else summed.value = wordsOf(summarize(read, writing), writing);
  };
  if (atOnce) some(() => true);
  else inSlice(some, LATEST);
}

function wordsOf({ cells, filled, numbers, dates }: Summary, writing: Writing | undefined): readonly Part[] {
  const counted = { name: 'Filled', value: filled === cells ? String(cells) : `${filled} of ${cells}` };
  if (dates !== undefined) {
    const [first, last] = [showDate(dates.first, writing), showDate(dates.last, writing)];
    return [{ name: 'From', value: first }, { name: 'to', value: last }, counted];
  }
  if (numbers === undefined) return [counted];
  const { sum, mean, least, most, unit, decimals } = numbers;
  const figure = (n: number, digits: number): string =>
    `${summaryNumber(n, digits, writing)}${unit === '' ? '' : ` ${unit}`}`;
  return [
    { name: 'Sum', value: figure(sum, decimals) },
    { name: 'Mean', value: figure(mean, Math.min(decimals + 1, 4)) },
    { name: 'Least', value: figure(least, decimals) },
    { name: 'Most', value: figure(most, decimals) },
    counted,
  ];
}
