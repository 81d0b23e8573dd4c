// The rows that a template ships: what they hold as content, and what becomes of them in a workbook when the template
// changes. A cell that a person changed stays theirs; one they left as it came follows the template. A row that is shipped no
// more goes where nobody touched it.

import { compile } from '../schema/compile.ts';
import { layOver } from '../schema/lay-over.ts';
import { NOTHING_OWN } from '../schema/own.ts';
import type { Template } from '../schema/template.ts';
import { namedInBranches, rowOf } from './branch-changes.ts';
import { type Content, sameContent } from './content.ts';
import type { Document } from './document.ts';
import { readEntryAs } from './entries.ts';
import { positionsBetween } from './positions.ts';
import type { RowRecord } from './sheet-rows.ts';
import { BEFORE_ALL, isLater } from './stamps.ts';
import { rowPlaceThing } from './things.ts';
import type { Operation } from './transaction.ts';

export interface ShippedRow {
  readonly id: string;
  readonly at: string;
  readonly cells: ReadonlyMap<string, Content>;
}

/** The rows of a sheet by id, in their order. */
export type ShippedRows = ReadonlyMap<string, ShippedRow>;

const shipped = new WeakMap<Template, ReadonlyMap<string, ShippedRows>>();
const NO_ROWS: ShippedRows = new Map();

/** The rows that a template ships for a sheet. */
export function shippedRows(template: Template, sheet: string): ShippedRows {
  const known = shipped.get(template) ?? readShipped(template);
  shipped.set(template, known);
  return known.get(sheet) ?? NO_ROWS;
}

/** Entries of templates name their units wherever two systems differ, so any system reads them alike. */
function readShipped(template: Template): ReadonlyMap<string, ShippedRows> {
  const program = compile(layOver(template, NOTHING_OWN), { units: 'us', currency: 'USD' });
  const context = { vocabulary: program.vocabulary, year: 2000 };
  const keys = new Map<string, ReadonlyMap<string, string>>();
  for (const sheet of program.sheets) {
    const { key } = sheet.schema;
    const rows = template.rows[sheet.id] ?? [];
    if (key !== undefined)
      keys.set(sheet.id, new Map(rows.map(({ id, cells }) => [String(cells[key]).toLowerCase(), id])));
  }
  return new Map(
    Object.entries(template.rows).map(([sheetId, rows]): [string, ShippedRows] => {
      const sheet = program.sheet(sheetId);
      const places = positionsBetween('', undefined, rows.length);
      const read = rows.map(({ id, cells }, i): [string, ShippedRow] => {
        const contents = Object.entries(cells).flatMap(([columnId, entry]): [string, Content][] => {
          const column = sheet?.column(columnId);
          const content =
            column === undefined
              ? undefined
              : readEntryAs(entry, column, program, context, (of, name) => keys.get(of)?.get(name.toLowerCase()));
          if (content?.ok !== true) {
            throw new Error(`The template ${template.name} holds ${String(entry)} in ${sheetId}/${id}/${columnId}.`);
          }
          return content.content === null ? [] : [[columnId, content.content]];
        });
        return [id, { id, at: places[i] ?? '', cells: new Map(contents) }];
      });
      return [sheetId, new Map(read)];
    }),
  );
}

/** What makes a workbook's shipped rows those of another version, but for what the person changed. */
export function moveTemplateRows(document: Document, from: Template, to: Template): readonly Operation[] {
  const sheets = new Set([...Object.keys(from.rows), ...Object.keys(to.rows)]);
  const named = namedInBranches(document.branches);
  return [...sheets].flatMap((sheet) =>
    moveSheetRows(document, sheet, shippedRows(from, sheet), shippedRows(to, sheet), named),
  );
}

