// The part of the tab that has the turn to write: every change goes into the journal and is told to the other tabs, their
// wishes are done here in the order in which they come, and in idle time the journal is made short by a new snapshot.

import { type Change, type Step, type Transaction, writeWorkbookFile } from '../../../engine/index.ts';
import { whenIdle } from '../store/idle.ts';
import { readEntries } from './entries.ts';
import type { JournalRecord } from './records.ts';
import type { Standing, Unsaved } from './standing.ts';
import { journalRange, type StorageFault, transact } from './storage.ts';
import type { Told } from './tabs.ts';
import { snapshotOf } from './workbooks.ts';
import { JournalWriter } from './writer.ts';

export interface WritingEvents {
  post(told: Told): void;
  keeping(): void;
  kept(at: number): void;
  failed(fault: StorageFault): void;
  /** Another tab has written in between. */
  taken(): void;
  failedWords(fault: StorageFault): string;
}

/** So many entries, and the next idle moment writes a snapshot; a few do after a while in which nothing was done. */
const MANY = 200;
const FEW = 20;
const QUIET = 20_000;
/** Longer entries are not sent to other tabs, which read them when they are on the disk. */
const SENT = 500_000;

export class Writing {
  readonly writes = true;
  readonly #standing: Standing;
  readonly #events: WritingEvents;
  readonly #writer: JournalWriter;
  /** Entries that are not known to be on the disk. */
  #unkept: JournalRecord[] = [];
  #keptAt: number;
  #quiet: ReturnType<typeof setTimeout> | undefined;
  #shortening = false;
  #ended = false;

  constructor(standing: Standing, events: WritingEvents) {
    this.#standing = standing;
    this.#events = events;
    this.#keptAt = Date.now();
    this.#writer = new JournalWriter(standing.id, standing.last, {
      kept: (place) => {
        this.#unkept = this.#unkept.filter(({ seq }) => seq > place.seq);
        this.#keptAt = Date.now();
        events.post({ tell: 'kept', place, at: this.#keptAt });
        if (this.#writer.isDone) events.kept(this.#keptAt);
        this.#shortenSoon();
      },
      failed: (fault) => {
        events.post({ tell: 'failed', why: events.failedWords(fault) });
        events.failed(fault);
      },
      taken: () => events.taken(),
      makeRoom: async () => (await import('./versions.ts')).makeRoom(),
    });
  }

  /** Takes the turn: marks it in the journal, and writes what the tab before could not. */
  begin(left: readonly Step[]): void {
    this.#append(undefined);
    for (const step of left) this.#append(step);
    this.#here();
  }

  /** A change of the workbook, done here or wished by another tab. */
  changed({ transaction, inverse }: Change): void {
    this.#append({ done: transaction, inverse });
    this.#events.keeping();
  }

  #append(step: Step | undefined): void {
    const entry = this.#writer.append(step);
    this.#unkept.push(entry);
    this.#standing.note(this.#writer.last, step);
    this.#send(entry);
  }

  #send(entry: JournalRecord): void {
    if (entry.text.length <= SENT) this.#events.post({ tell: 'did', entry });
  }

  told(told: Told): void {
    if (told.tell === 'hello') {
      this.#here();
      for (const entry of this.#unkept) this.#send(entry);
    } else if (told.tell === 'wish') this.#wish(told.transaction);
    else if (told.tell === 'back' || told.tell === 'again') this.#step(told.tell, told.of);
  }

  #here(): void {
    this.#events.post({ tell: 'here', last: this.#writer.last, kept: this.#writer.kept, at: this.#keptAt });
  }

  #wish(transaction: Transaction): void {
    if (!this.#standing.knows(transaction.id)) this.#standing.workbook.receive(transaction);
  }

  #step(way: 'back' | 'again', of: string): void {
    const { workbook } = this.#standing;
    const step = way === 'back' ? workbook.history.done.at(-1) : workbook.history.undone.at(-1);
    if (step?.done.id !== of) this.#events.post({ tell: 'not done', of });
    else if (way === 'back') workbook.undo();
    else workbook.redo();
  }

  /** Whether all that was done is on the disk. */
  get isDone(): boolean {
    return this.#writer.isDone;
  }

  tryNow(): void {
    this.#writer.tryNow();
  }

  /** Changes that are not known to be on the disk. */
  get unsaved(): Unsaved {
    const [first] = this.#unkept;
    if (first === undefined) return [];
    const before = { seq: first.seq - 1, sum: first.before };
    return readEntries(this.#unkept, before).whole.flatMap(({ step }) => step?.done ?? []);
  }

  /** Waits for what is being written; gives whether all of it is on the disk. */
  settle(): Promise<boolean> {
    return this.#writer.settle();
  }

  end(): void {
    this.#ended = true;
    clearTimeout(this.#quiet);
    this.#writer.stop();
  }

  // Making the journal short.

  #shortenSoon(): void {
    clearTimeout(this.#quiet);
    const { since } = this.#standing;
    if (this.#ended || since < FEW) return;
    if (since >= MANY) whenIdle(() => void this.#shorten());
    else this.#quiet = setTimeout(() => whenIdle(() => void this.#shorten()), QUIET);
  }

  /** Writes a snapshot, and forgets the entries that neither it nor the history needs. */
  async #shorten(): Promise<void> {
    if (this.#ended || this.#shortening || !this.#writer.isDone) return;
    const { id, workbook, reach, turns, since } = this.#standing;
    const place = this.#writer.kept;
    const data = workbook.data('changes');
    const earliest = reach.earliest ?? place.seq + 1;
    const gone = between(turns, earliest);
    this.#shortening = true;
    // To read a large workbook out takes as long as to write it down: a frame of each.
    await new Promise<void>((resolve) => whenIdle(() => resolve(), QUIET));
    // Another tab may have the turn by now, with a later snapshot.
    if (this.#ended) return;
    const snapshot = snapshotOf(id, writeWorkbookFile(data), place);
    await transact(['snapshots', 'journal'], 'readwrite', async (transaction) => {
      const journal = transaction.objectStore('journal');
      await Promise.all([
        transaction.objectStore('snapshots').put(snapshot),
        ...gone.map(([from, to]) => journal.delete(journalRange(id, from, to))),
      ]);
    }).then(
      () => {
        this.#standing.since -= since;
      },
      // The journal holds everything, so nothing is lost; what is wrong with the storage shows with the next change.
      () => undefined,
    );
    this.#shortening = false;
  }
}

/** The numbers before the earliest that is needed, but for the turns, as ranges. */
function between(turns: readonly number[], earliest: number): readonly (readonly [from: number, to: number])[] {
  const ranges: (readonly [number, number])[] = [];
  let from = 0;
  for (const turn of [...turns.filter((each) => each < earliest), earliest]) {
    if (turn - 1 >= from) ranges.push([from, turn - 1]);
    from = turn + 1;
  }
  return ranges;
}
