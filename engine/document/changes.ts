// Applies operations to a document and gives back their inverses, notes what was touched, and brings the computed columns up
// to date. The only file that writes to a document that is open. Total: what has no place goes on the shelf, and an
// operation that finds nothing to do does nothing.

import { compile, type Program, type ProgramColumn, type ProgramSheet } from '../schema/compile.ts';
import { layOver } from '../schema/lay-over.ts';
import { withRule, withView } from '../schema/looks.ts';
import type { OwnSchema } from '../schema/own.ts';
import { entry } from '../schema/records.ts';
import { isComputed, isMadeSheet } from '../schema/schema.ts';
import type { Template, TemplateShelf } from '../schema/template.ts';
import { FILLED } from '../values/column.ts';
import type { CellAddress } from '../values/error.ts';
import { plainWriting, type Writings } from '../values/writing.ts';
import { EMPTY_CELL, placeContent } from './cells.ts';
import { type ChangeSet, NO_CHANGE } from './change-set.ts';
import { type Content, isLinkContent } from './content.ts';
import { type Document, storeCell } from './document.ts';
import type { GraphRun } from './graph-run.ts';
import { refit } from './refit.ts';
import { comeAtOnce, goAtOnce, insertRows, removeRows } from './row-blocks.ts';
import { orderRows } from './row-places.ts';
import { applySchema, isSchemaOperation, type SchemaOperation } from './schema-operations.ts';
import { BEFORE_ALL, isLater, type Stamp } from './stamps.ts';
import { moveTemplateRows } from './template-rows.ts';
import { rowThing, thingOf } from './things.ts';
import { type Operation, oneByOne } from './transaction.ts';

/** Any but those of many rows at once. */
type SingleOperation = Exclude<Operation, { readonly op: 'insert rows' | 'remove rows' }>;
type OperationOf<K extends Operation['op']> = Extract<Operation, { readonly op: K }>;

/** How an operation comes: with the stamp of who did it, and whether it must give way to later changes known here. */
export interface Arrival {
  readonly stamp: Stamp;
  readonly remote: boolean;
}

/** A column on screen. */
export interface Watched {
  readonly sheet: string;
  readonly column: string;
}

export class Changes {
  readonly #document: Document;
  readonly #templates: TemplateShelf;
  readonly #writings: Writings;
  /** Rows that came or moved, by sheet, since everything was last up to date. */
  readonly #unordered = new Set<string>();
  readonly #inserted = new Map<string, Set<string>>();
  /** Rows that went, by sheet and by the slot they had. */
  readonly #removed = new Map<string, Map<number, string>>();
  readonly #rowsOf = new Set<string>();
  readonly #columnsOf = new Set<string>();
  readonly #looksOf = new Set<string>();
  readonly #papers = new Set<string>();
  #sheetsChanged = false;
  #settingsChanged = false;
  #onScreen: (() => readonly Watched[]) | undefined;
  /** What the schema is to become; undefined while it is as the program has it. */
  #wanted: { own: OwnSchema; template: Template } | undefined;

  constructor(document: Document, templates: TemplateShelf, writings: Writings = plainWriting) {
    this.#document = document;
    this.#templates = templates;
    this.#writings = writings;
  }

