// Sheets of a person's own as a file: declarations with their formulas in kept form, views and colours, without rows. Made of a
// workbook, read into another, where they get ids and names that nothing there has. A file is plain JSON that anyone could have written.

import type { Command } from '../commands/command.ts';
import { type Book, sheetOf } from '../queries/book.ts';
import { keptForm } from '../queries/matching.ts';
import type { ProgramSheet } from '../schema/compile.ts';
import type { RowSource, SheetDeclaration } from '../schema/declaration.ts';
import { called, sheetDeclaration } from '../schema/declaration-shape.ts';
import { asTold } from '../schema/distinct-names.ts';
import { freeName } from '../schema/free-name.ts';
import { type Looks, type SheetLooks, standingRules } from '../schema/looks.ts';
import { entry } from '../schema/records.ts';
import { exactly, fields, list, Misfit, name, optional, record, type Shape, text, WHOLE } from '../schema/shape.ts';
import type { ViewDeclaration } from '../schema/views.ts';
import { looksShape } from '../schema/views-shape.ts';
import { jsonFault } from './json-fault.ts';
import { type Elsewhere, elsewhereOf } from './sheets-elsewhere.ts';

export const SHEETS_FORMAT = 'dibble-sheets';

export interface SheetsFile {
  readonly format: typeof SHEETS_FORMAT;
  readonly version: '1';
  readonly title: string;
  /** What the sheets are for, in a sentence. */
  readonly about: string;
  readonly sheets: readonly SheetDeclaration[];
  /** Views and colours that people gave them. */
  readonly looks?: Looks;
  /** What they read of the workbook they come from that is not in the file. */
  readonly elsewhere?: Elsewhere;
}

const sheetsFile: Shape<SheetsFile> = fields<SheetsFile>({
  format: exactly(SHEETS_FORMAT),
  version: exactly('1'),
  title: name,
  about: text,
  sheets: list(sheetDeclaration, called('sheet')),
  looks: optional(looksShape),
  elsewhere: optional(record(name, (key) => `name of “${key}”`)),
});

/** Own sheets of a workbook as a file's text; sheets that are the template's are left out. */
export function writeSheets(book: Book, sheets: readonly string[], title: string, about: string): string {
  const declared = sheets.flatMap((id) => {
    const sheet = sheetOf(book, id);
    return sheet === undefined || !sheet.schema.own ? [] : [declarationOf(book, sheet)];
  });
  const looks = Object.fromEntries(
    declared.flatMap(({ id }) => {
      const of = entry(book.document.looks, id);
      return of === undefined ? [] : [[id, of]];
    }),
  );
  const elsewhere = elsewhereOf(book, declared);
  const file: SheetsFile = {
    ...{ format: SHEETS_FORMAT, version: '1', title, about, sheets: declared },
    ...(Object.keys(looks).length === 0 ? {} : { looks }),
    ...(Object.keys(elsewhere).length === 0 ? {} : { elsewhere }),
  };
  return `${JSON.stringify(sheetsFile.read(file, WHOLE), undefined, 2)}\n`;
}

/** A sheet as it stands, with what was changed of it since it was added. */
export function declarationOf(
  book: Book,
  { id, name: called, schema, columns, checks }: ProgramSheet,
): SheetDeclaration {
  const kept = (formula: string): string => (formula === '' ? '' : keptForm(book, id, formula));
  return {
    id,
    name: called,
    question: schema.question,
    about: schema.about,
    rows: schema.rows,
    ...(schema.key === undefined ? {} : { key: schema.key }),
    columns: columns
      .filter(({ role }) => role !== 'made')
      .map(({ declaration, name: column, formula }) => ({ ...declaration, name: column, formula: kept(formula) })),
    checks: checks.map(({ check: { id: checkId, name: checkName, level, column, says } }) => {
      return { id: checkId, name: checkName, level, column, says: kept(says) };
    }),
    ...(schema.views.length === 0 ? {} : { views: schema.views }),
    cautions: schema.cautions,
  };
}

