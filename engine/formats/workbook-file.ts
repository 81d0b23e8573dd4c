// The workbook file: one JSON document that names its template and holds what is a person's own. Writing what was read gives
// the same bytes again. Reading never throws: it gives the document with a sentence for every part that is not as it should
// be, with its line, which is kept aside or left out, or one sentence that says why nothing can be read. Nothing is left out
// without a word, fields that this version doesn't know included. Files of version 1 are turned into today's (version-1.ts).

import { type Content, isQuantity } from '../document/content.ts';
import type { DocumentData, RowData } from '../document/data.ts';
import { type ById, entry } from '../schema/records.ts';
import { isFields, type JsonSchema, Misfit, sparing, WHOLE } from '../schema/shape.ts';
import type { TemplateShelf } from '../schema/template.ts';
import { looksShape } from '../schema/views-shape.ts';
import { civilDayOfIso, isoDate } from '../values/civil.ts';
import { asideCells, MOST_NOTES, Notes, RowsReader } from './file-rows.ts';
import { jsonFault } from './json-fault.ts';
import { hiddenFault, linesOf } from './json-lines.ts';
import { layout } from './layout.ts';
import { branchData } from './transaction-shape.ts';
import {
  type FileCell,
  type FileContent,
  type FileRows,
  ownSchema,
  VERSION_1_TEMPLATE,
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
  const { title, units, currency, today, template, own, removed, ranges, branches } = data;
  const { looks, notes, papers, locale, changed } = data;
  const file: WorkbookFile = {
    title,
    units,
    currency,
    today: isoDate(today),
    template,
    own: ownSchema.read(own, WHOLE),
    rows: mapped(data.rows, fileRows),
    removed,
    aside: mapped(data.aside, (rows) => mapped(rows, (cells) => mapped(cells, fileContent))),
    ...(ranges === undefined ? {} : { ranges }),
    ...(branches === undefined ? {} : { branches: mapped(branches, (branch) => branchData.read(branch, WHOLE)) }),
    ...(looks === undefined ? {} : { looks: looksShape.read(looks, WHOLE) }),
    ...(notes === undefined ? {} : { notes }),
    ...(papers === undefined ? {} : { papers }),
    ...(locale === undefined ? {} : { locale }),
    ...(changed === undefined ? {} : { changed }),
  };
  return `${layout({ format: FORMAT, version: VERSION, ...file })}\n`;
}

function mapped<T, U>(record: ById<T>, change: (value: T, key: string) => U): ById<U> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value, key)]));
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

/** Reads what stands in a file of version 1 beside its format and version. Throws a Misfit where it is not as it should be. */
export type EarlierReader = (value: unknown, templates: TemplateShelf) => WorkbookFileRead;

/** What reads a file of version 1, fetched where a file wants the template of that time: few do, and it is not small. */
export async function earlierReader(wanted: ReturnType<typeof templateWanted>): Promise<EarlierReader | undefined> {
  if (wanted?.name !== VERSION_1_TEMPLATE.name || wanted.version !== VERSION_1_TEMPLATE.version) return undefined;
  return (await import('./version-1.ts')).migrateVersion1;
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

const NOT_FETCHED: WorkbookFileRead = {
  ok: false,
  why: 'It was saved by the first Dibble, and what reads such files could not be fetched: try again.',
};

/** The document in a file's text, or why it can't be read and what to do. One of version 1 needs its reader: see earlierReader. */
export function readWorkbookFile(given: string, templates: TemplateShelf, earlier?: EarlierReader): WorkbookFileRead {
  const text = given.replace(/^\uFEFF/, '');
  const document = readDocument(text);
  if (!document.ok) return document;
  if (!isFields(document.value)) return notOne();
  const { format, version, ...rest } = document.value;
  if (format !== FORMAT) return notOne();
  const hidden = hiddenFault(text);
  if (hidden !== undefined) return { ok: false, why: hidden };
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return { ok: false, why: `Its “version” should be ${VERSION}: mend it, or take a whole copy of the file.` };
  }
  if (version > VERSION) {
    return {
      ok: false,
      why: `It was saved by a newer Dibble (file version ${version}, and this one reads version ${VERSION}): update Dibble, then open it.`,
    };
  }
  const spared: Misfit[] = [];
  try {
    if (version < VERSION) return earlier?.(rest, templates) ?? NOT_FETCHED;
    const file = workbookFile.read(
      rest,
      sparing((misfit) => spared.push(misfit)),
    );
    return fromFile(file, templates, inSentences(text, spared));
  } catch (thrown) {
    if (thrown instanceof Misfit)
      return { ok: false, why: `Line ${linesOf(text, [thrown.way])[0]}: ${thrown.message}` };
    throw thrown;
  }
}

/** The parts that were left out, each with its line and why. */
function inSentences(text: string, spared: readonly Misfit[]): readonly string[] {
  const told = spared.slice(0, MOST_NOTES);
  const lines = linesOf(
    text,
    told.map(({ way }) => way),
  );
  const notes = told.map(({ message }, i) => `Line ${lines[i]}: ${message} It was left out.`);
  return spared.length > told.length ? [...notes, `${spared.length - told.length} more were left out.`] : notes;
}

function fromFile(file: WorkbookFile, templates: TemplateShelf, spared: readonly string[]): WorkbookFileRead {
  if (templates.today(file.template.name) === undefined) {
    const why = `It is made from a template called “${file.template.name}”, which this Dibble doesn't know: update Dibble, then open it.`;
    return { ok: false, why };
  }
  const notes = new Notes();
  const rows = Object.entries(file.rows).map(([sheet, given]): [string, readonly RowData[]] => [
    sheet,
    new RowsReader(sheet, given, notes).read(),
  ]);
  const entered = Object.fromEntries(rows);
  const aside = mapped(file.aside, (byRow, sheet) => {
    const inRows = new Map(entry(entered, sheet)?.map(({ id, cells }) => [id, cells]));
    return mapped(byRow, (cells, row) => asideCells(sheet, cells, inRows.get(row) ?? {}, notes));
  });
  const { title, units, currency, template, own, removed, ranges = {}, branches = {} } = file;
  const { looks, notes: remarks, papers = {}, locale, changed } = file;
  const today = civilDayOfIso(file.today) ?? 0;
  const later = {
    ...(Object.keys(ranges).length === 0 ? {} : { ranges }),
    ...(Object.keys(branches).length === 0 ? {} : { branches }),
    ...(looks === undefined ? {} : { looks }),
    ...(remarks === undefined ? {} : { notes: remarks }),
    ...(Object.keys(papers).length === 0 ? {} : { papers }),
    ...(locale === undefined ? {} : { locale }),
    ...(changed === undefined ? {} : { changed }),
  };
  const known = { title, units, currency, today, template, own, rows: entered, removed, aside };
  const data: DocumentData = { ...known, ...later };
  return { ok: true, data, notes: [...spared, ...notes.told()], leftOut: spared.length > 0 || notes.leftOut };
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
