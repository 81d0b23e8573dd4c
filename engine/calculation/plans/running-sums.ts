// Sums of the rows of a group before a day, as balances and what stands in store are asked for week by week: each sum goes on where the
// one before it ended, so that the weeks of a lot cost what adding up its weeks once costs. Called by fold-plans.ts alone.

import { type Column, FAULT, FILLED } from '../../values/column.ts';
import { clearlyAbove, clearlyBelow } from '../../values/tolerance.ts';
import type { Frame } from '../frame.ts';
import type { GroupIndex } from '../indexes/group-index.ts';
import { boundary, type RangedRows, type SortedRows } from '../indexes/ranged-rows.ts';
import { step } from '../kernels/states.ts';
import { type Kernel, room, scratch, type Vector } from '../kernels/vector.ts';
import type { ColumnDef } from '../layout.ts';
import { MANY, type Ranged } from './range-plans.ts';

const NO_GROUP: Pick<SortedRows, 'rows' | 'values'> = { rows: new Int32Array(0), values: new Float64Array(0) };

/** The sums of the first so many rows of a group, each as adding them one after another passes it; made once a run and group. */
export class RunningSums {
  readonly #column: ColumnDef;
  #sums = new Float64Array(64);
  #known = 0;
  #group: SortedRows | undefined;
  #run: object | undefined;
  #cells: Column | undefined;

  constructor(column: ColumnDef) {
    this.#column = column;
  }

  /** undefined where one of the rows is faulty, or the sum is too large for a number. */
  upTo(count: number, group: SortedRows, frame: Frame, run: object): number | undefined {
    if (this.#run !== run) {
      this.#run = run;
      this.#group = undefined;
      this.#cells = frame.column(this.#column);
    }
    if (this.#group !== group) {
      this.#group = group;
      this.#known = 0;
    }
    if (count > this.#known && this.#cells !== undefined) this.#addUp(count, group, this.#cells);
    return count > this.#known ? undefined : this.#sums[count];
  }

  #addUp(count: number, { rows, from }: SortedRows, { values, states }: Column): void {
    if (count >= this.#sums.length) {
      const sums = new Float64Array(count * 2);
      sums.set(this.#sums);
      this.#sums = sums;
    }
    const sums = this.#sums;
    for (let place = this.#known; place < count; place++) {
      const row = rows[from + place] as number;
      if (states[row] === FAULT) return;
      const sum = states[row] === FILLED ? (sums[place] as number) + (values[row] as number) : (sums[place] as number);
      if (sum - sum !== 0) return;
      sums[place + 1] = sum;
      this.#known = place + 1;
    }
  }
}

/**
 * Such sums for many reading rows that name one group each and one end. `otherwise` answers under other conditions, and a batch in
 * which a cell that is asked by is not filled, or a sum is none. Where the ends of a group's rows rise, as weeks do, one sum is
 * carried along; else `sums` are asked for each.
 */
export function runningSumKernel(
  { keys, sorted, others, index, ranged }: Ranged,
  column: ColumnDef,
  sums: RunningSums,
  otherwise: Kernel,
): Kernel {
  const [key, noKey] = keys;
  const [end, noEnd] = sorted;
  if (key === undefined || noKey !== undefined || end === undefined || noEnd !== undefined) return otherwise;
  const { comparison, kernel: ends } = end;
  if (others.length > 0 || comparison === '>' || comparison === '>=') return otherwise;
  const out = scratch();
  return (batch) => {
    const { count, frame, run = {} } = batch;
    if (count < MANY) return otherwise(batch);
    const named = key.kernel(batch);
    const until = ends(batch);
    if (!named.clean || !until.clean) return otherwise(batch);
    room(out, count);
    const groupOf = groupsIn(index.read(frame), ranged.read(frame));
    const isSummed =
      sumAlong(out.values, count, named, until, comparison, groupOf, frame.column(column)) ||
      sumEach(out.values, count, named, until, comparison, groupOf, (places, group) =>
        sums.upTo(places, group, frame, run),
      );
    if (!isSummed) return otherwise(batch);
    out.states.fill(FILLED, 0, count);
    return out;
  };
}

type GroupOf = (name: number) => SortedRows;

function groupsIn(groups: GroupIndex, rowsOf: RangedRows): GroupOf {
  return (name) => rowsOf.group(groups.findOne(name));
}

/** False where an end lies before the one above it, is told by dust alone from a value of its group, or no sum is to be had. */
function sumAlong(
  out: Float64Array,
  count: number,
  named: Vector,
  until: Vector,
  comparison: '<' | '<=',
  groupOf: GroupOf,
  { values, states }: Column,
): boolean {
  const [names, days] = [named.values, until.values];
  const [byName, byDay] = [step(named), step(until)];
  const takesEqual = comparison === '<=';
  let name = Number.NaN;
  let last = Number.NEGATIVE_INFINITY;
  let { rows, values: sortedBy } = NO_GROUP;
  let [place, stop] = [0, 0];
  let sum = 0;
  for (let i = 0, n = named.at, d = until.at; i < count; i++, n += byName, d += byDay) {
    const asked = names[n] as number;
    if (asked !== name) {
      const group = groupOf(asked);
      ({ rows, values: sortedBy } = group);
      name = asked;
      last = Number.NEGATIVE_INFINITY;
      place = group.from;
      stop = group.from + group.count;
      sum = 0;
    }
    const wanted = days[d] as number;
    if (!(wanted >= last)) return false;
    last = wanted;
    const below = clearlyBelow(wanted);
    for (; place < stop; place++) {
      const value = sortedBy[place] as number;
      if (!(value < below || (takesEqual && value === wanted))) {
        if (value !== wanted && value <= clearlyAbove(wanted)) return false;
        break;
      }
      const row = rows[place] as number;
      const state = states[row] as number;
      if (state === FAULT) return false;
      if (state === FILLED) sum += values[row] as number;
    }
    if (sum - sum !== 0) return false;
    out[i] = sum;
  }
  return true;
}

/** False where one of the sums is none. */
function sumEach(
  out: Float64Array,
  count: number,
  named: Vector,
  until: Vector,
  comparison: '<' | '<=',
  groupOf: GroupOf,
  upTo: (places: number, group: SortedRows) => number | undefined,
): boolean {
  const [names, days] = [named.values, until.values];
  const [byName, byDay] = [step(named), step(until)];
  let name = names[named.at] as number;
  let group = groupOf(name);
  let place = group.from;
  for (let i = 0; i < count; i++) {
    const wanted = names[named.at + i * byName] as number;
    if (wanted !== name) {
      name = wanted;
      group = groupOf(name);
      place = group.from;
    }
    const { from, count: most } = group;
    place = boundary(group.values, from, from + most, comparison, days[until.at + i * byDay] as number, place);
    const sum = upTo(place - from, group);
    if (sum === undefined) return false;
    out[i] = sum;
  }
  return true;
}
