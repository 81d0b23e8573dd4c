// What is done with a selected range: copy, paste, fill down. Every write goes through the workbook's own entry rules as one
// step of undo, all or nothing; what can't be done is said with the cell it failed at.

import {
  type Book,
  type CellView,
  type ColumnView,
  type Command,
  cellView,
  type Done,
  isoDate,
  type Message,
  message,
  type Refusal,
  rowName,
  rowWithId,
  type SheetView,
} from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { announce, tell } from '../store/notices.ts';
import { columnOf } from '../store/sheets.ts';
import { withUnits } from '../store/units.ts';
import type { RangeLayer } from './range-layer.ts';
import { cellCount, fillDownWrites, pasteWrites, type Rectangle, type Write } from './ranges.ts';
import { isSpare } from './row-handle.ts';
import { fromTabSeparated, toTabSeparated } from './tab-separated.ts';

export class RangeActs {
  private readonly book: Book;
  private readonly sheet: () => SheetView;
  private readonly layer: RangeLayer;

  constructor(book: Book, sheet: () => SheetView, layer: RangeLayer) {
    this.book = book;
    this.sheet = sheet;
    this.layer = layer;
  }

  /** The range as text for the clipboard; undefined where nothing is selected. */
  copied(): string | undefined {
    const area = this.layer.rectangle();
    if (area === undefined) return undefined;
    const rows: string[][] = [];
    for (let row = area.top; row <= area.bottom; row += 1) {
      if (this.isNew(row)) continue;
      const fields: string[] = [];
      for (let column = area.left; column <= area.right; column += 1) fields.push(this.copyText(row, column));
      rows.push(fields);
    }
    announce(cellCount(area) === 1 ? 'Copied.' : `Copied ${cellCount(area)} cells.`);
    return toTabSeparated(rows);
  }

  /** Pastes text from the clipboard at the selection. */
  paste(text: string): void {
    const area = this.layer.rectangle();
    const block = fromTabSeparated(text);
    if (area === undefined || block.length === 0) return;
    const writes = pasteWrites(block, area, this.layer.bounds().columns);
    const { commands, skipped, landed } = this.commandsFor(writes);
    if (commands.length === 0) {
      tell('Nothing pasted: these cells are filled by their formulas.', 'refusal');
      return;
    }
    this.write(commands, countedMessage('paste', landed), 'Nothing pasted.', () => {
      const left = skipped.size === 0 ? '' : ` Left to their formulas: ${[...skipped].join(', ')}.`;
      if (landed > 1 || left !== '') tell(`Pasted ${landed === 1 ? 'a cell' : `${landed} cells`}.${left}`);
      else announce('Pasted.');
      this.selectWritten(area, writes);
    });
  }

  fillDown(): void {
    const area = this.layer.rectangle();
    if (area === undefined) return;
    // One cell alone takes the text of the one above.
    const whole: Rectangle = area.top === area.bottom ? { ...area, top: area.top - 1 } : area;
    if (whole.top < 0) return;
    const writes = fillDownWrites(whole, ({ row, column }) => this.cellAt(row, column)?.entry ?? '');
    const { commands, landed } = this.commandsFor(writes.filter(({ row }) => !this.isNew(row)));
    if (commands.length === 0) return;
    this.write(commands, countedMessage('fill', landed), 'Nothing filled.', () =>
      announce(landed === 1 ? 'Filled a cell.' : `Filled ${landed} cells.`),
    );
  }

  /** Does commands as one step, then goes on; or says why nothing was done, and where it failed. */
  private write(commands: readonly Command[], said: Message, nothing: string, then: () => void): void {
    withUnits<Done | Refusal>(
      () => change(commands, said, { quietly: true }),
      ({ refused }) => refused,
      (done) => {
        if (done.refused) tell(`${nothing} ${this.whereRefused(done)}${done.why}`, 'refusal');
        else then();
      },
    );
  }

  private isNew(index: number): boolean {
    const row = this.layer.rowAt(index);
    return row !== undefined && isSpare(row);
  }

  private columnAt(index: number): ColumnView | undefined {
    return columnOf(this.sheet(), this.layer.columnAt(index));
  }

  private cellAt(rowIndex: number, columnIndex: number): CellView | undefined {
    const row = this.layer.rowAt(rowIndex);
    const column = this.layer.columnAt(columnIndex);
    if (row === undefined || isSpare(row) || column === undefined) return undefined;
    return cellView(this.book, this.sheet().id, row.slot, column);
  }

  /** A figure in the column's unit goes out as a bare number at full length, a date as 2027-03-15, the rest as shown. */
  private copyText(row: number, index: number): string {
    const cell = this.cellAt(row, index);
    const column = this.columnAt(index);
    if (cell === undefined || column === undefined) return '';
    if (column.type?.kind === 'date' && typeof cell.value === 'number') return isoDate(cell.value);
    const inColumnUnit = cell.unit === '' && cell.fullUnit === column.unit;
    return cell.number !== undefined && inColumnUnit ? String(Number(cell.number.toPrecision(15))) : cell.text;
  }

  /**
   * Commands for the writes. Rows past the last become new rows. Where a block covers several columns, computed ones among
   * them keep their formulas; a block of one column, put on a computed column, is meant to be typed over it.
   */
  private commandsFor(writes: readonly Write[]): {
    readonly commands: readonly Command[];
    readonly skipped: ReadonlySet<string>;
    readonly landed: number;
  } {
    const wide = new Set(writes.map(({ column }) => column)).size > 1;
    const { id: sheet, entered } = this.sheet();
    const skipped = new Set<string>();
    const commands: Command[] = [];
    const added = new Map<number, Record<string, string>>();
    let landed = 0;
    for (const { row: index, column: columnIndex, text } of writes) {
      const column = this.columnAt(columnIndex);
      if (column === undefined) continue;
      if (column.role === 'made' || (column.role === 'computed' && wide)) {
        skipped.add(column.name);
        continue;
      }
      const row = this.layer.rowAt(index);
      if (row !== undefined && !isSpare(row)) {
        commands.push({ command: 'set cell', sheet, row: row.id, column: column.id, entry: text });
        landed += 1;
      } else if (entered && text.trim() !== '') {
        const entries = added.get(index) ?? {};
        entries[column.id] = text;
        added.set(index, entries);
        landed += 1;
      }
    }
    for (const entries of added.values()) commands.push({ command: 'insert row', sheet, entries });
    return { commands, skipped, landed };
  }

  private whereRefused({ row, column: columnId }: Refusal): string {
    const sheet = this.sheet();
    const column = columnOf(sheet, columnId);
    if (column === undefined) return '';
    const slot = row === undefined ? undefined : rowWithId(this.book, sheet.id, row);
    return `In ${slot === undefined ? 'a new row' : rowName(this.book, sheet.id, slot)}, ${column.name}: `;
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

function countedMessage(what: 'paste' | 'fill', count: number): Message {
  return count === 1 ? message(`${what} cell`) : message(`${what} cells`, { count });
}
