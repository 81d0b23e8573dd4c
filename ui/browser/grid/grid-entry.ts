// Typing in the grid: how an entry is begun, by a key, by an input method or by opening the cell as it stands, and where the
// selection goes when it is taken. A table that is pasted into an open cell lands in as many cells, lines of a text stay in it.

import type { GridApi } from 'ag-grid-community';
import { announce } from '../store/notices.ts';
import { type BegunEntry, CellEditor, type OpenEntry } from './cell-editor.ts';
import { isTable, readBlock } from './clipboard/block.ts';
import { faceOf } from './face.ts';
import type { RangeLayer } from './range-layer.ts';
import { type Corner, rangeOfCell } from './ranges.ts';
import { isSpare, type RowHandle } from './row-handle.ts';

/** Where an entry leads that is taken. */
export type TakenTo = 'down' | 'up' | 'right' | 'left' | 'stay';

export interface EntryListener {
  /** Writes one entry into every selected cell. */
  fillAll(entry: string): void;
  paste(text: string, html: string): void;
  /** An entry in the empty row was taken: the rows are to be drawn again at once. */
  rowAdded(): void;
  /** The empty row was left without an entry. */
  spareLeft(): void;
  /** Why nothing can be typed in the cell in hand; undefined where it can. */
  refusal(): string | undefined;
}

export class GridEntry {
  private readonly host: HTMLElement;
  private readonly api: GridApi<RowHandle>;
  private readonly layer: RangeLayer;
  private readonly listener: EntryListener;
  private begun: BegunEntry | undefined;
  private readonly stops: (() => void)[] = [];

  constructor(host: HTMLElement, api: GridApi<RowHandle>, layer: RangeLayer, listener: EntryListener) {
    this.host = host;
    this.api = api;
    this.layer = layer;
    this.listener = listener;
    this.listen('focusin', (event) => makeTypable(event.target));
    this.listen('focusout', (event) => {
      if (event.target instanceof HTMLElement && event.target.matches('.ag-cell'))
        event.target.removeAttribute('contenteditable');
    });
    this.listen('compositionstart', (event) => this.onComposing(event));
    this.listen('compositionend', (event) => this.onComposed(event));
    this.listen('beforeinput', (event) => {
      // What isn't composed is typed into the entry box, never into the cell's own text: signs from a panel, words that were spoken.
      if (!isCell(event.target) || event.isComposing) return;
      event.preventDefault();
      if (event.inputType === 'insertText' && event.data !== null && event.data !== '') this.start(event.data);
    });
    this.listen('paste', (event) => this.onPasteInEntry(event));
  }

  destroy(): void {
    for (const stop of this.stops) stop();
  }

  private listen<Name extends keyof HTMLElementEventMap>(
    name: Name,
    handle: (event: HTMLElementEventMap[Name]) => void,
  ): void {
    this.host.addEventListener(name, handle, true);
    this.stops.push(() => this.host.removeEventListener(name, handle, true));
  }

  /** What the entry begins with; undefined where a cell is opened as it stands. */
  begunWith(): BegunEntry | undefined {
    return this.begun;
  }

  /** Opens the cell in hand, with a text typed already where there is one. */
  start(typed?: string): void {
    const anchor = this.layer.anchor();
    if (anchor === undefined) return;
    const why = this.listener.refusal();
    if (why !== undefined) {
      announce(why);
      return;
    }
    const end = typed?.length ?? 0;
    this.open(anchor, typed === undefined ? undefined : { text: typed, byTyping: true, marked: [end, end] });
  }

  private open(at: Corner, begun: BegunEntry | undefined): void {
    const colKey = this.layer.columnAt(at.column);
    if (colKey === undefined) return;
    this.layer.show(at);
    this.begun = begun;
    this.api.startEditingCell({ rowIndex: at.row, colKey });
    this.begun = undefined;
  }

  /** Takes the entry that is open up from its cell without a word, before the rows are drawn anew; undefined where none is. */
  takeUp(): OpenEntry | undefined {
    const editor = this.editor();
    if (editor === undefined) return undefined;
    const entry = editor.open();
    editor.giveUp();
    this.api.stopEditing(true);
    // Nothing has the focus until it is put down: where it can't be, the next keys are for no other cell.
    this.api.clearFocusedCell();
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    return entry;
  }

