// Repaints the cells of a grid that a change set names or in which something was found, and keeps what the figures and texts of a
// column need in room. What is in sight is seen to at once, the rest when changes have come to rest. sheet-grid.ts tells it what changed.

import type { GridApi, IRowNode } from 'ag-grid-community';
import { type Book, type ChangeSet, type Finding, isChanged, rows, type SheetView } from '../../../engine/index.ts';
import { columnOf } from '../store/sheets.ts';
import type { SheetMarks } from './marks.ts';
import type { ColumnRooms } from './rooms.ts';
import { isHead, type RowHandle } from './row-handle.ts';
import { widthOfTexts } from './widths.ts';

/** Rows of a change that are looked at before they are painted, though they may be out of sight. */
const FEW = 50;

export interface Painted {
  readonly book: Book;
  readonly sheet: () => SheetView;
  readonly api: GridApi<RowHandle>;
  readonly rooms: ColumnRooms;
  readonly marks: SheetMarks;
  /** Whether a person drew the width of a column. */
  readonly isDrawn: (column: string) => boolean;
}

type Slots = Int32Array | 'all';

export class CellPainter {
  readonly #of: Painted;
  /** By column, the changed rows that have not been looked at yet. */
  #later = new Map<string, Slots>();

  constructor(of: Painted) {
    this.#of = of;
  }

  /** Repaints cells of the sheet. `areFresh`: every row was drawn anew a moment ago. */
  repaint(cells: ChangeSet['cells'], areFresh: boolean): void {
    const { api, rooms } = this.#of;
    const rendered = api.getRenderedNodes();
    const seen: (readonly [string, Slots])[] = [];
    for (const { column, rows: slots } of cells) {
      const few = slots !== 'all' && slots.length <= FEW;
      const changed = rendered.filter(
        ({ data }) => data !== undefined && (isHead(data) || isChanged(slots, data.slot)),
      );
      const looked = few ? slots : slotsOf(changed);
      if (!few) this.#later.set(column, this.#later.has(column) ? 'all' : slots);
      const moved = (few || !areFresh) && rooms.widen(column, looked);
      seen.push([column, looked]);
      const rowNodes = moved ? rendered : changed;
      if (rowNodes.length > 0) api.refreshCells({ rowNodes, columns: [column], force: true });
    }
    this.#widen(seen);
  }

  /** Makes room for what changed out of sight. */
  atRest(): void {
    const waiting = this.#later;
    this.#later = new Map();
    for (const [column, slots] of waiting) {
      const moved = slots === 'all' ? this.#of.rooms.renew(column) : this.#of.rooms.widen(column, slots);
      if (moved) this.#of.api.refreshCells({ columns: [column], force: true });
    }
    this.#widen(waiting);
  }

  /** Longer texts that came widen their columns, all at once: each time the grid is laid out anew. */
  #widen(changed: Iterable<readonly [column: string, Slots]>): void {
    const wider: { key: string; newWidth: number }[] = [];
    for (const [key, slots] of changed) {
      const newWidth = this.#wider(key, slots);
      if (newWidth !== undefined) wider.push({ key, newWidth });
    }
    if (wider.length > 0) this.#of.api.setColumnWidths(wider);
  }

  /** How wide a column has to be for a longer text that came, where a person didn't draw its width; undefined where it is wide enough. */
  #wider(column: string, slots: Slots): number | undefined {
    const { api, book } = this.#of;
    const sheet = this.#of.sheet();
    const view = columnOf(sheet, column);
    const shown = api.getColumn(column);
    if (view === undefined || shown === null || this.#of.isDrawn(column)) return undefined;
    const needed = widthOfTexts(book, sheet.id, slots === 'all' ? rows(book, sheet.id) : slots, view);
    return needed > shown.getActualWidth() ? needed : undefined;
  }

  /** Marks the cells in which something was found and unmarks the others. */
  showFindings(found: readonly Finding[]): void {
    const others = this.#of.marks.takeFindings(found);
    if (others.size === 0) return;
    const { api } = this.#of;
    const rendered = api.getRenderedNodes();
    for (const [column, ids] of others) {
      const rowNodes = rendered.filter(({ data }) => data !== undefined && ids.has(data.id));
      if (rowNodes.length > 0) api.refreshCells({ rowNodes, columns: [column], force: true });
    }
  }
}

function slotsOf(nodes: readonly IRowNode<RowHandle>[]): Int32Array {
  return Int32Array.from(nodes, ({ data }) => data?.slot ?? -1).filter((slot) => slot >= 0);
}
