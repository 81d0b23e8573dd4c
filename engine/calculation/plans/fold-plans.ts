// Plans folds: SUM and its kin over this row's values and whole columns, SUMIFS and its kin over rows that meet conditions. A
// total whose conditions are equalities with this row's cells, or constants, is kept per group (indexes/totals.ts); of rows between bounds,
// or other than what this row says, it is put together (range-folds.ts, side-folds.ts); under other conditions the group's rows are
// looked through for each reading row (scan-plans.ts). Called by call-plans.ts alone.

import type { Fold } from '../../functions/definition.ts';
import type { Typed } from '../../language/typed.ts';
import { BLANK, type Column, FAULT, FILLED } from '../../values/column.ts';
import type { Scalar } from '../../values/error.ts';
import type { Faults } from '../../values/texts.ts';
import type { Frame } from '../frame.ts';
import type { GroupIndex } from '../indexes/group-index.ts';
import { Gathering, meetsAll, undefinedCell } from '../indexes/totals.ts';
import { pickKernel } from '../kernels/pick-kernel.ts';
import { step } from '../kernels/states.ts';
import { sumKernel } from '../kernels/sum-kernel.ts';
import { type Kernel, room, scratch, type Vector } from '../kernels/vector.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { planArgument } from './argument-plans.ts';
import { alikeness } from './arranged.ts';
import type { CallNode } from './call-nodes.ts';
import { type ColumnNode, type Criterion, isFixed, rolesOf } from './criteria-roles.ts';
import { type Key, planKeyFor, readKey, roomForKey } from './group-keys.ts';
import { FEW_IN_RANGE, RangeFolds } from './range-folds.ts';
import { planRanged, type Ranged, rangedKernel } from './range-plans.ts';
import type { CountedRows, PlannedTotal, Reader } from './reader.ts';
import { RunningSums, runningSumKernel } from './running-sums.ts';
import {
  type Conditions,
  conditionsOf,
  countedBetween,
  countedBy,
  matchingKernel,
  planMatching,
} from './scan-plans.ts';
import { sideKernel } from './side-folds.ts';

