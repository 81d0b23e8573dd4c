// What the grid tells the page of its selection: the place in hand, the cells that are selected, in words too; and where a person last
// was on each sheet, so that coming back to one finds the same row in hand. sheet-grid.ts calls it.

import { announce } from '../store/notices.ts';
import { type CellArea, selectedCells, selectPlace } from '../store/selection.ts';
import type { RangeLayer } from './range-layer.ts';
import { cellCount, type Range, rectangleOf } from './ranges.ts';
import { isRow } from './row-handle.ts';

const lastPlaces = new Map<string, { readonly row: string; readonly column: string }>();

/** Where a person last was on a sheet. */
export function lastPlaceOn(sheet: string): { readonly row: string; readonly column: string } | undefined {
  return lastPlaces.get(sheet);
}

/** Tells the page what is selected on a sheet now; the anchor of the last range is in hand. */
export function tellSelection(sheet: string, layer: RangeLayer, ranges: readonly Range[]): void {
  const last = ranges.at(-1);
  if (last === undefined) return;
  const { anchor } = last;
  const inHand = layer.rowAt(anchor.row);
  const column = layer.columnAt(anchor.column);
  const row = inHand === undefined || !isRow(inHand) ? undefined : inHand.id;
  if (row !== undefined && column !== undefined) lastPlaces.set(sheet, { row, column });
  selectPlace({ sheet, row, column });
  const areas = ranges.map((range): CellArea => {
    const area = rectangleOf(range);
    return { rows: layer.rowsIn(area), columns: layer.columnsIn(area) };
  });
  selectedCells.value = { sheet, areas };
  say(ranges, areas);
}

function counted(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${count} ${what}s`;
}

function say(ranges: readonly Range[], areas: readonly CellArea[]): void {
  const [range] = ranges;
  const [area] = areas;
  if (ranges.length > 1) announce(`${ranges.length} ranges selected.`);
  else if (range !== undefined && area !== undefined && cellCount(rectangleOf(range)) > 1) {
    announce(`${counted(area.rows.length, 'row')}, ${counted(area.columns.length, 'column')} selected.`);
  }
}
