// Keys of groups: kernels that give a reading row's key as the index groups by it, and how the rows that read a group are found
// again when it changes. Shared by the files that plan totals and scans.

import type { Typed } from '../../language/typed.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
import { ownRowKernel } from '../kernels/load-kernels.ts';
import { type Kernel, room, scratch, type Vector } from '../kernels/vector.ts';
import type { Criterion } from './criteria-roles.ts';
import { holdsText, type KeySource, keyColumn, type Reader } from './reader.ts';

/** A kernel that gives the key as the index groups by it, and how its readers are found again. */
export interface Key {
  readonly kernel: Kernel;
  readonly source: KeySource;
}

/** The key that a criterion of equality asks for. */
export function planKeyFor(criterion: Criterion, reader: Reader): Key {
  const { column, value } = criterion;
  const own = value.node === 'cell' && value.links.length === 0 ? value : undefined;
  if (column.type.kind === 'link' && value.type.kind !== 'link') {
    const target = column.type.table;
    if (own !== undefined && own.table === target && own.column === reader.keyOf(target)) {
      return { kernel: ownRowKernel(), source: { by: 'own row' } };
    }
    return { kernel: slotOfText(target, value, reader), source: { by: 'any' } };
  }
  // What is worked out for the key stands in a column of its own, so that the readers of a group can be found by an index.
  const wanted = reader.asColumn(value);
  const kernel = reader.load(wanted);
  const source: KeySource = { by: 'column', column: wanted.id };
  if (!holdsText(reader, column.table, column.column)) return { kernel, source };
  const { texts } = reader.words;
  return { kernel: mapFilled(kernel, (code) => texts.fold(code)), source };
}

/** The slot of the row whose key reads as the text; -1 where none does. */
export function slotOfText(table: string, value: Typed, reader: Reader): Kernel {
  const lookup = reader.indexForLookup(table, [keyColumn(reader, table).id]);
  const { texts } = reader.words;
  return mapFilled(reader.plan(value), (code, frame) => {
    const index = lookup.read(frame);
    const members = index.members(index.findOne(texts.fold(code)));
    return members.count > 0 ? (members.rows[members.from] ?? -1) : -1;
  });
}

function mapFilled(kernel: Kernel, map: (value: number, frame: Frame) => number): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const given = kernel(batch);
    const count = given.uniform ? 1 : batch.count;
    out.uniform = given.uniform;
    out.clean = given.clean;
    for (let i = 0; i < count; i++) {
      const state = given.clean ? FILLED : (given.states[given.at + i] ?? BLANK);
      const value = given.values[given.at + i] ?? 0;
      out.states[i] = state;
      out.values[i] = state === FILLED ? map(value, batch.frame) : value;
    }
    return out;
  };
}

/** Room for a key of so many parts. */
export const roomForKey = (parts: number): Float64Array => new Float64Array(Math.max(1, parts));

/** Puts the key of the batch's i-th row into `row`; where a part is faulty its fault's number comes first and the state is FAULT. */
export function readKey(vectors: readonly Vector[], i: number, row: Float64Array): number {
  let state = FILLED;
  for (let k = 0; k < vectors.length; k++) {
    const { values, states, at, clean, uniform } = vectors[k] as Vector;
    const place = uniform ? at : at + i;
    row[k] = values[place] as number;
    if (clean) continue;
    const given = states[place];
    if (given === FAULT) {
      row[0] = values[place] as number;
      return FAULT;
    }
    if (given === BLANK) state = BLANK;
  }
  return state;
}