export type SheetsRead =
  | { readonly ok: true; readonly file: SheetsFile }
  | { readonly ok: false; readonly why: string };

/** The sheets in a file's text, or a sentence that says why there are none. */
export function readSheets(given: string): SheetsRead {
  let value: unknown;
  try {
    value = JSON.parse(given.replace(/^\uFEFF/, ''));
  } catch {
    const fault = jsonFault(given);
    const where = fault === undefined ? '' : ` at line ${fault.line}`;
    return { ok: false, why: `The file is damaged${where}: take a whole copy of it.` };
  }
  try {
    const file = sheetsFile.read(value, WHOLE);
    return file.sheets.length === 0 ? { ok: false, why: 'The file holds no sheets.' } : { ok: true, file };
  } catch (thrown) {
    if (!(thrown instanceof Misfit)) throw thrown;
    return { ok: false, why: `This is no file of sheets. ${thrown.message}` };
  }
}

/** What brings a file's sheets into a workbook: as they are where nothing there has their ids, else under new ones. */
export function bringSheets(book: Book, file: SheetsFile, newId: () => string): readonly Command[] {
  const { schema } = book.document.program;
  const taken = file.sheets.some(({ id }) => schema.nameOf(id) !== undefined);
  const names = new Set(schema.sheets.map((sheet) => asTold(sheet.name)));
  const { sheets, looks = {} } = taken ? withNewIds(file, newId) : file;
  const put = sheets.map((sheet): Command => {
    const free = freeName(sheet.name, (name) => names.has(asTold(name)));
    names.add(asTold(free));
    return { command: 'put sheet', sheet: { ...sheet, name: free } };
  });
  return [...put, ...sheets.flatMap(({ id }) => lookedAt(id, entry(looks, id)))];
}

/** What gives a sheet its looks; a view that it brought itself and that was put away is put away again. */
function lookedAt(sheet: string, looks: SheetLooks | undefined): readonly Command[] {
  const views = Object.entries(looks?.views ?? {}).map(([id, view]): Command => {
    return view === null ? { command: 'remove view', sheet, view: id } : { command: 'set view', sheet, view };
  });
  return [...views, ...standingRules(looks).map((rule): Command => ({ command: 'set colour', sheet, rule }))];
}

type Renamed = (id: string) => string;

interface NewIds {
  readonly sheet: Renamed;
  readonly column: (sheet: string, id: string) => string;
  readonly inText: Renamed;
}

function newIds(sheets: readonly SheetDeclaration[], newId: () => string): NewIds {
  const ids = new Map<string, string>();
  for (const { id, columns, rows } of sheets) {
    ids.set(id, newId());
    for (const column of [...columns.map((one) => one.id), ...madeIn(rows)]) ids.set(`${id}/${column}`, newId());
  }
  const sheet = (id: string): string => ids.get(id) ?? id;
  const column = (of: string, id: string): string => ids.get(`${of}/${id}`) ?? id;
  const inText = (formula: string): string =>
    formula.replace(/#([A-Za-z0-9_-]+)(?:\/([A-Za-z0-9_-]+))?/g, (_, of: string, id?: string) => {
      return id === undefined ? `#${sheet(of)}` : `#${sheet(of)}/${column(of, id)}`;
    });
  return { sheet, column, inText };
}

function withNewIds({ sheets, looks, ...file }: SheetsFile, newId: () => string): SheetsFile {
  const ids = newIds(sheets, newId);
  const looked = Object.entries(looks ?? {}).map(([id, of]) => [
    ids.sheet(id),
    looksWith(of, (one) => ids.column(id, one)),
  ]);
  return {
    ...file,
    sheets: sheets.map((sheet) => sheetWith(sheet, ids)),
    ...(looks === undefined ? {} : { looks: Object.fromEntries(looked) }),
  };
}

