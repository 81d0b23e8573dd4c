// The part of a tab that follows: what is done here is done at once and wished of the tab that writes, whose order of changes
// this one takes over as it is told; what was done here meanwhile goes after it.

import type { Change, Step, Transaction } from '../../../engine/index.ts';
import { type Place, type Placed, readEntries } from './entries.ts';
import type { JournalRecord } from './records.ts';
import type { Standing, Unsaved } from './standing.ts';
import { journalRange, transact } from './storage.ts';
import type { Told } from './tabs.ts';

export interface FollowingEvents {
  post(told: Told): void;
  keeping(): void;
  kept(at: number): void;
  failedElsewhere(why: string): void;
  /** The tab that writes doesn't answer. */
  silent(): void;
  /** The order here is no longer that of the journal: all is to be read again. */
  astray(): void;
  /** The history changed without a change of the workbook. */
  historyChanged(): void;
  /** A step that was asked for came back; false where it was not done. */
  stepped(transaction: Transaction | false): void;
}

/** The tab that writes answers within this, or is said to be silent. */
const ANSWER = 3_000;

export class Following {
  readonly writes = false;
  readonly #standing: Standing;
  readonly #events: FollowingEvents;
  /** The last entry that is known to be on the disk. */
  #kept: Place;
  /** In the order, but not known to be on the disk. */
  #unkept: JournalRecord[] = [];
  /** Done here, and not yet in the order. */
  #pending: readonly Step[] = [];
  /** Wished, but not done here: they come back in the order. */
  #owed: readonly Transaction[];
  /** The step that was asked to be taken back or done again. */
  #asked: string | undefined;
  /** Entries that came while the journal was read. */
  #catching: JournalRecord[] | undefined;
  #answer: ReturnType<typeof setTimeout> | undefined;
  #ended = false;

  constructor(standing: Standing, owed: Unsaved, events: FollowingEvents) {
    this.#standing = standing;
    this.#events = events;
    this.#kept = standing.last;
    this.#owed = owed.filter(({ id }) => !standing.knows(id));
  }

  /** Asks who writes; what is owed is wished when they answer. */
  begin(): void {
    this.#events.post({ tell: 'hello' });
    this.#expectAnswer();
  }

  /** A change that was done here. */
  changed({ transaction, inverse }: Change): void {
    this.#pending = [...this.#pending, { done: transaction, inverse }];
    this.#events.post({ tell: 'wish', transaction });
    this.#events.keeping();
    this.#expectAnswer();
  }

  back(): void {
    this.#ask('back', this.#pending.at(-1)?.done.id ?? this.#standing.workbook.history.done.at(-1)?.done.id);
  }

  again(): void {
    this.#ask('again', this.#standing.workbook.history.undone.at(-1)?.done.id);
  }

