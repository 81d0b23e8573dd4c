// Sums of the rows of a group before a day, as balances and what stands in store are asked for week by week: each sum goes on where the
// one before it ended, so that the weeks of a lot cost what adding up its weeks once costs. Called by fold-plans.ts alone.

import { type Column, FAULT, FILLED } from '../../values/column.ts';
import type { Frame } from '../frame.ts';
import { boundary, type SortedRows } from '../indexes/ranged-rows.ts';
import { type Kernel, room, scratch } from '../kernels/vector.ts';
import type { ColumnDef } from '../layout.ts';
import { MANY, type Ranged } from './range-plans.ts';

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
 * which a cell that is asked by is not filled, or a sum is none.
 */
export function runningSumKernel(
  { keys, sorted, others, index, ranged }: Ranged,
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
    const groups = index.read(frame);
    const rowsOf = ranged.read(frame);
    const { values } = out;
    const [names, days] = [named.values, until.values];
    const [byName, byDay] = [named.uniform ? 0 : 1, until.uniform ? 0 : 1];
    let name = names[named.at] as number;
    let group = rowsOf.group(groups.findOne(name));
    let place = group.from;
    for (let i = 0; i < count; i++) {
      const wanted = names[named.at + i * byName] as number;
      if (wanted !== name) {
        name = wanted;
        group = rowsOf.group(groups.findOne(name));
        place = group.from;
      }
      const { from, count: most } = group;
      place = boundary(group.values, from, from + most, comparison, days[until.at + i * byDay] as number, place);
      const sum = sums.upTo(place - from, group, frame, run);
      if (sum === undefined) return otherwise(batch);
      values[i] = sum;
    }
    out.states.fill(FILLED, 0, count);
    return out;
  };
}
