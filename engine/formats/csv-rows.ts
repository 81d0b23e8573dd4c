// From the records of a CSV file, whose columns are found, to commands on a sheet: which rows are new, which are known and what
// of them changes. Called by csv-import.ts alone; does nothing to the workbook.

import type { Command } from '../commands/command.ts';
import type { Book } from '../queries/book.ts';
import { cellView } from '../queries/cells.ts';
import { rowId, rowName, rowNamed, rows } from '../queries/rows.ts';
import type { SheetView } from '../queries/sheets.ts';
import { civilDayOfIso } from '../values/civil.ts';
import { showDate } from '../values/show.ts';
import type { Writing } from '../values/writing.ts';
import { type CsvRecord, type Delimiter, unguarded } from './csv.ts';
import { isNumeric } from './csv-export.ts';
import { fieldOf } from './csv-fields.ts';
import { decimalMark, type FileColumn, numberEntry } from './csv-headers.ts';

export interface CsvFailure {
  readonly ok: false;
  /** A whole sentence, with line and column where it has them. */
  readonly why: string;
  /** Line of the file, from 1. */
  readonly line?: number;
}

export interface CsvRows {
  readonly ok: true;
  readonly commands: readonly Command[];
  /** The line of the file that each command comes from. */
  readonly lines: readonly number[];
  readonly added: number;
  readonly updated: number;
  /** Rows that say nothing new. */
  readonly unchanged: number;
  /** What was passed over, in a sentence each. */
  readonly notes: readonly string[];
}

/** What a record asks for, by column. */
interface Asked {
  readonly line: number;
  readonly entries: ReadonlyMap<FileColumn, string>;
}

class Refused extends Error {
  readonly line: number;

  constructor(line: number, why: string) {
    super(`Line ${line}: ${why}`);
    this.line = line;
  }
}

export class RowReader {
  readonly #book: Book;
  readonly #view: SheetView;
  readonly #columns: readonly FileColumn[];
  readonly #width: number;
  /** Columns that a person may type in. */
  readonly #typed: readonly FileColumn[];
  readonly #commands: Command[] = [];
  readonly #lines: number[] = [];
  #added = 0;
  #updated = 0;
  #unchanged = 0;

  constructor(book: Book, view: SheetView, columns: readonly FileColumn[], width: number) {
    this.#book = book;
    this.#view = view;
    this.#columns = columns;
    this.#width = width;
    this.#typed = columns.filter(({ column }) => column.role === 'entered' || column.role === 'default');
  }

  read(records: readonly CsvRecord[], delimiter: Delimiter): CsvRows | CsvFailure {
    try {
      if (records.length === 0) return { ok: false, why: 'The file has a header and no rows below it: add a row.' };
      this.#refuseRagged(records);
      const asked = this.#ask(records, delimiter);
      this.#edit(asked);
      return {
        ok: true,
        commands: this.#commands,
        lines: this.#lines,
        added: this.#added,
        updated: this.#updated,
        unchanged: this.#unchanged,
        notes: this.#notes(records),
      };
    } catch (thrown) {
      if (thrown instanceof Refused) return { ok: false, why: thrown.message, line: thrown.line };
      throw thrown;
    }
  }

  #refuseRagged(records: readonly CsvRecord[]): void {
    const headed = new Set(this.#columns.map((one) => one.at));
    for (const { line, fields } of records) {
      if (fields.length < this.#width) {
        throw new Refused(
          line,
          `it has ${fields.length} ${fields.length === 1 ? 'field' : 'fields'} where the header has ${this.#width}: a separator or a quotation mark is missing here or just above.`,
        );
      }
      const stray = fields.findIndex((field, at) => field !== '' && !headed.has(at));
      if (stray >= 0) {
        throw new Refused(
          line,
          `“${fields[stray]}” stands in column ${stray + 1}, which has no header: name that column or empty it.`,
        );
      }
    }
  }

