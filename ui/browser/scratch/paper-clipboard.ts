// Cells of a scratch paper on the clipboard: what they read for other programs, and in the table beside it what is typed in them
// and where they stood, so that formulas pasted on a paper move. Formulas of other spreadsheets come as the text of a cell, or
// by rows and columns in the table that some put there. Text alone doesn't say where it stood.

import { type Book, PAPER_COLUMNS, PAPER_ROWS } from '../../../engine/index.ts';
import { type At, type Block, cellName, cellNamed } from '../../scratch/addresses.ts';
import { readsAsNumber } from '../../scratch/figures.ts';
import { fromRowsAndColumns, isFormula, moveFormula } from '../../scratch/formula-words.ts';
import type { ScratchRoom } from '../../scratch/room.ts';
import type { Copied } from '../grid/clipboard/copied.ts';
import { fromTabSeparated, toTabSeparated } from '../grid/clipboard/tab-separated.ts';

const FROM = 'data-scratch-from';
const ENTRY = 'data-scratch-entry';
/** How some spreadsheets tell the formula of a cell, by rows and columns from it. */
const FORMULA = 'data-sheets-formula';

export function copyBlock(book: Book, room: ScratchRoom, paper: string, { from, to }: Block): Copied {
  const decimal = book.document.writing?.decimal ?? '.';
  const lines: string[][] = [];
  const rows: string[] = [];
  for (let row = from.row; row <= to.row; row++) {
    const line: string[] = [];
    const cells: string[] = [];
    for (let column = from.column; column <= to.column; column++) {
      const cell = cellName({ row, column });
      const { value, text, is } = room.cell(paper, cell);
      // A day reads as a day; a number goes out at full length, with the mark that programs of the place read.
      const isPlain = is === 'number' && readsAsNumber(text) && !text.endsWith('%');
      const read = isPlain ? String(value).replace('.', decimal) : text;
      line.push(read);
      const entry = book.document.papers.entry(paper, cell) ?? '';
      cells.push(`<td ${ENTRY}="${escaped(entry)}">${escaped(read)}</td>`);
    }
    lines.push(line);
    rows.push(`<tr>${cells.join('')}</tr>`);
  }
  return { text: toTabSeparated(lines), html: `<table ${FROM}="${cellName(from)}">${rows.join('')}</table>` };
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/**
 * What is pasted, as entries for the cells from the one at the selection's start; undefined where there is nothing. `kept` gives
 * what a paper keeps of a text that stands in a cell elsewhere.
 */
export function pastedRows(
  text: string,
  html: string,
  { from, to }: Block,
  kept: (entry: string) => string,
): readonly (readonly string[])[] | undefined {
  const rows = entriesIn(html, from, kept) ?? fromTabSeparated(text).map((row) => row.map(kept));
  if (rows.length === 0 || rows.every((row) => row.length === 0)) return undefined;
  const [only] = rows.length === 1 && rows[0]?.length === 1 ? rows[0] : [];
  const [down, along] = [to.row - from.row, to.column - from.column];
  if (only === undefined || (down === 0 && along === 0)) return within(rows, from);
  // One cell fills the selection, moved as it goes.
  return Array.from({ length: down + 1 }, (_, row) =>
    Array.from({ length: along + 1 }, (__, column) => moveFormula(only, row, column)),
  );
}

/**
 * What was pasted as text alone, as it would read had it been copied from A1 on; undefined where that is what it reads, or where
 * the clipboard told how formulas move.
 */
export function movedFromStart(
  rows: readonly (readonly string[])[],
  html: string,
  { from }: Block,
): readonly (readonly string[])[] | undefined {
  if (html.includes(FROM) || html.includes(FORMULA)) return undefined;
  const moved = rows.map((row) => row.map((entry) => moveFormula(entry, from.row, from.column)));
  return moved.some((row, down) => row.some((entry, along) => entry !== rows[down]?.[along])) ? moved : undefined;
}

/** What would stand beyond the paper's end is left off. */
function within(rows: readonly (readonly string[])[], from: At): readonly (readonly string[])[] {
  return rows.slice(0, PAPER_ROWS - from.row).map((row) => row.slice(0, PAPER_COLUMNS - from.column));
}

/** The entries in a table on the clipboard, where it tells more than its text does. */
function entriesIn(html: string, at: At, kept: (entry: string) => string): readonly (readonly string[])[] | undefined {
  if (!html.includes(FROM) && !html.includes(FORMULA)) return undefined;
  // Read as a document of its own, whose scripts do not run and whose pictures are not fetched.
  const table = new DOMParser().parseFromString(html, 'text/html').querySelector('table');
  if (table === null) return undefined;
  const source = cellNamed(table.getAttribute(FROM) ?? '');
  return Array.from(table.rows, (row, down) =>
    Array.from(row.cells, (cell, along) => {
      const entry = cell.getAttribute(ENTRY);
      if (entry !== null && source !== undefined)
        return moveFormula(entry, at.row - source.row, at.column - source.column);
      const formula = cell.getAttribute(FORMULA);
      const place = { row: at.row + down, column: at.column + along };
      return formula !== null && isFormula(formula)
        ? fromRowsAndColumns(formula, place)
        : kept((cell.textContent ?? '').trim());
    }),
  );
}
