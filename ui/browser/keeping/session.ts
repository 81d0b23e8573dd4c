// One kept workbook on screen: what is done in it goes into its journal, by this tab where it has the turn to write (writing.ts),
// else by the tab that has it (following.ts). When the turn passes, what is not on the disk yet passes with it. showing.ts
// and beginning.ts begin a session for the workbook that comes on screen, and end it when another does.

import type { Change, Step } from '../../../engine/index.ts';
import type { Following, FollowingEvents } from './following.ts';
import { type Found, findKept, type OpenedKept, openFound } from './opening.ts';
import { Standing, type Unsaved } from './standing.ts';
import { faultOf, journalRange, StorageFault, transact, within } from './storage.ts';
import { type Role, Tabs, type Told } from './tabs.ts';
import { Writing, type WritingEvents } from './writing.ts';

export interface SessionEvents extends Omit<WritingEvents, 'post' | 'taken'>, Omit<FollowingEvents, 'post' | 'astray'> {
  /** Which part this tab plays from now on. */
  role(role: Role): void;
  /** The workbook was read again from what is kept: it takes the place of the one on screen. */
  replaced(opened: OpenedKept): void;
  /** It could not be read again. */
  lost(why: string | StorageFault): void;
}

/** So long a tab that follows waits for the tab that writes, looking every so often. */
const PATIENCE = 1_500;
const STEP = 25;
/** So long the part that follows is waited for, which is fetched when a tab first follows another. */
const FETCHING = 2_000;

export class Session {
  readonly id: string;
  readonly #events: SessionEvents;
  readonly #tabs: Tabs;
  /** Told before this tab had read the workbook. */
  #early: Told[] = [];
  #standing: Standing | undefined;
  #part: Writing | Following | undefined;
  #role: Role = 'apart';
  /** Known once this tab has followed, or is about to. */
  #follow: ((...given: ConstructorParameters<typeof Following>) => Following) | undefined;
  /** Set while the workbook is read again: changes wait in the part that ends. */
  #reading = false;
  #ended = false;

