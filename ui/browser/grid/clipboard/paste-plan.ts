// What pasting a block would do, cell by cell, before anything is done: where each lands, how it is read, and why it can't be
// taken. Changes nothing; the paste act does what fits at once, and a dialog shows the rest.

import {
  type Book,
  type ColumnView,
  rowName,
  rowNamed,
  type SheetView,
  type TriedEntry,
  tryEntry,
} from '../../../../engine/index.ts';
import type { RowAt } from '../../store/selection.ts';
import type { Block, BlockCell } from './block.ts';
import type { CutCell } from './cut.ts';
import { entryFor, otherwise, type Reading, type Usual, usualOf } from './paste-entry.ts';

/** Where a line of the block lands: in a row that is there, or in a new one, counted from 0. */
export type LandingRow = { readonly row: RowAt } | { readonly fresh: number };

export interface Landing {
  readonly sheet: SheetView;
  /** For each column of the block the one it lands in; undefined: past the last, left out. */
  readonly columns: readonly (ColumnView | undefined)[];
  /** For each line of the block. Lines for which there is no room are left out. */
  readonly rows: readonly LandingRow[];
}

export interface PlannedCell {
  /** Line and column in the block. */
  readonly line: number;
  readonly across: number;
  readonly into: LandingRow;
  readonly column: ColumnView;
  /** As it stood in the block, and as it is typed here. */
  readonly given: string;
  readonly entry: string;
  /**
   * 'fits', 'open' where it could be read in two ways, 'far' for a date far from all others, 'refused', or 'kept' for a column that
   * its formula fills.
   */
  readonly state: 'fits' | 'open' | 'far' | 'refused' | 'kept';
  /** Where it goes from when it is taken. */
  readonly cut?: CutCell | undefined;
  /** How it reads, or why it can't be taken. */
  readonly says: string;
}

export interface PastePlan {
  readonly landing: Landing;
  readonly cells: readonly PlannedCell[];
}

export interface PlanOptions {
  readonly reading: Reading;
  /** Columns with formulas stay with them. */
  readonly keepFormulas: boolean;
  /** Entries that a person mended, by line and column. */
  readonly mended: ReadonlyMap<string, string>;
}

export function cellKey(line: number, across: number): string {
  return `${line} ${across}`;
}

export function planPaste(book: Book, block: Block, landing: Landing, options: PlanOptions): PastePlan {
  const names = new Set<string>();
  const tried = tryOnce(book, landing.sheet);
  const usual = usualOf(book);
  const leaving = rowsRenamed(book, block, landing, options);
  const cells = landing.rows.flatMap((into, line) => {
    const planned = landing.columns.flatMap((column, across): PlannedCell[] => {
      const cell = block.cells[line]?.[across];
      if (cell === undefined || column === undefined) return [];
      const { sheet } = landing;
      return [planCell(book, { line, across, into, column, cell, sheet, tried, usual, leaving }, options, names)];
    });
    return needsName(landing, into, planned) ? planned.map((one) => nameless(one, landing.sheet)) : planned;
  });
  return { landing, cells };
}

interface Placed {
  readonly line: number;
  readonly across: number;
  readonly into: LandingRow;
  readonly column: ColumnView;
  readonly cell: BlockCell;
  readonly sheet: SheetView;
  readonly tried: Trying;
  readonly usual: Usual;
  /** Rows that get another name by the block. */
  readonly leaving: ReadonlySet<number>;
}

type Trying = (column: ColumnView, entry: string, into: LandingRow) => TriedEntry;

/** Tries entries, each only once in a column, where it reads the same in every row: a block says the same again and again. */
function tryOnce(book: Book, sheet: SheetView): Trying {
  const known = new Map<ColumnView, Map<string, TriedEntry>>();
  return (column, entry, into) => {
    const row = 'row' in into ? into.row.slot : undefined;
    // A day is asked about that lies far from others of its row.
    if (column.type?.kind === 'date') return tryEntry(book, sheet.id, column.id, entry, row);
    const before = known.get(column) ?? new Map<string, TriedEntry>();
    known.set(column, before);
    const tried = before.get(entry) ?? tryEntry(book, sheet.id, column.id, entry, row);
    before.set(entry, tried);
    return tried;
  };
}

function planCell(book: Book, placed: Placed, options: PlanOptions, names: Set<string>): PlannedCell {
  const { into, column, cell, sheet } = placed;
  const mended = mendedAt(options, placed.line, placed.across);
  const read =
    mended === undefined ? entryFor(cell, column, options.reading, placed.usual) : { entry: mended, exact: true };
  const { entry } = read;
  if (column.role === 'made') return planned(placed, entry, 'kept', 'follows from other sheets');
  if (column.role === 'computed' && options.keepFormulas) return planned(placed, entry, 'kept', 'keeps its formula');
  if (entry.trim() === '') {
    const isName = sheet.key === column.id || column.required;
    const blankHere = 'fresh' in into || !isName;
    return blankHere
      ? planned(placed, entry, 'fits', '')
      : planned(placed, entry, 'refused', `${column.name} can't be empty here.`);
  }
  const tried = placed.tried(column, entry, into);
  if (!tried.ok) return planned(placed, entry, 'refused', tried.why);
  const taken = sheet.key === column.id ? nameTaken(book, placed, entry, names) : undefined;
  if (taken !== undefined) return planned(placed, entry, 'refused', taken);
  if (tried.far !== undefined) return planned(placed, entry, 'far', `${tried.text}, ${tried.far}`);
  const isOurs = mended !== undefined || cell.typed !== undefined;
  const tries = (other: string): TriedEntry => placed.tried(column, other, into);
  const also = isOurs ? undefined : otherwise(read, column, tried.text, tries, options.reading.dayFirst);
  if (also !== undefined) return planned(placed, entry, 'open', also);
  const isOpen = tried.other !== undefined && !read.exact;
  return planned(placed, entry, isOpen ? 'open' : 'fits', tried.text);
}

