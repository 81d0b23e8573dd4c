// Who changed a thing last, and when: what decides between two people's changes of the same thing, whatever order they
// arrive in. Things are named by texts: a cell, a row's place, a formula, the title.

import { cellOfThing, cellThing, rowPlaceThing, rowThing, wholeRowThing } from './things.ts';
import type { RowLine } from './transaction.ts';

/** Later wins; of two at the same time the actor whose name sorts later. */
export interface Stamp {
  readonly time: number;
  readonly actor: string;
}

/** How an operation comes: with the stamp of who did it, and whether it must give way to later changes known here. */
export interface Arrival {
  readonly stamp: Stamp;
  readonly remote: boolean;
}

/** Before every change: what stood in the file. */
export const BEFORE_ALL: Stamp = { time: Number.NEGATIVE_INFINITY, actor: '' };

export function isLater(a: Stamp, b: Stamp): boolean {
  return a.time === b.time ? a.actor > b.actor : a.time > b.time;
}

/** A cell that changed by itself. */
interface CellPlace {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
}

/** So many changed cells wait at most to be named. */
const MOST_WAITING = 1 << 16;

/** Rows that came or went at once, to be noted thing by thing once somebody asks about one of them. */
interface Block {
  readonly stamp: Stamp;
  /** They came back, and so to a place of theirs. */
  readonly cameBack?: true;
  /** What the cells of new rows are in; undefined for rows that went or came back, whose cells nobody changed. */
  readonly columns: readonly string[] | undefined;
  readonly rows: readonly RowLine[];
}

export class Stamps {
  readonly #latest = new Map<string, Stamp>();
  /** The latest change of a cell of a row by each who changed one. */
  readonly #ofRows = new Map<string, Map<string, Stamp>>();
  /** Cells that changed one by one, and when: their names too are made only once somebody asks. */
  #cells: CellPlace[] = [];
  #when: Stamp[] = [];
  /** By sheet: names for all the cells of an import are made only where two people's changes meet there. */
  readonly #blocks = new Map<string, Block[]>();
  /** By sheet and row, of blocks that somebody has asked about. */
  readonly #waiting = new Map<string, Map<string, Block[]>>();
  /** When rows first came. */
  readonly #births = new Map<string, Stamp>();
  #newest = Number.NEGATIVE_INFINITY;

  /** The time of the latest change of all. */
  get newest(): number {
    return this.#newest;
  }

