// How far back a journal has to reach for the history: a history's steps known by the places in the journal where they begin. A
// journal may forget what lies before the earliest, since the steps after it alone give the same history (historyOf).

import { LONGEST_HISTORY } from './history.ts';
import type { Transaction } from './transaction.ts';

interface Known {
  readonly id: string;
  /** Place of the first of its transactions. */
  readonly from: number;
}

export class HistoryReach {
  readonly #done: Known[] = [];
  #undone: Known[] = [];

  /** A transaction that stands at this place of the journal, told in the journal's order. */
  note({ id, undoes, redoes, joins, forgets }: Transaction, place: number): void {
    const [last, next] = [this.#done.at(-1), this.#undone.at(-1)];
    if (undoes !== undefined && (last === undefined || last.id === undoes)) {
      this.#done.pop();
      if (forgets === true) this.#undone = [];
      else this.#undone.push({ id, from: place });
      return;
    }
    const again = redoes !== undefined && (next === undefined || next.id === redoes);
    if (again) this.#undone.pop();
    else this.#undone = [];
    const joined = !again && joins !== undefined && joins === last?.id;
    if (joined) this.#done.pop();
    this.#done.push({ id, from: joined ? last.from : place });
    if (this.#done.length > LONGEST_HISTORY) this.#done.shift();
  }

  /** The place of the first transaction that can still be taken back or done again; undefined where none can. */
  get earliest(): number | undefined {
    const places = [...this.#done, ...this.#undone].map(({ from }) => from);
    return places.length === 0 ? undefined : Math.min(...places);
  }
}
