// The least or the most of one row's values, argument by argument over a whole batch: blanks are skipped, the leftmost fault passes on.
// Gives what looking at them one after another gives, minus zero as zero. Made by the planner.

import type { Picks } from '../../functions/definition.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Stored } from './scalars.ts';
import { settle, step } from './states.ts';
import { type Kernel, scratch, takeAll, type Vector } from './vector.ts';

/** Of one argument and more; `nothing` is what stands where a row has no value. */
export function pickKernel(kernels: readonly Kernel[], picks: Picks, nothing: Readonly<Stored>): Kernel {
  const out = scratch();
  const vectors: Vector[] = [];
  const isLeast = picks === 'least';
  return (batch) => {
    const count = takeAll(kernels, batch, vectors, out);
    const { values, states } = out;
    if (out.clean) {
      const [first] = vectors;
      if (vectors.length === 1) take(values, count, first as Vector);
      // What was picked so far stands in for the first from the third argument on.
      for (let k = 1; k < vectors.length; k++) {
        const picked = k === 1 ? (first as Vector) : out;
        if (isLeast) takeLesser(values, count, picked, vectors[k] as Vector);
        else takeGreater(values, count, picked, vectors[k] as Vector);
      }
      return out;
    }
    states.fill(BLANK, 0, count);
    for (let k = 0; k < vectors.length; k++) takeCarefully(out, count, vectors[k] as Vector, isLeast);
    for (let i = 0; i < count; i++) {
      if (states[i] !== BLANK) continue;
      values[i] = nothing.value;
      states[i] = nothing.state;
    }
    return settle(out, count);
  };
}

function take(picked: Float64Array, count: number, vector: Vector): void {
  const { values } = vector;
  const by = step(vector);
  let at = vector.at;
  for (let i = 0; i < count; i++, at += by) picked[i] = (values[at] as number) + 0;
}

/** A loop each for the lesser and the greater: one that asks which of them costs twice as much. */
function takeLesser(picked: Float64Array, count: number, one: Vector, other: Vector): void {
  const [a, b] = [one.values, other.values];
  const [byA, byB] = [step(one), step(other)];
  for (let i = 0, at = one.at, beside = other.at; i < count; i++, at += byA, beside += byB) {
    let value = a[at] as number;
    const second = b[beside] as number;
    if (second < value) value = second;
    picked[i] = value + 0;
  }
}

function takeGreater(picked: Float64Array, count: number, one: Vector, other: Vector): void {
  const [a, b] = [one.values, other.values];
  const [byA, byB] = [step(one), step(other)];
  for (let i = 0, at = one.at, beside = other.at; i < count; i++, at += byA, beside += byB) {
    let value = a[at] as number;
    const second = b[beside] as number;
    if (second > value) value = second;
    picked[i] = value + 0;
  }
}

function takeCarefully(
  { values: picked, states: kept }: Vector,
  count: number,
  vector: Vector,
  isLeast: boolean,
): void {
  const { values, states, clean } = vector;
  const by = step(vector);
  let at = vector.at;
  for (let i = 0; i < count; i++, at += by) {
    const state = clean ? FILLED : (states[at] as number);
    if (state === BLANK || kept[i] === FAULT) continue;
    const value = values[at] as number;
    if (state === FAULT) {
      picked[i] = value;
      kept[i] = FAULT;
      continue;
    }
    const other = picked[i] as number;
    if (kept[i] === FILLED && !(isLeast ? value < other : value > other)) continue;
    picked[i] = value + 0;
    kept[i] = FILLED;
  }
}
