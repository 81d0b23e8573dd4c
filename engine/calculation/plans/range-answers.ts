// What spares rangedKernel work where reading rows ask for the same: answers of a run by what was asked, and how many rows one after
// another ask for what the first of them did. Called by range-plans.ts alone.

import { FILLED } from '../../values/column.ts';
import { clearlyAbove, clearlyBelow } from '../../values/tolerance.ts';
import { mixed } from '../indexes/key-table.ts';
import type { Vector } from '../kernels/vector.ts';

/** How many answers of a run are kept; a power of two. Each has one place, where the last such answer stands. */
const KEPT = 1024;

/** Answers of one run by what was asked: many batches come in on one day, and all of them ask for what lies there that day. */
export class AnswersOfRun {
  readonly #width: number;
  #run: object | undefined;
  /** In which run each place was last filled. */
  #filledIn = new Int32Array(0);
  #turn = 0;
  #keys = new Float64Array(0);
  #values = new Float64Array(0);
  #states = new Uint8Array(0);

  constructor(width: number) {
    this.#width = width;
  }

  /** The place of what is asked, which a run begins with nothing in. */
  place(key: Float64Array, run: object): number {
    if (this.#run !== run) {
      if (this.#turn === 0) this.#makeRoom();
      this.#run = run;
      this.#turn++;
    }
    let hash = 0;
    for (let k = 0; k < this.#width; k++) hash = mixed(hash, key[k] as number);
    return hash & (KEPT - 1);
  }

  #makeRoom(): void {
    this.#filledIn = new Int32Array(KEPT);
    this.#keys = new Float64Array(KEPT * this.#width);
    this.#values = new Float64Array(KEPT);
    this.#states = new Uint8Array(KEPT);
  }

  isKnown(place: number, key: Float64Array): boolean {
    if (this.#filledIn[place] !== this.#turn) return false;
    for (let k = 0; k < this.#width; k++) if (this.#keys[place * this.#width + k] !== key[k]) return false;
    return true;
  }

  give(place: number, out: Vector, i: number): void {
    out.values[i] = this.#values[place] as number;
    out.states[i] = this.#states[place] as number;
  }

  keep(place: number, key: Float64Array, out: Vector, i: number): void {
    this.#filledIn[place] = this.#turn;
    for (let k = 0; k < this.#width; k++) this.#keys[place * this.#width + k] = key[k] as number;
    this.#values[place] = out.values[i] as number;
    this.#states[place] = out.states[i] as number;
  }
}

/**
 * How many rows one after another ask for the same: those of one key whose bounds move no further than the values of the group lie
 * apart. The weeks of a bed mostly ask for what the week before asked for.
 */
export class SameAnswer {
  readonly #keys: number;
  readonly #asked: Float64Array;
  /** By bound: no value of the group that it was compared with lies between these two, or is one of them. */
  readonly #least: Float64Array;
  readonly #most: Float64Array;

  constructor(keys: number, bounds: number) {
    this.#keys = keys;
    this.#asked = new Float64Array(keys + bounds);
    this.#least = new Float64Array(keys + bounds);
    this.#most = new Float64Array(keys + bounds);
  }

  /** Another question. */
  ask(key: Float64Array): void {
    for (let k = 0; k < this.#asked.length; k++) {
      this.#asked[k] = key[k] as number;
      this.#least[k] = -Number.MAX_VALUE;
      this.#most[k] = Number.MAX_VALUE;
    }
  }

  /** A value that a bound was compared with. */
  compared(bound: number, value: number): void {
    const k = this.#keys + bound;
    if (value <= (this.#asked[k] as number)) {
      if (value > (this.#least[k] as number)) this.#least[k] = value;
    } else if (value < (this.#most[k] as number)) this.#most[k] = value;
  }

  /** Up to which row of a batch the rows from one on ask for what that one asked for. */
  reach(parts: readonly Vector[], row: number, count: number): number {
    for (let k = 0; k < parts.length; k++) {
      const asked = this.#asked[k] as number;
      const least = clearlyAbove(this.#least[k] as number);
      const most = clearlyBelow(this.#most[k] as number);
      // What was compared with its equal stands on an edge: only the very same is answered alike. So are keys.
      const isOnEdge = k < this.#keys || asked <= least || asked >= most;
      this.#least[k] = isOnEdge ? asked : least;
      this.#most[k] = isOnEdge ? asked : most;
    }
    let end = row + 1;
    while (end < count && this.#asksTheSame(parts, end)) end++;
    return end;
  }

  #asksTheSame(parts: readonly Vector[], row: number): boolean {
    for (let k = 0; k < parts.length; k++) {
      const { values, states, at, clean, uniform } = parts[k] as Vector;
      if (uniform) continue;
      const value = values[at + row] as number;
      if (value !== this.#asked[k] && !(value > (this.#least[k] as number) && value < (this.#most[k] as number)))
        return false;
      if (!clean && states[at + row] !== FILLED) return false;
    }
    return true;
  }
}
