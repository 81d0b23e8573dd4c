// Opens a declaration: sheets, rows and entries into a state that is worked out and ready. Says every problem in a sentence
// and opens nothing where there is one.

import { Model, TableData } from '../recalculation/model.ts';
import { createVocabulary } from '../units/vocabulary.ts';
import { civilDayOfIso } from '../values/civil.ts';
import { FILLED } from '../values/column.ts';
import { otherColumnFor, readContent, scalarAt } from './cells.ts';
import { Changes, putTyped } from './changes.ts';
import type { Entry, RowEntries, WorkbookDeclaration } from './declaration.ts';
import { spanTable } from './names.ts';
import { openSheet } from './open-sheets.ts';
import { findSheetColumn, isEnteredSheet, type Sheet, type SheetColumn } from './sheet.ts';
import { State } from './state.ts';

export type Opened =
  | { readonly ok: true; readonly state: State }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Past this many problems the rest is only counted. */
const MOST_PROBLEMS = 20;

export function openWorkbook(declaration: WorkbookDeclaration): Opened {
  const problems: string[] = [];
  const model = new Model();
  model.today.write(0, declaration.today, FILLED);
  const sheets = new Map<string, Sheet>();
  for (const sheet of declaration.sheets) {
    if (sheets.has(sheet.name)) problems.push(`Two sheets are called ${sheet.name}: rename one.`);
    model.tables.set(sheet.name, new TableData(sheet.name));
    if (sheet.rows.from === 'span') model.tables.set(spanTable(sheet.name), new TableData(spanTable(sheet.name)));
  }
  const vocabulary = createVocabulary({ currency: declaration.currency });
  for (const sheet of declaration.sheets) {
    sheets.set(sheet.name, openSheet(sheet, { model, vocabulary, units: declaration.units }, problems));
  }
  checkReferences(declaration, problems);
  for (const name of Object.keys(declaration.rows)) {
    if (!sheets.has(name))
      problems.push(`There are rows for a sheet called ${name}, but no such sheet: take them out or name the sheet.`);
  }
  if (problems.length > 0) return { ok: false, problems: shortened(problems) };
  const state = new State(model, sheets, declaration);
  new Loader(state, declaration, problems).load();
  return problems.length > 0 ? { ok: false, problems: shortened(problems) } : { ok: true, state };
}

function shortened(problems: readonly string[]): readonly string[] {
  if (problems.length <= MOST_PROBLEMS) return problems;
  return [...problems.slice(0, MOST_PROBLEMS), `… and ${problems.length - MOST_PROBLEMS} more like these.`];
}

/** Links and row sources must name sheets that are there. */
function checkReferences(declaration: WorkbookDeclaration, problems: string[]): void {
  const names = new Set(declaration.sheets.map((sheet) => sheet.name));
  const known = (sheet: string, target: string, what: string): void => {
    if (!names.has(target))
      problems.push(`${sheet}: ${what} names a sheet called ${target}, which is not in the workbook.`);
  };
  for (const { name, rows, columns } of declaration.sheets) {
    for (const column of columns)
      if (column.type.type === 'link') known(name, column.type.table, `the column ${column.name}`);
    if (rows.from === 'each') known(name, rows.table, 'its row source');
    if (rows.from === 'pairs') for (const table of rows.tables) known(name, table, 'its row source');
    if (rows.from === 'events') for (const date of rows.dates) known(name, date.table, 'its row source');
  }
}

class Loader {
  readonly #state: State;
  readonly #declaration: WorkbookDeclaration;
  readonly #problems: string[];
  readonly #changes: Changes;

  constructor(state: State, declaration: WorkbookDeclaration, problems: string[]) {
    this.#state = state;
    this.#declaration = declaration;
    this.#problems = problems;
    this.#changes = new Changes(state);
  }

