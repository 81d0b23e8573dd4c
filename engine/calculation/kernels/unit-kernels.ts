// Kernels that numbers pass on their way into functions and out of them: from one unit to another, with the sign turned, held within
// a limit. Loops of their own, for nearly every call of a function of the trade has some. Made by the planner.

import type { Unit } from '../../units/unit.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import { allFinite, carryStates, settle } from './states.ts';
import { type Kernel, room, scratch, type Vector } from './vector.ts';

/** Puts each of a vector's numbers into `out`, turned into another. */
type Turn = (out: Float64Array, count: number, given: Vector) => void;

/** Numbers in a unit from canonical ones: fromCanonical, row by row. */
export function inUnitKernel(argument: Kernel, { numerator, denominator, offset }: Unit): Kernel {
  return turnKernel(argument, (out, count, { values, at }) => {
    for (let i = 0; i < count; i++) out[i] = (((values[at + i] as number) - offset) * denominator) / numerator;
  });
}

/** Canonical numbers from those in a unit: toCanonical, row by row. */
export function canonicalKernel(argument: Kernel, { numerator, denominator, offset }: Unit): Kernel {
  return turnKernel(argument, (out, count, { values, at }) => {
    for (let i = 0; i < count; i++) out[i] = ((values[at + i] as number) * numerator) / denominator + offset;
  });
}

export function negateKernel(argument: Kernel): Kernel {
  return turnKernel(argument, (out, count, { values, at }) => {
    for (let i = 0; i < count; i++) out[i] = -(values[at + i] as number);
  });
}

/** What is too large for a number is blank. */
function turnKernel(argument: Kernel, turn: Turn): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const given = argument(batch);
    out.uniform = given.uniform;
    const count = given.uniform ? 1 : batch.count;
    const { values, states } = out;
    turn(values, count, given);
    const areNumbers = allFinite(values, count);
    out.clean = given.clean && areNumbers;
    if (out.clean) return out;
    const filled = carryStates(out, count, [given]);
    if (areNumbers) {
      out.clean = filled;
      return out;
    }
    for (let i = 0; i < count; i++)
      if (states[i] === FILLED && !Number.isFinite(values[i] as number)) states[i] = BLANK;
    return settle(out, count);
  };
}

/** Numbers as they are where they lie within a limit; `fault` in the rows where they do not. */
export function limitKernel(argument: Kernel, min: number, max: number, fault: number): Kernel {
  const out = scratch();
  return (batch) => {
    const given = argument(batch);
    const count = given.uniform ? 1 : batch.count;
    if (areWithin(given, count, min, max)) return given;
    room(out, batch.count);
    out.uniform = given.uniform;
    carryStates(out, count, [given]);
    const { values, states } = out;
    for (let i = 0; i < count; i++) {
      if (states[i] !== FILLED) continue;
      const value = given.values[given.at + i] as number;
      const isWithin = value >= min && value <= max;
      values[i] = isWithin ? value : fault;
      states[i] = isWithin ? FILLED : FAULT;
    }
    return settle(out, count);
  };
}

function areWithin({ values, states, at, clean }: Vector, count: number, min: number, max: number): boolean {
  for (let i = at; i < at + count; i++) {
    const value = values[i] as number;
    if (!(value >= min && value <= max) && (clean || states[i] === FILLED)) return false;
  }
  return true;
}
