// Why a cell is what it is: its formula in words and in values, the cells it reads, and for blanks and errors where they
// began. One level at a time; deeper levels are explained when asked for. Which rows a total counted is asked of the same
// index and conditions that the total was worked out with.

import { parseFormula } from '../language/parser.ts';
import type { Tree } from '../language/tree.ts';
import type { Typed } from '../language/typed.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isComputed } from '../schema/schema.ts';
import { FILLED } from '../values/column.ts';
import { isError } from '../values/error.ts';
import { recordColumn } from '../values/figures.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import { type Origin, originOf } from './cells.ts';
import { figureInWords, inWords, rowName, scalarAt } from './shown.ts';

/** How many cells of a whole column or group are named one by one. */
const MOST_NAMED = 30;

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

interface Place {
  readonly sheet: ProgramSheet;
  readonly row: number;
  readonly column: ProgramColumn;
}

/** The explanation of a cell with its inputs one level down; undefined where there is no such cell. */
export function explain(book: Book, sheetId: string, row: number, columnId: string): Explanation | undefined {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (sheet === undefined || column === undefined) return undefined;
  if (book.document.frame.table(sheet.table).live[row] !== 1) return undefined;
  return explainPlace(book, { sheet, row, column }, 1);
}

function explainPlace(book: Book, place: Place, depth: number): Explanation {
  const { sheet, row, column } = place;
  const worked = isComputed(column) && !book.document.isTyped(column, row);
  const reads = worked && column.typed !== undefined ? new Reads(book, place).of(column.typed) : [];
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
    rests: depth > 0 ? reads.slice(0, MOST_NAMED).map((read) => explainPlace(book, read, depth - 1)) : [],
  };
}

function whyOf(book: Book, place: Place, reads: readonly Place[]): string {
  const { sheet, row, column } = place;
  if (column.diagnostic !== undefined) return column.diagnostic.why;
  const value = scalarAt(book, column, row);
  if (isError(value)) {
    const { at } = value;
    if (at === undefined || (at.sheet === sheet.id && at.row === row && at.column === column.id)) return value.why;
    const origin = sheetOf(book, at.sheet);
    const name = book.document.program.schema.nameOf(`${at.sheet}/${at.column}`) ?? at.column;
    const named =
      origin === undefined || at.row < 0 ? (origin?.name ?? '') : `${origin.name} / ${rowName(book, at.sheet, at.row)}`;
    return `${value.why} It began at ${named === '' ? name : `${named} / ${name}`}.`;
  }
  if (value !== null) return '';
  const blanks = reads.filter((read) => scalarAt(book, read.column, read.row) === null);
  const [first] = blanks;
  if (first !== undefined) {
    const names = [...new Set(blanks.map((read) => read.column.name))];
    return `Blank, because ${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} blank.`;
  }
  return isComputed(column) ? 'Blank: the formula has no answer here.' : 'Nothing has been entered.';
}

/** The cells that a formula reads for one row, each once, in reading order. */
class Reads {
  readonly #book: Book;
  readonly #place: Place;
  readonly #found = new Map<string, Place>();

  constructor(book: Book, place: Place) {
    this.#book = book;
    this.#place = place;
  }

  of(tree: Typed): readonly Place[] {
    this.#walk(tree);
    return [...this.#found.values()];
  }

  #add(sheetId: string, row: number, columnId: string): void {
    const sheet = sheetOf(this.#book, sheetId);
    const column = sheet?.column(recordColumn(columnId));
    if (sheet === undefined || column === undefined) return;
    if (this.#book.document.frame.table(sheet.table).live[row] !== 1) return;
    this.#found.set(`${sheetId} ${row} ${columnId}`, { sheet, row, column });
  }

  #firstRows(sheetId: string): Int32Array {
    const sheet = sheetOf(this.#book, sheetId);
    return sheet === undefined
      ? new Int32Array(0)
      : this.#book.document.frame.rows(sheet.table).subarray(0, MOST_NAMED);
  }

  #walk(node: Typed): void {
    switch (node.node) {
      case 'cell':
        this.#walkCell(node);
        return;
      case 'typed':
        if (isTypedOver(this.#book, this.#place, node.column)) this.#add(node.table, this.#place.row, node.column);
        return;
      case 'single':
        this.#add(node.table, 0, node.column);
        return;
      case 'column':
        for (const row of this.#firstRows(node.table)) this.#add(node.table, row, node.column);
        return;
      case 'negate':
      case 'key':
        this.#walk(node.operand);
        return;
      case 'binary':
        this.#walk(node.left);
        this.#walk(node.right);
        return;
      case 'condition':
        this.#walk(node.value);
        return;
      case 'criteria':
        for (const row of this.#firstRows(node.table)) {
          for (const { given } of node.pairs) this.#add(node.table, row, given.column);
        }
        return;
      case 'call':
        this.#walkCall(node);
        return;
      default:
        return;
    }
  }

  #walkCell({ links, table, column }: Extract<Typed, { node: 'cell' }>): void {
    let at: { readonly sheet: string; readonly row: number } | undefined = {
      sheet: this.#place.sheet.id,
      row: this.#place.row,
    };
    for (const link of links) {
      if (at === undefined) return;
      this.#add(at.sheet, at.row, link);
      at = follow(this.#book, at.sheet, at.row, link);
    }
    if (at !== undefined) this.#add(table, at.row, column);
  }

  /** Conditional totals: the rows that were counted. */
  #walkCall(call: Extract<Typed, { node: 'call' }>): void {
    const { document } = this.#book;
    const counted = document.frame.countedRows(call, this.#place.row);
    if (counted === undefined) {
      for (const argument of call.args) this.#walk(argument);
      return;
    }
    const rows = counted.subarray(0, MOST_NAMED);
    call.args.forEach((argument, i) => {
      if (argument.node !== 'column') this.#walk(argument);
      else if (call.args[i + 1]?.node !== 'condition') {
        for (const row of rows) this.#add(argument.table, row, argument.column);
      }
    });
  }
}

function isTypedOver({ document }: Book, { sheet, row }: Place, column: string): boolean {
  const found = sheet.column(column);
  return found !== undefined && document.isTyped(found, row);
}

function follow(
  { document }: Book,
  sheet: string,
  row: number,
  link: string,
): { readonly sheet: string; readonly row: number } | undefined {
  const column = document.program.sheet(sheet)?.column(link);
  if (column?.type?.kind !== 'link') return undefined;
  const { values, states } = document.frame.column(column.def);
  return states[row] === FILLED ? { sheet: column.type.table, row: values[row] ?? 0 } : undefined;
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
