// Which cells of the grid are selected, which the grid's community edition can't: ranges over the displayed cells, one or
// several, of which the last is the one that keys move. Knows positions and paints them; presses are in range-presses.ts, what
// is done with ranges in the acts, keys in the table of commands. Geometry is in ranges.ts.

import type { GridApi } from 'ag-grid-community';
import { bringIntoSight } from './into-sight.ts';
import {
  type Bounds,
  type Corner,
  clampCorner,
  contains,
  isOneCell,
  type Move,
  moved,
  movedFar,
  paged,
  type Range,
  type Rectangle,
  rangeOfCell,
  rectangleOf,
  wholeColumns,
  wholeRows,
  wholeSheet,
} from './ranges.ts';
import { HANDLES } from './row-face.ts';
import { isRow, isSpare, type RowHandle } from './row-handle.ts';

export interface RangeListener {
  /** The selection changed; the anchor of the last range is the cell in hand. */
  ranged(ranges: readonly Range[]): void;
  /** Whether a cell holds anything, for walking to the end of the data. */
  isFilled(cell: Corner): boolean;
}

/** How the cell in hand is moved: with the selection stretched, to the end of the data. */
export interface How {
  readonly stretch?: boolean;
  readonly far?: boolean;
}

export class RangeLayer {
  readonly host: HTMLElement;
  private readonly api: GridApi<RowHandle>;
  private readonly listener: RangeListener;
  private ranges: readonly Range[] = [];
  private columnIndex = new Map<string, number>();
  private columnIds: readonly string[] = [];
  /** The column in which Tab began: Enter goes back to it. */
  private tabbedFrom: number | undefined;

  constructor(host: HTMLElement, api: GridApi<RowHandle>, listener: RangeListener) {
    this.host = host;
    this.api = api;
    this.listener = listener;
    this.columnsChanged();
  }

  /** The columns on screen changed their order or number. */
  columnsChanged(): void {
    const ids = this.api.getAllDisplayedColumns().map((column) => column.getColId());
    this.columnIds = ids.filter((id) => id !== HANDLES);
    this.columnIndex = new Map(this.columnIds.map((id, index) => [id, index]));
  }

  // What is selected.

  /** The cell in hand, by position. */
  anchor(): Corner | undefined {
    return this.active()?.anchor;
  }

  /** The last range: what is copied, pasted to and filled. */
  rectangle(): Rectangle | undefined {
    const active = this.active();
    return active === undefined ? undefined : rectangleOf(active);
  }

  rectangles(): readonly Rectangle[] {
    return this.ranges.map(rectangleOf);
  }

  /** More than one cell is selected. */
  isWide(): boolean {
    return this.ranges.length > 1 || this.ranges.some((range) => !isOneCell(range));
  }

  /** Whether the handle of a row stands in a range. */
  touches(rowIndex: number): boolean {
    return this.ranges.some((range) => {
      const { top, bottom } = rectangleOf(range);
      return rowIndex >= top && rowIndex <= bottom;
    });
  }

  private active(): Range | undefined {
    return this.ranges.at(-1);
  }

  // Positions.

  bounds(): Bounds {
    const rows = this.api.getDisplayedRowCount();
    const last = this.rowAt(rows - 1);
    const spare = last !== undefined && isSpare(last);
    return { rows, columns: this.columnIds.length, filledRows: spare ? rows - 1 : rows };
  }

  columnAt(index: number): string | undefined {
    return this.columnIds[index];
  }

  rowAt(index: number): RowHandle | undefined {
    return this.api.getDisplayedRowAtIndex(index)?.data;
  }

  /** The rows of the sheet in a rectangle. */
  rowsIn({ top, bottom }: Rectangle): readonly RowHandle[] {
    const found: RowHandle[] = [];
    for (let index = top; index <= bottom; index += 1) {
      const row = this.rowAt(index);
      if (row !== undefined && isRow(row)) found.push(row);
    }
    return found;
  }

  columnsIn({ left, right }: Rectangle): readonly string[] {
    return this.columnIds.slice(left, right + 1);
  }

  /** The columns whose cells stand in the page: those in sight and next to it. */
  columnsDrawn(): readonly string[] {
    return this.api
      .getAllDisplayedVirtualColumns()
      .map((column) => column.getColId())
      .filter((id) => id !== HANDLES);
  }

  cornerOf(rowIndex: number, column: string): Corner | undefined {
    const index = this.columnIndex.get(column);
    return index === undefined ? undefined : { row: rowIndex, column: index };
  }

