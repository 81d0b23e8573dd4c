// Numeric functions that cost far more than finding what they gave before: the same few numbers come again and again in a season, as
// the day length that a variety waits for. Made by the planner.

import { mixed } from '../indexes/key-table.ts';

/** How many answers are remembered; a power of two. Each question has one place, where the last such answer stands. */
const PLACES = 1024;
/** From so many questions on there is room for answers: what is only ever asked for a row or two has none. */
const FIRST_ASKED = 32;
/** After so many questions it is seen whether one in so many was answered before; if not, so many are not looked up. */
const [TRIED, ONE_IN, PASSED_OVER] = [1024, 4, 16_384];

const NO_ROOM = new Float64Array(0);

type Compute = (...numbers: number[]) => number;

/**
 * The same function of so many numbers, which remembers; of more than four numbers the function itself. Not for one that rests on
 * anything besides its numbers.
 */
export function remembered(compute: Compute, count: number): Compute {
  switch (count) {
    case 2: {
      const known = new Answers(2);
      return (a, b) => {
        const place = known.place(a as number, b as number, 1, 1);
        if (place >= 0) return known.at(place);
        return known.keep(compute(a as number, b as number), a as number, b as number, 1, 1);
      };
    }
    case 3: {
      const known = new Answers(3);
      return (a, b, c) => {
        const place = known.place(a as number, b as number, c as number, 1);
        if (place >= 0) return known.at(place);
        return known.keep(compute(a as number, b as number, c as number), a as number, b as number, c as number, 1);
      };
    }
    case 4: {
      const known = new Answers(4);
      return (a, b, c, d) => {
        const place = known.place(a as number, b as number, c as number, d as number);
        if (place >= 0) return known.at(place);
        const answer = compute(a as number, b as number, c as number, d as number);
        return known.keep(answer, a as number, b as number, c as number, d as number);
      };
    }
    default:
      return compute;
  }
}

/** Answers by up to four numbers; those that are not asked are 1. */
class Answers {
  readonly #count: number;
  /** A question's numbers and its answer stand beside each other. */
  #known = NO_ROOM;
  #asked = 0;
  #found = 0;
  /** So many questions are not looked up. */
  #passes = FIRST_ASKED;
  /** Where the answer to what was asked last is to stand; below 0 where nowhere. */
  #free = -1;

  constructor(count: number) {
    this.#count = count;
  }

  /** Where the answer stands; below 0 where it is not known. */
  place(a: number, b: number, c: number, d: number): number {
    this.#free = -1;
    if (this.#passes > 0) {
      this.#passes--;
      return -1;
    }
    this.#asked++;
    if (this.#asked > TRIED) this.#look();
    const count = this.#count;
    if (this.#known === NO_ROOM) this.#known = new Float64Array(PLACES * 5).fill(Number.NaN);
    const known = this.#known;
    let hash = mixed(mixed(0, a), b);
    if (count > 2) hash = mixed(hash, c);
    if (count > 3) hash = mixed(hash, d);
    const place = (hash & (PLACES - 1)) * 5;
    if (known[place] === a && known[place + 1] === b && known[place + 2] === c && known[place + 3] === d) {
      this.#found++;
      return place;
    }
    // There are two noughts, which are equal and of which a function may not give the same.
    if (a !== 0 && b !== 0 && c !== 0 && d !== 0) this.#free = place;
    return -1;
  }

  at(place: number): number {
    return this.#known[place + 4] as number;
  }

  keep(answer: number, a: number, b: number, c: number, d: number): number {
    const place = this.#free;
    if (place < 0) return answer;
    const known = this.#known;
    known[place] = a;
    known[place + 1] = b;
    known[place + 2] = c;
    known[place + 3] = d;
    known[place + 4] = answer;
    return answer;
  }

  #look(): void {
    if (this.#found * ONE_IN < this.#asked) this.#passes = PASSED_OVER;
    this.#asked = 0;
    this.#found = 0;
  }
}
