// The states of a kernel's results where its arguments are not all filled. Called by the kernels beside this file.

import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Vector } from './vector.ts';

/** 1 where each row has a value of its own, 0 where one stands for all. */
export const step = (vector: Vector): number => (vector.uniform ? 0 : 1);

/**
 * Fills `out.states` from the arguments' states: faults first, then blanks. A faulty cell's value is its fault's number. Gives whether
 * every cell is filled.
 */
export function carryStates(out: Vector, count: number, args: readonly Vector[]): boolean {
  const kept = out.states;
  let worst = FILLED;
  let isLaid = false;
  for (let k = 0; k < args.length; k++) {
    const arg = args[k] as Vector;
    if (arg.clean) continue;
    worst |= isLaid ? lay(kept, count, arg) : layFirst(kept, count, arg);
    isLaid = true;
  }
  if (!isLaid) kept.fill(FILLED, 0, count);
  // Without faults a cell is blank where any argument is, which needs no look at what the others are.
  else if (worst >= FAULT) carryFaults(out, count, args);
  return worst === FILLED;
}

/** Lays out one argument's states, and gives them all in one, so that it is below FAULT where no cell is faulty. */
function layFirst(kept: Uint8Array, count: number, { states, at, uniform }: Vector): number {
  if (uniform) {
    const state = states[at] as number;
    kept.fill(state, 0, count);
    return state;
  }
  let worst = FILLED;
  for (let i = 0; i < count; i++) {
    const state = states[at + i] as number;
    kept[i] = state;
    worst |= state;
  }
  return worst;
}

/** As layFirst, over what another argument laid out. */
function lay(kept: Uint8Array, count: number, arg: Vector): number {
  const { states } = arg;
  const by = step(arg);
  let at = arg.at;
  let worst = FILLED;
  for (let i = 0; i < count; i++, at += by) {
    const state = (kept[i] as number) | (states[at] as number);
    kept[i] = state;
    worst |= state;
  }
  return worst;
}

function carryFaults(out: Vector, count: number, args: readonly Vector[]): void {
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
