// Help while a formula is typed: what the word at the caret could become, and the text once one of them is taken.

import { type Book, type Completion, type Completions, completeFormula } from '../../../engine/index.ts';

/** What the word at the caret could become; undefined where nothing was begun. */
export function completionsFor(book: Book, sheet: string, text: string, caret: number): Completions | undefined {
  const found = completeFormula(book, sheet, text, caret);
  // Right after an operator everything could follow: a list then would only be in the way.
  if (found === undefined || found.items.length === 0) return undefined;
  const begun = found.to > found.from || text.charAt(found.from - 1) === '.';
  return begun ? found : undefined;
}

export interface Completed {
  readonly text: string;
  readonly caret: number;
}

/** The text with a completion taken, the caret after it, inside the brackets of a function. */
export function complete(text: string, { from, to }: Completions, item: Completion): Completed {
  const opens = item.kind === 'function' && !item.text.endsWith('(') && text.charAt(to) !== '(';
  const put = opens ? `${item.text}(` : item.text;
  return { text: text.slice(0, from) + put + text.slice(to), caret: from + put.length };
}
