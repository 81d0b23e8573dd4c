// The grid's only editor: the page's entry box inside a cell. A bad entry keeps the editor open with its sentence; an
// entry that was not touched writes nothing, so that looking into a computed cell never types over it.

import type { ICellEditorComp, ICellEditorParams } from 'ag-grid-community';
import type { CellView, ColumnView, WorkbookFace } from '../../../engine/index.ts';
import { EntryBox } from '../entry/entry-box.ts';
import { type RowHandle, SPARE } from './row-handle.ts';

/** What a cell holds for the grid while it is shown, and while its entry is on the way back. */
type CellValue = CellView | string;

export interface EditorWishes {
  readonly workbook: () => WorkbookFace;
  readonly table: string;
  readonly shows: ColumnView;
}

type Params = ICellEditorParams<RowHandle, CellValue> & EditorWishes;

export class CellEditor implements ICellEditorComp<RowHandle, CellValue> {
  private box: EntryBox | undefined;
  private begunWith = '';
  private byTyping = false;

  init(params: Params): void {
    const { shows: column, table } = params;
    const workbook = params.workbook();
    const { slot } = params.data;
    const key = params.eventKey;
    this.byTyping = key !== null && key.length === 1;
    this.begunWith = slot === SPARE ? '' : workbook.cell(table, slot, column.name).entry;
    this.box = new EntryBox({
      workbook,
      table,
      column,
      text: this.byTyping && key !== null ? key : this.begunWith,
      label: slot === SPARE ? `${column.name}, new row` : `${column.name}, ${workbook.rowName(table, slot)}`,
      onPick: () => params.stopEditing(true),
    });
  }

  getGui(): HTMLElement {
    return this.entryBox().input;
  }

  afterGuiAttached(): void {
    const box = this.entryBox();
    box.open();
    box.input.focus({ preventScroll: true });
    if (this.byTyping) {
      const end = box.text().length;
      box.input.setSelectionRange(end, end);
      // The first key came from the grid, not from the box: the list has to hear of it.
      box.input.dispatchEvent(new Event('input'));
    } else {
      box.input.select();
    }
  }

  getValue(): string {
    return this.entryBox().text();
  }

  getValidationErrors(): string[] | null {
    const why = this.untouched() ? undefined : this.entryBox().refusal();
    return why === undefined ? null : [why];
  }

  isCancelAfterEnd(): boolean {
    return this.untouched();
  }

  destroy(): void {
    this.box?.close();
  }

  private untouched(): boolean {
    return !this.byTyping && this.entryBox().text() === this.begunWith;
  }

  private entryBox(): EntryBox {
    if (this.box === undefined) throw new Error('The cell editor was used before it was made.');
    return this.box;
  }
}
