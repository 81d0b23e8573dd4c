// What a person's hands do in the grid beyond walking its cells: keys that clear, fill and take back, the clipboard, the
// menus, presses on headers. Listens on the host before the grid does; the writing is in range-commands.ts and
// sheet-actions.ts.

import type { GridApi } from 'ag-grid-community';
import type { ColumnView, TableView } from '../../../engine/index.ts';
import { beginFormula } from '../formula-line/requests.ts';
import { showMenu } from '../parts/menu-state.ts';
import { type CellPlace, takeBack } from '../sheet-actions.ts';
import { readOnly } from '../state.ts';
import { CellEditor } from './cell-editor.ts';
import { cellMenu, columnMenu } from './menus.ts';
import type { RangeCommands } from './range-commands.ts';
import type { RangeLayer } from './range-layer.ts';
import { cellsOf } from './ranges.ts';
import { type RowHandle, SPARE } from './row-handle.ts';

export interface GridParts {
  readonly host: HTMLElement;
  readonly api: GridApi<RowHandle>;
  readonly layer: RangeLayer;
  readonly commands: RangeCommands;
  /** The sheet as it is now: its columns change. */
  readonly table: () => TableView;
}

export class GridHands {
  private readonly host: HTMLElement;
  private readonly api: GridApi<RowHandle>;
  private readonly layer: RangeLayer;
  private readonly commands: RangeCommands;
  private readonly table: () => TableView;

  constructor({ host, api, layer, commands, table }: GridParts) {
    this.host = host;
    this.api = api;
    this.layer = layer;
    this.commands = commands;
    this.table = table;
    host.addEventListener('keydown', this.onKey, true);
    host.addEventListener('contextmenu', this.onContextMenu, true);
    host.addEventListener('mousedown', this.onHeaderPress, true);
    document.addEventListener('copy', this.onCopy);
    document.addEventListener('cut', this.onCut);
    document.addEventListener('paste', this.onPaste);
  }

  /** What listens on the host goes with it; the clipboard is the page's and has to be let go. */
  destroy(): void {
    document.removeEventListener('copy', this.onCopy);
    document.removeEventListener('cut', this.onCut);
    document.removeEventListener('paste', this.onPaste);
  }

  private selectedPlaces(): readonly CellPlace[] {
    const area = this.layer.rectangle();
    if (area === undefined) return [];
    return cellsOf(area).flatMap(({ row, column }) => {
      const slot = this.layer.slotAt(row);
      const name = this.layer.columnAt(column);
      return slot === undefined || slot === SPARE || name === undefined
        ? []
        : [{ table: this.table().name, row: slot, column: name }];
    });
  }

  private columnInHand(): ColumnView | undefined {
    const name = this.layer.columnAt(this.layer.anchor()?.column ?? 0);
    return this.table().columns.find((column) => column.name === name);
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    if (!isCell(event.target)) return;
    const act = this.keyAct(event);
    if (act === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };

  private keyAct(event: KeyboardEvent): (() => void) | undefined {
    const control = event.ctrlKey || event.metaKey;
    const free = readOnly.peek() === undefined;
    if (event.altKey && event.key === 'Backspace') return () => takeBack(this.selectedPlaces());
    if (event.altKey) return undefined;
    if (event.key === 'Delete' || event.key === 'Backspace') return () => (free ? this.commands.clear() : undefined);
    if (control && event.key.toLowerCase() === 'd') return () => this.commands.fillDown();
    const column = this.columnInHand();
    if (event.key === '=' && !control && column !== undefined && column.role !== 'entered' && column.role !== 'made') {
      return () => beginFormula('=');
    }
    return undefined;
  }

  private readonly onContextMenu = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    const header = target?.closest('.ag-header-cell')?.getAttribute('col-id');
    const view = this.table().columns.find(({ name }) => name === header);
    const cell = target?.closest('.ag-cell');
    if (view === undefined && (cell === null || cell === undefined || target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const at = menuCorner(event, target);
    if (view !== undefined) {
      const sort = (order: 'asc' | 'desc' | null): void => {
        this.api.applyColumnState({ state: [{ colId: view.name, sort: order }], defaultState: { sort: null } });
      };
      showMenu({ ...at, label: `Column ${view.name}`, sets: columnMenu(this.table().name, view, sort) });
      return;
    }
    const column = this.columnInHand();
    if (column === undefined) return;
    const anchor = this.layer.anchor();
    const startEditing = (): void => {
      if (anchor !== undefined) this.api.startEditingCell({ rowIndex: anchor.row, colKey: column.name });
    };
    const cells = this.selectedPlaces();
    const rows = [...new Set(cells.map(({ row }) => row))];
    const sets = cellMenu({ table: this.table(), column, rows, cells, commands: this.commands, startEditing });
    showMenu({ ...at, label: 'Cell', sets });
  };

  private readonly onHeaderPress = (event: MouseEvent): void => {
    const target = event.target instanceof Element ? event.target : null;
    const column = target?.closest('.ag-header-cell')?.getAttribute('col-id');
    if (event.button !== 0 || column === null || column === undefined) return;
    if (target?.closest('.ag-header-cell-resize') !== null) return;
    this.layer.selectColumns(column, event.shiftKey);
  };

  private readonly onCopy = (event: ClipboardEvent): void => {
    const text = this.ownsClipboard() ? this.commands.copied() : undefined;
    if (text === undefined) return;
    event.preventDefault();
    event.clipboardData?.setData('text/plain', text);
  };

  private readonly onCut = (event: ClipboardEvent): void => {
    if (!this.ownsClipboard() || readOnly.peek() !== undefined) return;
    this.onCopy(event);
    this.commands.clear();
  };

  private readonly onPaste = (event: ClipboardEvent): void => {
    if (!this.ownsClipboard()) return;
    event.preventDefault();
    this.commands.paste(event.clipboardData?.getData('text/plain') ?? '');
  };

  /** The clipboard is the grid's while one of its cells, not an editor or another field, has the focus. */
  private ownsClipboard(): boolean {
    const focused = document.activeElement;
    return isCell(focused) && this.host.contains(focused);
  }
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

function isCell(target: EventTarget | null): target is HTMLElement {
  return target instanceof HTMLElement && target.classList.contains('ag-cell');
}

/** Where a menu opens: at the pointer, or at the cell when the menu key asked for it. */
function menuCorner(event: MouseEvent, target: Element | null): { readonly x: number; readonly y: number } {
  if (event.clientX !== 0 || event.clientY !== 0) return { x: event.clientX, y: event.clientY };
  const box = target?.getBoundingClientRect();
  return { x: (box?.left ?? 0) + 8, y: (box?.bottom ?? 0) - 4 };
}
