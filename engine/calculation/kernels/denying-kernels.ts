// Whether values are blank, and NOT, most of whose arguments ask just that. Made by the planner.

import { BLANK } from '../../values/column.ts';
import { carryStates } from './states.ts';
import { type Kernel, room, scratch } from './vector.ts';

/** Whether each value is blank, faults not, or with `denied` whether it is anything but blank. */
export function blanknessKernel(argument: Kernel, denied = false): Kernel {
  const out = scratch();
  const [blank, other] = denied ? [0, 1] : [1, 0];
  return (batch) => {
    room(out, batch.count);
    const { states, at, clean, uniform } = argument(batch);
    out.uniform = uniform || clean;
    if (clean) {
      out.values[0] = other;
      return out;
    }
    const count = uniform ? 1 : batch.count;
    for (let i = 0; i < count; i++) out.values[i] = states[at + i] === BLANK ? blank : other;
    return out;
  };
}

/** NOT: no where something holds, yes where it does not. */
export function denyKernel(argument: Kernel): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const given = argument(batch);
    out.uniform = given.uniform;
    const count = out.uniform ? 1 : batch.count;
    const { values, at } = given;
    for (let i = 0; i < count; i++) out.values[i] = values[at + i] === 0 ? 1 : 0;
    out.clean = given.clean || carryStates(out, count, [given]);
    return out;
  };
}
