// Kernels for functions that take one row's values as scalars: texts, blanks and errors as they are. Slower than the
// numeric lanes; used where text or the state of a cell is the point.

import type { Answer } from '../../functions/definition.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Scalar } from '../../values/error.ts';
import { Figures } from '../../values/figures.ts';
import type { ValueType } from '../../values/type.ts';
import type { Dictionaries } from '../frame.ts';
import { KnownAnswers } from './known-answers.ts';
import { type Stored, toStored } from './scalars.ts';
import { type Kernel, room, scratch, type Vector } from './vector.ts';

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
  const known = new KnownAnswers(kernels.length);
  const vectors: (Vector | undefined)[] = [];
  /** The arguments that are another from row to row, or that a blank or an error may stand in. */
  const differing: number[] = [];
  return (batch) => {
    room(out, batch.count);
    out.uniform = true;
    differing.length = 0;
    for (let k = 0; k < kernels.length; k++) {
      const vector = kernels[k]?.(batch);
      vectors[k] = vector;
      if (vector === undefined) continue;
      if (!vector.uniform) out.uniform = false;
      if (!vector.uniform || !vector.clean) differing.push(k);
    }
    const count = out.uniform ? 1 : batch.count;
    known.expect(count);
    for (let k = 0; k < vectors.length; k++) {
      const vector = vectors[k];
      if (vector !== undefined) known.ask(k, vector.values[vector.at] as number, FILLED);
    }
    let clean = true;
    for (let i = 0; i < count; i++) {
      let passed = FILLED;
      for (let j = 0; j < differing.length; j++) {
        const k = differing[j] as number;
        const vector = vectors[k] as Vector;
        const at = vector.at + (vector.uniform ? 0 : i);
        const state = vector.clean ? FILLED : (vector.states[at] as number);
        const value = vector.values[at] as number;
        if (state === FAULT && rules.errors === 'pass' && passed !== FAULT) {
          passed = FAULT;
          stored.value = value;
        }
        if (state === BLANK && rules.blanks === 'pass' && passed === FILLED) {
          passed = BLANK;
          stored.value = 0;
        }
        known.ask(k, value, state);
      }
      if (passed !== FILLED) stored.state = passed;
      else if (!known.answered(stored)) {
        for (let k = 0; k < vectors.length; k++) {
          const type = types[k];
          if (vectors[k] !== undefined && type !== undefined) args[k] = known.asked(words, type, k);
        }
        const answer = compute(args);
        toStored(words, answer, stored);
        if (!(answer instanceof Figures)) known.keep(stored);
      }
      out.values[i] = stored.value;
      out.states[i] = stored.state;
      if (stored.state !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}
