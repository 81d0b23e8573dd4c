// Workbooks for tests, declared and asked by the names that people read, so that a test reads as a page of a workbook. Ids are
// words made of the names. Everything goes through the engine's public face.

import {
  type CellView,
  type ChangeSet,
  type ColumnDeclaration as Column,
  type ColumnView,
  type Command,
  type CsvExportOptions,
  cellValue,
  cellView,
  type DocumentData,
  type Entry,
  type Evaluated,
  evaluate,
  explain,
  exportCsv,
  Findings,
  type ImportChoices,
  importCsv,
  isoDate,
  message,
  newDocument,
  type RowSource,
  rowId,
  rowName,
  rowNamed,
  rows,
  type Scalar,
  type SheetDeclaration as Sheet,
  type SheetView,
  type Start,
  sheetViews,
  type TableData,
  type Template,
  type TriedEntry,
  type TriedFormula,
  type TypeDeclaration as Type,
  tableData,
  tryEntry,
  tryFormula,
  Workbook,
  type World,
  writeWorkbookFile,
} from '../engine/index.ts';
import { wordOf } from '../sheets-templates/names.ts';
import { splitCsv } from '../ui/csv-splitter.ts';

export type TypeDeclaration = Exclude<Type, { type: 'link' }> | { readonly type: 'link'; readonly table: string };

export type ColumnDeclaration = Omit<Column, 'id' | 'type'> & { readonly type: TypeDeclaration };

export type Rows =
  | { readonly from: 'entry' }
  | { readonly from: 'single' }
  | { readonly from: 'each'; readonly table: string; readonly as: string; readonly where: string }
  | {
      readonly from: 'span';
      readonly first: string;
      readonly last: string;
      readonly step: 'day' | 'week' | 'month';
      readonly as: string;
    }
  | {
      readonly from: 'pairs';
      readonly tables: readonly [string, string];
      readonly as: readonly [string, string];
      readonly where: string;
    }
  | {
      readonly from: 'events';
      readonly dates: readonly {
        readonly table: string;
        readonly column: string;
        readonly event: string;
        readonly about: string;
      }[];
      readonly as: string;
      readonly event: string;
    };

export interface CheckDeclaration {
  readonly name: string;
  readonly level: 'error' | 'warning' | 'note';
  readonly column: string;
  readonly says: string;
}

export interface SheetDeclaration {
  readonly name: string;
  readonly question: string;
  readonly about: string;
  readonly rows: Rows;
  readonly key?: string;
  readonly columns: readonly ColumnDeclaration[];
  readonly checks: readonly CheckDeclaration[];
  readonly cautions: readonly string[];
}

export type RowEntries = Readonly<Record<string, Entry>>;

export interface WorkbookDeclaration {
  readonly title: string;
  readonly units: 'us' | 'si';
  readonly currency: string;
  readonly today: number;
  readonly year?: { readonly sheet: string; readonly column: string };
  readonly sheets: readonly SheetDeclaration[];
  readonly rows: Readonly<Record<string, readonly RowEntries[]>>;
}

/** An edit by names; rows by slots. */
export type Edit =
  | {
      readonly edit: 'cell';
      readonly table: string;
      readonly row: number;
      readonly column: string;
      readonly entry: string;
    }
  | { readonly edit: 'take back'; readonly table: string; readonly row: number; readonly column: string }
  | { readonly edit: 'insert row'; readonly table: string; readonly entries: Readonly<Record<string, string>> }
  | { readonly edit: 'remove row'; readonly table: string; readonly row: number }
  | { readonly edit: 'formula'; readonly table: string; readonly column: string; readonly formula: string }
  | { readonly edit: 'add column'; readonly table: string; readonly column: string; readonly type: TypeDeclaration }
  | { readonly edit: 'remove column'; readonly table: string; readonly column: string }
  | { readonly edit: 'units'; readonly units: 'us' | 'si' }
  | { readonly edit: 'today'; readonly today: number };

export interface Changed {
  readonly refused: false;
  readonly cells: readonly { readonly table: string; readonly column: string; readonly rows: Int32Array | 'all' }[];
  readonly rowsOf: readonly string[];
  readonly columnsOf: readonly string[];
  /** Slots of the rows inserted. */
  readonly inserted: readonly number[];
}

export interface Refused {
  readonly refused: true;
  readonly index: number;
  readonly table?: string;
  readonly column?: string;
  readonly why: string;
}

/** The template that a declaration by names stands for. */
export function templateOf(declaration: Pick<WorkbookDeclaration, 'sheets' | 'year'>, version = 1): Template {
  const { year, sheets } = declaration;
  return {
    name: 'test',
    version,
    sheets: sheets.map(sheetOf),
    rows: {},
    ...(year === undefined ? {} : { year: { sheet: wordOf(year.sheet), column: wordOf(year.column) } }),
  };
}

