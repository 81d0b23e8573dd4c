// The records of a table, whose columns are found, checked against a sheet: which rows are new, which are known and what of
// them changes, and which can't be taken and why; and the commands for those that can. Reads every entry as typing it would.
// Called by rows-import.ts alone; does nothing to the workbook.

import { otherColumnFor, readTyped } from '../commands/cells.ts';
import type { Command } from '../commands/command.ts';
import { placeContent } from '../document/cells.ts';
import { type Content, isLinkContent, sameContent } from '../document/content.ts';
import type { ContentRead } from '../document/entries.ts';
import type { Book } from '../queries/book.ts';
import { cellView } from '../queries/cells.ts';
import { rowId, rowName, rowNamed, rows } from '../queries/rows.ts';
import type { SheetView } from '../queries/sheets.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { civilDayOfIso } from '../values/civil.ts';
import { FILLED } from '../values/column.ts';
import { showDate, showWithUnit } from '../values/show.ts';
import type { Writing } from '../values/writing.ts';
import { type CsvRecord, unguarded } from './csv.ts';
import { isNumeric } from './csv-export.ts';
import { fieldOf } from './fields.ts';
import { type FileColumn, numberEntry } from './headers.ts';
import { aboutColumns, nameInFull, namingColumns } from './row-naming.ts';

/** A row of the file that can't be taken. */
export interface RefusedRow {
  /** Line of the file, from 1. */
  readonly line: number;
  /** The column at fault, where it is one. */
  readonly column?: string;
  readonly why: string;
}

/** A row of the file that would change something. */
export interface TakenRow {
  readonly line: number;
  readonly what: 'new' | 'changed';
  /** How it is called, '' where rows have no names. */
  readonly name: string;
  /** What would be typed, by the names of columns, figures and days as they were read; an empty entry empties the cell. */
  readonly entries: readonly (readonly [column: string, entry: string])[];
}

export interface CheckedRows {
  /** For the rows that can be taken. */
  readonly commands: readonly Command[];
  readonly added: number;
  readonly updated: number;
  /** Rows that say nothing new. */
  readonly unchanged: number;
  readonly refused: number;
  /** The first of those that can't be taken, by line. */
  readonly faults: readonly RefusedRow[];
  /** The first of those that would change something. */
  readonly taken: readonly TakenRow[];
}

/** What is to be checked, and how far it is told. */
export interface Checking {
  readonly comma: boolean;
  /** Texts that a spreadsheet would take for formulas have an apostrophe in front (csv.ts). */
  readonly guarded: boolean;
  /** How figures and days are told; as the workbook has them where absent. */
  readonly writing?: Writing | undefined;
  /** An id that nothing has yet. */
  newId(): string;
  /** Hears now and then how many records have been looked at. */
  progress?(done: number): void;
}

/** So many rows are told one by one; the rest are counted. */
const MOST_TOLD = 200;
/** Entries of a column that are remembered: most columns say the same few things over and over. */
const MOST_KNOWN = 20_000;
const A_WHILE = 2_000;

/** A record with its entries in the order of the columns. */
interface Asked {
  readonly line: number;
  readonly entries: readonly string[];
}

/** A row to be added, and the rows of the file that it links to. */
interface Fresh {
  readonly asked: Asked;
  readonly id: string;
  readonly cells: readonly Content[];
  /** What goes into columns that are not in the file. */
  readonly beside: readonly Command[];
  readonly needs: readonly string[];
}

export class RowCheck {
  readonly #book: Book;
  readonly #view: SheetView;
  readonly #sheet: ProgramSheet;
  readonly #columns: readonly FileColumn[];
  readonly #width: number;
  readonly #checking: Checking;
  /** Places, among the columns, of those that a person may type in. */
  readonly #typed: readonly number[];
  /** Places of those that say what an event is about. */
  readonly #about: readonly number[];
  readonly #programColumns: readonly (ProgramColumn | undefined)[];
  readonly #known: readonly Map<string, ContentRead>[];
  /** Names of rows that come with the file, with the ids they are to have. */
  readonly #coming = new Map<string, string>();
  readonly #comingIds = new Set<string>();
  readonly #changes: Command[] = [];
  readonly #fresh: Fresh[] = [];
  readonly #faults: RefusedRow[] = [];
  readonly #taken: TakenRow[] = [];
  #refused = 0;
  #updated = 0;
  #unchanged = 0;

