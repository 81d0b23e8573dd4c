// Selecting many cells in the grid, which its community edition lacks: presses, drags and keys stretch a range over the
// displayed cells, and the page hears of it. Listens on the host element before the grid does, because the grid hands its
// own events out late. Geometry is in ranges.ts; what is done with a range is in range-commands.ts.

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
import type { RowHandle } from './row-handle.ts';

export interface RangeListener {
  /** The range changed; `anchor` is the cell in hand. */
  ranged(range: Range): void;
}

const MOVES: Readonly<Record<string, Move>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

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
    this.listen('keydown', (event) => this.onKey(event));
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

  slotAt(index: number): number | undefined {
    return this.api.getDisplayedRowAtIndex(index)?.data?.slot;
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

  private onKey(event: KeyboardEvent): void {
    if (isInEditor(event.target) || this.range === undefined || event.altKey) return;
    if (this.cornerOfElement(event.target) === undefined) return;
    const next = this.keyed(event, this.range);
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    if (next.focus !== undefined) this.focus(next.focus);
    else this.select(next.range);
    const seen = next.focus ?? next.range.head;
    const column = this.columnAt(seen.column);
    if (next.scroll && column !== undefined) {
      this.api.ensureIndexVisible(seen.row);
      this.api.ensureColumnVisible(column);
    }
  }

  /** What a key makes of the range; undefined for keys that are the grid's own. */
  private keyed(
    event: KeyboardEvent,
    range: Range,
  ): { readonly range: Range; readonly focus?: Corner; readonly scroll: boolean } | undefined {
    const bounds = this.bounds();
    const control = event.ctrlKey || event.metaKey;
    const { anchor, head } = range;
    const arrow = MOVES[event.key];
    if (arrow !== undefined && event.shiftKey) {
      return { range: { anchor, head: moved(head, arrow, control, bounds) }, scroll: true };
    }
    if (event.key === 'Home' || event.key === 'End') {
      const edge = event.key === 'Home' ? (control ? 'sheet start' : 'row start') : control ? 'sheet end' : 'row end';
      const to = moved(event.shiftKey ? head : anchor, edge, true, bounds);
      return event.shiftKey ? { range: { anchor, head: to }, scroll: true } : { range, focus: to, scroll: true };
    }
    if (event.key === ' ' && event.shiftKey) return { range: wholeRows(range, bounds), scroll: false };
    if (event.key === ' ' && control) return { range: wholeColumns(range, bounds), scroll: false };
    if (event.key === 'Escape' && this.isWide()) return { range: rangeOfCell(anchor), scroll: false };
    if (control && !event.shiftKey && event.key.toLowerCase() === 'a') {
      const all = { row: bounds.rows - 1, column: bounds.columns - 1 };
      return { range: { anchor: { row: 0, column: 0 }, head: all }, scroll: false };
    }
    return undefined;
  }
}

function isInEditor(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement || (target instanceof Element && target.closest('.entry-under') !== null);
}
