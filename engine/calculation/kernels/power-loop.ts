// Powers over a whole batch. Seasons raise the same few numbers to the same few powers again and again, as what is kept of a lot in
// every week, and a power costs several times what finding it does. A loop of its own, for a call a power would cost as much again.
// Called by point-kernels.ts alone.

import { powerOf } from '../../values/number.ts';
import { mixed } from '../indexes/key-table.ts';
import { MANY_ROWS } from './known-answers.ts';
import { step } from './states.ts';
import type { Vector } from './vector.ts';

/** How many powers a formula remembers; a power of two. */
const REMEMBERED = 1024;
/** A number, its exponent and the power stand beside each other. */
const WIDTH = 3;
/** So many batches are worked out without looking once two, one after the other, were mostly looked up in vain. */
const PASSED_OVER = 15;

/** out[i] = a ^ b, as the loops of other operators are: gives 0 where every result is a finite number, else not-a-number. */
export function powerLoop(): (out: Float64Array, count: number, a: Vector, b: Vector) => number {
  let known = new Float64Array(0);
  let passes = 0;
  let wasInVain = false;
  return (out, count, a, b) => {
    if (count < MANY_ROWS) return powers(out, count, a, b);
    if (passes > 0) {
      passes--;
      return powers(out, count, a, b);
    }
    if (known.length === 0) known = new Float64Array(REMEMBERED * WIDTH).fill(Number.NaN);
    const isInVain = knownPowers(out, count, a, b, known) * 2 > count;
    if (isInVain && wasInVain) passes = PASSED_OVER;
    wasInVain = isInVain;
    let dust = 0;
    for (let i = 0; i < count; i++) dust += (out[i] as number) * 0;
    return dust;
  };
}

function powers(out: Float64Array, count: number, a: Vector, b: Vector): number {
  const { values: bases } = a;
  const { values: exponents } = b;
  const sa = step(a);
  const sb = step(b);
  let ia = a.at;
  let ib = b.at;
  let dust = 0;
  for (let i = 0; i < count; i++, ia += sa, ib += sb) {
    const result = powerOf(bases[ia] as number, exponents[ib] as number);
    out[i] = result;
    dust += result * 0;
  }
  return dust;
}

/** Gives how many were not known. */
function knownPowers(out: Float64Array, count: number, a: Vector, b: Vector, known: Float64Array): number {
  const { values: bases } = a;
  const { values: exponents } = b;
  const sa = step(a);
  const sb = step(b);
  let ia = a.at;
  let ib = b.at;
  let misses = 0;
  let before = 0;
  let hash = 0;
  for (let i = 0; i < count; i++, ia += sa, ib += sb) {
    const base = bases[ia] as number;
    const exponent = exponents[ib] as number;
    if (base !== before) {
      hash = mixed(0, base);
      before = base;
    }
    const place = (mixed(hash, exponent) & (REMEMBERED - 1)) * WIDTH;
    if (known[place] === base && known[place + 1] === exponent) {
      out[i] = known[place + 2] as number;
      continue;
    }
    const result = powerOf(base, exponent);
    out[i] = result;
    misses++;
    // There are two noughts, which are equal and whose powers are not.
    if (base === 0) continue;
    known[place] = base;
    known[place + 1] = exponent;
    known[place + 2] = result;
  }
  return misses;
}
