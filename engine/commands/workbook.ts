// A workbook at work: a document, the commands that change it as transactions, undo and redo, and those who follow. Questions
// about what it holds are asked in queries/.

import { toScalar } from '../calculation/kernels/scalars.ts';
import { type ChangeSet, joinChanges, NO_CHANGE } from '../document/change-set.ts';
import { Changes, type Watched } from '../document/changes.ts';
import { type DocumentData, dataOf } from '../document/data.ts';
import type { Document } from '../document/document.ts';
import { History, type HistoryData, type Step } from '../document/history.ts';
import { openDocument } from '../document/open.ts';
import { templateOf } from '../document/schema-operations.ts';
import type { Arrival } from '../document/stamps.ts';
import type { Message, Operation, Transaction, TransactionSource } from '../document/transaction.ts';
import type { TemplateShelf } from '../schema/template.ts';
import { BLANK } from '../values/column.ts';
import type { CellAddress, Scalar } from '../values/error.ts';
import { TEXT } from '../values/type.ts';
import type { Writings } from '../values/writing.ts';
import type { Command } from './command.ts';
import type { Draft } from './draft.ts';
import { execute } from './execute.ts';
import type { Refusal } from './refusal.ts';

/** What the engine can't know by itself. */
export interface World {
  /** An id that nothing has yet. */
  newId(): string;
  /** Milliseconds of the clock. */
  now(): number;
  /** Who works here. */
  readonly actor: string;
  readonly templates: TemplateShelf;
  /** How people write figures and days; absent: as formulas have them. */
  readonly writings?: Writings;
}

/** A transaction that was done and what it changed. */
export interface Done {
  readonly refused: false;
  readonly transaction: Transaction;
  readonly change: ChangeSet;
  /** Ids of the rows inserted, in the order of the commands. */
  readonly inserted: readonly string[];
}

export interface DoOptions {
  readonly source?: TransactionSource;
  /** Makes one step of undo with the one before where that had the same message: a drag is many edits and one step back. */
  readonly joined?: boolean;
  /**
   * Others keep the order of changes: it is done at once, and stands in the history when it comes back from them, by confirm()
   * or receiveBefore().
   */
  readonly tentative?: boolean;
  /** Nothing is worked out yet, not even what is on screen: for one of many parts, after the last of which settleScreen() does. */
  readonly isPart?: boolean;
}

export interface Change {
  readonly transaction: Transaction;
  /** What takes it back. */
  readonly inverse: readonly Operation[];
  readonly change: ChangeSet;
  /** It was done elsewhere and received here. */
  readonly received: boolean;
}

/** What was worked out up to a refusal, and why it was refused. */
interface Attempt {
  readonly operations: readonly Operation[];
  readonly inverse: readonly Operation[];
  readonly inserted: readonly string[];
  readonly refusal: Refusal | undefined;
}

export class Workbook {
  readonly document: Document;
  readonly #world: World;
  readonly #changes: Changes;
  readonly #history: History;
  readonly #listeners = new Set<(change: Change) => void>();
  /** Those who hear of what changed alone, later slices among it. */
  readonly #followers = new Set<(change: ChangeSet) => void>();
  #latest = 0;
  /** The last transaction done here that has no place in the order yet. */
  #tentative: Transaction | undefined;

  constructor(document: Document, world: World, history?: HistoryData) {
    this.document = document;
    this.#world = world;
    this.#changes = new Changes(document, world.templates, world.writings);
    this.#history = new History(history);
    this.#latest = Math.max(0, document.stamps.newest);
  }

  /** A workbook from plain data; undefined where its template, in any version, is not known here. */
  static open(data: DocumentData, world: World, history?: HistoryData): Workbook | undefined {
    const { name, version } = data.template;
    const template = templateOf(name, version, world.templates) ?? world.templates.today(name);
    return template === undefined
      ? undefined
      : new Workbook(openDocument(data, template, world.writings), world, history);
  }

  /** An id that nothing has yet. */
  newId(): string {
    return this.#world.newId();
  }

  /** What a file keeps; with 'changes', also who changed what last, for a copy that others' changes reach once it is opened again. */
  data(alongside?: 'changes'): DocumentData {
    return dataOf(this.document, alongside);
  }