/** SUM([a]; [b]; Table[c]): every value folded, blanks skipped. */
export function planFold(tree: CallNode, fold: Fold, reader: Reader): Kernel {
  const [only] = tree.args;
  if (tree.args.length === 1 && only?.node === 'column') {
    const total = reader.total({
      table: only.table,
      keys: [],
      sources: [],
      reads: [],
      column: only.column,
      filters: [],
      fold,
      sameAs: tree.signature.name,
    });
    return totalKernel([], total);
  }
  const kernels = tree.args.map((argument, i) =>
    argument.node === 'column' || argument.node === 'blank' ? undefined : planArgument(argument, i, tree, reader),
  );
  if (tree.args.every((argument) => argument.node !== 'column') && fold.takes === 'numbers') {
    const given = kernels.filter((kernel) => kernel !== undefined);
    const { faults } = reader.words;
    const [one] = given;
    if (one !== undefined && given.length === 1 && fold.addsUp === true) return sumOfOne(one);
    if (fold.addsUp === true) return sumKernel(given, undefinedCell(fold, faults));
    if (fold.picks !== undefined && one !== undefined)
      return pickKernel(given, fold.picks, undefinedCell(fold, faults));
    return foldKernel(given, fold, faults);
  }
  const columns = tree.args.map((argument) => (argument.node === 'column' ? readWhole(argument, reader) : undefined));
  const gathering = new Gathering();
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const vectors = kernels.map((kernel) => kernel?.(batch));
    const wholes = columns.map((column) => (column === undefined ? undefined : cellsOf(column, batch.frame)));
    const most = tree.args.length + wholes.reduce((sum, one) => sum + (one?.rows.length ?? 0), 0);
    const { count } = batch;
    let clean = true;
    for (let i = 0; i < count; i++) {
      gathering.start(most);
      for (let k = 0; k < vectors.length; k++) {
        const vector = vectors[k];
        const whole = wholes[k];
        if (vector !== undefined) {
          const at = vector.at + (vector.uniform ? 0 : i);
          gathering.take(fold, vector.values[at] ?? 0, vector.clean ? FILLED : (vector.states[at] ?? BLANK));
        } else if (whole !== undefined) {
          const { values, states } = whole.column;
          for (const row of whole.rows) gathering.take(fold, values[row] ?? 0, states[row] ?? BLANK);
        }
      }
      out.states[i] = gathering.finish(fold, reader.words.faults);
      out.values[i] = gathering.result;
      if (out.states[i] !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

/** The sum of one value: itself, or nothing where there is none. Formulas so turn a blank total into nought. */
function sumOfOne(kernel: Kernel): Kernel {
  const out = scratch();
  return (batch) => {
    const given = kernel(batch);
    if (given.clean) return given;
    room(out, batch.count);
    out.uniform = given.uniform;
    out.clean = true;
    const count = given.uniform ? 1 : batch.count;
    for (let i = 0; i < count; i++) {
      const state = given.states[given.at + i];
      out.values[i] = state === BLANK ? 0 : (given.values[given.at + i] as number);
      out.states[i] = state === FAULT ? FAULT : FILLED;
      if (state === FAULT) out.clean = false;
    }
    return out;
  };
}

/** A fold over values of one row alone: blanks skipped, the leftmost fault passed on. */
function foldKernel(kernels: readonly Kernel[], fold: Fold, faults: Faults): Kernel {
  const out = scratch();
  const values = new Float64Array(kernels.length);
  const none = undefinedCell(fold, faults);
  return (batch) => {
    room(out, batch.count);
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
      out.values[i] = defined ? result : none.value;
      const state = fault >= 0 ? FAULT : defined ? FILLED : none.state;
      out.states[i] = state;
      if (state !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

interface WholeColumn {
  readonly table: TableDef;
  readonly column: ColumnDef;
}

function readWhole(node: ColumnNode, reader: Reader): WholeColumn {
  reader.readsWhole(node.table, node.column);
  reader.readsRowsOf(node.table);
  return { table: reader.layout.table(node.table), column: reader.layout.column(node.table, node.column) };
}

function cellsOf({ table, column }: WholeColumn, frame: Frame): { readonly column: Column; readonly rows: Int32Array } {
  return { column: frame.column(column), rows: frame.rows(table) };
}

/** SUMIFS and its kin. */
export function planConditionalFold(tree: CallNode, fold: Fold, reader: Reader): Kernel {
  const { values, criteria } = rolesOf(tree.args);
  const first = values[0] ?? criteria[0]?.column;
  if (first === undefined) throw new Error(`${tree.signature.name} has no column`);
  // COUNTIFS counts rows; SUMIF without a column of values adds up the column it looks at.
  const column = values.length === 0 && fold.takes === 'filled' ? undefined : first.column;
  const told = conditionsOf(criteria, reader);
  if (told.scanned.length > 0) return planScannedFold(tree, first.table, column, told, fold, reader);
  const alike = told.keyed.length === 1 ? oneOfAKind(criteria) : undefined;
  const others = criteria.filter((one) => one !== alike);
  const conditions =
    alike === undefined
      ? told
      : { ...told, keyed: [...told.keyed, alike], filters: conditionsOf(others, reader).filters };
  const keys = conditions.keyed.map((criterion) => planKeyFor(criterion, reader));
  const fixed = others.filter(isFixed).map((one) => [one.column.column, one.comparison, constantOf(one.value)]);
  const total = reader.total({
    table: first.table,
    keys: conditions.keyed.map((criterion) => criterion.column.column),
    sources: keys.map((key) => key.source),
    reads: conditions.filters.map((filter) => filter.column.id),
    column,
    filters: conditions.filters,
    fold,
    sameAs: `${tree.signature.name} ${JSON.stringify(fixed)}`,
  });
  reader.counts(tree, countedByTotal(keys, conditions, total));
  const byKey = totalKernel(keys, total);
  return isOwnGroup(first.table, conditions, keys, reader) ? ownTotalKernel(total, byKey) : byKey;
}

/** Whether rows of the table being planned ask for the groups that they are in themselves: those with the same cells as theirs. */
function isOwnGroup(table: string, { keyed }: Conditions, keys: readonly Key[], reader: Reader): boolean {
  const asksOwnCell = ({ source }: Key, k: number): boolean =>
    source.by === 'column' && source.column === keyed[k]?.column.column;
  return table === reader.table.id && keyed.length > 0 && keys.length === keyed.length && keys.every(asksOwnCell);
}

/**
 * A condition that a word is one of a few, beside one other key: its rows are a group of their own, so that formulas over the
 * kinds of a week share one total, and a change of one kind leaves the others alone.
 */
function oneOfAKind(criteria: readonly Criterion[]): Criterion | undefined {
  return criteria.find(({ column, comparison, value }) => {
    const isWord = column.type.kind === 'text' || column.type.kind === 'choice' || column.type.kind === 'yesno';
    return isWord && comparison === '=' && value.node === 'constant';
  });
}

/** A total over rows that are looked through for each reading row. */
function planScannedFold(
  tree: CallNode,
  table: string,
  column: string | undefined,
  conditions: Conditions,
  fold: Fold,
  reader: Reader,
): Kernel {
  const values = column === undefined ? [] : [column];
  const ranged = planRanged(table, conditions, values, reader);
  if (ranged !== undefined) {
    reader.counts(tree, countedBetween(ranged));
    return rangedFold(ranged, column === undefined ? undefined : reader.layout.column(table, column), fold, reader);
  }
  const matching = planMatching(table, conditions, values, reader);
  reader.counts(tree, countedBy(matching));
  const data = column === undefined ? undefined : reader.layout.column(table, column);
  const gathering = new Gathering();
  const kernel = matchingKernel(matching, (rows, count, out, i, frame) => {
    const cells = data === undefined ? undefined : frame.column(data);
    gathering.start(count);
    if (cells === undefined) gathering.count = count;
    for (let k = 0; k < count && cells !== undefined; k++) {
      const row = rows[k] as number;
      gathering.take(fold, cells.values[row] as number, cells.states[row] as number);
    }
    out.states[i] = gathering.finish(fold, reader.words.faults);
    out.values[i] = gathering.result;
  });
  const [only, ...more] = conditions.scanned;
  const { running } = fold;
  if (only === undefined || more.length > 0 || only.comparison === '=' || running === undefined) return kernel;
  if (alikeness(only) !== 'texts' && only.comparison !== '<>') return kernel;
  return sideKernel({ matching, column: data, fold, running }, reader.words, kernel);
}

/** A total of the rows between bounds, by rising value. */
function rangedFold(ranged: Ranged, column: ColumnDef | undefined, fold: Fold, reader: Reader): Kernel {
  const { faults } = reader.words;
  const none = undefinedCell(fold, faults);
  const gathering = new Gathering();
  const { running } = fold;
  // Sums of all rows up to a place go on where others ended, one value after another; other lists are put together of blocks.
  const isUpTo = ranged.sorted.every(({ comparison }) => comparison === '<' || comparison === '<=');
  const goesOn = fold.addsUp === true && isUpTo;
  const sums = goesOn && column !== undefined ? new RunningSums(column) : undefined;
  const folds =
    !goesOn && running !== undefined && column !== undefined
      ? new RangeFolds((frame) => frame.column(column), running)
      : undefined;
  const kernel = rangedKernel(
    ranged,
    (rows, from, to, out, i, frame, group, run) => {
      const isOwn = rows === group.rows;
      const sum = isOwn && run !== undefined ? sums?.upTo(to - from, group, frame, run) : undefined;
      if (sum !== undefined) {
        out.values[i] = sum;
        out.states[i] = FILLED;
        return;
      }
      if (folds !== undefined && isOwn && to - from > FEW_IN_RANGE) {
        const { value, state } = folds.between(from, to, group, frame, run ?? {});
        const isNone = value - value !== 0;
        out.values[i] = isNone ? none.value : value;
        out.states[i] = isNone ? none.state : state;
        return;
      }
      gathering.start(to - from);
      if (column === undefined) {
        gathering.count = to - from;
      } else {
        const { values, states, exceptions } = frame.column(column);
        if (exceptions === 0 && fold.takes !== 'blanks') {
          const gathered = gathering.values;
          for (let place = from; place < to; place++) gathered[place - from] = values[rows[place] as number] as number;
          gathering.count = to - from;
        } else {
          for (let place = from; place < to; place++) {
            const row = rows[place] as number;
            gathering.take(fold, values[row] as number, states[row] as number);
          }
        }
      }
      out.states[i] = gathering.finish(fold, faults);
      out.values[i] = gathering.result;
    },
    true,
  );
  return sums === undefined || column === undefined ? kernel : runningSumKernel(ranged, column, sums, kernel);
}

function constantOf(value: Typed): Scalar {
  return value.node === 'constant' ? value.value : null;
}

function countedByTotal(keys: readonly Key[], { filters }: Conditions, { index }: PlannedTotal): CountedRows {
  return (frame, row) => {
    const batch = { frame, rows: undefined, from: row, count: 1 };
    const key = roomForKey(keys.length);
    const state = readKey(
      keys.map(({ kernel }) => kernel(batch)),
      0,
      key,
    );
    if (state !== FILLED) return new Int32Array(0);
    const groups = index.read(frame);
    const { rows, from, count } = groups.members(groups.find(key));
    return rows.subarray(from, from + count).filter((one) => meetsAll(filters, one, frame));
  };
}

/** Reads the totals of the rows' own groups, as the index knows them; by key where one of the rows is in none. */
function ownTotalKernel({ index, totals }: PlannedTotal, byKey: Kernel): Kernel {
  const out = scratch();
  return (batch) => {
    room(out, batch.count);
    const { rows, from, count, frame } = batch;
    const { groupOf } = index.read(frame);
    const { values, states, length } = totals.read(frame).cells;
    out.clean = true;
    for (let i = 0; i < count; i++) {
      const group = groupOf[rows === undefined ? from + i : (rows[i] as number)] ?? -1;
      if (group < 0 || group >= length) return byKey(batch);
      const state = states[group] as number;
      out.values[i] = values[group] as number;
      out.states[i] = state;
      if (state !== FILLED) out.clean = false;
    }
    return out;
  };
}

/** Reads group totals by key. */
function totalKernel(keys: readonly Key[], { index, totals }: PlannedTotal): Kernel {
  const out = scratch();
  const row = roomForKey(keys.length);
  return (batch) => {
    room(out, batch.count);
    const vectors = keys.map(({ kernel }) => kernel(batch));
    out.uniform = vectors.every((vector) => vector.uniform);
    const count = out.uniform ? 1 : batch.count;
    const groups = index.read(batch.frame);
    const { cells, nothing } = totals.read(batch.frame);
    if (vectors.length > 0 && vectors.length <= 2 && vectors.every((vector) => vector.clean)) {
      return readTotals(out, count, vectors, groups, cells, nothing);
    }
    let clean = true;
    for (let i = 0; i < count; i++) {
      const state = readKey(vectors, i, row);
      if (state === FILLED) {
        const group = groups.find(row);
        const from = group < 0 || group >= cells.length ? nothing : cells;
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

/** The totals of the groups that one or two filled key values name. */
function readTotals(
  out: Vector,
  count: number,
  [one, other]: readonly Vector[],
  groups: GroupIndex,
  cells: Column,
  nothing: Column,
): Vector {
  out.clean = true;
  if (one === undefined) return out;
  const { values: to, states: toStates } = out;
  const { values, states, length } = cells;
  const [ofNone, stateOfNone] = [nothing.values[0] ?? 0, nothing.states[0] ?? BLANK];
  const [first, second] = [one.values, (other ?? one).values];
  let [atFirst, atSecond] = [one.at, (other ?? one).at];
  const [stepFirst, stepSecond] = [step(one), step(other ?? one)];
  let worst = FILLED;
  for (let i = 0; i < count; i++, atFirst += stepFirst, atSecond += stepSecond) {
    const value = first[atFirst] as number;
    const group = other === undefined ? groups.findOne(value) : groups.findTwo(value, second[atSecond] as number);
    const isKnown = group >= 0 && group < length;
    const state = isKnown ? (states[group] as number) : stateOfNone;
    to[i] = isKnown ? (values[group] as number) : ofNone;
    toStates[i] = state;
    worst |= state;
  }
  out.clean = worst === FILLED;
  return out;
}
