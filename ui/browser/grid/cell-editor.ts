// The grid's only editor: the page's entry box inside a cell. A bad entry keeps the editor open with its sentence, and one that is
// asked about does until it is taken again; an entry that was not touched writes nothing, so that looking into a computed cell never
// types over it.

import type { ICellEditorComp, ICellEditorParams } from 'ag-grid-community';
import { type Book, type CellView, type ColumnView, cellView, rowName, tryEntry } from '../../../engine/index.ts';
import { EntryBox } from '../entry/entry-box.ts';
import type { LostEntry } from '../entry/entry-lost.ts';
import { typeCell } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { fetchWanted } from '../store/wanted.ts';
import { workbookNow } from '../store/workbook.ts';
import { isSpare, type RowHandle } from './row-handle.ts';

/** What a cell holds for the grid while it is shown, and while its entry is on the way back. */
type CellValue = CellView | string;

export interface EditorProps {
  readonly book: () => Book;
  readonly sheet: string;
  readonly shows: ColumnView;
  /** What the entry begins with; undefined where the cell was opened as it stands. */
  readonly begunWith: () => BegunEntry | undefined;
}

/** What stands in the box from the start: a key typed on the cell, or an entry that was open before the sheet was drawn anew. */
export interface BegunEntry {
  readonly text: string;
  /** It began with a key, not by opening the cell. */
  readonly byTyping: boolean;
  /** From where to where it is marked. */
  readonly marked: readonly [from: number, to: number];
}

/** An entry taken up from its cell, to be put down again where the cell stands then. */
export interface OpenEntry extends LostEntry {
  /** undefined where nothing was changed yet. */
  readonly begun: BegunEntry | undefined;
}

type Params = ICellEditorParams<RowHandle, CellValue> & EditorProps;

export class CellEditor implements ICellEditorComp<RowHandle, CellValue> {
  private box: EntryBox | undefined;
  private before = '';
  private begun: BegunEntry | undefined;
  private byTyping = false;
  private place: Omit<LostEntry, 'text'> = { sheet: '', row: '', column: '', label: '' };
  private stop = (): void => undefined;
  /** Says why the entry was not taken where the person went elsewhere and left it open. */
  private sayLeft = (): void => undefined;

  init(params: Params): void {
    const { shows: column, sheet, data } = params;
    const book = params.book();
    this.begun = params.begunWith();
    this.byTyping = this.begun?.byTyping === true;
    this.before = isSpare(data) ? '' : cellView(book, sheet, data.slot, column.id).entry;
    this.stop = () => params.stopEditing();
    const label = isSpare(data) ? `${column.name}, new row` : `${column.name}, ${rowName(book, sheet, data.slot)}`;
    this.place = { sheet, row: data.id, column: column.id, label };
    this.box = new EntryBox({
      book,
      sheet,
      column,
      row: isSpare(data) ? undefined : data.slot,
      text: this.begun?.text ?? this.before,
      label,
      onPick: () => params.stopEditing(true),
    });
    this.sayLeft = () => {
      const entry = this.getValue();
      const tried = tryEntry(book, sheet, column.id, entry, isSpare(data) ? undefined : data.slot);
      const why = tried.ok ? `${tried.text} is ${tried.far ?? ''}.` : tried.why;
      const take = (): void => {
        if (workbookNow() === book) typeCell({ sheet, row: data.id, column: column.id }, column.name, entry);
      };
      const acts = tried.ok && !isSpare(data) ? [{ label: 'Take it', run: take }] : [];
      tell(`${column.name}: “${entry}” was not taken. ${why}`, 'refusal', ...acts);
    };
  }

  getGui(): HTMLElement {
    return this.entryBox().input;
  }

  afterGuiAttached(): void {
    const box = this.entryBox();
    box.open();
    box.input.focus({ preventScroll: true });
    if (this.begun === undefined) box.input.select();
    else {
      box.input.setSelectionRange(...this.begun.marked);
      // What was typed so far came from the grid, not from the box: the list has to hear of it.
      box.input.dispatchEvent(new Event('input'));
    }
  }

  /** The entry as it stands, for when its cell is drawn anew. */
  open(): OpenEntry {
    const { input } = this.entryBox();
    const text = this.getValue();
    const marked = [input.selectionStart ?? text.length, input.selectionEnd ?? text.length] as const;
    const begun = this.untouched() ? undefined : { text, byTyping: this.byTyping, marked };
    return { ...this.place, text, begun };
  }

  getValue(): string {
    return this.entryBox().text();
  }

  /** It began with a key and has no list to walk: arrows may take it. */
  isQuick(): boolean {
    return this.byTyping && !this.entryBox().hasList();
  }

  /** Takes the marked item of the list as the entry, where one is marked. */
  takeActive(): void {
    this.entryBox().takeActive();
  }

  /** Why the entry isn't taken yet: what refuses it, or what is asked about it once. */
  held(): string | undefined {
    return this.untouched() ? undefined : this.entryBox().held();
  }

  /** Why the entry can't stand. Where it may be for the want of a unit in general use, it is tried once more when those have come. */
  getValidationErrors(): string[] | null {
    const why = this.standsAgainst();
    if (why === undefined) return null;
    void fetchWanted().then((came) => {
      if (came && this.entryBox().refusal() === undefined) this.stop();
    });
    return [why];
  }

  isCancelAfterEnd(): boolean {
    return this.untouched();
  }

  /** The entry is given up: nothing is to be said of it. */
  giveUp(): void {
    this.sayLeft = () => undefined;
  }

  destroy(): void {
    if (this.box !== undefined && this.standsAgainst() !== undefined) this.sayLeft();
    this.box?.close();
  }

  /** What refuses the entry, or is asked about it. */
  private standsAgainst(): string | undefined {
    return this.untouched() ? undefined : (this.entryBox().refusal() ?? this.entryBox().asks());
  }

  private untouched(): boolean {
    return !this.byTyping && this.entryBox().holds(this.before);
  }

  private entryBox(): EntryBox {
    if (this.box === undefined) throw new Error('The cell editor was used before it was made.');
    return this.box;
  }
}
