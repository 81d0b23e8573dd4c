// The numbers of groups by their key values: a table of hashed places over plain arrays, for looking a group up is what a
// season does most. Key values are numbers: rows, days, folded texts, amounts. Called by group-index.ts.

const bits = new Int32Array(2);
const asDouble = new Float64Array(bits.buffer);

/** Nothing stands at a place. */
const FREE = -1;
const FIRST_ROOM = 16;
/** What a table begins with; it makes room before anything is put in. */
const NO_KEYS = new Float64Array(0);
const ONE_FREE = Int32Array.of(FREE);

export class KeyTable {
  /** How many key values a group has. */
  readonly #width: number;
  #count = 0;
  /** Group by group. */
  #keys = NO_KEYS;
  /** Groups by hashed place; at least twice as many places as groups, a power of two. */
  #places = ONE_FREE;
  /** The group found last. Rows mostly ask in the order in which groups came, so it is the same again, or the one after it. */
  #last = 0;

  constructor(width: number) {
    this.#width = width;
  }

  get count(): number {
    return this.#count;
  }

  /** Forgets every group and keeps its room. */
  clear(): void {
    this.#count = 0;
    this.#last = 0;
    this.#places.fill(FREE);
  }

  copy(): KeyTable {
    const copy = new KeyTable(this.#width);
    copy.#count = this.#count;
    copy.#keys = this.#keys.slice();
    copy.#places = this.#places.slice();
    return copy;
  }

  /** The value of key `k` of a group; 0 of one that isn't there. */
  key(group: number, k: number): number {
    return this.#keys[group * this.#width + k] ?? 0;
  }

  /** The group whose key values these begin with; -1 where none has them. */
  find(values: ArrayLike<number>): number {
    const width = this.#width;
    const places = this.#places;
    const keys = this.#keys;
    const last = places.length - 1;
    let hash = 0;
    for (let k = 0; k < width; k++) hash = mixed(hash, values[k] ?? 0);
    for (let place = hash & last; ; place = (place + 1) & last) {
      const group = places[place] as number;
      if (group === FREE) return FREE;
      let k = 0;
      while (k < width && keys[group * width + k] === (values[k] ?? 0)) k++;
      if (k === width) return group;
    }
  }

  /** As find, for keys of one value. */
  findOne(value: number): number {
    const keys = this.#keys;
    const before = this.#last;
    if (before < this.#count && keys[before] === value) return before;
    if (before + 1 < this.#count && keys[before + 1] === value) return this.#found(before + 1);
    const places = this.#places;
    const last = places.length - 1;
    for (let place = mixed(0, value) & last; ; place = (place + 1) & last) {
      const group = places[place] as number;
      if (group === FREE) return FREE;
      if (keys[group] === value) return this.#found(group);
    }
  }

  /** As find, for keys of two values. */
  findTwo(one: number, other: number): number {
    const keys = this.#keys;
    const before = this.#last;
    if (before < this.#count && keys[before * 2 + 1] === other && keys[before * 2] === one) return before;
    if (before + 1 < this.#count && keys[before * 2 + 3] === other && keys[before * 2 + 2] === one)
      return this.#found(before + 1);
    const places = this.#places;
    const last = places.length - 1;
    for (let place = mixed(mixed(0, one), other) & last; ; place = (place + 1) & last) {
      const group = places[place] as number;
      if (group === FREE) return FREE;
      if (keys[group * 2] === one && keys[group * 2 + 1] === other) return this.#found(group);
    }
  }

  #found(group: number): number {
    this.#last = group;
    return group;
  }

  /** A new group for key values that none has; gives its number, the next. */
  add(values: ArrayLike<number>): number {
    const group = this.#count;
    const width = this.#width;
    this.#count += 1;
    if (this.#count * 2 > this.#places.length) this.#grow();
    for (let k = 0; k < width; k++) this.#keys[group * width + k] = (values[k] ?? 0) + 0;
    this.#put(group);
    return group;
  }

  #put(group: number): void {
    const places = this.#places;
    const last = places.length - 1;
    let hash = 0;
    for (let k = 0; k < this.#width; k++) hash = mixed(hash, this.key(group, k));
    let place = hash & last;
    while (places[place] !== FREE) place = (place + 1) & last;
    places[place] = group;
  }

  #grow(): void {
    const room = Math.max(FIRST_ROOM, this.#places.length);
    const keys = new Float64Array(room * this.#width);
    keys.set(this.#keys);
    this.#keys = keys;
    this.#places = new Int32Array(room * 2).fill(FREE);
    for (let group = 0; group < this.#count - 1; group++) this.#put(group);
  }
}

/** A hash with one more value in it. */
export function mixed(hash: number, value: number): number {
  const whole = value | 0;
  let mixing = hash;
  if (whole === value) mixing ^= whole;
  else {
    asDouble[0] = value;
    mixing ^= (bits[0] as number) ^ Math.imul(bits[1] as number, 0x85ebca6b);
  }
  mixing = Math.imul(mixing ^ (mixing >>> 16), 0x9e3779b1);
  return mixing ^ (mixing >>> 15);
}
