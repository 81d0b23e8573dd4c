// Plans functions over whole columns as lists: MATCH, PERCENTILE, FORECAST. Called by call-plans.ts alone.

import type { OverNumbers, RunBody } from '../../functions/definition.ts';
import { numbersIn } from '../../functions/kept-for.ts';
import type { Typed } from '../../language/typed.ts';
import { BLANK, FILLED } from '../../values/column.ts';
import type { Scalar } from '../../values/error.ts';
import type { Frame } from '../frame.ts';
import { type Stored, toScalar, toStored } from '../kernels/scalars.ts';
import { type Kernel, room, scratch } from '../kernels/vector.ts';
import type { Layout } from '../layout.ts';
import { planArgument } from './argument-plans.ts';
import type { CallNode } from './call-nodes.ts';
import { holdsNumbers } from './criteria-roles.ts';
import { putAnswer, readGiven } from './number-answers.ts';
import type { Reader } from './reader.ts';
import { WholeReads } from './whole-reads.ts';

/** Functions over whole columns as lists: MATCH, PERCENTILE, FORECAST. A call without cells of this row is worked out once. */
export function planColumns(
  tree: CallNode,
  { compute, overNumbers }: Extract<RunBody, { lane: 'columns' }>,
  reader: Reader,
): Kernel {
  const { words } = reader;
  const lists = tree.args.map((argument) => listOf(argument, reader));
  const kernels = tree.args.map((argument, i) =>
    lists[i] !== undefined || argument.node === 'blank' ? undefined : planArgument(argument, i, tree, reader),
  );
  const types = tree.args.map(({ type }) => type);
  if (overNumbers !== undefined && types.every(holdsNumbers))
    return overNumbersKernel(overNumbers, lists, kernels, reader);
  const stored: Stored = { value: 0, state: FILLED };
  const out = scratch();
  // One list for all rows: bodies keep nothing of it.
  const args: (Scalar | readonly Scalar[])[] = tree.args.map(() => null);
  return (batch) => {
    room(out, batch.count);
    const vectors = kernels.map((kernel) => kernel?.(batch));
    for (let k = 0; k < lists.length; k++) args[k] = lists[k]?.(batch.frame) ?? null;
    out.uniform = vectors.every((vector) => vector === undefined || vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    let clean = true;
    for (let i = 0; i < count; i++) {
      for (let k = 0; k < vectors.length; k++) {
        const vector = vectors[k];
        if (vector === undefined) continue;
        const at = vector.at + (vector.uniform ? 0 : i);
        const state = vector.clean ? FILLED : (vector.states[at] ?? BLANK);
        args[k] = toScalar(words, types[k] ?? tree.type, vector.values[at] ?? 0, state);
      }
      toStored(words, compute(args), stored);
      out.values[i] = stored.value;
      out.states[i] = stored.state;
      if (stored.state !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

/** The same in numbers, where the columns come after the single values: they are looked at again where one became another. */
function overNumbersKernel(
  overNumbers: OverNumbers,
  lists: readonly (List | undefined)[],
  kernels: readonly (Kernel | undefined)[],
  { words }: Reader,
): Kernel {
  const asked = lists.filter((list) => list !== undefined);
  const singles = kernels.filter((_, k) => lists[k] === undefined);
  const given = new Float64Array(singles.length);
  const seen: (readonly Scalar[])[] = [];
  let answer: ReturnType<OverNumbers> | undefined;
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const vectors = singles.map((kernel) => kernel?.(batch));
    asked.forEach((list, k) => {
      const now = list(batch.frame);
      if (now !== seen[k]) answer = undefined;
      seen[k] = now;
    });
    answer ??= overNumbers(seen.map(numbersIn));
    out.uniform = vectors.every((vector) => vector === undefined || vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    let clean = true;
    for (let i = 0; i < count; i++) {
      if (readGiven(vectors, i, given, out)) putAnswer(words, answer(given), out, i);
      if (out.states[i] !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

/**
 * A column's values over the rows that exist, gathered again only when the column or the rows changed; of links that are
 * compared with text their keys. undefined for what is no column.
 */
function listOf(argument: Typed, reader: Reader): ((frame: Frame) => readonly Scalar[]) | undefined {
  const node = argument.node === 'key' ? argument.operand : argument;
  if (node.node !== 'column') return undefined;
  const { words } = reader;
  const reads = new WholeReads(reader);
  const table = reads.rows(node.table);
  const column = reads.column(node.table, node.column);
  const key = argument.node === 'key' && node.type.kind === 'link' ? reader.keyOf(node.type.table) : undefined;
  const keys = key === undefined || node.type.kind !== 'link' ? undefined : reads.column(node.type.table, key);
  const lists = listsOf(reader);
  const name = `${node.table}/${node.column}${keys === undefined ? '' : '/keys'}`;
  const known = lists.get(name);
  if (known !== undefined) return known;
  const list = reads.once((frame) => {
    const { values, states } = frame.column(column);
    const named = keys === undefined ? undefined : frame.column(keys);
    return Array.from(frame.rows(table), (row) => {
      const value = values[row] ?? 0;
      const state = states[row] ?? BLANK;
      if (named === undefined || state !== FILLED) return toScalar(words, node.type, value, state);
      return toScalar(words, argument.type, named.values[value] ?? 0, named.states[value] ?? BLANK);
    });
  });
  lists.set(name, list);
  return list;
}

type List = (frame: Frame) => readonly Scalar[];
const kept = new WeakMap<Layout, Map<string, List>>();

/** The lists of one program: formulas that read the same column are handed the same one. */
function listsOf({ layout }: Reader): Map<string, List> {
  const known = kept.get(layout);
  if (known !== undefined) return known;
  const made = new Map<string, List>();
  kept.set(layout, made);
  return made;
}
