// Plans functions over the rows of another table that meet conditions, looked through for each reading row: conditional totals
// whose conditions are no plain equalities, and functions over the matching rows' columns. Called by call-plans.ts and
// fold-plans.ts.

import type { RunBody } from '../functions/definition.ts';
import { BLANK, FILLED } from '../values/column.ts';
import { isError, type Scalar } from '../values/error.ts';
import { planArgument } from './argument-plans.ts';
import type { CallNode } from './call-nodes.ts';
import { type Criterion, fixedFilter, isFixed, meets, rolesOf } from './criteria-roles.ts';
import type { GroupIndex } from './group-index.ts';
import { type Key, planKeyFor, readKey } from './group-keys.ts';
import type { Reader } from './reader.ts';
import type { RowFilter } from './rollup.ts';
import { type Stored, toScalar, toStored } from './scalars.ts';
import { type Kernel, scratch, type Vector } from './vector.ts';

type Answer = (rows: Int32Array, count: number, out: Vector, i: number) => void;

/** For each reading row: finds the rows of its group that meet the filters and the row's own conditions, and answers. */
export function scanKernel(
  index: GroupIndex,
  keys: readonly Key[],
  filters: readonly RowFilter[],
  scanned: readonly Criterion[],
  reader: Reader,
  answer: Answer,
): Kernel {
  const tests = scanned.map((criterion) => ({
    kernel: reader.plan(criterion.value),
    column: reader.model.table(criterion.column.table).column(criterion.column.column),
    meets: meets(reader, criterion),
  }));
  const out = scratch();
  const key: number[] = [];
  let matching = new Int32Array(64);
  return (batch) => {
    const keyVectors = keys.map((one) => one.kernel(batch));
    const wanted = tests.map((test) => test.kernel(batch));
    const parts = [...keyVectors, ...wanted];
    let clean = true;
    for (let i = 0; i < batch.count; i++) {
      const state = readKey(parts, i, key);
      if (state !== FILLED) {
        out.values[i] = key[0] ?? 0;
        out.states[i] = state;
        clean = false;
        continue;
      }
      const { rows, count } = index.members(index.find(key.slice(0, keys.length)));
      if (count > matching.length) matching = new Int32Array(count * 2);
      let found = 0;
      for (let k = 0; k < count; k++) {
        const row = rows[k] ?? 0;
        const passes =
          filters.every((filter) => filter.meets(filter.column.values[row] ?? 0, filter.column.states[row] ?? BLANK)) &&
          tests.every(
            (test, t) =>
              test.column.states[row] === FILLED && test.meets(test.column.values[row] ?? 0, key[keys.length + t] ?? 0),
          );
        if (passes) matching[found++] = row;
      }
      answer(matching, found, out, i);
      if (out.states[i] !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

/** Functions over the columns of matching rows: each reading row gets the scalars and the columns' values. */
export function planMatchingRows(
  tree: CallNode,
  body: Extract<RunBody, { lane: 'matching rows' }>,
  reader: Reader,
): Kernel {
  const { scalars, values, criteria } = rolesOf(tree.args);
  const first = values[0] ?? criteria[0]?.column;
  if (first === undefined) throw new Error(`${tree.signature.name} has no column`);
  const keyed = criteria.filter((one) => one.comparison === '=' && fixedFilter(one, reader) === undefined);
  const fixed = criteria.flatMap((one) => fixedFilter(one, reader) ?? []);
  const scanned = criteria.filter((one) => !keyed.includes(one) && !isFixed(one));
  const keys = keyed.map((criterion) => planKeyFor(criterion, reader));
  const index = reader.scan({
    table: first.table,
    keys: keyed.map((criterion) => criterion.column.column),
    sources: keys.map((key) => key.source),
    reads: [
      ...values.map((one) => one.column),
      ...fixed.map((one) => one.name),
      ...scanned.map((one) => one.column.column),
    ],
  });
  const columns = values.map((one) => ({ type: one.type, column: reader.model.table(one.table).column(one.column) }));
  // Scalars come first, so each stands at its parameter's place.
  const kernels = scalars.map((scalar, k) => planArgument(scalar, k, tree, reader));
  let vectors: Vector[] = [];
  const stored: Stored = { value: 0, state: FILLED };
  const { model } = reader;
  const scan = scanKernel(index, keys, fixed, scanned, reader, (rows, count, out, i) => {
    const given = vectors.map((vector, k): Scalar => {
      const at = vector.at + (vector.uniform ? 0 : i);
      const type = scalars[k]?.type ?? tree.type;
      return toScalar(model, type, vector.values[at] ?? 0, vector.clean ? FILLED : (vector.states[at] ?? BLANK));
    });
    const lists = columns.map(({ type, column }) =>
      Array.from(rows.subarray(0, count), (row) =>
        toScalar(model, type, column.values[row] ?? 0, column.states[row] ?? BLANK),
      ),
    );
    toStored(model, given.find(isError) ?? body.compute(given, lists), stored);
    out.values[i] = stored.value;
    out.states[i] = stored.state;
  });
  return (batch) => {
    vectors = kernels.map((kernel) => kernel(batch));
    return scan(batch);
  };
}