  /** Puts an entry that was taken up down again, where its cell stands now. */
  putDown({ begun }: OpenEntry, at: Corner): void {
    const anchor = this.layer.anchor();
    if (anchor?.row !== at.row || anchor.column !== at.column) this.layer.select(rangeOfCell(at));
    this.open(at, begun);
  }

  editor(): CellEditor | undefined {
    const editor = this.api.getCellEditorInstances()[0];
    return editor instanceof CellEditor ? editor : undefined;
  }

  /** Takes the entry that is open and goes on from there; one that can't stand stays open with its sentence. */
  take(to: TakenTo): void {
    const editor = this.editor();
    if (editor === undefined) return;
    editor.takeActive();
    const held = editor.held();
    if (held !== undefined) {
      // Asked for as the grid asks: what only wants the list of units is tried again when that has come.
      editor.getValidationErrors();
      announce(held);
      return;
    }
    const at = this.layer.anchor();
    const row = at === undefined ? undefined : this.layer.rowAt(at.row);
    this.api.stopEditing();
    if (this.editor() !== undefined) return;
    if (row !== undefined && isSpare(row)) this.listener.rowAdded();
    this.goOn(to);
  }

  private goOn(to: TakenTo): void {
    if (to === 'down') this.layer.enter(1);
    else if (to === 'up') this.layer.enter(-1);
    else if (to === 'stay') this.layer.focusAnchor();
    else if (!this.layer.tab(to === 'right' ? 1 : -1)) this.layer.focusAnchor();
  }

  /** Takes the entry into every selected cell. */
  takeIntoAll(): void {
    const editor = this.editor();
    if (editor === undefined) return;
    editor.takeActive();
    const held = editor.held();
    if (held !== undefined) {
      announce(held);
      return;
    }
    const entry = editor.getValue();
    this.api.stopEditing(true);
    this.layer.focusAnchor();
    this.listener.fillAll(entry);
  }

  /** Gives the entry up: the cell is as it was. */
  leave(): void {
    this.editor()?.giveUp();
    this.api.stopEditing(true);
    this.layer.focusAnchor();
    this.listener.spareLeft();
  }

  /**
   * A table pasted into an open cell is pasted from that cell on, never as one long text. Lines that no table holds are one text where
   * the box has lines; so is a spreadsheet's single cell, without the quotes and the line end around it.
   */
  private onPasteInEntry(event: ClipboardEvent): void {
    const { clipboardData: data, target } = event;
    if (data === null || target === null || this.editor()?.getGui() !== target) return;
    const [text, html] = [data.getData('text/plain'), data.getData('text/html')];
    const block = readBlock(text, html);
    const isCells = isTable(block);
    if (target instanceof HTMLTextAreaElement && !(isCells && /\t|<table/i.test(text + html))) {
      const [[cell] = []] = block.cells;
      const held = isCells || cell === undefined ? text : cell.text;
      if (held === text) return;
      event.preventDefault();
      target.setRangeText(held, target.selectionStart, target.selectionEnd, 'end');
      target.dispatchEvent(new Event('input'));
      return;
    }
    if (!/[\t\r\n]/.test(text.trim()) || !isCells) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    this.editor()?.giveUp();
    this.api.stopEditing(true);
    this.layer.focusAnchor();
    this.listener.paste(text, html);
  }

  private onComposing(event: CompositionEvent): void {
    if (isCell(event.target)) event.target.classList.add('composing');
  }

  /** What an input method composed on the cell opens it as if it had been typed. */
  private onComposed(event: CompositionEvent): void {
    const cell = event.target;
    if (!isCell(cell)) return;
    cell.classList.remove('composing');
    for (const node of [...cell.childNodes]) if (node instanceof Text) node.remove();
    if (event.data !== '') this.start(event.data);
  }
}

function isCell(target: EventTarget | null): target is HTMLElement {
  return target instanceof HTMLElement && target.matches('.ag-cell');
}

/**
 * Input methods begin only where text can stand and the caret is: a cell that got the focus otherwise than by a press, as after
 * a change of sheets, is given the caret too. The cell's own keys are the grid's, and no keyboard comes up on a touch screen.
 */
function makeTypable(target: EventTarget | null): void {
  if (!isCell(target) || target.getAttribute('aria-readonly') === 'true') return;
  target.setAttribute('contenteditable', 'true');
  faceOf(target);
  target.inputMode = 'none';
  target.spellcheck = false;
  document.getSelection()?.collapse(target, target.childNodes.length);
}