  constructor(book: Book, view: SheetView, columns: readonly FileColumn[], width: number, checking: Checking) {
    this.#book = book;
    this.#view = view;
    this.#columns = columns;
    this.#width = width;
    this.#checking = checking;
    const sheet = book.document.program.sheet(view.id);
    if (sheet === undefined) throw new Error(`There is no sheet ${view.id}.`);
    this.#sheet = sheet;
    this.#typed = columns.flatMap(({ column: { role } }, i) => (role === 'entered' || role === 'default' ? [i] : []));
    const about = aboutColumns(view);
    this.#about = columns.flatMap(({ column: { id } }, i) => (about.includes(id) ? [i] : []));
    this.#programColumns = columns.map(({ column }) => sheet.column(column.id));
    this.#known = columns.map(() => new Map());
  }

  check(records: readonly CsvRecord[]): CheckedRows {
    const { oneRow, key, entered } = this.#view;
    const asked = records.flatMap((record) => this.#ask(record) ?? []);
    if (oneRow) this.#oneRow(asked);
    else if (entered && key === undefined) this.#withoutNames(asked);
    else this.#byName(asked);
    const fresh = this.#withoutOrphans();
    for (const { asked: one } of fresh) this.#tell(one, 'new', this.#nameOf(one) ?? '');
    const insert: Command = {
      command: 'put rows',
      sheet: this.#view.id,
      columns: this.#typed.map((i) => this.#columns[i]?.column.id ?? ''),
      rows: fresh.map(({ id, cells }) => ({ row: id, cells })),
    };
    const beside = fresh.flatMap((one) => one.beside);
    return {
      commands: fresh.length === 0 ? this.#changes : [insert, ...beside, ...this.#changes],
      added: fresh.length,
      updated: this.#updated,
      unchanged: this.#unchanged,
      refused: this.#refused,
      faults: this.#faults.sort((a, b) => a.line - b.line),
      taken: this.#taken.sort((a, b) => a.line - b.line),
    };
  }

  #refuse(line: number, why: string, column?: string): void {
    this.#refused += 1;
    if (this.#faults.length < MOST_TOLD)
      this.#faults.push(column === undefined ? { line, why } : { line, column, why });
  }

  #tell({ line, entries }: Asked, what: TakenRow['what'], name: string, only = this.#typed): void {
    if (this.#taken.length >= MOST_TOLD) return;
    const told = only.flatMap((i): (readonly [string, string])[] => {
      const entry = entries[i] ?? '';
      return entry === '' && what === 'new' ? [] : [[this.#columns[i]?.column.name ?? '', this.#asRead(i, entry)]];
    });
    this.#taken.push({ line, what, name, entries: told });
  }

  /** A figure or a day as it was read, since marks and years may be others than were meant; anything else as it is typed. */
  #asRead(i: number, entry: string): string {
    const { document } = this.#book;
    const column = this.#programColumns[i];
    const type = column?.type;
    if (column === undefined || (type?.kind !== 'number' && type?.kind !== 'temperature' && type?.kind !== 'date')) {
      return entry;
    }
    const read = this.#read(i, entry);
    const placed = read.ok ? placeContent(read.content, column, document.program, document) : undefined;
    if (placed?.ok !== true || placed.cell.state !== FILLED) return entry;
    const { value, unit } = placed.cell;
    const { writing = document.writing } = this.#checking;
    return showWithUnit(value, type, { unit, currency: document.program.currency, writing });
  }

  /** The entries of a record; undefined where it has fields too few or too many. */
  #ask({ line, fields }: CsvRecord): Asked | undefined {
    if (fields.length < this.#width) {
      this.#refuse(
        line,
        `it has ${fields.length} ${fields.length === 1 ? 'field' : 'fields'} where the header has ${this.#width}: a separator or a quotation mark is missing here or just above.`,
      );
      return undefined;
    }
    for (let at = this.#width; at < fields.length; at++) {
      if (fields[at] !== '') {
        const why = `“${fields[at]?.slice(0, 40)}” stands in column ${at + 1}, which has no header: name that column or empty it.`;
        this.#refuse(line, why);
        return undefined;
      }
    }
    const { comma, guarded } = this.#checking;
    const entries = this.#columns.map((one) => {
      const field = fields[one.at] ?? '';
      return isNumeric(one.column) ? numberEntry(field, one, comma) : guarded ? unguarded(field) : field;
    });
    return { line, entries };
  }

  #oneRow(asked: readonly Asked[]): void {
    const [first, second] = asked;
    if (second !== undefined) {
      // Which of them is meant nobody can know.
      for (const { line } of asked) {
        this.#refuse(line, `${this.#view.name} has one row, and the file has ${asked.length}: leave one.`);
      }
    } else if (first !== undefined) this.#change(0, first);
  }

  /**
   * A sheet whose rows have no names: rows that are there already are left, the others added. A row is there where one reads the
   * same as a field, as an exported one does, or holds the same content, as one imported before in other units does.
   */
  #withoutNames(asked: readonly Asked[]): void {
    const there = new Map<string, number[]>();
    const note = (words: string, row: number): void => {
      const same = there.get(words);
      if (same === undefined) there.set(words, [row]);
      else same.push(row);
    };
    for (const row of rows(this.#book, this.#view.id)) {
      note(JSON.stringify(this.#typed.map((i) => settledField(this.#fieldAt(row, i)))), row);
      note(contentWords(this.#typed.map((i) => this.#contentAt(row, i))), row);
    }
    const found = new Set<number>();
    asked.forEach((one, i) => {
      this.#progress(i);
      const entries = this.#typed.map((at) => one.entries[at] ?? '');
      const contents = (): string =>
        contentWords(
          this.#typed.map((at, k) => {
            const read = entries[k] === '' ? NOTHING : this.#read(at, entries[k] ?? '');
            return read.ok ? read.content : null;
          }),
        );
      const isFree = (row: number): boolean => !found.has(row);
      const row =
        there.get(JSON.stringify(entries.map(settledField)))?.find(isFree) ?? there.get(contents())?.find(isFree);
      if (row === undefined) this.#add(one);
      else {
        found.add(row);
        this.#unchanged += 1;
      }
    });
  }

  #fieldAt(row: number, i: number): string {
    const column = this.#columns[i]?.column;
    return column === undefined ? '' : fieldOf(this.#book, this.#view.id, row, column);
  }

  /** What is typed in a cell. */
  #contentAt(row: number, i: number): Content {
    const column = this.#programColumns[i];
    return column === undefined ? null : this.#book.document.typedAt(column, row);
  }

  #byName(asked: readonly Asked[]): void {
    const { key, entered, name: sheetName } = this.#view;
    const known = this.#rowsByName();
    const seen = new Map<string, number>();
    const named = asked.flatMap((one): { one: Asked; name: string; row: number | undefined }[] => {
      const short = this.#nameOf(one);
      if (short === undefined) return [];
      const abouts = this.#about.map((i) => one.entries[i] ?? '');
      const name = [short, ...abouts.filter((entry) => entry !== '')].join(' / ');
      const lower = nameInFull(short, abouts);
      const called = known.get(lower) ?? [];
      const before = seen.get(lower);
      if (before !== undefined && called.length === 0) {
        this.#refuse(one.line, `“${name}” stands in line ${before} already: leave one of the two.`);
        return [];
      }
      seen.set(lower, one.line);
      const telling = called.length > 1 ? this.#tellingColumn(called[0] ?? 0) : undefined;
      if (telling !== undefined) {
        const why = `${sheetName} has several rows “${name}”: add the column ${telling}, which says which of them is meant.`;
        this.#refuse(one.line, why);
        return [];
      }
      // Rows that nothing tells apart, as two weedings on one day, come in the order in which they stand.
      const row = key === undefined ? called.shift() : rowNamed(this.#book, this.#view.id, name);
      if (row === undefined && !entered) {
        const why = `${sheetName} has no row “${name}”, and its rows follow from other sheets: take the line out, or change those sheets first.`;
        this.#refuse(one.line, why);
        return [];
      }
      // Known before any row is looked into, so that rows may link to rows further down.
      if (row === undefined) this.#expect(lower);
      return [{ one, name, row }];
    });
    named.forEach(({ one, name, row }, i) => {
      this.#progress(i);
      if (row === undefined) this.#add(one, this.#coming.get(name.toLowerCase()));
      else this.#change(row, one);
    });
  }

  #expect(name: string): void {
    const id = this.#checking.newId();
    this.#coming.set(name, id);
    this.#comingIds.add(id);
  }

  #progress(done: number): void {
    if (done % A_WHILE === 0) this.#checking.progress?.(done);
  }

  /** By their names in full, in the order in which they stand. */
  #rowsByName(): ReadonlyMap<string, number[]> {
    const { id, key } = this.#view;
    const found = new Map<string, number[]>();
    if (key !== undefined) return found;
    for (const row of rows(this.#book, id)) {
      const abouts = this.#about.map((i) => this.#fieldAt(row, i));
      const name = nameInFull(rowName(this.#book, id, row), abouts);
      const same = found.get(name);
      if (same === undefined) found.set(name, [row]);
      else same.push(row);
    }
    return found;
  }

  /** A column that the file has not, and that says what the event of a row is about. */
  #tellingColumn(row: number): string | undefined {
    const missing = aboutColumns(this.#view).filter((id) => this.#columns.every(({ column }) => column.id !== id));
    const id = missing.find((one) => cellView(this.#book, this.#view.id, row, one).text !== '');
    return this.#view.columns.find((column) => column.id === id)?.name;
  }

  /** How a record calls its row; undefined, and refused, where it leaves that open. '' where rows have no names. */
  #nameOf(one: Asked): string | undefined {
    const parts: string[] = [];
    for (const id of namingColumns(this.#view)) {
      const at = this.#columns.findIndex(({ column }) => column.id === id);
      const column = this.#columns[at]?.column;
      const entry = one.entries[at] ?? '';
      if (column === undefined || entry === '') {
        this.#refuse(one.line, `${column?.name ?? id} is empty, and it names the row: write a name.`);
        return undefined;
      }
      const civil = column.type?.kind === 'date' ? civilDayOfIso(entry) : undefined;
      parts.push(civil === undefined ? entry : showDate(civil, this.#book.document.writing));
    }
    return parts.join(' / ');
  }

  /** What an entry means; for a link also a row that comes with the file. */
  #read(i: number, entry: string): ContentRead {
    const known = this.#known[i];
    const before = known?.get(entry);
    if (before !== undefined) return before;
    const column = this.#programColumns[i];
    if (column === undefined) return { ok: false, why: 'its column is gone.' };
    const coming =
      column.type?.kind === 'link' && column.type.table === this.#view.id
        ? this.#coming.get(entry.toLowerCase())
        : undefined;
    const read: ContentRead =
      coming === undefined
        ? readTyped(column, { entry, plain: true }, this.#book)
        : { ok: true, content: { row: coming } };
    if (known !== undefined && known.size < MOST_KNOWN) known.set(entry, read);
    return read;
  }

  #add(asked: Asked, id = this.#checking.newId()): void {
    const cells: Content[] = [];
    const elsewhere: [string, Content][] = [];
    const needs: string[] = [];
    for (const i of this.#typed) {
      const entry = asked.entries[i] ?? '';
      const read = entry === '' && this.#columns[i]?.column.id !== this.#view.key ? NOTHING : this.#read(i, entry);
      if (!read.ok) {
        const other = this.#elsewhere(i, entry);
        if (other === undefined) {
          this.#refuse(asked.line, read.why, this.#columns[i]?.column.name);
          return;
        }
        elsewhere.push(other);
        cells.push(null);
        continue;
      }
      if (isLinkContent(read.content) && this.#comingIds.has(read.content.row)) needs.push(read.content.row);
      cells.push(read.content);
    }
    const beside: Command[] = [];
    for (const [column, content] of elsewhere) {
      const at = this.#typed.findIndex((i) => this.#columns[i]?.column.id === column);
      if (at >= 0 && (cells[at] ?? null) === null) cells[at] = content;
      else beside.push({ command: 'put cell', sheet: this.#view.id, row: id, column, content });
    }
    this.#fresh.push({ asked, id, cells, beside, needs });
  }

  /** The column that takes an entry which its own can't, with what it means there. */
  #elsewhere(i: number, entry: string): [string, Content] | undefined {
    const column = this.#programColumns[i];
    const other =
      column === undefined ? undefined : otherColumnFor(this.#sheet, column, { entry, plain: true }, this.#book);
    const read = other === undefined ? undefined : readTyped(other, { entry, plain: true }, this.#book);
    return other === undefined || read?.ok !== true ? undefined : [other.id, read.content];
  }

  #change(row: number, asked: Asked): void {
    const sheet = this.#view.id;
    const commands: Command[] = [];
    const changed: number[] = [];
    for (const i of this.#typed) {
      const column = this.#columns[i]?.column;
      if (column === undefined || column.id === this.#view.key) continue;
      const entry = asked.entries[i] ?? '';
      if (settledField(entry) === settledField(this.#fieldAt(row, i))) continue;
      const place = { sheet, row: rowId(this.#book, sheet, row), column: column.id };
      if (entry === '' && column.role === 'default') {
        if (cellView(this.#book, sheet, row, column.id).origin !== 'entered') continue;
        commands.push({ command: 'take back', ...place });
      } else {
        const read = this.#read(i, entry);
        if (read.ok && sameContent(read.content, this.#contentAt(row, i))) continue;
        const other = read.ok ? undefined : this.#elsewhere(i, entry);
        if (!read.ok && other === undefined) {
          this.#refuse(asked.line, read.why, column.name);
          return;
        }
        commands.push({ command: 'put cell', ...place, content: read.ok ? read.content : null });
        if (other !== undefined) commands.push({ command: 'put cell', ...place, column: other[0], content: other[1] });
      }
      changed.push(i);
    }
    if (commands.length === 0) {
      this.#unchanged += 1;
      return;
    }
    this.#updated += 1;
    for (const command of commands) this.#changes.push(command);
    this.#tell(asked, 'changed', rowName(this.#book, sheet, row), changed);
  }

  /** Rows to be added, without those that link to a row of the file which can't be taken. */
  #withoutOrphans(): readonly Fresh[] {
    let kept: readonly Fresh[] = this.#fresh;
    if (!kept.some(({ needs }) => needs.length > 0)) return kept;
    for (;;) {
      const there = new Set(kept.map(({ id }) => id));
      const whole = kept.filter(({ asked, needs }) => {
        const missing = needs.find((id) => !there.has(id));
        if (missing !== undefined) {
          this.#refuse(asked.line, 'it names another row of the file that can’t be taken: mend that one first.');
        }
        return missing === undefined;
      });
      if (whole.length === kept.length) return kept;
      kept = whole;
    }
  }
}

function contentWords(contents: readonly Content[]): string {
  // An object, so that no such text is one of fields.
  return JSON.stringify({ contents });
}

const NOTHING: ContentRead = { ok: true, content: null };

/** 6, 6.0 and 6.00 are one number, 85% and 85 one share. */
function settledField(field: string): string {
  const number = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?%?$/i.test(field) ? Number(field.replace('%', '')) : Number.NaN;
  return Number.isNaN(number) ? field : String(number);
}
