// What differs between a workbook and branches of it: the totals that matter side by side, and the cells that read otherwise,
// sheet by sheet. Columns that branches still share are passed over unread, so comparing costs what was changed.

import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isError, type Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';
import type { Book } from './book.ts';
import { dustOf } from './dust.ts';
import { type FigureValue, figureIn, type NamedFigure, numberOf, sayNumber } from './figures.ts';
import { rowId, rows } from './rows.ts';
import { inWords, rowName, scalarAt } from './shown.ts';

export interface ComparedTotal {
  readonly id: string;
  readonly name: string;
  readonly type: ValueType | undefined;
  readonly base: FigureValue;
  /** A branch each. */
  readonly branches: readonly ComparedValue[];
}

export interface ComparedValue extends FigureValue {
  /** Canonical, branch less base; undefined where one of them is no number. */
  readonly difference: number | undefined;
  /** '+120 lb', '' where there is none. */
  readonly differenceShown: string;
}

/** Of what two figures are, a difference below this part is what adding them up leaves. */
const DUST = 1e-12;

/**
 * Totals of two to four branches beside the base's; those that none of the workbooks can give are left out. What the sheet would show
 * as nothing, and the like of it between two figures, is nothing.
 */
export function compareTotals(
  base: Book,
  branches: readonly Book[],
  totals: readonly NamedFigure[],
): readonly ComparedTotal[] {
  return totals.flatMap(({ id, name, figure, of }): ComparedTotal[] => {
    const dust = of === undefined ? 0 : dustOf(base, of);
    const here = lessDust(base, figureIn(base, figure), dust);
    const there = branches.map((branch) =>
      compared(base, here, lessDust(branch, figureIn(branch, figure), dust), dust),
    );
    const all = [here, ...there];
    if (all.every(({ value }) => value === null || isError(value))) return [];
    return [{ id, name, type: all.find(({ type }) => type !== undefined)?.type, base: here, branches: there }];
  });
}

function lessDust(book: Book, figure: FigureValue, dust: number): FigureValue {
  const { value, type } = figure;
  if (typeof value !== 'number' || Math.abs(value) >= dust) return figure;
  return { value: 0, type, shown: sayNumber(book, 0, type) };
}

function compared(book: Book, base: FigureValue, branch: FigureValue, dust: number): ComparedValue {
  const [a, b] = [numberOf(base), numberOf(branch)];
  const difference = a === undefined || b === undefined ? undefined : differenceOf(a, b, dust);
  if (difference === undefined || difference === 0) return { ...branch, difference, differenceShown: '' };
  const kind = branch.type?.kind;
  const size = Math.abs(difference);
  const said =
    kind === 'date'
      ? `${size} ${size === 1 ? 'day' : 'days'}`
      : kind === 'temperature'
        ? `${Number(size.toPrecision(3))} degrees`
        : sayNumber(book, size, branch.type);
  return { ...branch, difference, differenceShown: `${difference > 0 ? '+' : '−'}${said}` };
}

function differenceOf(base: number, branch: number, dust: number): number {
  const least = Math.max(dust, DUST * Math.max(Math.abs(base), Math.abs(branch)));
  return Math.abs(branch - base) < least ? 0 : branch - base;
}

/** One cell that reads otherwise. */
export interface DifferingCell {
  readonly column: string;
  readonly columnName: string;
  /** Typed on either side, not worked out. */
  readonly typed: boolean;
  /** With its unit; '' where the row is not there. */
  readonly base: string;
  readonly branch: string;
}

export interface DifferingRow {
  readonly row: string;
  readonly rowName: string;
  readonly there: 'both' | 'base' | 'branch';
  readonly cells: readonly DifferingCell[];
}

export interface SheetDifference {
  readonly sheet: string;
  readonly sheetName: string;
  readonly rows: readonly DifferingRow[];
}

export interface CompareOptions {
  /** Only what is typed; else what follows from it too. */
  readonly typedOnly?: boolean;
}

/** What a branch holds otherwise than its base, in the branch's order of sheets, rows and columns; rows gone come last. */
export function compareCells(base: Book, branch: Book, options: CompareOptions = {}): readonly SheetDifference[] {
  const sheets = branch.document.program.sheets.map((sheet) => ({
    sheet,
    before: base.document.program.sheet(sheet.id),
  }));
  const gone = base.document.program.sheets.filter(({ id }) => branch.document.program.sheet(id) === undefined);
  return [
    ...sheets.flatMap(({ sheet, before }) => sheetDifference(base, branch, before, sheet, options)),
    ...gone.flatMap((before) => sheetDifference(base, branch, before, undefined, options)),
  ];
}

