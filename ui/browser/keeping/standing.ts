// How a kept workbook stands in a tab: what is on screen, and where in the journal that is. The part that writes and the part
// that follows hand it on to each other when the turn passes.

import type { HistoryReach, Step, Transaction, Workbook } from '../../../engine/index.ts';
import type { Place } from './entries.ts';
import type { OpenedKept } from './opening.ts';

/** Ids of so many transactions are known, so that one that is sent twice is done once. */
const KNOWN = 4_000;
/** So many turns are kept in the journal: a tab that wakes up late finds its place taken. */
const TURNS = 50;

export class Standing {
  readonly id: string;
  readonly workbook: Workbook;
  readonly reach: HistoryReach;
  /** The last entry that is in the workbook. */
  last: Place;
  /** Entries since the snapshot. */
  since: number;
  readonly #ids: Set<string>;
  #turns: number[];

  constructor(id: string, opened: OpenedKept) {
    this.id = id;
    this.workbook = opened.workbook;
    this.reach = opened.reach;
    this.last = opened.place;
    this.since = opened.since;
    this.#ids = new Set(opened.ids);
    this.#turns = [...opened.turns];
  }

  /** Numbers of the latest turns in the journal. */
  get turns(): readonly number[] {
    return this.#turns;
  }

  knows(id: string): boolean {
    return this.#ids.has(id);
  }

  /** Notes the next entry of the journal. */
  note(place: Place, step: Step | undefined): void {
    this.last = place;
    this.since += 1;
    if (step === undefined) {
      this.#turns = [...this.#turns, place.seq].slice(-TURNS);
      return;
    }
    // One that is written once more, after another tab could not, reaches no further back than the first time.
    if (!this.#ids.has(step.done.id)) this.reach.note(step.done, place.seq);
    this.#ids.add(step.done.id);
    for (const oldest of this.#ids) {
      if (this.#ids.size <= KNOWN) break;
      this.#ids.delete(oldest);
    }
  }
}

/** What a tab must not lose when it reads the workbook again: changes that are not known to be on the disk. */
export type Unsaved = readonly Transaction[];