  /** Below the last row that is drawn: where a cell would lie if rows went on, in the selection's last column. */
  cornerBelow(y: number): Corner | undefined {
    const last = this.bounds().rows - 1;
    const box = this.host.querySelector(`.ag-row[row-index="${last}"]`)?.getBoundingClientRect();
    if (box === undefined || box.height === 0 || y < box.bottom) return undefined;
    return { row: last + 1 + Math.floor((y - box.bottom) / box.height), column: this.rectangle()?.right ?? 0 };
  }

  /** The position of a cell's element, or of what lies in it. */
  cornerOfElement(target: EventTarget | null): Corner | undefined {
    if (!(target instanceof Element)) return undefined;
    const cell = target.closest('.ag-cell');
    const row = rowIndexOf(cell);
    const column = cell?.getAttribute('col-id');
    if (row === undefined || column === null || column === undefined) return undefined;
    return this.cornerOf(row, column);
  }

  // Selecting.

  select(range: Range): void {
    this.setRanges([range]);
  }

  /** Another range beside those there are. */
  add(range: Range): void {
    this.setRanges([...this.ranges, range]);
  }

  /** Stretches the last range to a cell. */
  stretchTo(head: Corner): void {
    const active = this.active();
    if (active === undefined) this.select(rangeOfCell(head));
    else this.setRanges([...this.ranges.slice(0, -1), { anchor: active.anchor, head }]);
  }

  setRanges(ranges: readonly Range[]): void {
    this.ranges = ranges;
    this.paint();
    this.listener.ranged(ranges);
  }

  /** After rows came, went or moved: what was selected is kept within what is there. */
  keepWithin(): void {
    const bounds = this.bounds();
    this.ranges = this.ranges.map(({ anchor, head }) => ({
      anchor: clampCorner(anchor, bounds),
      head: clampCorner(head, bounds),
    }));
  }

  selectColumns(column: string, how: 'alone' | 'stretch' | 'beside'): void {
    const index = this.columnIndex.get(column);
    if (index === undefined) return;
    const from = how === 'stretch' ? (this.anchor()?.column ?? index) : index;
    const range = wholeColumns({ anchor: { row: 0, column: from }, head: { row: 0, column: index } }, this.bounds());
    if (how === 'beside') this.add(range);
    else this.select(range);
  }

  /** Whole rows by position. */
  selectRowsAt(from: number, to: number, beside = false): void {
    const bounds = this.bounds();
    const range = wholeRows({ anchor: { row: from, column: 0 }, head: { row: to, column: 0 } }, bounds);
    if (beside) this.add(range);
    else this.select(range);
  }

  selectRows(): void {
    this.setRanges(this.ranges.map((range) => wholeRows(range, this.bounds())));
  }

  selectWholeColumns(): void {
    this.setRanges(this.ranges.map((range) => wholeColumns(range, this.bounds())));
  }

  selectAll(): void {
    this.select(wholeSheet(this.bounds()));
  }

  /** Back to the cell in hand alone. */
  shrink(): void {
    const anchor = this.anchor();
    if (anchor !== undefined) this.select(rangeOfCell(anchor));
  }

  // Moving.

  /** Moves the cell in hand, or with `stretch` the other end of the selection, and keeps it in sight. */
  move(to: Move, { stretch = false, far = false }: How): void {
    const active = this.active();
    if (active === undefined) return;
    this.tabbedFrom = undefined;
    const from = stretch ? active.head : active.anchor;
    const isStep = to === 'up' || to === 'down' || to === 'left' || to === 'right';
    const end =
      far && isStep
        ? movedFar(from, to, this.bounds(), (cell) => this.listener.isFilled(cell))
        : moved(from, to, this.bounds());
    if (!stretch && to === 'up' && from.row === 0) this.toHeader(from.column);
    else this.goOrStretch(end, stretch);
    if (to === 'row start' || to === 'sheet start') this.scrollToStart();
  }

  /** What stays in sight at the left hides nothing of what begins behind it. */
  private scrollToStart(): void {
    const first = this.api.getAllDisplayedColumns().find((column) => !column.isPinned());
    if (first !== undefined) this.api.ensureColumnVisible(first);
  }

  page(by: 1 | -1, stretch: boolean): void {
    const active = this.active();
    if (active === undefined) return;
    const rows = Math.max(1, this.rowsInSight() - 1);
    this.goOrStretch(paged(stretch ? active.head : active.anchor, by * rows, this.bounds()), stretch);
  }

  private goOrStretch(to: Corner, stretch: boolean): void {
    if (!stretch) {
      this.focus(to);
      return;
    }
    this.stretchTo(to);
    this.show(to);
    bringIntoSight(this.host);
  }

  private rowsInSight(): number {
    return this.api.getLastDisplayedRowIndex() - this.api.getFirstDisplayedRowIndex();
  }

  private toHeader(column: number): void {
    const id = this.columnAt(column);
    if (id === undefined) return;
    this.api.ensureColumnVisible(id);
    this.api.setFocusedHeader(id);
  }