function sheetWith(sheet: SheetDeclaration, { sheet: sheetId, column: columnId, inText }: NewIds): SheetDeclaration {
  const own = (id: string): string => columnId(sheet.id, id);
  const { key, views } = sheet;
  return {
    ...sheet,
    id: sheetId(sheet.id),
    rows: rowsWith(sheet.rows, own, sheetId, columnId, inText),
    ...(key === undefined ? {} : { key: own(key) }),
    columns: sheet.columns.map((column) => ({
      ...column,
      id: own(column.id),
      formula: inText(column.formula),
      ...(column.orElse === undefined ? {} : { orElse: own(column.orElse) }),
      ...(column.range === undefined ? {} : { range: { low: own(column.range.low), high: own(column.range.high) } }),
      type: column.type.type === 'link' ? { ...column.type, sheet: sheetId(column.type.sheet) } : column.type,
    })),
    checks: sheet.checks.map((check) => ({ ...check, column: own(check.column), says: inText(check.says) })),
    ...(views === undefined ? {} : { views: views.map((view) => viewWith(view, own)) }),
  };
}

function looksWith({ views, rules }: SheetLooks, own: Renamed): SheetLooks {
  const viewed = Object.entries(views ?? {}).map(([id, view]) => [id, view === null ? null : viewWith(view, own)]);
  const ruled = Object.entries(rules ?? {}).map(([id, rule]) => [id, { ...rule, column: own(rule.column) }]);
  return {
    ...(views === undefined ? {} : { views: Object.fromEntries(viewed) }),
    ...(rules === undefined ? {} : { rules: Object.fromEntries(ruled) }),
  };
}

function viewWith(view: ViewDeclaration, own: Renamed): ViewDeclaration {
  const { columns, pinned, filters, sort, groupBy, totals } = view;
  return {
    ...view,
    ...(columns === undefined ? {} : { columns: columns.map(own) }),
    ...(pinned === undefined ? {} : { pinned: pinned.map(own) }),
    ...(filters === undefined
      ? {}
      : { filters: filters.map((one) => (one.by === 'cell' ? { ...one, column: own(one.column) } : one)) }),
    ...(sort === undefined ? {} : { sort: sort.map((key) => ({ ...key, column: own(key.column) })) }),
    ...(groupBy === undefined ? {} : { groupBy: own(groupBy) }),
    ...(totals === undefined
      ? {}
      : { totals: Object.fromEntries(Object.entries(totals).map(([column, total]) => [own(column), total])) }),
  };
}

function madeIn(rows: RowSource): readonly string[] {
  switch (rows.from) {
    case 'each':
    case 'span':
      return [rows.as.id];
    case 'pairs':
      return rows.as.map(({ id }) => id);
    case 'events':
      return [rows.as.id, rows.event.id, ...rows.dates.map(({ about }) => about.id)];
    default:
      return [];
  }
}

function rowsWith(
  rows: RowSource,
  own: Renamed,
  sheetId: Renamed,
  columnId: (sheet: string, id: string) => string,
  inText: Renamed,
): RowSource {
  const made = (column: { readonly id: string; readonly name: string }) => ({ ...column, id: own(column.id) });
  switch (rows.from) {
    case 'each':
      return { ...rows, sheet: sheetId(rows.sheet), as: made(rows.as), where: inText(rows.where) };
    case 'span':
      return { ...rows, as: made(rows.as), first: inText(rows.first), last: inText(rows.last) };
    case 'pairs':
      return {
        ...rows,
        sheets: [sheetId(rows.sheets[0]), sheetId(rows.sheets[1])],
        as: [made(rows.as[0]), made(rows.as[1])],
        where: inText(rows.where),
      };
    case 'events':
      return {
        ...rows,
        as: made(rows.as),
        event: made(rows.event),
        dates: rows.dates.map((date) => ({
          ...date,
          sheet: sheetId(date.sheet),
          column: columnId(date.sheet, date.column),
          about: made(date.about),
        })),
      };
    default:
      return rows;
  }
}
