// Plans folds: SUM and its kin over this row's values and whole columns, SUMIFS and its kin over rows that meet conditions. A
// total whose conditions are equalities with this row's cells, or constants, is kept per group (rollup.ts); other conditions
// scan the group's rows for each reading row (scan-plans.ts). Called by call-plans.ts alone.

import type { Fold } from '../functions/definition.ts';
import type { Typed } from '../language/typed.ts';
import { BLANK, Column, FAULT, FILLED } from '../values/column.ts';
import type { Scalar } from '../values/error.ts';
import type { Faults } from '../values/texts.ts';
import { planArgument } from './argument-plans.ts';
import type { CallNode } from './call-nodes.ts';
import { type ColumnNode, type Criterion, fixedFilter, isFixed, rolesOf } from './criteria-roles.ts';
import type { GroupIndex } from './group-index.ts';
import { planKeyFor, readKey } from './group-keys.ts';
import { loopKernel } from './loop-kernels.ts';
import type { Reader } from './reader.ts';
import { Gathering, type RowFilter } from './rollup.ts';
import { scanKernel } from './scan-plans.ts';
import { type Kernel, scratch, type Vector } from './vector.ts';

/** SUM([a]; [b]; Table[c]): every value folded, blanks skipped. */
export function planFold(tree: CallNode, fold: Fold, reader: Reader): Kernel {
  const [only] = tree.args;
  if (tree.args.length === 1 && only?.node === 'column') {
    const rollup = reader.rollup({
      table: only.table,
      keys: [],
      sources: [],
      reads: [],
      column: only.column,
      filters: [],
      fold,
      sameAs: tree.signature.name,
    });
    return totalKernel([], rollup.index, rollup.totals, rollup.nothing);
  }
  const kernels = tree.args.map((argument, i) =>
    argument.node === 'column' || argument.node === 'blank' ? undefined : planArgument(argument, i, tree, reader),
  );
  if (tree.args.every((argument) => argument.node !== 'column') && fold.takes === 'numbers') {
    const given = kernels.filter((kernel) => kernel !== undefined);
    const { faults } = reader.model;
    return fold.ofTwo === undefined || given.length !== 2
      ? foldKernel(given, fold, faults)
      : loopKernel(given, fold.ofTwo, (same) => foldKernel(same, fold, faults));
  }
  const columns = tree.args.map((argument) => (argument.node === 'column' ? readWhole(argument, reader) : undefined));
  const gathering = new Gathering();
  const result = newCell();
  const out = scratch();
  return (batch) => {
    const vectors = kernels.map((kernel) => kernel?.(batch));
    const { count } = batch;
    let clean = true;
    for (let i = 0; i < count; i++) {
      gathering.start(tree.args.length + columns.reduce((sum, one) => sum + (one?.column.length ?? 0), 0));
      for (let k = 0; k < vectors.length; k++) {
        const vector = vectors[k];
        const whole = columns[k];
        if (vector !== undefined) {
          const at = vector.at + (vector.uniform ? 0 : i);
          gathering.take(fold, vector.values[at] ?? 0, vector.clean ? FILLED : (vector.states[at] ?? BLANK));
        } else if (whole !== undefined) {
          for (let row = 0; row < whole.column.length; row++) {
            if (whole.exists(row))
              gathering.take(fold, whole.column.values[row] ?? 0, whole.column.states[row] ?? BLANK);
          }
        }
      }
      gathering.finish(fold, result, 0, reader.model.faults);
      out.values[i] = result.values[0] ?? 0;
      out.states[i] = result.states[0] ?? BLANK;
      if (out.states[i] !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

/** A fold over values of one row alone: blanks skipped, the leftmost fault passed on. */
function foldKernel(kernels: readonly Kernel[], fold: Fold, faults: Faults): Kernel {
  const out = scratch();
  const values = new Float64Array(kernels.length);
  const undefinedState = fold.undefinedMeans === 'blank' ? BLANK : FAULT;
  const undefinedValue = fold.undefinedMeans === 'blank' ? 0 : faults.number(fold.undefinedMeans);
  return (batch) => {
    const vectors = kernels.map((kernel) => kernel(batch));
    out.uniform = vectors.every((vector) => vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    const given = vectors.every((vector) => vector.clean);
    let clean = true;
    for (let i = 0; i < count; i++) {
      let taken = 0;
      let fault = -1;
      for (let k = 0; k < vectors.length; k++) {
        const vector = vectors[k] as Vector;
        const at = vector.at + (vector.uniform ? 0 : i);
        const state = given || vector.clean ? FILLED : vector.states[at];
        if (state === FILLED) values[taken++] = vector.values[at] as number;
        else if (state === FAULT && fault < 0) fault = vector.values[at] as number;
      }
      const result = fault < 0 ? fold.fold(values, taken) : fault;
      const defined = result - result === 0;
      out.values[i] = defined ? result : undefinedValue;
      const state = fault >= 0 ? FAULT : defined ? FILLED : undefinedState;
      out.states[i] = state;
      if (state !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

function newCell(): Column {
  const cell = new Column(false);
  cell.grow(1);
  return cell;
}

function readWhole(
  node: ColumnNode,
  reader: Reader,
): { readonly column: Column; readonly exists: (row: number) => boolean } {
  reader.readsWhole(node.table, node.column);
  reader.readsRowsOf(node.table);
  const table = reader.model.table(node.table);
  return { column: table.column(node.column), exists: (row) => table.exists(row) };
}

/** SUMIFS and its kin. */
export function planConditionalFold(tree: CallNode, fold: Fold, reader: Reader): Kernel {
  const { values, criteria } = rolesOf(tree.args);
  const first = values[0] ?? criteria[0]?.column;
  if (first === undefined) throw new Error(`${tree.signature.name} has no column`);
  // COUNTIFS counts rows; SUMIF without a column of values adds up the column it looks at.
  const counted = values.length === 0 && fold.takes === 'filled';
  const keyed: Criterion[] = [];
  const filters: (RowFilter & { readonly name: string })[] = [];
  const scanned: Criterion[] = [];
  for (const criterion of criteria) {
    const filter = fixedFilter(criterion, reader);
    if (filter !== undefined) filters.push(filter);
    else if (criterion.comparison === '=') keyed.push(criterion);
    else scanned.push(criterion);
  }
  const keys = keyed.map((criterion) => planKeyFor(criterion, reader));
  const column = counted ? undefined : first.column;
  const request = {
    table: first.table,
    keys: keyed.map((criterion) => criterion.column.column),
    sources: keys.map((key) => key.source),
  };
  if (scanned.length === 0) {
    const fixed = criteria.filter(isFixed);
    const rollup = reader.rollup({
      ...request,
      reads: filters.map((filter) => filter.name),
      column,
      filters,
      fold,
      sameAs: `${tree.signature.name} ${JSON.stringify(fixed.map((one) => [one.column.column, one.comparison, constantOf(one.value)]))}`,
    });
    return totalKernel(
      keys.map((key) => key.kernel),
      rollup.index,
      rollup.totals,
      rollup.nothing,
    );
  }
  const reads = [
    ...filters.map((filter) => filter.name),
    ...scanned.map((one) => one.column.column),
    ...(column === undefined ? [] : [column]),
  ];
  const index = reader.scan({ ...request, reads });
  const data = column === undefined ? undefined : reader.model.table(first.table).column(column);
  const gathering = new Gathering();
  const result = newCell();
  return scanKernel(index, keys, filters, scanned, reader, (rows, count, out, i) => {
    gathering.start(count);
    for (let k = 0; k < count; k++) {
      const row = rows[k] ?? 0;
      if (data === undefined) gathering.take(fold, 1, FILLED);
      else gathering.take(fold, data.values[row] ?? 0, data.states[row] ?? BLANK);
    }
    gathering.finish(fold, result, 0, reader.model.faults);
    out.values[i] = result.values[0] ?? 0;
    out.states[i] = result.states[0] ?? BLANK;
  });
}

function constantOf(value: Typed): Scalar {
  return value.node === 'constant' ? value.value : null;
}

/** Reads group totals by key. */
function totalKernel(keys: readonly Kernel[], index: GroupIndex, totals: Column, nothing: Column): Kernel {
  const out = scratch();
  const row: number[] = [];
  return (batch) => {
    const vectors = keys.map((key) => key(batch));
    out.uniform = vectors.every((vector) => vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    let clean = true;
    for (let i = 0; i < count; i++) {
      const state = readKey(vectors, i, row);
      if (state === FILLED) {
        const group = index.find(row);
        const from = group < 0 || group >= totals.length ? nothing : totals;
        const slot = from === nothing ? 0 : group;
        out.values[i] = from.values[slot] ?? 0;
        out.states[i] = from.states[slot] ?? BLANK;
      } else {
        out.values[i] = row[0] ?? 0;
        out.states[i] = state;
      }
      if (out.states[i] !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}
