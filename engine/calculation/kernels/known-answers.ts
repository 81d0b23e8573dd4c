// What a kernel answered last, by what it was asked: for kernels whose answer costs far more than finding one given before.

import type { Scalar } from '../../values/error.ts';
import type { ValueType } from '../../values/type.ts';
import type { Dictionaries } from '../frame.ts';
import { mixed } from '../indexes/key-table.ts';
import { type Stored, toScalar } from './scalars.ts';

/** How many answers a kernel remembers, or remembers at first; a power of two. */
const REMEMBERED = 256;
/** From so many rows on it is worth remembering. */
export const MANY_ROWS = 32;
const NOTHING_ASKED = new Float64Array(0);
const NO_STATES = new Uint8Array(0);

/**
 * The last answers of one kernel, by what it was asked: the words of a season are few, and joining and looking words up costs
 * far more than finding the answer of a row before. Each question has two places, so that few drive each other out in turn.
 */
export class KnownAnswers {
  readonly #width: number;
  readonly #most: number;
  /** So many answers took the place of others since there is so much room. */
  #driven = 0;
  /** What is asked now. */
  #question = NOTHING_ASKED;
  #asked = NO_STATES;
  /** Where its answer is to stand. */
  #free = 0;
  /** Whether there are places; a kernel that only ever sees a few rows has none. */
  #room = 0;
  #questions = NOTHING_ASKED;
  #questionStates = NO_STATES;
  #values = NOTHING_ASKED;
  #states = NO_STATES;

  /** `most`: up to how many answers there is more room where those there is are driven out. */
  constructor(args: number, most = REMEMBERED) {
    this.#width = args;
    this.#most = most;
  }

  /** So many rows ask next, in a sheet that has so many at least. */
  expect(rows: number, among = rows): void {
    if (this.#question === NOTHING_ASKED) {
      this.#question = new Float64Array(this.#width);
      this.#asked = new Uint8Array(this.#width);
    }
    if (this.#room === 0 && rows >= MANY_ROWS) this.#makeRoom(REMEMBERED);
    // All are found anew then. Where rows are few, what drives others out is another from run to run, and more room is in vain.
    else if (this.#driven > this.#room && this.#room < Math.min(this.#most, among)) this.#makeRoom(this.#room * 4);
  }

  #makeRoom(room: number): void {
    this.#room = room;
    this.#driven = 0;
    this.#questions = new Float64Array(room * this.#width);
    this.#questionStates = new Uint8Array(room * this.#width);
    this.#values = new Float64Array(room);
    this.#states = new Uint8Array(room).fill(UNKNOWN);
  }

  /** Whether answers are remembered by now. */
  get hasRoom(): boolean {
    return this.#room > 0;
  }

  ask(k: number, value: number, state: number): void {
    this.#question[k] = value;
    this.#asked[k] = state;
  }

  /** The k-th argument of the question. */
  asked(words: Dictionaries, type: ValueType, k: number): Scalar {
    return toScalar(words, type, this.#question[k] as number, this.#asked[k] as number);
  }

  answered(into: Stored): boolean {
    if (this.#room === 0) return false;
    const question = this.#question;
    const asked = this.#asked;
    const { length } = question;
    let hash = 0;
    for (let k = 0; k < length; k++) hash = mixed(hash ^ (asked[k] as number), question[k] as number);
    const place = hash & (this.#room - 1);
    const beside = place ^ 1;
    const known = this.#isKnown(place) ? place : this.#isKnown(beside) ? beside : undefined;
    if (known === undefined) {
      const states = this.#states;
      this.#free = states[place] === UNKNOWN || states[beside] !== UNKNOWN ? place : beside;
      return false;
    }
    into.value = this.#values[known] as number;
    into.state = this.#states[known] as number;
    return true;
  }

  /** Whether the answer to what is asked stands at a place. */
  #isKnown(place: number): boolean {
    if (this.#states[place] === UNKNOWN) return false;
    const question = this.#question;
    const { length } = question;
    const from = place * length;
    for (let k = 0; k < length; k++) {
      if (this.#questions[from + k] !== question[k] || this.#questionStates[from + k] !== this.#asked[k]) return false;
    }
    return true;
  }

  keep({ value, state }: Stored): void {
    if (this.#room === 0) return;
    if (this.#states[this.#free] !== UNKNOWN) this.#driven++;
    this.#questions.set(this.#question, this.#free * this.#width);
    this.#questionStates.set(this.#asked, this.#free * this.#width);
    this.#values[this.#free] = value;
    this.#states[this.#free] = state;
  }
}

/** Where no answer stands yet: no state is this. */
const UNKNOWN = 255;
