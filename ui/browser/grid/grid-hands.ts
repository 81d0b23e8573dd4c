// Presses in the grid beyond walking its cells: the menus of cells and columns, headers, which select their column and fold
// their questions, and borders of headers, which fit a column. Listens on the host before the grid does.

import type { GridApi } from 'ag-grid-community';
import type { SheetView } from '../../../engine/index.ts';
import { showMenu } from '../commands/menu-state.ts';
import { menuItems } from '../commands/menus.ts';
import { Situation } from '../commands/situation.ts';
import { foldQuestion } from '../store/device.ts';
import { chooseView, viewNow, viewsOf } from '../store/looks.ts';
import { CellEditor } from './cell-editor.ts';
import type { RangeLayer } from './range-layer.ts';
import type { RowHandle } from './row-handle.ts';

export interface HandsOf {
  readonly sheet: () => SheetView;
  /** As wide as its longest text. */
  readonly fit: (column: string) => void;
}

export class GridHands {
  private readonly host: HTMLElement;
  private readonly layer: RangeLayer;
  private readonly of: HandsOf;

  constructor(host: HTMLElement, layer: RangeLayer, of: HandsOf) {
    this.host = host;
    this.layer = layer;
    this.of = of;
    host.addEventListener('contextmenu', this.onContextMenu, true);
    host.addEventListener('mousedown', this.onHeaderPress, true);
    host.addEventListener('dblclick', this.onDoublePress, true);
    host.addEventListener('keydown', this.onHeaderKey, true);
  }

  destroy(): void {
    this.host.removeEventListener('contextmenu', this.onContextMenu, true);
    this.host.removeEventListener('mousedown', this.onHeaderPress, true);
    this.host.removeEventListener('dblclick', this.onDoublePress, true);
    this.host.removeEventListener('keydown', this.onHeaderKey, true);
  }

  /** Somebody goes to a column that the view leaves out: the first view that has it comes on screen. */
  showColumn(column: string): void {
    const sheet = this.of.sheet();
    if (viewNow(sheet).shows.includes(column)) return;
    const view = viewsOf(sheet).find(({ shows }) => shows.includes(column));
    if (view !== undefined) chooseView(sheet.id, view.id);
  }

  private readonly onContextMenu = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    const column = headerOf(target);
    const inCell = target !== null && target.closest('.ag-cell') !== null && !target.matches('.entry-box');
    if (column === undefined && !inCell) return;
    event.preventDefault();
    this.openMenu(column, menuCorner(event, target));
  };

  private openMenu(column: string | undefined, at: { readonly x: number; readonly y: number }): void {
    const now = new Situation('grid', column);
    const label = column === undefined ? 'Cell' : `Column ${now.column?.name ?? ''}`;
    showMenu({ ...at, label, sets: menuItems(column === undefined ? 'cell' : 'column', now) });
  }

  private readonly onHeaderPress = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    if (event.button !== 0 || target === null || target.closest('.ag-header-cell-resize') !== null) return;
    if (target.closest('.corner-head') !== null) {
      this.layer.selectAll();
      this.layer.focusAnchor();
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    const question = target.closest<HTMLElement>('.question-face[data-folds]')?.dataset.question;
    if (question !== undefined) {
      foldQuestion(this.of.sheet().id, question);
      return;
    }
    const column = headerOf(target);
    if (column === undefined) return;
    const menu = target.closest('.column-menu');
    if (menu !== null) {
      const { left, bottom } = menu.getBoundingClientRect();
      event.stopImmediatePropagation();
      event.preventDefault();
      this.openMenu(column, { x: left, y: bottom + 2 });
      return;
    }
    const how = event.shiftKey ? 'stretch' : event.ctrlKey || event.metaKey ? 'beside' : 'alone';
    this.layer.selectColumns(column, how);
  };

  /** The border between two headers, pressed twice, fits the column before it. */
  private readonly onDoublePress = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    if (target?.closest('.ag-header-cell-resize') === null) return;
    const column = headerOf(target);
    if (column !== undefined) this.of.fit(column);
  };

  /** Enter on a header opens its menu, on the head of a question folds it. */
  private readonly onHeaderKey = (event: KeyboardEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    if (event.key !== 'Enter' || target === null) return;
    const question = target.querySelector<HTMLElement>('.question-face[data-folds]')?.dataset.question;
    const column = target.matches('.ag-header-cell') ? headerOf(target) : undefined;
    if (question === undefined && column === undefined) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (column === undefined) foldQuestion(this.of.sheet().id, question ?? '');
    else {
      const { left, bottom } = target.getBoundingClientRect();
      this.openMenu(column, { x: left + 8, y: bottom - 4 });
    }
  };
}

/** The column whose header a press fell on. */
function headerOf(target: Element | null): string | undefined {
  const cell = target?.closest('.ag-header-cell:not(.corner-head)');
  return cell?.getAttribute('col-id') ?? undefined;
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
  host.addEventListener('pointerdown', hold, true);
  host.addEventListener('mousedown', hold, true);
}

/** Where a menu opens: at the pointer, or at the cell when the menu key asked for it. */
function menuCorner(event: MouseEvent, target: Element | null): { readonly x: number; readonly y: number } {
  if (event.clientX !== 0 || event.clientY !== 0) return { x: event.clientX, y: event.clientY };
  const box = target?.getBoundingClientRect();
  return { x: (box?.left ?? 0) + 8, y: (box?.bottom ?? 0) - 4 };
}
