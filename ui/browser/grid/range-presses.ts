// Presses and drags on cells and row handles: they select, stretch and add ranges, drag the fill handle and move rows. Listens
// on the host for pointers going down, which comes before the browser moves the focus and before the grid hears of anything.

import { EdgeScroll } from './edge-scroll.ts';
import type { RangeLayer } from './range-layer.ts';
import { rowIndexOf } from './range-layer.ts';
import { type Corner, contains, rangeOfCell, rectangleOf } from './ranges.ts';

export interface PressListener {
  /** The fill handle is dragged over a cell; taken where it is let go, given up with undefined. */
  fillOver(cell: Corner | undefined): void;
  fillTaken(withCtrl: boolean): void;
  /** Twice on the fill handle: as far down as the data goes. */
  fillToEnd(): void;
  /** Rows are dragged before the row at a position. */
  rowsOver(before: number | undefined): void;
  rowsTaken(): void;
  canMoveRows(): boolean;
  /** A head of a group was pressed. */
  headPressed(row: number): boolean;
}

type Drag = 'cells' | 'rows' | 'fill' | 'move rows';

/** How near to a cell's lower right corner a press takes the fill handle. */
const CORNER = 9;
/** So far a pointer moves before a press is a drag of rows. */
const SLACK = 4;

export class RangePresses {
  private readonly layer: RangeLayer;
  private readonly listener: PressListener;
  private readonly edges: EdgeScroll;
  private readonly stops: (() => void)[] = [];
  private drag: Drag | undefined;
  /** What a press did already: the mouse events that follow it change nothing more. */
  private swallowed = false;
  /** Rows pressed by their handle, to be selected alone where they are not dragged. */
  private pressedRow: { readonly row: number; readonly y: number } | undefined;

  constructor(host: HTMLElement, layer: RangeLayer, listener: PressListener) {
    this.layer = layer;
    this.listener = listener;
    this.edges = new EdgeScroll(host, (x, y) => this.dragTo(x, y));
    this.listen(host, 'pointerdown', (event) => this.onPress(event));
    this.listen(host, 'mousedown', (event) => this.onMouseDown(event));
    this.listen(host, 'dblclick', (event) => this.onDoublePress(event));
    this.listen(host, 'focusin', (event) => this.onFocus(event));
    this.listen(host, 'pointermove', (event) => this.onMove(event));
    this.listen(window, 'pointermove', (event) => this.onDrag(event));
    this.listen(window, 'pointerup', (event) => this.onRelease(event));
    this.listen(window, 'pointercancel', () => this.giveUp());
    this.listen(window, 'keydown', (event) => {
      if (event.key === 'Escape' && this.drag !== undefined) this.giveUp();
    });
  }

  destroy(): void {
    this.edges.stop();
    for (const stop of this.stops) stop();
  }

  private listen<Name extends keyof HTMLElementEventMap>(
    on: HTMLElement | Window,
    name: Name,
    handle: (event: HTMLElementEventMap[Name]) => void,
  ): void {
    const listener = handle as (event: Event) => void;
    on.addEventListener(name, listener, true);
    this.stops.push(() => on.removeEventListener(name, listener, true));
  }

  private onPress(event: PointerEvent): void {
    this.swallowed = false;
    if (isInEditor(event.target)) return;
    if (this.isOnFillHandle(event)) {
      this.swallow(event);
      this.drag = 'fill';
      return;
    }
    const handle = handleRow(event.target);
    if (handle !== undefined) {
      this.pressHandle(handle, event);
      return;
    }
    const corner = this.layer.cornerOfElement(event.target);
    if (corner !== undefined) this.pressCell(corner, event);
  }

  private pressCell(corner: Corner, event: PointerEvent): void {
    const inside = this.layer.isWide() && this.layer.rectangles().some((area) => contains(area, corner));
    // The right button keeps a selection that it is pressed in: its menu is about all of it.
    if (event.button !== 0 && inside) {
      this.swallow(event);
      return;
    }
    if (event.button === 0 && this.listener.headPressed(corner.row)) {
      this.layer.select(rangeOfCell(corner));
      return;
    }
    if (event.shiftKey && this.layer.anchor() !== undefined) {
      this.swallow(event);
      this.layer.stretchTo(corner);
      this.layer.focusAnchor();
    } else if ((event.ctrlKey || event.metaKey) && event.button === 0) {
      this.swallow(event);
      this.layer.add(rangeOfCell(corner));
      this.layer.focusAnchor();
    } else {
      this.layer.select(rangeOfCell(corner));
    }
    // On a touch screen a drag scrolls.
    if (event.button === 0 && event.pointerType !== 'touch') this.drag = 'cells';
  }

  private pressHandle(row: number, event: PointerEvent): void {
    this.swallow(event);
    if (event.button !== 0) {
      if (!this.layer.touches(row)) this.layer.selectRowsAt(row, row);
      this.layer.focusAnchor();
      return;
    }
    if (event.shiftKey) {
      this.layer.selectRowsAt(this.layer.anchor()?.row ?? row, row);
    } else if (event.ctrlKey || event.metaKey) {
      this.layer.selectRowsAt(row, row, true);
    } else if (this.isSelectedRow(row) && this.listener.canMoveRows()) {
      this.pressedRow = { row, y: event.clientY };
      return;
    } else {
      this.layer.selectRowsAt(row, row);
    }
    this.layer.focusAnchor();
    this.drag = 'rows';
  }

