// Makes a workbook what it was at another time. The data says what it is to hold; what differs now is changed by operations,
// so that the step is taken back like any other and the state in between isn't lost.

import type { Content, ContentRange } from '../document/content.ts';
import { sameContent } from '../document/content.ts';
import { type DocumentData, isRemovedOwnRow } from '../document/data.ts';
import { ONLY_ROW } from '../document/ids.ts';
import { openingRows } from '../document/open.ts';
import { schemaDifferences } from '../document/schema-differences.ts';
import { templateOf } from '../document/schema-operations.ts';
import type { RowRecord } from '../document/sheet-rows.ts';
import { entry } from '../schema/records.ts';
import { isMadeSheet, isOneRow } from '../schema/schema.ts';
import type { CommandOf } from './command.ts';
import type { Draft } from './draft.ts';
import type { Refused } from './refusal.ts';
import { restoreLooks } from './restore-looks.ts';
import { restorePapers } from './restore-papers.ts';

/** The command that makes a workbook what it was when this was its data; a workbook of another kind or currency refuses it. */
export function restoring(data: DocumentData): CommandOf<'restore'> {
  return { command: 'restore', data, hand: restore };
}

function restore(data: DocumentData, draft: Draft): Refused {
  const { document, templates } = draft;
  const { name, version } = data.template;
  if (name !== document.template.name) {
    return { why: `It is a workbook of another kind (“${name}”): open it beside this one.` };
  }
  if (data.currency !== document.program.currency) {
    return { why: `It counts money in ${data.currency}, and this workbook in ${document.program.currency}.` };
  }
  if (version !== document.template.version) {
    if (templateOf(name, version, templates) === undefined)
      return { why: `It is made from version ${version} of the sheets, which is not on record here.` };
    draft.perform({ op: 'template', version, rows: 'stay' });
  }
  for (const operation of schemaDifferences(document.program.schema.own, data.own)) draft.perform(operation);
  draft.settle();
  if (data.units !== document.program.units) draft.perform({ op: 'units', units: data.units });
  if (data.title !== document.title) draft.perform({ op: 'title', title: data.title });
  restoreLooks(data, draft);
  const sheets = sheetsIn(data, draft);
  // Rows of all sheets before any cell, so that links find their rows.
  for (const sheet of sheets) restoreRows(sheet, draft);
  for (const sheet of sheets) restoreCells(sheet, draft);
  restoreRanges(data, draft);
  restoreBranches(data, draft);
  restorePapers(data, draft);
  return undefined;
}

/** How far entries may be off. */
function restoreRanges({ ranges = {} }: DocumentData, draft: Draft): void {
  for (const { sheet, row, column, range } of [...draft.document.ranges()]) {
    const wanted = entry(entry(entry(ranges, sheet), row), column);
    if (wanted !== undefined && sameRange(wanted, range)) continue;
    // Of a row that a person took out the history knows it, and its data does not.
    if (wanted === undefined && isRemovedOwnRow(draft.document, sheet, row)) continue;
    draft.perform({ op: 'range', sheet, row, column, range: wanted ?? null });
  }
  for (const [sheet, rows] of Object.entries(ranges)) {
    for (const [row, cells] of Object.entries(rows)) {
      for (const [column, range] of Object.entries(cells)) {
        if (draft.document.rangeOf(sheet, row, column) === undefined)
          draft.perform({ op: 'range', sheet, row, column, range });
      }
    }
  }
}

function sameRange(a: ContentRange, b: ContentRange): boolean {
  return sameContent(a.low, b.low) && sameContent(a.high, b.high);
}

function restoreBranches({ branches = {} }: DocumentData, draft: Draft): void {
  for (const id of new Set([...draft.document.branches.keys(), ...Object.keys(branches)])) {
    const [wanted, now] = [entry(branches, id) ?? null, draft.document.branches.get(id) ?? null];
    if (JSON.stringify(wanted) !== JSON.stringify(now)) draft.perform({ op: 'branch', branch: id, holds: wanted });
  }
}