function sheetOf({ name, key, rows: source, columns, checks, ...rest }: SheetDeclaration): Sheet {
  return {
    ...rest,
    id: wordOf(name),
    name,
    rows: rowsOf(source),
    ...(key === undefined ? {} : { key: wordOf(key) }),
    columns: columns.map(columnOf),
    checks: checks.map((check) => ({ ...check, id: wordOf(check.name), column: wordOf(check.column) })),
  };
}

function columnOf({ type, orElse, ...rest }: ColumnDeclaration): Column {
  return {
    ...rest,
    id: wordOf(rest.name),
    type: typeOf(type),
    ...(orElse === undefined ? {} : { orElse: wordOf(orElse) }),
  };
}

export function typeOf(type: TypeDeclaration): Type {
  return type.type === 'link' ? { type: 'link', sheet: wordOf(type.table) } : type;
}

const made = (name: string) => ({ id: wordOf(name), name });

function rowsOf(source: Rows): RowSource {
  switch (source.from) {
    case 'entry':
    case 'single':
      return source;
    case 'each':
      return { from: 'each', sheet: wordOf(source.table), as: made(source.as), where: source.where };
    case 'span':
      return { ...source, as: made(source.as) };
    case 'pairs': {
      const [first, second] = source.tables;
      const as = [made(source.as[0]), made(source.as[1])] as const;
      return { from: 'pairs', sheets: [wordOf(first), wordOf(second)], as, where: source.where };
    }
    case 'events':
      return {
        from: 'events',
        dates: source.dates.map(({ table, column, event, about }) => {
          return { sheet: wordOf(table), column: wordOf(column), event, about: made(about) };
        }),
        as: made(source.as),
        event: made(source.event),
      };
  }
}

let ids = 0;

/** Ids that nothing has yet, a clock that ticks once a look. */
export function testWorld(template: Template, actor = 'tester'): World {
  let time = 0;
  return {
    newId: () => `n${++ids}`,
    now: () => ++time,
    actor,
    templates: { today: () => template, earlier: () => undefined },
  };
}

export type Opened =
  | { readonly ok: true; readonly workbook: Book }
  | { readonly ok: false; readonly problems: readonly string[] };

export function createWorkbook(declaration: WorkbookDeclaration): Opened {
  const { title, units, currency, today, sheets } = declaration;
  const enters = (sheet: string): boolean => {
    const from = sheets.find(({ name }) => name === sheet)?.rows.from ?? 'entry';
    return from === 'entry' || from === 'single';
  };
  const given = Object.entries(declaration.rows);
  const rows = Object.fromEntries(
    given.filter(([sheet]) => enters(sheet)).map(([sheet, list]) => [wordOf(sheet), list.map(byId)]),
  );
  const opened = started(templateOf(declaration), { title, units, currency, today, rows });
  if (!opened.ok) return opened;
  const made = given.filter(([sheet]) => !enters(sheet));
  for (const [sheet, list] of made) for (const row of list) typeOnMadeRow(opened.workbook, sheet, row);
  return made.length === 0 ? opened : { ok: true, workbook: opened.workbook.reopened() };
}

/** Types on the row that is made of what the entries of its made columns name, where there is one. */
function typeOnMadeRow(book: Book, sheet: string, entries: RowEntries): void {
  const isMade = (column: string): boolean => book.column(sheet, column)?.role === 'made';
  const known = Object.entries(entries).filter(([column]) => isMade(column));
  const named = (row: number): boolean =>
    known.every(([column, entry]) => {
      const tried = String(entry).toLowerCase();
      const value = book.value(sheet, row, column);
      return book.cell(sheet, row, column).text.toLowerCase() === tried || isoDate(Number(value)) === tried;
    });
  const row = [...book.rows(sheet)].find(named);
  if (row === undefined) return;
  const typed = Object.entries(entries).filter(([column]) => !isMade(column));
  const done = book.edit(
    typed.map(([column, entry]) => ({ edit: 'cell', table: sheet, row, column, entry: String(entry) })),
  );
  if (done.refused) throw new Error(done.why);
}

function byId<T>(row: Readonly<Record<string, T>>): Record<string, T> {
  return Object.fromEntries(Object.entries(row).map(([name, value]) => [wordOf(name), value]));
}

/** A workbook of a template, begun so. Its rows have the same ids whatever was begun before it: chance hangs on them. */
export function started(template: Template, start: Start): Opened {
  let begun = 0;
  const made = newDocument(template, start, () => `r${++begun}`);
  if (!made.ok) return made;
  const workbook = Workbook.open(made.data, testWorld(template));
  return workbook === undefined
    ? { ok: false, problems: ['no template'] }
    : { ok: true, workbook: new Book(workbook, template) };
}

