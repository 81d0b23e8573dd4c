// Why a cell is what it is: its formula in words and in values, the cells it reads (cell-reads.ts), and for blanks and errors where
// they began (why.ts). One level at a time; deeper levels are explained when asked for.

import { parseFormula } from '../language/parser.ts';
import type { Tree } from '../language/tree.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import { follow, isWorkedOut, MOST_NAMED, type Place, readsOf } from './cell-reads.ts';
import { type Origin, originOf } from './cells.ts';
import { figureInWords, inWords, rowName } from './shown.ts';
import { whyOf } from './why.ts';

/** A cell's reasons, down to its inputs. */
export interface Explanation {
  readonly sheet: string;
  readonly sheetName: string;
  readonly row: number;
  readonly rowName: string;
  readonly column: string;
  readonly columnName: string;
  /** With its unit: '12.4 lb'. */
  readonly shown: string;
  readonly origin: Origin;
  /** The formula as written, and with this row's values in place of the names; '' for entered cells. */
  readonly formula: string;
  readonly inValues: string;
  /** Where blank or an error: why, naming the cell it began at. */
  readonly why: string;
  /** The cells it reads, each with its own explanation one level down; deeper levels are asked for when opened. */
  readonly rests: readonly Explanation[];
}

/** The explanation of a cell with its inputs one level down; undefined where there is no such cell. */
export function explain(book: Book, sheetId: string, row: number, columnId: string): Explanation | undefined {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (sheet === undefined || column === undefined) return undefined;
  if (book.document.frame.table(sheet.table).live[row] !== 1) return undefined;
  return explainPlace(book, { sheet, row, column }, 1);
}

/** How many cells it reads, those of a total that explain() leaves out among them; 0 where there is no such cell. */
export function countReads(book: Book, sheetId: string, row: number, columnId: string): number {
  const [sheet, column] = [sheetOf(book, sheetId), columnOf(book, sheetId, columnId)];
  if (sheet === undefined || column === undefined) return 0;
  return readsOf(book, { sheet, row, column }, Number.POSITIVE_INFINITY).length;
}

function explainPlace(book: Book, place: Place, depth: number): Explanation {
  const { sheet, row, column } = place;
  const worked = isWorkedOut(book, place);
  const reads = readsOf(book, place);
  const rests = depth > 0 ? reads.slice(0, MOST_NAMED) : [];
  return {
    sheet: sheet.id,
    sheetName: sheet.name,
    row,
    rowName: rowName(book, sheet.id, row),
    column: column.id,
    columnName: column.name,
    shown: inWords(book, column, row),
    origin: originOf(book, column, row),
    formula: worked ? column.formula : '',
    inValues: worked && column.diagnostic === undefined ? inValues(book, place) : '',
    why: whyOf(book, place, reads),
    rests: rests.map((read) => explainPlace(book, read, depth - 1)),
  };
}

/** The formula with this row's values in place of the names of cells. */
function inValues(book: Book, { sheet, row, column }: Place): string {
  const { vocabulary } = book.document.program;
  const parsed = parseFormula(column.formula, (symbol) => vocabulary.find(symbol) !== undefined);
  if (!parsed.ok) return '';
  const pieces: { readonly from: number; readonly to: number; readonly text: string }[] = [];
  const walk = (node: Tree): void => {
    switch (node.tree) {
      case 'cell':
        pieces.push({ from: node.from, to: node.to, text: cellInWords(book, sheet, row, node) });
        return;
      case 'column': {
        const text = singleInWords(book, node.table.text, node.column.text);
        if (text !== undefined) pieces.push({ from: node.from, to: node.to, text });
        return;
      }
      case 'unary':
        walk(node.operand);
        return;
      case 'binary':
        walk(node.left);
        walk(node.right);
        return;
      case 'call': {
        const [first] = node.args;
        if (node.name.text.toUpperCase() === 'TYPED' && first?.tree === 'cell') {
          const typed = named(sheet.columns, first.path[0]?.text ?? '');
          if (typed === undefined || !book.document.isTyped(typed, row)) {
            pieces.push({ from: node.from, to: node.to, text: 'blank' });
            return;
          }
        }
        for (const argument of node.args) if (argument.tree !== 'missing') walk(argument);
        return;
      }
      default:
        return;
    }
  };
  walk(parsed.tree);
  let text = '';
  let at = 0;
  for (const piece of pieces.sort((a, b) => a.from - b.from)) {
    text += column.formula.slice(at, piece.from) + piece.text;
    at = piece.to;
  }
  return (text + column.formula.slice(at)).replace(/^\s*=/, '').trim();
}

function named<T extends { readonly name: string }>(things: readonly T[], name: string): T | undefined {
  const lower = name.toLowerCase();
  return things.find((thing) => thing.name === name) ?? things.find((thing) => thing.name.toLowerCase() === lower);
}

function cellInWords(
  book: Book,
  sheet: ProgramSheet,
  row: number,
  { path }: Extract<Tree, { readonly tree: 'cell' }>,
): string {
  const names = path.map(({ text }) => text);
  const last = names.pop() ?? '';
  let at: { readonly sheet: string; readonly row: number } | undefined = { sheet: sheet.id, row };
  for (const name of names) {
    if (at === undefined) return 'blank';
    const link: ProgramColumn | undefined = named(sheetOf(book, at.sheet)?.columns ?? [], name);
    if (link?.type?.kind === 'record') {
      const figure = named(link.type.record.figures, last);
      return figure === undefined ? 'blank' : figureInWords(book.document, link.def, figure, at.row);
    }
    at = link === undefined ? undefined : follow(book, at.sheet, at.row, link.id);
  }
  const column = at === undefined ? undefined : named(sheetOf(book, at.sheet)?.columns ?? [], last);
  return column === undefined || at === undefined ? 'blank' : inWords(book, column, at.row);
}

function singleInWords(book: Book, sheetName: string, columnName: string): string | undefined {
  const sheet = named(book.document.program.sheets, sheetName);
  if (sheet?.schema.rows.from !== 'single') return undefined;
  const column = named(sheet.columns, columnName);
  return column === undefined ? undefined : inWords(book, column, 0);
}
