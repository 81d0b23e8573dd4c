// The one way into a document that is open: applies operations and gives back their inverses, brings what was asked for up to
// date, and tells what changed. Called by commands/workbook.ts. What an operation does is in cell-operations.ts,
// row-operations.ts, row-blocks.ts (many rows at once), reshaping.ts (sheets, columns, formulas) and setting-operations.ts; links
// to rows that went or come are in waiting-links.ts. Nothing else writes to a document that is open. Total: what has no place goes
// on the shelf, and an operation that finds nothing to do does nothing.

import type { Catalog } from '../language/typed.ts';
import type { OwnSchema } from '../schema/own.ts';
import { entry } from '../schema/records.ts';
import type { Schema } from '../schema/schema.ts';
import type { TemplateShelf } from '../schema/template.ts';
import type { CellAddress } from '../values/error.ts';
import { plainWriting, type Writings } from '../values/writing.ts';
import { giveRange, typeCell, writeNote } from './cell-operations.ts';
import type { ChangeSet } from './change-set.ts';
import type { Document } from './document.ts';
import type { GraphRun } from './graph-run.ts';
import { Reshaping } from './reshaping.ts';
import { insertRowsAtOnce, knownRows, removeRowsAtOnce } from './row-blocks.ts';
import { insertRow, keepRow, moveRow, removeRow } from './row-operations.ts';
import { orderRows } from './row-places.ts';
import { isSchemaOperation, type SchemaOperation } from './schema-operations.ts';
import { applySetting } from './setting-operations.ts';
import { type Arrival, BEFORE_ALL, isLater, type Stamp } from './stamps.ts';
import { moveTemplateRows } from './template-rows.ts';
import { thingOf } from './things.ts';
import { Touched } from './touched.ts';
import { type Operation, type OperationOf, oneByOne } from './transaction.ts';
import { settleLinks } from './waiting-links.ts';

type ManyRows = OperationOf<'insert rows' | 'remove rows'>;
type SingleOperation = Exclude<Operation, ManyRows>;

/** A column on screen. */
export interface Watched {
  readonly sheet: string;
  readonly column: string;
}

export class Changes {
  readonly #document: Document;
  readonly #writings: Writings;
  readonly #touched = new Touched();
  readonly #reshaping: Reshaping;
  #onScreen: (() => readonly Watched[]) | undefined;

  constructor(document: Document, templates: TemplateShelf, writings: Writings = plainWriting) {
    this.#document = document;
    this.#writings = writings;
    this.#reshaping = new Reshaping(document, templates, this.#touched);
  }

