// Who changed a thing last, and when: what decides between two people's changes of the same thing, whatever order they
// arrive in. Things are named by texts: a cell, a row's place, a formula, the title.

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

export class Stamps {
  readonly #latest = new Map<string, Stamp>();
  /** The latest change of a cell of a row by each who changed one. */
  readonly #ofRows = new Map<string, Map<string, Stamp>>();

  of(thing: string): Stamp {
    return this.#latest.get(thing) ?? BEFORE_ALL;
  }

  /** Notes a change; an earlier one than is known leaves it. */
  note(thing: string, stamp: Stamp): void {
    if (isLater(stamp, this.of(thing))) this.#latest.set(thing, stamp);
  }

  /** Notes that some cell of a row changed, of whatever column. */
  noteRow(row: string, stamp: Stamp): void {
    const byActor = this.#ofRows.get(row) ?? new Map<string, Stamp>();
    this.#ofRows.set(row, byActor);
    if (isLater(stamp, byActor.get(stamp.actor) ?? BEFORE_ALL)) byActor.set(stamp.actor, stamp);
  }

  /** Whether another person changed a cell of a row after this moment. */
  isChangedSince(row: string, stamp: Stamp): boolean {
    return [...(this.#ofRows.get(row)?.values() ?? [])].some((one) => one.actor !== stamp.actor && isLater(one, stamp));
  }
}
