// Turns a workbook file of version 1 into a document over the season template of that time: what a person typed and changed
// is told apart from what the template had, names give way to ids, and nothing typed is lost. The document can then be
// brought up to today's template like any other.

import { placeContent } from '../document/cells.ts';
import { type Content, sameContent } from '../document/content.ts';
import type { DocumentData, RowData } from '../document/data.ts';
import { readEntryAs } from '../document/entries.ts';
import { dayRowId, eventRowId, ONLY_ROW, pairRowId } from '../document/ids.ts';
import { positionsBetween } from '../document/positions.ts';
import { shippedRows } from '../document/template-rows.ts';
import { compile, type Program, type ProgramSheet } from '../schema/compile.ts';
import type { ColumnDeclaration, RowSource, SheetDeclaration, TypeDeclaration } from '../schema/declaration.ts';
import { bindSheets, layOver } from '../schema/lay-over.ts';
import type { OwnColumn, OwnSchema, OwnSheet } from '../schema/own.ts';
import { isMadeSheet } from '../schema/schema.ts';
import { WHOLE } from '../schema/shape.ts';
import type { Template, TemplateShelf } from '../schema/template.ts';
import { civilDayOfIso, yearMonthDay } from '../values/civil.ts';
import type { EntryContext } from '../values/entry.ts';
import type {
  ColumnDeclaration as OldColumn,
  RowSource as OldRows,
  SheetDeclaration as OldSheet,
  TypeDeclaration as OldType,
  WorkbookDeclaration as OldWorkbook,
  RowEntries,
} from './version-1-declaration.ts';
import { version1 } from './version-1-shape.ts';
import { VERSION_1_TEMPLATE, type WorkbookFileRead } from './workbook-shape.ts';

/** The document of a version-1 file without its format and version. Throws a Misfit where it is not as it should be. */
export function migrateVersion1(value: unknown, templates: TemplateShelf): WorkbookFileRead {
  const old = version1.read(value, WHOLE);
  const template = templates.earlier(VERSION_1_TEMPLATE.name, VERSION_1_TEMPLATE.version);
  if (template === undefined) {
    return {
      ok: false,
      why: 'It was saved by the first Dibble, whose sheets are not on record here: open it with a whole Dibble.',
    };
  }
  const migration = new Migration(old, template);
  return { ok: true, data: migration.data(), notes: migration.notes, leftOut: false };
}

/** Shipped figures name no rows. */
const NO_ROWS = { slotOf: () => undefined, rowIdOf: () => undefined };

class Migration {
  readonly notes: string[] = [];
  readonly #old: OldWorkbook;
  readonly #template: Template;
  /** Ids by the names of sheets, and of columns 'Sheet/Column'. */
  readonly #ids = new Map<string, string>();
  /** Rows by their names in small letters, by sheet id. */
  readonly #rows = new Map<string, Map<string, string>>();
  readonly #own: OwnSchema;
  readonly #program: Program;
  readonly #aside: [string, string, string, Content][] = [];

  constructor(old: OldWorkbook, template: Template) {
    this.#old = old;
    this.#template = template;
    this.#nameThings();
    this.#own = this.#ownSchema();
    this.#program = compile(layOver(template, this.#own), { units: old.units, currency: old.currency });
  }

  #nameThings(): void {
    for (const { name, columns, rows } of this.#old.sheets) {
      const known = this.#template.sheets.find((sheet) => sheet.name === name);
      const sheetIds = new Set(this.#template.sheets.map(({ id }) => id));
      this.#ids.set(name, known?.id ?? freeWord(name, new Set([...sheetIds, ...this.#ids.values()])));
      const taken = new Set(known?.columns.map(({ id }) => id));
      for (const column of [...columns.map((one) => one.name), ...madeNames(rows)]) {
        const id = known?.columns.find((one) => one.name === column)?.id ?? freeWord(column, taken);
        taken.add(id);
        this.#ids.set(`${name}/${column}`, id);
      }
    }
  }

