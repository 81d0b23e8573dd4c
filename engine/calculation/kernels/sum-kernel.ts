// The sum of one row's values, argument by argument over a whole batch: blanks are skipped, the leftmost fault passes on. Gives what
// adding them one after another from 0 gives. Made by the planner.

import { FAULT, FILLED } from '../../values/column.ts';
import type { Stored } from './scalars.ts';
import { allFinite, settle, step } from './states.ts';
import { type Kernel, scratch, takeAll, type Vector } from './vector.ts';

/** `tooLarge` is what stands where a sum is too large for a number. */
export function sumKernel(kernels: readonly Kernel[], tooLarge: Readonly<Stored>): Kernel {
  const out = scratch();
  const vectors: Vector[] = [];
  return (batch) => {
    const count = takeAll(kernels, batch, vectors, out);
    const { values, states } = out;
    values.fill(0, 0, count);
    if (!out.clean) states.fill(FILLED, 0, count);
    for (let k = 0; k < vectors.length; k++) {
      const vector = vectors[k] as Vector;
      if (out.clean) add(values, count, vector);
      else addCarefully(out, count, vector);
    }
    if (out.clean && allFinite(values, count)) return out;
    if (out.clean) states.fill(FILLED, 0, count);
    for (let i = 0; i < count; i++) {
      if (states[i] !== FILLED || Number.isFinite(values[i] as number)) continue;
      values[i] = tooLarge.value;
      states[i] = tooLarge.state;
    }
    return settle(out, count);
  };
}

function add(sums: Float64Array, count: number, vector: Vector): void {
  const { values } = vector;
  const by = step(vector);
  let at = vector.at;
  for (let i = 0; i < count; i++, at += by) sums[i] = (sums[i] as number) + (values[at] as number);
}

function addCarefully({ values: sums, states: kept }: Vector, count: number, vector: Vector): void {
  const { values, states, clean } = vector;
  const by = step(vector);
  let at = vector.at;
  for (let i = 0; i < count; i++, at += by) {
    const state = clean ? FILLED : (states[at] as number);
    if (kept[i] === FAULT) continue;
    if (state === FILLED) sums[i] = (sums[i] as number) + (values[at] as number);
    else if (state === FAULT) {
      sums[i] = values[at] as number;
      kept[i] = FAULT;
    }
  }
}
