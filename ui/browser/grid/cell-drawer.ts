// What the grid makes for every cell that comes into view: one class for each column, whose objects draw a cell and dress it. The
// grid makes and destroys hundreds a frame while a sheet is scrolled: no listeners, no closures, and no element of its own for
// a text that stands in the cell as it is. columns.ts hands the class to the grid.

import type { Column, ICellRendererParams } from 'ag-grid-community';
import type { CellView, ColumnView } from '../../../engine/index.ts';
import { describeCell, drawCell, drawHead, drawNewRow, drawTotal, dressCell } from './cell-face.ts';
import { type CellMarks, cellClasses } from './cell-words.ts';
import type { Drawing } from './drawing.ts';
import { faceOf } from './face.ts';
import { type Cut, surelyFits } from './letters.ts';
import { isHead, isSpare, type RowHandle } from './row-handle.ts';

/** Pixels at both sides of a cell's text, as grid.css has them. */
const PADDING = 20;

type Params = ICellRendererParams<RowHandle, CellView | undefined>;

/** What the grid asks of one that draws a cell. */
export interface CellDrawer {
  init(params: Params): void;
  getGui(): undefined;
  refresh(params: Params): boolean;
}

/** What draws the cells of a column; `naming`: they name their rows. */
export function cellDrawer(drawing: Drawing, column: ColumnView, naming: boolean): new () => CellDrawer {
  return class implements CellDrawer {
    init({ eGridCell: at, node, data, value, column: shown }: Params): void {
      if (at.firstChild !== null) at.replaceChildren();
      if (at.hasAttribute('data-pad')) at.removeAttribute('data-pad');
      if (data === undefined) return;
      drawing.dressRange(at, node.rowIndex ?? -1, column.id);
      if (isHead(data)) {
        if (naming) drawHead(faceOf(at), data);
        else drawTotal(faceOf(at), drawing.total(data, column.id), column);
        return;
      }
      const marks = drawing.marks(data, column.id);
      const cell = value ?? undefined;
      const classes = cellClasses(cell, column, marks);
      if (isSpare(data) && naming) {
        dressCell(at, classes);
        drawNewRow(faceOf(at));
        return;
      }
      describeCell(at, cell, column, marks);
      const face = needsFace(at, marks) ? faceOf(at) : at;
      const text = drawCell(face, cell, column, drawing.room(column.id), marks);
      dressCell(at, fits(text, cell, shown) ? `${classes} fits` : classes);
    }

    /** Nothing for the grid to put in the cell: what is drawn stands there. */
    getGui(): undefined {
      return undefined;
    }

    refresh(params: Params): boolean {
      this.init(params);
      return true;
    }
  };
}

/** What was found or looked for is marked along the text alone; an input method writes beside it. */
function needsFace(cell: HTMLElement, { found, isMatch = false }: CellMarks): boolean {
  return found !== undefined || isMatch || cell.hasAttribute('contenteditable');
}

/** Whether a cell shows its text in full, whatever the clip that the others have. */
function fits(text: string | undefined, cell: CellView | undefined, column: Column | undefined): boolean {
  if (text === undefined || column === undefined) return false;
  return surelyFits(text, cutOf(cell?.origin), column.getActualWidth() - PADDING);
}

function cutOf(origin: CellView['origin'] | undefined): Cut {
  if (origin === 'override') return 'strong';
  return origin === 'default' ? 'slanted' : 'plain';
}
