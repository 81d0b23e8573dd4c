// Plans functions over the rows of another table that meet conditions, looked through for each reading row: conditional totals
// whose conditions are no plain equalities, and functions over the matching rows' columns. Called by call-plans.ts and
// fold-plans.ts.

import type { Answer as FunctionAnswer, RunBody } from '../../functions/definition.ts';
import { BLANK, type Column, FILLED } from '../../values/column.ts';
import { isError, type Scalar } from '../../values/error.ts';
import { Figures } from '../../values/figures.ts';
import type { Frame, FrameState } from '../frame.ts';
import type { GroupIndex, Members } from '../indexes/group-index.ts';
import { meetsAll, type RowFilter } from '../indexes/totals.ts';
import { type Stored, toScalar, toStored } from '../kernels/scalars.ts';
import { type Batch, type Kernel, room, scratch, type Vector } from '../kernels/vector.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { bySlot, FEW_ROWS, fewInOrder } from '../row-order.ts';
import { planArgument } from './argument-plans.ts';
import { type Arranging, arranging, choose, FEW_TO_ORDER, type Ranked, ranked } from './arranged.ts';
import type { CallNode } from './call-nodes.ts';
import { type Criterion, fixedFilter, holdsNumbers, isFixed, meets, onKeys, rolesOf } from './criteria-roles.ts';
import { type Key, planKeyFor, readKey, roomForKey } from './group-keys.ts';
import { ListAnswers } from './list-answers.ts';
import { CHOSEN, numberAnswers, type RowsAnswer } from './number-answers.ts';
import { MANY, planRanged, type Ranged, rangedKernel } from './range-plans.ts';
import type { CountedRows, Reader } from './reader.ts';

/** The conditions of a call, told apart by how they are met. */
export interface Conditions {
  /** Equal to a value of the reading row: rows are found by an index. */
  readonly keyed: readonly Criterion[];
  /** The same for every reading row. */
  readonly filters: readonly RowFilter[];
  /** Compared with a value of the reading row: the rows of the group are looked through. */
  readonly scanned: readonly Criterion[];
}

export function conditionsOf(criteria: readonly Criterion[], reader: Reader): Conditions {
  const keyed: Criterion[] = [];
  const filters: RowFilter[] = [];
  const scanned: Criterion[] = [];
  for (const criterion of criteria) {
    const filter = fixedFilter(criterion, reader);
    if (filter !== undefined) filters.push(filter);
    else if (criterion.comparison === '=' && !isFixed(criterion)) keyed.push(criterion);
    else scanned.push(onKeys(criterion, reader));
  }
  return { keyed, filters, scanned };
}

/** A condition on a column against a value of the reading row. */
interface RowTest {
  readonly kernel: Kernel;
  readonly column: ColumnDef;
  readonly arrange: Arranging | undefined;
  readonly meets: (value: number, wanted: number) => boolean;
}

/** The rows that meet conditions, for one reading row after another. */
export interface Matching {
  readonly index: FrameState<GroupIndex>;
  readonly keys: readonly Key[];
  readonly filters: readonly RowFilter[];
  readonly tests: readonly RowTest[];
}

export function planMatching(
  table: string,
  conditions: Conditions,
  reads: readonly string[],
  reader: Reader,
): Matching {
  const { keyed, filters, scanned } = conditions;
  const keys = keyed.map((criterion) => planKeyFor(criterion, reader));
  const index = reader.scan({
    table,
    keys: keyed.map(({ column }) => column.column),
    sources: keys.map(({ source }) => source),
    reads: [...reads, ...filters.map(({ column }) => column.id), ...scanned.map(({ column }) => column.column)],
  });
  const tests = scanned.map((criterion) => ({
    kernel: reader.plan(criterion.value),
    column: reader.layout.column(criterion.column.table, criterion.column.column),
    arrange: arranging(criterion, reader.words.texts),
    meets: meets(reader, criterion),
  }));
  return { index, keys, filters, tests };
}

const NONE: readonly Scalar[] = [];

/** One row's answer from its scalars, the matching rows being given. */
type RowAnswer = (given: readonly Scalar[]) => FunctionAnswer;

