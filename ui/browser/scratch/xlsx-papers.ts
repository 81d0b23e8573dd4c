// The sheets of an XLSX file as scratch papers: formulas where there are any, figures, days, texts and faults elsewhere, and what names
// stand for in their place. Looks of cells and pictures stay behind. A worker calls it, so that a large file keeps nobody waiting.

import { isoDate, PAPER_COLUMNS, PAPER_ROWS, type ReadCell } from '../../../engine/index.ts';
import { cellName, cellNamed } from '../../scratch/addresses.ts';
import { moveFormula } from '../../scratch/formula-words.ts';
import { GivenNames } from '../../scratch/given-names.ts';
import { faultsIn, formulasIn, namesIn } from '../../xlsx/formulas.ts';
import { readParts } from '../../xlsx/read.ts';
import { unpack } from '../../xlsx/unpack.ts';

export interface PaperSheet {
  readonly name: string;
  readonly cells: Readonly<Record<string, string>>;
}

export type PapersRead =
  /** `leftOff`: cells beyond a paper's end; `namesLeft`: names in formulas that stand for nothing that a paper can read. */
  | {
      readonly ok: true;
      readonly sheets: readonly PaperSheet[];
      readonly leftOff: number;
      readonly namesLeft: readonly string[];
    }
  | { readonly ok: false; readonly why: string };

/** More would make every look at the paper slow. */
const MOST_CELLS = 50_000;

export async function readPapers(bytes: Uint8Array): Promise<PapersRead> {
  const unpacked = unpack(bytes);
  if (!unpacked.ok) return unpacked;
  const read = await readParts(unpacked.parts);
  if (!read.ok) return read;
  const [formulas, faults] = [formulasIn(unpacked.parts), faultsIn(unpacked.parts)];
  const names = new GivenNames(namesIn(unpacked.parts));
  let leftOff = 0;
  let count = 0;
  const sheets = read.sheets.map(({ name, rows }): PaperSheet => {
    const cells: Record<string, string> = {};
    const put = (row: number, column: number, entry: string): void => {
      if (entry === '') return;
      if (row >= PAPER_ROWS || column >= PAPER_COLUMNS) leftOff += 1;
      else cells[cellName({ row, column })] = entry;
    };
    for (const [row, line] of rows.entries())
      for (const [column, cell] of line.entries()) put(row, column, entryOf(cell));
    for (const { cell, fault } of faults.get(name) ?? []) {
      const at = cellNamed(cell);
      if (at !== undefined) put(at.row, at.column, FAULTS.has(fault) ? fault : '#VALUE!');
    }
    for (const { cell, formula, from } of formulas.get(name) ?? []) {
      const [at, first] = [cellNamed(cell), cellNamed(from)];
      if (at === undefined || first === undefined) continue;
      const moved = moveFormula(`=${formula}`, at.row - first.row, at.column - first.column);
      put(at.row, at.column, names.written(moved, name, at));
    }
    count += Object.keys(cells).length;
    return { name, cells };
  });
  if (count > MOST_CELLS) {
    const why = `It holds ${count} cells, and scratch papers take ${MOST_CELLS} of a file: open it in a spreadsheet and save the part you need.`;
    return { ok: false, why };
  }
  return { ok: true, sheets, leftOff, namesLeft: names.left };
}

/** Those that papers know; others of newer programs are faults of the wrong sort. */
const FAULTS: ReadonlySet<string> = new Set('#N/A #DIV/0! #VALUE! #REF! #NAME? #NUM!'.split(' '));

function entryOf(cell: ReadCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  if (typeof cell === 'object') return isoDate(Math.floor(cell.moment / 86_400_000));
  // A text that looks like a figure or a formula is one only where the file says so.
  return /^[=']|^[-+]?[\d.]/.test(cell) ? `'${cell}` : cell;
}
