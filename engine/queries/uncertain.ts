// Which figures of a workbook are not known for sure: those typed as ranges, and those of the library whose lowest and highest
// stand in columns beside them ('yield', 'yield-low', 'yield-high'), of rows that the plan uses.

import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isEnteredSheet, isOneRow } from '../schema/schema.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import { comesInWholes } from './inputs.ts';
import { rangeAt, type Uncertain } from './ranges.ts';
import { rows } from './rows.ts';
import { rowName, scalarAt } from './shown.ts';

/** A cell whose value is drawn between its lowest and highest. */
export interface UncertainInput extends Uncertain {
  /** The same for as long as the cell is there, whatever else changes: its stream of chance goes by it. */
  readonly id: string;
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  /** 'Varieties / Amber / Germination'. */
  readonly name: string;
  /** Whole days, or a plain count. */
  readonly whole: boolean;
}

/** Typed ranges of every sheet, and library figures of the rows to which the rows of the sheets named lead by links. */
export function uncertainInputs(book: Book, plan: readonly string[]): readonly UncertainInput[] {
  const used = usedRows(book, plan);
  const found = new Map<string, UncertainInput>();
  for (const sheet of book.document.program.sheets) {
    if (!isEnteredSheet(sheet.schema) && !isOneRow(sheet.schema)) continue;
    for (const column of sheet.columns) {
      const ends = endColumns(sheet, column);
      const libraryRows = ends === undefined ? [] : [...(used.get(sheet.id) ?? [])];
      for (const slot of libraryRows) add(book, sheet, column, slot, endsAt(book, column, ends, slot), found);
    }
  }
  for (const { sheet: sheetId, row, column: columnId } of book.document.ranges()) {
    const [sheet, column] = [sheetOf(book, sheetId), columnOf(book, sheetId, columnId)];
    const slot = book.document.slotOf(sheetId, row);
    if (sheet === undefined || column === undefined || slot === undefined) continue;
    add(book, sheet, column, slot, rangeAt(book, column, slot), found);
  }
  return [...found.values()];
}

function add(
  book: Book,
  sheet: ProgramSheet,
  column: ProgramColumn,
  slot: number,
  range: Uncertain | undefined,
  found: Map<string, UncertainInput>,
): void {
  const row = book.document.rowIdOf(sheet.id, slot);
  if (range === undefined || row === undefined || !(range.low < range.high)) return;
  const id = `${sheet.id}/${row}/${column.id}`;
  const name = [...new Set([sheet.name, rowName(book, sheet.id, slot)]), column.name].join(' / ');
  found.set(id, { id, sheet: sheet.id, row, column: column.id, name, whole: comesInWholes(column), ...range });
}

/** The columns in which the lowest and highest of a figure stand. */
function endColumns(sheet: ProgramSheet, { id, role, type }: ProgramColumn) {
  if (role !== 'entered' && role !== 'default') return undefined;
  const [low, high] = [sheet.column(`${id}-low`), sheet.column(`${id}-high`)];
  const isFigure = type?.kind === 'number' || type?.kind === 'date';
  if (!isFigure || low?.type?.kind !== type.kind || high?.type?.kind !== type.kind) return undefined;
  return { low, high };
}

function endsAt(
  book: Book,
  column: ProgramColumn,
  ends: { readonly low: ProgramColumn; readonly high: ProgramColumn } | undefined,
  slot: number,
): Uncertain | undefined {
  if (ends === undefined) return undefined;
  const [low, likely, high] = [ends.low, column, ends.high].map((one) => scalarAt(book, one, slot));
  if (typeof low !== 'number' || typeof likely !== 'number' || typeof high !== 'number') return undefined;
  return low <= likely && likely <= high ? { low, likely, high } : undefined;
}

/** Rows that the rows of some sheets lead to by links, by sheet. */
function usedRows(book: Book, plan: readonly string[]): ReadonlyMap<string, ReadonlySet<number>> {
  const used = new Map<string, Set<number>>();
  const waiting: [string, number][] = plan.flatMap((sheet) =>
    Array.from(rows(book, sheet), (slot): [string, number] => [sheet, slot]),
  );
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [sheetId, slot] = next;
    const known = used.get(sheetId) ?? new Set<number>();
    used.set(sheetId, known);
    if (known.has(slot)) continue;
    known.add(slot);
    for (const column of sheetOf(book, sheetId)?.columns ?? []) {
      const to = column.type?.kind === 'link' ? scalarAt(book, column, slot) : null;
      if (column.type?.kind === 'link' && typeof to === 'number') waiting.push([column.type.table, to]);
    }
  }
  return used;
}