  get history(): HistoryData {
    return this.#history.data;
  }

  /** All or nothing; one transaction, one step of undo. A command that fails changes nothing either. */
  do(commands: readonly Command[], message: Message, options: DoOptions = {}): Done | Refusal {
    const { source = 'user', joined = false, tentative = false, isPart = false } = options;
    const before = this.#tentative ?? this.#history.last?.done;
    const joins = joined && before !== undefined && sameMessage(before.message, message) ? { joins: before.id } : {};
    const head = { ...this.#head(source, message), ...joins };
    const attempt = this.#attempt(commands, { stamp: head, remote: false });
    if (attempt.refusal !== undefined) {
      this.#takeBack(attempt.inverse);
      return attempt.refusal;
    }
    const transaction: Transaction = { ...head, operations: attempt.operations };
    const change = this.#finish(attempt.inverse, isPart ? 'nothing yet' : undefined);
    if (change.refused) return change;
    if (transaction.operations.length > 0) {
      const { inverse } = attempt;
      if (tentative) this.#tentative = transaction;
      else this.#history.note({ done: transaction, inverse });
      this.#tell({ transaction, inverse, change, received: false });
    } else this.#tellFollowers(change);
    return { refused: false, transaction, change, inserted: attempt.inserted };
  }

  /** Does a transaction that came from elsewhere: a journal, another window, another person. */
  receive(transaction: Transaction): ChangeSet {
    this.#latest = Math.max(this.#latest, transaction.time);
    const remote = transaction.source === 'remote';
    const inverse = this.#perform(transaction.operations, { stamp: transaction, remote });
    const change = this.#changes.finish();
    // A transaction out of the journal stands in the history as when it was first done.
    if (!remote) this.#history.note({ done: transaction, inverse });
    this.#tell({ transaction, inverse, change, received: true });
    return change;
  }

  /** A step that was done here tentatively comes back as the next in the order: nothing moves, and it can be taken back. */
  confirm(step: Step): void {
    if (this.#tentative?.id === step.done.id) this.#tentative = undefined;
    this.#history.note(step);
  }

  /**
   * Does a step of others that comes before the latest ones here, which were done tentatively: those are taken back, and done
   * again after it, so that the workbook becomes what it would be had all been done in that order. Gives those later steps with
   * what takes them back from now on.
   */
  receiveBefore(step: Step, later: readonly Step[]): readonly Step[] {
    this.#latest = Math.max(this.#latest, step.done.time);
    for (const { inverse } of later.toReversed()) this.#perform(inverse, { stamp: NEVER, remote: false });
    this.#perform(step.done.operations, { stamp: step.done, remote: false });
    const again = later.map(({ done }): Step => {
      return { done, inverse: this.#perform(done.operations, { stamp: done, remote: false }) };
    });
    const change = this.#changes.finish();
    this.#tentative = again.at(-1)?.done;
    this.#history.note(step);
    this.#tell({ transaction: step.done, inverse: step.inverse, change, received: true });
    return again;
  }

  /** Takes the last step back; undefined where there is none. */
  undo(): Done | undefined {
    return this.#stepBack({});
  }

  /** Takes the last step back for good: what was left before its end is not to be done again. */
  drop(): Done | undefined {
    return this.#stepBack({ forgets: true });
  }

  #stepBack(how: Pick<Transaction, 'forgets'>): Done | undefined {
    const step = this.#history.last;
    if (step === undefined) return undefined;
    const head = { ...this.#head('user', step.done.message), undoes: step.done.id, ...how };
    return this.#replay(step, head, (undone) => this.#history.undone(undone));
  }

  /** Does the last step that was taken back again; undefined where there is none. */
  redo(): Done | undefined {
    const step = this.#history.next;
    if (step === undefined) return undefined;
    const head = { ...this.#head('user', step.done.message), redoes: step.done.id };
    return this.#replay(step, head, (redone) => this.#history.redone(redone));
  }

  #replay({ inverse: operations }: Step, head: Omit<Transaction, 'operations'>, keep: (step: Step) => void): Done {
    const transaction: Transaction = { ...head, operations };
    const inverse = this.#perform(operations, { stamp: head, remote: false });
    const change = this.#changes.finish();
    keep({ done: transaction, inverse });
    this.#tell({ transaction, inverse, change, received: false });
    return { refused: false, transaction, change, inserted: [] };
  }

  /** Hears of every transaction and what it changed; gives back the way to stop. */
  subscribe(listener: (change: Change) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /**
   * Hears of changes joined into one since it heard last: `schedule` says when (the next frame), and none is lost in between.
   * Gives back the way to stop.
   */
  follow(listener: (change: ChangeSet) => void, schedule: (flush: () => void) => void): () => void {
    let waiting = NO_CHANGE;
    let scheduled = false;
    const flush = (): void => {
      scheduled = false;
      const change = waiting;
      waiting = NO_CHANGE;
      if (change !== NO_CHANGE) listener(change);
    };
    const hear = (change: ChangeSet): void => {
      waiting = joinChanges(waiting, change);
      if (scheduled) return;
      scheduled = true;
      schedule(flush);
    };
    this.#followers.add(hear);
    return () => this.#followers.delete(hear);
  }

  /**
   * Says what is on screen, asked anew at every change: a change then works out that alone, and what else was ever asked for waits
   * until somebody reads it, or for settle(). Without it a change works out all that was ever asked for.
   */
  watch(onScreen: () => readonly Watched[]): void {
    this.#changes.watch(onScreen);
  }

  /** Works out what watch() says is on screen for as long as `goOn` says, and tells those who follow; true where more is left. */
  settleScreen(goOn: () => boolean): boolean {
    const left = this.#changes.bringScreen(goOn);
    this.#tellFollowers(this.#changes.tell());
    return left;
  }

  /** Works out what waits for as long as `goOn` says, and tells those who follow; true where more is left. */
  settle(goOn?: () => boolean): boolean {
    const left = this.document.run.settle(goOn);
    this.#tellFollowers(this.#changes.tell());
    return left;
  }

  /**
   * A workbook that holds the same and changes by itself from here on; it has no history yet. Nobody has asked anything of it:
   * a change works out nothing till somebody reads it, watches or calls settle(), so that only columns that are wanted are copied.
   */
  branch(): Workbook {
    const branch = new Workbook(this.document.branch(), this.#world);
    branch.watch(() => []);
    return branch;
  }

  /** What `work` makes of a branch that nobody sees before or after: of its frame nothing may be kept. */
  onBranch<T>(work: (branch: Workbook) => T): T {
    const branch = this.branch();
    try {
      return work(branch);
    } finally {
      branch.release();
    }
  }

  /**
   * To be called on a branch that nobody looks at any more, nor at anything that was read from its frame: what it copied is used
   * for the next one.
   */
  release(): void {
    this.document.release();
  }

  /**
   * What cells would hold after each of several sets of commands, each tried on the workbook as it is now. Nothing is changed:
   * the trials run on a branch. A set that would be refused gives undefined.
   */
  whatIf(
    trials: readonly (readonly Command[])[],
    cells: readonly CellAddress[],
  ): readonly (readonly Scalar[] | undefined)[] {
    // What the trials start from is worked out once, not in each branch.
    this.#changes.bring(cells);
    return this.onBranch((branch) => trials.map((commands) => branch.#try(commands, cells)));
  }

  /**
   * Does commands on a branch that only its maker sees, and brings nothing up to date but some cells, for very many trials one
   * after another. Nothing is kept in its history or told. Gives the sentence of a refusal, which leaves the last trial.
   */
  tryOut(commands: readonly Command[], cells: readonly CellAddress[] | undefined): string | undefined {
    const attempt = this.#attempt(commands, { stamp: NEVER, remote: false });
    if (attempt.refusal !== undefined)
      for (const operation of attempt.inverse) this.#changes.apply(operation, { stamp: NEVER, remote: false });
    this.#changes.finish(cells);
    return attempt.refusal?.why;
  }

  #try(commands: readonly Command[], cells: readonly CellAddress[]): readonly Scalar[] | undefined {
    const attempt = this.#attempt(commands, { stamp: this.#head('user', NO_MESSAGE), remote: false });
    this.#changes.finish(cells);
    const answers = attempt.refusal === undefined ? cells.map((cell) => this.#value(cell)) : undefined;
    for (const operation of attempt.inverse) this.#changes.apply(operation, { stamp: NEVER, remote: false });
    return answers;
  }

  #value({ sheet, row, column }: CellAddress): Scalar {
    const { program, frame } = this.document;
    const found = program.sheet(sheet)?.column(column);
    if (found === undefined) return null;
    const { values, states } = frame.column(found.def);
    return toScalar(program.words, found.type ?? TEXT, values[row] ?? 0, states[row] ?? BLANK);
  }

  /** Every computed cell worked out again from what is entered; for tests and benchmarks. */
  recalculateAll(): void {
    this.document.run.everythingAgain();
    this.#changes.finish();
  }

  #head(source: TransactionSource, message: Message): Omit<Transaction, 'operations'> {
    // Later than anything known here, so that what a person does now counts even where a clock was set back.
    this.#latest = Math.max(Math.floor(this.#world.now()), this.#latest + 1);
    return { id: this.#world.newId(), actor: this.#world.actor, time: this.#latest, source, message };
  }

  #attempt(commands: readonly Command[], arrival: Arrival): Attempt {
    const operations: Operation[] = [];
    const inverses: (readonly Operation[])[] = [];
    const inserted: string[] = [];
    const draft: Draft = {
      document: this.document,
      templates: this.#world.templates,
      inserted,
      newId: () => this.#world.newId(),
      settle: () => this.#changes.settle(),
      schema: () => this.#changes.schemaToCome,
      catalog: () => this.#changes.catalogToCome,
      perform: (operation) => {
        operations.push(operation);
        inverses.push(this.#changes.apply(operation, arrival));
      },
    };
    let refusal: Refusal | undefined;
    for (const [index, command] of commands.entries()) {
      try {
        const refused = execute(command, draft);
        if (refused !== undefined) refusal = { refused: true, index, ...refused };
      } catch (fault) {
        refusal = failed(index, fault);
      }
      if (refusal !== undefined) break;
    }
    return { operations, inverse: backwards(inverses), inserted, refusal };
  }

  #perform(operations: readonly Operation[], arrival: Arrival): readonly Operation[] {
    return backwards(operations.map((operation) => this.#changes.apply(operation, arrival)));
  }

  /** Brings everything up to date. A fault on the way takes the operations back and is told. */
  #finish(inverse: readonly Operation[], wanted?: 'nothing yet'): (ChangeSet & { readonly refused?: never }) | Refusal {
    try {
      return this.#changes.finish(wanted);
    } catch (fault) {
      this.#takeBack(inverse);
      this.document.run.everythingAgain();
      return failed(0, fault);
    }
  }

  #takeBack(inverse: readonly Operation[]): void {
    for (const operation of inverse) this.#changes.apply(operation, { stamp: NEVER, remote: false });
    this.#changes.bringUp();
  }

  #tellFollowers(change: ChangeSet): void {
    if (change === NO_CHANGE) return;
    for (const follower of this.#followers) follower(change);
  }

  #tell(change: Change): void {
    for (const listener of this.#listeners) listener(change);
    this.#tellFollowers(change.change);
  }
}

/** What takes operations back, from what takes each of them back: the last first. */
function backwards(inverses: readonly (readonly Operation[])[]): readonly Operation[] {
  const all: Operation[] = [];
  for (let i = inverses.length - 1; i >= 0; i--) for (const operation of inverses[i] ?? []) all.push(operation);
  return all;
}

const NO_MESSAGE: Message = { code: 'trial', parts: {} };

/** Taking back what was never told leaves no trace of when. */
const NEVER = { time: Number.NEGATIVE_INFINITY, actor: '' };

function sameMessage(a: Message, b: Message): boolean {
  return a.code === b.code && JSON.stringify(a.parts) === JSON.stringify(b.parts);
}

function failed(index: number, fault: unknown): Refusal {
  const said = fault instanceof Error ? fault.message : String(fault);
  return { refused: true, index, why: `This could not be done, and nothing was changed (a fault in Dibble: ${said}).` };
}
