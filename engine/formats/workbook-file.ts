// The workbook file: one JSON document that names its template and holds what is a person's own. Writing what was read gives
// the same bytes again. Reading never throws: it gives the document with a sentence for every part that is not as it should
// be, which is kept aside, or one sentence that says why nothing can be read. Fields this version doesn't know are refused,
// never dropped. Files of version 1 are turned into today's (version-1.ts).

import { type Content, isQuantity } from '../document/content.ts';
import type { DocumentData, RowData } from '../document/data.ts';
import { POSITION } from '../document/positions.ts';
import { ROW_ID } from '../schema/id.ts';
import type { ById } from '../schema/records.ts';
import { isFields, type JsonSchema, Misfit } from '../schema/shape.ts';
import type { TemplateShelf } from '../schema/template.ts';
import { looksShape } from '../schema/views-shape.ts';
import { civilDayOfIso, isoDate } from '../values/civil.ts';
import { jsonFault } from './json-fault.ts';
import { layout } from './layout.ts';
import { migrateVersion1, VERSION_1_TEMPLATE } from './version-1.ts';
import {
  type FileCell,
  type FileContent,
  type FileRows,
  ownSchema,
  type WorkbookFile,
  type WorkbookFileRead,
  workbookFile,
} from './workbook-shape.ts';

export type { WorkbookFileRead };

export const FORMAT = 'dibble-workbook';
export const VERSION = 2;

/** The JSON Schema of a workbook file, for other programs. */
export function workbookFileSchema(): JsonSchema {
  const { properties, required, ...rest } = workbookFile.schema as {
    readonly properties: Readonly<Record<string, unknown>>;
    readonly required: readonly string[];
  };
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Dibble workbook',
    description: 'A season workbook: what a person typed and changed, by id, over a named template.',
    ...rest,
    properties: { format: { const: FORMAT }, version: { const: VERSION }, ...properties },
    required: ['format', 'version', ...required],
  };
}

/** The file's text, ending with a line break. The same document always gives the same text. */
export function writeWorkbookFile(data: DocumentData): string {
  const { title, units, currency, today, template, own, removed, looks, notes, locale } = data;
  const file: WorkbookFile = {
    title,
    units,
    currency,
    today: isoDate(today),
    template,
    own: ownSchema.read(own, []),
    rows: mapped(data.rows, fileRows),
    removed,
    aside: mapped(data.aside, (rows) => mapped(rows, (cells) => mapped(cells, fileContent))),
    ...(looks === undefined ? {} : { looks: looksShape.read(looks, []) }),
    ...(notes === undefined ? {} : { notes }),
    ...(locale === undefined ? {} : { locale }),
  };
  return `${layout({ format: FORMAT, version: VERSION, ...file })}\n`;
}

function mapped<T, U>(record: ById<T>, change: (value: T) => U): ById<U> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}

function fileRows(rows: readonly RowData[]): FileRows {
  const columns = [...new Set(rows.flatMap(({ cells }) => Object.keys(cells)))];
  const back = rows.filter(({ broughtBack }) => broughtBack === true).map(({ id }) => id);
  return {
    columns,
    rows: rows.map(({ id, at = '', cells }) => {
      const list = columns.map((column) => (Object.hasOwn(cells, column) ? fileCell(cells[column] ?? null) : null));
      return [id, at, ...list.slice(0, list.findLastIndex((cell) => cell !== null) + 1)];
    }),
    ...(back.length === 0 ? {} : { broughtBack: back }),
  };
}

function fileCell(content: Content): FileCell {
  return content === null ? {} : fileContent(content);
}

function fileContent(content: Content): FileContent {
  if (content === null) return '';
  if (!isQuantity(content)) return content;
  const { number, unit, follows, shownIn } = content;
  if (follows === true) return [number, unit, true];
  return shownIn === undefined ? [number, unit] : [number, unit, shownIn];
}

/** The template and version that a file wants beside today's, so that a face can fetch it before reading. */
export function templateWanted(text: string): { readonly name: string; readonly version: number } | undefined {
  try {
    const value: unknown = JSON.parse(text.replace(/^\uFEFF/, ''));
    if (!isFields(value) || value.format !== FORMAT) return undefined;
    if (value.version === 1) return VERSION_1_TEMPLATE;
    const { template } = value;
    if (!isFields(template) || typeof template.name !== 'string' || typeof template.version !== 'number')
      return undefined;
    return { name: template.name, version: template.version };
  } catch {
    return undefined;
  }
}

/** The document in a file's text, or why it can't be read and what to do. */
export function readWorkbookFile(text: string, templates: TemplateShelf): WorkbookFileRead {
  const document = readDocument(text.replace(/^\uFEFF/, ''));
  if (!document.ok) return document;
  if (!isFields(document.value)) return notOne();
  const { format, version, ...rest } = document.value;
  if (format !== FORMAT) return notOne();
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return { ok: false, why: `Its “version” should be ${VERSION}: mend it, or take a whole copy of the file.` };
  }
  if (version > VERSION) {
    return {
      ok: false,
      why: `It was saved by a newer Dibble (file version ${version}, and this one reads version ${VERSION}): update Dibble, then open it.`,
    };
  }
  try {
    if (version === 1) return migrateVersion1(rest, templates);
    return fromFile(workbookFile.read(rest, []), templates);
  } catch (thrown) {
    if (thrown instanceof Misfit) return { ok: false, why: thrown.message };
    throw thrown;
  }
}

