// How every sheet's grid is made: the parts of the grid that are used, its look, and what of its own ways is left out because the page
// has its own. sheet-grid.ts calls it.

import {
  CellApiModule,
  ClientSideRowModelApiModule,
  ClientSideRowModelModule,
  ColumnApiModule,
  CustomEditorModule,
  type GridOptions,
  ModuleRegistry,
  RenderApiModule,
  RowApiModule,
  RowStyleModule,
  ScrollApiModule,
} from 'ag-grid-community';
import { BEYOND } from './far-rows.ts';
import { gridTheme } from './grid-theme.ts';
import { isHead, isSpare, type RowHandle } from './row-handle.ts';

ModuleRegistry.registerModules([
  ClientSideRowModelModule,
  ClientSideRowModelApiModule,
  CellApiModule,
  RowStyleModule,
  ColumnApiModule,
  CustomEditorModule,
  RenderApiModule,
  RowApiModule,
  ScrollApiModule,
]);

export interface GridEvents {
  isInHand(rowIndex: number): boolean;
  /** Puts the focus on the cell in hand. */
  focusInHand(): boolean;
  /** A person drew a column so wide. */
  widthDrawn(column: string, width: number): void;
  /** A person dragged a column to another place. */
  columnMoved(): void;
}

/** The options that stay as they are while the grid stands. */
export function gridOptions(events: GridEvents): GridOptions<RowHandle> {
  return {
    theme: gridTheme,
    styleNonce: document.querySelector<HTMLMetaElement>('meta[property="csp-nonce"]')?.nonce ?? '',
    getRowId: ({ data }) => data.id,
    rowClassRules: {
      'spare-row': ({ data }) => data !== undefined && isSpare(data),
      'head-row': ({ data }) => data !== undefined && isHead(data),
      'row-in-hand': ({ rowIndex }) => events.isInHand(rowIndex),
    },
    headerHeight: 44,
    groupHeaderHeight: 24,
    invalidEditValueMode: 'block',
    stopEditingWhenCellsLoseFocus: true,
    suppressScrollOnNewData: true,
    suppressMultiSort: true,
    suppressNoRowsOverlay: true,
    animateRows: false,
    // Nothing shows either, and to watch for them costs something for each cell that comes into view.
    suppressRowHoverHighlight: true,
    enableBrowserTooltips: true,
    // Every row that is moved there by a transform would be a layer's worth of bookkeeping in each frame.
    suppressRowTransform: true,
    suppressAnimationFrame: true,
    // Rows beyond those in sight cost as much as they do: those that come are drawn in the frame in which they come.
    rowBuffer: BEYOND,
    ensureDomOrder: true,
    focusGridInnerElement: () => events.focusInHand(),
    onColumnResized: ({ api, finished, source, column, columns }) => {
      if (source !== 'uiColumnResized') return;
      // What fitted may be cut now.
      api.refreshCells({ columns: columns ?? [], force: true });
      if (finished && column !== null) events.widthDrawn(column.getColId(), column.getActualWidth());
    },
    onColumnMoved: ({ finished, source }) => {
      if (finished && source === 'uiColumnMoved') events.columnMoved();
    },
  };
}
