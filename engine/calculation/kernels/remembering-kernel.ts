// A kernel around another that is dear and follows from few cells: rows that hold what a row before held are answered as it was.
// The week of each job is spelt out once a day of the season and not once a job.

import { FILLED } from '../../values/column.ts';
import { KnownAnswers, MANY_ROWS } from './known-answers.ts';
import type { Stored } from './scalars.ts';
import { type Kernel, overListed, room, rowAt, scratch } from './vector.ts';

/** `asked`: the kernels of all that `inner` reads, whose answer is a single value and the same whenever they are. */
export function rememberingKernel(asked: readonly Kernel[], inner: Kernel): Kernel {
  const out = scratch();
  const known = new KnownAnswers(asked.length);
  const stored: Stored = { value: 0, state: FILLED };
  let missing = new Int32Array(0);
  let rows = new Int32Array(0);
  return (batch) => {
    const { count } = batch;
    if (count < MANY_ROWS) return inner(batch);
    const vectors = asked.map((kernel) => kernel(batch));
    if (vectors.every((vector) => vector.uniform)) return inner(batch);
    room(out, count);
    if (missing.length < count) {
      missing = new Int32Array(out.values.length);
      rows = new Int32Array(out.values.length);
    }
    known.expect(count);
    const ask = (i: number): void => {
      for (let k = 0; k < vectors.length; k++) {
        const { values, states, at, clean, uniform } = vectors[k] ?? out;
        const place = uniform ? at : at + i;
        known.ask(k, values[place] as number, clean ? FILLED : (states[place] as number));
      }
    };
    let misses = 0;
    out.clean = true;
    for (let i = 0; i < count; i++) {
      ask(i);
      if (known.answered(stored)) {
        out.values[i] = stored.value;
        out.states[i] = stored.state;
        if (stored.state !== FILLED) out.clean = false;
      } else {
        rows[misses] = rowAt(batch, i);
        missing[misses++] = i;
      }
    }
    if (misses === 0) return out;
    const answers = overListed(inner, batch, rows, misses);
    for (let m = 0; m < misses; m++) {
      const i = missing[m] as number;
      const at = answers.at + (answers.uniform ? 0 : m);
      stored.value = answers.values[at] as number;
      stored.state = answers.clean ? FILLED : (answers.states[at] as number);
      out.values[i] = stored.value;
      out.states[i] = stored.state;
      if (stored.state !== FILLED) out.clean = false;
      ask(i);
      if (!known.answered(stored)) known.keep(stored);
    }
    return out;
  };
}
