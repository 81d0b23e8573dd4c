// Plans functions over whole columns and over rows that meet conditions. A total whose conditions are equalities with this
// row's cells, or constants, is kept per group (rollup.ts); other conditions scan the group's rows for each reading row.
// Called by call-plans.ts alone.

import type { Body, Fold } from '../functions/definition.ts';
import type { Comparison, Typed } from '../language/typed.ts';
import { BLANK, Column, FAULT, FILLED } from '../values/column.ts';
import { isError, type Scalar } from '../values/error.ts';
import type { Faults } from '../values/texts.ts';
import { compareNumbers } from '../values/tolerance.ts';
import { planArgument } from './argument-plans.ts';
import { type CallNode, isLeftOut, parameterAt } from './call-nodes.ts';
import type { GroupIndex } from './group-index.ts';
import { ownRowKernel } from './load-kernels.ts';
import { ORDERS } from './point-kernels.ts';
import type { KeySource, Reader } from './reader.ts';
import { Gathering, type RowFilter } from './rollup.ts';
import { type Stored, toScalar, toStored } from './scalars.ts';
import { type Kernel, scratch, type Vector } from './vector.ts';
import { WholeReads } from './whole-reads.ts';

type ColumnNode = Extract<Typed, { node: 'column' }>;

interface Criterion {
  readonly column: ColumnNode;
  readonly comparison: Comparison;
  readonly value: Typed;
}

interface Roles {
  readonly scalars: readonly Typed[];
  readonly values: readonly ColumnNode[];
  readonly criteria: readonly Criterion[];
}

/** A column followed by a condition is a criterion; other columns are values; the rest are scalars. */
function rolesOf(args: readonly Typed[]): Roles {
  const scalars: Typed[] = [];
  const values: ColumnNode[] = [];
  const criteria: Criterion[] = [];
  for (let i = 0; i < args.length; i++) {
    const argument = args[i];
    const next = args[i + 1];
    if (argument === undefined) continue;
    if (argument.node === 'column' && next?.node === 'condition') {
      criteria.push({ column: argument, comparison: next.comparison, value: next.value });
      i++;
    } else if (argument.node === 'column') values.push(argument);
    else scalars.push(argument);
  }
  return { scalars, values, criteria };
}

/** A kernel that gives the key as the index groups by it, and how its readers are found again. */
interface Key {
  readonly kernel: Kernel;
  readonly source: KeySource;
}

function planKeyFor(criterion: Criterion, reader: Reader): Key {
  const { column, value } = criterion;
  const own = value.node === 'cell' && value.links.length === 0 ? value : undefined;
  if (column.type.kind === 'link' && value.type.kind !== 'link') {
    const target = column.type.table;
    if (own !== undefined && own.table === target && own.column === reader.keyOf(target)) {
      return { kernel: ownRowKernel(), source: { by: 'own row' } };
    }
    return { kernel: slotOfText(target, value, reader), source: { by: 'any' } };
  }
  const kernel = reader.plan(value);
  const source: KeySource = own === undefined ? { by: 'any' } : { by: 'column', column: own.column };
  if (!reader.isText(column.table, column.column)) return { kernel, source };
  const { texts } = reader.model;
  return { kernel: mapFilled(kernel, (code) => texts.fold(code)), source };
}

/** The slot of the row whose key reads as the text; -1 where none does. */
export function slotOfText(table: string, value: Typed, reader: Reader): Kernel {
  const key = reader.keyOf(table);
  if (key === undefined) throw new Error(`${table} has no key`);
  const index = reader.indexForLookup(table, [key]);
  const { texts } = reader.model;
  return mapFilled(reader.plan(value), (code) => {
    const members = index.members(index.findOne(texts.fold(code)));
    return members.count > 0 ? (members.rows[0] ?? -1) : -1;
  });
}

function mapFilled(kernel: Kernel, map: (value: number) => number): Kernel {
  const out = scratch();
  return (batch) => {
    const given = kernel(batch);
    const count = given.uniform ? 1 : batch.count;
    out.uniform = given.uniform;
    out.clean = given.clean;
    for (let i = 0; i < count; i++) {
      const state = given.clean ? FILLED : (given.states[given.at + i] ?? BLANK);
      const value = given.values[given.at + i] ?? 0;
      out.states[i] = state;
      out.values[i] = state === FILLED ? map(value) : value;
    }
    return out;
  };
}

/** Whether a stored value stands in this comparison to a fixed one. */
function meets(reader: Reader, criterion: Criterion): (value: number, wanted: number) => boolean {
  const { column, comparison } = criterion;
  const takes = ORDERS[comparison];
  if (reader.isText(column.table, column.column)) return textComparison(comparison, reader);
  return (value, wanted) => takes(compareNumbers(value, wanted));
}

/** Whether a stored text stands in this comparison to another, case aside. */
function textComparison(comparison: Comparison, reader: Reader): (value: number, wanted: number) => boolean {
  const takes = ORDERS[comparison];
  const { texts } = reader.model;
  if (comparison === '=') return (value, wanted) => texts.fold(value) === texts.fold(wanted);
  if (comparison === '<>') return (value, wanted) => texts.fold(value) !== texts.fold(wanted);
  return (value, wanted) => {
    if (texts.fold(value) === texts.fold(wanted)) return takes(0);
    return takes(texts.text(value).toLowerCase() < texts.text(wanted).toLowerCase() ? -1 : 1);
  };
}

/** Whether a condition's value is written out; a blank is = or <> with nothing behind it. */
function isFixed({ value }: Criterion): boolean {
  return value.node === 'constant' || value.node === 'blank';
}

