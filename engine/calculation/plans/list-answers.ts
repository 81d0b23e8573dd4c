// What functions over matching rows answered of the same cells before: the names that stand on a bed are the same for weeks, and from
// run to run, and finding them costs far less than listing and joining them. Called by scan-plans.ts alone.

import type { Column } from '../../values/column.ts';
import { KnownAnswers } from '../kernels/known-answers.ts';
import type { Stored } from '../kernels/scalars.ts';

/** Lists of so many cells are remembered at most; longer ones mostly come but once. */
const LONGEST = 6;
/** So many lists are remembered at most. */
const MOST = 16_384;
/** Stands for the state of cells that a shorter list has not. */
const NO_CELL = 254;

export class ListAnswers {
  readonly #known = new KnownAnswers(LONGEST, MOST);
  /** Whether what was asked last is one that may be remembered. */
  #isShort = false;

  /** Before each batch of so many reading rows, of a sheet that has so many at least. */
  expect(rows: number, among = rows): void {
    this.#known.expect(rows, among);
  }

  /** What was answered of the cells that some rows hold; false where that is not known. */
  answered(rows: Int32Array, count: number, { values, states }: Column, into: Stored): boolean {
    this.#isShort = count <= LONGEST && this.#known.hasRoom;
    if (!this.#isShort) return false;
    for (let k = 0; k < LONGEST; k++) {
      const row = rows[k] as number;
      if (k < count) this.#known.ask(k, values[row] as number, states[row] as number);
      else this.#known.ask(k, 0, NO_CELL);
    }
    return this.#known.answered(into);
  }

  /** The answer to what was asked last. */
  keep(stored: Stored): void {
    if (this.#isShort) this.#known.keep(stored);
  }
}
