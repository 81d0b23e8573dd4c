// LET of other spreadsheets, which hyperformula has not: =LET(x,5,x*2) is worked out as =(5*2), each name replaced by what it
// stands for. The paper keeps the formula as it was typed.

import { isFormula, type Word, wordsOf } from './formula-words.ts';

/** A formula that would grow beyond so many words is left as it stands. */
const MOST_WORDS = 20_000;

/** Written out twice they would give two figures. */
const BY_CHANCE = /^RAND/i;

/** Why a LET could not be written out, thrown to leave the formula as it is. */
class NoLet extends Error {}

type Meanings = ReadonlyMap<string, readonly Word[]>;

/** A formula without LET: its names replaced by what they stand for; as it is where a LET in it can't be read. */
export function withoutLet(formula: string): string {
  if (!isFormula(formula) || !/\blet\s*\(/i.test(formula)) return formula;
  try {
    return joined(written(wordsOf(formula), new Map()));
  } catch (fault) {
    if (fault instanceof NoLet) return formula;
    throw fault;
  }
}

function written(words: readonly Word[], meanings: Meanings): readonly Word[] {
  const out: Word[] = [];
  for (let at = 0; at < words.length; at++) {
    const word = words[at];
    if (word === undefined) break;
    if (word.kind === 'function' && word.text.toUpperCase() === 'LET') {
      const { parts, end } = argumentsFrom(words, at + 1);
      out.push(...body(parts, meanings));
      at = end;
    } else if (word.kind === 'name') out.push(...(meanings.get(word.text.toLowerCase()) ?? [word]));
    else out.push(word);
    if (out.length > MOST_WORDS) throw new NoLet();
  }
  return out;
}

/** LET(name, what it stands for, ..., the formula): each name is known to all that comes after it. */
function body(parts: readonly (readonly Word[])[], outer: Meanings): readonly Word[] {
  const formula = parts.at(-1);
  if (formula === undefined || parts.length < 3 || parts.length % 2 === 0) throw new NoLet();
  const meanings = new Map(outer);
  for (let at = 0; at + 1 < parts.length; at += 2) {
    const [name, ...more] = spoken(parts[at] ?? []);
    const meaning = written(parts[at + 1] ?? [], meanings);
    if (name?.kind !== 'name' || more.length > 0 || spoken(meaning).length === 0) throw new NoLet();
    if (meaning.some(({ kind, text }) => kind === 'function' && BY_CHANCE.test(text))) throw new NoLet();
    meanings.set(name.text.toLowerCase(), asOne(meaning));
  }
  return asOne(written(formula, meanings));
}

function spoken(words: readonly Word[]): readonly Word[] {
  return words.filter(({ kind }) => kind !== 'space');
}

/** In brackets, unless it is one value, one cell or one block: A1:B2 stays a block that functions can look into. */
function asOne(words: readonly Word[]): readonly Word[] {
  const bare = spoken(words);
  const isOne = bare.every(({ kind, text }) => text === ':' || (kind !== 'sign' && kind !== 'function'));
  return isOne ? bare : [{ kind: 'sign', text: '(' }, ...words, { kind: 'sign', text: ')' }];
}

/** The arguments of a call whose bracket opens at a word, and where it closes. */
function argumentsFrom(
  words: readonly Word[],
  open: number,
): { readonly parts: readonly Word[][]; readonly end: number } {
  const parts: Word[][] = [[]];
  let depth = 0;
  for (let at = open; at < words.length; at++) {
    const word = words[at];
    if (word === undefined) break;
    if (word.kind === 'sign' && /[({]/.test(word.text)) depth += 1;
    if (word.kind === 'sign' && /[)}]/.test(word.text)) depth -= 1;
    if (depth === 0) return { parts, end: at };
    if (depth === 1 && word.text === ',' && word.kind === 'sign') parts.push([]);
    else if (at > open) parts.at(-1)?.push(word);
  }
  throw new NoLet();
}

function joined(words: readonly Word[]): string {
  return words.map(({ text }) => text).join('');
}
