// Folds of rows that lie side by side in a group's order, asked for by many reading rows. A group is folded once by blocks, and each
// answer joins the blocks that lie wholly within it with the rows at its two ends. Where blocks begin follows from the values by
// which the rows stand in order, never from how many rows stand before: a change before or behind what a row asks for wakes no row, so
// nothing of its answer, to the last bit, may rest on it. Called by fold-plans.ts and first-plans.ts.

import type { Running } from '../../functions/definition.ts';
import { FAULT, FILLED } from '../../values/column.ts';
import { firstPlace } from '../../values/first-place.ts';
import type { Frame } from '../frame.ts';
import { mixed } from '../indexes/key-table.ts';
import type { SortedRows } from '../indexes/ranged-rows.ts';

/** So many rows are folded one after another. */
export const FEW_IN_RANGE = 64;
/** One value in so many begins a block. */
const BEGINS = 16;

/** What came of a list of rows. */
export interface RangeFold {
  /** FILLED, or FAULT where one of the rows is faulty: `value` is the first fault then. */
  readonly state: number;
  /** No number where the fold has none. */
  readonly value: number;
}

/** What is folded, by row. */
export interface RowValues {
  readonly values: ArrayLike<number>;
  readonly states: ArrayLike<number>;
}

/** What is known of rows taken in so far, and how many values they hold: of a faulty one its fault, and FAULTY. */
interface SoFar {
  known: number;
  count: number;
}

const FAULTY = -1;
/** Of a block that was not looked at yet. */
const UNKNOWN = -2;

export class RangeFolds {
  readonly #valuesIn: (frame: Frame) => RowValues;
  readonly #running: Running;
  /** Where blocks begin, from the group's first row on; the last has no end. */
  #begins: number[] = [];
  /** What is known of each block, and how many values it holds. */
  #known: number[] = [];
  #counts: number[] = [];
  #group: SortedRows | undefined;
  #run: object | undefined;
  #cells: RowValues = { values: [], states: [] };
  /** Answers by where they begin and end. */
  readonly #answers = new Map<number, RangeFold>();

  /** `valuesIn`: looked at once a run. */
  constructor(valuesIn: (frame: Frame) => RowValues, running: Running) {
    this.#valuesIn = valuesIn;
    this.#running = running;
  }

  /** The fold of a group's rows from one place up to before another. `run`: the same as long as nothing that is read changes. */
  between(from: number, to: number, group: SortedRows, frame: Frame, run: object): RangeFold {
    if (this.#run !== run) {
      this.#run = run;
      this.#cells = this.#valuesIn(frame);
      this.#group = undefined;
    }
    if (this.#group !== group) this.#begin(group);
    const asked = from * 2 ** 26 + to;
    let answer = this.#answers.get(asked);
    if (answer === undefined) {
      answer = this.#answer(from - group.from, to - group.from, group);
      this.#answers.set(asked, answer);
    }
    return answer;
  }

  #begin(group: SortedRows): void {
    this.#group = group;
    this.#answers.clear();
    this.#begins = [];
    this.#known = [];
    this.#counts = [];
    const { values, from, count } = group;
    for (let at = 0; at < count; at++) {
      const value = values[from + at] as number;
      // Rows of one value are never parted.
      if ((at > 0 && value === values[from + at - 1]) || mixed(0, value) % BEGINS !== 0) continue;
      this.#begins.push(at);
      this.#known.push(0);
      this.#counts.push(UNKNOWN);
    }
  }

  #answer(from: number, to: number, group: SortedRows): RangeFold {
    const so = { known: this.#running.none, count: 0 };
    const begins = this.#begins;
    let block = firstPlace(0, begins.length, (one) => (begins[one] as number) < from);
    const end = (one: number): number => begins[one] ?? to;
    this.#add(so, from, Math.min(to, end(block)), group);
    // A block is whole where the next begins within: what follows behind the last row is not looked at.
    for (; end(block + 1) < to && so.count !== FAULTY; block++) {
      if (this.#counts[block] === UNKNOWN) this.#fold(block, group);
      const known = this.#known[block] as number;
      const count = this.#counts[block] as number;
      if (count === FAULTY) so.known = known;
      else if (count > 0) so.known = this.#running.join(so.known, known);
      so.count = count === FAULTY ? FAULTY : so.count + count;
    }
    this.#add(so, end(block), to, group);
    if (so.count === FAULTY) return { state: FAULT, value: so.known };
    return { state: FILLED, value: this.#running.comesTo(so.known, so.count) };
  }

  #fold(block: number, group: SortedRows): void {
    const so = { known: this.#running.none, count: 0 };
    this.#add(so, this.#begins[block] as number, this.#begins[block + 1] as number, group);
    this.#known[block] = so.known;
    this.#counts[block] = so.count;
  }

  /** Takes the group's rows from one place up to before another in, one after another. */
  #add(so: SoFar, from: number, to: number, { rows, from: first }: SortedRows): void {
    const { join } = this.#running;
    const { values, states } = this.#cells;
    for (let at = from; at < to && so.count !== FAULTY; at++) {
      const row = rows[first + at] as number;
      const state = states[row];
      if (state === FILLED) {
        so.known = join(so.known, values[row] as number);
        so.count++;
      } else if (state === FAULT) {
        so.known = values[row] as number;
        so.count = FAULTY;
      }
    }
  }
}
