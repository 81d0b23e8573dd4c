// Rows in the grid: put in above or below, moved by keys or by dragging, begun at the end. Rows of a sorted or grouped view
// stand in that order and are not moved by hand.

import { message, rowName, type SheetView, type View } from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import type { GridEntry } from './grid-entry.ts';
import { isRow, isSpare, type RowHandle } from './row-handle.ts';
import type { RowOrder } from './row-order.ts';
import type { SheetCells } from './sheet-cells.ts';

export interface RowParts {
  readonly host: HTMLElement;
  readonly cells: SheetCells;
  readonly order: RowOrder;
  readonly entry: GridEntry;
  readonly view: () => View;
  readonly redrawRows: () => void;
}

export class RowActs {
  readonly #parts: RowParts;
  /** Rows that are dragged would be put before this position. */
  #dropBefore: number | undefined;

  constructor(parts: RowParts) {
    this.#parts = parts;
  }

  /** Opens the empty row at the sheet's end, at the column that names a row. */
  startNew(): void {
    this.#openSpare(undefined);
  }

  /** Opens an empty row above the selected rows, or below them. */
  putIn(where: 'above' | 'below'): void {
    const { cells } = this.#parts;
    const area = cells.layer.rectangle();
    if (area === undefined) return;
    const why = this.#whyOrdered('put rows in');
    if (why !== undefined) {
      tell(why, 'refusal');
      return;
    }
    const next = where === 'above' ? cells.row(area.top) : this.#rowBelow(area.bottom);
    if (cells.sheet.key === undefined) this.#insert(next);
    else this.#openSpare(next?.id);
  }

