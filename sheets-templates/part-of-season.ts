// Makes a smaller set of sheets from the season's: those wanted, with formulas of their own where they stand without the others.
// Columns and checks that read what is left out go too, and whatever reads those. onions.ts and seedlings.ts call it, so that
// they stay the very sheets of the season.

import type { CheckDeclaration, ColumnDeclaration, EventDate, RowSource, SheetDeclaration } from '../engine/index.ts';

export interface Part {
  /** Ids of the sheets, in the order in which they are to stand. */
  readonly sheets: readonly string[];
  /** Other formulas by sheet and column: 'plantings/revenue'. */
  readonly formulas?: Readonly<Record<string, string>>;
  /** Of a sheet only these columns, and all that they read. */
  readonly only?: Readonly<Record<string, readonly string[]>>;
  /** Columns that must not be left out, by sheet and column: it is a slip where one is. */
  readonly keeps?: readonly string[];
  /** Sheets and columns by another name: { Plantings: 'Batches' }. */
  readonly names?: Readonly<Record<string, string>>;
  /** What sentences call things in their place, but in those of these sheets, which speak of the field. */
  readonly words?: {
    readonly said: readonly (readonly [from: RegExp, to: string])[];
    readonly notIn: readonly string[];
  };
  /** Other notes by sheet and column, and other sentences of what a sheet is for by sheet. */
  readonly notes?: Readonly<Record<string, string>>;
}

type Sheets = readonly SheetDeclaration[];

/** [Own], [Link].[Column].[Column]: what a formula reads along this row. */
const PATH = /(?<![\w'.\]])\[([^\]]+)\]((?:\.\[[^\]]+\])*)/g;
/** Sheet[Column] and 'Sheet of two words'[Column]. */
const WHOLE = /(?:'([^']+)'|\b([A-Za-z][A-Za-z]*))\[([^\]]+)\]/g;

export function partOfSeason(
  all: Sheets,
  { sheets, formulas = {}, only = {}, keeps = [], names = {}, words, notes = {} }: Part,
): Sheets {
  const wanted = sheets.map((id) => {
    const sheet = all.find((one) => one.id === id);
    if (sheet === undefined) throw new Error(`The season has no sheet with the id ${id}`);
    return narrowed(
      { ...sheet, columns: sheet.columns.map((column) => ownFormula(sheet, column, formulas)) },
      only[id],
    );
  });
  const there = whole(wanted, all);
  const listed = Object.entries(only).flatMap(([sheet, columns]) => columns.map((column) => `${sheet}/${column}`));
  for (const kept of [...keeps, ...listed, ...Object.keys(formulas)]) {
    const [sheet = '', column = ''] = kept.split('/');
    const found = there.find(({ id }) => id === sheet)?.columns.some(({ id }) => id === column);
    if (found !== true) throw new Error(`A part of the season has lost ${kept}: it reads what is left out`);
  }
  return there.map((sheet) => reworded(renamed(sheet, names), words, notes));
}

function ownFormula(
  sheet: SheetDeclaration,
  column: ColumnDeclaration,
  formulas: Readonly<Record<string, string>>,
): ColumnDeclaration {
  const formula = formulas[`${sheet.id}/${column.id}`];
  if (formula === undefined) return column;
  return { ...column, role: column.role === 'entered' ? 'default' : column.role, formula };
}

/** A sheet with the columns of these ids and all that they read in their own row. */
function narrowed(sheet: SheetDeclaration, ids: readonly string[] | undefined): SheetDeclaration {
  if (ids === undefined) return sheet;
  const needed = new Set<string>();
  const look = (column: ColumnDeclaration | undefined): void => {
    if (column === undefined || needed.has(column.id)) return;
    needed.add(column.id);
    for (const [, name = ''] of column.formula.matchAll(PATH)) look(sheet.columns.find((one) => one.name === name));
  };
  for (const id of ids) look(sheet.columns.find((one) => one.id === id));
  return { ...sheet, columns: sheet.columns.filter(({ id }) => needed.has(id)) };
}

/** Leaves out what reads something that isn't there, until nothing does. */
function whole(sheets: Sheets, all: Sheets): Sheets {
  const read = new Reading(sheets, all);
  const next = sheets.map((sheet) => ({
    ...sheet,
    rows: datesThere(sheet.rows, read),
    columns: sheet.columns.filter((column) => read.column(sheet, column)),
  }));
  const changed = next.some(({ columns, rows }, k) => {
    return columns.length !== sheets[k]?.columns.length || sizeOf(rows) !== sizeOf(sheets[k]?.rows);
  });
  if (changed) return whole(next, all);
  return next.map((sheet) => ({
    ...sheet,
    columns: sheet.columns.map((column) => withinItsEnds(column, sheet)),
    checks: sheet.checks.filter((check) => read.check(sheet, check)),
  }));
}

/** A figure whose ends are left out stands alone. */
function withinItsEnds({ range, ...column }: ColumnDeclaration, { columns }: SheetDeclaration): ColumnDeclaration {
  const there = (end: string): boolean => columns.some(({ id }) => id === end);
  return range !== undefined && there(range.low) && there(range.high) ? { ...column, range } : column;
}

function sizeOf(rows: RowSource | undefined): number {
  return rows?.from === 'events' ? rows.dates.length : 0;
}

function datesThere(rows: RowSource, read: Reading): RowSource {
  if (rows.from !== 'events') return rows;
  const isThere = ({ sheet, column }: EventDate): boolean => read.has(sheet, column);
  return { ...rows, dates: rows.dates.filter(isThere) };
}

/** What can be read in a set of sheets. */
class Reading {
  readonly #sheets: Sheets;
  /** Names of all sheets there are elsewhere: a name that is none of them is a function's or a text's. */
  readonly #known: ReadonlySet<string>;

  constructor(sheets: Sheets, all: Sheets) {
    this.#sheets = sheets;
    this.#known = new Set(all.map(({ name }) => name));
  }

  has(sheet: string, column: string): boolean {
    return this.#sheets.find(({ id }) => id === sheet)?.columns.some(({ id }) => id === column) === true;
  }

  column(sheet: SheetDeclaration, { type, formula }: ColumnDeclaration): boolean {
    const linked = type.type !== 'link' || this.#sheets.some(({ id }) => id === type.sheet);
    return linked && this.formula(sheet, formula);
  }

  check(sheet: SheetDeclaration, { column, says }: CheckDeclaration): boolean {
    return sheet.columns.some(({ id }) => id === column) && this.formula(sheet, says);
  }

  formula(sheet: SheetDeclaration, formula: string): boolean {
    const text = formula.replace(/"[^"]*"/g, '""');
    const paths = [...text.matchAll(PATH)].every(([, first = '', rest = '']) => {
      return this.#path(sheet, [first, ...[...rest.matchAll(/\[([^\]]+)\]/g)].map(([, name = '']) => name)]);
    });
    const columns = [...text.matchAll(WHOLE)].every(([, quoted, plain, column = '']) => {
      const name = quoted ?? plain ?? '';
      return !this.#known.has(name) || this.#named(name, column);
    });
    return paths && columns;
  }

  #named(sheet: string, column: string): boolean {
    const found = this.#sheets.find(({ name }) => name === sheet);
    return found !== undefined && (namesOf(found).has(column) || madeOf(found).has(column));
  }

  /** Along links from a row of a sheet. Figures of a record are not looked up: the record's column is. */
  #path(sheet: SheetDeclaration, [name = '', ...rest]: readonly string[]): boolean {
    const made = madeOf(sheet).get(name);
    const column = sheet.columns.find((one) => one.name === name);
    if (made === undefined && column === undefined) return false;
    if (rest.length === 0) return true;
    const target = made ?? (column?.type.type === 'link' ? column.type.sheet : undefined);
    if (target === undefined) return column?.type.type === 'record';
    const next = this.#sheets.find(({ id }) => id === target);
    return next !== undefined && this.#path(next, rest);
  }
}

