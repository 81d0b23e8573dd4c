// The narrow column in front of the rows: a handle with the number of each (heads of groups and the empty row have none), by which whole rows are selected and moved, and in
// the corner one for the whole sheet. columns.ts puts it in front; range-presses.ts follows what is pressed there.

import type { ColDef, ICellRendererComp, ICellRendererParams, IHeaderComp } from 'ag-grid-community';
import type { Drawing } from './drawing.ts';
import { surelyFits } from './letters.ts';
import type { RowHandle } from './row-handle.ts';

/** The id of the column of handles, which no column of a sheet has. */
export const HANDLES = ' handles';

/** Pixels at both sides of a number, as marks.css has them. */
const PADDING = 12;

class CornerFace implements IHeaderComp {
  private readonly face = document.createElement('div');

  init(): void {
    this.face.className = 'corner-face';
    this.face.title = 'Select the whole sheet';
    const words = document.createElement('span');
    words.className = 'spoken';
    words.textContent = 'Rows';
    this.face.append(words);
  }

  getGui(): HTMLElement {
    return this.face;
  }

  refresh(): boolean {
    return true;
  }
}

/** What draws the number of a row. */
function handleDrawer(drawing: Drawing): new () => ICellRendererComp<RowHandle> {
  return class HandleFace implements ICellRendererComp<RowHandle> {
    readonly #face = document.createElement('span');

    init({ eGridCell, node, value, column }: ICellRendererParams<RowHandle, number>): void {
      const text = String(value ?? '');
      const fits = column !== undefined && surelyFits(text, 'plain', column.getActualWidth() - PADDING);
      eGridCell.classList.add('row-handle', ...(fits ? ['fits'] : []));
      drawing.dressRange(eGridCell, node.rowIndex ?? -1, HANDLES);
      // What row it is says the name beside it: read out the number alone would be noise.
      this.#face.setAttribute('aria-hidden', 'true');
      this.#face.textContent = text;
    }

    getGui(): HTMLElement {
      return this.#face;
    }

    refresh(): boolean {
      return false;
    }
  };
}

/** The column of handles, as wide as the largest number. */
export function handleColumn(rows: number, drawing: Drawing): ColDef<RowHandle> {
  const figures = String(Math.max(10, rows)).length;
  return {
    colId: HANDLES,
    headerName: 'Rows',
    headerComponent: CornerFace,
    headerClass: 'corner-head',
    width: 20 + figures * 8,
    resizable: false,
    sortable: false,
    suppressMovable: true,
    lockPosition: 'left',
    pinned: 'left',
    lockPinned: true,
    suppressNavigable: true,
    cellDataType: false,
    valueGetter: ({ data }) => (data === undefined ? undefined : drawing.numberOf(data)),
    cellRenderer: handleDrawer(drawing),
  };
}
