// Names that a spreadsheet file gives to cells, figures and formulas (ECMA-376 part 1, 18.2.5): a paper has none, so formulas read in their
// place what they stand for. Called while a file is read.

import type { At } from './addresses.ts';
import { isFormula, moveFormula, paperNamed, type Word, wordsOf } from './formula-words.ts';

interface GivenName {
  readonly name: string;
  /** The sheet in which alone it is known; undefined: in all. */
  readonly sheet: string | undefined;
  /** Without =, as it reads from the first cell of a sheet. */
  readonly stands: string;
}

/** Names that stand for names that stand for names end somewhere. */
const DEEPEST = 8;
/** A formula that would grow beyond so many letters keeps its names. */
const LONGEST = 8000;

export class GivenNames {
  readonly #names = new Map<string, string>();
  readonly #left = new Set<string>();
  /** Of the formula that is being written: so many letters more may be put into it, and the names that nothing was put for. */
  #room = LONGEST;
  #kept: string[] = [];

  constructor(names: readonly GivenName[]) {
    for (const { name, sheet, stands } of names) this.#names.set(keyOf(name, sheet), stands);
  }

  /** Names that formulas say and that nothing could be put in place of: what they stand for is gone, in another file, or too long. */
  get left(): readonly string[] {
    return [...this.#left];
  }

  /** The formula of a cell with what its names stand for. */
  written(formula: string, sheet: string, at: At): string {
    if (this.#names.size === 0 || !isFormula(formula)) return formula;
    [this.#room, this.#kept] = [LONGEST, []];
    const words = wordsOf(formula);
    const out = this.#words(words, sheet, at, DEEPEST)
      .map(({ text }) => text)
      .join('');
    const isWritten = this.#room >= 0 && out.length <= LONGEST;
    const known = words.filter((word) => word.kind === 'name' && this.#stands(word, sheet) !== undefined);
    for (const name of isWritten ? this.#kept : known.map(({ text }) => text)) this.#left.add(name);
    return isWritten ? out : formula;
  }

  #words(words: readonly Word[], sheet: string, at: At, deep: number): readonly Word[] {
    return words.flatMap((word, i): readonly Word[] => {
      // Rates!vat is what vat is on that sheet.
      if (word.kind === 'paper' && words[i + 1]?.kind === 'name')
        return this.#stands(words[i + 1], paperNamed(word.text)) === undefined ? [word] : [];
      if (word.kind !== 'name') return [word];
      const before = words[i - 1];
      const of = before?.kind === 'paper' ? paperNamed(before.text) : sheet;
      const stands = this.#stands(word, of);
      if (stands === undefined) return [word];
      this.#room -= stands.length;
      if (this.#room < 0) return [];
      if (deep === 0 || isOutOfReach(stands)) {
        this.#kept.push(word.text);
        return before?.kind === 'paper' ? [before, word] : [word];
      }
      const inner = wordsOf(moveFormula(`=${stands}`, at.row, at.column)).slice(1);
      const put = this.#words(inner, of, at, deep - 1);
      return isOne(put) ? put : [{ kind: 'sign', text: '(' }, ...put, { kind: 'sign', text: ')' }];
    });
  }

  #stands(word: Word | undefined, sheet: string): string | undefined {
    return this.#names.get(keyOf(word?.text ?? '', sheet)) ?? this.#names.get(keyOf(word?.text ?? '', undefined));
  }
}

function keyOf(name: string, sheet: string | undefined): string {
  return JSON.stringify([name.toLowerCase(), sheet?.toLowerCase() ?? null]);
}

/** Cells that were taken away, another file, columns of its tables. */
function isOutOfReach(stands: string): boolean {
  return (
    stands.trim() === '' ||
    wordsOf(stands).some(({ kind, text }) => kind === 'fault' || (kind !== 'text' && text.includes('[')))
  );
}

/** One value or one block, or blocks one after the other, which a function takes so. */
function isOne(words: readonly Word[]): boolean {
  return words.every(({ kind, text }) => text === ':' || text === ',' || (kind !== 'sign' && kind !== 'function'));
}
