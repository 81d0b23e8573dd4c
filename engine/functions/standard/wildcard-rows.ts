// In which row of a column a text stands that is as a pattern with wildcards says. A pattern without any, or that is a beginning
// and one star, is looked up in an order of the texts that is made once a column; by others the texts are gone through. Called by
// lookup.ts.

import type { Scalar } from '../../values/error.ts';
import { keptFor } from '../kept-for.ts';
import { firstWhere } from './columns.ts';
import { fitsWildcards, plainBeginning, smallLetters } from './wildcards.ts';

/** 1: from the first row on; -1: from the last one back. */
type Way = 1 | -1;

/** The texts of a column, letter by letter; undefined for what is no text. */
const lettersOf = keptFor((list: readonly Scalar[]) =>
  list.map((entry) => (typeof entry === 'string' ? smallLetters(entry) : undefined)),
);

/** What letters are put in order by; a sign behind each, since one small letter may be two characters. */
function keyOf(letters: readonly string[]): string {
  return letters.map((letter) => `${letter}\0`).join('');
}

/** The keys of a column's texts in order, and their rows. */
const inOrder = keptFor((list: readonly Scalar[]) => {
  const texts = lettersOf(list)
    .flatMap((letters, row) => (letters === undefined ? [] : [{ key: keyOf(letters), row }]))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
  return { keys: texts.map(({ key }) => key), rows: Int32Array.from(texts, ({ row }) => row) };
});

/** The row (from 0) of the first text, seen from one end, that is as the pattern says; -1 where none is. */
export function rowByWildcards(list: readonly Scalar[], wanted: string, way: Way): number {
  const plain = plainBeginning(wanted);
  if (plain !== undefined) {
    const key = keyOf(plain.letters);
    const { keys, rows } = inOrder(list);
    const from = firstWhere(keys, (one) => one >= key);
    const to = firstWhere(keys, (one) => one > key && !(plain.goesOn && one.startsWith(key)));
    const found = rows.subarray(from, to);
    return found.reduce((first, row) => ((row - first) * way < 0 ? row : first), found[0] ?? -1);
  }
  const fits = fitsWildcards(wanted);
  const isWanted = (letters: readonly string[] | undefined): boolean => letters !== undefined && fits(letters);
  const texts = lettersOf(list);
  return way > 0 ? texts.findIndex(isWanted) : texts.findLastIndex(isWanted);
}
