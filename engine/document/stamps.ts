// Who changed a thing last, and when: what decides between two people's changes of the same thing, whatever order they
// arrive in. Things are named by texts: a cell, a row's place, a formula, the title.

import { cellThing, rowThing, wholeRowThing } from './things.ts';
import type { RowLine } from './transaction.ts';

/** Later wins; of two at the same time the actor whose name sorts later. */
export interface Stamp {
  readonly time: number;
  readonly actor: string;
}

/** Before every change: what stood in the file. */
export const BEFORE_ALL: Stamp = { time: Number.NEGATIVE_INFINITY, actor: '' };

export function isLater(a: Stamp, b: Stamp): boolean {
  return a.time === b.time ? a.actor > b.actor : a.time > b.time;
}

/** A row that came or went with others, to be noted thing by thing once somebody asks about it. */
export interface Whole {
  readonly stamp: Stamp;
  readonly columns: readonly string[];
  readonly cells: RowLine['cells'];
}

export class Stamps {
  readonly #latest = new Map<string, Stamp>();
  /** The latest change of a cell of a row by each who changed one. */
  readonly #ofRows = new Map<string, Map<string, Stamp>>();
  /** By sheet and row: a name for each of the cells of an import is made only where two people's changes meet there. */
  readonly #whole = new Map<string, Map<string, Whole | readonly Whole[]>>();

  /** The latest change of a thing; `row` is the row that it belongs to, if any. */
  of(thing: string, row?: { readonly sheet: string; readonly row: string }): Stamp {
    if (row !== undefined) this.#unfold(row.sheet, row.row);
    return this.#latest.get(thing) ?? BEFORE_ALL;
  }

  /** Notes a change; an earlier one than is known leaves it. */
  note(thing: string, stamp: Stamp): void {
    if (isLater(stamp, this.#latest.get(thing) ?? BEFORE_ALL)) this.#latest.set(thing, stamp);
  }

  /** Notes that some cell of a row changed, of whatever column. */
  noteRow(row: string, stamp: Stamp): void {
    const byActor = this.#ofRows.get(row) ?? new Map<string, Stamp>();
    this.#ofRows.set(row, byActor);
    if (isLater(stamp, byActor.get(stamp.actor) ?? BEFORE_ALL)) byActor.set(stamp.actor, stamp);
  }

  /** Notes that a row came or went with all that it holds. */
  noteWhole(sheet: string, row: string, whole: Whole): void {
    const rows = this.#whole.get(sheet) ?? new Map<string, Whole | readonly Whole[]>();
    this.#whole.set(sheet, rows);
    const before = rows.get(row);
    rows.set(row, before === undefined ? whole : [...[before].flat(), whole]);
  }

  #unfold(sheet: string, row: string): void {
    const waiting = this.#whole.get(sheet)?.get(row);
    if (waiting === undefined) return;
    this.#whole.get(sheet)?.delete(row);
    for (const { stamp, columns, cells } of [waiting].flat()) {
      this.note(wholeRowThing(sheet, row), stamp);
      cells.forEach((content, i) => {
        if (content === null) return;
        this.note(cellThing(sheet, row, columns[i] ?? ''), stamp);
        this.noteRow(rowThing(sheet, row), stamp);
      });
    }
  }

  /** Whether another person changed a cell of a row after this moment. */
  isChangedSince(sheet: string, row: string, stamp: Stamp): boolean {
    this.#unfold(sheet, row);
    const byActor = this.#ofRows.get(rowThing(sheet, row))?.values() ?? [];
    return [...byActor].some((one) => one.actor !== stamp.actor && isLater(one, stamp));
  }
}
