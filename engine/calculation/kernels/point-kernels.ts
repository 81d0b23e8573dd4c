// Kernels that work value by value: arithmetic, comparison, choosing between branches, numeric functions. Two loops each:
// one for batches without blanks or faults, one that carries states. A fault wins over a blank, the leftmost fault first.

import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import { powerLoop } from './power-loop.ts';
import { carryStates, settle, step } from './states.ts';
import { type Batch, type Kernel, overListed, room, rowAt, scratch, type Vector } from './vector.ts';

/** The numbers of the errors that arithmetic can make. */
export interface ArithmeticFaults {
  readonly divide: number;
  readonly overflow: number;
}

type Loop = (out: Float64Array, count: number, a: Vector, b: Vector) => number;

// Each loop gives 0 where every result is a finite number, else not-a-number: cheaper than a test for each cell.
const LOOPS: Readonly<Record<'+' | '-' | '*' | '/', Loop>> = {
  '+': (out, count, a, b) => {
    let ia = a.at;
    let ib = b.at;
    let dust = 0;
    const sa = step(a);
    const sb = step(b);
    const va = a.values;
    const vb = b.values;
    for (let i = 0; i < count; i++, ia += sa, ib += sb) {
      const result = (va[ia] as number) + (vb[ib] as number);
      out[i] = result;
      dust += result * 0;
    }
    return dust;
  },
  '-': (out, count, a, b) => {
    let ia = a.at;
    let ib = b.at;
    let dust = 0;
    const sa = step(a);
    const sb = step(b);
    const va = a.values;
    const vb = b.values;
    for (let i = 0; i < count; i++, ia += sa, ib += sb) {
      const result = (va[ia] as number) - (vb[ib] as number);
      out[i] = result;
      dust += result * 0;
    }
    return dust;
  },
  '*': (out, count, a, b) => {
    let ia = a.at;
    let ib = b.at;
    let dust = 0;
    const sa = step(a);
    const sb = step(b);
    const va = a.values;
    const vb = b.values;
    for (let i = 0; i < count; i++, ia += sa, ib += sb) {
      const result = (va[ia] as number) * (vb[ib] as number);
      out[i] = result;
      dust += result * 0;
    }
    return dust;
  },
  '/': (out, count, a, b) => {
    let ia = a.at;
    let ib = b.at;
    let dust = 0;
    const sa = step(a);
    const sb = step(b);
    const va = a.values;
    const vb = b.values;
    for (let i = 0; i < count; i++, ia += sa, ib += sb) {
      const result = (va[ia] as number) / (vb[ib] as number);
      out[i] = result;
      dust += result * 0;
    }
    return dust;
  },
};

/**
 * a + b, a - b, a * b, a / b, a ^ b on canonical numbers. Division by zero makes the fault `divide`, any other result that is no number
 * `overflow`.
 */
export function arithmeticKernel(
  operator: '+' | '-' | '*' | '/' | '^',
  left: Kernel,
  right: Kernel,
  faults: ArithmeticFaults,
): Kernel {
  const out = scratch();
  const loop = operator === '^' ? powerLoop() : LOOPS[operator];
  return (batch) => {
    room(out, batch.count);
    const a = left(batch);
    const b = right(batch);
    out.uniform = a.uniform && b.uniform;
    const count = out.uniform ? 1 : batch.count;
    const dust = loop(out.values, count, a, b);
    if (a.clean && b.clean && dust === 0) {
      out.clean = true;
      return out;
    }
    const filled = carryStates(out, count, [a, b]);
    if (dust === 0) {
      out.clean = filled;
      return out;
    }
    for (let i = 0; i < count; i++) {
      if (out.states[i] !== FILLED || Number.isFinite(out.values[i])) continue;
      out.states[i] = FAULT;
      const divisor = b.values[b.at + (b.uniform ? 0 : i)];
      out.values[i] = operator === '/' && divisor === 0 ? faults.divide : faults.overflow;
    }
    return settle(out, count);
  };
}

/** A function of one number; a not-a-number result becomes `fault`, or blank where there is none. */
export function pointKernel1(argument: Kernel, compute: (a: number) => number, fault: number | undefined): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const a = argument(batch);
    out.uniform = a.uniform;
    const count = out.uniform ? 1 : batch.count;
    if (!a.clean) carryStates(out, count, [a]);
    const { values, at } = a;
    let clean = a.clean;
    for (let i = 0; i < count; i++) {
      if (!a.clean && out.states[i] !== FILLED) continue;
      const result = compute(values[at + i] as number);
      out.values[i] = result;
      if (result - result !== 0) clean = undefinedAt(out, i, clean, a.clean, fault);
    }
    out.clean = clean;
    return out;
  };
}

