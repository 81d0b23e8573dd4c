// The rows of one table in a frame: which slots live, and their place in order where that is not the slots' own. Plain
// storage with its plainest questions; frame.ts decides who may write it.

import { nextStamp, type Token } from '../values/column.ts';

/** Slots in the order in which they came free, each found and taken at once however many there are. */
class FreeSlots {
  /** From `#first` on; those that were taken by themselves stand here still and are passed over. */
  #slots: number[] = [];
  #first = 0;
  /** By slot: 1 where it is free. */
  #isFree = new Uint8Array(0);

  copy(): FreeSlots {
    const copy = new FreeSlots();
    copy.#slots = this.#slots.slice(this.#first);
    copy.#isFree = this.#isFree.slice();
    return copy;
  }

  add(slot: number): void {
    if (slot >= this.#isFree.length) {
      const room = new Uint8Array(Math.max(slot + 1, this.#isFree.length * 2));
      room.set(this.#isFree);
      this.#isFree = room;
    }
    this.#isFree[slot] = 1;
    this.#slots.push(slot);
  }

  take(slot: number): void {
    if (slot < this.#isFree.length) this.#isFree[slot] = 0;
  }

  /** Takes the one that has been free for longest; undefined where there is none. */
  next(): number | undefined {
    while (this.#first < this.#slots.length) {
      const slot = this.#slots[this.#first++] as number;
      if (this.#isFree[slot] !== 1) continue;
      this.#isFree[slot] = 0;
      return slot;
    }
    this.clear();
    return undefined;
  }

  clear(): void {
    if (this.#slots.length === 0) return;
    this.#slots = [];
    this.#first = 0;
    this.#isFree.fill(0);
  }
}

export class TableRows {
  /** Slots in use, dead ones included. */
  length = 0;
  live = new Uint8Array(8);
  /** How often each slot came to life. */
  births = new Uint32Array(8);
  liveCount = 0;
  /** Another after rows came, went or moved. */
  stamp = nextStamp();
  /** Rising in the order of the rows; undefined while the slots stand in that order themselves. */
  labels: Float64Array | undefined;
  /** The slots are known to stand in the table's order, whatever that rests on. */
  inOrder = false;
  /** Dead slots that a new row may take, and those that may be taken once all who knew the row have heard that it went. */
  #free = new FreeSlots();
  #freed = new Set<number>();
  owner: Token | undefined;

  constructor(owner?: Token) {
    this.owner = owner;
  }

  copy(owner: Token): TableRows {
    const copy = new TableRows(owner);
    copy.length = this.length;
    copy.live = this.live.slice();
    copy.births = this.births.slice();
    copy.liveCount = this.liveCount;
    copy.stamp = this.stamp;
    copy.labels = this.labels?.slice();
    copy.inOrder = this.inOrder;
    copy.#free = this.#free.copy();
    copy.#freed = new Set(this.#freed);
    return copy;
  }

  /** Makes slots up to `length`; the new ones are dead. */
  grow(length: number): void {
    if (length <= this.length) return;
    if (length > this.live.length) {
      const room = Math.max(length, this.live.length * 2);
      const live = new Uint8Array(room);
      live.set(this.live);
      this.live = live;
      const births = new Uint32Array(room);
      births.set(this.births);
      this.births = births;
      if (this.labels !== undefined) {
        const labels = new Float64Array(room);
        labels.set(this.labels);
        this.labels = labels;
      }
    }
    this.length = length;
  }

  /** Brings a slot to life or lets it die; true where that changed. */
  setLive(row: number, alive: boolean): boolean {
    if ((this.live[row] === 1) === alive) return false;
    this.live[row] = alive ? 1 : 0;
    this.liveCount += alive ? 1 : -1;
    this.inOrder = false;
    if (alive) {
      this.births[row] = (this.births[row] as number) + 1;
      this.#free.take(row);
      this.#freed.delete(row);
    } else this.#freed.add(row);
    this.stamp = nextStamp();
    return true;
  }

  /** So many rows in the table's order take the place of those there were. */
  remake(count: number): void {
    this.grow(count);
    this.length = count;
    this.live.fill(1, 0, count);
    this.live.fill(0, count);
    this.liveCount = count;
    this.inOrder = true;
    this.#free.clear();
    this.#freed.clear();
    this.stamp = nextStamp();
  }

  /** A slot that no row has, taken from the dead ones where there are any. */
  takeSlot(): number {
    return this.#free.next() ?? this.length;
  }

  /** Lets new rows take the slots of those that died. */
  releaseSlots(): void {
    for (const slot of this.#freed) this.#free.add(slot);
    this.#freed.clear();
  }

  /** Says where a row stands: rows with smaller labels come before it. */
  setLabel(row: number, label: number): void {
    if (this.labels === undefined) {
      this.labels = new Float64Array(this.live.length);
      for (let slot = 0; slot < this.length; slot++) this.labels[slot] = slot;
    }
    this.labels[row] = label;
  }

  /** To be called after rows were given other places. */
  reordered(): void {
    this.stamp = nextStamp();
  }

  bytes(): number {
    return this.live.byteLength + (this.labels?.byteLength ?? 0);
  }
}
