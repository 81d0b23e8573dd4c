// The cells of the sheet on screen by position, and the one way in which acts write to them: as one step, all or nothing, with
// the cell named where it failed.

import {
  type Book,
  type CellView,
  type ColumnView,
  type Command,
  cellView,
  type Done,
  type Message,
  type Refusal,
  rowName,
  rowWithId,
  type SheetView,
} from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { columnOf } from '../store/sheets.ts';
import { withFetched } from '../store/wanted.ts';
import type { RangeLayer } from './range-layer.ts';
import type { Corner } from './ranges.ts';
import { isRow, type RowHandle } from './row-handle.ts';

export class SheetCells {
  readonly book: Book;
  readonly layer: RangeLayer;
  readonly #sheet: () => SheetView;

  constructor(book: Book, sheet: () => SheetView, layer: RangeLayer) {
    this.book = book;
    this.#sheet = sheet;
    this.layer = layer;
  }

  get sheet(): SheetView {
    return this.#sheet();
  }

  column(index: number): ColumnView | undefined {
    return columnOf(this.sheet, this.layer.columnAt(index));
  }

  /** The row of the sheet at a position; undefined for the empty one and for heads. */
  row(index: number): RowHandle | undefined {
    const row = this.layer.rowAt(index);
    return row !== undefined && isRow(row) ? row : undefined;
  }

  cell({ row: rowIndex, column: columnIndex }: Corner): CellView | undefined {
    const row = this.row(rowIndex);
    const column = this.layer.columnAt(columnIndex);
    return row === undefined || column === undefined ? undefined : cellView(this.book, this.sheet.id, row.slot, column);
  }

  /** Types a text into a cell. */
  typing(row: RowHandle, column: string, entry: string): Command {
    return { command: 'set cell', sheet: this.sheet.id, row: row.id, column, entry };
  }

  /** Does commands as one step, then goes on; or says why nothing was done, and where it failed. */
  write(commands: readonly Command[], said: Message, nothing: string, then: (done: Done) => void): void {
    withFetched<Done | Refusal>(
      () => change(commands, said, { quietly: true }),
      ({ refused }) => refused,
      (done) => {
        if (done.refused) tell(`${nothing} ${this.#whereRefused(done)}${done.why}`, 'refusal');
        else then(done);
      },
    );
  }

  #whereRefused({ row, column: columnId }: Refusal): string {
    const { sheet } = this;
    const column = columnOf(sheet, columnId);
    if (column === undefined) return '';
    const slot = row === undefined ? undefined : rowWithId(this.book, sheet.id, row);
    return `In ${slot === undefined ? 'a new row' : rowName(this.book, sheet.id, slot)}, ${column.name}: `;
  }
}
