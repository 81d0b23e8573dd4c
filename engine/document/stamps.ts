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

  of(thing: string): Stamp {
    return this.#latest.get(thing) ?? BEFORE_ALL;
  }

  /** Notes a change; an earlier one than is known leaves it. */
  note(thing: string, stamp: Stamp): void {
    if (isLater(stamp, this.of(thing))) this.#latest.set(thing, stamp);
  }
}
