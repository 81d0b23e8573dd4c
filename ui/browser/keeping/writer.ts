// Writes the journal of one workbook: every entry as soon as it is made, one strict transaction after another, none before the
// earlier ones are on the disk. What can't be written waits here, and is tried again with the next entry, every few
// seconds, and when the person says so; entries that another tab has written where these belong are never written over.

import type { Step } from '../../../engine/index.ts';
import { entryAfter, type Place } from './entries.ts';
import type { JournalRecord } from './records.ts';
import { faultOf, journalRange, type StorageFault, transact } from './storage.ts';

export interface WriterEvents {
  /** All up to this place is on the disk. */
  kept(place: Place): void;
  /** It could not be written, and waits. */
  failed(fault: StorageFault): void;
  /** Another tab has written here: nothing more is written by this one. */
  taken(): void;
  /** There is no room left; whether some was made. */
  makeRoom(): Promise<boolean>;
}

/** So long until what failed is tried again. */
const AGAIN = 10_000;

export class JournalWriter {
  readonly workbook: string;
  readonly #events: WriterEvents;
  #last: Place;
  #kept: Place;
  #waiting: JournalRecord[] = [];
  #writing: Promise<void> | undefined;
  #stopped = false;
  #again: ReturnType<typeof setTimeout> | undefined;

  /** Goes on after a place to which all is on the disk. */
  constructor(workbook: string, place: Place, events: WriterEvents) {
    this.workbook = workbook;
    this.#last = place;
    this.#kept = place;
    this.#events = events;
  }

  /** The last entry made. */
  get last(): Place {
    return this.#last;
  }

  /** The last entry that is on the disk. */
  get kept(): Place {
    return this.#kept;
  }

  /** Whether all that was made is on the disk. */
  get isDone(): boolean {
    return this.#waiting.length === 0;
  }

  /** Makes the next entry and writes it as soon as can be; of no step, a turn. */
  append(step: Step | undefined): JournalRecord {
    const entry = entryAfter(this.#last, this.workbook, step);
    this.#last = { seq: entry.seq, sum: entry.sum };
    this.#waiting.push(entry);
    this.tryNow();
    return entry;
  }

  /** Writes what waits. */
  tryNow(): void {
    clearTimeout(this.#again);
    if (this.#stopped || this.#writing !== undefined || this.isDone) return;
    this.#writing = this.#write().finally(() => {
      this.#writing = undefined;
    });
  }

  /** Waits until all that was made so far is on the disk or has failed; gives whether it is. */
  async settle(): Promise<boolean> {
    this.tryNow();
    while (this.#writing !== undefined) await this.#writing;
    return this.isDone;
  }

  /** Writes nothing more. */
  stop(): void {
    this.#stopped = true;
    clearTimeout(this.#again);
  }

  async #write(): Promise<void> {
    let roomMade = false;
    while (this.#waiting.length > 0 && !this.#stopped) {
      const batch = this.#waiting.slice();
      try {
        await writeEntries(batch);
      } catch (problem) {
        const fault = faultOf(problem);
        if (fault.kind === 'taken') {
          // A write that seemed to fail may have gone through.
          const there = await this.#there(batch).catch(() => 0);
          if (there > 0) {
            this.#noteKept(batch.slice(0, there));
            continue;
          }
          this.stop();
          this.#events.taken();
          return;
        }
        if (fault.kind === 'full' && !roomMade) {
          roomMade = true;
          if (await this.#events.makeRoom().catch(() => false)) continue;
        }
        this.#again = setTimeout(() => this.tryNow(), AGAIN);
        this.#events.failed(fault);
        return;
      }
      this.#noteKept(batch);
    }
  }

  #noteKept(entries: readonly JournalRecord[]): void {
    this.#waiting.splice(0, entries.length);
    const last = entries.at(-1);
    if (last === undefined) return;
    this.#kept = { seq: last.seq, sum: last.sum };
    this.#events.kept(this.#kept);
  }

  /** How many of these entries stand in the journal already, just as they are. */
  async #there(batch: readonly JournalRecord[]): Promise<number> {
    const from = batch[0]?.seq ?? 0;
    const found = await transact(['journal'], 'readonly', (transaction) => {
      return transaction.objectStore('journal').getAll(journalRange(this.workbook, from));
    });
    const other = batch.findIndex(({ sum }, i) => found[i]?.sum !== sum);
    return other < 0 ? batch.length : other;
  }
}

/** All requests at once and the end of the transaction with them, so that it goes through even where the page goes now. */
function writeEntries(entries: readonly JournalRecord[]): Promise<unknown> {
  return transact(['journal'], 'readwrite', (transaction) => {
    const journal = transaction.objectStore('journal');
    const added = Promise.all(entries.map((entry) => journal.add(entry)));
    transaction.commit();
    return added;
  });
}
