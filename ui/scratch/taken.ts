// What stands on a scratch paper, as hyperformula takes it: columns as the cells they stand in, functions by their names in there, and
// what it can't read said another way. The paper keeps what was typed. Called by room.ts.

import { isFormula, type Word, wordsOf } from './formula-words.ts';
import { nameInside } from './inside.ts';
import { withoutLet } from './let.ts';
import type { Tables } from './tables.ts';
import type { TypedFigures } from './typed-figures.ts';

export function takenAs(
  entry: string,
  { figures, tables }: { readonly figures: TypedFigures; readonly tables: Tables },
): string {
  if (!isFormula(entry)) return figures.taken(entry);
  const words = wordsOf(withoutLet(entry)).map((word): Word => {
    if (word.kind === 'function') return { ...word, text: nameInside(word.text) };
    if (word.kind === 'text') return { ...word, text: withoutQuotes(word.text) };
    const cells = word.kind === 'name' ? tables.cellsOf(word.text) : undefined;
    return cells === undefined ? word : { kind: 'block', text: cells };
  });
  const formula = words.map(({ text }) => text).join('');
  return isBlock(words) ? `=IF(TRUE(),${formula.slice(1)})` : formula;
}

/** The names that a formula says; none of what is no formula. */
export function namesIn(entry: string): readonly string[] {
  if (!isFormula(entry)) return [];
  return wordsOf(entry).flatMap(({ kind, text }) => (kind === 'name' ? [text] : []));
}

/** A quote within a text, which is written twice, is put in by its number. */
function withoutQuotes(text: string): string {
  const within = text.slice(1, -1);
  return within.includes('""') ? `("${within.replaceAll('""', '"&CHAR(34)&"')}")` : text;
}

/** Nothing but a block of cells or a column: hyperformula lets it fill cells only as what a function gives. */
function isBlock([, ...words]: readonly Word[]): boolean {
  const said = words.filter(({ kind }) => kind !== 'space').map(({ kind, text }) => (text === ':' ? text : kind));
  return /^(?:paper )?(?:block|cell : (?:paper )?cell)$/.test(said.join(' '));
}
