// The rows of a sheet as a view arranges them: those that its filters leave, in its order, under the groups it makes; and the
// values that a column holds, to choose from.

import type { ProgramColumn } from '../schema/compile.ts';
import type { Filter, ViewDeclaration } from '../schema/views.ts';
import { isError } from '../values/error.ts';
import { type Book, columnOf } from './book.ts';
import { meeting, valueKey } from './conditions.ts';
import type { FindingLevel } from './finding.ts';
import { rowId, rows } from './rows.ts';
import { scalarAt, shownCell } from './shown.ts';

export interface RowGroup {
  /** What its rows share, by its key (conditions.ts); '' where they have nothing there. */
  readonly key: string;
  /** As the cells read; '' for nothing. */
  readonly name: string;
  readonly rows: readonly number[];
}

export interface Arrangement {
  /** Slots in order, groups one after another. */
  readonly rows: readonly number[];
  /** undefined where the view makes no groups. */
  readonly groups: readonly RowGroup[] | undefined;
  /** How many rows the filters keep back. */
  readonly left: number;
}

/** Whether something of a level was found in a row: what Findings say. */
export type FoundIn = (row: string, level: FindingLevel | 'any') => boolean;

export function arrange(book: Book, sheet: string, view: ViewDeclaration, found: FoundIn): Arrangement {
  const all = rows(book, sheet);
  const tests = (view.filters ?? []).map((filter) => filterTest(book, sheet, filter, found));
  const kept = [...all].filter((row) => tests.every((test) => test(row)));
  const left = all.length - kept.length;
  const sorted = sortedRows(book, sheet, view, kept);
  if (view.groupBy === undefined || columnOf(book, sheet, view.groupBy) === undefined) {
    return { rows: sorted, groups: undefined, left };
  }
  const descending = view.sort?.some((key) => key.column === view.groupBy && key.descending === true) === true;
  const groups = groupedRows(book, sheet, view.groupBy, sorted, descending);
  return { rows: groups.flatMap((group) => group.rows), groups, left };
}

function filterTest(book: Book, sheet: string, filter: Filter, found: FoundIn): (row: number) => boolean {
  if (filter.by === 'finding') return (row) => found(rowId(book, sheet, row), filter.level);
  // A column that went keeps nothing back.
  if (columnOf(book, sheet, filter.column) === undefined) return () => true;
  return meeting(book, sheet, filter.column, filter.when);
}

type Compare = (a: number, b: number) => number;

function sortedRows(book: Book, sheet: string, { sort = [] }: ViewDeclaration, kept: number[]): readonly number[] {
  const compares = sort.flatMap(({ column, descending }): Compare[] => {
    const found = columnOf(book, sheet, column);
    return found === undefined ? [] : [comparing(book, found, descending === true, kept)];
  });
  if (compares.length === 0) return kept;
  const first = (a: number, b: number): number => {
    for (const compare of compares) {
      const order = compare(a, b);
      if (order !== 0) return order;
    }
    return 0;
  };
  return kept.toSorted(first);
}

/** Numbers and days by size, the rest as they read; blanks and errors last, whichever way. */
function comparing(book: Book, column: ProgramColumn, descending: boolean, slots: readonly number[]): Compare {
  const bySize = column.type?.kind !== 'link';
  const { writing } = book.document;
  const collator = new Intl.Collator(writing?.locale ?? 'en', { numeric: true, sensitivity: 'base' });
  const values = new Map(
    slots.map((row): [number, number | string | undefined] => {
      const value = scalarAt(book, column, row);
      if (value === null || isError(value)) return [row, undefined];
      return [row, typeof value === 'number' && bySize ? value : shownCell(book, column, row).figure];
    }),
  );
  const way = descending ? -1 : 1;
  return (rowA, rowB) => {
    const a = values.get(rowA);
    const b = values.get(rowB);
    if (a === undefined || b === undefined) return Number(a === undefined) - Number(b === undefined);
    if (typeof a === 'number' && typeof b === 'number') return (a - b) * way;
    return collator.compare(String(a), String(b)) * way;
  };
}

/** Groups in the order of their values, that of nothing last whichever way; within each the rows keep their order. */
function groupedRows(
  book: Book,
  sheet: string,
  column: string,
  sorted: readonly number[],
  descending = false,
): readonly RowGroup[] {
  const found = columnOf(book, sheet, column);
  const groups = new Map<string, number[]>();
  for (const row of sorted) {
    const key = valueKey(book, sheet, row, column);
    const rowsOfKey = groups.get(key);
    if (rowsOfKey === undefined) groups.set(key, [row]);
    else rowsOfKey.push(row);
  }
  const list = [...groups].map(([key, rowsOfKey]): RowGroup => {
    const [first = -1] = rowsOfKey;
    return { key, name: found === undefined ? '' : shownCell(book, found, first).figure, rows: rowsOfKey };
  });
  if (found === undefined) return list;
  const firsts = list.map(({ rows: [first = -1] }) => first);
  const compare = comparing(book, found, descending, firsts);
  return list.toSorted((a, b) => compare(a.rows[0] ?? -1, b.rows[0] ?? -1));
}

export interface HeldValue {
  readonly key: string;
  /** As a cell reads; '' for nothing. */
  readonly name: string;
  readonly count: number;
}

/** Every value that a column holds, in order, with how often: what a filter lets a person choose from. */
export function valuesHeld(book: Book, sheet: string, column: string): readonly HeldValue[] {
  return groupedRows(book, sheet, column, [...rows(book, sheet)]).map(({ key, name, rows: held }) => ({
    key,
    name,
    count: held.length,
  }));
}
