// A document as plain data: what a person typed and changed, by id, and the name and version of the template it lies over.
// Files and working copies hold it. Opening it gives the same document to the last bit, and so does writing that one again.

import type { UnitSystem } from '../schema/declaration.ts';
import type { Looks } from '../schema/looks.ts';
import { inOrder, type OwnSchema } from '../schema/own.ts';
import type { ById } from '../schema/records.ts';
import { isMadeSheet, isOneRow } from '../schema/schema.ts';
import type { MappedCell } from './cell-map.ts';
import { type ChangedData, changedData } from './changed-data.ts';
import type { Content, ContentRange } from './content.ts';
import type { Document } from './document.ts';
import { ONLY_ROW } from './ids.ts';
import type { PaperData } from './papers.ts';
import { byPlace } from './row-places.ts';
import type { RowRecord } from './sheet-rows.ts';
import { isOwnContent, type ShippedRow, shippedRows } from './template-rows.ts';
import type { BranchData } from './transaction.ts';

export interface RowData {
  readonly id: string;
  /** Its place; absent for a row that stands where its template put it, and for the one row of a one-row sheet. */
  readonly at?: string;
  /** By column; null: what the template ships here was taken out. */
  readonly cells: ById<Content>;
  readonly broughtBack?: true;
}

export interface DocumentData {
  readonly title: string;
  readonly units: UnitSystem;
  /** ISO 4217 code. */
  readonly currency: string;
  /** Civil day that TODAY() gives. */
  readonly today: number;
  readonly template: { readonly name: string; readonly version: number };
  readonly own: OwnSchema;
  /** A person's own rows, and of shipped rows what was changed, by sheet. */
  readonly rows: ById<readonly RowData[]>;
  /** Shipped rows that were taken out, by sheet. */
  readonly removed: ById<readonly string[]>;
  /** What is typed on rows that follow from other data, and what has no place just now: by sheet, row and column. */
  readonly aside: ById<ById<ById<Content>>>;
  /** How far what is typed may be off, by sheet, row and column; absent where nothing is a range. */
  readonly ranges?: ById<ById<ById<ContentRange>>>;
  /** Other ways that the plan could go, by id; absent where there are none. */
  readonly branches?: ById<BranchData>;
  /** Views of one's own, views changed, colours; absent where there are none. */
  readonly looks?: Looks;
  /** Notes on cells, by sheet, row and column. */
  readonly notes?: ById<ById<ById<string>>>;
  /** Scratch papers, by id; absent where there are none. */
  readonly papers?: ById<PaperData>;
  /** The locale in which figures and days are read and shown; absent: that of the machine. */
  readonly locale?: string;
  /** Who changed what last, and when, where it was asked for; absent where nobody changed anything. */
  readonly changed?: ChangedData;
}

/** `alongside` 'changes': who changed what last goes along, for a copy that others' changes reach once it is opened again. */
export function dataOf(document: Document, alongside?: 'changes'): DocumentData {
  const { program, template, title, frame } = document;
  const rows: [string, readonly RowData[]][] = [];
  const removed: [string, readonly string[]][] = [];
  for (const [sheet] of document.sheetsWithRows()) {
    const given = rowsOf(document, sheet);
    if (given.length > 0) rows.push([sheet, given]);
    const gone = [...shippedRows(template, sheet).keys()].filter((id) => isGone(document.rowsOf(sheet).record(id)));
    if (gone.length > 0) removed.push([sheet, gone]);
  }
  return {
    title,
    units: program.units,
    currency: program.currency,
    today: frame.today,
    template: { name: template.name, version: template.version },
    own: inOrder(program.schema.own),
    rows: sorted(rows),
    removed: sorted(removed),
    aside: asideOf(document),
    ...rangesOf(document),
    ...(document.branches.size === 0 ? {} : { branches: sorted([...document.branches]) }),
    ...laterParts(document),
    ...(alongside === 'changes' ? changedOf(document) : {}),
  };
}

/** Parts that most workbooks have none of. */
function laterParts(document: Document): Pick<DocumentData, 'looks' | 'notes' | 'papers' | 'locale'> {
  const { looks, locale } = document;
  const notes = [...document.notes.all()].filter(({ sheet, row }) => !isRemovedOwnRow(document, sheet, row));
  return {
    ...(Object.keys(looks).length === 0 ? {} : { looks }),
    ...(notes.length === 0 ? {} : { notes: byCell(notes) }),
    ...papersOf(document),
    ...(locale === undefined ? {} : { locale }),
  };
}

function papersOf({ papers }: Document): Pick<DocumentData, 'papers'> {
  if (papers.size === 0) return {};
  const kept = [...papers.all()].map(([id, { name, cells }]): readonly [string, PaperData] => {
    return [id, { ...(name === null ? {} : { name }), cells: sorted([...cells]) }];
  });
  return { papers: sorted(kept) };
}

