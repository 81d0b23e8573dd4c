// Many rows that come or go at once, as an import and its undo are: sheet by sheet and column by column instead of cell by
// cell. Called by changes.ts once the schema is settled, for changes made here; what another person sends goes one by one, since
// any of its cells may have to give way. Leaves a document exactly as the single operations would.

import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isEnteredSheet } from '../schema/schema.ts';
import { placeContent } from './cells.ts';
import { type Content, type ContentRange, isFiniteContent } from './content.ts';
import { type Document, storeCell } from './document.ts';
import { markOf, type RowRecord } from './sheet-rows.ts';
import type { Stamp } from './stamps.ts';
import type { Touched } from './touched.ts';
import type { OperationOf, RowLine } from './transaction.ts';

type InsertRows = OperationOf<'insert rows'>;
type RemoveRows = OperationOf<'remove rows'>;

/** Brings the rows in and gives what takes them out again; undefined, and nothing done, where they must come one by one. */
export function insertRowsAtOnce(
  document: Document,
  operation: InsertRows,
  stamp: Stamp,
  touched: Touched,
): RemoveRows | undefined {
  const sheet = comeAtOnce(document, operation);
  if (sheet === undefined) return undefined;
  const { id } = sheet;
  const { columns, rows } = operation;
  const known = knownRows(document, operation);
  touched.rowsCame(id, rows, insertRows(document, sheet, operation, known));
  const isKnown = ({ row }: RowLine): boolean => known.has(row);
  // Nobody changed the cells of a row that was there before.
  if (known.size > 0)
    document.stamps.noteRows(id, { stamp, cameBack: true, columns: undefined, rows: rows.filter(isKnown) });
  const fresh = known.size > 0 ? rows.filter((line) => !isKnown(line)) : rows;
  document.stamps.noteRows(id, { stamp, columns, rows: fresh });
  return { op: 'remove rows', sheet: id, rows: rows.map(({ row }) => row) };
}

/** Whether the rows can come at once: an entered sheet that is there, none of them there already, no new one with more than cells. */
function comeAtOnce(document: Document, { sheet: sheetId, rows }: InsertRows): ProgramSheet | undefined {
  const sheet = document.program.sheet(sheetId);
  if (sheet === undefined || !isEnteredSheet(sheet.schema)) return undefined;
  const known = document.rowsOf(sheetId);
  const ranged = rowsWithRanges(document, sheetId);
  const seen = new Set<string>();
  for (const { row, notes, ranges } of rows) {
    const record = known.record(row);
    if (record === undefined && (notes ?? ranges) !== undefined) return undefined;
    if (comesUnknown(document, sheetId, row, ranged)) return undefined;
    if (seen.has(row) || (record !== undefined && (record.slot >= 0 || record.removed === undefined))) return undefined;
    seen.add(row);
  }
  return sheet;
}

/** Whether nobody knows a row for which something waits, or knew it when it last came; `ranged`: rows of its sheet with ranges. */
export function comesUnknown(
  document: Document,
  sheet: string,
  row: string,
  ranged: ReadonlySet<string> = rowsWithRanges(document, sheet),
): boolean {
  const record = document.rowsOf(sheet).record(row);
  if (record !== undefined) return record.asUnknown === true;
  const { shelf, notes } = document;
  return shelf.cells(sheet, row).size > 0 || notes.cells(sheet, row).size > 0 || ranged.has(row);
}

/** Rows of a sheet, there or not, of which a cell has a range. */
function rowsWithRanges(document: Document, sheetId: string): ReadonlySet<string> {
  const rows = new Set<string>();
  for (const { sheet, row } of document.ranges()) if (sheet === sheetId) rows.add(row);
  return rows;
}

/** Those of the rows that were there before, whether they are now or not. */
export function knownRows(document: Document, { sheet, rows }: InsertRows): ReadonlySet<string> {
  const records = document.rowsOf(sheet);
  return new Set(rows.flatMap(({ row }) => (records.record(row) === undefined ? [] : [row])));
}

/** Gives whether the rows stand behind all others, in order, as their slots do. */
function insertRows(
  document: Document,
  sheet: ProgramSheet,
  { columns, rows }: InsertRows,
  known: ReadonlySet<string>,
): boolean {
  const { run } = document;
  const { length } = document.store.table(sheet.table);
  const slots = takeSlots(document, sheet, rows.length);
  const records = document.ownRowsOf(sheet.id);
  let last = document.store.table(sheet.table).labels === undefined;
  rows.forEach((line, i) => {
    const { row, at } = line;
    const slot = slots[i] ?? 0;
    last &&= slot === length + i && at > records.lastAt;
    records.put({ id: row, slot, at, ...markOf(line) });
    run.rowChanged(sheet.table, slot);
  });
  const waited = rows.map(({ row, cells }) => document.shelf.take(sheet.id, row, cells));
  // A row comes with what it is given; one that was there before with what it held, which may be the same.
  const isGiven = rows.map(({ row }, at) => waited[at] === undefined || !known.has(row));
  for (const [i, columnId] of columns.entries()) {
    const column = sheet.column(columnId);
    rows.forEach(({ row, cells }, at) => {
      if (isGiven[at] === true) place(document, sheet, column ?? columnId, row, slots[at] ?? 0, cells[i] ?? null);
    });
  }
  waited.forEach((held, at) => {
    const { row = '', cells = [] } = rows[at] ?? {};
    for (const [columnId, content] of held ?? []) {
      if (isGiven[at] === true && (cells[columns.indexOf(columnId)] ?? null) !== null) continue;
      place(document, sheet, sheet.column(columnId) ?? columnId, row, slots[at] ?? 0, content);
    }
  });
  return last;
}

