// An A1 formula as a tree, for turning it into a formula of the workbook. Operators bind as in other spreadsheets: a minus in
// front closer than a power.

import { STRENGTH } from '../../engine/index.ts';
import { type Word, wordsOf } from './formula-words.ts';

export type A1Tree =
  | { readonly node: 'number'; readonly value: string }
  | { readonly node: 'text'; readonly value: string }
  | { readonly node: 'cell'; readonly cell: string }
  | { readonly node: 'block'; readonly from: string; readonly to: string }
  | { readonly node: 'name'; readonly name: string }
  /** undefined for an argument that is left out. */
  | { readonly node: 'call'; readonly name: string; readonly args: readonly (A1Tree | undefined)[] }
  | { readonly node: 'minus'; readonly operand: A1Tree }
  | { readonly node: 'percent'; readonly operand: A1Tree }
  | { readonly node: 'operator'; readonly sign: string; readonly left: A1Tree; readonly right: A1Tree };

/** Why a formula has no tree here, in a sentence. */
export class Unreadable extends Error {}

/** How closely operators bind is the same on papers as in the sheets. */
const BINDS: Readonly<Record<string, number>> = STRENGTH;

/** Throws Unreadable where it has a part that no column can have. */
export function treeOf(formula: string): A1Tree {
  const words = wordsOf(formula.replace(/^=/, '')).filter(({ kind }) => kind !== 'space');
  const reader = new Reader(words);
  const tree = reader.expression(0);
  reader.end();
  return tree;
}

class Reader {
  readonly #words: readonly Word[];
  #at = 0;

  constructor(words: readonly Word[]) {
    this.#words = words;
  }

  get #next(): Word | undefined {
    return this.#words[this.#at];
  }

  #take(text: string): boolean {
    if (this.#next?.text !== text) return false;
    this.#at += 1;
    return true;
  }

  end(): void {
    if (this.#next !== undefined) throw new Unreadable(`It can't be read from “${this.#next.text}” on.`);
  }

  expression(least: number): A1Tree {
    let left = this.#operand();
    for (;;) {
      const sign = this.#next?.kind === 'sign' ? this.#next.text : '';
      const binds = BINDS[sign];
      if (binds === undefined || binds <= least) return left;
      this.#at += 1;
      left = { node: 'operator', sign, left, right: this.expression(binds) };
    }
  }

  #operand(): A1Tree {
    if (this.#take('-')) return { node: 'minus', operand: this.#operand() };
    if (this.#take('+')) return this.#operand();
    let tree = this.#single();
    while (this.#take('%')) tree = { node: 'percent', operand: tree };
    return tree;
  }

  #single(): A1Tree {
    const word = this.#next;
    if (word === undefined) throw new Unreadable('It ends in the middle.');
    this.#at += 1;
    switch (word.kind) {
      case 'number':
        return { node: 'number', value: word.text };
      case 'text':
        return { node: 'text', value: word.text.slice(1, -1).replaceAll('""', '"') };
      case 'name':
        return { node: 'name', name: word.text };
      case 'cell':
        return this.#cells(word.text);
      case 'function':
        return this.#call(word.text.toUpperCase());
      case 'paper':
        throw new Unreadable('It reads another scratch paper: bring that sum onto this one first.');
      case 'lines':
        throw new Unreadable(
          `It reads whole rows or columns of the paper (${word.text}): name the cells that it needs.`,
        );
      case 'fault':
        throw new Unreadable(`It holds ${word.text}, where a cell was taken away.`);
      default: {
        if (word.text !== '(') throw new Unreadable(`“${word.text}” has no place in a formula of the workbook.`);
        const within = this.expression(0);
        if (!this.#take(')')) throw new Unreadable('A bracket is not closed.');
        return within;
      }
    }
  }

  #cells(text: string): A1Tree {
    const from = text.replaceAll('$', '').toUpperCase();
    if (!this.#take(':')) return { node: 'cell', cell: from };
    const to = this.#next;
    if (to?.kind !== 'cell') throw new Unreadable(`After “${from}:” a cell is missing.`);
    this.#at += 1;
    return { node: 'block', from, to: to.text.replaceAll('$', '').toUpperCase() };
  }

  #call(name: string): A1Tree {
    this.#take('(');
    const args: (A1Tree | undefined)[] = [];
    if (this.#take(')')) return { node: 'call', name, args };
    for (;;) {
      const leftOut = this.#next?.text === ',' || this.#next?.text === ')';
      args.push(leftOut ? undefined : this.expression(0));
      if (this.#take(')')) return { node: 'call', name, args };
      if (!this.#take(',')) throw new Unreadable(`The brackets of ${name} are not closed.`);
    }
  }
}