  constructor(id: string, events: SessionEvents) {
    this.id = id;
    this.#events = events;
    this.#tabs = new Tabs(id, {
      told: (told) => this.#told(told),
      turn: () => void this.#takeTurn(),
      lost: () => {
        this.#tabs.waitAgain();
        void this.#readAgain('follower');
      },
    });
  }

  /** Finds out who writes, then reads what is kept of the workbook: nothing can come in between. */
  async find(): Promise<Found> {
    this.#tabs.listen();
    this.#role = await this.#tabs.join();
    if (this.#role === 'follower') await this.#learnToFollow();
    return findKept(this.id);
  }

  async #learnToFollow(): Promise<void> {
    const { Following } = await within(FETCHING, import('./following.ts')).catch(() => {
      throw new StorageFault('refused', 'a part of the page could not be fetched');
    });
    this.#follow = (...given) => new Following(...given);
  }

  /** Whether this tab writes the workbook, or is about to. */
  get writes(): boolean {
    return this.#role !== 'follower';
  }

  /** Of a workbook that has just been begun here: nobody else can write it yet. */
  async openBegun(opened: OpenedKept): Promise<void> {
    this.#tabs.listen();
    this.#role = await this.#tabs.join();
    this.begin(opened);
  }

  /** The workbook is on screen: its changes are kept from now on. */
  begin(opened: OpenedKept, unsaved: Unsaved = []): void {
    this.#standing = new Standing(this.id, opened);
    this.#play(this.#role, unsaved);
    for (const told of this.#early.splice(0)) this.#told(told);
    document.addEventListener('visibilitychange', this.#look);
  }

  #play(role: Role, unsaved: Unsaved, left: readonly Step[] = []): void {
    const standing = this.#standing;
    if (standing === undefined || this.#ended) return;
    this.#part?.end();
    this.#role = role;
    this.#events.role(role);
    const post = (told: Told): void => this.#tabs.post(told);
    if (role === 'follower' && this.#follow !== undefined) {
      const following = this.#follow(standing, unsaved, {
        ...this.#events,
        post,
        astray: () => void this.#readAgain('follower'),
      });
      this.#part = following;
      following.begin();
      return;
    }
    const writing = new Writing(standing, { ...this.#events, post, taken: () => void this.#readAgain(role) });
    this.#part = writing;
    writing.begin(left);
    for (const transaction of unsaved) {
      if (!standing.knows(transaction.id)) standing.workbook.receive(transaction);
    }
  }

  /** A change of the workbook. */
  changed(change: Change): void {
    const part = this.#part;
    if (part?.writes !== false || !change.received) part?.changed(change);
  }

  back(): void {
    if (this.#part?.writes === false) this.#part.back();
  }

  again(): void {
    if (this.#part?.writes === false) this.#part.again();
  }

  /** Takes the turn from a tab that doesn't answer. */
  takeOver(): void {
    this.#tabs.takeTurn();
  }

  tryNow(): void {
    if (this.#part?.writes === true) this.#part.tryNow();
  }

  get isDone(): boolean {
    return this.#part?.isDone ?? true;
  }

  /** Changes that are not known to be on the disk. */
  get unsaved(): Unsaved {
    return this.#part?.unsaved ?? [];
  }

  /** Where the workbook stands in the journal. */
  get place() {
    return this.#standing?.last;
  }

  /** Waits until what is being written is on the disk; gives whether all of it is. */
  async settle(): Promise<boolean> {
    if (this.#part?.writes === true) return this.#part.settle();
    for (let waited = 0; !this.isDone && waited < PATIENCE; waited += STEP) {
      await new Promise((resolve) => setTimeout(resolve, STEP));
    }
    return this.isDone;
  }

  end(): void {
    this.#ended = true;
    document.removeEventListener('visibilitychange', this.#look);
    this.#part?.end();
    this.#tabs.leave();
  }

  #told(told: Told): void {
    if (this.#standing === undefined) this.#early.push(told);
    else if (!this.#reading) this.#part?.told(told);
  }

  async #takeTurn(): Promise<void> {
    const part = this.#part;
    if (this.#ended || part?.writes !== false) {
      this.#role = 'writer';
      return;
    }
    const inherited = await part.inherit().catch(() => undefined);
    if (this.#ended || this.#part !== part) return;
    if (inherited === undefined || this.#standing === undefined) {
      await this.#readAgain('writer');
      return;
    }
    this.#standing.last = inherited.place;
    this.#play('writer', [], inherited.left);
  }

  /** Reads the workbook from what is kept, and does again what is not on the disk. */
  async #readAgain(role: Role): Promise<void> {
    if (this.#reading || this.#ended) return;
    this.#reading = true;
    const before = this.#part;
    before?.end();
    try {
      if (role === 'follower') await this.#learnToFollow();
      const opened = await openFound(await findKept(this.id));
      if (this.#ended) return;
      if (!opened.ok) {
        this.#events.lost(opened.why);
        return;
      }
      // Changes that were done while it was read are among them.
      const unsaved = before?.unsaved ?? [];
      this.#events.replaced(opened);
      this.#standing = new Standing(this.id, opened);
      this.#reading = false;
      this.#play(role, unsaved);
    } catch (problem) {
      this.#events.lost(faultOf(problem));
    } finally {
      this.#reading = false;
    }
  }

  /** Without locks and channels a tab sees what others did when a person comes back to it. */
  readonly #look = (): void => {
    const standing = this.#standing;
    if (this.#role !== 'apart' || document.visibilityState !== 'visible' || standing === undefined || !this.isDone)
      return;
    const { last } = standing;
    transact(['journal'], 'readonly', (transaction) => {
      return transaction.objectStore('journal').getAllKeys(journalRange(this.id, last.seq + 1));
    }).then(
      (keys) => {
        if (keys.length > 0 && standing.last.seq === last.seq) void this.#readAgain('apart');
      },
      () => undefined,
    );
  };
}
