// What a grid that stands on screen can do for the table of commands. Made by sheet-grid.ts.

import type { GridApi } from 'ag-grid-community';
import type { SheetView } from '../../../engine/index.ts';
import type { GridSurface } from './grid-surface.ts';
import type { RangeActs } from './range-acts.ts';
import type { RangeLayer } from './range-layer.ts';
import { isSpare, type RowHandle } from './row-handle.ts';

export interface GridParts {
  readonly api: GridApi<RowHandle>;
  readonly layer: RangeLayer;
  readonly acts: RangeActs;
  /** The sheet as it is now: its columns change. */
  readonly sheet: () => SheetView;
}

export function surfaceOf(parts: GridParts): GridSurface {
  const { api, layer, acts } = parts;
  return {
    startEditing: () => startEditing(parts),
    startNewRow: () => startNewRow(parts),
    move: (to, how = {}) => layer.move(to, how),
    selectRows: () => layer.selectRows(),
    selectColumns: () => layer.selectWholeColumns(),
    selectAll: () => layer.selectAll(),
    isWide: () => layer.isWide(),
    shrink: () => layer.shrink(),
    copied: () => acts.copied(),
    paste: (text) => acts.paste(text),
    fillDown: () => acts.fillDown(),
    sort: (column, order) => {
      api.applyColumnState({ state: [{ colId: column, sort: order }], defaultState: { sort: null } });
    },
  };
}

function startEditing({ api, layer }: GridParts): void {
  const anchor = layer.anchor();
  const colKey = anchor === undefined ? undefined : layer.columnAt(anchor.column);
  if (anchor !== undefined && colKey !== undefined) api.startEditingCell({ rowIndex: anchor.row, colKey });
}

/** Opens the empty row at the sheet's end, at the column that names a row. */
function startNewRow({ api, layer, sheet }: GridParts): void {
  const rowIndex = api.getDisplayedRowCount() - 1;
  const { key, columns } = sheet();
  const colKey = key ?? columns.find(({ required }) => required)?.id ?? layer.columnAt(0);
  const row = layer.rowAt(rowIndex);
  if (row === undefined || !isSpare(row) || colKey === undefined) return;
  layer.focus(layer.cornerOf(rowIndex, colKey) ?? { row: rowIndex, column: 0 });
  api.startEditingCell({ rowIndex, colKey });
}
