// Column storage: one typed array of values, one state a cell. Numbers, dates (civil days) and yes/no (1/0) are doubles;
// texts (codes of a dictionary) and links (row slots) are 32-bit whole numbers. A faulty cell holds the number of its
// error. Storage knows nothing of types beyond that; recalculation and workbook read and write it.

export const FILLED = 0;
export const BLANK = 1;
export const FAULT = 2;

export class Column {
  values: Float64Array | Int32Array;
  states: Uint8Array;
  /** Cells that are not FILLED; 0 lets kernels skip the states. */
  exceptions = 0;
  /** Rises with every write, so that what was gathered from a column knows when it is stale. */
  version = 0;
  length = 0;
  readonly whole: boolean;

  /** `whole`: holds text codes or row slots rather than doubles. */
  constructor(whole: boolean) {
    this.whole = whole;
    this.values = whole ? new Int32Array(8) : new Float64Array(8);
    this.states = new Uint8Array(8);
  }

  /** Makes room for slots up to `length`; new cells are blank. */
  grow(length: number): void {
    if (length <= this.length) return;
    if (length > this.states.length) {
      const room = Math.max(length, this.states.length * 2);
      const values = this.whole ? new Int32Array(room) : new Float64Array(room);
      values.set(this.values);
      const states = new Uint8Array(room);
      states.set(this.states);
      this.values = values;
      this.states = states;
    }
    this.states.fill(BLANK, this.length, length);
    this.values.fill(0, this.length, length);
    this.exceptions += length - this.length;
    this.length = length;
    this.version++;
  }

  /** Writes one cell; true where it changed. A blank's value is kept at 0; minus zero becomes zero. */
  write(row: number, value: number, state: number): boolean {
    const before = this.states[row];
    const kept = state === BLANK ? 0 : value + 0;
    if (before === state && this.values[row] === kept) return false;
    if (before !== state) {
      if (before === FILLED) this.exceptions++;
      else if (state === FILLED) this.exceptions--;
      this.states[row] = state;
    }
    this.values[row] = kept;
    this.version++;
    return true;
  }

  /** Bytes held, room included. */
  bytes(): number {
    return this.values.byteLength + this.states.byteLength;
  }
}
