// What is done with a selected range: copy, cut, paste, clear, fill down. Every write goes through the workbook's own
// entry rules as one step of undo, all or nothing; what can't be done is said with the cell it failed at.

import { type ColumnView, type Edit, isoDate, type TableView, type WorkbookFace } from '../../../engine/index.ts';
import { announce, tell } from '../messages.ts';
import { clearCells } from '../sheet-actions.ts';
import { edit } from '../state.ts';
import type { RangeLayer } from './range-layer.ts';
import { cellCount, cellsOf, fillDownWrites, pasteWrites, type Rectangle, type Write } from './ranges.ts';
import { SPARE } from './row-handle.ts';
import { fromTabSeparated, toTabSeparated } from './tab-separated.ts';

export class RangeCommands {
  private readonly workbook: () => WorkbookFace;
  private readonly table: () => TableView;
  private readonly layer: RangeLayer;

  constructor(workbook: () => WorkbookFace, table: () => TableView, layer: RangeLayer) {
    this.workbook = workbook;
    this.table = table;
    this.layer = layer;
  }

  /** The range as text for the clipboard; undefined where nothing is selected. */
  copied(): string | undefined {
    const area = this.layer.rectangle();
    if (area === undefined) return undefined;
    const rows: string[][] = [];
    for (let row = area.top; row <= area.bottom; row += 1) {
      if (this.layer.slotAt(row) === SPARE) continue;
      const fields: string[] = [];
      for (let column = area.left; column <= area.right; column += 1) fields.push(this.copyText(row, column));
      rows.push(fields);
    }
    announce(cellCount(area) === 1 ? 'Copied.' : `Copied ${cellCount(area)} cells.`);
    return toTabSeparated(rows);
  }

  clear(): void {
    const area = this.layer.rectangle();
    if (area === undefined) return;
    const places = cellsOf(area).flatMap(({ row, column }) => {
      const place = this.placeAt(row, column);
      return place === undefined ? [] : [place];
    });
    clearCells(this.table(), places);
  }

  /** Pastes text from the clipboard at the selection. */
  paste(text: string): void {
    const area = this.layer.rectangle();
    const block = fromTabSeparated(text);
    if (area === undefined || block.length === 0) return;
    const writes = pasteWrites(block, area, this.layer.bounds().columns);
    const { edits, skipped, landed } = this.editsFor(writes);
    if (edits.length === 0) {
      tell('Nothing pasted: these cells are filled by their formulas.', 'refusal');
      return;
    }
    const done = edit(edits, landed === 1 ? 'Paste a cell' : `Paste ${landed} cells`, true);
    if (done.refused) {
      tell(`Nothing pasted. ${this.whereRefused(done)}${done.why}`, 'refusal');
      return;
    }
    const left = skipped.size === 0 ? '' : ` Left to their formulas: ${[...skipped].join(', ')}.`;
    if (landed > 1 || left !== '') tell(`Pasted ${landed === 1 ? 'a cell' : `${landed} cells`}.${left}`);
    else announce('Pasted.');
    this.selectWritten(area, writes);
  }

  fillDown(): void {
    const area = this.layer.rectangle();
    if (area === undefined) return;
    // One cell alone takes the text of the one above.
    const whole: Rectangle = area.top === area.bottom ? { ...area, top: area.top - 1 } : area;
    if (whole.top < 0) return;
    const writes = fillDownWrites(whole, ({ row, column }) => this.entryText(row, column));
    const { edits, landed } = this.editsFor(writes.filter(({ row }) => this.layer.slotAt(row) !== SPARE));
    if (edits.length === 0) return;
    const done = edit(edits, landed === 1 ? 'Fill a cell from above' : `Fill down ${landed} cells`, true);
    if (done.refused) tell(`Nothing filled. ${this.whereRefused(done)}${done.why}`, 'refusal');
    else announce(`Filled ${landed} cells.`);
  }

  private columnAt(index: number): ColumnView | undefined {
    const name = this.layer.columnAt(index);
    return this.table().columns.find((column) => column.name === name);
  }

  private placeAt(row: number, index: number): { table: string; row: number; column: string } | undefined {
    const slot = this.layer.slotAt(row);
    const column = this.layer.columnAt(index);
    if (slot === undefined || slot === SPARE || column === undefined) return undefined;
    return { table: this.table().name, row: slot, column };
  }

  /** A figure in the column's unit goes out as a bare number at full length, a date as 2027-03-15, the rest as shown. */
  private copyText(row: number, index: number): string {
    const place = this.placeAt(row, index);
    const column = this.columnAt(index);
    if (place === undefined || column === undefined) return '';
    const cell = this.workbook().cell(place.table, place.row, place.column);
    if (column.type?.kind === 'date' && typeof cell.value === 'number') return isoDate(cell.value);
    const bare = cell.number !== undefined && /\d$/.test(cell.text);
    return bare && cell.number !== undefined ? String(Number(cell.number.toPrecision(15))) : cell.text;
  }

  private entryText(row: number, index: number): string {
    const place = this.placeAt(row, index);
    return place === undefined ? '' : this.workbook().cell(place.table, place.row, place.column).entry;
  }

  /**
   * Edits for the writes. Rows past the last become new rows. Where a block covers several columns, computed ones among
   * them keep their formulas; a block of one column, put on a computed column, is meant to be typed over it.
   */
  private editsFor(writes: readonly Write[]): { edits: Edit[]; skipped: ReadonlySet<string>; landed: number } {
    const wide = new Set(writes.map(({ column }) => column)).size > 1;
    const { name: table, entered } = this.table();
    const skipped = new Set<string>();
    const edits: Edit[] = [];
    const added = new Map<number, Record<string, string>>();
    let landed = 0;
    for (const { row, column: index, text } of writes) {
      const column = this.columnAt(index);
      if (column === undefined) continue;
      if (column.role === 'made' || (column.role === 'computed' && wide)) {
        skipped.add(column.name);
        continue;
      }
      const slot = this.layer.slotAt(row);
      if (slot !== undefined && slot !== SPARE) {
        edits.push({ edit: 'cell', table, row: slot, column: column.name, entry: text });
        landed += 1;
      } else if (entered && text.trim() !== '') {
        const entries = added.get(row) ?? {};
        entries[column.name] = text;
        added.set(row, entries);
        landed += 1;
      }
    }
    for (const entries of added.values()) edits.push({ edit: 'insert row', table, entries });
    return { edits, skipped, landed };
  }

  private whereRefused(refusal: { readonly row?: number; readonly column?: string }): string {
    const { row, column } = refusal;
    if (column === undefined) return '';
    const table = this.table().name;
    const known = row !== undefined && this.workbook().rows(table).includes(row);
    const name = known ? this.workbook().rowName(table, row) : 'a new row';
    return `In ${name}, ${column}: `;
  }

  private selectWritten(area: Rectangle, writes: readonly Write[]): void {
    const bottom = writes.reduce((most, { row }) => Math.max(most, row), area.top);
    const right = writes.reduce((most, { column }) => Math.max(most, column), area.left);
    const { rows } = this.layer.bounds();
    this.layer.select({
      anchor: { row: area.top, column: area.left },
      head: { row: Math.min(bottom, rows - 1), column: right },
    });
  }
}
