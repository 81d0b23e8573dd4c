// Opens a document from plain data: the template with its rows, what was changed laid over it. Figures are worked out when they are asked for. Total:
// whatever the data says that has no place goes on the shelf, to be shown and kept.

import { compile, type ProgramSheet } from '../schema/compile.ts';
import { layOver } from '../schema/lay-over.ts';
import { NO_LOOKS } from '../schema/looks.ts';
import { entry } from '../schema/records.ts';
import { isMadeSheet, isOneRow } from '../schema/schema.ts';
import type { Template } from '../schema/template.ts';
import { plainWriting, type Writings } from '../values/writing.ts';
import { CellMap } from './cell-map.ts';
import { placeContent } from './cells.ts';
import { stampsIn } from './changed-data.ts';
import type { Content } from './content.ts';
import { type DocumentData, type RowData, shippedCells } from './data.ts';
import { Document, type RangedCell, storeCell } from './document.ts';
import { ONLY_ROW } from './ids.ts';
import { Papers } from './papers.ts';
import { nameRows } from './refit.ts';
import { byPlace } from './row-places.ts';
import type { RowRecord } from './sheet-rows.ts';
import { Shelf } from './shelf.ts';
import { shippedRows } from './template-rows.ts';
import { cellThing, wholeRowThing } from './things.ts';

/** A row to be opened: where it stands and what it holds. */
export interface OpeningRow {
  readonly record: Omit<RowRecord, 'slot'>;
  readonly cells: ReadonlyMap<string, Content>;
}

/** `writings` says how people write who have this locale, or who leave it to the machine they sit at. */
export function openDocument(data: DocumentData, template: Template, writings: Writings = plainWriting): Document {
  const program = compile(layOver(template, data.own), { units: data.units, currency: data.currency });
  const frame = program.newFrame();
  frame.today = data.today;
  const document = new Document({
    title: data.title,
    template,
    program,
    store: frame,
    rows: new Map(),
    names: new Map(),
    shelf: shelfOf(data),
    notes: notesOf(data),
    papers: Papers.of(data.papers),
    looks: data.looks ?? NO_LOOKS,
    locale: data.locale,
    writing: writings(data.locale),
    stamps: stampsIn(data.changed),
    branches: new Map(Object.entries(data.branches ?? {})),
    ranges: rangesIn(data),
  });
  const opening = program.sheets
    .filter(({ schema }) => !isMadeSheet(schema))
    .map((sheet) => ({ sheet, rows: openingRows(sheet, data, template) }));
  // All rows before any cell, so that links find their rows whatever the order of sheets.
  for (const { sheet, rows } of opening) takeRows(document, sheet, rows);
  for (const { sheet, rows } of opening) fillRows(document, sheet, rows);
  for (const { sheet } of opening) nameRows(document, sheet);
  keepOtherRows(document, data);
  for (const table of program.layout.tables) if (program.sheet(table.id) === undefined) frame.setLive(table, 0, true);
  document.run.begin();
  return document;
}

function rangesIn({ ranges = {} }: DocumentData): ReadonlyMap<string, RangedCell> {
  const found = new Map<string, RangedCell>();
  for (const [sheet, rows] of Object.entries(ranges)) {
    for (const [row, cells] of Object.entries(rows)) {
      for (const [column, range] of Object.entries(cells))
        found.set(cellThing(sheet, row, column), { sheet, row, column, range });
    }
  }
  return found;
}

function shelfOf({ aside }: DocumentData): Shelf {
  const shelf = new Shelf();
  for (const [sheet, rows] of Object.entries(aside)) {
    for (const [row, cells] of Object.entries(rows)) {
      for (const [column, content] of Object.entries(cells)) shelf.put(sheet, row, column, content);
    }
  }
  return shelf;
}

function notesOf({ notes = {} }: DocumentData): CellMap<string> {
  const map = new CellMap<string>();
  for (const [sheet, rows] of Object.entries(notes)) {
    for (const [row, cells] of Object.entries(rows)) {
      for (const [column, note] of Object.entries(cells)) map.put(sheet, row, column, note);
    }
  }
  return map;
}

