// What the grid makes for every cell that comes into view: one class for each column, whose objects draw a cell's face and dress
// the cell. The grid makes and destroys hundreds a frame while a sheet is scrolled: no listeners, no closures, no state beyond
// the face. columns.ts hands the class to the grid.

import type { ICellRendererComp, ICellRendererParams } from 'ag-grid-community';
import type { CellView, ColumnView } from '../../../engine/index.ts';
import { describeCell, drawCell, drawHead, drawNewRow, dressCell } from './cell-face.ts';
import { cellClasses } from './cell-words.ts';
import type { Drawing } from './drawing.ts';
import { isHead, isSpare, type RowHandle } from './row-handle.ts';

type Params = ICellRendererParams<RowHandle, CellView | undefined>;

/** What draws the cells of a column; `naming`: they name their rows. */
export function cellDrawer(
  drawing: Drawing,
  column: ColumnView,
  naming: boolean,
): new () => ICellRendererComp<RowHandle> {
  return class CellDrawer implements ICellRendererComp<RowHandle> {
    readonly #face = document.createElement('span');

    init({ eGridCell, node, data, value }: Params): void {
      const face = this.#face;
      face.className = 'face';
      // An input method that begins on the cell in hand writes beside the face, not into it.
      if (eGridCell.hasAttribute('contenteditable')) face.contentEditable = 'false';
      if (data === undefined) return;
      drawing.dressRange(eGridCell, node.rowIndex ?? -1, column.id);
      if (isHead(data)) {
        if (naming) eGridCell.classList.add('group-name');
        drawHead(face, data, naming, drawing.total(data, column.id));
        return;
      }
      const marks = drawing.marks(data, column.id);
      const cell = value ?? undefined;
      dressCell(eGridCell, cellClasses(cell, column, marks));
      if (isSpare(data) && naming) {
        drawNewRow(face);
        return;
      }
      describeCell(eGridCell, cell, column, marks);
      drawCell(face, cell, column, drawing.room(column.id), marks);
    }

    getGui(): HTMLElement {
      return this.#face;
    }

    /** A cell is drawn anew where something of it changed. */
    refresh(): boolean {
      return false;
    }
  };
}
