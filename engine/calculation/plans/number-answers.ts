// How functions over matching rows answer where all is numbers: each group's rows are looked at once a run, as numbers, and
// reading rows are answered without a boxed value; and what such an answer is, in numbers or not. Called by scan-plans.ts, and by
// column-plans.ts for whole columns.

import type { OverNumbers } from '../../functions/definition.ts';
import { FAULT, FILLED } from '../../values/column.ts';
import type { Dictionaries, Frame } from '../frame.ts';
import { type Stored, toStored } from '../kernels/scalars.ts';
import type { Batch, Vector } from '../kernels/vector.ts';
import type { ColumnDef } from '../layout.ts';

/** Stands for a group where the reading row's own conditions chose among its rows. */
export const CHOSEN = -2;

/** `group` is the number of the group whose rows are handed over whole, -1 of none, or CHOSEN. */
export type RowsAnswer = (rows: Int32Array, count: number, out: Vector, i: number, frame: Frame, group: number) => void;

type RowAnswer = ReturnType<OverNumbers>;

/** Reads a row's values as numbers, not-a-number for blanks; false where one is faulty, which the row is then answered with. */
export function readGiven(
  vectors: readonly (Vector | undefined)[],
  i: number,
  given: Float64Array,
  out: Vector,
): boolean {
  for (let k = 0; k < vectors.length; k++) {
    const vector = vectors[k];
    if (vector === undefined) {
      given[k] = Number.NaN;
      continue;
    }
    const at = vector.at + (vector.uniform ? 0 : i);
    const state = vector.clean ? FILLED : vector.states[at];
    if (state === FAULT) {
      out.values[i] = vector.values[at] as number;
      out.states[i] = FAULT;
      return false;
    }
    given[k] = state === FILLED ? (vector.values[at] as number) : Number.NaN;
  }
  return true;
}

const stored: Stored = { value: 0, state: FILLED };

/** Answers a row with a number, with blank where it is none, with an error where it is too large. */
export function putAnswer(words: Dictionaries, answered: number, out: Vector, i: number): void {
  if (answered - answered === 0) {
    out.values[i] = answered;
    out.states[i] = FILLED;
    return;
  }
  toStored(words, answered, stored);
  out.values[i] = stored.value;
  out.states[i] = stored.state;
}

export interface NumberAnswers {
  readonly answer: RowsAnswer;
  readonly isKnown: (group: number) => boolean;
  /** To be called before a batch, with what its rows ask. */
  readonly begin: (scalars: readonly Vector[], batch: Batch) => void;
}

/** Answers in numbers, each group's rows looked at once a run. */
export function numberAnswers(
  overNumbers: OverNumbers,
  columns: readonly ColumnDef[],
  words: Dictionaries,
): NumberAnswers {
  const known = new Map<number, RowAnswer>();
  let run: object | undefined;
  /** What the row before was answered with. */
  let lastGroup = CHOSEN;
  let last: RowAnswer | undefined;
  let vectors: readonly Vector[] = [];
  let given = new Float64Array(0);
  const look = (rows: Int32Array, count: number, frame: Frame): RowAnswer =>
    overNumbers(
      columns.map((def) => {
        const { values, states, exceptions } = frame.column(def);
        const numbers = new Float64Array(count);
        for (let k = 0; k < count; k++) {
          const row = rows[k] as number;
          numbers[k] = exceptions === 0 || states[row] === FILLED ? (values[row] as number) : Number.NaN;
        }
        return numbers;
      }),
    );
  return {
    isKnown: (group) => known.has(group),
    begin: (scalars, batch) => {
      vectors = scalars;
      if (given.length !== scalars.length) given = new Float64Array(scalars.length);
      if (batch.run === undefined || batch.run !== run) {
        known.clear();
        last = undefined;
        lastGroup = CHOSEN;
      }
      run = batch.run;
    },
    answer: (rows, count, out, i, frame, group) => {
      if (!readGiven(vectors, i, given, out)) return;
      if (last === undefined || group === CHOSEN || group !== lastGroup) {
        last = (group === CHOSEN ? undefined : known.get(group)) ?? look(rows, count, frame);
        lastGroup = group;
        if (group !== CHOSEN) known.set(group, last);
      }
      putAnswer(words, last(given), out, i);
    },
  };
}
