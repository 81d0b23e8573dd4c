// Plans conditions with < <= > and >= against values of the reading row: the rows of a group stand sorted by the column that
// most conditions look at (indexes/ranged-rows.ts), so that those between two values lie together, and a change tells which
// reading rows it concerns. Called by fold-plans.ts, first-plans.ts and scan-plans.ts.

import type { Comparison } from '../../language/typed.ts';
import { FILLED } from '../../values/column.ts';
import { equalNumbers } from '../../values/tolerance.ts';
import type { Frame, FrameState } from '../frame.ts';
import type { GroupIndex } from '../indexes/group-index.ts';
import { boundary, isWithin, type RangeComparison, type RangedRows, type SortedRows } from '../indexes/ranged-rows.ts';
import type { RowFilter } from '../indexes/totals.ts';
import { type Batch, type Kernel, room, rowAt, scratch, type Vector } from '../kernels/vector.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import { type Criterion, holdsNumbers } from './criteria-roles.ts';
import { type Key, planKeyFor, readKey, roomForKey } from './group-keys.ts';
import { AnswersOfRun, SameAnswer } from './range-answers.ts';
import type { RangedRequest, Reader } from './reader.ts';
import { type Selections, selectionsOf } from './selections.ts';

/** A comparison with this row's value, which `kernel` gives. */
interface Bound {
  readonly kernel: Kernel;
  readonly column: ColumnDef;
  readonly comparison: RangeComparison;
}

/** Rows of groups between bounds. */
export interface Ranged {
  readonly table: TableDef;
  readonly index: FrameState<GroupIndex>;
  readonly ranged: FrameState<RangedRows>;
  readonly keys: readonly Key[];
  /** On the column that the rows are sorted by: together they cut one run out of the group. */
  readonly sorted: readonly Bound[];
  /** On other columns: the rows of the run are looked through. */
  readonly others: readonly Bound[];
  /** What rows chose whose conditions look at more than one column. */
  readonly selections: Selections | undefined;
}

const RANGES: readonly string[] = ['<', '<=', '>', '>='] satisfies readonly RangeComparison[];

function isRange(comparison: Comparison): comparison is RangeComparison {
  return RANGES.includes(comparison);
}

export interface RangeConditions {
  readonly keyed: readonly Criterion[];
  readonly filters: readonly RowFilter[];
  readonly scanned: readonly Criterion[];
}

/** Undefined where a condition is none that an order of numbers answers. */
export function planRanged(
  table: string,
  { keyed, filters, scanned }: RangeConditions,
  values: readonly string[],
  reader: Reader,
): Ranged | undefined {
  const { layout } = reader;
  if (!scanned.every(({ column, comparison }) => isRange(comparison) && holdsNumbers(column.type))) return undefined;
  const bounds = scanned.flatMap(({ column, comparison, value }) => {
    if (!isRange(comparison)) return [];
    return [{ column: layout.column(column.table, column.column), comparison, wanted: reader.asColumn(value) }];
  });
  const [first] = bounds;
  if (first === undefined) return undefined;
  const keys = keyed.map((criterion) => planKeyFor(criterion, reader));
  const often = (one: ColumnDef): number => bounds.filter(({ column }) => column === one).length;
  const sortedBy = bounds.reduce((best, { column }) => (often(column) > often(best) ? column : best), first.column);
  const request: RangedRequest = {
    table,
    keys: keyed.map(({ column }) => column.column),
    sources: keys.map(({ source }) => source),
    filters,
    conditions: bounds.map(({ column, comparison, wanted }) => ({ column, comparison, wanted })),
    sortedBy,
    values: values.map((id) => layout.column(table, id)),
  };
  const others = bounds.some(({ column }) => column !== sortedBy);
  const selections = others ? selectionsOf(layout, reader.table, request) : undefined;
  if (selections !== undefined) selections.calls += 1;
  const made = bounds.map(({ column, comparison, wanted }): Bound => {
    return { column, comparison, kernel: reader.load(wanted) };
  });
  return {
    ...reader.ranged(request),
    selections,
    table: layout.table(table),
    keys,
    sorted: made.filter(({ column }) => column === sortedBy),
    others: made.filter(({ column }) => column !== sortedBy),
  };
}