function namesOf({ columns }: SheetDeclaration): ReadonlySet<string> {
  return new Set(columns.map(({ name }) => name));
}

/** The columns in which a made sheet names what its rows are made of, with the sheet they link to; '' for dates and words. */
function madeOf({ rows }: SheetDeclaration): ReadonlyMap<string, string> {
  switch (rows.from) {
    case 'each':
      return new Map([[rows.as.name, rows.sheet]]);
    case 'pairs':
      return new Map(rows.as.map(({ name }, k) => [name, rows.sheets[k] ?? '']));
    case 'span':
      return new Map([[rows.as.name, '']]);
    case 'events':
      return new Map([
        [rows.as.name, ''],
        [rows.event.name, ''],
        ...rows.dates.map(({ about, sheet }): [string, string] => [about.name, sheet]),
      ]);
    default:
      return new Map();
  }
}

/** The sheet under other names; its formulas with it. */
function renamed(sheet: SheetDeclaration, names: Readonly<Record<string, string>>): SheetDeclaration {
  const name = (old: string): string => names[old] ?? old;
  const formula = (text: string): string =>
    text
      .replace(/\[([^\]]+)\]/g, (_, column: string) => `[${name(column)}]`)
      .replace(/\b([A-Za-z]+)\[/g, (_, table: string) => `${name(table)}[`);
  return {
    ...sheet,
    name: name(sheet.name),
    rows: renamedRows(sheet.rows, name, formula),
    columns: sheet.columns.map((column) => ({ ...column, name: name(column.name), formula: formula(column.formula) })),
    checks: sheet.checks.map((check) => ({ ...check, says: formula(check.says) })),
  };
}

/** The sheet with the sentences of the smaller template. */
function reworded(sheet: SheetDeclaration, words: Part['words'], notes: NonNullable<Part['notes']>): SheetDeclaration {
  const said = words === undefined || words.notIn.includes(sheet.id) ? [] : words.said;
  const inWords = (text: string): string => said.reduce((told, [from, to]) => told.replaceAll(from, to), text);
  return {
    ...sheet,
    about: notes[sheet.id] ?? inWords(sheet.about),
    columns: sheet.columns.map((column) => ({
      ...column,
      note: notes[`${sheet.id}/${column.id}`] ?? inWords(column.note),
    })),
    checks: sheet.checks.map((check) => ({ ...check, says: check.says.replaceAll(/"[^"]*"/g, inWords) })),
  };
}

function renamedRows(rows: RowSource, name: (old: string) => string, formula: (text: string) => string): RowSource {
  const made = <Made extends { readonly name: string }>(column: Made): Made => ({ ...column, name: name(column.name) });
  switch (rows.from) {
    case 'each':
      return { ...rows, as: made(rows.as), where: formula(rows.where) };
    case 'pairs':
      return { ...rows, as: [made(rows.as[0]), made(rows.as[1])], where: formula(rows.where) };
    case 'span':
      return { ...rows, as: made(rows.as), first: formula(rows.first), last: formula(rows.last) };
    case 'events':
      return { ...rows, dates: rows.dates.map((date) => ({ ...date, about: made(date.about) })) };
    default:
      return rows;
  }
}
