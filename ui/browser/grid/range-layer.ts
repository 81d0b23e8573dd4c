// Selecting many cells in the grid, which its community edition lacks: presses and drags stretch a range over the
// displayed cells, and the page hears of it. Listens on the host element before the grid does, because the grid hands its
// own events out late. Geometry is in ranges.ts; what is done with a range is in range-acts.ts, keys in the table of commands.

import type { GridApi } from 'ag-grid-community';
import {
  type Bounds,
  type Corner,
  clampCorner,
  contains,
  type Move,
  moved,
  type Range,
  type Rectangle,
  rangeOfCell,
  rectangleOf,
  wholeColumns,
  wholeRows,
} from './ranges.ts';
import { isSpare, type RowHandle } from './row-handle.ts';

export interface RangeListener {
  /** The range changed; `anchor` is the cell in hand. */
  ranged(range: Range): void;
}

export class RangeLayer {
  private range: Range | undefined;
  private columnIndex = new Map<string, number>();
  private dragging = false;
  private readonly host: HTMLElement;
  private readonly api: GridApi<RowHandle>;
  private readonly listener: RangeListener;
  private readonly stops: (() => void)[] = [];

  constructor(host: HTMLElement, api: GridApi<RowHandle>, listener: RangeListener) {
    this.host = host;
    this.api = api;
    this.listener = listener;
    this.columnsChanged();
    this.listen('mousedown', (event) => this.onPress(event));
    this.listen('mousemove', (event) => this.onDrag(event));
    this.listen('focusin', (event) => this.onFocus(event));
    const release = (): void => {
      this.dragging = false;
    };
    window.addEventListener('mouseup', release);
    this.stops.push(() => window.removeEventListener('mouseup', release));
  }

  destroy(): void {
    for (const stop of this.stops) stop();
  }

  /** The columns on screen changed their order or number. */
  columnsChanged(): void {
    this.columnIndex = new Map(this.api.getAllDisplayedColumns().map((column, index) => [column.getColId(), index]));
  }

  /** The cell in hand, by position. */
  anchor(): Corner | undefined {
    return this.range?.anchor;
  }

  rectangle(): Rectangle | undefined {
    return this.range === undefined ? undefined : rectangleOf(this.range);
  }

  bounds(): Bounds {
    return { rows: this.api.getDisplayedRowCount(), columns: this.columnIndex.size };
  }

  /** More than one cell is selected. */
  isWide(): boolean {
    const area = this.rectangle();
    return area !== undefined && (area.bottom > area.top || area.right > area.left);
  }

  includes(rowIndex: number, column: string): boolean {
    const index = this.columnIndex.get(column);
    const area = this.rectangle();
    // A single cell has its focus ring; a wash under it as well would only add noise.
    return (
      area !== undefined && index !== undefined && this.isWide() && contains(area, { row: rowIndex, column: index })
    );
  }

  columnAt(index: number): string | undefined {
    return this.api.getAllDisplayedColumns()[index]?.getColId();
  }

  rowAt(index: number): RowHandle | undefined {
    return this.api.getDisplayedRowAtIndex(index)?.data;
  }

  /** The rows of a rectangle, the empty one left out. */
  rowsIn({ top, bottom }: Rectangle): readonly RowHandle[] {
    const found: RowHandle[] = [];
    for (let index = top; index <= bottom; index += 1) {
      const row = this.rowAt(index);
      if (row !== undefined && !isSpare(row)) found.push(row);
    }
    return found;
  }

  columnsIn({ left, right }: Rectangle): readonly string[] {
    return this.api
      .getAllDisplayedColumns()
      .slice(left, right + 1)
      .map((column) => column.getColId());
  }

  cornerOf(rowIndex: number, column: string): Corner | undefined {
    const index = this.columnIndex.get(column);
    return index === undefined ? undefined : { row: rowIndex, column: index };
  }

  select(range: Range): void {
    this.range = range;
    this.paint();
    this.listener.ranged(range);
  }

  selectColumns(column: string, stretch: boolean): void {
    const index = this.columnIndex.get(column);
    if (index === undefined) return;
    const from = stretch && this.range !== undefined ? this.range.anchor.column : index;
    const { rows } = this.bounds();
    this.select({ anchor: { row: 0, column: from }, head: { row: rows - 1, column: index } });
  }

  selectRows(): void {
    if (this.range !== undefined) this.select(wholeRows(this.range, this.bounds()));
  }

  selectWholeColumns(): void {
    if (this.range !== undefined) this.select(wholeColumns(this.range, this.bounds()));
  }