function sheetDifference(
  base: Book,
  branch: Book,
  before: ProgramSheet | undefined,
  after: ProgramSheet | undefined,
  options: CompareOptions,
): readonly SheetDifference[] {
  const { id, name } = after ?? before ?? { id: '', name: '' };
  const columns = columnsThatMayDiffer(base, branch, before, after);
  if (columns.length === 0) return [];
  const there = new Map(slots(branch, after).map((slot) => [rowId(branch, id, slot), slot]));
  const here = new Map(slots(base, before).map((slot) => [rowId(base, id, slot), slot]));
  const found: DifferingRow[] = [];
  const look = (row: string, was: number | undefined, is: number | undefined): void => {
    const cells = columns.flatMap((pair) => cellDifference(base, branch, pair, was, is, options));
    const isOneSided = was === undefined || is === undefined;
    // A row that follows from others comes and goes with them: that is no act of a person.
    if (cells.length === 0 && (!isOneSided || options.typedOnly === true)) return;
    const called = is === undefined ? rowName(base, id, was ?? 0) : rowName(branch, id, is);
    found.push({
      row,
      rowName: called,
      there: was === undefined ? 'branch' : is === undefined ? 'base' : 'both',
      cells,
    });
  };
  for (const [row, slot] of there) look(row, here.get(row), slot);
  for (const [row, slot] of here) if (!there.has(row)) look(row, slot, undefined);
  return found.length === 0 ? [] : [{ sheet: id, sheetName: name, rows: found }];
}

function slots(book: Book, sheet: ProgramSheet | undefined): readonly number[] {
  return sheet === undefined ? [] : [...rows(book, sheet.id)];
}

interface ColumnPair {
  readonly before: ProgramColumn | undefined;
  readonly after: ProgramColumn | undefined;
}

/** A column whose storage both still share holds the same; so does a whole sheet of such columns. */
function columnsThatMayDiffer(
  base: Book,
  branch: Book,
  before: ProgramSheet | undefined,
  after: ProgramSheet | undefined,
): readonly ColumnPair[] {
  const ids = [...new Set([...(after?.columns ?? []), ...(before?.columns ?? [])].map(({ id }) => id))];
  const rowsShared =
    before !== undefined &&
    after !== undefined &&
    base.document.frame.table(before.table) === branch.document.frame.table(after.table);
  return ids.flatMap((id): ColumnPair[] => {
    const pair = { before: before?.column(id), after: after?.column(id) };
    if (pair.before === undefined || pair.after === undefined) return [pair];
    const shared = base.document.frame.column(pair.before.def) === branch.document.frame.column(pair.after.def);
    const typedShared = base.document.frame.typedIn(pair.before.def) === branch.document.frame.typedIn(pair.after.def);
    return shared && typedShared && rowsShared ? [] : [pair];
  });
}

function cellDifference(
  base: Book,
  branch: Book,
  { before, after }: ColumnPair,
  was: number | undefined,
  is: number | undefined,
  { typedOnly = false }: CompareOptions,
): readonly DifferingCell[] {
  const known = after ?? before;
  if (known === undefined) return [];
  const typed = isTyped(base, before, was) || isTyped(branch, after, is);
  if (typedOnly && !typed) return [];
  const [a, b] = [lasting(base, before, was), lasting(branch, after, is)];
  if (a === b) return [];
  return [
    {
      column: known.id,
      columnName: known.name,
      typed,
      base: said(base, before, was),
      branch: said(branch, after, is),
    },
  ];
}

function isTyped({ document }: Book, column: ProgramColumn | undefined, slot: number | undefined): boolean {
  return column !== undefined && slot !== undefined && column.role !== 'made' && document.isTyped(column, slot);
}

function said(book: Book, column: ProgramColumn | undefined, slot: number | undefined): string {
  return column === undefined || slot === undefined ? '' : inWords(book, column, slot);
}

/** A value that can be held against one of another book: a row by its id, an error by what it says. */
function lasting(
  book: Book,
  column: ProgramColumn | undefined,
  slot: number | undefined,
): Exclude<Scalar, object> | string {
  if (column === undefined || slot === undefined) return null;
  const value = scalarAt(book, column, slot);
  if (isError(value)) return `${value.error} ${value.why}`;
  return column.type?.kind === 'link' && typeof value === 'number' ? rowId(book, column.type.table, value) : value;
}
