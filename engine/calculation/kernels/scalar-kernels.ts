// Kernels for functions that take one row's values as scalars: texts, blanks and errors as they are. Slower than the
// numeric lanes; used where text or the state of a cell is the point.

import type { Answer } from '../../functions/definition.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Scalar } from '../../values/error.ts';
import { Figures } from '../../values/figures.ts';
import type { ValueType } from '../../values/type.ts';
import type { Dictionaries } from '../frame.ts';
import { mixed } from '../indexes/key-table.ts';
import { type Stored, toScalar, toStored } from './scalars.ts';
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

/** How many answers a kernel remembers; a power of two. */
const REMEMBERED = 256;
/** From so many rows on it is worth remembering. */
const MANY_ROWS = 32;
const NOTHING_ASKED = new Float64Array(0);
const NO_STATES = new Uint8Array(0);

/**
 * The last answers of one kernel, by what it was asked: the words of a season are few, and joining and looking words up costs
 * far more than finding the answer of a row before. Each question has two places, so that few drive each other out in turn.
 */
class KnownAnswers {
  readonly #width: number;
  /** What is asked now. */
  #question = NOTHING_ASKED;
  #asked = NO_STATES;
  /** Where its answer is to stand. */
  #free = 0;
  /** Whether there are places; a kernel that only ever sees a few rows has none. */
  #room = 0;
  #questions = NOTHING_ASKED;
  #questionStates = NO_STATES;
  #values = NOTHING_ASKED;
  #states = NO_STATES;

  constructor(args: number) {
    this.#width = args;
  }

  expect(rows: number): void {
    if (this.#question === NOTHING_ASKED) {
      this.#question = new Float64Array(this.#width);
      this.#asked = new Uint8Array(this.#width);
    }
    if (this.#room > 0 || rows < MANY_ROWS) return;
    this.#room = REMEMBERED;
    this.#questions = new Float64Array(REMEMBERED * this.#width);
    this.#questionStates = new Uint8Array(REMEMBERED * this.#width);
    this.#values = new Float64Array(REMEMBERED);
    this.#states = new Uint8Array(REMEMBERED).fill(UNKNOWN);
  }

  ask(k: number, value: number, state: number): void {
    this.#question[k] = value;
    this.#asked[k] = state;
  }

  /** The k-th argument of the question. */
  asked(words: Dictionaries, type: ValueType, k: number): Scalar {
    return toScalar(words, type, this.#question[k] as number, this.#asked[k] as number);
  }

  answered(into: Stored): boolean {
    if (this.#room === 0) return false;
    const question = this.#question;
    const asked = this.#asked;
    const { length } = question;
    let hash = 0;
    for (let k = 0; k < length; k++) hash = mixed(hash ^ (asked[k] as number), question[k] as number);
    const place = hash & (REMEMBERED - 1);
    const beside = place ^ 1;
    const known = this.#isKnown(place) ? place : this.#isKnown(beside) ? beside : undefined;
    if (known === undefined) {
      const states = this.#states;
      this.#free = states[place] === UNKNOWN || states[beside] !== UNKNOWN ? place : beside;
      return false;
    }
    into.value = this.#values[known] as number;
    into.state = this.#states[known] as number;
    return true;
  }

  /** Whether the answer to what is asked stands at a place. */
  #isKnown(place: number): boolean {
    if (this.#states[place] === UNKNOWN) return false;
    const question = this.#question;
    const { length } = question;
    const from = place * length;
    for (let k = 0; k < length; k++) {
      if (this.#questions[from + k] !== question[k] || this.#questionStates[from + k] !== this.#asked[k]) return false;
    }
    return true;
  }

  keep({ value, state }: Stored): void {
    if (this.#room === 0) return;
    this.#questions.set(this.#question, this.#free * this.#width);
    this.#questionStates.set(this.#asked, this.#free * this.#width);
    this.#values[this.#free] = value;
    this.#states[this.#free] = state;
  }
}

/** Where no answer stands yet: no state is this. */
const UNKNOWN = 255;