/**
 * For each reading row: finds the rows of its group that meet the filters and the row's own conditions, and answers. Rows of a
 * group that is handed over whole, and of which the answer says that it knows it, are not looked up again.
 */
export function matchingKernel(
  { index, keys, filters, tests }: Matching,
  answer: RowsAnswer,
  isKnown: (group: number) => boolean = () => false,
): Kernel {
  const out = scratch();
  const ordered = new Map<number, readonly Ranked[]>();
  const ranksAll = tests.length > 0 && tests.every(({ arrange }) => arrange !== undefined);
  let run: object | undefined;
  const key = roomForKey(keys.length + tests.length);
  let matching = new Int32Array(64);
  const rankedOf = (group: number, members: Members, frame: Frame): readonly Ranked[] => {
    const made = ordered.get(group) ?? tests.flatMap((test) => ranked(test, filters, members, frame));
    ordered.set(group, made);
    return made;
  };
  return (batch) => {
    room(out, batch.count);
    const { frame } = batch;
    const parts = [...keys.map((one) => one.kernel(batch)), ...tests.map((test) => test.kernel(batch))];
    const looked = tests.map(({ column }) => frame.column(column));
    if (batch.run !== run) ordered.clear();
    run = batch.run;
    const many = run !== undefined && batch.count >= MANY && ranksAll;
    const groups = index.read(frame);
    let clean = true;
    let found = 0;
    let gathered = -1;
    for (let i = 0; i < batch.count; i++) {
      const state = readKey(parts, i, key);
      if (state !== FILLED) {
        out.values[i] = key[0] ?? 0;
        out.states[i] = state;
        clean = false;
        continue;
      }
      const group = keys.length === 1 ? groups.findOne(key[0] as number) : groups.find(key);
      // Without conditions of its own a row is handed what the row before it was handed, where both read one group.
      if (tests.length > 0 || (group !== gathered && !isKnown(group))) {
        const members = groups.members(group);
        const { rows, from, count } = members;
        if (count > matching.length) matching = new Int32Array(count * 2);
        found = 0;
        if (many && count > FEW_TO_ORDER) {
          const inOrder = rankedOf(group, members, frame);
          found = choose(inOrder, key, keys.length, matching, count);
          for (let k = 0; k < found; k++) matching[k] = rows[from + (matching[k] as number)] as number;
        } else {
          for (let k = 0; k < count; k++) {
            const row = rows[from + k] as number;
            let passes = meetsAll(filters, row, frame);
            for (let t = 0; t < tests.length && passes; t++) {
              const { values, states } = looked[t] as Column;
              const wanted = key[keys.length + t] as number;
              passes = states[row] === FILLED && (tests[t] as RowTest).meets(values[row] as number, wanted);
            }
            if (passes) matching[found++] = row;
          }
        }
        gathered = group;
      }
      answer(matching, found, out, i, frame, tests.length === 0 ? group : CHOSEN);
      if (out.states[i] !== FILLED) clean = false;
    }
    out.clean = clean;
    return out;
  };
}

/** Which rows lie between one reading row's bounds: found as the kernel finds them. */
export function countedBetween(ranged: Ranged): CountedRows {
  return (frame, row) => {
    let counted: Int32Array = new Int32Array(0);
    const kernel = rangedKernel(ranged, (rows, from, to, out, i) => {
      counted = rows.slice(from, to);
      out.states[i] = FILLED;
    });
    kernel({ frame, rows: undefined, from: row, count: 1 });
    return inOrder(counted, counted.length, ranged.table, frame);
  };
}

/** The same rows as they stand in their table: the first so many of a list. */
function inOrder(rows: Int32Array, count: number, table: TableDef, frame: Frame): Int32Array {
  const compare = frame.compare(table);
  if (count > FEW_ROWS) rows.subarray(0, count).sort(compare);
  else fewInOrder(rows, 0, count, compare ?? bySlot);
  return rows;
}

/** What was answered last of rows that a reading row chose: the weeks of a bed mostly ask for what the week before asked for. */
class LastAnswer {
  #run: object | undefined;
  #rows = new Int32Array(16);
  #count = 0;
  readonly #stored: Stored = { value: 0, state: FILLED };

