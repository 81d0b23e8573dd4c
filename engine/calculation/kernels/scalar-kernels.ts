// Kernels for functions that take one row's values as scalars: texts, blanks and errors as they are. Slower than the
// numeric lanes; used where text or the state of a cell is the point.

import type { Answer } from '../../functions/definition.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Scalar } from '../../values/error.ts';
import type { ValueType } from '../../values/type.ts';
import type { Dictionaries } from '../frame.ts';
import { type Stored, toScalar, toStored } from './scalars.ts';
import { type Kernel, room, scratch } from './vector.ts';

export interface ScalarRules {
  /** 'pass': a blank argument makes a blank before the call. */
  readonly blanks: 'pass' | 'given';
  /** 'pass': an error passes on before the call. */
  readonly errors: 'pass' | 'given';
}

/** A kernel that calls `compute` row by row; undefined kernels are arguments left out, which come as null and pass no blank on. */
export function scalarKernel(
  words: Dictionaries,
  kernels: readonly (Kernel | undefined)[],
  types: readonly ValueType[],
  compute: (args: readonly Scalar[]) => Answer,
  rules: ScalarRules,
): Kernel {
  const out = scratch();
  const args: Scalar[] = kernels.map(() => null);
  const stored: Stored = { value: 0, state: FILLED };
  return (batch) => {
    room(out, batch.count);
    const vectors = kernels.map((kernel) => kernel?.(batch));
    out.uniform = vectors.every((vector) => vector === undefined || vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    let clean = true;
    for (let i = 0; i < count; i++) {
      let passed = FILLED;
      for (let k = 0; k < vectors.length; k++) {
        const vector = vectors[k];
        const type = types[k];
        if (vector === undefined || type === undefined) continue;
        const at = vector.at + (vector.uniform ? 0 : i);
        const state = vector.clean ? FILLED : (vector.states[at] ?? BLANK);
        const value = vector.values[at] ?? 0;
        if (state === FAULT && rules.errors === 'pass' && passed !== FAULT) {
          passed = FAULT;
          stored.value = value;
        }
        if (state === BLANK && rules.blanks === 'pass' && passed === FILLED) {
          passed = BLANK;
          stored.value = 0;
        }
        args[k] = toScalar(words, type, value, state);
      }
      if (passed === FILLED) toStored(words, compute(args), stored);
      else stored.state = passed;
      out.values[i] = stored.value;
      out.states[i] = stored.state;
      if (stored.state !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}
