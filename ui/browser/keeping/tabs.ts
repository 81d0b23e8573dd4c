// The tabs in which one workbook is open: one of them writes, by a lock of the browser's, and all talk over a channel. Where the
// browser has no locks or channels for this page, every tab writes for itself, and the journal tells when two did.

import type { Transaction } from '../../../engine/index.ts';
import type { Place } from './entries.ts';
import type { JournalRecord } from './records.ts';
import { within } from './storage.ts';

/** What tabs tell each other. */
export type Told =
  /** The writer: this is the last change, and which of them is on the disk. */
  | { readonly tell: 'here'; readonly last: Place; readonly kept: Place; readonly at: number }
  /** The writer: a change, not yet on the disk. */
  | { readonly tell: 'did'; readonly entry: JournalRecord }
  /** The writer: all up to here is on the disk. */
  | { readonly tell: 'kept'; readonly place: Place; readonly at: number }
  /** The writer: what waits can't be kept, and why. */
  | { readonly tell: 'failed'; readonly why: string }
  /** Who writes here? */
  | { readonly tell: 'hello' }
  /** To the writer: a change that was done in another tab. */
  | { readonly tell: 'wish'; readonly transaction: Transaction }
  /** To the writer: take back, or do again, what was done last, if it is still this. */
  | { readonly tell: 'back' | 'again'; readonly of: string }
  /** The writer: it was not, for something else was done since. */
  | { readonly tell: 'not done'; readonly of: string };

export type Role = 'writer' | 'follower' | 'apart';

export interface TabEvents {
  told(told: Told): void;
  /** The writer went: it is this tab's turn. */
  turn(): void;
  /** Another tab took the turn although this one had it. */
  lost(): void;
}

/** Asking for a lock or a channel takes no longer than this. */
const ASKING = 1_000;

export class Tabs {
  readonly #name: string;
  readonly #events: TabEvents;
  #channel: BroadcastChannel | undefined;
  #release = (): void => undefined;
  #waiting = new AbortController();
  #left = false;

  constructor(workbook: string, events: TabEvents) {
    // The number goes up with the words that tabs tell each other: tabs of other builds are not understood.
    this.#name = `dibble workbook 1 ${workbook}`;
    this.#events = events;
  }

  /** Hears of the others from now on; gives whether it can. */
  listen(): boolean {
    if (!('locks' in navigator) || typeof BroadcastChannel === 'undefined') return false;
    try {
      this.#channel = new BroadcastChannel(this.#name);
    } catch {
      return false;
    }
    this.#channel.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      if (isTold(data) && !this.#left) this.#events.told(data);
    });
    return true;
  }

  /** Takes the turn to write where it is free; else waits for it. */
  async join(): Promise<Role> {
    if (this.#channel === undefined) return 'apart';
    try {
      const free = await within(ASKING, this.#ask({ ifAvailable: true }));
      if (free) return 'writer';
    } catch {
      return 'apart';
    }
    this.#wait();
    return 'follower';
  }

  /** Takes the turn from a tab that has it and doesn't answer. */
  takeTurn(): void {
    this.#waiting.abort();
    void this.#ask({ steal: true }).then((free) => {
      if (free && !this.#left) this.#events.turn();
    });
  }

  /** Waits for the turn again, after it was taken away. */
  waitAgain(): void {
    this.#wait();
  }

  /** After leaving, what was still on its way to the disk is told to nobody: others read it there. */
  post(told: Told): void {
    if (!this.#left) this.#channel?.postMessage(told);
  }

  /** Gives the turn to the next and hears nothing more. */
  leave(): void {
    this.#left = true;
    this.#waiting.abort();
    this.#channel?.close();
    this.#release();
  }

  #wait(): void {
    this.#waiting = new AbortController();
    const { signal } = this.#waiting;
    this.#ask({ signal }).then(
      (free) => {
        if (free && !this.#left) this.#events.turn();
      },
      () => undefined,
    );
  }

  /** Whether the lock was given; it is held until this tab leaves or goes. */
  #ask(how: LockOptions): Promise<boolean> {
    return new Promise<boolean>((resolve, reject) => {
      let held = false;
      const holding = navigator.locks.request(this.#name, how, (lock) => {
        held = lock !== null;
        resolve(held);
        if (!held) return undefined;
        return new Promise<void>((release) => {
          this.#release = release;
        });
      });
      holding.catch((problem: unknown) => {
        if (held && !this.#left) this.#events.lost();
        reject(problem instanceof Error ? problem : new Error('The lock was refused.'));
      });
    });
  }
}

/** What comes over the channel was sent by a page of the same origin and the same number. */
function isTold(data: unknown): data is Told {
  return typeof data === 'object' && data !== null && 'tell' in data;
}
