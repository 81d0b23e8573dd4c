// The cells that a formula reads for one row, down whichever links, and of totals those of the rows that were counted: asked of the same
// index and conditions that the total was worked out with.

import type { Typed } from '../language/typed.ts';
import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isComputed } from '../schema/schema.ts';
import { FILLED } from '../values/column.ts';
import { recordColumn } from '../values/figures.ts';
import { type Book, sheetOf } from './book.ts';

/** How many cells of a whole column or group are named one by one. */
export const MOST_NAMED = 30;

export interface Place {
  readonly sheet: ProgramSheet;
  readonly row: number;
  readonly column: ProgramColumn;
}

/**
 * The cells that a cell reads, each once, in reading order; none where it holds no formula, or something is typed over it. Of a
 * whole column or group no more than `most`.
 */
export function readsOf(book: Book, place: Place, most = MOST_NAMED): readonly Place[] {
  return place.column.typed !== undefined && isWorkedOut(book, place)
    ? new Reads(book, place, most).of(place.column.typed)
    : [];
}

/** Whether what a cell holds comes of its formula. */
export function isWorkedOut(book: Book, { column, row }: Place): boolean {
  return isComputed(column) && !book.document.isTyped(column, row);
}

/** The cells that a formula reads for one row, each once, in reading order. */
class Reads {
  readonly #book: Book;
  readonly #place: Place;
  readonly #most: number;
  readonly #found = new Map<string, Place>();

  constructor(book: Book, place: Place, most: number) {
    this.#book = book;
    this.#place = place;
    this.#most = most;
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
      : this.#book.document.frame.rows(sheet.table).subarray(0, this.#most);
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
    const rows = counted.subarray(0, this.#most);
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

/** The row that a link of a row leads to. */
export function follow(
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