  load(): void {
    const { sheets, model } = this.#state;
    const givenRows = (sheet: Sheet): readonly RowEntries[] => this.#declaration.rows[sheet.name] ?? [];
    for (const table of model.tables.values()) if (table.name.startsWith('·')) table.setLive(0, true);
    const entered = [...sheets.values()].filter((sheet) => isEnteredSheet(sheet) || sheet.source.from === 'single');
    for (const sheet of entered) {
      const count = sheet.source.from === 'single' ? 1 : givenRows(sheet).length;
      sheet.data.addRows(count);
      if (sheet.source.from === 'single' && givenRows(sheet).length > 1) {
        this.#problems.push(`${sheet.name} has one row, but ${givenRows(sheet).length} are given: leave one.`);
      }
    }
    const given = new Map(entered.map((sheet) => [sheet, this.#givenColumns(sheet, givenRows(sheet))]));
    // Keys first, so that links find their rows whatever the order of sheets.
    for (const keysFirst of [true, false]) {
      for (const sheet of entered) {
        for (const column of given.get(sheet) ?? []) {
          const isKey = column.declaration.name === sheet.declaration.key;
          if (isKey === keysFirst) this.#fill(sheet, column, givenRows(sheet));
        }
      }
    }
    this.#state.built.graph.demandAll();
    this.#changes.finish('', []);
    const made = [...sheets.values()].filter((sheet) => !entered.includes(sheet) && givenRows(sheet).length > 0);
    if (made.length === 0) return;
    for (const sheet of made) this.#fillMade(sheet, givenRows(sheet));
    this.#state.built.graph.demandAll();
    this.#changes.finish('', []);
  }

  /** The columns that some row gives an entry for, the key always among them; names that are no columns become problems. */
  #givenColumns(sheet: Sheet, rows: readonly RowEntries[]): readonly SheetColumn[] {
    const names = new Set<string>();
    for (const row of rows) for (const name in row) names.add(name);
    const { key } = sheet.declaration;
    if (key !== undefined) names.add(key);
    const columns: SheetColumn[] = [];
    for (const name of names) {
      const column = findSheetColumn(sheet, name);
      if (column !== undefined) columns.push(column);
      else this.#problems.push(`${sheet.name} has no column called ${name}: take its values out or add the column.`);
    }
    return columns;
  }

  #fill(sheet: Sheet, column: SheetColumn, rows: readonly RowEntries[]): void {
    const { name } = column.declaration;
    const isKey = name === sheet.declaration.key;
    const count = sheet.source.from === 'single' ? Math.min(1, rows.length) : rows.length;
    for (let row = 0; row < count; row++) {
      const entry = rows[row]?.[name];
      if (entry !== undefined && entry !== '') this.#put(sheet, column, row, entry);
      else if (isKey)
        this.#problems.push(`${sheet.name}, row ${row + 1}: ${name} is empty; every row needs one of its own.`);
    }
  }

  #put(sheet: Sheet, column: SheetColumn, row: number, entry: Entry): void {
    const { name } = column.declaration;
    const read = readContent(column, entry, this.#state);
    if (!read.ok) {
      const other = otherColumnFor(sheet, column, entry, this.#state);
      if (other === undefined) this.#problems.push(`${sheet.name}, row ${row + 1}, ${name}: ${read.why}`);
      else this.#put(sheet, other, row, entry);
      return;
    }
    if (name === sheet.declaration.key && sheet.keys?.has(String(entry).trim().toLowerCase()) === true) {
      this.#problems.push(
        `${sheet.name}, row ${row + 1}, ${name}: “${entry}” is there twice; give each row a name of its own.`,
      );
      return;
    }
    putTyped(this.#state, sheet, column, row, read.content);
  }

  /** Entries of made rows find their row by the made columns' values. */
  #fillMade(sheet: Sheet, rows: readonly RowEntries[]): void {
    const made = sheet.columns.filter((column) => column.role === 'made');
    for (const entries of rows) {
      const row = this.#madeRow(sheet, made, entries);
      if (row === undefined) {
        const named = made.map((column) => String(entries[column.declaration.name] ?? '')).join(' / ');
        this.#problems.push(`${sheet.name} makes no row for “${named}”: take what is typed there out.`);
        continue;
      }
      for (const [name, entry] of Object.entries(entries)) {
        const column = findSheetColumn(sheet, name);
        if (column === undefined)
          this.#problems.push(`${sheet.name} has no column called ${name}: take its values out or add the column.`);
        else if (column.role !== 'made') this.#put(sheet, column, row, entry);
      }
    }
  }

  #madeRow(sheet: Sheet, made: readonly SheetColumn[], entries: RowEntries): number | undefined {
    const wanted = made.map((column) => {
      const entry = entries[column.declaration.name];
      if (column.type?.kind === 'link')
        return this.#state.sheet(column.type.table)?.keys?.get(String(entry).toLowerCase());
      return column.type?.kind === 'date' ? civilDayOfIso(String(entry)) : entry;
    });
    if (sheet.source.from === 'each' && typeof wanted[0] === 'number')
      return sheet.data.live[wanted[0]] === 1 ? wanted[0] : undefined;
    for (let row = 0; row < sheet.data.length; row++) {
      if (sheet.data.live[row] === 1 && made.every((column, k) => scalarAt(column, row, this.#state) === wanted[k]))
        return row;
    }
    return undefined;
  }
}