function isGone(record: RowRecord | undefined): boolean {
  return record === undefined || (record.slot < 0 && record.removed !== undefined);
}

function rowsOf(document: Document, sheetId: string): readonly RowData[] {
  const sheet = document.program.sheet(sheetId);
  if (sheet !== undefined && isMadeSheet(sheet.schema)) return [];
  const shipped = shippedRows(document.template, sheetId);
  const columns = sheet?.columns.filter(({ role }) => role !== 'made') ?? [];
  const holding = columns.filter((column) => document.mayHold(column));
  const records = [...document.rowsOf(sheetId).records()].filter(
    ({ slot, removed }) => slot >= 0 || removed === undefined,
  );
  return records.sort(byPlace).flatMap((record): RowData[] => {
    const own = shipped.get(record.id);
    const cells: [string, Content][] = [];
    // Of a row that the template ships what is blank is told as well.
    for (const column of own === undefined ? holding : columns) {
      if (record.slot < 0) break;
      const content = document.typedAt(column, record.slot);
      const came = own?.cells.get(column.id) ?? null;
      if (isOwnContent(document, sheetId, record.id, column.id, content, came)) {
        cells.push([column.id, content]);
      }
    }
    const isOnly = sheet !== undefined && isOneRow(sheet.schema) && record.id === ONLY_ROW;
    const at = isOnly || own?.at === record.at ? undefined : record.at;
    const isChanged = cells.length > 0 || (at !== undefined && at !== '') || record.broughtBack === true;
    // What is always there need not be told.
    const isGiven = own !== undefined || record.id === ONLY_ROW;
    return isGiven && !isChanged ? [] : [rowData(record, at, cells)];
  });
}

function rowData({ id, broughtBack }: RowRecord, at: string | undefined, cells: [string, Content][]): RowData {
  return {
    id,
    ...(at === undefined ? {} : { at }),
    cells: Object.fromEntries(cells),
    ...(broughtBack === undefined ? {} : { broughtBack }),
  };
}

function asideOf(document: Document): ById<ById<ById<Content>>> {
  const { shelf } = document;
  return sorted(
    shelf.sheets().flatMap((sheet): [string, ById<ById<Content>>][] => {
      const rows = shelf.rows(sheet).filter((row) => !isRemovedOwnRow(document, sheet, row));
      const cells = rows.map((row) => [row, sorted([...shelf.cells(sheet, row)])] as const);
      return cells.length === 0 ? [] : [[sheet, sorted(cells)]];
    }),
  );
}

function rangesOf(document: Document): Pick<DocumentData, 'ranges'> {
  const kept = [...document.ranges()].filter(({ sheet, row }) => !isRemovedOwnRow(document, sheet, row));
  if (kept.length === 0) return {};
  return { ranges: byCell(kept.map(({ sheet, row, column, range }) => ({ sheet, row, column, content: range }))) };
}

/** Of a row that is forgotten nothing is told. */
function changedOf(document: Document): Pick<DocumentData, 'changed'> {
  const { stamps } = document;
  if (stamps.newest === Number.NEGATIVE_INFINITY) return {};
  const isKnown = (sheet: string, row: string): boolean => !isRemovedOwnRow(document, sheet, row);
  return { changed: changedData(stamps, isKnown) };
}

/** What stands in cells, by sheet, row and column as files have it; of one cell told twice the later. */
export function byCell<T>(cells: Iterable<MappedCell<T>>): ById<ById<ById<T>>> {
  const sheets = new Map<string, Map<string, [string, T][]>>();
  for (const { sheet, row, column, content } of cells) {
    const rows = sheets.get(sheet) ?? new Map<string, [string, T][]>();
    sheets.set(sheet, rows);
    rows.set(row, [...(rows.get(row) ?? []), [column, content]]);
  }
  return sorted(
    [...sheets].map(([sheet, rows]) => [sheet, sorted([...rows].map(([row, cells]) => [row, sorted(cells)]))]),
  );
}

/** A person's own row that was taken out: the history knows what it held. */
export function isRemovedOwnRow(document: Document, sheet: string, row: string): boolean {
  const record = document.rowsOf(sheet).record(row);
  if (record?.removed === undefined || record.slot >= 0 || record.asUnknown === true) return false;
  return !shippedRows(document.template, sheet).has(row);
}

/** Entries in the order of their ids, so that equal documents are written alike. */
function sorted<T>(entries: readonly (readonly [string, T])[]): ById<T> {
  return Object.fromEntries([...entries].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** What a shipped row holds when a file changed some of its cells. */
export function shippedCells(row: ShippedRow, changed: ById<Content>): ReadonlyMap<string, Content> {
  return new Map([...row.cells, ...Object.entries(changed)]);
}