/** A function of two numbers; as pointKernel1. */
export function pointKernel2(
  left: Kernel,
  right: Kernel,
  compute: (a: number, b: number) => number,
  fault: number | undefined,
): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const a = left(batch);
    const b = right(batch);
    out.uniform = a.uniform && b.uniform;
    const count = out.uniform ? 1 : batch.count;
    const given = a.clean && b.clean;
    if (!given) carryStates(out, count, [a, b]);
    let ia = a.at;
    let ib = b.at;
    const sa = step(a);
    const sb = step(b);
    const va = a.values;
    const vb = b.values;
    let clean = given;
    for (let i = 0; i < count; i++, ia += sa, ib += sb) {
      if (!given && out.states[i] !== FILLED) continue;
      const result = compute(va[ia] as number, vb[ib] as number);
      out.values[i] = result;
      if (result - result !== 0) clean = undefinedAt(out, i, clean, given, fault);
    }
    out.clean = clean;
    return out;
  };
}

/** A function of three numbers; as pointKernel1. */
export function pointKernel3(
  kernels: readonly [Kernel, Kernel, Kernel],
  compute: (a: number, b: number, c: number) => number,
  fault: number | undefined,
): Kernel {
  const out = scratch();
  const [first, second, third] = kernels;
  return (batch) => {
    room(out, batch.count);
    const a = first(batch);
    const b = second(batch);
    const c = third(batch);
    out.uniform = a.uniform && b.uniform && c.uniform;
    const count = out.uniform ? 1 : batch.count;
    const given = a.clean && b.clean && c.clean;
    if (!given) carryStates(out, count, [a, b, c]);
    let ia = a.at;
    let ib = b.at;
    let ic = c.at;
    const sa = step(a);
    const sb = step(b);
    const sc = step(c);
    const va = a.values;
    const vb = b.values;
    const vc = c.values;
    let clean = given;
    for (let i = 0; i < count; i++, ia += sa, ib += sb, ic += sc) {
      if (!given && out.states[i] !== FILLED) continue;
      const result = compute(va[ia] as number, vb[ib] as number, vc[ic] as number);
      out.values[i] = result;
      if (result - result !== 0) clean = undefinedAt(out, i, clean, given, fault);
    }
    out.clean = clean;
    return out;
  };
}

/** A function of four numbers; as pointKernel1. */
export function pointKernel4(
  kernels: readonly [Kernel, Kernel, Kernel, Kernel],
  compute: (a: number, b: number, c: number, d: number) => number,
  fault: number | undefined,
): Kernel {
  const out = scratch();
  const [first, second, third, fourth] = kernels;
  return (batch) => {
    room(out, batch.count);
    const a = first(batch);
    const b = second(batch);
    const c = third(batch);
    const d = fourth(batch);
    out.uniform = a.uniform && b.uniform && c.uniform && d.uniform;
    const count = out.uniform ? 1 : batch.count;
    const given = a.clean && b.clean && c.clean && d.clean;
    if (!given) carryStates(out, count, [a, b, c, d]);
    let ia = a.at;
    let ib = b.at;
    let ic = c.at;
    let id = d.at;
    const sa = step(a);
    const sb = step(b);
    const sc = step(c);
    const sd = step(d);
    const va = a.values;
    const vb = b.values;
    const vc = c.values;
    const vd = d.values;
    let clean = given;
    for (let i = 0; i < count; i++, ia += sa, ib += sb, ic += sc, id += sd) {
      if (!given && out.states[i] !== FILLED) continue;
      const result = compute(va[ia] as number, vb[ib] as number, vc[ic] as number, vd[id] as number);
      out.values[i] = result;
      if (result - result !== 0) clean = undefinedAt(out, i, clean, given, fault);
    }
    out.clean = clean;
    return out;
  };
}

