// Presses in the grid beyond walking its cells: the menus of cells and columns, and headers, which select their column. Listens
// on the host before the grid does.

import type { GridApi } from 'ag-grid-community';
import { showMenu } from '../commands/menu-state.ts';
import { menuItems } from '../commands/menus.ts';
import { Situation } from '../commands/situation.ts';
import { CellEditor } from './cell-editor.ts';
import type { RangeLayer } from './range-layer.ts';
import type { RowHandle } from './row-handle.ts';

export class GridHands {
  private readonly host: HTMLElement;
  private readonly layer: RangeLayer;

  constructor(host: HTMLElement, layer: RangeLayer) {
    this.host = host;
    this.layer = layer;
    host.addEventListener('contextmenu', this.onContextMenu, true);
    host.addEventListener('mousedown', this.onHeaderPress, true);
  }

  destroy(): void {
    this.host.removeEventListener('contextmenu', this.onContextMenu, true);
    this.host.removeEventListener('mousedown', this.onHeaderPress, true);
  }

  private readonly onContextMenu = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    const column = headerOf(target);
    const inCell = target !== null && target.closest('.ag-cell') !== null && !(target instanceof HTMLInputElement);
    if (column === undefined && !inCell) return;
    event.preventDefault();
    const now = new Situation('grid', column);
    const label = column === undefined ? 'Cell' : `Column ${now.column?.name ?? ''}`;
    showMenu({ ...menuCorner(event, target), label, sets: menuItems(column === undefined ? 'cell' : 'column', now) });
  };

  private readonly onHeaderPress = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    const column = headerOf(target);
    if (event.button !== 0 || column === undefined || target?.closest('.ag-header-cell-resize') !== null) return;
    this.layer.selectColumns(column, event.shiftKey);
  };
}

/** The column whose header a press fell on. */
function headerOf(target: Element | null): string | undefined {
  return target?.closest('.ag-header-cell')?.getAttribute('col-id') ?? undefined;
}

/**
 * An entry that is refused is mended or given up with Esc; until then a press elsewhere in the host leads back to it. To be
 * called before the range layer listens, which would take the press for a selection.
 */
export function holdRefused(host: HTMLElement, api: GridApi<RowHandle>): void {
  const hold = (event: MouseEvent): void => {
    const editor = api.getCellEditorInstances()[0];
    if (!(editor instanceof CellEditor) || editor.getValidationErrors() === null) return;
    if (event.target === editor.getGui()) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    editor.getGui().focus();
  };
  host.addEventListener('mousedown', hold, true);
}

/** Where a menu opens: at the pointer, or at the cell when the menu key asked for it. */
function menuCorner(event: MouseEvent, target: Element | null): { readonly x: number; readonly y: number } {
  if (event.clientX !== 0 || event.clientY !== 0) return { x: event.clientX, y: event.clientY };
  const box = target?.getBoundingClientRect();
  return { x: (box?.left ?? 0) + 8, y: (box?.bottom ?? 0) - 4 };
}