  #ask(records: readonly CsvRecord[], delimiter: Delimiter): readonly Asked[] {
    const numeric = this.#typed.filter(({ column }) => isNumeric(column));
    const mark = decimalMark(
      delimiter,
      records.flatMap(({ fields }) => numeric.map(({ at }) => fields[at] ?? '')),
    );
    if ('unclear' in mark) {
      const line = records.find(({ fields }) => fields.includes(mark.unclear))?.line ?? 1;
      const digits = mark.unclear.replace('.', '');
      throw new Refused(
        line,
        `“${mark.unclear}” can be read in two ways here: write ${digits}, or ${mark.unclear.replace('.', ',')} with a decimal comma.`,
      );
    }
    return records.map(({ line, fields }) => {
      const entries = new Map<FileColumn, string>();
      for (const one of this.#columns) {
        const field = fields[one.at] ?? '';
        entries.set(one, isNumeric(one.column) ? numberEntry(field, one, mark.comma) : unguarded(field));
      }
      return { line, entries };
    });
  }

  #edit(asked: readonly Asked[]): void {
    const { oneRow, key, entered } = this.#view;
    if (oneRow) this.#editOneRow(asked);
    else if (entered && key === undefined) this.#addUnknown(asked);
    else this.#editByName(asked);
  }

  #editOneRow(asked: readonly Asked[]): void {
    const [first, second] = asked;
    if (first === undefined) return;
    if (second !== undefined) {
      throw new Refused(second.line, `${this.#view.name} has one row, and the file has ${asked.length}: leave one.`);
    }
    this.#update(0, first);
  }

  /** A table whose rows have no names: rows that are there already in the same words are left, the others added. */
  #addUnknown(asked: readonly Asked[]): void {
    const there = new Map<string, number>();
    for (const row of rows(this.#book, this.#view.id)) {
      const words = JSON.stringify(
        this.#typed.map(({ column }) => settledField(fieldOf(this.#book, this.#view.id, row, column))),
      );
      there.set(words, (there.get(words) ?? 0) + 1);
    }
    for (const one of asked) {
      const words = JSON.stringify(this.#typed.map((column) => settledField(one.entries.get(column) ?? '')));
      const count = there.get(words) ?? 0;
      there.set(words, count - 1);
      if (count > 0) this.#unchanged++;
      else this.#insert(one);
    }
  }

  #editByName(asked: readonly Asked[]): void {
    const naming = namingColumns(this.#view).map((id) => this.#naming(id));
    const seen = new Map<string, number>();
    const known = this.#rowsByName();
    const fresh: Asked[] = [];
    for (const one of asked) {
      const name = naming.map((column) => nameField(column, one, this.#book.document.writing)).join(' / ');
      const before = seen.get(name.toLowerCase());
      if (before !== undefined) {
        throw new Refused(one.line, `“${name}” stands in line ${before} already: leave one of the two.`);
      }
      seen.set(name.toLowerCase(), one.line);
      const row =
        this.#view.key === undefined ? known.get(name.toLowerCase()) : rowNamed(this.#book, this.#view.id, name);
      if (row !== undefined) this.#update(row, one);
      else if (this.#view.entered) fresh.push(one);
      else {
        throw new Refused(
          one.line,
          `${this.#view.name} has no row “${name}”, and its rows follow from other sheets: take the line out, or change those sheets first.`,
        );
      }
    }
    for (const one of inOrderOfLinks(fresh, this.#view)) this.#insert(one);
  }

  #rowsByName(): ReadonlyMap<string, number> {
    const { id, key } = this.#view;
    if (key !== undefined) return new Map();
    return new Map(Array.from(rows(this.#book, id), (row) => [rowName(this.#book, id, row).toLowerCase(), row]));
  }

  #naming(id: string): FileColumn {
    const found = this.#columns.find(({ column }) => column.id === id);
    if (found !== undefined) return found;
    const name = this.#view.columns.find((column) => column.id === id)?.name ?? id;
    throw new Refused(1, `the file has no column ${name}, which names each row of ${this.#view.name}: add it.`);
  }

  #push(command: Command, line: number): void {
    this.#commands.push(command);
    this.#lines.push(line);
  }

  #insert({ line, entries }: Asked): void {
    const given = this.#typed.flatMap((one): [string, string][] => {
      const entry = entries.get(one) ?? '';
      return entry === '' ? [] : [[one.column.id, entry]];
    });
    this.#push({ command: 'insert row', sheet: this.#view.id, entries: Object.fromEntries(given), plain: true }, line);
    this.#added++;
  }

  #update(row: number, { line, entries }: Asked): void {
    const sheet = this.#view.id;
    const before = this.#commands.length;
    for (const one of this.#typed) {
      const { id, role } = one.column;
      const entry = entries.get(one) ?? '';
      const there = fieldOf(this.#book, sheet, row, one.column);
      if (id === this.#view.key || settledField(entry) === settledField(there)) continue;
      const place = { sheet, row: rowId(this.#book, sheet, row), column: id };
      if (entry !== '' || role === 'entered') this.#push({ command: 'set cell', ...place, entry, plain: true }, line);
      else if (cellView(this.#book, sheet, row, id).origin === 'entered') {
        this.#push({ command: 'take back', ...place }, line);
      }
    }
    if (this.#commands.length > before) this.#updated++;
    else this.#unchanged++;
  }

  #notes(records: readonly CsvRecord[]): readonly string[] {
    const passed = this.#columns
      .filter(({ column, at }) => column.role === 'computed' && records.some(({ fields }) => (fields[at] ?? '') !== ''))
      .map(({ column }) => column.name);
    if (passed.length === 0) return [];
    const few = passed.length <= 4;
    const named = (few ? passed : passed.slice(0, 3)).join(', ') + (few ? '' : ` and ${passed.length - 3} more`);
    return [`Worked out here, so the file's values were passed over: ${named}.`];
  }
}

/** 6, 6.0 and 6.00 are one number, 85% and 85 one share. */
function settledField(field: string): string {
  const number = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?%?$/i.test(field) ? Number(field.replace('%', '')) : Number.NaN;
  return Number.isNaN(number) ? field : String(number);
}

/** The columns that say which row a record is about. */
function namingColumns({ key, source }: SheetView): readonly string[] {
  if (key !== undefined) return [key];
  switch (source.from) {
    case 'each':
    case 'span':
      return [source.as.id];
    case 'pairs':
      return source.as.map(({ id }) => id);
    case 'events':
      return [source.as.id, source.event.id];
    default:
      return [];
  }
}

function nameField(naming: FileColumn, { line, entries }: Asked, writing: Writing | undefined): string {
  const entry = entries.get(naming) ?? '';
  if (entry === '') throw new Refused(line, `${naming.column.name} is empty, and it names the row: write a name.`);
  const civil = naming.column.type?.kind === 'date' ? civilDayOfIso(entry) : undefined;
  return civil === undefined ? entry : showDate(civil, writing);
}

/** Rows that others of the same file link to come before them. */
function inOrderOfLinks(asked: readonly Asked[], { id, key }: SheetView): readonly Asked[] {
  const isLink = ({ column }: FileColumn): boolean => column.type?.kind === 'link' && column.type.table === id;
  const keyOf = ({ entries }: Asked): string =>
    ([...entries].find(([{ column }]) => column.id === key)?.[1] ?? '').toLowerCase();
  const waiting = new Map(asked.map((one) => [keyOf(one), one]));
  const ordered: Asked[] = [];
  const place = (one: Asked): void => {
    if (!waiting.delete(keyOf(one))) return;
    for (const [column, entry] of one.entries) {
      const other = isLink(column) ? waiting.get(entry.toLowerCase()) : undefined;
      if (other !== undefined) place(other);
    }
    ordered.push(one);
  };
  for (const one of asked) place(one);
  return ordered;
}