/** A sheet as it is to be. */
interface Wanted {
  readonly id: string;
  /** Rows in their order; of a sheet whose rows follow from other data none. */
  readonly rows: ReadonlyMap<string, WantedRow>;
  readonly oneRow: boolean;
  /** What has no place in a column, by row. */
  readonly aside: Readonly<Record<string, Readonly<Record<string, Content>>>>;
}

interface WantedRow {
  readonly at: string;
  readonly broughtBack: true | undefined;
  readonly cells: ReadonlyMap<string, Content>;
}

function sheetsIn(data: DocumentData, { document }: Draft): readonly Wanted[] {
  const { program, template } = document;
  const ids = new Set(program.sheets.map(({ id }) => id));
  for (const [id] of document.sheetsWithRows()) ids.add(id);
  for (const id of [...Object.keys(data.rows), ...Object.keys(data.aside)]) ids.add(id);
  return [...ids].map((id): Wanted => {
    const sheet = program.sheet(id);
    const aside = entry(data.aside, id) ?? {};
    if (sheet === undefined) {
      // A sheet that isn't there just now: its rows wait for it.
      const rows = (entry(data.rows, id) ?? []).map(({ id: row, at = '', cells, broughtBack }) => {
        return [row, { at, broughtBack, cells: new Map(Object.entries(cells)) }] as const;
      });
      return { id, rows: new Map(rows), oneRow: false, aside };
    }
    if (isMadeSheet(sheet.schema)) return { id, rows: new Map(), oneRow: false, aside };
    const rows = openingRows(sheet, data, template).map(({ record, cells }) => {
      return [record.id, { at: record.at, broughtBack: record.broughtBack, cells }] as const;
    });
    return { id, rows: new Map(rows), oneRow: isOneRow(sheet.schema), aside };
  });
}

function restoreRows({ id: sheet, rows, oneRow }: Wanted, draft: Draft): void {
  if (oneRow) return;
  for (const record of [...draft.document.rowsOf(sheet).records()]) {
    // A one-row sheet that waits to come back does so with its row.
    if (isThere(record) && record.id !== ONLY_ROW && !rows.has(record.id))
      draft.perform({ op: 'remove row', sheet, row: record.id });
  }
  for (const [row, { at, broughtBack }] of rows) {
    const record = draft.document.rowsOf(sheet).record(row);
    if (record === undefined || !isThere(record)) draft.perform({ op: 'insert row', sheet, row, at, broughtBack });
    else {
      if (record.at !== at) draft.perform({ op: 'move row', sheet, row, at });
      if (record.broughtBack !== broughtBack) draft.perform({ op: 'keep row', sheet, row, broughtBack });
    }
  }
}

/** Of a sheet that isn't there just now, rows have no slot. */
function isThere({ slot, removed }: RowRecord): boolean {
  return slot >= 0 || removed === undefined;
}

function restoreCells(wanted: Wanted, draft: Draft): void {
  const { id: sheet, rows, aside } = wanted;
  const { document } = draft;
  const columns = (document.program.sheet(sheet)?.columns ?? []).filter(({ role }) => role !== 'made');
  const waiting = [...document.shelf.rows(sheet)].filter((row) => !isRemovedOwnRow(document, sheet, row));
  for (const row of new Set([...rows.keys(), ...waiting, ...Object.keys(aside)])) {
    const cells = rows.get(row)?.cells ?? new Map<string, Content>();
    const beside = entry(aside, row) ?? {};
    const typed = rows.has(row) ? columns.map(({ id }) => id) : [];
    const names = [...typed, ...cells.keys(), ...document.shelf.cells(sheet, row).keys(), ...Object.keys(beside)];
    for (const column of new Set(names)) {
      const content = entry(beside, column) ?? cells.get(column) ?? null;
      if (sameContent(document.contentOf(sheet, row, column), content)) continue;
      draft.perform({ op: 'cell', sheet, row, column, content });
    }
  }
}
