// What kernels pass to each other: a batch of rows in, a vector of values with states out. A vector may be a view into a
// column (then `at` is where the batch begins in it), a kernel's own scratch, or one value for the whole batch.

import { BLANK, FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';

export const BATCH = 1024;

/** Rows [from, from + count) of the frame's table where `rows` is undefined, else the listed rows. */
export interface Batch {
  readonly frame: Frame;
  rows: Int32Array | undefined;
  from: number;
  count: number;
  /** The same for all batches of one run of a node, in which nothing that it reads changes; undefined for a batch by itself. */
  readonly run?: object | undefined;
}

/** The batch's i-th row. */
export function rowAt({ rows, from }: Batch, i: number): number {
  return rows === undefined ? from + i : (rows[i] as number);
}

/** A kernel's values for the first so many of listed rows; one row is handed over by its number. */
export function overListed(kernel: Kernel, { frame, run }: Batch, rows: Int32Array, count: number): Vector {
  return kernel({ frame, run, rows: count === 1 ? undefined : rows, from: rows[0] ?? 0, count });
}

export interface Vector {
  values: Float64Array;
  states: Uint8Array;
  /** Index of the batch's first value in both arrays. */
  at: number;
  /** Every state of the batch is FILLED: states need not be read. */
  clean: boolean;
  /** One value, at `at`, stands for every row. */
  uniform: boolean;
}

/** Reads its columns in the batch's frame and gives the batch's values; the vector is good until the kernel's next call. */
export type Kernel = (batch: Batch) => Vector;

const NO_VALUES = new Float64Array(0);
const NO_STATES = new Uint8Array(0);

/** A kernel's own vector, which has no room before a batch asks `room` for it: of a season's thousands of kernels many never run. */
export function scratch(): Vector {
  return { values: NO_VALUES, states: NO_STATES, at: 0, clean: true, uniform: false };
}

/** A kernel's own vector of one value for every row. */
export function single(): Vector {
  return { values: new Float64Array(1), states: new Uint8Array(1), at: 0, clean: true, uniform: true };
}

/** Room for a batch of so many rows: most sheets are short, and a season has thousands of kernels. */
export function room(vector: Vector, count: number): Vector {
  if (count <= vector.values.length) return vector;
  const length = count <= 1 ? 1 : count <= 16 ? 16 : count <= 64 ? 64 : count <= 256 ? 256 : BATCH;
  const at = cut(length * 9);
  vector.values = new Float64Array(slab, at, length);
  vector.states = new Uint8Array(slab, at + length * 8, length);
  return vector;
}

/**
 * Works the arguments out over a batch, into `vectors`, and makes room in `out` for what comes of them, which is uniform and clean
 * where all of them are. Gives of how many rows it has values.
 */
export function takeAll(kernels: readonly Kernel[], batch: Batch, vectors: Vector[], out: Vector): number {
  room(out, batch.count);
  out.uniform = true;
  out.clean = true;
  for (let k = 0; k < kernels.length; k++) {
    const vector = (kernels[k] as Kernel)(batch);
    vectors[k] = vector;
    if (!vector.uniform) out.uniform = false;
    if (!vector.clean) out.clean = false;
  }
  return out.uniform ? 1 : batch.count;
}

/** Small arrays are cut out of large pieces of memory: asking for each by itself costs more than working a short sheet out. */
const SLAB = 1 << 16;
let slab = new ArrayBuffer(SLAB);
let used = 0;

/** Where in the slab so many bytes are free, at a place where doubles may begin. */
function cut(bytes: number): number {
  if (used + bytes > SLAB) {
    slab = new ArrayBuffer(SLAB);
    used = 0;
  }
  const at = used;
  used += (bytes + 7) & ~7;
  return at;
}

/** So many constants of a state are shared at most: those of formulas that are tried once would stay for ever. */
const SHARED = 2048;

/** By state and value: formulas have thousands of constants, most of them 0, 1 or 7, and what all read lies near at hand. */
const constants = new Map<number, Map<number, Kernel>>();

/** A kernel that gives one value always. */
export function constantKernel(value: number, state: number): Kernel {
  // The two noughts are one key.
  if (Object.is(value, -0)) return madeConstant(value, state);
  const ofState = constants.get(state) ?? new Map<number, Kernel>();
  constants.set(state, ofState);
  const known = ofState.get(value);
  if (known !== undefined) return known;
  const made = madeConstant(value, state);
  if (ofState.size < SHARED) ofState.set(value, made);
  return made;
}

function madeConstant(value: number, state: number): Kernel {
  const vector = single();
  vector.values[0] = value;
  vector.states[0] = state;
  vector.clean = state === FILLED;
  return () => vector;
}

/** Blank in every row. */
export const blankKernel: Kernel = constantKernel(0, BLANK);
