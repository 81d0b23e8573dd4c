// A new document of a template: its own rows given as a person would type them. Says every entry that can't be read, in a
// sentence each, and makes nothing then.

import { compile, type Program, type ProgramColumn, type ProgramSheet } from '../schema/compile.ts';
import type { Entries, Entry, UnitSystem } from '../schema/declaration.ts';
import { layOver } from '../schema/lay-over.ts';
import { NOTHING_OWN } from '../schema/own.ts';
import { entry as entryOf } from '../schema/records.ts';
import { isMadeSheet, isOneRow } from '../schema/schema.ts';
import type { Template } from '../schema/template.ts';
import { yearMonthDay } from '../values/civil.ts';
import type { EntryContext } from '../values/entry.ts';
import type { Content } from './content.ts';
import type { DocumentData, RowData } from './data.ts';
import { readEntryAs } from './entries.ts';
import { ONLY_ROW } from './ids.ts';
import { positionsBetween } from './positions.ts';
import { shippedRows } from './template-rows.ts';

export interface Start {
  readonly title: string;
  readonly units: UnitSystem;
  /** ISO 4217 code. */
  readonly currency: string;
  /** Civil day that TODAY() gives. */
  readonly today: number;
  /** A person's first rows by sheet id, entries by column id. A row named like a shipped one changes that row. */
  readonly rows: Readonly<Record<string, readonly Entries[]>>;
}

export type NewDocument =
  | { readonly ok: true; readonly data: DocumentData }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Past this many problems the rest is only counted. */
const MOST_PROBLEMS = 20;

export function newDocument(template: Template, start: Start, newId: () => string): NewDocument {
  const program = compile(layOver(template, NOTHING_OWN), start);
  const starter = new Starter(template, program, start, newId);
  const rows = Object.fromEntries(Object.keys(start.rows).map((sheet) => [sheet, starter.rowsOf(sheet)]));
  const { problems } = starter;
  if (problems.length > MOST_PROBLEMS) {
    const shown = [...problems.slice(0, MOST_PROBLEMS), `… and ${problems.length - MOST_PROBLEMS} more like these.`];
    return { ok: false, problems: shown };
  }
  if (problems.length > 0) return { ok: false, problems };
  const { title, units, currency, today } = start;
  const { name, version } = template;
  const data: DocumentData = {
    title,
    units,
    currency,
    today,
    template: { name, version },
    own: NOTHING_OWN,
    rows,
    removed: {},
    aside: {},
  };
  return { ok: true, data };
}

class Starter {
  readonly problems: string[] = [];
  readonly #template: Template;
  readonly #program: Program;
  readonly #start: Start;
  readonly #context: EntryContext;
  /** Ids of the rows by their names in small letters, by sheet. */
  readonly #names = new Map<string, Map<string, string>>();
  readonly #ids = new Map<Entries, string>();

  constructor(template: Template, program: Program, start: Start, newId: () => string) {
    this.#template = template;
    this.#program = program;
    this.#start = start;
    this.#context = { vocabulary: program.vocabulary, year: this.#year(), dayFirst: start.units === 'si' };
    for (const sheet of program.sheets) this.#nameRows(sheet, newId);
  }

  #year(): number {
    const { year } = this.#template;
    const [row] = year === undefined ? [] : (entryOf(this.#start.rows, year.sheet) ?? []);
    const given = Number(year === undefined ? Number.NaN : row?.[year.column]);
    return Number.isInteger(given) ? given : yearMonthDay(this.#start.today).year;
  }

  #nameRows({ id, schema, name: sheetName }: ProgramSheet, newId: () => string): void {
    const names = new Map<string, string>();
    this.#names.set(id, names);
    const { key } = schema;
    for (const row of shippedRows(this.#template, id).values()) {
      const name = key === undefined ? undefined : row.cells.get(key);
      if (typeof name === 'string') names.set(name.toLowerCase(), row.id);
    }
    (entryOf(this.#start.rows, id) ?? []).forEach((row, i) => {
      const name = key === undefined ? '' : String(row[key] ?? '').trim();
      if (key !== undefined && name === '') {
        const column = schema.columns.find((one) => one.id === key)?.name ?? key;
        this.problems.push(`${sheetName}, row ${i + 1}: ${column} is empty; every row needs one of its own.`);
      }
      const shipped = names.get(name.toLowerCase());
      const taken = shipped !== undefined && [...this.#ids.values()].includes(shipped);
      if (taken)
        this.problems.push(`${sheetName}, row ${i + 1}: “${name}” is there twice; give each row a name of its own.`);
      const rowId = isOneRow(schema) ? ONLY_ROW : (shipped ?? newId());
      this.#ids.set(row, rowId);
      if (name !== '') names.set(name.toLowerCase(), rowId);
    });
  }

  rowsOf(sheetId: string): readonly RowData[] {
    const sheet = this.#program.sheet(sheetId);
    const given = entryOf(this.#start.rows, sheetId) ?? [];
    if (sheet === undefined || isMadeSheet(sheet.schema)) {
      this.problems.push(`There are rows for ${sheet?.name ?? sheetId}, and none can be given there.`);
      return [];
    }
    if (isOneRow(sheet.schema) && given.length > 1) {
      this.problems.push(`${sheet.name} has one row, but ${given.length} are given: leave one.`);
    }
    const shipped = shippedRows(this.#template, sheetId);
    const last = [...shipped.values()].at(-1)?.at ?? '';
    const own = given.filter((row) => !isOneRow(sheet.schema) && !shipped.has(this.#ids.get(row) ?? ''));
    const places = positionsBetween(last, undefined, own.length);
    const placeOf = new Map(own.map((row, i) => [row, places[i] ?? '']));
    return given.map((row, i): RowData => {
      const at = placeOf.get(row);
      const cells = this.#cells(sheet, row, i);
      return { id: this.#ids.get(row) ?? '', ...(at === undefined ? {} : { at }), cells };
    });
  }

  #cells(sheet: ProgramSheet, row: Entries, at: number): Record<string, Content> {
    const cells: Record<string, Content> = {};
    for (const [columnId, entry] of Object.entries(row)) {
      const column = sheet.column(columnId);
      if (column === undefined || column.role === 'made') {
        this.problems.push(`${sheet.name} has no column ${columnId} to type in: take its entries out.`);
      } else this.#read(sheet, column, entry, at, cells);
    }
    return cells;
  }

  #read(sheet: ProgramSheet, column: ProgramColumn, entry: Entry, at: number, cells: Record<string, Content>): void {
    if (entry === '') return;
    const findRow = (of: string, name: string): string | undefined => this.#names.get(of)?.get(name.toLowerCase());
    const read = readEntryAs(entry, column, this.#program, this.#context, findRow);
    if (read.ok) {
      if (read.content !== null) cells[column.id] = read.content;
      return;
    }
    const { orElse } = column.declaration;
    const other = orElse === undefined ? undefined : sheet.column(orElse);
    const instead = other === undefined ? read : readEntryAs(entry, other, this.#program, this.#context, findRow);
    if (other !== undefined && instead.ok) cells[other.id] = instead.content;
    else this.problems.push(`${sheet.name}, row ${at + 1}, ${column.name}: ${read.why}`);
  }
}
