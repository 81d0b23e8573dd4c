// The rows of one table in a frame: which slots live, and their place in order where that is not the slots' own. Plain
// storage with its plainest questions; frame.ts decides who may write it.

import { nextStamp, type Token } from '../values/column.ts';

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
    return this.#free.take(this.births) ?? this.length;
  }

  /** Lets new rows take the slots of those that died. */
  releaseSlots(): void {
    for (const slot of this.#freed) this.#free.add(slot, this.births[slot] as number);
    this.#freed.clear();
    // Rows that are taken out and come back into their own slots, again and again, leave one more line each time.
    if (this.#free.lines > 64 + 2 * (this.length - this.liveCount)) this.#free.dropPast(this.births);
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
    return this.live.byteLength + (this.labels?.byteLength ?? 0) + this.#free.lines * 16;
  }
}

/** Slots in the order in which they came free. One that came to life without being taken has been born once more, and is passed over. */
class FreeSlots {
  #slots: number[] = [];
  #births: number[] = [];
  /** Those before were taken. */
  #from = 0;

  copy(): FreeSlots {
    const copy = new FreeSlots();
    copy.#slots = this.#slots.slice(this.#from);
    copy.#births = this.#births.slice(this.#from);
    return copy;
  }

  clear(): void {
    this.#slots = [];
    this.#births = [];
    this.#from = 0;
  }

  /** `births`: how often it has come to life so far. */
  add(slot: number, births: number): void {
    this.#slots.push(slot);
    this.#births.push(births);
  }

  /** Of slots that are free, were taken, or came to life again. */
  get lines(): number {
    return this.#slots.length;
  }

  /** Leaves those that can still be taken. */
  dropPast(births: Uint32Array): void {
    const slots = this.#slots.slice(this.#from);
    const then = this.#births.slice(this.#from);
    const isFree = (slot: number, at: number): boolean => births[slot] === then[at];
    this.#slots = slots.filter(isFree);
    this.#births = then.filter((_, at) => isFree(slots[at] as number, at));
    this.#from = 0;
  }

  take(births: Uint32Array): number | undefined {
    while (this.#from < this.#slots.length) {
      const [slot, then] = [this.#slots[this.#from] as number, this.#births[this.#from] as number];
      this.#from += 1;
      if (births[slot] === then) return slot;
    }
    this.clear();
    return undefined;
  }
}