  #ask(tell: 'back' | 'again', of: string | undefined): void {
    if (of === undefined) {
      this.#events.stepped(false);
      return;
    }
    this.#asked = of;
    this.#events.post({ tell, of });
    this.#expectAnswer();
  }

  told(told: Told): void {
    switch (told.tell) {
      case 'here':
        this.#here(told.last, told.kept, told.at);
        break;
      case 'did':
        this.#answered();
        this.#did(told.entry);
        break;
      case 'kept':
        this.#answered();
        this.#keptTo(told.place, told.at);
        break;
      case 'failed':
        this.#answered();
        this.#events.failedElsewhere(told.why);
        break;
      case 'not done':
        if (told.of !== this.#asked) break;
        this.#answered();
        this.#asked = undefined;
        this.#events.stepped(false);
        break;
    }
  }

  /** A writer says where it stands. Whoever it is, it is told what is not in the order yet. */
  #here(last: Place, kept: Place, at: number): void {
    this.#answered();
    const mine = this.#standing.last;
    if (last.seq < mine.seq || (last.seq === mine.seq && last.sum !== mine.sum)) {
      this.#events.astray();
      return;
    }
    for (const transaction of this.#owed) this.#events.post({ tell: 'wish', transaction });
    for (const { done } of this.#pending) this.#events.post({ tell: 'wish', transaction: done });
    this.#keptTo(kept, at);
  }

  #keptTo(place: Place, at: number): void {
    if (place.seq > this.#standing.last.seq) {
      // Something was not told, because it was long or came before this tab listened.
      void this.#catchUp([]);
      return;
    }
    if (place.seq > this.#kept.seq) this.#kept = place;
    this.#unkept = this.#unkept.filter(({ seq }) => seq > place.seq);
    this.#say(at);
  }

  #say(at: number): void {
    if (this.isDone) this.#events.kept(at);
    else this.#events.keeping();
  }

  #did(entry: JournalRecord): void {
    if (this.#catching !== undefined) {
      this.#catching.push(entry);
      return;
    }
    const { last } = this.#standing;
    if (entry.seq <= last.seq) {
      if (entry.seq === last.seq && entry.sum !== last.sum) this.#events.astray();
      return;
    }
    const [placed] = readEntries([entry], last).whole;
    if (placed === undefined) void this.#catchUp([entry]);
    else if (this.#take(placed)) this.#unkept.push(entry);
  }

  /** Takes the next entry of the order; false where this tab has lost the thread. */
  #take({ place, step }: Placed): boolean {
    if (step !== undefined && !this.#takeStep(step)) {
      this.#events.astray();
      return false;
    }
    this.#standing.note(place, step);
    return true;
  }

  #takeStep(step: Step): boolean {
    const { workbook } = this.#standing;
    const { id, undoes, redoes } = step.done;
    const mine = this.#pending.findIndex(({ done }) => done.id === id);
    if (mine > 0) return false;
    if (mine === 0) {
      this.#pending = this.#pending.slice(1);
      workbook.confirm(step);
      this.#events.historyChanged();
    } else {
      try {
        this.#pending = workbook.receiveBefore(step, this.#pending);
      } catch {
        return false;
      }
    }
    this.#owed = this.#owed.filter((each) => each.id !== id);
    if (this.#asked !== undefined && (undoes === this.#asked || redoes === this.#asked)) {
      this.#asked = undefined;
      this.#events.stepped(step.done);
    }
    return true;
  }

  /** Reads from the journal what was not told here. */
  async #catchUp(entries: JournalRecord[]): Promise<void> {
    if (this.#catching !== undefined) return;
    this.#catching = entries;
    const { id } = this.#standing;
    const from = this.#standing.last.seq;
    const found = await transact(['journal'], 'readonly', (transaction) => {
      return transaction.objectStore('journal').getAll(journalRange(id, from + 1));
    }).catch(() => undefined);
    const waiting = this.#catching;
    this.#catching = undefined;
    if (this.#ended) return;
    const read = readEntries(found ?? [], this.#standing.last);
    for (const placed of read.whole) if (!this.#take(placed)) return;
    const last = read.whole.at(-1)?.place;
    if (last !== undefined) this.#kept = last;
    if (read.damaged.length > 0) {
      this.#events.astray();
      return;
    }
    for (const entry of waiting.sort((a, b) => a.seq - b.seq)) {
      const [placed] = readEntries([entry], this.#standing.last).whole;
      if (placed !== undefined && this.#take(placed)) this.#unkept.push(entry);
    }
    const behind = (waiting.at(-1)?.seq ?? 0) > this.#standing.last.seq;
    // What is missing is neither on the disk nor was it told: it is asked for.
    if (behind) this.#events.post({ tell: 'hello' });
    this.#say(Date.now());
  }

  /** Whether all that is shown is on the disk. */
  get isDone(): boolean {
    return this.#pending.length === 0 && this.#owed.length === 0 && this.#unkept.length === 0;
  }

  /** Changes that are not known to be on the disk, whoever did them. */
  get unsaved(): Unsaved {
    return [...this.#unkeptSteps().map(({ done }) => done), ...this.#owed, ...this.#pending.map(({ done }) => done)];
  }

  #unkeptSteps(): readonly Step[] {
    const [first] = this.#unkept;
    if (first === undefined) return [];
    return readEntries(this.#unkept, { seq: first.seq - 1, sum: first.before }).whole.flatMap(({ step }) => step ?? []);
  }

  /**
   * The writer went. Reads what it left in the journal and gives the steps that are to be written after that; undefined where
   * the journal went another way, and all is to be read again.
   */
  async inherit(): Promise<{ readonly place: Place; readonly left: readonly Step[] } | undefined> {
    const { id, workbook } = this.#standing;
    const found = await transact(['journal'], 'readonly', (transaction) => {
      return transaction.objectStore('journal').getAll(journalRange(id, this.#kept.seq + 1));
    });
    const known = this.#unkept.slice(0, found.length);
    if (found.some(({ sum }, i) => known[i]?.sum !== sum) || this.#owed.length > 0) return undefined;
    const last = found.at(-1) ?? this.#kept;
    const left = this.#unkeptSteps().filter((_, i) => i >= this.#stepsIn(found.length));
    for (const step of this.#pending) workbook.confirm(step);
    return { place: { seq: last.seq, sum: last.sum }, left: [...left, ...this.#pending] };
  }

  /** How many of the first entries not known to be on the disk are steps. */
  #stepsIn(count: number): number {
    return this.#unkept.slice(0, count).filter(({ text }) => text !== '').length;
  }

  end(): void {
    this.#ended = true;
    clearTimeout(this.#answer);
  }

  #expectAnswer(): void {
    this.#answer ??= setTimeout(() => {
      this.#answer = undefined;
      this.#events.silent();
    }, ANSWER);
  }

  #answered(): void {
    clearTimeout(this.#answer);
    this.#answer = undefined;
    if (this.#pending.length > 0 || this.#owed.length > 0) this.#expectAnswer();
  }
}