/** Of rows that stand in no group's order. */
const NOWHERE: SortedRows = { rows: new Int32Array(0), values: new Float64Array(0), from: 0, count: 0 };

const BLOCK = 32;
/** From so many reading rows on it pays to look through a group once for what all of them may ask. */
export const MANY = 8;

/**
 * For one run and group after another: the most (or least) that a block of rows side by side holds of a column, so that
 * blocks none of whose rows can meet a comparison are passed over. Spans that are over by a day are most of them.
 */
class Blocks {
  readonly #least: boolean;
  readonly #comparison: RangeComparison;
  #extremes = new Float64Array(8);
  #group: SortedRows | undefined;
  #run: object | undefined;

  constructor(comparison: RangeComparison) {
    this.#comparison = comparison;
    this.#least = comparison === '<' || comparison === '<=';
  }

  /** Whether any row from the block on may meet it that begins so many rows after the group does. */
  mayMeet(at: number, wanted: number, group: SortedRows, cells: ArrayLike<number> | undefined, run: object): boolean {
    if (this.#group !== group || this.#run !== run) {
      this.#look(group, cells);
      this.#group = group;
      this.#run = run;
    }
    return isWithin(this.#comparison, this.#extremes[Math.floor(at / BLOCK)] as number, wanted);
  }

  #look({ rows, from, count }: SortedRows, cells: ArrayLike<number> | undefined): void {
    const blocks = Math.ceil(count / BLOCK);
    if (blocks > this.#extremes.length) this.#extremes = new Float64Array(blocks * 2);
    for (let block = 0; block < blocks; block++) {
      let extreme = this.#least ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
      const end = Math.min(count, (block + 1) * BLOCK);
      for (let at = block * BLOCK; at < end; at++) {
        const value = cells?.[rows[from + at] as number] as number;
        if (this.#least ? value < extreme : value > extreme) extreme = value;
      }
      this.#extremes[block] = extreme;
    }
  }
}

/** `run`: the same while nothing that is read changes, where `rows` are the group's own and many rows ask of it; else undefined. */
export type RangeAnswer = (
  rows: Int32Array,
  from: number,
  to: number,
  out: Vector,
  i: number,
  frame: Frame,
  group: SortedRows,
  run: object | undefined,
) => void;

/** After so many rows without one that asked for the same. */
const TRIED = 64;

/**
 * For each reading row: the rows it asks for, `rows[from..to)`, by rising value of the column they are sorted by. `byKey`: what is
 * answered follows from the keys and bounds alone, so that rows which ask the same within a run are answered once.
 */
export function rangedKernel(plan: Ranged, answer: RangeAnswer, byKey = false): Kernel {
  const { index, ranged, keys, sorted, others, selections } = plan;
  const kernels = [...keys, ...sorted, ...others].map(({ kernel }) => kernel);
  const out = scratch();
  const key = roomForKey(kernels.length);
  let found = new Int32Array(64);
  const answers = byKey ? new AnswersOfRun(kernels.length) : undefined;
  const same = byKey ? new SameAnswer(keys.length, sorted.length + others.length) : undefined;
  const blocks = others.map(({ comparison }) => new Blocks(comparison));
  const below = others.map(({ comparison }) => comparison === '<' || comparison === '<=');
  const takesEqual = others.map(({ comparison }) => comparison === '<=' || comparison === '>=');
  return (batch) => {
    room(out, batch.count);
    const { frame, run = {} } = batch;
    const shared = selections?.isShared === true && batch.count > 1 ? selections : undefined;
    if (shared?.knowsAll(batch) === true) return answerChosen(shared, batch, answer, byKey, out);
    const parts = kernels.map((kernel) => kernel(batch));
    const looked = others.map(({ column }) => frame.column(column).values);
    const groups = index.read(frame);
    const rowsOf = ranged.read(frame);
    let repeated = batch.count > 1 ? same : undefined;
    let repeats = 0;
    let clean = true;
    for (let i = 0; i < batch.count; i++) {
      const state = readKey(parts, i, key);
      if (state !== FILLED) {
        out.values[i] = key[0] ?? 0;
        out.states[i] = state;
        clean = false;
        continue;
      }
      const group = rowsOf.group(keys.length === 1 ? groups.findOne(key[0] as number) : groups.find(key));
      const { rows, values, from: first } = group;
      const end = first + group.count;
      // Where no row asks for what the one before it asked for, looking for those that do is in vain.
      if (i >= TRIED && repeats === 0) repeated = undefined;
      repeated?.ask(key);
      let from = first;
      let to = end;
      for (let k = 0; k < sorted.length && to > from; k++) {
        const { comparison } = sorted[k] as Bound;
        const wanted = key[keys.length + k] as number;
        const ends = comparison === '<' || comparison === '<=';
        const place = boundary(values, first, end, comparison, wanted);
        if (ends) to = Math.min(to, place);
        else from = Math.max(from, place);
        if (place > first) repeated?.compared(k, values[place - 1] as number);
        if (place < end) repeated?.compared(k, values[place] as number);
      }
      /** Whether every value that the answer rests on was compared here, none passed over with its block. */
      let isSeen = true;
      if (others.length === 0 || to <= from) {
        answer(rows, from, Math.max(from, to), out, i, frame, group, batch.count >= MANY ? run : undefined);
        shared?.keep(rowAt(batch, i), found, 0);
      } else {
        if (to - from > found.length) found = new Int32Array((to - from) * 2);
        const many = batch.count >= MANY && to - from > BLOCK;
        const place = many && batch.run !== undefined ? answers?.place(key, batch.run) : undefined;
        if (place !== undefined && answers?.isKnown(place, key) === true) {
          answers.give(place, out, i);
          if (out.states[i] !== FILLED) clean = false;
          continue;
        }
        let met = 0;
        for (let place = from; place < to; ) {
          const at = place - first;
          const stop = Math.min(to, place - (at % BLOCK) + BLOCK);
          let may = true;
          for (let k = 0; k < others.length && many && may; k++) {
            const wanted = key[keys.length + sorted.length + k] as number;
            may = (blocks[k] as Blocks).mayMeet(at, wanted, group, looked[k], run);
          }
          if (!may) {
            place = stop;
            continue;
          }
          for (; place < stop; place++) {
            const row = rows[place] as number;
            let passes = true;
            for (let k = 0; k < others.length && passes; k++) {
              const wanted = key[keys.length + sorted.length + k] as number;
              const value = (looked[k] as ArrayLike<number>)[row] as number;
              if (!many) repeated?.compared(sorted.length + k, value);
              passes = equalNumbers(value, wanted) ? takesEqual[k] === true : value < wanted === (below[k] === true);
            }
            if (passes) found[met++] = row;
          }
        }
        answer(found, 0, met, out, i, frame, group, undefined);
        shared?.keep(rowAt(batch, i), found, met);
        if (place !== undefined) answers?.keep(place, key, out, i);
        isSeen = !many;
      }
      if (out.states[i] !== FILLED) clean = false;
      if (repeated === undefined || !isSeen) continue;
      const next = repeated.reach(parts, i, batch.count);
      repeats += next - i - 1;
      const asked = rowAt(batch, i);
      for (; i < next - 1; i++) {
        out.values[i + 1] = out.values[i] as number;
        out.states[i + 1] = out.states[i] as number;
        shared?.keepSame(rowAt(batch, i + 1), asked);
      }
    }
    out.clean = clean;
    return out;
  };
}

/** Answers from what the rows of a batch are known to choose. */
function answerChosen(chosen: Selections, batch: Batch, answer: RangeAnswer, byKey: boolean, out: Vector): Vector {
  const { frame, count } = batch;
  const { rows } = chosen;
  let clean = true;
  for (let i = 0, last = -1; i < count; i++) {
    const row = rowAt(batch, i);
    const from = chosen.from(row);
    const many = chosen.count(row);
    if (byKey && last >= 0 && chosen.from(last) === from && chosen.count(last) === many) {
      out.values[i] = out.values[i - 1] as number;
      out.states[i] = out.states[i - 1] as number;
    } else answer(rows, from, from + many, out, i, frame, NOWHERE, undefined);
    if (out.states[i] !== FILLED) clean = false;
    last = row;
  }
  out.clean = clean;
  return out;
}
