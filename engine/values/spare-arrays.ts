// Arrays of columns that nobody looks at any more, kept for the next columns to be copied. What a branch copies of a large farm is
// some tens of MB; where each branch asks the machine for that anew, the machine looks through all of memory for what is no longer
// used at every second one, which takes longer than all else. Frames have one for themselves and their branches.

/** The arrays that columns are made of. */
export type Cells = Float64Array | Int32Array | Uint8Array;

/** So much is kept and no more. */
export const MOST_SPARE_BYTES = 64 * 1024 * 1024;

export class SpareArrays {
  readonly #kept = new Map<string, Cells[]>();
  #bytes = 0;

  /** Bytes kept at the moment. */
  get bytes(): number {
    return this.#bytes;
  }

  /** The same in an array of its own. */
  copy<T extends Cells>(array: T): T;
  copy(array: Cells): Cells {
    const spare = this.#kept.get(kindOf(array))?.pop();
    if (spare === undefined) return array.slice();
    this.#bytes -= spare.byteLength;
    spare.set(array);
    return spare;
  }

  /** An array that nobody is to read or write from now on. */
  keep(array: Cells): void {
    if (this.#bytes + array.byteLength > MOST_SPARE_BYTES) return;
    this.#bytes += array.byteLength;
    const kind = kindOf(array);
    const alike = this.#kept.get(kind);
    if (alike === undefined) this.#kept.set(kind, [array]);
    else alike.push(array);
  }
}

/** Arrays of one kind and length can stand for each other. */
function kindOf({ BYTES_PER_ELEMENT, length }: Cells): string {
  return `${BYTES_PER_ELEMENT} ${length}`;
}
