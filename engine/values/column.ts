// Column storage: one typed array of values, one state a cell. Numbers, dates (civil days) and yes/no (1/0) are doubles;
// texts (codes of a dictionary) and links (row slots) are 32-bit whole numbers. A faulty cell holds the number of its
// error. Storage knows nothing of types beyond that; calculation and document read and write it.

import type { SpareArrays } from './spare-arrays.ts';

export const FILLED = 0;
export const BLANK = 1;
export const FAULT = 2;

/** Who may write a piece of storage: whoever holds the token it carries. A branch shares what it has not written yet. */
export type Token = Readonly<Record<string, never>>;

let writes = 0;

/** A number that nothing was stamped with before: a column or set of rows changed since its stamp was another. */
export function nextStamp(): number {
  writes += 1;
  return writes;
}

const NONE = new Float64Array(0);
const NO_STATES = new Uint8Array(0);

export class Column {
  values: Float64Array | Int32Array;
  states: Uint8Array;
  /** Cells that are not FILLED; 0 lets kernels skip the states. */
  exceptions = 0;
  /** Another after every write, in whatever branch, so that what was gathered from a column knows when it is stale. */
  stamp = nextStamp();
  length = 0;
  readonly whole: boolean;
  owner: Token | undefined;

  /** `whole`: holds text codes or row slots rather than doubles. */
  constructor(whole: boolean, owner?: Token) {
    this.whole = whole;
    this.owner = owner;
    this.values = whole ? new Int32Array(8) : new Float64Array(8);
    this.states = new Uint8Array(8);
  }

  /** The same cells in arrays of their own. */
  copy(owner: Token, spare?: SpareArrays): Column {
    const copy = new Column(this.whole, owner);
    copy.values = spare?.copy(this.values) ?? this.values.slice();
    copy.states = spare?.copy(this.states) ?? this.states.slice();
    copy.exceptions = this.exceptions;
    copy.stamp = this.stamp;
    copy.length = this.length;
    return copy;
  }

  /** Makes room for slots up to `length`; new cells are blank. */
  grow(length: number): void {
    if (length <= this.length) return;
    if (length > this.states.length) this.makeRoom(Math.max(length, this.states.length * 2));
    if (length === this.length + 1) {
      this.states[this.length] = BLANK;
      this.values[this.length] = 0;
    } else {
      this.states.fill(BLANK, this.length, length);
      this.values.fill(0, this.length, length);
    }
    this.exceptions += length - this.length;
    this.length = length;
    this.stamp = nextStamp();
  }

  /** Makes room for so many cells, of which none is there yet: many that come one after another need not be moved then. */
  makeRoom(room: number): void {
    if (room <= this.states.length) return;
    const values = this.whole ? new Int32Array(room) : new Float64Array(room);
    values.set(this.values);
    const states = new Uint8Array(room);
    states.set(this.states);
    this.values = values;
    this.states = states;
  }

  /** Makes it so many cells long: those that stay hold what they held, further ones are filled with nought. */
  resize(length: number): void {
    const before = this.length;
    if (length > before) {
      const { exceptions } = this;
      this.grow(length);
      this.states.fill(FILLED, before, length);
      this.exceptions = exceptions;
      return;
    }
    for (let row = length; row < before && this.exceptions > 0; row++)
      if (this.states[row] !== FILLED) this.exceptions--;
    this.length = length;
    this.stamp = nextStamp();
  }

  /** Blanks every cell. */
  blank(): void {
    this.states.fill(BLANK, 0, this.length);
    this.values.fill(0, 0, this.length);
    this.exceptions = this.length;
    this.stamp = nextStamp();
  }

  /** Fills its cells, as many as there are, with the values given. */
  fill(values: Int32Array | Float64Array): void {
    this.values.set(values.subarray(0, this.length));
    this.states.fill(FILLED, 0, this.length);
    this.exceptions = 0;
    this.stamp = nextStamp();
  }

  /** Writes one cell; true where it changed. A blank's value is kept at 0; minus zero becomes zero. */
  write(row: number, value: number, state: number): boolean {
    const kept = state === BLANK ? 0 : value + 0;
    if (this.states[row] === state && this.values[row] === kept) return false;
    this.put(row, kept, state);
    this.stamp = nextStamp();
    return true;
  }

  /** Puts a value as it is kept in a cell; `touched` is to be called after the last. */
  put(row: number, kept: number, state: number): void {
    const before = this.states[row];
    if (before !== state) {
      if (before === FILLED) this.exceptions++;
      else if (state === FILLED) this.exceptions--;
      this.states[row] = state;
    }
    this.values[row] = kept;
  }

  /** Writes the same value, as it is kept, to many cells. */
  writeSame(rows: Int32Array, kept: number, state: number): void {
    const { values, states } = this;
    let filled = 0;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i] as number;
      if (states[row] === FILLED) filled++;
      states[row] = state;
      values[row] = kept;
    }
    this.exceptions += state === FILLED ? filled - rows.length : filled;
    this.stamp = nextStamp();
  }

  /** To be called after writing to `values` directly. */
  touched(): void {
    this.stamp = nextStamp();
  }

  /** Gives its arrays away to be used again; nothing can be read from it afterwards. */
  release(spare: SpareArrays): void {
    spare.keep(this.values);
    spare.keep(this.states);
    this.values = NONE;
    this.states = NO_STATES;
    this.length = 0;
  }

  /** Bytes held, room included. */
  bytes(): number {
    return this.values.byteLength + this.states.byteLength;
  }
}
