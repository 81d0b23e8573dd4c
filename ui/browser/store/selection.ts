// Which sheet is on screen, which cell is in hand and which cells are selected, by ids, so that a place lasts whatever
// rows come, go or move.

import { computed, signal } from '@preact/signals';
import { type Book, rowId, rows, rowWithId, type SheetView, sheetView } from '../../../engine/index.ts';
import { followFrames, workbook, workbookNow } from './workbook.ts';

/** A cell, a row, or a whole sheet where row and column are absent. */
export interface Place {
  readonly sheet: string;
  readonly row: string | undefined;
  readonly column: string | undefined;
}

/** A row on screen: its slot, good until rows of its sheet change, and its id, which lasts. */
export interface RowAt {
  readonly slot: number;
  readonly id: string;
}

/** A cell on screen. */
export interface CellAt {
  readonly sheet: string;
  readonly row: RowAt;
  readonly column: string;
}

/** Rows and columns that cross. */
export interface CellArea {
  readonly rows: readonly RowAt[];
  readonly columns: readonly string[];
}

/** Cells selected together, in one area or several; the empty row at a sheet's end and heads of groups left out. */
export interface SelectedCells {
  readonly sheet: string;
  readonly areas: readonly CellArea[];
}

/** The sheet on screen and the cell in hand. */
export const selection = signal<Place>({ sheet: '', row: undefined, column: undefined });

/** The sheet on screen alone, for parts that don't care which of its cells is in hand. */
export const sheetOnScreen = computed(() => selection.value.sheet);

/** The selection of the sheet on screen; undefined where none is. */
export const selectedCells = signal<SelectedCells | undefined>(undefined);

/** Raised by goTo: the sheet scrolls to the selection and takes the focus. */
export const arrival = signal(0);

/** Whether whoever arrives takes the focus along; the box in which a person looks for things keeps it. */
let focusGoes = true;

export function takesFocus(): boolean {
  return focusGoes;
}

/** The row with an id, as it is now. */
export function rowAt(book: Book, sheet: string, id: string | undefined): RowAt | undefined {
  const slot = id === undefined ? undefined : rowWithId(book, sheet, id);
  return slot === undefined || id === undefined ? undefined : { slot, id };
}

/** The rows of a sheet in their order. */
export function rowsOf(book: Book, sheet: string): readonly RowAt[] {
  return Array.from(rows(book, sheet), (slot) => ({ slot, id: rowId(book, sheet, slot) }));
}

/** The one row of a one-row sheet. */
export function onlyRow(book: Book, sheet: string): RowAt | undefined {
  const [slot] = rows(book, sheet);
  return slot === undefined ? undefined : { slot, id: rowId(book, sheet, slot) };
}

/** The row in hand, and its sheet; undefined where none is. */
export function rowInHand(): { readonly sheet: SheetView; readonly row: RowAt } | undefined {
  const book = workbook();
  const { sheet: id, row } = selection.value;
  const sheet = sheetView(book, id);
  const found = steady(sheet?.oneRow === true ? onlyRow(book, id) : rowAt(book, id, row));
  return sheet === undefined || found === undefined ? undefined : { sheet, row: found };
}

let lastInHand: RowAt | undefined;

/** The same object for as long as the same row is in hand, so that what shows it draws again only for its own reasons. */
function steady(found: RowAt | undefined): RowAt | undefined {
  if (found?.id !== lastInHand?.id || found?.slot !== lastInHand?.slot) lastInHand = found;
  return lastInHand;
}

/** Puts a cell in hand without moving the focus: the grid calls it as a person walks the cells. */
export function selectPlace(place: Place): void {
  const at = selection.peek();
  if (at.sheet === place.sheet && at.row === place.row && at.column === place.column) return;
  selection.value = place;
  noteIndex();
}

/** Each of the cells selected once, area by area and row by row. */
export function cellsIn({ sheet, areas }: SelectedCells): readonly CellAt[] {
  const all = areas.flatMap(({ rows: selected, columns }) =>
    selected.flatMap((row) => columns.map((column) => ({ sheet, row, column }))),
  );
  if (areas.length < 2) return all;
  return [...new Map(all.map((cell) => [`${cell.row.id} ${cell.column}`, cell])).values()];
}

/** The rows that a selection touches, each once, in the order of the areas. */
export function rowsIn({ areas }: SelectedCells): readonly RowAt[] {
  return [...new Map(areas.flatMap((area) => area.rows.map((row) => [row.id, row] as const))).values()];
}

/** Puts one cell in hand as the whole selection: fields call it. */
export function selectCell({ sheet, row, column }: CellAt): void {
  selectPlace({ sheet, row: row.id, column });
  selectedCells.value = { sheet, areas: [{ rows: [row], columns: [column] }] };
}

/** Goes to a sheet, a row or a cell: the sheet comes on screen, scrolls there and, unless told otherwise, takes the focus. */
export function goTo(sheet: string, row?: string, column?: string, focus = true): void {
  focusGoes = focus;
  selection.value = { sheet, row, column };
  noteIndex();
  arrival.value += 1;
}

/** Where the row in hand stood among the others, to put its neighbour in hand where it goes. */
let index = 0;

function noteIndex(): void {
  const book = workbookNow();
  const { sheet, row } = selection.peek();
  if (book === undefined || row === undefined) return;
  const slot = rowWithId(book, sheet, row);
  if (slot !== undefined) index = rows(book, sheet).indexOf(slot);
}

/** The row in hand may have gone with a change; then the one that stands in its place is in hand. */
followFrames(({ rowsOf: touched }) => {
  const book = workbookNow();
  const { sheet, row, column } = selection.peek();
  if (book === undefined || row === undefined || !touched.includes(sheet)) return;
  if (rowWithId(book, sheet, row) === undefined) {
    const left = rows(book, sheet);
    const neighbour = left[Math.min(index, left.length - 1)];
    selection.value = { sheet, row: neighbour === undefined ? undefined : rowId(book, sheet, neighbour), column };
  }
  noteIndex();
  const selected = selectedCells.peek();
  if (selected?.sheet === sheet) {
    const there = new Map(rowsOf(book, sheet).map((each) => [each.id, each]));
    const areas = selected.areas.map((area) => ({ ...area, rows: area.rows.flatMap(({ id }) => there.get(id) ?? []) }));
    selectedCells.value = { sheet, areas };
  }
});