export function opened(declaration: WorkbookDeclaration): Book {
  const book = createWorkbook(declaration);
  if (!book.ok) throw new Error(book.problems.join('\n'));
  return book.workbook;
}

interface Named {
  readonly view: SheetView;
  readonly columns: ReadonlyMap<string, ColumnView>;
}

function firstOfName(columns: readonly ColumnView[]): ReadonlyMap<string, ColumnView> {
  return new Map(columns.map((column): [string, ColumnView] => [column.name, column]).reverse());
}

/** A workbook asked and edited by names. */
export class Book {
  readonly workbook: Workbook;
  readonly template: Template;
  readonly #findings: Findings;
  #names: { readonly program: unknown; readonly sheets: ReadonlyMap<string, Named> } | undefined;

  constructor(workbook: Workbook, template: Template) {
    this.workbook = workbook;
    this.template = template;
    this.#findings = new Findings(workbook);
  }

  get units(): 'us' | 'si' {
    return this.workbook.document.program.units;
  }

  get today(): number {
    return this.workbook.document.frame.today;
  }

  tables(): readonly SheetView[] {
    return sheetViews(this.workbook);
  }

  table(name: string): SheetView | undefined {
    return this.#named().get(name)?.view;
  }

  /** Tests ask by name at every cell, so names are looked up once a program. */
  #named(): ReadonlyMap<string, Named> {
    const { program } = this.workbook.document;
    if (this.#names?.program !== program) {
      const named = this.tables().map((view): [string, Named] => [
        view.name,
        { view, columns: firstOfName(view.columns) },
      ]);
      this.#names = { program, sheets: new Map(named.reverse()) };
    }
    return this.#names.sheets;
  }

  #sheet(name: string): string {
    return this.table(name)?.id ?? wordOf(name);
  }

  #column(table: string, name: string): string {
    return this.column(table, name)?.id ?? wordOf(name);
  }

  column(table: string, name: string): ColumnView | undefined {
    return this.#named().get(table)?.columns.get(name);
  }

  rows(table: string): Int32Array {
    return rows(this.workbook, this.#sheet(table));
  }

  rowOf(table: string, name: string): number | undefined {
    return rowNamed(this.workbook, this.#sheet(table), name);
  }

  rowName(table: string, row: number): string {
    return rowName(this.workbook, this.#sheet(table), row);
  }

  cell(table: string, row: number, column: string): CellView {
    return cellView(this.workbook, this.#sheet(table), row, this.#column(table, column));
  }

  value(table: string, row: number, column: string): Scalar {
    return cellValue(this.workbook, this.#sheet(table), row, this.#column(table, column));
  }

  commands(edits: readonly Edit[]): readonly Command[] {
    return edits.map((edit) => this.#command(edit));
  }

  #command(edit: Edit): Command {
    if (edit.edit === 'units') return { command: 'set units', units: edit.units };
    if (edit.edit === 'today') return { command: 'set today', today: edit.today };
    const sheet = this.#sheet(edit.table);
    const row = (slot: number): string => rowId(this.workbook, sheet, slot) || `slot ${slot}`;
    switch (edit.edit) {
      case 'cell': {
        const column = this.#column(edit.table, edit.column);
        return { command: 'set cell', sheet, row: row(edit.row), column, entry: edit.entry };
      }
      case 'take back':
        return { command: 'take back', sheet, row: row(edit.row), column: this.#column(edit.table, edit.column) };
      case 'insert row': {
        const entries = Object.entries(edit.entries).map(([name, entry]) => [this.#column(edit.table, name), entry]);
        return { command: 'insert row', sheet, entries: Object.fromEntries(entries) };
      }
      case 'remove row':
        return { command: 'remove rows', sheet, rows: [row(edit.row)] };
      case 'formula':
        return this.column(edit.table, edit.column) === undefined
          ? { command: 'add formula', sheet, name: edit.column, formula: edit.formula }
          : { command: 'set formula', sheet, column: this.#column(edit.table, edit.column), formula: edit.formula };
      case 'add column':
        return { command: 'add column', sheet, name: edit.column, type: typeOf(edit.type) };
      case 'remove column':
        return { command: 'remove column', sheet, column: this.#column(edit.table, edit.column) };
    }
  }

  edit(edits: readonly Edit[], label = 'edit', joined?: 'joined'): Changed | Refused {
    const done = this.workbook.do(this.commands(edits), { code: label, parts: {} }, { joined: joined !== undefined });
    if (!done.refused) {
      const inserted = edits.flatMap((edit) => (edit.edit === 'insert row' ? [this.#sheet(edit.table)] : []));
      const { document } = this.workbook;
      return {
        ...this.named(done.change),
        inserted: done.inserted.map((row, i) => document.slotOf(inserted[i] ?? '', row) ?? -1),
      };
    }
    const { sheet, column, why, index } = done;
    const table = this.tables().find(({ id }) => id === sheet);
    return {
      refused: true,
      index,
      why,
      ...(sheet === undefined ? {} : { table: table?.name ?? sheet }),
      ...(column === undefined ? {} : { column: table?.columns.find(({ id }) => id === column)?.name ?? column }),
    };
  }

  /** A change set by names, without what no one sees. */
  named(change: ChangeSet): Omit<Changed, 'inserted'> {
    const name = (id: string): string => this.tables().find((sheet) => sheet.id === id)?.name ?? id;
    return {
      refused: false,
      cells: change.cells.flatMap(({ sheet, column, rows: which }) => {
        if (column.startsWith('·')) return [];
        const found = this.tables()
          .find(({ id }) => id === sheet)
          ?.columns.find(({ id }) => id === column);
        return [{ table: name(sheet), column: found?.name ?? column, rows: which }];
      }),
      rowsOf: change.rowsOf.map(name),
      columnsOf: change.columnsOf.map(name),
    };
  }

  undo(): Omit<Changed, 'inserted'> | undefined {
    const done = this.workbook.undo();
    return done === undefined ? undefined : this.named(done.change);
  }

  redo(): Omit<Changed, 'inserted'> | undefined {
    const done = this.workbook.redo();
    return done === undefined ? undefined : this.named(done.change);
  }

  undoState(): { readonly undo: string | undefined; readonly redo: string | undefined } {
    const { done, undone } = this.workbook.history;
    return { undo: done.at(-1)?.done.message.code, redo: undone.at(-1)?.done.message.code };
  }

  whatIf(
    trials: readonly (readonly Edit[])[],
    cells: readonly { readonly table: string; readonly row: number; readonly column: string }[],
  ): readonly (readonly Scalar[] | undefined)[] {
    return this.workbook.whatIf(
      trials.map((edits) => this.commands(edits)),
      cells.map(({ table, row, column }) => {
        return { sheet: this.#sheet(table), row, column: this.#column(table, column) };
      }),
    );
  }

  tryEntry(table: string, column: string, entry: string): TriedEntry {
    return tryEntry(this.workbook, this.#sheet(table), this.#column(table, column), entry);
  }

  tryFormula(table: string, column: string, formula: string): TriedFormula {
    return tryFormula(this.workbook, this.#sheet(table), this.column(table, column)?.id, formula);
  }

  explain(table: string, row: number, column: string): NonNullable<ReturnType<typeof explain>> {
    const found = explain(this.workbook, this.#sheet(table), row, this.#column(table, column));
    if (found === undefined) throw new Error(`No cell ${table} / ${row} / ${column}`);
    return found;
  }

  /** Findings with the names of their sheets and columns. */
  attention(): readonly {
    readonly level: string;
    readonly table: string;
    readonly row: number | undefined;
    readonly rowName: string;
    readonly column: string;
    readonly says: string;
  }[] {
    return this.#findings.all().map(({ level, sheetName, row, rowName: named, columnName, says }) => {
      return { level, table: sheetName, row, rowName: named, column: columnName, says };
    });
  }

  evaluate(formula: string): Evaluated {
    return evaluate(this.workbook, formula);
  }

  /** The text of its file. */
  file(): string {
    return writeWorkbookFile(this.data());
  }

  csv(table: string, options?: CsvExportOptions): string {
    return exportCsv(this.workbook, this.#sheet(table), options);
  }

  importCsv(table: string, text: string, choices: ImportChoices = {}): ReturnType<typeof importCsv> {
    return importCsv(this.workbook, this.#sheet(table), text, splitCsv, choices);
  }

  tableData(table: string): TableData | undefined {
    return tableData(this.workbook, this.#sheet(table));
  }

  /** Hears the code of each change's message. */
  subscribe(listener: (code: string) => void): () => void {
    return this.workbook.subscribe(({ transaction }) => listener(transaction.message.code));
  }

  branch(): Book {
    return new Book(this.workbook.branch(), this.template);
  }

  data(): DocumentData {
    return this.workbook.data();
  }

  /** The same workbook opened afresh from what a file would keep. */
  reopened(): Book {
    return openedFrom(this.data(), this.template);
  }
}

/** The workbook of a document's data over its template. */
export function openedFrom(data: DocumentData, template: Template): Book {
  const workbook = Workbook.open(data, testWorld(template));
  if (workbook === undefined) throw new Error('no template');
  return new Book(workbook, template);
}

export { message };
