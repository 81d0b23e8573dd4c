// Kernels that compare: numbers with binary dust forgiven, texts ignoring case. Loops of their own, for a season compares
// more often than it does anything else. Made by the planner.

import type { Texts } from '../../values/texts.ts';
import { clearlyAbove, clearlyBelow, compareNumbers, equalNumbers } from '../../values/tolerance.ts';
import { pointKernel2 } from './point-kernels.ts';
import { carryStates, step } from './states.ts';
import { type Kernel, room, scratch, type Vector } from './vector.ts';

export type Sign = (order: number) => boolean;

/** Which orders (-1, 0, 1) each comparison takes. */
export const ORDERS: Readonly<Record<'=' | '<>' | '<' | '<=' | '>' | '>=', Sign>> = {
  '=': (order) => order === 0,
  '<>': (order) => order !== 0,
  '<': (order) => order < 0,
  '<=': (order) => order <= 0,
  '>': (order) => order > 0,
  '>=': (order) => order >= 0,
};

/** How two stored values compare: by an order, or, where only equality counts, as texts of this dictionary. */
export type Order = ((a: number, b: number) => number) | Texts;

/** What a comparison gives for a first value below, equal to and above the second. */
type Gives = readonly [below: number, equal: number, above: number];

/** A comparison by an order of two stored values (numbers with dust forgiven, or texts); yes = 1. */
export function compareKernel(left: Kernel, right: Kernel, takes: Sign, order: Order = compareNumbers): Kernel {
  if (typeof order === 'function' && order !== compareNumbers) {
    return pointKernel2(left, right, (a, b) => (takes(order(a, b)) ? 1 : 0), undefined);
  }
  const gives: Gives = [takes(-1) ? 1 : 0, takes(0) ? 1 : 0, takes(1) ? 1 : 0];
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const a = left(batch);
    const b = right(batch);
    out.uniform = a.uniform && b.uniform;
    out.clean = a.clean && b.clean;
    const count = out.uniform ? 1 : batch.count;
    if (typeof order === 'function') compareAll(out.values, count, a, b, gives);
    else equateAll(out.values, count, a, b, gives, order);
    if (!out.clean) carryStates(out, count, [a, b]);
    return out;
  };
}

function compareAll(out: Float64Array, count: number, a: Vector, b: Vector, gives: Gives): void {
  if (b.uniform && count > 1) {
    compareWithOne(out, count, a, b.values[b.at] as number, gives);
    return;
  }
  const [below, equal, above] = gives;
  const va = a.values;
  const vb = b.values;
  const sa = step(a);
  const sb = step(b);
  let ia = a.at;
  let ib = b.at;
  for (let i = 0; i < count; i++, ia += sa, ib += sb) {
    const one = va[ia] as number;
    const other = vb[ib] as number;
    out[i] = equalNumbers(one, other) ? equal : one < other ? below : above;
  }
}

/** A value a row against one number, as most are: what is clearly below or above it needs no closer look. */
function compareWithOne(
  out: Float64Array,
  count: number,
  { values, at }: Vector,
  wanted: number,
  [below, equal, above]: Gives,
): void {
  const least = clearlyBelow(wanted);
  const most = clearlyAbove(wanted);
  for (let i = 0, from = at; i < count; i++, from++) {
    const value = values[from] as number;
    if (value > most) out[i] = above;
    else if (value < least) out[i] = below;
    else out[i] = equalNumbers(value, wanted) ? equal : value < wanted ? below : above;
  }
}

/** Texts that are not the same stand in no order here. */
function equateAll(
  out: Float64Array,
  count: number,
  a: Vector,
  b: Vector,
  [, equal, other]: Gives,
  texts: Texts,
): void {
  const va = a.values;
  const vb = b.values;
  const sa = step(a);
  const sb = step(b);
  let ia = a.at;
  let ib = b.at;
  if (sb === 0) {
    // A column against one text, as most are: its own number says at once that they are equal.
    const code = vb[ib] as number;
    const fold = texts.fold(code);
    for (let i = 0; i < count; i++, ia += sa) {
      const one = va[ia] as number;
      out[i] = one === code || texts.fold(one) === fold ? equal : other;
    }
    return;
  }
  for (let i = 0; i < count; i++, ia += sa, ib += sb) {
    out[i] = texts.fold(va[ia] as number) === texts.fold(vb[ib] as number) ? equal : other;
  }
}