/** Puts a content in a blank cell of a row that has just come, or on the shelf where the column can't hold it. */
function place(
  document: Document,
  sheet: ProgramSheet,
  column: ProgramColumn | string,
  row: string,
  slot: number,
  content: Content,
): void {
  if (content === null || !isFiniteContent(content)) return;
  if (typeof column === 'string') {
    document.shelf.put(sheet.id, row, column, content);
    return;
  }
  const placed = column.role === 'made' ? undefined : placeContent(content, column, document.program, document);
  if (placed?.ok !== true) {
    document.shelf.put(sheet.id, row, column.id, content);
    return;
  }
  storeCell(document, column, slot, placed.cell);
  document.run.cellChanged(column.def, slot);
  if (sheet.schema.key === column.id && typeof content === 'string') document.ownNamesOf(sheet.id).add(content, slot);
}

/** Slots of rows that went, then new ones behind all others. */
function takeSlots(document: Document, { table }: ProgramSheet, count: number): Int32Array {
  const { store: frame } = document;
  const slots = new Int32Array(count);
  const rows = frame.ownTable(table);
  let taken = 0;
  for (; taken < count; taken++) {
    const slot = rows.takeSlot();
    if (slot >= rows.length) break;
    slots[taken] = slot;
  }
  frame.setManyLive(table, slots.subarray(0, taken), true);
  const first = rows.length;
  frame.addRows(table, count - taken);
  for (let i = taken; i < count; i++) slots[i] = first + i - taken;
  return slots;
}

/** Takes the rows out and gives what brings them back; undefined, and nothing done, where they must go one by one. */
export function removeRowsAtOnce(
  document: Document,
  operation: RemoveRows,
  stamp: Stamp,
  touched: Touched,
): InsertRows | undefined {
  const sheet = goAtOnce(document, operation);
  if (sheet === undefined) return undefined;
  const records = document.ownRowsOf(sheet.id);
  const gone = operation.rows.flatMap((row) => records.record(row) ?? []);
  touched.rowsWent(sheet.id, gone);
  const inverse = removeRows(document, sheet, gone, stamp);
  document.stamps.noteRows(sheet.id, { stamp, columns: undefined, rows: inverse.rows });
  return inverse;
}

/** Whether all the rows can go at once: every one of them is there, none named twice. */
function goAtOnce(document: Document, { sheet: sheetId, rows }: RemoveRows): ProgramSheet | undefined {
  const sheet = document.program.sheet(sheetId);
  if (sheet === undefined || !isEnteredSheet(sheet.schema)) return undefined;
  const known = document.rowsOf(sheetId);
  const here = rows.every((row) => known.slotOf(row) !== undefined);
  return here && new Set(rows).size === rows.length ? sheet : undefined;
}

/** Takes the rows out, what they held kept on the shelf; gives what brings them back. */
function removeRows(document: Document, sheet: ProgramSheet, gone: readonly RowRecord[], stamp: Stamp): InsertRows {
  const { run } = document;
  const records = document.ownRowsOf(sheet.id);
  const held = heldBy(document, sheet, gone);
  const columns = [...held.keys()];
  const lists = [...held.values()];
  const lines = gone.map((record, i): RowLine => {
    const cells = lists.map((list) => list[i] ?? null);
    return { row: record.id, at: record.at, cells, ...markOf(record), ...saidOf(document, sheet, record.id) };
  });
  const key = sheet.schema.key === undefined ? undefined : held.get(sheet.schema.key);
  const names = document.ownNamesOf(sheet.id);
  // From the last to the first, so that rows that take their slots again stand in the same order.
  for (let i = gone.length - 1; i >= 0; i--) {
    const { id, slot, at } = gone[i] as RowRecord;
    const name = key?.[i];
    if (typeof name === 'string') names.remove(name, slot);
    records.put({ id, slot: -1, at, removed: stamp });
    run.rowChanged(sheet.table, slot);
  }
  document.store.setManyLive(sheet.table, gone.map(({ slot }) => slot).reverse(), false);
  document.shelf.putLines(sheet.id, columns, lines);
  return { op: 'insert rows', sheet: sheet.id, columns, rows: lines };
}

/** What was said of a row's cells: it stays known while the row is away, and whoever opens the file anew is told it with the row. */
export function saidOf(
  document: Document,
  { id, columns }: ProgramSheet,
  row: string,
): Pick<RowLine, 'notes' | 'ranges'> {
  const notes = document.notes.cells(id, row);
  const ranges = (document.hasRanges ? columns : []).flatMap((column): [string, ContentRange][] => {
    const range = document.rangeOf(id, row, column.id);
    return range === undefined ? [] : [[column.id, range]];
  });
  return {
    ...(notes.size === 0 ? {} : { notes: Object.fromEntries(notes) }),
    ...(ranges.length === 0 ? {} : { ranges: Object.fromEntries(ranges) }),
  };
}

/** What is typed in the rows, by column; columns in which nothing is are left out. */
function heldBy(
  document: Document,
  sheet: ProgramSheet,
  rows: readonly RowRecord[],
): ReadonlyMap<string, readonly Content[]> {
  const { shelf } = document;
  const held = new Map<string, Content[]>();
  for (const column of sheet.columns) {
    if (!document.mayHold(column)) continue;
    const contents = rows.map(({ slot }) => document.typedAt(column, slot));
    if (contents.some((content) => content !== null)) held.set(column.id, contents);
  }
  if (!shelf.has(sheet.id)) return held;
  rows.forEach(({ id }, i) => {
    for (const [column, content] of shelf.cells(sheet.id, id)) {
      const contents = held.get(column) ?? rows.map(() => null);
      held.set(column, contents);
      contents[i] = content;
    }
  });
  return held;
}
