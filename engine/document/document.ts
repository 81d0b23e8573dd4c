// All that a workbook holds: its template, what a person changed of the sheets, the rows with their ids, what is typed, and
// the frame in which it is worked out. State and its plainest questions; what changes.ts calls changes it, branch() copies it
// at no cost.

import type { Frame } from '../calculation/frame.ts';
import type { ColumnDef, TableDef } from '../calculation/layout.ts';
import type { Program, ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { KIND } from '../schema/hidden.ts';
import type { Looks } from '../schema/looks.ts';
import type { Template } from '../schema/template.ts';
import { civilDayOfIso, yearMonthDay } from '../values/civil.ts';
import { FILLED, type Token } from '../values/column.ts';
import type { EntryContext } from '../values/entry.ts';
import type { Writing } from '../values/writing.ts';
import type { CellMap } from './cell-map.ts';
import { contentAt, placeContent, type RowFinder, type StoredCell } from './cells.ts';
import type { Content, ContentRange } from './content.ts';
import { GraphRun } from './graph-run.ts';
import { dayRowId, eventRowId, pairRowId } from './ids.ts';
import type { Papers } from './papers.ts';
import { Reading } from './reading.ts';
import { RowNames } from './row-names.ts';
import { SheetRows } from './sheet-rows.ts';
import type { Shelf } from './shelf.ts';
import { Stamps } from './stamps.ts';
import { cellThing } from './things.ts';
import type { BranchData } from './transaction.ts';

export interface DocumentParts {
  readonly title: string;
  readonly template: Template;
  readonly program: Program;
  readonly store: Frame;
  readonly rows: Map<string, SheetRows>;
  readonly names: Map<string, RowNames>;
  readonly shelf: Shelf;
  readonly notes: CellMap<string>;
  readonly papers: Papers;
  readonly looks: Looks;
  readonly locale: string | undefined;
  readonly writing: Writing | undefined;
  readonly stamps: Stamps;
  /** Other ways that the plan could go, by id. */
  readonly branches: ReadonlyMap<string, BranchData>;
  /** How far what is typed may be off, by cell. */
  readonly ranges: ReadonlyMap<string, RangedCell>;
}

/** A cell with how far what is typed in it may be off. */
export interface RangedCell {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  readonly range: ContentRange;
}

/** What a document was when a branch was made of it. */
interface CameFrom {
  readonly document: Document;
  /** What it owned before it shared it with the branch, and owns since. */
  readonly before: Token;
  readonly since: Token;
}

export class Document implements RowFinder {
  title: string;
  /** The template as this workbook uses it, which may be an earlier one than today's. */
  template: Template;
  program: Program;
  /** The rows and columns as they stand, for this room alone. */
  store: Frame;
  /** The same as all others see it: what they ask for is up to date. */
  frame: Reading;
  run: GraphRun;
  /** What a person changed of how sheets are looked at. */
  looks: Looks;
  /** The locale that the workbook is written in, 'de-CH'; undefined: as the machine says. */
  locale: string | undefined;
  /** How figures and days are read and shown; undefined: as formulas have them. */
  writing: Writing | undefined;
  readonly shelf: Shelf;
  /** Notes on cells. */
  readonly notes: CellMap<string>;
  /** Scratch papers. */
  readonly papers: Papers;
  readonly stamps: Stamps;
  readonly #rows: Map<string, SheetRows>;
  readonly #names: Map<string, RowNames>;
  #branches: ReadonlyMap<string, BranchData>;
  #ranges: ReadonlyMap<string, RangedCell>;
  /** Branches of this document that may still be looked at. */
  #branchesAbout = 0;
  #cameFrom: CameFrom | undefined;

  constructor(parts: DocumentParts) {
    this.title = parts.title;
    this.template = parts.template;
    this.program = parts.program;
    this.store = parts.store;
    this.run = new GraphRun(parts.program.built, parts.store);
    this.frame = new Reading(parts.store, this.run);
    this.looks = parts.looks;
    this.locale = parts.locale;
    this.writing = parts.writing;
    this.shelf = parts.shelf;
    this.notes = parts.notes;
    this.papers = parts.papers;
    this.stamps = parts.stamps;
    this.#rows = parts.rows;
    this.#names = parts.names;
    this.#branches = parts.branches;
    this.#ranges = parts.ranges;
    this.#placeWhereMade();
  }

  /** A document that holds the same and changes by itself from here on. */
  branch(): Document {
    const { store } = this;
    const before = store.token;
    const branch = new Document({
      title: this.title,
      template: this.template,
      program: this.program,
      store: store.branch(),
      rows: new Map(this.#rows),
      names: new Map(this.#names),
      looks: this.looks,
      locale: this.locale,
      writing: this.writing,
      shelf: this.shelf.copy(),
      notes: this.notes.copy(),
      papers: this.papers.copy(),
      stamps: new Stamps(),
      branches: this.#branches,
      ranges: this.#ranges,
    });
    branch.run.goOn();
    branch.#cameFrom = { document: this, before, since: store.token };
    this.#branchesAbout += 1;
    return branch;
  }

  /**
   * To be called on a branch that nobody looks at any more, nor at anything that was read from its frame: the next one copies into
   * what it held, and the document that it came from need not copy what it shared with this one alone.
   */
  release(): void {
    this.store.release();
    const from = this.#cameFrom;
    this.#cameFrom = undefined;
    if (from === undefined || this.#branchesAbout > 0) return;
    from.document.#branchesAbout -= 1;
    // Another branch since then, or sheets made anew, share what there was.
    if (from.document.store.token === from.since) from.document.#ownAgain(from);
  }

  #ownAgain({ before, since }: CameFrom): void {
    const held = [...this.#rows.values(), ...this.#names.values()];
    for (const one of held) if (one.owner === since) one.owner = before;
    this.store.ownAgain(before);
  }

  // Branches kept in the workbook: transactions on it, opened by whoever works in one (commands/branches.ts).

  /** By id. */
  get branches(): ReadonlyMap<string, BranchData> {
    return this.#branches;
  }

  keepBranch(id: string, holds: BranchData | null): void {
    const branches = new Map(this.#branches);
    if (holds === null) branches.delete(id);
    else branches.set(id, holds);
    this.#branches = branches;
  }

  /** Takes a program into use with a frame that is being filled for it. */
  use(program: Program, store: Frame): void {
    this.program = program;
    this.store = store;
    this.run = new GraphRun(program.built, store);
    this.frame = new Reading(store, this.run);
    this.#placeWhereMade();
  }

  /** Rows that the store makes get back what was typed on them. */
  #placeWhereMade(): void {
    this.store.madeCells = { rowMade: (table, row) => this.#placeTyped(table, row) };
  }

  // Ranges: what is typed and not known for sure. The cell holds what is likely.

  ranges(): Iterable<RangedCell> {
    return this.#ranges.values();
  }

  /** Whether anything typed anywhere is not known for sure. */
  get hasRanges(): boolean {
    return this.#ranges.size > 0;
  }

  rangeOf(sheet: string, row: string, column: string): ContentRange | undefined {
    return this.hasRanges ? this.#ranges.get(cellThing(sheet, row, column))?.range : undefined;
  }

  keepRange({ sheet, row, column }: Omit<RangedCell, 'range'>, range: ContentRange | null): void {
    const ranges = new Map(this.#ranges);
    if (range === null) ranges.delete(cellThing(sheet, row, column));
    else ranges.set(cellThing(sheet, row, column), { sheet, row, column, range });
    this.#ranges = ranges;
  }

  // Rows of entered sheets.

  /** The rows of an entered or one-row sheet; a sheet that has none yet has an empty list. */
  rowsOf(sheet: string): SheetRows {
    let rows = this.#rows.get(sheet);
    if (rows === undefined) {
      rows = new SheetRows(this.store.token);
      this.#rows.set(sheet, rows);
    }
    return rows;
  }

  ownRowsOf(sheet: string): SheetRows {
    const rows = this.rowsOf(sheet);
    if (rows.owner === this.store.token) return rows;
    const own = rows.copy(this.store.token);
    this.#rows.set(sheet, own);
    return own;
  }

  /** Sheets of which rows are known, those that are not in the schema just now among them. */
  sheetsWithRows(): Iterable<[string, SheetRows]> {
    return this.#rows;
  }

  namesOf(sheet: string): RowNames {
    let names = this.#names.get(sheet);
    if (names === undefined) {
      names = new RowNames(this.store.token);
      this.#names.set(sheet, names);
    }
    return names;
  }

  ownNamesOf(sheet: string): RowNames {
    const names = this.namesOf(sheet);
    if (names.owner === this.store.token) return names;
    const own = names.copy(this.store.token);
    this.#names.set(sheet, own);
    return own;
  }

  forgetNames(): void {
    this.#names.clear();
  }

  // Ids and slots.

  slotOf(sheet: string, row: string): number | undefined {
    const program = this.program.sheet(sheet);
    if (program === undefined) return undefined;
    const slot = this.#findSlot(program, row);
    return slot !== undefined && this.frame.table(program.table).live[slot] === 1 ? slot : undefined;
  }

  #findSlot({ id, schema, table }: ProgramSheet, row: string): number | undefined {
    const { rows } = schema;
    switch (rows.from) {
      case 'entry':
      case 'single':
        return this.rowsOf(id).slotOf(row);
      case 'each':
        // Sheets that go round in a ring have no rows to look for.
        return this.frame.table(table).liveCount > 0 ? this.slotOf(rows.sheet, row) : undefined;
      case 'span': {
        const civil = civilDayOfIso(row);
        return civil === undefined ? undefined : this.#slotWhere(table, rows.as.id, civil);
      }
      case 'pairs':
      case 'events':
        return this.#slotCalled(id, table, row);
    }
  }

  #slotWhere(table: TableDef, column: string, value: number): number | undefined {
    const { values, states, length } = this.frame.column(this.program.layout.column(table.id, column));
    const { live } = this.frame.table(table);
    for (let slot = 0; slot < length; slot++)
      if (live[slot] === 1 && values[slot] === value && states[slot] === FILLED) return slot;
    return undefined;
  }

  #slotCalled(sheet: string, table: TableDef, row: string): number | undefined {
    const { live, length } = this.frame.table(table);
    for (let slot = 0; slot < length; slot++) if (live[slot] === 1 && this.rowIdOf(sheet, slot) === row) return slot;
    return undefined;
  }

  rowIdOf(sheet: string, slot: number): string | undefined {
    const rows = this.program.schema.sheet(sheet)?.rows;
    const value = (column: string): number => {
      return this.frame.column(this.program.layout.column(sheet, column)).values[slot] ?? 0;
    };
    switch (rows?.from) {
      case 'entry':
      case 'single':
        return this.rowsOf(sheet).idOf(slot);
      case 'each':
        return this.rowIdOf(rows.sheet, slot);
      case 'span':
        return dayRowId(value(rows.as.id));
      case 'pairs': {
        const [first, second] = rows.as.map(({ id }, i) => this.rowIdOf(rows.sheets[i] ?? '', value(id)));
        return first === undefined || second === undefined ? undefined : pairRowId(first, second);
      }
      case 'events': {
        const date = rows.dates[value(KIND)];
        const row = date === undefined ? undefined : this.rowIdOf(date.sheet, value(date.about.id));
        return date === undefined || row === undefined ? undefined : eventRowId(row, date.sheet, date.column);
      }
      default:
        return undefined;
    }
  }

  // Cells.

  /** Whether a cell holds what a person typed, or would if anything were typed. */
  isTyped(column: ProgramColumn, slot: number): boolean {
    return column.role === 'entered' || this.frame.typedIn(column.def)?.over.has(slot) === true;
  }

  /** Whether anything may be typed in a column's cells: in one that is computed only where a person typed over a row. */
  mayHold({ role, def }: ProgramColumn): boolean {
    return role === 'entered' || (role !== 'made' && (this.frame.typedIn(def)?.over.size ?? 0) > 0);
  }

  /** What is typed in a cell of a row that is there; null where nothing is. */
  typedAt(column: ProgramColumn, slot: number): Content {
    return this.isTyped(column, slot) ? contentAt(column, slot, this.store, this.program, this) : null;
  }

  /** What is typed for a cell, wherever it stands. */
  contentOf(sheet: string, row: string, column: string): Content {
    const shelved = this.shelf.content(sheet, row, column);
    if (shelved !== null) return shelved;
    const slot = this.slotOf(sheet, row);
    const found = this.program.sheet(sheet)?.column(column);
    return slot === undefined || found === undefined ? null : this.typedAt(found, slot);
  }

  /** Puts what was typed on a row that follows from other data back in its columns; gives the columns written. */
  #placeTyped(table: TableDef, row: number): readonly ColumnDef[] {
    if (!this.shelf.has(table.id)) return [];
    const id = this.rowIdOf(table.id, row);
    const sheet = this.program.sheet(table.id);
    if (id === undefined || sheet === undefined) return [];
    return [...this.shelf.cells(table.id, id)].flatMap(([columnId, content]): ColumnDef[] => {
      const column = sheet.column(columnId);
      if (column === undefined || column.role === 'made') return [];
      const placed = placeContent(content, column, this.program, this);
      if (!placed.ok) return [];
      storeCell(this, column, row, placed.cell);
      return [column.def];
    });
  }

  // What entries are read with.

  /** How entries are read: the season of dates typed without a year, and which comes first, day or month. */
  get entry(): EntryContext {
    return this.#asWritten(this.plainEntry);
  }

  /** As formulas have them, whatever the locale: a point before decimals, day before month in metric workbooks. */
  get plainEntry(): EntryContext {
    const { units, vocabulary } = this.program;
    const year = this.#ofSeason(this.template.year?.column) ?? yearMonthDay(this.frame.today).year;
    return { vocabulary, year, starts: this.#ofSeason(this.template.year?.starts), dayFirst: units === 'si' };
  }

  /** How entries are read in a column: the first day of the season lies in the season's own year, whatever it was before. */
  entryIn({ def }: Pick<ProgramColumn, 'def'>, plain = false): EntryContext {
    const { year } = this.template;
    const context = plain ? this.plainEntry : this.entry;
    const isStart = def.table.id === year?.sheet && def.id === year.starts;
    return isStart ? { ...context, starts: undefined } : context;
  }

  #asWritten(plain: EntryContext): EntryContext {
    const { writing } = this;
    if (writing === undefined) return plain;
    return { ...plain, dayFirst: writing.dayFirst, decimalComma: writing.decimal === ',', writing };
  }

  /** A figure of the row that says which season it is; undefined where it is blank or not there. */
  #ofSeason(id: string | undefined): number | undefined {
    const sheet = this.template.year?.sheet;
    const def = sheet === undefined || id === undefined ? undefined : this.program.layout.findColumn(sheet, id);
    if (def === undefined) return undefined;
    // What the changes before this one made of it, in the same transaction.
    this.run.passFrom(def.table);
    const { length, states, values } = this.frame.column(def);
    return length > 0 && states[0] === FILLED ? values[0] : undefined;
  }
}

/** Writes a cell's value and unit, and marks it as typed over where the column is computed. */
export function storeCell(document: Document, column: ProgramColumn, slot: number, cell: StoredCell): boolean {
  const { store: frame, program } = document;
  const unit = program.typedUnits.number(cell.unit);
  const computed = column.role === 'computed' || column.role === 'default';
  const typed = frame.typed[column.def.number];
  if (unit !== (typed?.unitNumber(slot) ?? 0)) frame.ownTyped(column.def).setUnit(slot, unit);
  if (computed && typed?.over.has(slot) !== true) frame.ownTyped(column.def).over.add(slot);
  return frame.write(column.def, slot, cell.value, cell.state);
}