  get #run(): GraphRun {
    return this.#document.run;
  }

  /** Does an operation and gives what takes it back, to be done in the order given. */
  apply(operation: Operation, arrival: Arrival): readonly Operation[] {
    if (operation.op === 'insert rows') return this.#insertRows(operation, arrival);
    if (operation.op === 'remove rows') return this.#removeRows(operation, arrival);
    const thing = thingOf(operation);
    const { stamps } = this.#document;
    const row = 'row' in operation ? operation : undefined;
    if (arrival.remote && !isLater(arrival.stamp, stamps.of(thing, row))) return this.#overruled(operation, arrival);
    const inverse = this.#apply(operation, arrival);
    this.#note(operation, thing, arrival.stamp);
    return inverse;
  }

  #note(operation: SingleOperation, thing: string, stamp: Stamp): void {
    const { stamps } = this.#document;
    stamps.note(thing, stamp);
    if (operation.op === 'cell') stamps.noteRow(rowThing(operation.sheet, operation.row), stamp);
  }

  /** A change that comes too late changes nothing, but a cell of a row that is not there yet waits for it. */
  #overruled(operation: SingleOperation, arrival: Arrival): readonly Operation[] {
    if (operation.op === 'cell') this.#note(operation, thingOf(operation), arrival.stamp);
    return [];
  }

  #apply(operation: SingleOperation, arrival: Arrival): readonly Operation[] {
    if (operation.op === 'template') return this.#template(operation);
    if (isSchemaOperation(operation)) return this.#schema(operation);
    switch (operation.op) {
      case 'cell':
        return this.#cell(operation, arrival);
      case 'insert row':
        return this.#insertRow(operation);
      case 'remove row':
        return this.#removeRow(operation, arrival);
      case 'move row':
        return this.#moveRow(operation);
      case 'keep row':
        return this.#keepRow(operation);
      case 'units': {
        const { units } = this.#document.program;
        if (units === operation.units) return [];
        this.settle();
        const { program } = this.#document;
        this.#become(compile(program.schema, { ...program, units: operation.units }, program));
        return [{ op: 'units', units }];
      }
      case 'today': {
        const { store: frame } = this.#document;
        const before = frame.today;
        frame.today = operation.today;
        this.#run.todayChanged();
        this.#settingsChanged = true;
        return [{ op: 'today', today: before }];
      }
      case 'range': {
        const { sheet, row, column, range } = operation;
        const before = this.#document.rangeOf(sheet, row, column) ?? null;
        if (before === range) return [];
        this.#document.keepRange(operation, range);
        this.#touchCell(operation);
        return [{ ...operation, range: before }];
      }
      case 'branch': {
        const { branch, holds } = operation;
        const before = this.#document.branches.get(branch) ?? null;
        if (before === holds) return [];
        this.#document.keepBranch(branch, holds);
        this.#settingsChanged = true;
        return [{ op: 'branch', branch, holds: before }];
      }
      case 'paper': {
        const { paper, name } = operation;
        const { papers } = this.#document;
        const before = papers.paper(paper)?.name ?? null;
        if (before === name) return [];
        papers.name(paper, name);
        this.#papers.add(paper);
        return [{ op: 'paper', paper, name: before }];
      }
      case 'paper cell': {
        const { paper, cell, entry: typed } = operation;
        const { papers } = this.#document;
        const before = papers.entry(paper, cell);
        if (before === typed) return [];
        papers.put(paper, cell, typed);
        this.#papers.add(paper);
        return [{ op: 'paper cell', paper, cell, entry: before }];
      }
      case 'view':
      case 'colour':
      case 'note':
        return this.#look(operation);
      case 'locale':
        return this.#locale(operation);
      case 'title': {
        const before = this.#document.title;
        this.#document.title = operation.title;
        this.#settingsChanged = true;
        return [{ op: 'title', title: before }];
      }
    }
  }

  // Cells.

  #cell(operation: OperationOf<'cell'>, arrival: Arrival): readonly Operation[] {
    this.settle();
    const document = this.#document;
    const { sheet: sheetId, row, column: columnId, content } = operation;
    const before = document.contentOf(sheetId, row, columnId);
    const inverse: Operation = { ...operation, content: before };
    const sheet = document.program.sheet(sheetId);
    const column = sheet?.column(columnId);
    const slot = document.slotOf(sheetId, row);
    const hasPlace = sheet !== undefined && slot !== undefined && column !== undefined && column.role !== 'made';
    if (!hasPlace || isMadeSheet(sheet.schema)) document.shelf.put(sheetId, row, columnId, content);
    if (hasPlace) this.#store(sheet, column, row, slot, content);
    else if (sheet !== undefined && slot === undefined) this.#bringBack(sheet, row, arrival);
    return [inverse];
  }

  /** A cell reads otherwise although what it holds is the same. */
  #touchCell({ sheet: sheetId, row, column: columnId }: { sheet: string; row: string; column: string }): void {
    this.settle();
    const column = this.#document.program.sheet(sheetId)?.column(columnId);
    const slot = this.#document.slotOf(sheetId, row);
    if (column !== undefined && slot !== undefined && column.role !== 'made') this.#run.cellChanged(column.def, slot);
  }

  /** A row that somebody removed, and that another changed afterwards, is there again, marked. */
  #bringBack(sheet: ProgramSheet, row: string, { stamp, remote }: Arrival): void {
    const record = this.#document.rowsOf(sheet.id).record(row);
    if (!remote || record?.removed === undefined) return;
    if (record.removed.actor === stamp.actor || !isLater(stamp, record.removed)) return;
    this.#insertRow({ op: 'insert row', sheet: sheet.id, row, at: record.at });
    // A row that an improved template ships no more is simply kept: nobody took it out.
    if (record.removed !== BEFORE_ALL) this.#mark(sheet.id, row);
  }

  #mark(sheet: string, row: string): void {
    const rows = this.#document.ownRowsOf(sheet);
    const record = rows.record(row);
    if (record !== undefined) rows.put({ id: record.id, slot: record.slot, at: record.at, broughtBack: true });
    this.#rowsOf.add(sheet);
  }

  /** Puts a content in a column, or on the shelf where the column can't hold it. */
  #store(sheet: ProgramSheet, column: ProgramColumn, row: string, slot: number, content: Content): void {
    const document = this.#document;
    const placed = placeContent(content, column, document.program, document);
    const isName = sheet.schema.key === column.id;
    if (isName) this.#rename(sheet, column, slot, 'remove');
    if (!isMadeSheet(sheet.schema)) document.shelf.put(sheet.id, row, column.id, placed.ok ? null : content);
    if (content === null && isComputed(column)) this.#giveBack(column, slot);
    else {
      storeCell(document, column, slot, placed.ok ? placed.cell : EMPTY_CELL);
      if (!placed.ok && isComputed(column)) this.#giveBack(column, slot);
      else this.#run.cellChanged(column.def, slot);
    }
    if (isName) this.#rename(sheet, column, slot, 'add');
  }

  /** A computed cell goes back to its formula. */
  #giveBack(column: ProgramColumn, slot: number): void {
    const { store: frame } = this.#document;
    if (frame.typed[column.def.number]?.isMarked(slot) === true) frame.ownTyped(column.def).forget(slot);
    this.#run.demand(column.def, slot);
  }

  #rename(sheet: ProgramSheet, column: ProgramColumn, slot: number, how: 'add' | 'remove'): void {
    const name = this.#document.typedAt(column, slot);
    if (typeof name === 'string') this.#document.ownNamesOf(sheet.id)[how](name, slot);
  }

  // Rows.

  #insertRow(operation: OperationOf<'insert row'>): readonly Operation[] {
    this.settle();
    const { sheet: sheetId, row, at } = operation;
    const document = this.#document;
    const before = document.rowsOf(sheetId).record(row);
    if (before !== undefined && before.slot >= 0) return this.#moveRow({ op: 'move row', sheet: sheetId, row, at });
    const sheet = document.program.sheet(sheetId);
    const rows = document.ownRowsOf(sheetId);
    if (sheet === undefined || isMadeSheet(sheet.schema)) {
      rows.put({ id: row, slot: -1, at });
      return [{ op: 'remove row', sheet: sheetId, row }];
    }
    const { store: frame } = document;
    const slot = frame.ownTable(sheet.table).takeSlot();
    const isLast = at > rows.lastAt && slot === frame.table(sheet.table).length;
    if (!isLast || frame.table(sheet.table).labels !== undefined) this.#unordered.add(sheetId);
    frame.setLive(sheet.table, slot, true);
    rows.put({ id: row, slot, at });
    this.#run.rowChanged(sheet.table, slot);
    this.#rowsOf.add(sheetId);
    under(this.#inserted, sheetId).add(row);
    this.#unshelve(sheet, row, slot);
    return [{ op: 'remove row', sheet: sheetId, row }];
  }

  /** A row that comes gets what was typed for it. */
  #unshelve(sheet: ProgramSheet, row: string, slot: number): void {
    for (const [columnId, content] of [...this.#document.shelf.cells(sheet.id, row)]) {
      const column = sheet.column(columnId);
      if (column !== undefined && column.role !== 'made') this.#store(sheet, column, row, slot, content);
    }
  }

  #removeRow({ sheet: sheetId, row }: OperationOf<'remove row'>, arrival: Arrival): readonly Operation[] {
    this.settle();
    const document = this.#document;
    const rows = document.ownRowsOf(sheetId);
    const record = rows.record(row);
    const sheet = document.program.sheet(sheetId);
    if (record === undefined || sheet === undefined || record.slot < 0) {
      if (record !== undefined) rows.put({ ...record, removed: arrival.stamp });
      // One that waits with its sheet is there again when that is taken back.
      const waits = record !== undefined && record.removed === undefined;
      return waits ? [{ op: 'insert row', sheet: sheetId, row, at: record.at }] : [];
    }
    if (arrival.remote && document.stamps.isChangedSince(sheetId, row, arrival.stamp)) {
      this.#mark(sheetId, row);
      return [];
    }
    const { slot } = record;
    const cells: Operation[] = [];
    for (const column of sheet.columns) {
      const content = column.role === 'made' ? null : document.contentOf(sheetId, row, column.id);
      if (content === null) continue;
      cells.push({ op: 'cell', sheet: sheetId, row, column: column.id, content });
      if (sheet.schema.key === column.id) this.#rename(sheet, column, slot, 'remove');
    }
    for (const [column, content] of document.shelf.cells(sheetId, row)) {
      if (sheet.column(column) === undefined) cells.push({ op: 'cell', sheet: sheetId, row, column, content });
    }
    document.store.setLive(sheet.table, slot, false);
    for (const cell of cells) if (cell.op === 'cell') document.shelf.put(sheetId, row, cell.column, cell.content);
    rows.put({ id: row, slot: -1, at: record.at, removed: arrival.stamp });
    this.#run.rowChanged(sheet.table, slot);
    this.#rowsOf.add(sheetId);
    this.#removed.set(sheetId, (this.#removed.get(sheetId) ?? new Map<number, string>()).set(slot, row));
    this.#inserted.get(sheetId)?.delete(row);
    return [{ op: 'insert row', sheet: sheetId, row, at: record.at }, ...cells];
  }

  // Many rows at once.

  #insertRows(operation: OperationOf<'insert rows'>, arrival: Arrival): readonly Operation[] {
    this.settle();
    const document = this.#document;
    const sheet = arrival.remote ? undefined : comeAtOnce(document, operation);
    if (sheet === undefined) return this.#oneByOne(operation, arrival);
    const { inverse, last } = insertRows(document, sheet, operation, this.#run);
    const { id } = sheet;
    if (!last) this.#unordered.add(id);
    this.#rowsOf.add(id);
    const came = under(this.#inserted, id);
    for (const { row } of operation.rows) came.add(row);
    document.stamps.noteRows(id, { stamp: arrival.stamp, columns: operation.columns, rows: operation.rows });
    return [inverse];
  }

  #removeRows(operation: OperationOf<'remove rows'>, arrival: Arrival): readonly Operation[] {
    this.settle();
    const document = this.#document;
    const sheet = arrival.remote ? undefined : goAtOnce(document, operation);
    if (sheet === undefined) return this.#oneByOne(operation, arrival);
    const { id } = sheet;
    const came = this.#inserted.get(id);
    const went = this.#removed.get(id) ?? new Map<number, string>();
    this.#removed.set(id, went);
    const known = document.rowsOf(id);
    for (const row of operation.rows) {
      went.set(known.slotOf(row) ?? -1, row);
      came?.delete(row);
    }
    this.#rowsOf.add(id);
    const inverse = removeRows(document, sheet, operation, arrival.stamp, this.#run);
    document.stamps.noteRows(id, { stamp: arrival.stamp, columns: undefined, rows: inverse.rows });
    return [inverse];
  }

  #oneByOne(operation: Operation, arrival: Arrival): readonly Operation[] {
    const inverses = oneByOne(operation).map((one) => this.apply(one, arrival));
    return inverses.reverse().flat();
  }

  #moveRow({ sheet: sheetId, row, at }: OperationOf<'move row'>): readonly Operation[] {
    this.settle();
    const rows = this.#document.ownRowsOf(sheetId);
    const record = rows.record(row);
    if (record === undefined || record.at === at) return [];
    rows.put({ ...record, at });
    const sheet = this.#document.program.sheet(sheetId);
    if (sheet !== undefined && record.slot >= 0) {
      this.#unordered.add(sheetId);
      this.#run.rowChanged(sheet.table, record.slot);
      this.#rowsOf.add(sheetId);
    }
    return [{ op: 'move row', sheet: sheetId, row, at: record.at }];
  }

  #keepRow({ sheet, row }: OperationOf<'keep row'>): readonly Operation[] {
    const rows = this.#document.ownRowsOf(sheet);
    const record = rows.record(row);
    if (record?.broughtBack === undefined) return [];
    rows.put({ id: record.id, slot: record.slot, at: record.at });
    this.#rowsOf.add(sheet);
    return [];
  }

  // Sheets, columns, formulas.

  #schema(operation: SchemaOperation): readonly Operation[] {
    const now = this.#wanted ?? { own: this.#document.program.schema.own, template: this.#document.template };
    const done = applySchema(operation, now, this.#templates);
    if (done === undefined) return [];
    this.#wanted = { own: done.own, template: done.template };
    return done.inverse;
  }

  #template(operation: OperationOf<'template'>): readonly Operation[] {
    this.settle();
    const before = this.#document.template;
    const inverse = this.#schema(operation);
    if (inverse.length === 0) return inverse;
    this.#settingsChanged = true;
    this.settle();
    if (operation.rows === 'stay') return inverse;
    const stamp = BEFORE_ALL;
    const rows: Operation[] = [];
    for (const moved of moveTemplateRows(this.#document, before, this.#document.template))
      rows.unshift(...this.apply(moved, { stamp, remote: false }));
    return [...inverse, ...rows];
  }

  /** Brings the program in line with what the schema is to be, so that cells and rows find their columns. */
  settle(): void {
    if (this.#wanted === undefined) return;
    const { own, template } = this.#wanted;
    this.#wanted = undefined;
    const document = this.#document;
    document.template = template;
    const schema = layOver(template, own);
    if (schema !== document.program.schema) this.#become(compile(schema, document.program, document.program));
  }

  #become(program: Program): void {
    const document = this.#document;
    const before = document.program;
    refit(document, program);
    for (const { id } of [...before.sheets, ...program.sheets]) this.#columnsOf.add(id);
    for (const { id } of program.sheets) this.#rowsOf.add(id);
    const names = (sheets: readonly ProgramSheet[]): string => sheets.map(({ id, name }) => `${id} ${name}`).join('\n');
    if (names(before.sheets) !== names(program.sheets)) this.#sheetsChanged = true;
    this.#settingsChanged = true;
  }

  // How sheets are looked at, and how figures and days are written: nothing is worked out again.

  #look(operation: OperationOf<'view' | 'colour' | 'note'>): readonly Operation[] {
    const document = this.#document;
    const { sheet } = operation;
    this.#looksOf.add(sheet);
    const before = entry(document.looks, sheet);
    switch (operation.op) {
      case 'view': {
        const { view, declaration } = operation;
        const was = entry(before?.views, view);
        document.looks = withView(document.looks, sheet, view, declaration);
        return [{ op: 'view', sheet, view, ...(was === undefined ? {} : { declaration: was }) }];
      }
      case 'colour': {
        const { rule, declaration } = operation;
        const was = entry(before?.rules, rule);
        document.looks = withRule(document.looks, sheet, rule, declaration);
        return [{ op: 'colour', sheet, rule, ...(was === undefined ? {} : { declaration: was }) }];
      }
      case 'note': {
        const { row, column } = operation;
        const note = document.notes.content(sheet, row, column);
        document.notes.put(sheet, row, column, operation.note);
        return [{ ...operation, note }];
      }
    }
  }

  #locale({ locale }: OperationOf<'locale'>): readonly Operation[] {
    const document = this.#document;
    const before = document.locale ?? null;
    document.locale = locale ?? undefined;
    document.writing = this.#writings(document.locale);
    for (const { id } of document.program.sheets) this.#columnsOf.add(id);
    this.#settingsChanged = true;
    return [{ op: 'locale', locale: before }];
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
    const { cells, rowsOf } = this.#run.take();
    const told = [this.#rowsOf, this.#columnsOf, this.#looksOf, this.#papers];
    const isNothing = cells.length + rowsOf.length === 0 && told.every(({ size }) => size === 0);
    if (isNothing && !this.#sheetsChanged && !this.#settingsChanged) return NO_CHANGE;
    const change: ChangeSet = {
      cells,
      rowsOf: [...new Set([...this.#rowsOf, ...rowsOf])],
      columnsOf: [...this.#columnsOf],
      looksOf: [...this.#looksOf],
      papers: [...this.#papers],
      sheets: this.#sheetsChanged,
      settings: this.#settingsChanged,
    };
    for (const ids of told) ids.clear();
    this.#sheetsChanged = false;
    this.#settingsChanged = false;
    return change;
  }

  /** As finish, but what changed is told with the next change: nothing, where all that was done was taken back. */
  bringUp(wanted?: readonly CellAddress[] | 'nothing yet'): void {
    this.settle();
    this.#shelveLostLinks();
    this.#placeWaitingLinks();
    for (const sheet of this.#unordered) orderRows(this.#document, sheet);
    this.#run.pass();
    if (wanted === undefined) {
      if (this.#onScreen === undefined) this.#run.settle();
      else this.bring(this.#onScreen());
    } else if (wanted !== 'nothing yet') {
      this.bring(wanted);
      // A row that is taken back at once has its slot again.
      this.#document.store.releaseSlots();
    }
    for (const seen of [this.#unordered, this.#inserted, this.#removed]) seen.clear();
  }

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

  /** Links that named a row before it came. */
  #placeWaitingLinks(): void {
    if (this.#inserted.size === 0 || this.#document.shelf.isEmpty) return;
    for (const sheetId of this.#document.shelf.sheets()) {
      const sheet = this.#document.program.sheet(sheetId);
      if (sheet?.columns.some(({ type }) => type?.kind === 'link' && this.#inserted.has(type.table)) === true) {
        for (const row of this.#document.shelf.rows(sheetId)) this.#placeLinksOf(sheet, row);
      }
    }
  }

  #placeLinksOf(sheet: ProgramSheet, row: string): void {
    const slot = this.#document.slotOf(sheet.id, row);
    if (slot === undefined) return;
    for (const [columnId, content] of [...this.#document.shelf.cells(sheet.id, row)]) {
      const column = sheet.column(columnId);
      if (column?.type?.kind !== 'link' || !isLinkContent(content)) continue;
      if (this.#inserted.get(column.type.table)?.has(content.row) === true) {
        this.#store(sheet, column, row, slot, content);
      }
    }
  }

  /** Typed links to rows that went: they wait on the shelf for the row to come back. */
  #shelveLostLinks(): void {
    if (this.#removed.size === 0) return;
    for (const sheet of this.#document.program.sheets) {
      for (const column of sheet.columns) {
        const target = column.type?.kind === 'link' && column.role !== 'made' ? column.type.table : '';
        const gone = this.#removed.get(target);
        if (gone !== undefined) this.#shelveLinks(sheet, column, gone);
      }
    }
  }

  #shelveLinks(sheet: ProgramSheet, column: ProgramColumn, gone: ReadonlyMap<number, string>): void {
    const document = this.#document;
    const { live, length } = document.store.table(sheet.table);
    for (let slot = 0; slot < length; slot++) {
      const { values, states } = document.store.column(column.def);
      const target = states[slot] === FILLED ? gone.get(values[slot] ?? -1) : undefined;
      if (target === undefined || live[slot] !== 1 || !document.isTyped(column, slot)) continue;
      const row = document.rowIdOf(sheet.id, slot);
      if (row === undefined) continue;
      document.shelf.put(sheet.id, row, column.id, { row: target });
      storeCell(document, column, slot, EMPTY_CELL);
      this.#run.cellChanged(column.def, slot);
    }
  }
}

function under<T>(map: Map<string, Set<T>>, key: string): Set<T> {
  const found = map.get(key) ?? new Set<T>();
  map.set(key, found);
  return found;
}