function planned(
  { line, across, into, column, cell }: Placed,
  entry: string,
  state: PlannedCell['state'],
  says: string,
): PlannedCell {
  return { line, across, into, column, given: cell.text, entry, state, cut: cell.cut, says };
}

/** What a person mended a cell to; blocks are large, and mostly nothing is. */
export function mendedAt({ mended }: Pick<PlanOptions, 'mended'>, line: number, across: number): string | undefined {
  return mended.size === 0 ? undefined : mended.get(cellKey(line, across));
}

/** The rows that the block gives another name: theirs is free for others then. */
function rowsRenamed(
  book: Book,
  { cells }: Block,
  { sheet, columns, rows }: Landing,
  options: PlanOptions,
): ReadonlySet<number> {
  const across = columns.findIndex((column) => column !== undefined && column.id === sheet.key);
  const renamed = rows.flatMap((into, line) => {
    const name = (mendedAt(options, line, across) ?? cells[line]?.[across]?.text ?? '').trim();
    if (!('row' in into) || name === '') return [];
    const { slot } = into.row;
    return rowName(book, sheet.id, slot).toLowerCase() === name.toLowerCase() ? [] : [slot];
  });
  return new Set(renamed);
}

/** A name that another row has and keeps, or that stands in the block before. */
function nameTaken(
  book: Book,
  { sheet, into, leaving }: Placed,
  entry: string,
  names: Set<string>,
): string | undefined {
  const name = entry.trim();
  const lower = name.toLowerCase();
  const slot = rowNamed(book, sheet.id, name);
  const isOther = slot !== undefined && !leaving.has(slot) && !('row' in into && into.row.slot === slot);
  const twice = names.has(lower);
  names.add(lower);
  if (twice) return `“${name}” stands in the block twice: give each row a name of its own.`;
  return isOther ? `${sheet.name} already has a row called “${name}”: choose another name.` : undefined;
}

/** A new row without the name that every row of the sheet needs. */
function needsName({ sheet }: Landing, into: LandingRow, planned: readonly PlannedCell[]): boolean {
  if (!('fresh' in into) || sheet.key === undefined) return false;
  if (planned.every(({ entry, state }) => entry.trim() === '' || state === 'kept')) return false;
  return !planned.some(({ column, entry }) => column.id === sheet.key && entry.trim() !== '');
}

function nameless(cell: PlannedCell, sheet: SheetView): PlannedCell {
  if (cell.state === 'kept' || cell.entry.trim() === '') return cell;
  const key = sheet.columns.find(({ id }) => id === sheet.key)?.name ?? 'name';
  return { ...cell, state: 'refused', says: `A new row of ${sheet.name} needs its ${key}: paste that column with it.` };
}

/** Whether the block's first line names columns of the sheet; the column of each then. */
export function namedColumns(block: Block, sheet: SheetView): readonly (ColumnView | undefined)[] | undefined {
  const [first = []] = block.cells;
  const found = first.map((cell) => columnCalled(sheet, cell?.text ?? ''));
  const named = found.filter((column) => column !== undefined);
  const filled = first.filter((cell) => (cell?.text.trim() ?? '') !== '').length;
  return named.length > 0 && named.length * 2 > filled && block.cells.length > 1 ? found : undefined;
}

/** 'Length' and 'Length (ft)'. */
function columnCalled(sheet: SheetView, text: string): ColumnView | undefined {
  const wanted = text.trim().toLowerCase();
  const bare = wanted.replace(/\s*\([^()]*\)$/, '');
  return sheet.columns.find(({ name }) => name.toLowerCase() === wanted || name.toLowerCase() === bare);
}

/** The words for where a paste lands: 'Barn 1 to Barn 3 and 2 new rows'. */
export function rowWords(book: Book, { sheet, rows }: Landing): string {
  const there = rows.flatMap((into) => ('row' in into ? [rowName(book, sheet.id, into.row.slot)] : []));
  const fresh = rows.length - there.length;
  const [first] = there;
  const last = there.at(-1);
  const named = first === undefined ? '' : there.length === 1 ? first : `${first} to ${last ?? ''}`;
  const added = fresh === 0 ? '' : `${fresh} new ${fresh === 1 ? 'row' : 'rows'}`;
  return [named, added].filter((part) => part !== '').join(' and ');
}
