// What was done, for undo and redo: each step with what takes it back. Plain data, so that it lasts as long as the workbook's
// working copy. A step undone may be done again until something else is done.

import { type Operation, squash, type Transaction } from './transaction.ts';

export interface Step {
  readonly done: Transaction;
  /** What takes it back, in the order to be done. */
  readonly inverse: readonly Operation[];
}

export interface HistoryData {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

/** Past this many steps the oldest can't be taken back any more. */
export const LONGEST_HISTORY = 1000;

export class History {
  #done: Step[];
  #undone: Step[];

  constructor({ done, undone }: HistoryData = { done: [], undone: [] }) {
    this.#done = [...done];
    this.#undone = [...undone];
  }

  get data(): HistoryData {
    return { done: this.#done, undone: this.#undone };
  }

  get last(): Step | undefined {
    return this.#done.at(-1);
  }

  get next(): Step | undefined {
    return this.#undone.at(-1);
  }

  /** The steps that can be taken back, the latest last. */
  get steps(): readonly Step[] {
    return this.#done;
  }

  /**
   * A step as it was told: done anew, with the last one, taken back or again. The same steps give the same history. One that
   * takes back what isn't the last is a step of its own.
   */
  note(step: Step): void {
    const { undoes, redoes, joins } = step.done;
    const { last, next } = this;
    if (undoes !== undefined && (last === undefined || last.done.id === undoes)) this.undone(step);
    else if (redoes !== undefined && (next === undefined || next.done.id === redoes)) this.redone(step);
    else if (joins !== undefined && joins === last?.done.id) this.join(step);
    else this.add(step);
  }

  add(step: Step): void {
    this.#done.push(step);
    if (this.#done.length > LONGEST_HISTORY) this.#done.shift();
    this.#undone = [];
  }

  /** Makes one step of the last and this one. A drag touches the same cells over and over: what they held first is enough. */
  join(step: Step): void {
    const before = this.#done.pop();
    if (before === undefined) {
      this.add(step);
      return;
    }
    const done = squash(before.done, step.done);
    const inverse = squash({ ...step.done, operations: step.inverse }, { ...step.done, operations: before.inverse });
    this.#done.push({ done, inverse: inverse.operations });
    this.#undone = [];
  }

  /** The last step was taken back; `inverse` does it again. What was taken back for good takes with it what rested on it. */
  undone(step: Step): void {
    this.#done.pop();
    if (step.done.forgets === true) this.#undone = [];
    else this.#undone.push(step);
  }

  redone(step: Step): void {
    this.#undone.pop();
    this.#done.push(step);
    if (this.#done.length > LONGEST_HISTORY) this.#done.shift();
  }
}

/**
 * The history that steps make, in the order in which they were told. Of the last of many steps it is the last part of what all
 * of them make: a journal may forget the steps before the earliest that can still be taken back or done again.
 */
export function historyOf(steps: Iterable<Step>): HistoryData {
  const history = new History();
  for (const step of steps) history.note(step);
  return history.data;
}