/** A constant condition as a filter; undefined where its value is not constant, or is the key of a link. */
function fixedFilter(criterion: Criterion, reader: Reader): (RowFilter & { readonly name: string }) | undefined {
  const { column, comparison, value } = criterion;
  const data = reader.model.table(column.table).column(column.column);
  if (value.node === 'blank') {
    return { column: data, name: column.column, meets: (_, state) => (state === BLANK) === (comparison === '=') };
  }
  if (value.node !== 'constant') return undefined;
  const test = meets(reader, criterion);
  const stored: Stored = { value: 0, state: FILLED };
  toStored(reader.model, value.value, stored);
  const wanted = stored.value;
  if (column.type.kind === 'link') {
    const key = reader.keyOf(column.type.table);
    if (key === undefined) return undefined;
    reader.readsWhole(column.type.table, key);
    const keys = reader.model.table(column.type.table).column(key);
    const compare = textComparison(comparison, reader);
    return {
      column: data,
      name: column.column,
      keys,
      meets: (slot, state) =>
        state === FILLED && keys.states[slot] === FILLED && compare(keys.values[slot] ?? 0, wanted),
    };
  }
  return { column: data, name: column.column, meets: (cell, state) => state === FILLED && test(cell, wanted) };
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

/** Puts the key of the batch's i-th row into `row`; where a part is faulty its fault's number comes first and the state is FAULT. */
function readKey(vectors: readonly Vector[], i: number, row: number[]): number {
  let state = FILLED;
  if (row.length !== vectors.length) row.length = vectors.length;
  for (let k = 0; k < vectors.length; k++) {
    const vector = vectors[k];
    if (vector === undefined) continue;
    const at = vector.at + (vector.uniform ? 0 : i);
    const given = vector.clean ? FILLED : (vector.states[at] ?? BLANK);
    if (given === FAULT) {
      row[0] = vector.values[at] ?? 0;
      return FAULT;
    }
    if (given === BLANK) state = BLANK;
    row[k] = vector.values[at] ?? 0;
  }
  return state;
}

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
  const { name, parameters, repeating } = tree.signature;
  const kernels = tree.args.map((argument, i) =>
    argument.node === 'column' || isLeftOut(argument)
      ? undefined
      : planArgument(argument, parameterAt(parameters, repeating, i), name, reader),
  );
  if (tree.args.every((argument) => argument.node !== 'column') && fold.takes === 'numbers') {
    const given = kernels.filter((kernel) => kernel !== undefined);
    return foldKernel(given, fold, reader.model.faults);
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

type Answer = (rows: Int32Array, count: number, out: Vector, i: number) => void;

/** For each reading row: finds the rows of its group that meet the filters and the row's own conditions, and answers. */
function scanKernel(
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
  body: Extract<Body, { lane: 'matching rows' }>,
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
  const { name, parameters } = tree.signature;
  const kernels = scalars.map((scalar, k) => planArgument(scalar, parameters[k], name, reader));
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

/** Functions over whole columns as lists: MATCH, PERCENTILE, FORECAST. A call without cells of this row is worked out once. */
export function planColumns(
  tree: CallNode,
  compute: Extract<Body, { lane: 'columns' }>['compute'],
  reader: Reader,
): Kernel {
  const { model } = reader;
  const lists = tree.args.map((argument) => listOf(argument, reader));
  const { name, parameters, repeating } = tree.signature;
  const kernels = tree.args.map((argument, i) =>
    lists[i] !== undefined || isLeftOut(argument)
      ? undefined
      : planArgument(argument, parameterAt(parameters, repeating, i), name, reader),
  );
  const stored: Stored = { value: 0, state: FILLED };
  const out = scratch();
  return (batch) => {
    const vectors = kernels.map((kernel) => kernel?.(batch));
    const whole = lists.map((list) => list?.());
    out.uniform = vectors.every((vector) => vector === undefined || vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    let clean = true;
    for (let i = 0; i < count; i++) {
      const args = vectors.map((vector, k): Scalar | readonly Scalar[] => {
        const list = whole[k];
        if (list !== undefined) return list;
        if (vector === undefined) return null;
        const at = vector.at + (vector.uniform ? 0 : i);
        const state = vector.clean ? FILLED : (vector.states[at] ?? BLANK);
        return toScalar(model, tree.args[k]?.type ?? tree.type, vector.values[at] ?? 0, state);
      });
      toStored(model, compute(args), stored);
      out.values[i] = stored.value;
      out.states[i] = stored.state;
      if (stored.state !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

/**
 * A column's values over the rows that exist, gathered again only when the column or the rows changed; of links that are
 * compared with text their keys. undefined for what is no column.
 */
function listOf(argument: Typed, reader: Reader): (() => readonly Scalar[]) | undefined {
  const node = argument.node === 'key' ? argument.operand : argument;
  if (node.node !== 'column') return undefined;
  const { model } = reader;
  const reads = new WholeReads(reader);
  const table = reads.rows(node.table);
  const column = reads.column(node.table, node.column);
  const key = argument.node === 'key' && node.type.kind === 'link' ? reader.keyOf(node.type.table) : undefined;
  const keys = key === undefined || node.type.kind !== 'link' ? undefined : reads.column(node.type.table, key);
  let seen = -1;
  let list: readonly Scalar[] = [];
  return () => {
    const now = reads.version();
    if (now === seen) return list;
    seen = now;
    list = Array.from(table.rows(), (row) => {
      const [value, state] = [column.values[row] ?? 0, column.states[row] ?? BLANK];
      if (keys === undefined || state !== FILLED) return toScalar(model, node.type, value, state);
      return toScalar(model, argument.type, keys.values[value] ?? 0, keys.states[value] ?? BLANK);
    });
    return list;
  };
}