/** Shipped rows with what was changed of them, and a person's own, in the order of their places. */
export function openingRows(
  { id, schema }: ProgramSheet,
  data: DocumentData,
  template: Template,
): readonly OpeningRow[] {
  const given = new Map((entry(data.rows, id) ?? []).map((row) => [row.id, row]));
  if (isOneRow(schema)) {
    const cells = shippedRows(template, id).get(ONLY_ROW)?.cells ?? new Map<string, Content>();
    const own = Object.entries(given.get(ONLY_ROW)?.cells ?? {});
    return [{ record: recordOf(ONLY_ROW, '', given.get(ONLY_ROW)), cells: new Map([...cells, ...own]) }];
  }
  const removed = new Set(entry(data.removed, id) ?? []);
  const shipped = [...shippedRows(template, id).values()].flatMap((row): OpeningRow[] => {
    const changed = given.get(row.id);
    given.delete(row.id);
    if (removed.has(row.id)) return [];
    const record = recordOf(row.id, changed?.at ?? row.at, changed);
    return [{ record, cells: changed === undefined ? row.cells : shippedCells(row, changed.cells) }];
  });
  const own = [...given.values()].map((row): OpeningRow => {
    return { record: recordOf(row.id, row.at ?? '', row), cells: new Map(Object.entries(row.cells)) };
  });
  return [...shipped, ...own].sort((a, b) => byPlace({ ...a.record, slot: 0 }, { ...b.record, slot: 0 }));
}

function recordOf(id: string, at: string, row: RowData | undefined): Omit<RowRecord, 'slot'> {
  return row?.broughtBack === true ? { id, at, broughtBack: true } : { id, at };
}

function takeRows(document: Document, sheet: ProgramSheet, rows: readonly OpeningRow[]): void {
  document.store.addRows(sheet.table, rows.length);
  const records = document.ownRowsOf(sheet.id);
  for (const [slot, { record }] of rows.entries()) records.put({ ...record, slot });
}

function fillRows(document: Document, sheet: ProgramSheet, rows: readonly OpeningRow[]): void {
  rows.forEach(({ record, cells }, slot) => {
    for (const [columnId, content] of cells) {
      if (content === null) continue;
      const column = sheet.column(columnId);
      const placed =
        column === undefined || column.role === 'made'
          ? undefined
          : placeContent(content, column, document.program, document);
      if (column !== undefined && placed?.ok === true) storeCell(document, column, slot, placed.cell);
      else document.shelf.put(sheet.id, record.id, columnId, content);
    }
    for (const [columnId, content] of document.shelf.cells(sheet.id, record.id)) {
      const column = sheet.column(columnId);
      if (column === undefined || column.role === 'made') continue;
      const placed = placeContent(content, column, document.program, document);
      if (!placed.ok) continue;
      storeCell(document, column, slot, placed.cell);
      document.shelf.put(sheet.id, record.id, columnId, null);
    }
  });
}

/** Rows of sheets that are not there just now, and shipped rows that were taken out, are remembered; so is what a sheet of one row can't hold. */
function keepOtherRows(document: Document, data: DocumentData): void {
  for (const [sheet, rows] of Object.entries(data.rows)) {
    const schema = document.program.schema.sheet(sheet);
    const isOne = schema !== undefined && isOneRow(schema);
    if (schema !== undefined && !isMadeSheet(schema) && !isOne) continue;
    for (const row of rows) {
      if (isOne && row.id === ONLY_ROW) continue;
      document.ownRowsOf(sheet).put({ ...recordOf(row.id, row.at ?? '', row), slot: -1 });
      for (const [column, content] of Object.entries(row.cells)) document.shelf.put(sheet, row.id, column, content);
    }
  }
  for (const [sheet, rows] of Object.entries(data.removed)) {
    for (const id of rows) {
      const removed = document.stamps.of(wholeRowThing(sheet, id), { sheet, row: id });
      document.ownRowsOf(sheet).put({ id, slot: -1, at: '', removed });
    }
  }
}
