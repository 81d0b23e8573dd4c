// Arrays of columns that nobody looks at any more, kept for the next columns to be copied. What a branch copies of a large farm is
// some tens of MB; where each branch asks the machine for that anew, the machine looks through all of memory for what is no longer
// used at every second one, which takes longer than all else. Frames have one for themselves and their branches.

/** The arrays that columns are made of. */
export type Cells = Float64Array | Int32Array | Uint8Array;

/** So much is kept and no more. */
export const MOST_SPARE_BYTES = 64 * 1024 * 1024;

export class SpareArrays {
  readonly #doubles = new Map<number, Float64Array[]>();
  readonly #whole = new Map<number, Int32Array[]>();
  readonly #states = new Map<number, Uint8Array[]>();
  #bytes = 0;

  /** Bytes kept at the moment. */
  get bytes(): number {
    return this.#bytes;
  }

  /** The same in an array of its own. */
  copy(array: Float64Array): Float64Array;
  copy(array: Int32Array): Int32Array;
  copy(array: Uint8Array): Uint8Array;
  copy(array: Float64Array | Int32Array): Float64Array | Int32Array;
  copy(array: Cells): Cells {
    const spare = this.#like(array)?.pop();
    if (spare === undefined) return array.slice();
    this.#bytes -= spare.byteLength;
    spare.set(array);
    return spare;
  }

  /** An array that nobody is to read or write from now on. */
  keep(array: Cells): void {
    if (this.#bytes + array.byteLength > MOST_SPARE_BYTES) return;
    this.#bytes += array.byteLength;
    if (array instanceof Float64Array) put(this.#doubles, array);
    else if (array instanceof Int32Array) put(this.#whole, array);
    else put(this.#states, array);
  }

  #like(array: Cells): Cells[] | undefined {
    if (array instanceof Float64Array) return this.#doubles.get(array.length);
    return array instanceof Int32Array ? this.#whole.get(array.length) : this.#states.get(array.length);
  }
}

function put<T extends Cells>(spare: Map<number, T[]>, array: T): void {
  const alike = spare.get(array.length);
  if (alike === undefined) spare.set(array.length, [array]);
  else alike.push(array);
}