/** A function of any number of numbers; as pointKernel1. `leftOut` marks arguments that are not there and come as not-a-number. */
export function pointKernelN(
  kernels: readonly (Kernel | undefined)[],
  compute: (...numbers: number[]) => number,
  fault: number | undefined,
): Kernel {
  const out = scratch();
  const numbers: number[] = kernels.map(() => Number.NaN);
  return (batch) => {
    room(out, batch.count);
    const vectors = kernels.map((kernel) => kernel?.(batch));
    const there = vectors.filter((vector) => vector !== undefined);
    out.uniform = there.every((vector) => vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    const given = there.every((vector) => vector.clean);
    if (!given) carryStates(out, count, there);
    let clean = given;
    for (let i = 0; i < count; i++) {
      if (!given && out.states[i] !== FILLED) continue;
      for (let k = 0; k < vectors.length; k++) {
        const vector = vectors[k];
        if (vector !== undefined) numbers[k] = vector.values[vector.at + (vector.uniform ? 0 : i)] as number;
      }
      const result = compute(...numbers);
      out.values[i] = result;
      if (result - result !== 0) clean = undefinedAt(out, i, clean, given, fault);
    }
    out.clean = clean;
    return out;
  };
}

/** Marks a result that is no number. States are only kept where the batch isn't clean, so the first such cell lays them out. */
function undefinedAt(out: Vector, i: number, clean: boolean, given: boolean, fault: number | undefined): false {
  if (clean && given) out.states.fill(FILLED);
  out.states[i] = fault === undefined ? BLANK : FAULT;
  out.values[i] = fault ?? 0;
  return false;
}

/** A branch of IF. One that costs much is worked out for the rows that take it and no others. */
export interface Branch {
  readonly kernel: Kernel;
  readonly isCostly: boolean;
}

/** IF: yes takes `yes`, no takes `no`, a blank condition is blank, a faulty one its fault. */
export function chooseKernel(condition: Kernel, yes: Branch, no: Branch): Kernel {
  const out = scratch();
  const [takeYes, takeNo] = [taking(yes, true), taking(no, false)];
  return (batch) => {
    room(out, batch.count);
    const c = condition(batch);
    // Rows of one kind mostly stand together: where all take one branch, nothing of the other is worked out.
    if (c.clean) {
      const holds = holdsInAll(c, batch.count);
      if (holds !== undefined) return holds ? yes.kernel(batch) : no.kernel(batch);
    }
    const a = takeYes(batch, c);
    const b = takeNo(batch, c);
    const { count } = batch;
    out.uniform = false;
    const given = a.clean && b.clean && c.clean;
    out.clean = given;
    if (given) chosen(out.values, count, c, a, b);
    else out.clean = chosenCarefully(out, count, c, a, b);
    return out;
  };
}

/** Whether a condition holds in every row, or in none; undefined where it holds in some. */
function holdsInAll({ values, at, uniform }: Vector, count: number): boolean | undefined {
  const holds = values[at] === 1;
  for (let i = uniform ? count : 1; i < count; i++) if ((values[at + i] === 1) !== holds) return undefined;
  return holds;
}

function chosen(out: Float64Array, count: number, condition: Vector, yes: Vector, no: Vector): void {
  const vc = condition.values;
  const va = yes.values;
  const vb = no.values;
  const sc = step(condition);
  const sa = step(yes);
  const sb = step(no);
  let ic = condition.at;
  let ia = yes.at;
  let ib = no.at;
  for (let i = 0; i < count; i++, ic += sc, ia += sa, ib += sb) {
    out[i] = (vc[ic] === 1 ? va[ia] : vb[ib]) as number;
  }
}

/** As chosen with the states; gives whether all are filled. */
function chosenCarefully(
  { values: out, states }: Vector,
  count: number,
  condition: Vector,
  yes: Vector,
  no: Vector,
): boolean {
  const { values: vc, states: ofCondition } = condition;
  const { values: va, states: ofYes } = yes;
  const { values: vb, states: ofNo } = no;
  const [cleanCondition, cleanYes, cleanNo] = [condition.clean, yes.clean, no.clean];
  const sc = step(condition);
  const sa = step(yes);
  const sb = step(no);
  let ic = condition.at;
  let ia = yes.at;
  let ib = no.at;
  let worst = FILLED;
  for (let i = 0; i < count; i++, ic += sc, ia += sa, ib += sb) {
    let state = cleanCondition ? FILLED : (ofCondition[ic] as number);
    let value = vc[ic] as number;
    if (state === FILLED) {
      if (value === 1) {
        value = va[ia] as number;
        state = cleanYes ? FILLED : (ofYes[ia] as number);
      } else {
        value = vb[ib] as number;
        state = cleanNo ? FILLED : (ofNo[ib] as number);
      }
    }
    out[i] = value;
    states[i] = state;
    worst |= state;
  }
  return worst === FILLED;
}

const NO_ROWS = new Int32Array(0);

/** A branch's values where the condition holds, or where it does not; elsewhere, if it costs much, whatever stood there. */
function taking({ kernel, isCostly }: Branch, takesYes: boolean): (batch: Batch, condition: Vector) => Vector {
  if (!isCostly) return kernel;
  const spread = scratch();
  let rows = NO_ROWS;
  let places = NO_ROWS;
  return (batch, { values, states, at, clean, uniform }) => {
    room(spread, batch.count);
    if (rows.length < batch.count) {
      rows = new Int32Array(spread.values.length);
      places = new Int32Array(spread.values.length);
    }
    let count = 0;
    const by = uniform ? 0 : 1;
    for (let i = 0, ci = at; i < batch.count; i++, ci += by) {
      if ((values[ci] === 1) !== takesYes || (!clean && states[ci] !== FILLED)) continue;
      rows[count] = rowAt(batch, i);
      places[count++] = i;
    }
    if (count === batch.count) return kernel(batch);
    spread.clean = true;
    if (count === 0) return spread;
    spreadOut(spread, places, count, overListed(kernel, batch, rows, count));
    return spread;
  };
}

/** Puts what was given for a few rows at their places. */
function spreadOut(spread: Vector, places: Int32Array, count: number, given: Vector): void {
  const { values, states } = given;
  const { values: out, states: kept } = spread;
  const by = step(given);
  let at = given.at;
  spread.clean = given.clean;
  if (given.clean) {
    for (let k = 0; k < count; k++, at += by) out[places[k] as number] = values[at] as number;
    return;
  }
  for (let k = 0; k < count; k++, at += by) {
    const i = places[k] as number;
    out[i] = values[at] as number;
    kept[i] = states[at] as number;
  }
}

/** Takes `instead` where the value is a fault that `catches` says to catch. */
export function catchKernel(value: Kernel, instead: Kernel, catches: (fault: number) => boolean): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const a = value(batch);
    if (a.clean) return a;
    const b = instead(batch);
    const { count } = batch;
    out.uniform = false;
    for (let i = 0; i < count; i++) {
      const ai = a.at + (a.uniform ? 0 : i);
      const caught = a.states[ai] === FAULT && catches(a.values[ai] as number);
      const taken = caught ? b : a;
      const ti = caught ? b.at + (b.uniform ? 0 : i) : ai;
      out.values[i] = taken.values[ti] as number;
      out.states[i] = taken.clean ? FILLED : (taken.states[ti] ?? BLANK);
    }
    return settle(out, count);
  };
}