  /** A sheet whose rows have no names takes an empty one at once. */
  #insert(before: RowHandle | undefined): void {
    const { cells, redrawRows } = this.#parts;
    const { id: sheet, name } = cells.sheet;
    const done = change(
      [{ command: 'insert row', sheet, entries: {}, before: before?.id }],
      message('add unnamed row', { sheet: name }),
    );
    const [row] = done.refused ? [] : done.inserted;
    if (row === undefined) return;
    this.#parts.order.keepAdded(row);
    redrawRows();
    this.#select([row]);
  }

  #openSpare(before: string | undefined): void {
    const { cells, order, entry, redrawRows } = this.#parts;
    order.putSpare(before);
    redrawRows();
    const { layer, sheet } = cells;
    const rowIndex = this.#spareIndex();
    const colKey = sheet.key ?? sheet.columns.find(({ required }) => required)?.id ?? layer.columnAt(0);
    if (rowIndex === undefined || colKey === undefined) return;
    layer.focus(layer.cornerOf(rowIndex, colKey) ?? { row: rowIndex, column: 0 });
    entry.start();
  }

  #spareIndex(): number | undefined {
    const { layer } = this.#parts.cells;
    const { rows } = layer.bounds();
    for (let index = rows - 1; index >= 0; index -= 1) {
      const row = layer.rowAt(index);
      if (row !== undefined && isSpare(row)) return index;
    }
    return undefined;
  }

  #rowBelow(index: number): RowHandle | undefined {
    const { layer } = this.#parts.cells;
    const { rows } = layer.bounds();
    for (let at = index + 1; at < rows; at += 1) {
      const row = layer.rowAt(at);
      if (row !== undefined && isRow(row)) return row;
    }
    return undefined;
  }

  /** Moves the selected rows one place up or down. */
  move(by: 1 | -1): void {
    const { cells } = this.#parts;
    const area = cells.layer.rectangle();
    const rows = this.#selectedRows();
    if (area === undefined || rows.length === 0) return;
    if (by === -1) {
      const above = this.#rowAbove(area.top);
      if (above !== undefined) this.#moveBefore(rows, above);
      return;
    }
    const below = this.#rowBelow(area.bottom);
    if (below === undefined) return;
    const index = cells.layer.rowsIn({ ...area, top: 0, bottom: cells.layer.bounds().rows - 1 });
    const after = index[index.findIndex(({ id }) => id === below.id) + 1];
    this.#moveBefore(rows, after);
  }

  #rowAbove(index: number): RowHandle | undefined {
    for (let at = index - 1; at >= 0; at -= 1) {
      const row = this.#parts.cells.row(at);
      if (row !== undefined) return row;
    }
    return undefined;
  }

  #selectedRows(): readonly RowHandle[] {
    const { layer } = this.#parts.cells;
    const rows = layer.rectangles().flatMap((area) => layer.rowsIn(area));
    return [...new Map(rows.map((row) => [row.id, row])).values()];
  }

  #moveBefore(rows: readonly RowHandle[], before: RowHandle | undefined): void {
    const why = this.#whyOrdered('move rows');
    if (why !== undefined) {
      tell(why, 'refusal');
      return;
    }
    const { cells, redrawRows } = this.#parts;
    const { sheet, book } = cells;
    const ids = rows.map(({ id }) => id);
    const [first] = rows;
    const said =
      ids.length === 1 && first !== undefined
        ? message('move row', { row: rowName(book, sheet.id, first.slot), sheet: sheet.name })
        : message('move rows', { count: ids.length, sheet: sheet.name });
    const done = change([{ command: 'move rows', sheet: sheet.id, rows: ids, before: before?.id }], said);
    if (done.refused) return;
    redrawRows();
    this.#select(ids);
  }

  /** Puts rows in hand as whole rows, wherever they stand now. */
  #select(ids: readonly string[]): void {
    const { layer } = this.#parts.cells;
    const { rows } = layer.bounds();
    const wanted = new Set(ids);
    const places = Array.from({ length: rows }, (_, index) => index).filter((index) => {
      const row = layer.rowAt(index);
      return row !== undefined && wanted.has(row.id);
    });
    const [from] = places;
    const to = places.at(-1);
    if (from === undefined || to === undefined) return;
    layer.selectRowsAt(from, to);
    layer.show({ row: from, column: 0 });
    layer.focusAnchor();
  }

  #whyOrdered(what: string): string | undefined {
    const { sort = [], groupBy } = this.#parts.view();
    const { sheet } = this.#parts.cells;
    if (!sheet.entered) return `Rows of ${sheet.name} follow from other sheets and stand in their order.`;
    if (sort.length === 0 && groupBy === undefined) return undefined;
    const name = sheetColumnName(sheet, groupBy ?? sort[0]?.column);
    return `The rows stand in the order of ${name}: take the order off to ${what} by hand.`;
  }

  canMove(): boolean {
    return this.#whyOrdered('move rows') === undefined;
  }

  // Dragging.

  dragOver(before: number | undefined): void {
    this.#dropBefore = before;
    const { host, cells } = this.#parts;
    const last = cells.layer.bounds().filledRows;
    const at = before === undefined ? undefined : Math.min(before, last);
    for (const row of host.querySelectorAll('.ag-row')) {
      const index = Number(row.getAttribute('row-index'));
      row.classList.toggle('drop-above', at !== undefined && index === at);
      row.classList.toggle('drop-below', at !== undefined && at === last && index === last - 1);
    }
  }

  drop(): void {
    const before = this.#dropBefore;
    this.dragOver(undefined);
    if (before === undefined) return;
    const rows = this.#selectedRows();
    const moved = new Set(rows.map(({ id }) => id));
    let at = before;
    let row = this.#parts.cells.row(at);
    // Before one of the rows that move is before whatever comes after them.
    while (row !== undefined && moved.has(row.id)) {
      at += 1;
      row = this.#parts.cells.row(at);
    }
    this.#moveBefore(rows, row);
  }
}

function sheetColumnName({ columns }: SheetView, id: string | undefined): string {
  return columns.find((column) => column.id === id)?.name ?? 'a column';
}