  private isSelectedRow(row: number): boolean {
    const { columns } = this.layer.bounds();
    return this.layer
      .rectangles()
      .some(({ top, bottom, left, right }) => row >= top && row <= bottom && left === 0 && right === columns - 1);
  }

  /** The mouse event that follows a press which is done with: the browser and the grid leave the focus where it is. */
  private onMouseDown(event: MouseEvent): void {
    if (!this.swallowed) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  }

  private swallow(event: Event): void {
    this.swallowed = true;
    event.stopImmediatePropagation();
  }

  private onDoublePress(event: MouseEvent): void {
    if (!this.isOnFillHandle(event)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    this.listener.fillToEnd();
  }

  /** The pointer over the fill handle says so. */
  private onMove(event: PointerEvent): void {
    const cell = event.target instanceof Element ? event.target.closest<HTMLElement>('.range-corner') : null;
    cell?.classList.toggle('over-fill', this.isOnFillHandle(event));
  }

  private onDrag(event: PointerEvent): void {
    const { pressedRow } = this;
    if (pressedRow !== undefined && Math.abs(event.clientY - pressedRow.y) > SLACK) {
      this.drag = 'move rows';
      this.pressedRow = undefined;
    }
    if (this.drag === undefined) return;
    if ((event.buttons & 1) === 0) {
      this.giveUp();
      return;
    }
    window.getSelection()?.removeAllRanges();
    this.dragTo(event.clientX, event.clientY);
    this.edges.follow(event.clientX, event.clientY);
  }

  private dragTo(x: number, y: number): void {
    const at = this.edges.within(x, y);
    const element = document.elementFromPoint(at.x, at.y);
    const row = rowIndexOf(element);
    switch (this.drag) {
      case 'cells': {
        const corner = this.layer.cornerOfElement(element);
        if (corner !== undefined && !this.isHead(corner)) this.layer.stretchTo(corner);
        return;
      }
      case 'fill':
        this.listener.fillOver(this.layer.cornerOfElement(element) ?? this.layer.cornerBelow(at.y));
        return;
      case 'rows':
        if (row !== undefined) this.layer.selectRowsAt(this.layer.anchor()?.row ?? row, row);
        return;
      case 'move rows': {
        const box = element?.closest('.ag-row')?.getBoundingClientRect();
        const lower = box !== undefined && at.y > box.top + box.height / 2;
        if (row !== undefined) this.listener.rowsOver(lower ? row + 1 : row);
        return;
      }
      default:
    }
  }

  /** Whether the last range ends there already. */
  private isHead(corner: Corner): boolean {
    const area = this.layer.rectangle();
    const anchor = this.layer.anchor();
    if (area === undefined || anchor === undefined) return false;
    const same = rectangleOf({ anchor, head: corner });
    return same.top === area.top && same.bottom === area.bottom && same.left === area.left && same.right === area.right;
  }

  private onRelease(event: PointerEvent): void {
    const { drag, pressedRow } = this;
    this.drag = undefined;
    this.pressedRow = undefined;
    this.edges.stop();
    if (pressedRow !== undefined) {
      this.layer.selectRowsAt(pressedRow.row, pressedRow.row);
      this.layer.focusAnchor();
    } else if (drag === 'fill') this.listener.fillTaken(event.ctrlKey || event.metaKey);
    else if (drag === 'move rows') this.listener.rowsTaken();
  }

  private giveUp(): void {
    if (this.drag === 'fill') this.listener.fillOver(undefined);
    if (this.drag === 'move rows') this.listener.rowsOver(undefined);
    this.drag = undefined;
    this.pressedRow = undefined;
    this.edges.stop();
  }

  /** The grid moved its focus by itself: the selection is that cell, unless it is the cell in hand anyway. */
  private onFocus(event: FocusEvent): void {
    if (isInEditor(event.target)) return;
    const corner = this.layer.cornerOfElement(event.target);
    const anchor = this.layer.anchor();
    if (corner === undefined || (anchor?.row === corner.row && anchor.column === corner.column)) return;
    this.layer.select(rangeOfCell(corner));
  }

  private isOnFillHandle(event: MouseEvent): boolean {
    const cell = event.target instanceof Element ? event.target.closest('.range-corner') : null;
    if (cell === null || event.button !== 0) return false;
    const { right, bottom } = cell.getBoundingClientRect();
    return right - event.clientX < CORNER && bottom - event.clientY < CORNER;
  }
}

function handleRow(target: EventTarget | null): number | undefined {
  const handle = target instanceof Element ? target.closest('.ag-cell.row-handle') : null;
  return rowIndexOf(handle);
}

function isInEditor(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('.entry-box, .entry-under') !== null;
}