  get #run(): GraphRun {
    return this.#document.run;
  }

  // Operations.

  /** Does an operation and gives what takes it back, to be done in the order given. */
  apply(operation: Operation, arrival: Arrival): readonly Operation[] {
    if (operation.op === 'insert rows' || operation.op === 'remove rows') return this.#applyMany(operation, arrival);
    return operation.op === 'insert row' ? this.#applyInsert(operation, arrival) : this.#applyOne(operation, arrival);
  }

  /** A row that comes back is placed as one that moves is: another's later move of it counts, whether it is there by then or not. */
  #applyInsert(operation: OperationOf<'insert row'>, arrival: Arrival): readonly Operation[] {
    const { sheet, row, at } = operation;
    const isThere = (): { readonly at: string } | undefined => this.#document.rowsOf(sheet).record(row);
    if (isThere() === undefined) return this.#applyOne(operation, arrival);
    const placed = this.#applyOne({ op: 'move row', sheet, row, at }, arrival);
    return [...this.#applyOne({ ...operation, at: isThere()?.at ?? at }, arrival), ...placed];
  }

  #applyOne(operation: SingleOperation, arrival: Arrival): readonly Operation[] {
    const giveWay = arrival.remote && !dropsTrace(operation, this.schemaToCome.own);
    if (giveWay && !this.#isLatest(operation, arrival.stamp)) return this.#overruled(operation, arrival);
    const isNew =
      operation.op === 'insert row' && this.#document.rowsOf(operation.sheet).record(operation.row) === undefined;
    const inverse = this.#apply(operation, arrival);
    this.#note(operation, arrival.stamp);
    if (isNew) this.#document.stamps.noteBirth(operation.sheet, operation.row, arrival.stamp);
    return inverse;
  }

  #isLatest(operation: SingleOperation, stamp: Stamp): boolean {
    const row = 'row' in operation ? operation : undefined;
    return isLater(stamp, this.#document.stamps.of(thingOf(operation), row));
  }

  /** Says of things whether another changed them last; of nobody's doing nothing is another's. */
  #isOfOthers({ time, actor }: Stamp): (thing: string) => boolean {
    return (thing) => {
      const last = this.#document.stamps.of(thing);
      return time !== BEFORE_ALL.time && last !== BEFORE_ALL && last.actor !== actor;
    };
  }

  #note(operation: SingleOperation, stamp: Stamp): void {
    const { stamps } = this.#document;
    if (operation.op === 'cell') stamps.noteCell(operation, stamp);
    else stamps.note(thingOf(operation), stamp);
  }

  /**
   * A change that comes too late changes nothing, but a cell of a row that is not there yet waits for it, and of a sheet or column
   * that was taken out by then a trace stays.
   */
  #overruled(operation: SingleOperation, arrival: Arrival): readonly Operation[] {
    if (operation.op === 'cell') this.#note(operation, arrival.stamp);
    if (operation.op !== 'add sheet' && operation.op !== 'add column') return [];
    const isOfOthers = this.#isOfOthers(arrival.stamp);
    const added = this.#reshaping.schema(operation, isOfOthers);
    if (added.length === 0) return [];
    const removal: SchemaOperation =
      operation.op === 'add sheet'
        ? { op: 'remove sheet', sheet: operation.sheet.id }
        : { op: 'remove column', sheet: operation.sheet, column: operation.column.id };
    return [...this.#reshaping.schema(removal, isOfOthers), ...added];
  }

  #apply(operation: SingleOperation, arrival: Arrival): readonly Operation[] {
    const document = this.#document;
    const touched = this.#touched;
    if (operation.op === 'template') return this.#template(operation, arrival);
    if (isSchemaOperation(operation)) return this.#reshaping.schema(operation, this.#isOfOthers(arrival.stamp));
    switch (operation.op) {
      case 'cell':
        this.settle();
        return typeCell(document, operation, arrival, touched);
      case 'range':
        this.settle();
        return giveRange(document, operation);
      case 'insert row':
        this.settle();
        return insertRow(document, operation, touched);
      case 'remove row':
        this.settle();
        return removeRow(document, operation, arrival, touched);
      case 'move row':
        this.settle();
        return moveRow(document, operation, touched);
      case 'keep row':
        this.settle();
        return keepRow(document, operation, touched);
      case 'note':
        this.settle();
        return writeNote(document, operation, arrival, touched);
      case 'units':
        return this.#reshaping.units(operation);
      default:
        return applySetting(document, operation, this.#writings, touched);
    }
  }

  #applyMany(operation: ManyRows, arrival: Arrival): readonly Operation[] {
    this.settle();
    const inverse = arrival.remote ? undefined : this.#atOnce(operation, arrival.stamp);
    if (inverse !== undefined) return [inverse];
    // Asked before any of them comes.
    const known = operation.op === 'insert rows' ? knownRows(this.#document, operation) : undefined;
    const inverses = oneByOne(operation).map((one) => {
      return 'column' in one && 'row' in one && known?.has(one.row) === true ? [] : this.apply(one, arrival);
    });
    return inverses.reverse().flat();
  }

  #atOnce(operation: ManyRows, stamp: Stamp): Operation | undefined {
    return operation.op === 'insert rows'
      ? insertRowsAtOnce(this.#document, operation, stamp, this.#touched)
      : removeRowsAtOnce(this.#document, operation, stamp, this.#touched);
  }

  /** Another version of the template, and the rows that it ships as far as they follow. */
  #template(operation: OperationOf<'template'>, arrival: Arrival): readonly Operation[] {
    this.settle();
    const before = this.#document.template;
    const [back] = this.#reshaping.schema(operation, () => false);
    if (back?.op !== 'template') return [];
    this.#touched.settings = true;
    this.settle();
    const follows = operation.rows === 'follow';
    const moves = follows ? moveTemplateRows(this.#document, before, this.#document.template) : (operation.held ?? []);
    const by = follows ? { stamp: BEFORE_ALL, remote: false } : arrival;
    const held: Operation[] = [];
    for (const moved of moves) {
      const back = this.apply(moved, by);
      held.unshift(...back.map((one) => this.#asHeld(one)));
    }
    return [held.length === 0 ? back : { ...back, held }];
  }

  /** A row that came goes with the template that brought it, and one that was out stays out. */
  #asHeld(back: Operation): Operation {
    if (back.op === 'remove row') return { ...back, unshipped: true };
    return back.op === 'cell' && this.#document.slotOf(back.sheet, back.row) === undefined
      ? { ...back, aside: true }
      : back;
  }

  /** Brings the program in line with what the schema is to be, so that cells and rows find their columns. */
  settle(): void {
    this.#reshaping.settle();
  }

  /** The sheets as settle() will have them. */
  get schemaToCome(): Schema {
    return this.#reshaping.schemaToCome;
  }

  /** The names and types that formulas will find after settle(). */
  get catalogToCome(): Catalog {
    return this.#reshaping.catalogToCome;
  }

  // Bringing everything up to date.

  /**
   * Brings up to date all that anybody asked for, and says what changed. Where only some cells are wanted, or nothing yet, what
   * they don't rest on waits for whoever asks.
   */
  finish(wanted?: readonly CellAddress[] | 'nothing yet'): ChangeSet {
    this.bringUp(wanted);
    return this.tell();
  }

  /** What changed since it was last told; what was worked out since then for those who read it, too. */
  tell(): ChangeSet {
    return this.#touched.tell(this.#run.take());
  }

  /** As finish, but what changed is told with the next change: nothing, where all that was done was taken back. */
  bringUp(wanted?: readonly CellAddress[] | 'nothing yet'): void {
    this.settle();
    settleLinks(this.#document, this.#touched);
    for (const sheet of this.#touched.unordered) orderRows(this.#document, sheet);
    this.#run.pass();
    if (wanted === undefined) {
      if (this.#onScreen === undefined) this.#run.settle();
      else this.bring(this.#onScreen());
    } else if (wanted !== 'nothing yet') {
      this.bring(wanted);
      // A row that is taken back at once has its slot again.
      this.#document.store.releaseSlots();
    }
    this.#touched.settled();
  }

  /** From now on only what is on screen is worked out with a change; the rest waits until it is read or settled. */
  watch(onScreen: () => readonly Watched[]): void {
    this.#onScreen = onScreen;
  }

  /** Works out what is on screen for as long as `goOn` says; true where more is left. */
  bringScreen(goOn: () => boolean): boolean {
    const { layout } = this.#document.program;
    const columns = this.#onScreen?.().map(({ sheet, column }) => layout.findColumn(sheet, column)) ?? [];
    const known = columns.filter((column) => column !== undefined);
    return this.#run.bringSome(known, goOn);
  }

  /** Works out some columns. */
  bring(cells: readonly Watched[]): void {
    for (const { sheet, column } of cells) {
      const def = this.#document.program.layout.findColumn(sheet, column);
      if (def !== undefined) this.#run.bringColumn(def);
    }
  }
}

/** Whether an operation takes back the adding of what is removed already: of that nothing stays, whoever was first. */
function dropsTrace(operation: SingleOperation, own: OwnSchema): boolean {
  if (operation.op !== 'remove column' && operation.op !== 'remove sheet') return false;
  const sheet = entry(own, operation.sheet);
  const removed = operation.op === 'remove sheet' ? sheet : entry(sheet?.columns, operation.column);
  return operation.sparesOthers === true && removed?.removed === true;
}
