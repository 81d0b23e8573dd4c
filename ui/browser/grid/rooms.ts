// The room that the figures of each column need to stand under each other on the decimal mark. sheet-grid.ts asks and tells it
// what changed; room once made stays until the columns are drawn anew.

import { type Book, cellView, rows, type SheetView, settings } from '../../../engine/index.ts';
import { columnOf, isFigure } from '../store/sheets.ts';
import { type Figure, NO_ROOM, type Room, roomFor, widerRoom } from './figures.ts';

/** Figures of so many rows decide where a column's decimal mark stands. */
const ALIGNED_ROWS = 500;

export class ColumnRooms {
  readonly #book: Book;
  readonly #sheet: () => SheetView;
  readonly #rooms = new Map<string, Room>();

  constructor(book: Book, sheet: () => SheetView) {
    this.#book = book;
    this.#sheet = sheet;
  }

  room(column: string): Room {
    const known = this.#rooms.get(column);
    if (known !== undefined) return known;
    const sheet = this.#sheet();
    const view = columnOf(sheet, column);
    const first = rows(this.#book, sheet.id).subarray(0, ALIGNED_ROWS);
    const room = view !== undefined && isFigure(view) ? roomFor(this.#figures(column, first), this.#decimal) : NO_ROOM;
    this.#rooms.set(column, room);
    return room;
  }

  /** Makes room for what changed in some rows of a column; whether its figures have to move. */
  widen(column: string, slots: Int32Array): boolean {
    const before = this.#rooms.get(column);
    if (before === undefined || before === NO_ROOM) return false;
    const now = widerRoom(before, roomFor(this.#figures(column, slots.subarray(0, ALIGNED_ROWS)), this.#decimal));
    this.#rooms.set(column, now);
    return isOther(before, now);
  }

  /** Makes room for a column in which all may have changed; whether its figures have to move. */
  renew(column: string): boolean {
    const before = this.#rooms.get(column);
    if (before === undefined) return false;
    this.#rooms.delete(column);
    return isOther(before, this.room(column));
  }

  clear(): void {
    this.#rooms.clear();
  }

  get #decimal(): '.' | ',' {
    return settings(this.#book).writing?.decimal ?? '.';
  }

  *#figures(column: string, slots: Int32Array): Iterable<Figure> {
    for (const slot of slots) yield cellView(this.#book, this.#sheet().id, slot, column);
  }
}

function isOther(a: Room, b: Room): boolean {
  return a.fraction !== b.fraction || a.unit !== b.unit || a.ends !== b.ends;
}
