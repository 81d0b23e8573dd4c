// A block of cells as it comes from the clipboard: the texts that stood in the cells and, where another program says so, the
// values behind them, which no mark or order can make ambiguous; of cells of ours what was typed in them. Read from tab-separated
// text and from HTML tables.

import type { TypedHere } from '../typed-here.ts';
import type { CutCell } from './cut.ts';
import { type Spanning, spreadOut } from './spans.ts';
import { fromTabSeparated } from './tab-separated.ts';

export interface BlockCell {
  readonly text: string;
  /** The number behind the text; of a date its serial number, 1 on 31 December 1899. */
  readonly value?: number;
  /** Of a cell of ours that holds a quantity or a range: what was typed. */
  readonly typed?: TypedHere;
  /** Where it goes from when it is pasted. */
  readonly cut?: CutCell;
}

export interface Block {
  /** Line by line; undefined where nothing lands. */
  readonly cells: readonly (readonly (BlockCell | undefined)[])[];
  /** Where it was copied here: the sheet, and the columns in order. */
  readonly from?: { readonly sheet: string; readonly columns: readonly string[] };
}

/** The attributes in which a table of ours says where it comes from. */
export const FROM_SHEET = 'data-dibble-sheet';
export const FROM_COLUMNS = 'data-dibble-columns';
/** The decimal mark of what was typed in its cells; of each cell, what was typed and the unit of its column. */
export const FROM_DECIMAL = 'data-dibble-decimal';
export const TYPED = 'data-dibble-typed';
export const TYPED_UNIT = 'data-dibble-unit';

export const EMPTY_BLOCK: Block = { cells: [] };

export function height({ cells }: Block): number {
  return cells.length;
}

export function width({ cells }: Block): number {
  return cells.reduce((most, row) => Math.max(most, row.length), 0);
}

/** More than one cell. */
export function isTable(block: Block): boolean {
  return height(block) > 1 || width(block) > 1;
}

/** A text and the HTML that came with it; '' where there was none. `decimal`: the mark that figures are typed with here. */
export function readBlock(text: string, html: string, decimal = '.'): Block {
  const plain = fromTabSeparated(text).map((row) => row.map((one): BlockCell => ({ text: one })));
  const table = html === '' ? undefined : readTable(html, decimal);
  if (table === undefined) return { cells: plain };
  const sameSize = table.cells.length === plain.length && width(table) === width({ cells: plain });
  // Where both tell of the same cells the text is as it stood on the screen, and the table knows the values.
  if (!sameSize) return plain.length > 0 && width({ cells: plain }) > 1 ? { ...table, cells: plain } : table;
  return { ...table, cells: plain.map((row, i) => row.map((cell, j) => withKnown(cell, table.cells[i]?.[j]))) };
}

/** A cell of the text with what the table knows of it: never what it knows of another. */
export function withKnown(cell: BlockCell, known: BlockCell | undefined): BlockCell {
  return known !== undefined && inkOf(known) === inkOf(cell) ? { ...known, ...cell } : cell;
}

/** Tables and texts break lines and keep blanks each in their own way. */
function inkOf({ text }: BlockCell): string {
  return text.replace(/\s+/g, '');
}

/** Looks are nothing to us but for what they hide, and the page's policy would tell of each of them. */
export function withoutStyles(html: string): string {
  return html
    .replace(/<style[\s\S]*?<\/style>/gi, '')
    .replace(/\sstyle\s*=\s*("[^"]*"|'[^']*'|[^\s>]+)/gi, (style) =>
      /["';=\s]display\s*:\s*none/i.test(style) ? ' hidden' : '',
    );
}

function readTable(html: string, decimal: string): Block | undefined {
  const page = new DOMParser().parseFromString(withoutStyles(html), 'text/html');
  const table = page.querySelector('table');
  if (table === null) return undefined;
  // What was typed with another mark would be read otherwise.
  const isTyped = table.getAttribute(FROM_DECIMAL) === decimal;
  const rows = [...table.rows];
  const spanning = rows.map((row) =>
    [...row.cells].filter(({ hidden }) => !hidden).map((cell) => spanningCell(cell, isTyped)),
  );
  const cells = spreadOut(spanning, { text: '' }).filter((_, at) => rows[at]?.hidden === false);
  if (cells.length === 0) return undefined;
  const sheet = table.getAttribute(FROM_SHEET);
  const columns = table.getAttribute(FROM_COLUMNS);
  return sheet === null || columns === null ? { cells } : { cells, from: { sheet, columns: columns.split(' ') } };
}

function spanningCell(cell: HTMLTableCellElement, isTyped: boolean): Spanning<BlockCell> {
  return { cell: readCell(cell, isTyped), across: cell.colSpan, down: cell.rowSpan };
}

function readCell(cell: HTMLTableCellElement, isTyped: boolean): BlockCell {
  const text = (cell.textContent ?? '').replace(/\s*\n\s*/g, ' ').trim();
  const value = valueBehind(cell);
  const entry = isTyped ? cell.getAttribute(TYPED) : null;
  return {
    text,
    ...(value === undefined ? {} : { value }),
    ...(entry === null ? {} : { typed: { entry, unit: cell.getAttribute(TYPED_UNIT) ?? '' } }),
  };
}

/** Spreadsheets put the value of a cell in an attribute: sdval, x:num, or a small record. */
function valueBehind(cell: Element): number | undefined {
  const given = cell.getAttribute('sdval') ?? cell.getAttribute('x:num');
  if (given !== null && given.trim() !== '') return finite(Number(given));
  const record = cell.getAttribute('data-sheets-value');
  if (record === null) return undefined;
  try {
    const known: unknown = JSON.parse(record);
    const number: unknown = typeof known === 'object' && known !== null ? Reflect.get(known, '3') : undefined;
    return typeof number === 'number' ? finite(number) : undefined;
  } catch {
    return undefined;
  }
}

function finite(value: number): number | undefined {
  return Number.isFinite(value) ? value : undefined;
}