function fromFile(file: WorkbookFile, templates: TemplateShelf): WorkbookFileRead {
  if (templates.today(file.template.name) === undefined) {
    const why = `It is made from a template called “${file.template.name}”, which this Dibble doesn't know: update Dibble, then open it.`;
    return { ok: false, why };
  }
  const notes: string[] = [];
  const rows = Object.entries(file.rows).map(([sheet, given]): [string, readonly RowData[]] => [
    sheet,
    new RowsReader(sheet, given, notes).read(),
  ]);
  const aside = Object.fromEntries(
    Object.entries(file.aside).map(([sheet, byRow]) => [
      sheet,
      mapped(byRow, (cells) => asideCells(sheet, cells, notes)),
    ]),
  );
  const { title, units, currency, template, own, removed, looks, notes: remarks, locale } = file;
  const today = civilDayOfIso(file.today) ?? 0;
  const later = {
    ...(looks === undefined ? {} : { looks }),
    ...(remarks === undefined ? {} : { notes: remarks }),
    ...(locale === undefined ? {} : { locale }),
  };
  const known = { title, units, currency, today, template, own, rows: Object.fromEntries(rows), removed, aside };
  const data: DocumentData = { ...known, ...later };
  return { ok: true, data, notes };
}

function asideCells(sheet: string, cells: ById<unknown>, notes: string[]): ById<Content> {
  return Object.fromEntries(
    Object.entries(cells).map(([column, cell]) => {
      const content = readCell(cell, (found) => {
        notes.push(`What is kept aside of “${sheet}” holds ${found} under “${column}”, which is no entry.`);
      });
      return [column, content ?? null];
    }),
  );
}

class RowsReader {
  readonly #sheet: string;
  readonly #rows: FileRows;
  readonly #notes: string[];
  readonly #seen = new Set<string>();

  constructor(sheet: string, rows: FileRows, notes: string[]) {
    this.#sheet = sheet;
    this.#rows = rows;
    this.#notes = notes;
  }

  read(): readonly RowData[] {
    const back = new Set(this.#rows.broughtBack);
    return this.#rows.rows.flatMap((row, i): RowData[] => {
      const [id, at, ...cells] = row;
      if (typeof id !== 'string' || !ROW_ID.test(id)) return this.#leftOut(i, 'has no id that can be used');
      if (this.#seen.has(id)) return this.#leftOut(i, `has the id “${id.slice(0, 40)}” of a row above it`);
      if (typeof at !== 'string' || (at !== '' && !POSITION.test(at)))
        return this.#leftOut(i, 'has no place that can be used');
      this.#seen.add(id);
      const contents = cells.flatMap((cell, k): [string, Content][] => {
        const column = this.#rows.columns[k];
        if (column === undefined) {
          this.#note(i, 'has more cells than there are columns; those were left out');
          return [];
        }
        const content = readCell(cell, (found) => {
          this.#note(i, `holds ${found} under “${column}”, which is no entry; it is kept aside`);
        });
        return content === undefined ? [] : [[column, content]];
      });
      return [
        {
          id,
          ...(at === '' ? {} : { at }),
          cells: Object.fromEntries(contents),
          ...(back.has(id) ? { broughtBack: true } : {}),
        },
      ];
    });
  }

  #leftOut(i: number, why: string): [] {
    this.#note(i, `${why}; it was left out`);
    return [];
  }

  #note(i: number, what: string): void {
    this.#notes.push(`Row ${i + 1} of “${this.#sheet}” ${what}.`);
  }
}

/** A cell's content; undefined for no cell. What can't be read is kept as the text it stands as. */
function readCell(cell: unknown, warn: (found: string) => void): Content | undefined {
  if (cell === null || cell === undefined) return undefined;
  if (typeof cell === 'string' || typeof cell === 'boolean') return cell;
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  if (Array.isArray(cell)) {
    const quantity = readQuantity(cell);
    if (quantity !== undefined) return quantity;
  } else if (isFields(cell)) {
    const names = Object.keys(cell);
    if (names.length === 0) return null;
    const { date, row } = cell;
    if (names.length === 1 && typeof date === 'string' && civilDayOfIso(date) !== undefined) return { date };
    if (names.length === 1 && typeof row === 'string' && ROW_ID.test(row)) return { row };
  }
  const found = JSON.stringify(cell).slice(0, 200);
  warn(`“${found.slice(0, 40)}”`);
  return found;
}

function readQuantity([number, unit, third, ...more]: readonly unknown[]): Content | undefined {
  if (typeof number !== 'number' || !Number.isFinite(number) || typeof unit !== 'string' || more.length > 0)
    return undefined;
  if (third === undefined) return { number, unit };
  if (third === true) return { number, unit, follows: true };
  return typeof third === 'string' ? { number, unit, shownIn: third } : undefined;
}

function notOne(): WorkbookFileRead {
  return {
    ok: false,
    why: `This is not a Dibble workbook: a workbook file says "format": "${FORMAT}" at its start. Choose another file.`,
  };
}

function readDocument(
  text: string,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly why: string } {
  if (text.trim() === '') return { ok: false, why: 'The file is empty: take another copy of it.' };
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    const fault = jsonFault(text);
    if (fault === undefined || !text.trimStart().startsWith('{')) {
      return { ok: false, why: 'This is not a Dibble workbook: a workbook file begins with {. Choose another file.' };
    }
    if (fault.cutShort) {
      return {
        ok: false,
        why: `The file ends in the middle, at line ${fault.line}: it was cut short. Take a whole copy of it.`,
      };
    }
    return {
      ok: false,
      why: `The file is damaged at line ${fault.line}, where “${fault.found}” stands: mend that line, or take a whole copy of the file.`,
    };
  }
}