/**
 * AND and OR: the deciding value (no for AND, yes for OR) wins over blanks; a fault wins over everything but a decision made
 * by an argument to its left.
 */
export function junctionKernel(kernels: readonly Kernel[], decides: 0 | 1): Kernel {
  const out = scratch();
  const vectors: Vector[] = [];
  return (batch: Batch) => {
    room(out, batch.count);
    const { count } = batch;
    out.uniform = false;
    out.clean = true;
    for (let k = 0; k < kernels.length; k++) {
      const vector = (kernels[k] as Kernel)(batch);
      vectors[k] = vector;
      if (!vector.clean) out.clean = false;
      else if (out.clean && holdsInAll(vector, count) === (decides === 1)) {
        // Decided for every row, whatever stands to its right.
        out.uniform = true;
        out.values[0] = decides;
        return out;
      }
    }
    if (out.clean) {
      decided(out.values, count, vectors, decides);
      return out;
    }
    decidedCarefully(out, count, vectors, decides);
    return settle(out, count);
  };
}

/** Argument by argument, from the left: what a fault or the deciding value settled stays. */
function decidedCarefully(
  { values: out, states }: Vector,
  count: number,
  vectors: readonly Vector[],
  decides: 0 | 1,
): void {
  out.fill(1 - decides, 0, count);
  states.fill(FILLED, 0, count);
  for (let k = 0; k < vectors.length; k++) {
    const vector = vectors[k] as Vector;
    const { values, states: given, clean } = vector;
    const by = step(vector);
    let at = vector.at;
    for (let i = 0; i < count; i++, at += by) {
      // Settled: by a fault, or by the deciding value, which stands there and is filled.
      if (states[i] === FAULT || (states[i] === FILLED && out[i] === decides)) continue;
      const state = clean ? FILLED : (given[at] as number);
      if (state === BLANK) states[i] = BLANK;
      else if (state === FAULT || values[at] === decides) {
        out[i] = values[at] as number;
        states[i] = state;
      }
    }
  }
}

/** AND and OR where every argument is filled. */
function decided(out: Float64Array, count: number, vectors: readonly Vector[], decides: 0 | 1): void {
  out.fill(1 - decides, 0, count);
  for (let k = 0; k < vectors.length; k++) {
    const vector = vectors[k] as Vector;
    const { values } = vector;
    const by = step(vector);
    let at = vector.at;
    for (let i = 0; i < count; i++, at += by) if (values[at] === decides) out[i] = decides;
  }
}