  /**
   * The latest change of each thing, as far as another's may still come that is earlier: not what a new row came with, for
   * whoever changes that knows the row, and so changes it later.
   */
  *lasting(): Iterable<readonly [thing: string, stamp: Stamp]> {
    this.#nameCells();
    for (const [sheet, blocks] of this.#blocks) for (const block of blocks) this.#noteKnown(sheet, block);
    for (const [sheet, rows] of this.#waiting)
      for (const blocks of rows.values()) for (const block of blocks) this.#noteKnown(sheet, block);
    for (const [thing, stamp] of this.#latest) {
      const cell = cellOfThing(thing);
      const birth = this.#births.get(cell === undefined ? thing : wholeRowThing(cell.sheet, cell.row));
      if (birth?.time !== stamp.time || birth.actor !== stamp.actor) yield [thing, stamp];
    }
  }

  #noteKnown(sheet: string, { stamp, columns, cameBack, rows }: Block): void {
    if (columns !== undefined) return;
    for (const { row } of rows) {
      this.note(wholeRowThing(sheet, row), stamp);
      if (cameBack === true) this.note(rowPlaceThing(sheet, row), stamp);
    }
  }

  /** Notes that a row came that nobody knew before. */
  noteBirth(sheet: string, row: string, stamp: Stamp): void {
    this.#births.set(wholeRowThing(sheet, row), stamp);
  }

  /** Notes the latest change of a thing as it was kept. */
  noteKept(thing: string, stamp: Stamp): void {
    const cell = cellOfThing(thing);
    if (cell === undefined) this.note(thing, stamp);
    else this.noteCell(cell, stamp);
  }

  /** Notes the time of changes of which nothing else is kept. */
  noteTime(time: number): void {
    if (time > this.#newest) this.#newest = time;
  }

  /** The latest change of a thing; `row` is the row that it belongs to, if any. */
  of(thing: string, row?: { readonly sheet: string; readonly row: string }): Stamp {
    if (row !== undefined) {
      this.#nameCells();
      this.#unfold(row.sheet, row.row);
    }
    return this.#latest.get(thing) ?? BEFORE_ALL;
  }

  /** Notes a change; an earlier one than is known leaves it. */
  note(thing: string, stamp: Stamp): void {
    this.noteTime(stamp.time);
    if (isLater(stamp, this.#latest.get(thing) ?? BEFORE_ALL)) this.#latest.set(thing, stamp);
  }

  /** Notes that a cell changed, and with it its row. */
  noteCell(cell: CellPlace, stamp: Stamp): void {
    if (!isLater(stamp, BEFORE_ALL)) return;
    this.noteTime(stamp.time);
    this.#cells.push(cell);
    this.#when.push(stamp);
    if (this.#cells.length >= MOST_WAITING) this.#nameCells();
  }

  #nameCells(): void {
    this.#cells.forEach((cell, i) => {
      this.#nameCell(cell, this.#when[i] ?? BEFORE_ALL);
    });
    if (this.#cells.length > 0) [this.#cells, this.#when] = [[], []];
  }

  #nameCell({ sheet, row, column }: CellPlace, stamp: Stamp): void {
    this.note(cellThing(sheet, row, column), stamp);
    const thing = rowThing(sheet, row);
    const byActor = this.#ofRows.get(thing) ?? new Map<string, Stamp>();
    this.#ofRows.set(thing, byActor);
    if (isLater(stamp, byActor.get(stamp.actor) ?? BEFORE_ALL)) byActor.set(stamp.actor, stamp);
  }

  /** Notes that rows came or went with all that they hold. */
  noteRows(sheet: string, block: Block): void {
    this.noteTime(block.stamp.time);
    const blocks = this.#blocks.get(sheet);
    if (blocks === undefined) this.#blocks.set(sheet, [block]);
    else blocks.push(block);
  }

  #unfold(sheet: string, row: string): void {
    this.#sortBlocks(sheet);
    const waiting = this.#waiting.get(sheet)?.get(row);
    if (waiting === undefined) return;
    this.#waiting.get(sheet)?.delete(row);
    for (const { stamp, columns, cameBack, rows } of waiting) {
      this.note(wholeRowThing(sheet, row), stamp);
      if (cameBack === true) this.note(rowPlaceThing(sheet, row), stamp);
      if (columns !== undefined) this.noteBirth(sheet, row, stamp);
      rows[0]?.cells.forEach((content, i) => {
        const column = columns?.[i];
        if (content === null || column === undefined) return;
        this.#nameCell({ sheet, row, column }, stamp);
      });
    }
  }

  #sortBlocks(sheet: string): void {
    const blocks = this.#blocks.get(sheet);
    if (blocks === undefined) return;
    this.#blocks.delete(sheet);
    const waiting = this.#waiting.get(sheet) ?? new Map<string, Block[]>();
    this.#waiting.set(sheet, waiting);
    for (const one of blocks) {
      for (const line of one.rows) {
        const block = { ...one, rows: [line] };
        const before = waiting.get(line.row);
        if (before === undefined) waiting.set(line.row, [block]);
        else before.push(block);
      }
    }
  }

  /** Whether another person changed a cell of a row after this moment. */
  isChangedSince(sheet: string, row: string, stamp: Stamp): boolean {
    this.#nameCells();
    this.#unfold(sheet, row);
    const byActor = this.#ofRows.get(rowThing(sheet, row))?.values() ?? [];
    return [...byActor].some((one) => one.actor !== stamp.actor && isLater(one, stamp));
  }
}