  /** Whether Tab has a next cell in the grid. */
  canTab(by: 1 | -1): boolean {
    const anchor = this.anchor();
    const { rows, columns } = this.bounds();
    if (anchor === undefined) return false;
    const at = anchor.row * columns + anchor.column + by;
    return at >= 0 && at < rows * columns;
  }

  /** The next cell for Tab, row after row; false at the end of the sheet, where Tab leads out of the grid. */
  tab(by: 1 | -1): boolean {
    const anchor = this.anchor();
    const { rows, columns } = this.bounds();
    if (anchor === undefined) return false;
    // Tab walks a selection of several cells as it lies.
    const from = this.tabbedFrom ?? anchor.column;
    const at = anchor.row * columns + anchor.column + by;
    if (at < 0 || at >= rows * columns) return false;
    const row = Math.floor(at / columns);
    this.focus({ row, column: at % columns });
    this.tabbedFrom = row === anchor.row ? from : undefined;
    return true;
  }

  /** Where an entry is taken with Enter: on to the next row, under the cell in which Tab began. */
  enter(by: 1 | -1): void {
    const anchor = this.anchor();
    if (anchor === undefined) return;
    const column = this.tabbedFrom ?? anchor.column;
    this.focus(clampCorner({ row: anchor.row + by, column }, this.bounds()));
  }

  /** Moves the focus, and with it the selection, to a cell by position. */
  focus(corner: Corner): void {
    const to = clampCorner(corner, this.bounds());
    this.tabbedFrom = undefined;
    this.show(to);
    bringIntoSight(this.host);
    // Selected first: the focus that follows then finds the cell in hand.
    this.select(rangeOfCell(to));
    this.focusAnchor();
  }

  /** Puts the focus on the cell in hand and leaves the selection as it is. */
  focusAnchor(): void {
    const anchor = this.anchor();
    const column = anchor === undefined ? undefined : this.columnAt(anchor.column);
    if (anchor !== undefined && column !== undefined) this.api.setFocusedCell(anchor.row, column);
  }

  /** Scrolls a cell into sight. */
  show(corner: Corner): void {
    const column = this.columnAt(corner.column);
    if (corner.row < this.api.getDisplayedRowCount()) this.api.ensureIndexVisible(corner.row);
    if (column !== undefined) this.api.ensureColumnVisible(column);
  }

  // Painting.

  /** Marks a cell that comes into view. */
  dress(cell: HTMLElement, row: number, columnId: string): void {
    const column = this.columnIndex.get(columnId);
    if (column === undefined) {
      if (this.touches(row)) cell.classList.add('row-touched');
      return;
    }
    const corner = { row, column };
    if (this.isWide() && this.ranges.some((range) => contains(rectangleOf(range), corner))) {
      cell.classList.add('in-range');
      cell.setAttribute('aria-selected', 'true');
    }
    const last = this.rectangle();
    if (last?.bottom === row && last.right === column) cell.classList.add('range-corner');
  }

  /** Marks the cells that are in the page; those that scroll into view are dressed one by one. */
  paint(): void {
    // A single cell has its focus ring; a wash under it as well would only add noise.
    const areas = this.isWide() ? this.rectangles() : [];
    const last = this.rectangle();
    const anchor = this.anchor()?.row;
    for (const row of this.host.querySelectorAll<HTMLElement>('.ag-row')) {
      const index = Number(row.getAttribute('row-index') ?? Number.NaN);
      mark(row, 'row-in-hand', index === anchor);
      const inRow = areas.filter(({ top, bottom }) => index >= top && index <= bottom);
      for (const cell of row.querySelectorAll<HTMLElement>('.ag-cell')) {
        const column = this.columnIndex.get(cell.getAttribute('col-id') ?? '');
        if (column === undefined) {
          mark(cell, 'row-touched', this.touches(index));
          continue;
        }
        const inside = inRow.some(({ left, right }) => column >= left && column <= right);
        mark(cell, 'in-range', inside);
        mark(cell, 'range-corner', last?.bottom === index && last.right === column);
        const selected = String(inside || cell === document.activeElement);
        if (cell.getAttribute('aria-selected') !== selected) cell.setAttribute('aria-selected', selected);
      }
    }
  }
}

/** Puts a class on an element or takes it off; one that is right already is left alone, which spares the page a look at it. */
function mark(element: Element, name: string, on: boolean): void {
  if (element.classList.contains(name) !== on) element.classList.toggle(name, on);
}

/** Which row a cell's element stands in. */
export function rowIndexOf(cell: Element | null | undefined): number | undefined {
  const index = cell?.closest('.ag-row')?.getAttribute('row-index');
  return index === null || index === undefined ? undefined : Number(index);
}