  #sheetId(name: string): string {
    return this.#ids.get(name) ?? wordOf(name);
  }

  #columnId(sheet: string, column: string): string {
    return this.#ids.get(`${sheet}/${column}`) ?? wordOf(column);
  }

  #ownSchema(): OwnSchema {
    const written: OwnSchema = Object.fromEntries(
      this.#old.sheets.flatMap((sheet): [string, OwnSheet][] => {
        const known = this.#template.sheets.find(({ name }) => name === sheet.name);
        if (known === undefined) return [[this.#sheetId(sheet.name), { declaration: this.#sheet(sheet) }]];
        const columns = sheet.columns.flatMap((column, i) =>
          this.#ownColumn(sheet, column, sheet.columns[i - 1], known),
        );
        return columns.length === 0 ? [] : [[known.id, { columns: Object.fromEntries(columns) }]];
      }),
    );
    return this.#bound(written);
  }

  /** A column of a person's own, or a formula they wrote in place of the sheet's. */
  #ownColumn(
    sheet: OldSheet,
    column: OldColumn,
    previous: OldColumn | undefined,
    known: SheetDeclaration,
  ): readonly [string, OwnColumn][] {
    const before = known.columns.find(({ name }) => name === column.name);
    if (before !== undefined)
      return before.formula === column.formula ? [] : [[before.id, { formula: column.formula }]];
    const declaration = this.#column(sheet.name, column);
    const after = previous === undefined ? null : this.#columnId(sheet.name, previous.name);
    return [[declaration.id, { formula: column.formula, after, declaration: { ...declaration, formula: '' } }]];
  }

  #column(sheet: string, { own, type, orElse, name, ...rest }: OldColumn): ColumnDeclaration {
    return {
      id: this.#columnId(sheet, name),
      name,
      type: this.#type(type),
      ...rest,
      ...(own === true && rest.role === 'computed' ? { inferred: true } : {}),
      ...(orElse === undefined ? {} : { orElse: this.#columnId(sheet, orElse) }),
    };
  }

  #type(type: OldType): TypeDeclaration {
    return type.type === 'link' ? { type: 'link', sheet: this.#sheetId(type.table) } : type;
  }

  #sheet({ name, columns, checks, rows, key, ...rest }: OldSheet): SheetDeclaration {
    return {
      id: this.#sheetId(name),
      name,
      ...rest,
      rows: this.#rowSource(name, rows),
      ...(key === undefined ? {} : { key: this.#columnId(name, key) }),
      columns: columns.map((column) => this.#column(name, column)),
      checks: checks.map((check) => ({ ...check, id: wordOf(check.name), column: this.#columnId(name, check.column) })),
    };
  }

  #rowSource(sheet: string, rows: OldRows): RowSource {
    const made = (name: string) => ({ id: this.#columnId(sheet, name), name });
    switch (rows.from) {
      case 'entry':
      case 'single':
        return rows;
      case 'each':
        return { from: 'each', sheet: this.#sheetId(rows.table), as: made(rows.as), where: rows.where };
      case 'span':
        return { ...rows, as: made(rows.as) };
      case 'pairs': {
        const [first, second] = rows.tables;
        const sheets = [this.#sheetId(first), this.#sheetId(second)] as const;
        return { from: 'pairs', sheets, as: [made(rows.as[0]), made(rows.as[1])], where: rows.where };
      }
      case 'events': {
        const dates = rows.dates.map(({ table, column, event, about }) => {
          return { sheet: this.#sheetId(table), column: this.#columnId(table, column), event, about: made(about) };
        });
        return { from: 'events', dates, as: made(rows.as), event: made(rows.event) };
      }
    }
  }

  /** Own formulas with ids in place of the names that were found. */
  #bound(own: OwnSchema): OwnSchema {
    const schema = layOver(this.#template, own);
    const asDeclared = schema.sheets.map((sheet): SheetDeclaration => {
      const { key, ...rest } = sheet;
      const columns = sheet.columns
        .filter(({ role }) => role !== 'made')
        .map((column): ColumnDeclaration => ({ ...column.declaration, formula: column.formula }));
      return { ...rest, columns, ...(key === undefined ? {} : { key }) };
    });
    const kept = new Map(bindSheets(schema, asDeclared).map((sheet) => [sheet.id, sheet]));
    return Object.fromEntries(
      Object.entries(own).map(([id, sheet]): [string, OwnSheet] => {
        const bound = kept.get(id);
        const columns = Object.entries(sheet.columns ?? {}).map(([column, changes]): [string, OwnColumn] => {
          const formula = bound?.columns.find((one) => one.id === column)?.formula ?? changes.formula;
          return [column, formula === undefined ? changes : { ...changes, formula }];
        });
        const { declaration } = sheet;
        return [
          id,
          {
            ...(declaration === undefined || bound === undefined
              ? {}
              : { declaration: { ...declaration, columns: bound.columns, checks: bound.checks, rows: bound.rows } }),
            ...(columns.length === 0 ? {} : { columns: Object.fromEntries(columns) }),
          },
        ];
      }),
    );
  }

  data(): DocumentData {
    const { title, units, currency, today } = this.#old;
    const entered = this.#program.sheets.filter(({ schema }) => !isMadeSheet(schema));
    for (const sheet of entered) this.#nameRows(sheet);
    const rows = entered.map((sheet): [string, readonly RowData[]] => [sheet.id, this.#rowsOf(sheet)]);
    const removed = entered.map((sheet): [string, readonly string[]] => [sheet.id, this.#removedFrom(sheet)]);
    for (const sheet of this.#program.sheets) if (isMadeSheet(sheet.schema)) this.#madeRows(sheet);
    return {
      title,
      units,
      currency,
      today,
      template: VERSION_1_TEMPLATE,
      own: this.#own,
      rows: Object.fromEntries(rows.filter(([, list]) => list.length > 0)),
      removed: Object.fromEntries(removed.filter(([, list]) => list.length > 0)),
      aside: this.#asideRecord(),
    };
  }

  #given(sheet: ProgramSheet): readonly RowEntries[] {
    return this.#old.rows[sheet.name] ?? [];
  }

  #keyName({ schema }: ProgramSheet): string | undefined {
    return schema.columns.find(({ id }) => id === schema.key)?.name;
  }

  #nameRows(sheet: ProgramSheet): void {
    const names = new Map<string, string>();
    this.#rows.set(sheet.id, names);
    const shipped = new Map<string, string>();
    for (const { id, cells } of shippedRows(this.#template, sheet.id).values()) {
      const name = sheet.schema.key === undefined ? undefined : cells.get(sheet.schema.key);
      if (typeof name === 'string') shipped.set(name.toLowerCase(), id);
    }
    const key = this.#keyName(sheet);
    const taken = new Set(shipped.values());
    for (const row of this.#given(sheet)) {
      const name = key === undefined ? '' : String(row[key] ?? '').toLowerCase();
      if (name === '' || names.has(name)) continue;
      const id = shipped.get(name) ?? freeWord(name, taken);
      taken.add(id);
      names.set(name, id);
    }
  }

  #rowsOf(sheet: ProgramSheet): readonly RowData[] {
    const shipped = shippedRows(this.#template, sheet.id);
    const key = this.#keyName(sheet);
    const given = this.#given(sheet);
    const used = new Set<string>();
    const known = given.map((row, i): { id: string; row: RowEntries } => {
      const name = key === undefined ? '' : String(row[key] ?? '').toLowerCase();
      const wanted = sheet.schema.rows.from === 'single' ? ONLY_ROW : this.#rows.get(sheet.id)?.get(name);
      const id = wanted === undefined || used.has(wanted) ? freeWord(`row ${i + 1}`, used) : wanted;
      used.add(id);
      return { id, row };
    });
    const own = known.filter(({ id }) => id !== ONLY_ROW && !shipped.has(id));
    const places = positionsBetween([...shipped.values()].at(-1)?.at ?? '', undefined, own.length);
    const placeOf = new Map(own.map(({ id }, i) => [id, places[i] ?? '']));
    return known.flatMap(({ id, row }): RowData[] => {
      const before = shipped.get(id);
      const cells = this.#cells(sheet, id, row, before?.cells);
      const at = placeOf.get(id);
      if (before !== undefined && Object.keys(cells).length === 0) return [];
      return [{ id, ...(at === undefined ? {} : { at }), cells }];
    });
  }

  #cells(
    sheet: ProgramSheet,
    id: string,
    row: RowEntries,
    shipped: ReadonlyMap<string, Content> = new Map(),
  ): Record<string, Content> {
    const cells: Record<string, Content> = {};
    for (const [name, entry] of Object.entries(row)) {
      const column = this.#columnId(sheet.name, name);
      const content = this.#content(sheet, id, column, entry);
      if (content !== undefined && !this.#isShipped(sheet, column, content, shipped)) cells[column] = content;
    }
    for (const [column] of shipped) {
      const name = sheet.column(column)?.name ?? '';
      if (!Object.hasOwn(row, name)) cells[column] = null;
    }
    return cells;
  }

  /** A figure counts as the template's whatever unit either was written in. */
  #isShipped(sheet: ProgramSheet, id: string, content: Content, shipped: ReadonlyMap<string, Content>): boolean {
    const before = shipped.get(id) ?? null;
    const column = sheet.column(id);
    if (before === null || column === undefined || sameContent(content, before)) return before !== null;
    const [one, other] = [content, before].map((each) => placeContent(each, column, this.#program, NO_ROWS));
    return one?.ok === true && other?.ok === true && one.cell.value === other.cell.value;
  }

  /** What an entry says; one that can't be read is kept aside as the text it was. */
  #content(sheet: ProgramSheet, row: string, columnId: string, entry: RowEntries[string]): Content | undefined {
    const column = sheet.column(columnId);
    if (column === undefined || column.role === 'made') return undefined;
    const findRow = (of: string, name: string): string | undefined => this.#rows.get(of)?.get(name.toLowerCase());
    const read = readEntryAs(entry, column, this.#program, this.#context(), findRow);
    if (read.ok) return read.content ?? undefined;
    this.notes.push(
      `${sheet.name}, ${column.name}: “${String(entry)}” can't be read any more and is kept aside. ${read.why}`,
    );
    this.#aside.push([sheet.id, row, columnId, String(entry)]);
    return undefined;
  }

  #context(): EntryContext {
    const { year, today, units } = this.#old;
    const given = year === undefined ? undefined : this.#old.rows[year.sheet]?.[0]?.[year.column];
    const season = Number(given);
    return {
      vocabulary: this.#program.vocabulary,
      year: Number.isInteger(season) ? season : yearMonthDay(today).year,
      dayFirst: units === 'si',
    };
  }

  #removedFrom(sheet: ProgramSheet): readonly string[] {
    const there = new Set(this.#rows.get(sheet.id)?.values());
    return [...shippedRows(this.#template, sheet.id).keys()].filter((id) => id !== ONLY_ROW && !there.has(id));
  }

  /** What was typed on rows that follow from other data goes by the ids of what they are made of. */
  #madeRows(sheet: ProgramSheet): void {
    for (const row of this.#given(sheet)) {
      const id = this.#madeId(sheet, row);
      if (id === undefined) {
        this.notes.push(`${sheet.name}: what was typed on a row that is not there any more was left out.`);
        continue;
      }
      for (const [name, entry] of Object.entries(row)) {
        const column = this.#columnId(sheet.name, name);
        const content = this.#content(sheet, id, column, entry);
        if (content !== undefined) this.#aside.push([sheet.id, id, column, content]);
      }
    }
  }

  #madeId({ schema }: ProgramSheet, row: RowEntries): string | undefined {
    const { rows } = schema;
    const named = (sheet: string, column: { readonly name: string }): string | undefined =>
      this.#rows.get(sheet)?.get(String(row[column.name] ?? '').toLowerCase());
    switch (rows.from) {
      case 'each':
        return named(rows.sheet, rows.as);
      case 'span': {
        const civil = civilDayOfIso(String(row[rows.as.name] ?? ''));
        return civil === undefined ? undefined : dayRowId(civil);
      }
      case 'pairs': {
        const first = named(rows.sheets[0], rows.as[0]);
        const second = named(rows.sheets[1], rows.as[1]);
        return first === undefined || second === undefined ? undefined : pairRowId(first, second);
      }
      case 'events': {
        const date = rows.dates.find(({ event }) => event === row[rows.event.name]);
        const about = date === undefined ? undefined : named(date.sheet, date.about);
        return date === undefined || about === undefined ? undefined : eventRowId(about, date.sheet, date.column);
      }
      default:
        return undefined;
    }
  }

  #asideRecord(): DocumentData['aside'] {
    const sheets: Record<string, Record<string, Record<string, Content>>> = {};
    for (const [sheet, row, column, content] of this.#aside) {
      const rows = sheets[sheet] ?? {};
      sheets[sheet] = rows;
      rows[row] = { ...rows[row], [column]: content };
    }
    return sheets;
  }
}

function madeNames(rows: OldRows): readonly string[] {
  switch (rows.from) {
    case 'each':
    case 'span':
      return [rows.as];
    case 'pairs':
      return rows.as;
    case 'events':
      return [rows.as, rows.event, ...rows.dates.map(({ about }) => about)];
    default:
      return [];
  }
}

/** A short word made of a name. */
function wordOf(name: string): string {
  const word = name
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return word === '' ? 'x' : word;
}

/** A word of a name that nothing has yet. */
function freeWord(name: string, taken: ReadonlySet<string>): string {
  const word = wordOf(name);
  let free = word;
  for (let n = 2; taken.has(free); n++) free = `${word}-${n}`;
  return free;
}
