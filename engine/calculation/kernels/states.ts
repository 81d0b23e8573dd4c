// The states of a kernel's results where its arguments are not all filled. Called by the kernels beside this file.

import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Vector } from './vector.ts';

/** 1 where each row has a value of its own, 0 where one stands for all. */
export const step = (vector: Vector): number => (vector.uniform ? 0 : 1);

/** Fills `out.states` from the arguments' states: faults first, then blanks. A faulty cell's value is its fault's number. */
export function carryStates(out: Vector, count: number, args: readonly Vector[]): void {
  const kept = out.states;
  kept.fill(FILLED, 0, count);
  for (let k = 0; k < args.length; k++) {
    const arg = args[k] as Vector;
    if (arg.clean) continue;
    const { states } = arg;
    const by = step(arg);
    let at = arg.at;
    for (let i = 0; i < count; i++, at += by) {
      const given = states[at];
      if (given === FILLED) continue;
      if (given === FAULT) {
        // The leftmost fault stays.
        if (kept[i] === FAULT) continue;
        kept[i] = FAULT;
        out.values[i] = arg.values[at] as number;
      } else if (kept[i] === FILLED) kept[i] = BLANK;
    }
  }
}

/** Whether the first so many numbers are all finite: nought times anything else is none, which costs less than a test for each. */
export function allFinite(values: Float64Array, count: number): boolean {
  let dust = 0;
  for (let i = 0; i < count; i++) dust += (values[i] as number) * 0;
  return dust === 0;
}

/** Says whether every cell of a vector whose states are all laid out is filled. */
export function settle(out: Vector, count: number): Vector {
  const { states } = out;
  let worst = FILLED;
  for (let i = 0; i < count; i++) worst |= states[i] as number;
  out.clean = worst === FILLED;
  return out;
}