  selectAll(): void {
    const { rows, columns } = this.bounds();
    this.select({ anchor: { row: 0, column: 0 }, head: { row: rows - 1, column: columns - 1 } });
  }

  /** Back to the cell in hand alone. */
  shrink(): void {
    if (this.range !== undefined) this.select(rangeOfCell(this.range.anchor));
  }

  /** Moves the cell in hand, or with `stretch` the other end of the selection, and keeps it in sight. */
  move(to: Move, { stretch = false, far = false }: { readonly stretch?: boolean; readonly far?: boolean }): void {
    if (this.range === undefined) return;
    const { anchor, head } = this.range;
    if (!stretch) {
      this.focus(moved(anchor, to, far, this.bounds()));
      return;
    }
    const end = moved(head, to, far, this.bounds());
    this.select({ anchor, head: end });
    const column = this.columnAt(end.column);
    this.api.ensureIndexVisible(end.row);
    if (column !== undefined) this.api.ensureColumnVisible(column);
  }

  /** Moves the focus, and with it the selection, to a cell by position. */
  focus(corner: Corner): void {
    const to = clampCorner(corner, this.bounds());
    const column = this.columnAt(to.column);
    if (column === undefined) return;
    this.api.ensureIndexVisible(to.row);
    this.api.ensureColumnVisible(column);
    this.api.setFocusedCell(to.row, column);
    this.select(rangeOfCell(to));
  }

  /** Marks the cells that are in the page; those that scroll into view ask includes(). */
  paint(): void {
    for (const cell of this.host.querySelectorAll<HTMLElement>('.ag-cell')) {
      const corner = this.cornerOfElement(cell);
      const column = cell.getAttribute('col-id');
      const inside = corner !== undefined && column !== null && this.includes(corner.row, column);
      cell.classList.toggle('in-range', inside);
      cell.setAttribute('aria-selected', String(inside || cell === document.activeElement));
    }
    const inHand = String(this.range?.anchor.row ?? -1);
    for (const row of this.host.querySelectorAll('.ag-row')) {
      row.classList.toggle('row-in-hand', row.getAttribute('row-index') === inHand);
    }
  }

  private listen<Name extends keyof HTMLElementEventMap>(
    name: Name,
    handle: (event: HTMLElementEventMap[Name]) => void,
  ): void {
    this.host.addEventListener(name, handle, true);
    this.stops.push(() => this.host.removeEventListener(name, handle, true));
  }

  private cornerOfElement(target: EventTarget | null): Corner | undefined {
    if (!(target instanceof Element)) return undefined;
    const cell = target.closest('.ag-cell');
    const row = cell?.closest('.ag-row')?.getAttribute('row-index');
    const column = cell?.getAttribute('col-id');
    if (row === null || row === undefined || column === null || column === undefined) return undefined;
    return this.cornerOf(Number(row), column);
  }

  private onPress(event: MouseEvent): void {
    if (isInEditor(event.target)) return;
    const corner = this.cornerOfElement(event.target);
    if (corner === undefined) return;
    // The right button keeps a selection that it is pressed in: its menu is about all of it.
    const area = this.rectangle();
    if (event.button !== 0 && area !== undefined && contains(area, corner) && this.isWide()) {
      event.preventDefault();
      event.stopPropagation();
      return;
    }
    if (event.shiftKey && this.range !== undefined) {
      event.preventDefault();
      event.stopPropagation();
      this.select({ anchor: this.range.anchor, head: corner });
      return;
    }
    this.dragging = event.button === 0;
    this.select(rangeOfCell(corner));
  }

  private onDrag(event: MouseEvent): void {
    if (!this.dragging || this.range === undefined || (event.buttons & 1) === 0) return;
    const corner = this.cornerOfElement(document.elementFromPoint(event.clientX, event.clientY));
    const { head } = this.range;
    if (corner === undefined || (corner.row === head.row && corner.column === head.column)) return;
    window.getSelection()?.removeAllRanges();
    this.select({ anchor: this.range.anchor, head: corner });
  }

  /** The grid moved its focus (arrows, Tab, Enter after an edit): the selection is that cell. */
  private onFocus(event: FocusEvent): void {
    if (isInEditor(event.target)) return;
    const corner = this.cornerOfElement(event.target);
    if (corner === undefined) return;
    const anchor = this.range?.anchor;
    if (anchor?.row === corner.row && anchor.column === corner.column) return;
    this.select(rangeOfCell(corner));
  }
}

function isInEditor(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement || (target instanceof Element && target.closest('.entry-under') !== null);
}