  of(rows: Int32Array, count: number, run: object | undefined): Stored | undefined {
    if (run === undefined || run !== this.#run || count !== this.#count) return undefined;
    for (let k = 0; k < count; k++) if (rows[k] !== this.#rows[k]) return undefined;
    return this.#stored;
  }

  keep(rows: Int32Array, count: number, run: object | undefined, { value, state }: Stored): void {
    if (count > this.#rows.length) this.#rows = new Int32Array(count * 2);
    for (let k = 0; k < count; k++) this.#rows[k] = rows[k] as number;
    this.#count = count;
    this.#run = run;
    this.#stored.value = value;
    this.#stored.state = state;
  }
}

/** Which rows one reading row's conditions are met by: found as the kernel finds them. */
export function countedBy(matching: Matching): CountedRows {
  return (frame, row) => {
    let counted: Int32Array = new Int32Array(0);
    const kernel = matchingKernel(matching, (rows, count, out, i) => {
      counted = rows.slice(0, count);
      out.states[i] = FILLED;
    });
    const batch: Batch = { frame, rows: undefined, from: row, count: 1 };
    kernel(batch);
    return counted;
  };
}

interface AnswerOfRows {
  readonly answer: RowsAnswer;
  readonly isKnown: (group: number) => boolean;
  /** Whether the same rows are always answered the same within a batch. */
  readonly byRows: boolean;
}

/** Answers from the rows that meet the conditions, as they stand in their table. */
function planRows(
  tree: CallNode,
  table: string,
  conditions: Conditions,
  reads: readonly string[],
  { answer, isKnown, byRows }: AnswerOfRows,
  reader: Reader,
): Kernel {
  const ranged = planRanged(table, conditions, reads, reader);
  if (ranged !== undefined) {
    reader.counts(tree, countedBetween(ranged));
    let found = new Int32Array(64);
    return rangedKernel(
      ranged,
      (rows, from, to, out, i, frame) => {
        const count = to - from;
        if (count > found.length) found = new Int32Array(count * 2);
        for (let k = 0; k < count; k++) found[k] = rows[from + k] as number;
        if (count > 1) inOrder(found, count, ranged.table, frame);
        answer(found, count, out, i, frame, CHOSEN);
      },
      byRows,
    );
  }
  const matching = planMatching(table, conditions, reads, reader);
  reader.counts(tree, countedBy(matching));
  return matchingKernel(matching, answer, isKnown);
}

/**
 * Functions over the columns of matching rows: each reading row gets the scalars and the columns' values. Rows that read the
 * same group whole are handed the very same lists within a run, so that a body may keep what it worked out for them.
 */
export function planMatchingRows(
  tree: CallNode,
  body: Extract<RunBody, { lane: 'matching rows' }>,
  reader: Reader,
): Kernel {
  const { scalars, values, criteria } = rolesOf(tree.args);
  const first = values[0] ?? criteria[0]?.column;
  if (first === undefined) throw new Error(`${tree.signature.name} has no column`);
  const reads = values.map((one) => one.column);
  const conditions = conditionsOf(criteria, reader);
  const columns = values.map((one) => ({ type: one.type, column: reader.layout.column(one.table, one.column) }));
  // Scalars come first, so each stands at its parameter's place.
  const kernels = scalars.map((scalar, k) => planArgument(scalar, k, tree, reader));
  // Several figures are handed over cell by cell, and can't be given twice.
  const bare = kernels.length === 0 && tree.type.kind !== 'record';
  let vectors: Vector[] = [];
  const { overNumbers, takesFirst = false } = body;
  if (overNumbers !== undefined && columns.every(({ type }) => holdsNumbers(type))) {
    const asked = columns.map(({ column }) => column);
    const { answer, isKnown, begin } = numberAnswers(overNumbers, asked, reader.words);
    const kernel = planRows(tree, first.table, conditions, reads, { answer, isKnown, byRows: bare }, reader);
    return (batch) => {
      begin(
        kernels.map((one) => one(batch)),
        batch,
      );
      return kernel(batch);
    };
  }
  /** What answers the rows that read a group whole. */
  const known = new Map<number, RowAnswer>();
  let run: object | undefined;
  const stored: Stored = { value: 0, state: FILLED };
  /** What is answered where no row meets the conditions, and nothing is given besides. */
  let nothing: Stored | undefined;
  const last = new LastAnswer();
  const lists = new ListAnswers();
  const onlyColumn = columns.length === 1 ? columns[0]?.column : undefined;
  const { words } = reader;
  const listsOf = (rows: Int32Array, count: number, frame: Frame): readonly (readonly Scalar[])[] =>
    columns.map(({ type, column }) => {
      const { values: cells, states } = frame.column(column);
      const list: Scalar[] = [];
      const isPlain = holdsNumbers(type);
      for (let k = 0; k < count; k++) {
        const row = rows[k] as number;
        const state = states[row] ?? BLANK;
        list.push(isPlain && state === FILLED ? (cells[row] as number) : toScalar(words, type, cells[row] ?? 0, state));
        if (takesFirst && state !== BLANK) break;
      }
      return list;
    });
  const answering = (rows: Int32Array, count: number, frame: Frame): RowAnswer => {
    const lists = listsOf(rows, count, frame);
    if (!bare) return (given) => body.compute(given, lists);
    let made: { readonly answer: FunctionAnswer } | undefined;
    return () => {
      made ??= { answer: body.compute([], lists) };
      return made.answer;
    };
  };
  /** What a row is answered that gives scalars, or reads a group whole. */
  const asked = (rows: Int32Array, count: number, i: number, frame: Frame, group: number): FunctionAnswer => {
    const given = vectors.map((vector, k): Scalar => {
      const at = vector.at + (vector.uniform ? 0 : i);
      const type = scalars[k]?.type ?? tree.type;
      return toScalar(words, type, vector.values[at] ?? 0, vector.clean ? FILLED : (vector.states[at] ?? BLANK));
    });
    const shared = group === CHOSEN ? undefined : known.get(group);
    const rowAnswer = shared ?? answering(rows, count, frame);
    if (shared === undefined && group !== CHOSEN) known.set(group, rowAnswer);
    return given.find(isError) ?? rowAnswer(given);
  };
  /** Leaves in `stored` what is answered of rows that a reading row chose, and that alone. */
  const chosen = (rows: Int32Array, count: number, frame: Frame): void => {
    const cells = onlyColumn === undefined ? undefined : frame.column(onlyColumn);
    if (cells === undefined || !lists.answered(rows, count, cells, stored)) {
      const answered = body.compute(NONE, listsOf(rows, count, frame));
      toStored(words, answered, stored);
      if (answered instanceof Figures) return;
      if (cells !== undefined) lists.keep(stored);
    }
    last.keep(rows, count, run, stored);
  };
  const answer: RowsAnswer = (rows, count, out, i, frame, group) => {
    const isBare = vectors.length === 0 && (group === CHOSEN || !known.has(group));
    const isNothing = isBare && count === 0;
    const same = isNothing ? nothing : isBare && group === CHOSEN ? last.of(rows, count, run) : undefined;
    if (same !== undefined) {
      out.values[i] = same.value;
      out.states[i] = same.state;
      return;
    }
    if (isBare && group === CHOSEN && !isNothing) chosen(rows, count, frame);
    else {
      const answered = asked(rows, count, i, frame, group);
      toStored(words, answered, stored);
      if (isNothing && !(answered instanceof Figures)) nothing = { ...stored };
    }
    out.values[i] = stored.value;
    out.states[i] = stored.state;
  };
  const kernel = planRows(
    tree,
    first.table,
    conditions,
    reads,
    { answer, isKnown: (group) => known.has(group), byRows: bare },
    reader,
  );
  return (batch) => {
    vectors = kernels.map((one) => one(batch));
    if (batch.run === undefined || batch.run !== run) known.clear();
    run = batch.run;
    lists.expect(batch.count, batch.from + batch.count);
    return kernel(batch);
  };
}