function moveSheetRows(
  document: Document,
  sheet: string,
  from: ShippedRows,
  to: ShippedRows,
  named: ReadonlySet<string>,
): readonly Operation[] {
  const operations: Operation[] = [];
  for (const [row, { at, cells }] of to) {
    const before = from.get(row);
    const record = recordOf(document, sheet, row, before);
    if (record === undefined)
      operations.push({ op: 'insert row', sheet, row, at: movedTo(document, sheet, row) ?? at });
    else if (before !== undefined && record.at === before.at && before.at !== at) {
      operations.push({ op: 'move row', sheet, row, at });
    }
    for (const column of new Set([...cells.keys(), ...(before?.cells.keys() ?? [])])) {
      const was = before?.cells.get(column) ?? null;
      const becomes = cells.get(column) ?? null;
      const content = document.contentOf(sheet, row, column);
      const isOwn = record !== undefined && isOwnContent(document, sheet, row, column, content, was);
      if (!isOwn && !sameContent(was, becomes)) operations.push({ op: 'cell', sheet, row, column, content: becomes });
    }
  }
  for (const [row, { cells }] of from) {
    const isNamed = named.has(row) || named.has(rowOf(sheet, row));
    if (!to.has(row) && !isNamed && isUntouched(document, sheet, row, cells))
      operations.push({ op: 'remove row', sheet, row });
  }
  return operations;
}

/**
 * What is known of a row. One that came with the version to come and went when that was taken back is as if it had never been; one
 * that somebody took out stays out.
 */
function recordOf(
  document: Document,
  sheet: string,
  row: string,
  before: ShippedRow | undefined,
): RowRecord | undefined {
  const record = document.rowsOf(sheet).record(row);
  if (before !== undefined || record?.removed === undefined || record.slot >= 0) return record;
  return record.unshipped !== true && isLater(record.removed, BEFORE_ALL) ? record : undefined;
}

/** The place that somebody moved a row to, before or since it went; undefined where nobody did. */
function movedTo(document: Document, sheet: string, row: string): string | undefined {
  const moved = document.stamps.of(rowPlaceThing(sheet, row), { sheet, row });
  return isLater(moved, BEFORE_ALL) ? document.rowsOf(sheet).record(row)?.at : undefined;
}

/** Whether what a cell holds is a person's own: not what it came with, or that with a range around it. */
export function isOwnContent(
  document: Document,
  sheet: string,
  row: string,
  column: string,
  content: Content,
  came: Content,
): boolean {
  return !sameContent(content, came) || (content !== null && document.rangeOf(sheet, row, column) !== undefined);
}

/** A row that holds just what it came with, with no note on it, and that nothing typed names. */
function isUntouched(document: Document, sheet: string, row: string, cells: ReadonlyMap<string, Content>): boolean {
  const slot = document.slotOf(sheet, row);
  const columns = document.program.sheet(sheet)?.columns ?? [];
  if (slot === undefined || document.notes.cells(sheet, row).size > 0) return false;
  const known = new Set([...columns.flatMap(({ id, role }) => (role === 'made' ? [] : [id])), ...cells.keys()]);
  const isOwn = (id: string): boolean =>
    isOwnContent(document, sheet, row, id, document.contentOf(sheet, row, id), cells.get(id) ?? null);
  return ![...known].some(isOwn) && firstLinkTo(document, sheet, slot) === undefined;
}

/** A typed cell that names a row, by sheet, slot and column; undefined where none does. */
export function firstLinkTo(
  document: Document,
  sheet: string,
  slot: number,
): { readonly sheet: string; readonly slot: number; readonly column: string } | undefined {
  for (const other of document.program.sheets) {
    for (const column of other.columns) {
      if (column.type?.kind !== 'link' || column.type.table !== sheet || column.role === 'made') continue;
      const { values, states } = document.frame.column(column.def);
      for (const at of document.frame.rows(other.table)) {
        if (values[at] === slot && states[at] === 0 && document.isTyped(column, at)) {
          return { sheet: other.id, slot: at, column: column.id };
        }
      }
    }
  }
  return undefined;
}
